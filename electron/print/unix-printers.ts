/** Printers of Linux and macOS, through their printing system (CUPS). */
import { execFile } from 'node:child_process'
import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { promisify } from 'node:util'
import { getPrinters, isPrintComplete, print } from 'unix-print'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import { troubleWords } from './printer-words.ts'
import type { Handed, Page, PrinterFound, Printers, Progress } from './printers.ts'

const run = promisify(execFile)

/** The library hands names to a shell, so a printer must be one of the list and name nothing else. */
const safeName = /^[\w.-]{1,127}$/

async function found(): Promise<PrinterFound[]> {
  const printers = await getPrinters()
  return printers
    .filter(({ printer }) => safeName.test(printer))
    .map(({ printer, description, status, alerts }) => ({
      name: printer,
      words: description || printer,
      trouble: troubleWords(status, alerts),
    }))
}

async function list(): Promise<Result<PrinterFound[]>> {
  try {
    return granted(await found())
  } catch {
    return refused(
      'no-printing-system',
      'The printing system of this laptop does not answer.',
      'Print from the PDF, or start the printing system and look again.',
    )
  }
}

export function printerGone(printer: string): Result<never> {
  return refused(
    'printer-gone',
    `The printer ${printer} is gone from this laptop.`,
    'Plug it in and go on, choose another printer, or print from the PDF.',
    'printer',
  )
}

async function known(printer: string): Promise<Result<PrinterFound>> {
  const printers = await list()
  if (!printers.ok) return printers
  const here = printers.value.find(({ name }) => name === printer)
  return here ? granted(here) : printerGone(printer)
}

/** Nothing is scaled: a bar that is not a whole number of dots wide does not scan. */
function options({ widthMm, heightMm }: Page): string[] {
  return ['-o', 'print-scaling=none', '-o', `media=Custom.${widthMm}x${heightMm}mm`]
}

async function send(pdf: Uint8Array, printer: string, page: Page): Promise<Result<Handed>> {
  const here = await known(printer)
  if (!here.ok) return here
  const folder = await mkdtemp(join(tmpdir(), 'duskline-print-'))
  try {
    const file = join(folder, 'labels.pdf')
    await writeFile(file, pdf, { mode: 0o600 })
    const { stdout } = await print(file, printer, options(page))
    return granted({ printer, job: /^request id is (\S+)/m.exec(stdout)?.[1] ?? '' })
  } catch {
    return refused(
      'printing-failed',
      `The printer ${printer} did not take the labels.`,
      'Look whether it is on and has labels, and go on, or print from the PDF.',
      'printer',
    )
  } finally {
    await rm(folder, { recursive: true, force: true })
  }
}

async function progress({ printer, job }: Handed): Promise<Result<Progress>> {
  const here = await known(printer)
  if (!here.ok) return here
  const out = await isPrintComplete({ stdout: `request id is ${job}`, stderr: '' })
  if (out) return granted({ is: 'out' })
  const { trouble } = here.value
  return granted({ is: 'waiting', say: trouble ? `${printer}: ${trouble}.` : 'Printing.' })
}

/** What has come out already cannot be taken back, and then there is nothing to cancel. */
async function cancel({ job }: Handed): Promise<void> {
  if (job !== '') await run('cancel', [job]).catch(() => undefined)
}

export const unixPrinters: Printers = { list, send, progress, cancel }
