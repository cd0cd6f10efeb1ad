import { TextEntry } from '../parts/text-entry.tsx'
import { Stop } from './stops.tsx'

/** The calendar day before: days have no zone, so they are counted in UTC. */
function dayBefore(date: string): string {
  return new Date(Date.parse(date) - 86_400_000).toISOString().slice(0, 10)
}

/**
 * The date of harvest and, where the hunter knows it, the time: tissue spoils from then on. Enter
 * passes the time by. A date field takes digits only, so T and Y are free for today and yesterday.
 */
export function HarvestDate(props: {
  date: string
  time: string
  today: string
  error: string | undefined
  onChange: (date: string) => void
  onTime: (time: string) => void
}) {
  const { date, today, onChange } = props
  const days: Record<string, string> = { t: today, y: dayBefore(today) }
  return (
    <div
      role="presentation"
      onKeyDown={(event) => {
        const day = event.ctrlKey || event.altKey ? undefined : days[event.key.toLowerCase()]
        if (day !== undefined) onChange(day)
      }}
    >
      <Stop step="harvested">
        <TextEntry
          label="Harvested"
          hint="T today, Y yesterday"
          type="date"
          value={date}
          onChange={onChange}
          error={props.error}
        />
        <TextEntry
          label="at"
          hint="if known: Tab"
          type="time"
          value={props.time}
          onChange={props.onTime}
        />
      </Stop>
    </div>
  )
}
