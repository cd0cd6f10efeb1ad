import { useState } from 'react'
import {
  LabelKind,
  type PrinterOffset,
  type PrintingView,
} from '../../shared-types/views/printing.ts'
import { nothing, useAsk, useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Choice } from '../parts/choice.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { Notice } from '../parts/notice.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import { sayDone, sayRefused } from '../scanner/strip.ts'
import { takeLabels } from './hand-over.ts'
import './labels.css'
import { kindWords, usePrinting, useStocks } from './use-printing.ts'

const kindOptions = LabelKind.options.map((value, place) => ({
  value,
  label: kindWords[value],
  key: String(place + 1),
}))

/** Which stock and which printer each kind of label comes out on, from this laptop. */
export function PrintSetUp(props: { onClose: () => void }) {
  const [kind, setKind] = useState<LabelKind>('kits')
  const printing = usePrinting()
  return (
    <Dialog title="Stocks and printers of this laptop" onClose={props.onClose} isWide>
      <Choice label="For" options={kindOptions} value={kind} onChange={setKind} autoFocus />
      <OnWhat key={kind} kind={kind} printing={printing} />
      <Offset
        key={`offset ${kind} ${printing.chosen[kind].printer}`}
        kind={kind}
        printing={printing}
      />
    </Dialog>
  )
}

/** Stands for no printer in a choice, which holds texts. */
const pdf = ''

function OnWhat({ kind, printing }: { kind: LabelKind; printing: PrintingView }) {
  const stocks = useStocks()
  const printers = useAsk('printers', nothing, { everyMs: 10_000 })
  const { tell, refusal } = useTell('printing.choose')
  const chosen = printing.chosen[kind]
  const found = printers.data?.printers ?? []
  const gone = chosen.printer !== null && !found.some(({ name }) => name === chosen.printer)
  return (
    <>
      <Choice
        label="They are on"
        options={stocks.map(({ name, words, kitLabels, tooSmall }) => ({
          value: name,
          label: words,
          hint:
            kind !== 'kits'
              ? undefined
              : kitLabels === null
                ? (tooSmall ?? 'too small for a kit')
                : `a kit takes ${kitLabels} labels`,
        }))}
        value={chosen.stock}
        onChange={(stock) => void tell({ kind, printer: chosen.printer, stock })}
      />
      <Choice
        label="They are printed by"
        options={[
          { value: pdf, label: 'a PDF', hint: 'printed by hand, at 100% of its size' },
          ...found.map(({ name, words, trouble }) => ({
            value: name,
            label: words,
            hint: trouble ?? 'ready',
          })),
        ]}
        value={chosen.printer ?? pdf}
        onChange={(name) =>
          void tell({ kind, printer: name === pdf ? null : name, stock: chosen.stock })
        }
      />
      {printers.data?.trouble && <Notice kind="info">{printers.data.trouble}</Notice>}
      {printers.data && gone && (
        <Notice kind="warn">
          The printer {chosen.printer} is not there now. Plug it in, or choose another.
        </Notice>
      )}
      <RefusalNote refusal={refusal} />
    </>
  )
}

/** A length with its sign, with a point or a comma; null for anything else. */
function millimetres(text: string): number | null {
  const tidy = text.trim().replace(',', '.').replace('−', '-')
  return /^[+-]?\d{1,2}(?:\.\d{1,2})?$/.test(tidy) && Math.abs(Number(tidy)) <= 10
    ? Number(tidy)
    : null
}

const noOffset: PrinterOffset = { rightMm: 0, downMm: 0 }

function Offset({ kind, printing }: { kind: LabelKind; printing: PrintingView }) {
  const { printer } = printing.chosen[kind]
  const kept = printing.offsets[printer ?? pdf] ?? noOffset
  const [right, setRight] = useState(String(kept.rightMm))
  const [down, setDown] = useState(String(kept.downMm))
  const [error, setError] = useState<'right' | 'down'>()
  const offset = useTell('printing.offset')
  const calibrate = useTell('printing.calibrate')
  async function keep() {
    const [rightMm, downMm] = [millimetres(right), millimetres(down)]
    setError(rightMm === null ? 'right' : downMm === null ? 'down' : undefined)
    if (rightMm === null || downMm === null) return
    const answer = await offset.tell({ printer, rightMm, downMm })
    if (answer.ok) sayDone(`${printer ?? 'The PDF'} is moved from the next label on.`)
    else sayRefused(answer.refusal)
  }
  async function page() {
    const answer = await calibrate.tell({ kind })
    if (answer.ok) sayDone(`Calibration page. ${takeLabels(answer.value)}`)
    else sayRefused(answer.refusal)
  }
  const asked = 'From −10 to 10 mm, such as 1.5.'
  return (
    <fieldset className="offset">
      <legend>If it prints off its place: {printer ?? 'PDF'}</legend>
      <p>
        Print the calibration page. Both lines must be 5 mm from the edges of the label; say by how
        much they must move.
      </p>
      <div className="row">
        <TextEntry
          label="Move right, mm"
          value={right}
          onChange={setRight}
          maxLength={6}
          numbers
          error={error === 'right' ? asked : undefined}
        />
        <TextEntry
          label="Move down, mm"
          value={down}
          onChange={setDown}
          maxLength={6}
          numbers
          error={error === 'down' ? asked : undefined}
        />
        <Button onPress={() => void keep()}>Keep</Button>
        <Button keyHint="Alt+C" isDisabled={calibrate.busy} onPress={() => void page()}>
          Calibration page
        </Button>
      </div>
    </fieldset>
  )
}
