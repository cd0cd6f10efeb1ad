import type { ReactNode } from 'react'
import type { CallOutput } from '../../shared-types/desk-api.ts'
import type { ForecastView } from '../../shared-types/views/forecast.ts'
import './totals-strip.css'
import { rangeWords } from './wait-words.ts'

/** The day in numbers, and how long people waited. */
export function TotalsStrip(props: {
  line: CallOutput<'line'>
  forecast: ForecastView | undefined
}) {
  const { totals, waits } = props.line
  const { carNow, held } = props.forecast ?? {}
  const { both, one, none } = totals.outcomes
  return (
    <dl className="totals">
      <Total words="checked in">{totals.checkedIn}</Total>
      <Total words="waiting">{totals.waiting}</Total>
      <Total words="with samplers">{totals.withSampler}</Total>
      <Total words={`finished: ${both} both, ${one} one side, ${none} none`}>
        {totals.finished}
      </Total>
      <Total words="left">{totals.left}</Total>
      <Total words="recorded">{totals.recorded}</Total>
      <Wait words="half waited under" minutes={waits.medianMinutes} />
      <Wait words="9 in 10 waited under" minutes={waits.ninetiethMinutes} />
      {carNow && <Total words="wait for a car now">{rangeWords(carNow)}</Total>}
      {held && held.told > 0 && (
        <Total words="waits that came true as told">{`${held.held} of ${held.told}`}</Total>
      )}
    </dl>
  )
}

/** Known once somebody has reached a sampler. */
function Wait(props: { words: string; minutes: number | null }) {
  if (props.minutes === null) return null
  return (
    <div className="totals-wait">
      <dt>{props.words}</dt>
      <dd className="numbers">{Math.ceil(props.minutes)} min</dd>
    </div>
  )
}

function Total(props: { words: string; children: ReactNode }) {
  return (
    <div>
      <dt>{props.words}</dt>
      <dd className="numbers">{props.children}</dd>
    </div>
  )
}
