import { useState } from 'react'
import type { ReceiptColumns } from '../../shared-types/receipt.ts'
import { useAsk } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Choice } from '../parts/choice.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { Table } from '../parts/table.tsx'

const none = 'none'

/** Which column of a counter-scan's file is what: the person says so, nothing is guessed. */
export function CountFile(props: {
  file: { name: string; text: string }
  busy: boolean
  onSaid: (columns: ReceiptColumns) => void
  onClose: () => void
}) {
  const { file } = props
  const [bag, setBag] = useState<string | null>(null)
  const [condition, setCondition] = useState<string | null>(null)
  const { data: look, refusal } = useAsk('logger.look', { text: file.text })
  const columns = Array.from({ length: look?.columns ?? 0 }, (_, place) => ({
    value: String(place),
    label: `${place + 1}: ${look?.rows.map((row) => row[place]).findLast(Boolean) ?? ''}`,
  }))
  const rows = (look?.rows ?? []).slice(0, 4).map((cells, line) => ({ line, cells }))
  return (
    <Dialog title={`Columns of ${file.name}`} onClose={props.onClose}>
      <div className="stack">
        <RefusalNote refusal={refusal} />
        <Table
          caption="First lines of the file"
          columns={[
            { head: 'Line', cell: ({ line }) => line + 1 },
            ...columns.map(({ value }, place) => ({
              head: String(Number(value) + 1),
              cell: ({ cells }: (typeof rows)[number]) => cells[place] ?? '',
            })),
          ]}
          rows={rows}
          rowKey={({ line }) => String(line)}
        />
        <Choice
          label="Column of the bag’s number"
          options={columns}
          value={bag}
          onChange={setBag}
          autoFocus
        />
        <Choice
          label="Column that says what is wrong with it"
          options={[...columns, { value: none, label: 'there is none' }]}
          value={condition}
          onChange={setCondition}
        />
        <div className="row">
          <Button
            kind="main"
            keyHint="F12"
            isDisabled={props.busy || bag === null || condition === null}
            why="choose both columns"
            onPress={() =>
              props.onSaid({
                bag: Number(bag),
                condition: condition === none ? null : Number(condition),
              })
            }
          >
            Report this file
          </Button>
        </div>
      </div>
    </Dialog>
  )
}
