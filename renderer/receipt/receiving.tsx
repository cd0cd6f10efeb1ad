import { useState } from 'react'
import type { CallInput } from '../../shared-types/desk-api.ts'
import type { ManifestCheckView } from '../../shared-types/views/custody.ts'
import { useAsk } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { base64Of, FileEntry, type TakenFile, textOf } from '../parts/file-entry.tsx'
import { Notice } from '../parts/notice.tsx'
import { Panel } from '../parts/panel.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { CounterScan } from './counter-scan.tsx'

function inputOf(file: TakenFile): CallInput<'manifest.check'> {
  return new TextDecoder('latin1').decode(file.bytes.subarray(0, 5)) === '%PDF-'
    ? { form: 'pdf', base64: base64Of(file) }
    : { form: 'json', text: textOf(file) }
}

/** The receiving side: does the paper hold, and is every bag of it in the coolers? */
export function Receiving(props: {
  /** Where the button leads that leaves this delivery. */
  done: string
  onDone: () => void
}) {
  const [input, setInput] = useState<CallInput<'manifest.check'>>()
  const { data, refusal } = useAsk('manifest.check', input ?? { form: 'json', text: '-' }, {
    enabled: input !== undefined,
  })
  const shown = input === undefined || refusal ? undefined : data
  return (
    <>
      <h1>Check a delivery</h1>
      <Panel
        title="1. Paper and file"
        actions={
          <Button keyHint="Alt+X" onPress={props.onDone}>
            {props.done}
          </Button>
        }
      >
        <FileEntry
          label="The manifest that came with it (PDF or JSON)"
          accept=".pdf,.json"
          onFile={(file) => setInput(inputOf(file))}
        />
        {input !== undefined && <RefusalNote refusal={refusal} />}
        {shown && <Verdict check={shown} />}
      </Panel>
      {shown && <CounterScan key={shown.digests.computed} check={shown} onDone={props.onDone} />}
    </>
  )
}

function Verdict(props: { check: ManifestCheckView }) {
  const { state, say, next, findings, digests } = props.check
  return (
    <Notice kind={state === 'agrees' ? 'good' : 'warn'}>
      <p>
        <b>{say}</b> {next}
      </p>
      {findings.length > 0 && (
        <ul aria-label="Differences">
          {findings.map((finding) => (
            <li key={finding.say}>{finding.say}</li>
          ))}
        </ul>
      )}
      <p className="handoff-digest">
        Digest stated {digests.stated ?? 'none'}; of the data {digests.computed ?? 'none'}; in the
        log {digests.log ?? 'none'}.
      </p>
    </Notice>
  )
}
