import { TextEntry } from '../parts/text-entry.tsx'
import { Stop } from './stops.tsx'

/** The calendar day before: days have no zone, so they are counted in UTC. */
function dayBefore(date: string): string {
  return new Date(Date.parse(date) - 86_400_000).toISOString().slice(0, 10)
}

/** The date of harvest. A date field takes digits only, so T and Y are free for today and yesterday. */
export function HarvestDate(props: {
  date: string
  today: string
  error: string | undefined
  onChange: (date: string) => void
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
      </Stop>
    </div>
  )
}
