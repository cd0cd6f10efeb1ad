import type { CallOutput } from '../../shared-types/desk-api.ts'
import type { BackupPlace, BackupView } from '../../shared-types/views/safekeeping.ts'
import { nothing, useAsk, useMay, useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { Notice } from '../parts/notice.tsx'
import { Panel } from '../parts/panel.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { Ago, Time } from '../parts/time.tsx'
import { sayDone } from '../scanner/strip.ts'

const leadOnly = 'a station lead does this'

/** Where the log is copied while people work, and whether the last copy was good. */
export function BackupPanel() {
  const { data } = useAsk('backup', nothing, { everyMs: 30_000 })
  if (data === undefined) return null
  return (
    <Panel title="Backups">
      <LastBackup view={data} />
      {data.trouble && (
        <Notice kind="warn">
          {data.trouble.say} {data.trouble.next}
        </Notice>
      )}
      {data.place && <BackupDeeds />}
      <Places others={data.others} hasPlace={data.place !== null} />
    </Panel>
  )
}

function LastBackup({ view }: { view: BackupView }) {
  const { place, last, apart } = view
  if (place === null)
    return (
      <Notice kind="warn">
        No backup is kept: if this laptop is lost, so is the day. Plug in a stick or disk and choose
        it here.
      </Notice>
    )
  return (
    <>
      <p>
        Copied to <b>{place.name}</b> after every change.{' '}
        {last === null ? (
          'No good copy yet.'
        ) : (
          <>
            Last good copy <Time ms={last.atMs} />, <Ago ms={last.atMs} /> ago, with{' '}
            <span className="numbers">{last.entries}</span> entries.
          </>
        )}
      </p>
      {!apart && (
        <Notice kind="warn">
          That folder is on the same disk as the log: it does not help when the disk fails.
        </Notice>
      )}
    </>
  )
}

function BackupDeeds() {
  const now = useTell('backup.now')
  const drill = useTell('backup.drill')
  const stop = useTell('backup.stop')
  const [mayDrill, mayStop] = [useMay('backup.drill'), useMay('backup.stop')]
  async function tryBackup() {
    const tried = await drill.tell({})
    if (tried.ok) sayDone(drillWords(tried.value))
  }
  async function backUp() {
    const made = await now.tell({})
    if (made.ok) sayDone(`A good copy with ${made.value.entries} entries is there.`)
  }
  return (
    <>
      <RefusalNote refusal={now.refusal ?? drill.refusal ?? stop.refusal} />
      <div className="row">
        <Button keyHint="b" isDisabled={now.busy} onPress={() => void backUp()}>
          {now.busy ? 'Copying…' : 'Back up now'}
        </Button>
        <Button
          keyHint="t"
          isDisabled={drill.busy || !mayDrill}
          why={mayDrill ? undefined : leadOnly}
          onPress={() => void tryBackup()}
        >
          {drill.busy ? 'Trying…' : 'Try the backup'}
        </Button>
        <Button isDisabled={!mayStop} why={leadOnly} onPress={() => void stop.tell({})}>
          Stop backups
        </Button>
      </div>
    </>
  )
}

function drillWords({ entries, behind, whole, findings }: CallOutput<'backup.drill'>): string {
  if (!whole) return `The backup opens, but: ${findings.join(' ')} Make a new one elsewhere.`
  const lag = behind === 0 ? 'nothing is missing' : `${behind} entries behind the log`
  return `Restored for a try: ${entries} entries, whole, ${lag}.`
}

function Places(props: { others: readonly BackupPlace[]; hasPlace: boolean }) {
  const { tell, busy, refusal } = useTell('backup.choose')
  const mayChoose = useMay('backup.choose')
  async function choose(place: BackupPlace) {
    const made = await tell({ place: place.mark })
    if (made.ok) sayDone(`Backups go to ${place.name} from now on.`)
  }
  if (props.others.length === 0 && props.hasPlace) return null
  return (
    <>
      <RefusalNote refusal={refusal} />
      {props.others.length === 0 && <p>No other disk or stick is plugged in.</p>}
      <div className="row">
        {props.others.map((place) => (
          <Button
            key={place.mark}
            isDisabled={busy || !mayChoose}
            why={mayChoose ? undefined : leadOnly}
            onPress={() => void choose(place)}
          >
            Keep backups on {place.name}
          </Button>
        ))}
      </div>
    </>
  )
}
