import { useEffect, useRef, useState } from 'react'
import { fill } from '../../shared-types/fill.ts'
import { type PracticeSpeed, practiceSpeeds } from '../../shared-types/practice.ts'
import type { LivePracticeView } from '../../shared-types/views/practice.ts'
import { nothing, useAsk, useTell } from '../desk/use-desk.ts'
import { setClockRate } from '../desk/use-now.ts'
import { PracticeBand } from '../frame/banners.tsx'
import { Button } from '../parts/button.tsx'
import { LiveScene } from './live-scene.tsx'
import './practice.css'
import { ScoreDialog } from './score-dialog.tsx'
import { practiceWords as words, roleTiles } from './words.ts'

/** Stands on every screen of a practice: that it is one, and of a live morning its pace and its scene. */
export function PracticeBar() {
  const live = useAsk('practice', nothing, { everyMs: 5000 }).data?.live ?? null
  const rate = live === null ? 1 : live.speed
  useEffect(() => {
    setClockRate(rate)
    return () => setClockRate(1)
  }, [rate])
  if (live === null) return <PracticeBand />
  return (
    <section className="practice-live" aria-label={words.band}>
      <Pace live={live} />
      {!live.isOver && <LiveScene live={live} />}
    </section>
  )
}

function Pace({ live }: { live: LivePracticeView }) {
  const [isScored, setScored] = useState(false)
  const role = roleTiles[live.role].label.toLowerCase()
  return (
    <div className="practice-band practice-pace">
      <p>
        <strong>{words.band}</strong> {live.isOver ? words.ended : fill(words.bandSay, { role })}
      </p>
      <p className="numbers">
        {fill(words.minute, live)} · {fill(words.come, live)}
      </p>
      <div className="row">
        {!live.isOver && <Speed speed={live.speed} />}
        <Button keyHint="Ctrl+M" onPress={() => setScored(true)}>
          {words.score}
        </Button>
      </div>
      {isScored && <ScoreDialog live={live} onClose={() => setScored(false)} />}
    </div>
  )
}

function Speed({ speed }: { speed: PracticeSpeed }) {
  const { tell, busy } = useTell('practice.pace')
  // What the last press asked for: three quick presses are three steps, though the desk answers later.
  const wanted = useRef(speed)
  const told = useRef(speed)
  const before = useRef<PracticeSpeed>(speed > 0 ? speed : 1)
  useEffect(() => {
    // Until the desk has told a new pace, what was asked for stands.
    if (speed === told.current) return
    told.current = speed
    if (!busy) wanted.current = speed
    if (speed > 0) before.current = speed
  }, [speed, busy])
  const pace = (next: PracticeSpeed | undefined) => {
    if (next === undefined) return
    wanted.current = next
    void tell({ speed: next })
  }
  const step = (by: -1 | 1) => pace(practiceSpeeds[practiceSpeeds.indexOf(wanted.current) + by])
  return (
    <>
      <Button keyHint="Ctrl+J" onPress={() => pace(wanted.current > 0 ? 0 : before.current)}>
        {speed === 0 ? words.goOn : words.pause}
      </Button>
      <Button keyHint="Ctrl+," isDisabled={speed === 0} onPress={() => step(-1)}>
        {words.slower}
      </Button>
      <strong className="numbers practice-speed" role="status">
        {speed === 0 ? words.paused : fill(words.speedTile, { speed })}
      </strong>
      <Button keyHint="Ctrl+." isDisabled={speed === practiceSpeeds.at(-1)} onPress={() => step(1)}>
        {words.faster}
      </Button>
    </>
  )
}
