import { useState } from 'react'
import { useAsk } from '../desk/use-desk.ts'
import { FileEntry } from '../parts/file-entry.tsx'
import { Notice } from '../parts/notice.tsx'
import { Panel } from '../parts/panel.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { TextEntry } from '../parts/text-entry.tsx'
import { PracticeFile } from './practice-file.tsx'
import { ColumnFields } from './column-fields.tsx'
import { FirstLines } from './first-lines.tsx'
import { Preview } from './preview.tsx'
import {
  nothingSaid,
  noColumn,
  type ReadingDraft,
  readingOf,
  rememberedDraft,
  stillToSay,
} from './reading-draft.ts'
import { TableFields } from './table-fields.tsx'
import { type BroughtMark, useBring } from './use-bring.ts'
import { WordFields } from './word-fields.tsx'

/** A laboratory's file is read in: the person says what it is, sees what it brings, and reads it in. */
export function ReadIn(props: {
  laboratories: readonly string[]
  onDone: (doubts: number) => void
}) {
  const [laboratory, setLaboratory] = useState(props.laboratories[0] ?? '')
  const { bring, mark, busy, refusal } = useBring()
  return (
    <Panel title="Read results in" actions={<PracticeFile />}>
      <div className="stack">
        <TextEntry
          label="Laboratory"
          hint="How its last file was read is remembered under this name."
          autoFocus
          maxLength={120}
          offers={props.laboratories}
          value={laboratory}
          onChange={setLaboratory}
        />
        <FileEntry
          label="Its file: CSV, text or workbook (.xlsx)"
          accept=".csv,.txt,.tsv,.xlsx"
          onFile={(file) => void bring(file)}
          hint={busy ? 'Bringing it to the desk…' : undefined}
        />
        <RefusalNote refusal={refusal} />
        {mark && laboratory.trim().length >= 2 && (
          <Mapping
            key={`${mark.brought} ${laboratory}`}
            mark={mark}
            laboratory={laboratory.trim()}
            onDone={props.onDone}
          />
        )}
      </div>
    </Panel>
  )
}

const column = (at: number | null) => (at === null || at === noColumn ? null : at)

function Mapping(props: {
  mark: BroughtMark
  laboratory: string
  onDone: (doubts: number) => void
}) {
  const { mark, laboratory } = props
  const [draft, setDraft] = useState<ReadingDraft>()
  const first = useLook(mark, laboratory, nothingSaid)
  const remembered = first.data?.remembered ?? null
  const said = draft ?? (remembered ? rememberedDraft(remembered) : nothingSaid)
  const { data: look, refusal } = useLook(mark, laboratory, said)
  const say = (more: Partial<ReadingDraft>) => setDraft({ ...said, ...more })
  if (look === undefined) return <RefusalNote refusal={refusal ?? first.refusal} />
  const open = stillToSay(said, look)
  const reading = readingOf(said, look)
  return (
    <>
      <RefusalNote refusal={refusal} />
      {look.readBefore && (
        <Notice kind="info">This very file was read in before. Only what is new is taken.</Notice>
      )}
      {remembered && <Notice kind="info">Read as the last file of this laboratory was.</Notice>}
      <FirstLines look={look} />
      <TableFields look={look} draft={said} say={say} />
      <ColumnFields look={look} draft={said} say={say} />
      <WordFields look={look} draft={said} say={say} />
      {reading ? (
        <Preview mark={mark} laboratory={laboratory} reading={reading} onDone={props.onDone} />
      ) : (
        <p>Still to say: {open.join('; ')}.</p>
      )}
    </>
  )
}

function useLook(mark: BroughtMark, laboratory: string, draft: ReadingDraft) {
  return useAsk('results.look', {
    brought: mark.brought,
    laboratory,
    table: draft.table,
    linesAbove: draft.linesAbove,
    wordColumn: column(draft.word),
    dateColumn: column(draft.tested),
  })
}
