import type { KitMoveView, KitsAheadView } from '../../shared-types/views/forecast.ts'
import { useMay, useTell } from '../desk/use-desk.ts'
import { Button } from '../parts/button.tsx'
import { type ChartPoint, HourChart } from '../parts/hour-chart.tsx'
import { Notice } from '../parts/notice.tsx'
import { Table } from '../parts/table.tsx'
import { useZone } from '../parts/time.tsx'
import { formatClock } from '../parts/zoned-time.ts'
import { sayDone, sayRefused } from '../scanner/strip.ts'
import './kits-ahead.css'

/** `97 in 100`; never 0 or 100, which nothing is certain of. */
function chanceWords(chance: number): string {
  return `${Math.min(99, Math.max(1, Math.round(chance * 100)))} in 100`
}

/** Whether the kits last to the close, for the station and in each pair of hands, and what to move. */
export function KitsAhead(props: { kits: KitsAheadView }) {
  const { kits } = props
  const zone = useZone()
  return (
    <div className="kits-ahead">
      <HourChart
        title="Kits against what the day needs"
        say={sayKits(kits, zone)}
        unit="kits"
        words={{ bar: 'Kits', range: 'needed by then' }}
        points={pointsOf(kits, zone)}
        level={{ at: kits.kits, words: `${kits.kits} kits here` }}
      />
      {kits.ask > 0 && (
        <Notice kind="warn">
          Ask for <b className="numbers">{kits.ask}</b> more kits: then they last on 95 of 100 such
          days.
        </Notice>
      )}
      <Moves moves={kits.moves} />
      {kits.holders.length > 0 && <Holders kits={kits} zone={zone} />}
    </div>
  )
}

export function sayKits({ kits, chance, shortAtMs }: KitsAheadView, zone: string): string {
  const lasts = `${kits} kits in stock and in hand last to the close with a chance of ${chanceWords(chance)}`
  if (shortAtMs === null) return `${lasts}.`
  return `${lasts}; from ${formatClock(shortAtMs, zone)} on they no longer cover 95 of 100 such days.`
}

function pointsOf({ track }: KitsAheadView, zone: string): ChartPoint[] {
  return track.map(({ ms, need }) => ({ label: formatClock(ms, zone), bar: null, range: need }))
}

const most = 4

/** One key moves the kits as proposed. */
function Moves(props: { moves: readonly KitMoveView[] }) {
  const move = useTell('kits.move')
  const may = useMay('kits.move')
  if (props.moves.length === 0) return null
  async function make({ from, to, count, say }: KitMoveView) {
    const source =
      from === null ? ({ in: 'stock' } as const) : ({ in: 'hands', person: from } as const)
    const answer = await move.tell({
      from: source,
      to: { in: 'hands', person: to },
      count,
      reason: '',
    })
    if (!answer.ok) return sayRefused(answer.refusal)
    sayDone(say.replace(/^Move/, 'Moved'))
  }
  return (
    <ul className="kits-ahead-moves" aria-label="Moves proposed for the next two hours">
      {props.moves.slice(0, most).map((each, place) => (
        <li key={each.say}>
          <Button
            keyHint={String(place + 1)}
            isDisabled={!may || move.busy}
            why={may ? undefined : 'not your role'}
            onPress={() => void make(each)}
          >
            {each.say}
          </Button>
        </li>
      ))}
    </ul>
  )
}

function Holders(props: { kits: KitsAheadView; zone: string }) {
  return (
    <Table
      caption="Kits in hand"
      rows={props.kits.holders}
      rowKey={({ person }) => person}
      columns={[
        { head: 'In hand', cell: ({ name }) => name },
        { head: 'kits', isNumber: true, cell: ({ kits }) => kits },
        { head: 'last to close', isNumber: true, cell: ({ chance }) => chanceWords(chance) },
        {
          head: 'short from',
          isNumber: true,
          cell: ({ shortAtMs }) =>
            shortAtMs === null ? 'not today' : formatClock(shortAtMs, props.zone),
        },
      ]}
    />
  )
}
