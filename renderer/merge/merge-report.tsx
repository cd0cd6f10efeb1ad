import type { ReactNode } from 'react'
import { discrepancyWords } from '../../shared-types/discrepancy.ts'
import type { MergedFile, MergeReportView } from '../../shared-types/views/merge.ts'
import { Badge } from '../parts/badge.tsx'
import { Notice } from '../parts/notice.tsx'
import { Panel } from '../parts/panel.tsx'
import { Table } from '../parts/table.tsx'

/** What came in, what was there already, what could not be taken in, and what is in dispute. */
export function MergeReport(props: { report: MergeReportView; actions: ReactNode }) {
  const { report } = props
  const disputes = report.inDispute.reduce((all, { count }) => all + count, 0)
  return (
    <Panel title={`Merged into ${report.out}`} actions={props.actions}>
      <div className="stack">
        <Notice kind={disputes === 0 ? 'good' : 'info'}>
          <p>
            <strong className="numbers">{report.added}</strong> entries came in,{' '}
            <strong className="numbers">{report.known}</strong> were there already. The record has{' '}
            <strong className="numbers">{report.entries}</strong> entries of{' '}
            <strong className="numbers">{report.desks}</strong> desks.
          </p>
          {report.notUnderstood > 0 && (
            <p>{report.notUnderstood} entries of a later version are kept but shown nowhere.</p>
          )}
          <p>
            {disputes === 0
              ? 'Nothing is in dispute.'
              : `People must settle: ${report.inDispute
                  .map(({ kind, count }) => `${discrepancyWords[kind].toLowerCase()} (${count})`)
                  .join(', ')}.`}
          </p>
        </Notice>
        <Table
          caption="Files merged"
          columns={columns}
          rows={report.files}
          rowKey={({ file }) => file}
        />
      </div>
    </Panel>
  )
}

const columns = [
  { head: 'File', cell: ({ file }: MergedFile) => file },
  { head: 'State', cell: (file: MergedFile) => <FileState file={file} /> },
  {
    head: 'New',
    cell: (file: MergedFile) => (file.state === 'refused' ? '' : file.added),
    isNumber: true,
  },
  {
    head: 'Known',
    cell: (file: MergedFile) => (file.state === 'refused' ? '' : file.known),
    isNumber: true,
  },
  { head: 'What to know', cell: (file: MergedFile) => <FileWords file={file} /> },
]

function FileState(props: { file: MergedFile }) {
  switch (props.file.state) {
    case 'whole':
      return props.file.altered.length > 0 ? (
        <Badge shape="soon">altered</Badge>
      ) : (
        <Badge shape="fine">whole</Badge>
      )
    case 'damaged':
      return <Badge shape="soon">damaged</Badge>
    case 'newer-version':
      return <Badge shape="soon">newer version</Badge>
    case 'refused':
      return <Badge shape="now">not merged</Badge>
  }
}

function FileWords(props: { file: MergedFile }) {
  const { file } = props
  if (file.state === 'refused')
    return (
      <>
        {file.refusal.say} {file.refusal.next}
      </>
    )
  const said = [
    ...file.desks.map(({ desk, lastSeq }) => `${desk} up to ${lastSeq}`),
    ...(file.unreadable > 0 ? [`${file.unreadable} rows could not be read`] : []),
    ...file.altered.map(({ desk, seq }) => `entry ${seq} of ${desk} was altered: set aside`),
  ]
  return said.join('; ')
}
