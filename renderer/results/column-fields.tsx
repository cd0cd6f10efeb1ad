import type { DateOrder } from '../../shared-types/readings-file.ts'
import type { ResultLookView } from '../../shared-types/views/results.ts'
import { Choice } from '../parts/choice.tsx'
import { Pick } from '../parts/pick.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import { needsOrder, noColumn, type ReadingDraft } from './reading-draft.ts'

type Say = (more: Partial<ReadingDraft>) => void

function columnsOf({ headings }: ResultLookView) {
  return headings.map((heading, at) => ({
    value: String(at),
    label: `${at + 1}: ${heading.trim() || '(no heading)'}`,
  }))
}

const picked = (at: number | null) => (at === null ? null : String(at))

/** Which column is what. A method or a day may also hold for the whole file. */
export function ColumnFields(props: { look: ResultLookView; draft: ReadingDraft; say: Say }) {
  const { look, draft, say } = props
  const columns = columnsOf(look)
  const orNone = [...columns, { value: String(noColumn), label: 'no column' }]
  return (
    <>
      <div className="results-fields">
        <Pick
          label="Column of the sample number"
          options={columns}
          value={picked(draft.number)}
          onChange={(at) => say({ number: Number(at) })}
        />
        <Pick
          label="Column of the result"
          options={columns}
          value={picked(draft.word)}
          onChange={(at) => say({ word: Number(at) })}
        />
        <Pick
          label="Column of the test method"
          options={orNone}
          value={picked(draft.method)}
          onChange={(at) => say({ method: Number(at) })}
        />
        <Pick
          label="Column of the test day"
          options={orNone}
          value={picked(draft.tested)}
          onChange={(at) => say({ tested: Number(at), dateOrder: null })}
        />
        {draft.method === noColumn && (
          <TextEntry
            label="Test method of the whole file"
            hint="Such as ELISA or IHC; leave it empty if it is not known."
            maxLength={60}
            value={draft.methodSaid}
            onChange={(methodSaid) => say({ methodSaid })}
          />
        )}
        {draft.tested === noColumn && (
          <TextEntry
            label="Test day of the whole file"
            type="date"
            numbers
            value={draft.testedOn}
            onChange={(testedOn) => say({ testedOn })}
          />
        )}
      </div>
      {needsOrder(draft, look) && <OrderQuestion {...props} />}
    </>
  )
}

const orderWords: Record<DateOrder, string> = {
  'year-month-day': 'year, month, day',
  'month-day-year': 'month, day, year',
  'day-month-year': 'day, month, year',
}

/** Nobody can tell 3/4 by looking: the person who has the laboratory's paper can. */
function OrderQuestion(props: { look: ResultLookView; draft: ReadingDraft; say: Say }) {
  const { look, draft, say } = props
  return (
    <Choice<DateOrder>
      label={`How it writes a day, such as ${look.datesSeen.slice(0, 3).join(', ')}`}
      hint="The file can be read either way. Look at the laboratory's paper, or ask."
      options={look.dateOrders.map((value, at) => ({
        value,
        label: orderWords[value],
        key: 'abc'[at],
      }))}
      value={draft.dateOrder}
      onChange={(dateOrder) => say({ dateOrder })}
    />
  )
}
