import type { Reach } from '../../shared-types/views/results.ts'

const instead: Record<Exclude<Reach['is'], 'here'>, string> = {
  'none-left': 'No contact was left.',
  erased: 'Erased after results were told.',
  locked: 'Locked: unlock the contacts on the station screen.',
  'not-yours': 'For leads and the office.',
}

/** How a hunter can be reached, or why not. */
export function ReachText(props: { reach: Reach }) {
  const { reach } = props
  if (reach.is !== 'here') return <span>{instead[reach.is]}</span>
  return (
    <span>
      {reach.name}
      {reach.phone && <span className="results-way numbers">{reach.phone}</span>}
      {reach.email && <span className="results-way">{reach.email}</span>}
    </span>
  )
}
