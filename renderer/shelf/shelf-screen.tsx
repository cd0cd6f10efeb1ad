import { useState } from 'react'
import type { CallOutput } from '../../shared-types/desk-api.ts'
import { nothing, useAsk, useTell } from '../desk/use-desk.ts'
import { ReachBanner } from '../frame/banners.tsx'
import { MergeScreen } from '../merge/merge-screen.tsx'
import { Button } from '../parts/button.tsx'
import { Panel } from '../parts/panel.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { BeginDialog } from '../practice/begin-dialog.tsx'
import { practiceWords } from '../practice/words.ts'
import { ScanStrip } from '../scanner/scan-strip.tsx'
import { sayDone } from '../scanner/strip.ts'
import { BackupsFound } from './backups-found.tsx'
import { LogList } from './log-list.tsx'
import { keepPracticePin } from './practice-pin.ts'
import { SetUp } from './set-up.tsx'
import './shelf-screen.css'

type Shelf = CallOutput<'shelf.look'>

/** Shown while no station log is open: set up a station, practise, or open a log of this folder. */
export function ShelfScreen(props: { shelf: Shelf }) {
  const [doing, setDoing] = useState<'choosing' | 'setting-up' | 'merging'>('choosing')
  const goBack = () => setDoing('choosing')
  const { shelf } = props
  return (
    <div className="frame">
      <header>
        <div className="horizon" />
        <ReachBanner />
      </header>
      <main className="frame-screen">
        {doing === 'setting-up' && <SetUp today={shelf.today} zone={shelf.zone} onBack={goBack} />}
        {doing === 'merging' && (
          <MergeScreen today={shelf.today} zone={shelf.zone} onBack={goBack} />
        )}
        {doing === 'choosing' && (
          <Shelf
            shelf={shelf}
            onSetUp={() => setDoing('setting-up')}
            onMerge={() => setDoing('merging')}
          />
        )}
      </main>
      <footer>
        <ScanStrip />
      </footer>
    </div>
  )
}

function Shelf(props: { shelf: Shelf; onSetUp: () => void; onMerge: () => void }) {
  const practice = useTell('practice.open')
  const [isPractising, setPractising] = useState(false)
  // Logs may be copied into the folder while it is looked at.
  useAsk('shelf.look', nothing, { everyMs: 4000 })
  async function practise() {
    const answer = await practice.tell({})
    if (!answer.ok) return
    keepPracticePin(answer.value.pin)
    sayDone(`A practice day is open. Everyone's PIN is ${answer.value.pin}.`)
  }
  const hasLogs = props.shelf.logs.length > 0
  return (
    <div className="shelf">
      <header>
        <h1>Duskline</h1>
        <p>The desk of a check station: animals in, samples labelled, coolers handed over.</p>
      </header>
      <RefusalNote refusal={practice.refusal} />
      <Panel title={hasLogs ? 'Begin another' : 'No station log is on this laptop yet'}>
        <div className="shelf-ways">
          <div className="stack">
            <Button kind={hasLogs ? 'quiet' : 'main'} keyHint="s" autoFocus onPress={props.onSetUp}>
              Set up a station
            </Button>
            <p>For a real day. Four short steps; you become its lead.</p>
          </div>
          <div className="stack">
            <Button keyHint="p" isDisabled={practice.busy} onPress={() => void practise()}>
              {practice.busy ? 'Playing the morning…' : 'Open a practice day'}
            </Button>
            <p>An invented opening morning to learn on. Marked as practice for ever.</p>
          </div>
          <div className="stack">
            <Button keyHint="l" onPress={() => setPractising(true)}>
              {practiceWords.begin}
            </Button>
            <p>{practiceWords.beginHint}</p>
          </div>
          <div className="stack">
            <Button keyHint="m" onPress={props.onMerge}>
              Merge station logs
            </Button>
            <p>For the office: one record out of the logs of many stations.</p>
          </div>
        </div>
      </Panel>
      {hasLogs && <LogList shelf={props.shelf} />}
      <BackupsFound logs={props.shelf.logs} />
      {isPractising && <BeginDialog onClose={() => setPractising(false)} />}
    </div>
  )
}
