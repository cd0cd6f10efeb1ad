import { useNow } from '../desk/use-now.ts'
import { useWho } from '../desk/use-desk.ts'
import { formatMinutes, formatTime } from './zoned-time.ts'

/** The station's zone, or UTC while it is not known yet. */
export function useZone(): string {
  return useWho()?.station.zone ?? 'UTC'
}

/** A moment as the station's local time with its zone. */
export function Time(props: { ms: number }) {
  const zone = useZone()
  return <time dateTime={new Date(props.ms).toISOString()}>{formatTime(props.ms, zone)}</time>
}

/** How long ago a moment was, in minutes, moving on by itself. */
export function Ago(props: { ms: number }) {
  const now = useNow()
  return <span className="numbers">{formatMinutes((now - props.ms) / 60_000)}</span>
}
