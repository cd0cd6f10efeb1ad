import { type ReactNode, useState } from 'react'
import type { CallInput } from '../../shared-types/desk-api.ts'
import type { AheadView, ForecastView, HourView } from '../../shared-types/views/forecast.ts'
import { useAsk } from '../desk/use-desk.ts'
import { KitsAhead } from '../kits/kits-ahead.tsx'
import { Dialog } from '../parts/dialog.tsx'
import { type ChartPoint, HourChart } from '../parts/hour-chart.tsx'
import { RefusalNote } from '../parts/refusal-note.tsx'
import { useZone } from '../parts/time.tsx'
import { formatClock, formatMinutes } from '../parts/zoned-time.ts'
import { AirReading } from './air-reading.tsx'
import './ahead-dialog.css'
import { WhatIf } from './what-if.tsx'
import { heldWords, rangeWords } from './wait-words.ts'

type Extra = NonNullable<CallInput<'ahead'>['extra']>

/** The rest of the day: who comes, how long they wait, how many samplers it takes, whether kits last. */
export function AheadDialog(props: { forecast: ForecastView | undefined; onClose: () => void }) {
  const [extra, setExtra] = useState<Extra>([])
  const { data, refusal } = useAsk('ahead', { extra }, { everyMs: 60_000 })
  return (
    <Dialog title="The rest of the day" isWide onClose={props.onClose}>
      <RefusalNote refusal={refusal} />
      {data && (
        <div className="ahead">
          <Arrivals ahead={data} />
          <Waits ahead={data} forecast={props.forecast} />
          <Samplers ahead={data}>
            <WhatIf extra={extra} onChange={setExtra} />
          </Samplers>
          <section>
            <KitsAhead kits={data.kits} />
            <AirReading air={props.forecast?.air ?? null} />
          </section>
        </div>
      )}
      {!data && !refusal && <p role="status">Working the line through …</p>}
    </Dialog>
  )
}

function points(
  hours: readonly HourView[],
  zone: string,
  of: (hour: HourView) => Omit<ChartPoint, 'label'>,
): ChartPoint[] {
  return hours.map((hour) => ({ label: formatClock(hour.fromMs, zone), ...of(hour) }))
}

function Arrivals({ ahead }: { ahead: AheadView }) {
  const zone = useZone()
  const { came, more } = ahead
  return (
    <section>
      <HourChart
        title="Arrivals"
        say={`${came} came so far; between ${more.low} and ${more.high} more are expected by ${formatClock(ahead.closesMs, zone)}.`}
        unit="animals an hour"
        words={{ bar: 'Came', range: 'expected' }}
        points={points(ahead.hours, zone, (hour) => ({ bar: hour.came, range: hour.expected }))}
      />
    </section>
  )
}

function Waits({ ahead, forecast }: { ahead: AheadView; forecast: ForecastView | undefined }) {
  const zone = useZone()
  const { hours, targetWaitMinutes: target } = ahead
  const car = forecast?.carNow
  const held = forecast && heldWords(forecast.held)
  const say = [
    car ? `A car that drives in now waits ${rangeWords(car)}.` : 'No wait can be told now.',
    held ? `${held}.` : 'No wait told today is over yet.',
  ].join(' ')
  return (
    <section>
      <HourChart
        title="Waits"
        say={say}
        unit="minutes"
        words={{ bar: 'Waited, typically', range: 'four of five wait' }}
        points={points(hours, zone, ({ is, wait }) => ({
          bar: is === 'past' ? (wait?.typical ?? null) : null,
          range: is === 'past' ? null : wait,
        }))}
        level={{ at: target, words: `target ${target} min` }}
      />
    </section>
  )
}

function Samplers({ ahead, children }: { ahead: AheadView; children: ReactNode }) {
  const { staffing, whatIf } = ahead
  const { outlook } = staffing
  return (
    <section className="ahead-samplers">
      <h3>Samplers</h3>
      <p>
        <strong>{staffing.say}</strong>
      </p>
      {children}
      {whatIf && (
        <p role="status" className="ahead-what-if">
          {whatIf.say}
        </p>
      )}
      {outlook.typical !== null && (
        <p>
          As it is, half wait under {formatMinutes(outlook.typical)} and nine in ten under{' '}
          {formatMinutes(outlook.ninetieth ?? 0)}
          {outlook.leftOver > 0 && `; about ${outlook.leftOver} are not taken before shifts end`}.
        </p>
      )}
      <p>
        {staffing.lastHour} came in the last hour; one sampler does about{' '}
        {staffing.perSamplerHour.toFixed(1)} an hour. {staffing.steadySay}
      </p>
    </section>
  )
}
