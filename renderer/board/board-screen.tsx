import { useEffect } from 'react'
import { grouped } from '../../shared-types/sample-number.ts'
import { nothing, useAsk } from '../desk/use-desk.ts'
import { PracticeBand, ReachBanner } from '../frame/banners.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { formatMinutes, formatTime } from '../parts/zoned-time.ts'
import './board-screen.css'

/** How many numbers a screen outside shows without anyone moving it. */
const mostShown = 9

/** For a screen outside: the numbers on the hunters' stubs, next first, and nothing about anyone. */
export function BoardScreen() {
  const { data, refusal } = useAsk('board', nothing, { everyMs: 20_000 })
  useEffect(() => {
    document.title = `Board · ${data?.station ?? ''} · Duskline`
  }, [data?.station])
  if (data === undefined) return <RefusalNote refusal={refusal} />
  const { waiting, working, usualWaitMinutes } = data
  return (
    <main className="board">
      <ReachBanner />
      {data.practice && <PracticeBand />}
      <header>
        <h1>{data.station}</h1>
        <p className="numbers">{formatTime(data.nowMs, data.zone)}</p>
      </header>
      <section aria-labelledby="board-working">
        <h2 id="board-working">At the benches</h2>
        <ul className="board-numbers">
          {working.map((animal) => (
            <li key={animal} className="numbers">
              {grouped(animal)}
            </li>
          ))}
        </ul>
        {working.length === 0 && <p>No animal just now.</p>}
      </section>
      <section aria-labelledby="board-next">
        <h2 id="board-next">Next, in this order</h2>
        <ol className="board-numbers">
          {waiting.slice(0, mostShown).map(({ animal, arrivedMs }) => (
            <li key={animal}>
              <b className="numbers">{grouped(animal)}</b>{' '}
              <span>waiting {formatMinutes((data.nowMs - arrivedMs) / 60_000)}</span>
            </li>
          ))}
        </ol>
        {waiting.length === 0 && <p>No animal is waiting.</p>}
        {waiting.length > mostShown && <p>and {waiting.length - mostShown} more.</p>}
      </section>
      <p>
        {usualWaitMinutes === null
          ? 'Keep your stub: it carries the number of your animal.'
          : `Usual wait today: ${formatMinutes(usualWaitMinutes)}. The order can change: heads that spoil and crew that is trained for them come into it.`}
      </p>
    </main>
  )
}
