import type { ResultsView } from '../../shared-types/views/results.ts'
import { Empty } from '../parts/empty.tsx'
import { Notice } from '../parts/notice.tsx'
import { Panel } from '../parts/panel.tsx'
import { Table } from '../parts/table.tsx'
import { Time } from '../parts/time.tsx'
import { WordBadge } from './word-badge.tsx'

/** Where results stand: by their words, and the files they came in. */
export function Overview({ results }: { results: ResultsView }) {
  const { words, files } = results
  return (
    <>
      <Panel title="Animals by result">
        <div className="stack">
          <Due results={results} />
          <Table
            caption="Animals by result"
            columns={[
              { head: 'Result', cell: ({ word }) => <WordBadge word={word} /> },
              { head: 'Animals', cell: ({ animals }) => animals, isNumber: true },
              { head: 'Hunters to tell', cell: ({ untold }) => untold, isNumber: true },
            ]}
            rows={words}
            rowKey={({ word }) => word}
          />
          <Awaiting awaiting={results.awaiting} />
        </div>
      </Panel>
      <Panel title="Files read in" count={files.length}>
        {files.length === 0 ? (
          <Empty
            say="No laboratory file was read in yet."
            next="Press 2 and choose the first one."
          />
        ) : (
          <Table
            caption="Laboratory files read in"
            columns={[
              { head: 'File', cell: ({ file }) => <span className="results-file">{file}</span> },
              { head: 'Laboratory', cell: ({ laboratory }) => laboratory },
              { head: 'Read', cell: ({ ms, by }) => <ReadBy ms={ms} by={by} /> },
              { head: 'Rows', cell: ({ rows }) => rows, isNumber: true },
              { head: 'Taken', cell: ({ taken }) => taken, isNumber: true },
              { head: 'Known', cell: ({ known }) => known, isNumber: true },
              { head: 'In doubt', cell: ({ doubts }) => doubts, isNumber: true },
            ]}
            rows={files}
            rowKey={({ digest, ms }) => `${digest} ${ms}`}
          />
        )}
      </Panel>
    </>
  )
}

/** Bags on their way or at the laboratory: it has said nothing of some, and "pending" of others. */
function Awaiting({ awaiting }: { awaiting: ResultsView['awaiting'] }) {
  const { unreported, pending } = awaiting
  return (
    <p>
      Bags given to the courier: <strong>{unreported} no result yet</strong> (no laboratory file has
      named them), <strong>{pending} pending</strong> (the laboratory says it is testing them).
    </p>
  )
}

function ReadBy(props: { ms: number; by: string }) {
  return (
    <>
      <Time ms={props.ms} />, {props.by}
    </>
  )
}

/** What wants a person now, the most urgent first. */
function Due({ results }: { results: ResultsView }) {
  const { words, openDoubts, overdue, heldBack, contactsDue } = results
  const detected = words.find(({ word }) => word === 'detected')?.untold ?? 0
  const due = [
    ...(detected > 0 ? [`Detected and not told, ${detected}: press 5 and follow up at once.`] : []),
    ...(openDoubts > 0 ? [`Rows in doubt, ${openDoubts}: press 3.`] : []),
    ...(heldBack > 0
      ? [`Results held back by rows in doubt, ${heldBack} animals: settle those rows, press 3.`]
      : []),
    ...(overdue > 0 ? [`Bags overdue, ${overdue}: press 7.`] : []),
    ...(contactsDue ? ['Contacts are kept longer than the rules say: press 8.'] : []),
  ]
  if (due.length === 0) return null
  return (
    <Notice kind="warn">
      {due.map((line) => (
        <p key={line}>{line}</p>
      ))}
    </Notice>
  )
}
