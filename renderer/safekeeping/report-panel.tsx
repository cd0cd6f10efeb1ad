import { useState } from 'react'
import { callDesk } from '../desk/answer.ts'
import { useConnection } from '../desk/desk-provider.tsx'
import { Button } from '../parts/button.tsx'
import { Panel } from '../parts/panel.tsx'
import { saveText } from '../parts/pdf.ts'
import { sayDone, sayRefused } from '../scanner/strip.ts'

/** What the lead sends to whoever helps. They see it first: nobody should send what they cannot read. */
export function ReportPanel() {
  const connection = useConnection()
  const [report, setReport] = useState<{ name: string; text: string }>()
  async function make() {
    const made = await callDesk(connection, 'report', {})
    if (made.ok) setReport(made.value)
    else sayRefused(made.refusal)
  }
  async function copy(text: string) {
    try {
      await navigator.clipboard.writeText(text)
      sayDone('The report is copied: paste it into a message.')
    } catch {
      sayRefused({ say: 'This window may not copy.', next: 'Save the report instead.' })
    }
  }
  return (
    <Panel title="Report a problem">
      <p>
        Says what the program did and refused. No name, tag, number or place of the station is in
        it.
      </p>
      <div className="row">
        <Button onPress={() => void make()}>Show the report</Button>
        {report && (
          <>
            <Button onPress={() => void copy(report.text)}>Copy the report</Button>
            <Button onPress={() => saveText(report)}>Save the report</Button>
          </>
        )}
      </div>
      {report && (
        <textarea className="entry" aria-label="Report" readOnly rows={8} value={report.text} />
      )}
    </Panel>
  )
}
