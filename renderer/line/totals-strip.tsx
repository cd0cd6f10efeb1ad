import type { ReactNode } from 'react'
import type { CallOutput } from '../../shared-types/desk-api.ts'
import './totals-strip.css'

/** The day in numbers, and how long people waited. */
export function TotalsStrip(props: { line: CallOutput<'line'> }) {
  const { totals, waits } = props.line
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
      <Total words="recorded only">{totals.recorded}</Total>
      <Total words="min, half of the waits">{minutes(waits.medianMinutes)}</Total>
      <Total words="min, nine in ten">{minutes(waits.ninetiethMinutes)}</Total>
    </dl>
  )
}

function minutes(value: number | null): string {
  return value === null ? '–' : String(Math.round(value))
}

function Total(props: { words: string; children: ReactNode }) {
  return (
    <div>
      <dt>{props.words}</dt>
      <dd className="numbers">{props.children}</dd>
    </div>
  )
}
