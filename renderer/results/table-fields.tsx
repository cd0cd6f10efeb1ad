import {
  delimiterWords,
  encodingWords,
  FileDelimiter,
  FileEncoding,
} from '../../shared-types/laboratory-result.ts'
import type { ResultLookView } from '../../shared-types/views/results.ts'
import { Pick } from '../parts/pick.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import type { ReadingDraft } from './reading-draft.ts'

/** How the file is cut: its letters and separator, or its sheet, and the line of the headings. */
export function TableFields(props: {
  look: ResultLookView
  draft: ReadingDraft
  say: (more: Partial<ReadingDraft>) => void
}) {
  const { look, draft, say } = props
  const { table } = look
  return (
    <div className="results-fields">
      {table.is === 'workbook' ? (
        <Pick
          label="Sheet"
          options={look.sheets.map((value) => ({ value, label: value }))}
          value={table.sheet}
          onChange={(sheet) => say({ table: { is: 'workbook', sheet }, linesAbove: null })}
        />
      ) : (
        <>
          <Pick
            label="Letters"
            options={FileEncoding.options.map((value) => ({ value, label: encodingWords[value] }))}
            value={table.encoding}
            onChange={(encoding) => say({ table: { ...table, encoding } })}
            hint={look.encodingSure ? undefined : 'Not certain: look whether the lines read well.'}
          />
          <Pick
            label="Cells parted by"
            options={FileDelimiter.options.map((value) => ({
              value,
              label: delimiterWords[value],
            }))}
            value={table.delimiter}
            onChange={(delimiter) => say({ table: { ...table, delimiter }, linesAbove: null })}
            hint={look.delimiterSure ? undefined : 'Not certain: look at the columns.'}
          />
        </>
      )}
      <TextEntry
        label="Line of the headings"
        type="text"
        inputMode="numeric"
        numbers
        maxLength={3}
        value={String((draft.linesAbove ?? look.linesAbove) + 1)}
        onChange={(text) => {
          const line = Number(text)
          if (Number.isInteger(line) && line >= 1 && line <= 200) say({ linesAbove: line - 1 })
        }}
      />
    </div>
  )
}
