/** What this laptop prints on: printers, their offsets, and the labels under way. */
import type { CallOutput, ParsedInput } from '../../shared-types/desk-api.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import type { LabelKind, PrintersView } from '../../shared-types/views/printing.ts'
import { allStocks } from '../../db/read/stocks.ts'
import { calibrationRun } from '../print/calibration.ts'
import type { LabelRun } from '../print/label-run.ts'
import { unknownStock } from '../station/label-stocks.ts'
import type { CommandCall, CommandHandlers, OpenCall, ShelfCall, ShelfHandlers } from './call.ts'
import { pdfFile } from './pdf.ts'

export const noOffset = { rightMm: 0, downMm: 0 }

async function printersHere({ room }: ShelfCall): Promise<PrintersView> {
  if (!room.printers)
    return { printers: [], trouble: 'This window reaches no printers: print from the PDF.' }
  const list = await room.printers.list()
  if (!list.ok) return { printers: [], trouble: `${list.refusal.say} ${list.refusal.next}` }
  return { printers: [...list.value], trouble: null }
}

export const printingCalls = {
  printers: async (call) => granted(await printersHere(call)),
  printing: ({ kept, room }) => {
    const { chosen, offsets } = kept.choices.now.printing
    return granted({ chosen, offsets, ...room.look() })
  },
} satisfies Partial<ShelfHandlers>

/** Where labels of a kind go: to the printer chosen for them, and always as a PDF too. */
export async function handOver(
  call: OpenCall,
  kind: LabelKind,
  run: LabelRun,
  name: string,
): Promise<Pick<CallOutput<'labels.printKits'>, 'pdf' | 'sentTo'>> {
  const { chosen, offsets } = call.kept.choices.now.printing
  const { printer } = chosen[kind]
  const offset = offsets[printer ?? ''] ?? noOffset
  const sentTo =
    printer !== null &&
    !call.live.isCrew(call.session) &&
    call.room.printers &&
    call.room.print(run, printer, offset, name)
      ? printer
      : null
  return { pdf: pdfFile(name, await call.room.write(run, offset)), sentTo }
}

function change(
  { kept, tell }: ShelfCall,
  changed: Partial<typeof kept.choices.now.printing>,
): Result<Record<string, never>> {
  kept.choices.change({ printing: { ...kept.choices.now.printing, ...changed } })
  tell(['printing'])
  return granted({})
}

/** A printer that is not there can be remembered, but not chosen. */
async function checkPrinter(call: ShelfCall, printer: string | null): Promise<Result<null>> {
  if (printer === null) return granted(null)
  const { printers } = await printersHere(call)
  if (printers.some(({ name }) => name === printer)) return granted(null)
  return refused(
    'printer-gone',
    `The printer ${printer} is not on this laptop.`,
    'Choose one of the list, or print from the PDF.',
    'printer',
  )
}

async function choose(
  call: CommandCall,
  { kind, printer, stock }: ParsedInput<'printing.choose'>,
): Promise<Result<Record<string, never>>> {
  const here = await checkPrinter(call, printer)
  if (!here.ok) return here
  if (!allStocks(call.log).some(({ name }) => name === stock)) return unknownStock(stock)
  const { chosen } = call.kept.choices.now.printing
  return change(call, { chosen: { ...chosen, [kind]: { printer, stock } } })
}

function cannotGoOn({ room }: ShelfCall): Result<never> {
  if (room.look().job?.unsure)
    return refused(
      'last-label-unknown',
      'Some labels were on their way when the printer stopped, and may have come out.',
      'Look which label came out last, and scan it to go on from there.',
    )
  return refused(
    'nothing-printing',
    'No labels are on their way to a printer.',
    'Print labels first, or go on by scanning the last good one.',
  )
}

export const printingCommands = {
  'printing.choose': choose,
  'printing.offset': (call, { printer, ...offset }) => {
    const { offsets } = call.kept.choices.now.printing
    return change(call, { offsets: { ...offsets, [printer ?? '']: offset } })
  },
  'printing.stop': async ({ room }) => {
    await room.stop()
    return granted({})
  },
  'printing.goOn': async (call, { printer }) => {
    const here = await checkPrinter(call, printer)
    if (!here.ok) return here
    return call.room.goOn(printer) ? granted({}) : cannotGoOn(call)
  },
  'printing.calibrate': async (call, { kind }) => {
    const { stock: name } = call.kept.choices.now.printing.chosen[kind]
    const stock = allStocks(call.log).find((each) => each.name === name)?.stock
    if (!stock) return unknownStock(name)
    const run = calibrationRun(stock, call.now)
    return granted(await handOver(call, kind, run, `calibration-${name}.pdf`))
  },
} satisfies Partial<CommandHandlers>
