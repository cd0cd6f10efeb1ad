import { useState } from 'react'
import { useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Choice } from '../parts/choice.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { saidAt } from '../parts/said-at.ts'
import { TextEntry } from '../parts/text-entry.tsx'
import { sayDone } from '../scanner/strip.ts'
import {
  badField,
  type FieldName,
  fields,
  rollFields,
  type StockDraft,
  sheetFields,
  stockOfDraft,
} from './stock-draft.ts'
import { StockPreview } from './stock-preview.tsx'

const kinds = [
  { value: 'roll', label: 'a roll', hint: 'one label after another' },
  { value: 'sheet', label: 'sheets', hint: 'labels in rows and columns' },
] as const
const dots = ['203', '300', '600'].map((value) => ({
  value: value as StockDraft['dpi'],
  label: `${value} dpi`,
}))

/** The measurements of a stock, with what its labels look like beside them. */
export function StockForm(props: { start: StockDraft; onDone: () => void }) {
  const [draft, setDraft] = useState(props.start)
  const [error, setError] = useState<FieldName | 'coldC' | null>(null)
  const { tell, busy, refusal } = useTell('stock.describe')
  const isWhole = badField(draft) === null
  async function keep() {
    const bad = badField(draft)
    setError(bad)
    if (bad !== null) return
    const answer = await tell({ stock: stockOfDraft(draft) })
    if (!answer.ok) return
    sayDone('The label stock is in the table.')
    props.onDone()
  }
  return (
    <form
      className="stock-form"
      onSubmit={(event) => {
        event.preventDefault()
        void keep()
      }}
    >
      <Measures draft={draft} error={error} refusal={refusal} onChange={setDraft} />
      <RefusalNote refusal={refusal} />
      <div className="row">
        <Button type="submit" kind="main" keyHint="Enter" isDisabled={busy}>
          Keep in the table
        </Button>
        <Button onPress={props.onDone}>Back to the table</Button>
      </div>
      {isWhole && <StockPreview stock={stockOfDraft(draft)} />}
    </form>
  )
}

function Measures(props: {
  draft: StockDraft
  error: FieldName | 'coldC' | null
  refusal: Parameters<typeof saidAt>[0]
  onChange: (draft: StockDraft) => void
}) {
  const { draft, error, refusal, onChange } = props
  const names = draft.kind === 'roll' ? rollFields : sheetFields
  const said = (name: FieldName | 'coldC') =>
    error === name ? 'A number, such as 25.4.' : saidAt(refusal, name)
  return (
    <>
      <Choice
        label="The labels come on"
        options={kinds}
        value={draft.kind}
        onChange={(kind) => onChange({ ...draft, kind })}
        autoFocus
      />
      <Choice
        label="Printer dots an inch"
        options={dots}
        value={draft.dpi}
        onChange={(dpi) => onChange({ ...draft, dpi })}
      />
      <div className="stock-fields">
        {names.map((name) => (
          <TextEntry
            key={name}
            label={`${fields[name]}${name === 'columns' || name === 'rows' ? '' : ', mm'}`}
            value={draft.texts[name] ?? ''}
            onChange={(text) => onChange({ ...draft, texts: { ...draft.texts, [name]: text } })}
            inputMode="decimal"
            maxLength={7}
            numbers
            error={said(name)}
          />
        ))}
        <TextEntry
          label="Holds down to, °C"
          hint="as its maker says; empty if unknown"
          value={draft.coldC}
          onChange={(coldC) => onChange({ ...draft, coldC })}
          maxLength={4}
          numbers
          error={said('coldC')}
        />
      </div>
    </>
  )
}
