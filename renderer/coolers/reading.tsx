import type { ReadingView } from '../../shared-types/views/coolers.ts'
import { Badge } from '../parts/badge.tsx'
import { bothScales } from './temperature.ts'

/** A reading in both scales, with whether it lies within the station's limits. */
export function ReadingText(props: { reading: ReadingView }) {
  const { celsius, excursion } = props.reading
  return (
    <span className="cooler-reading">
      <b className="numbers">{bothScales(celsius)}</b>{' '}
      <Badge shape={excursion ? 'now' : 'fine'}>
        {excursion ? 'out of limits' : 'within limits'}
      </Badge>
    </span>
  )
}
