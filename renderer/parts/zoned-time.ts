/** Local time with its zone, written the same way on every screen. */
const formats = new Map<string, Intl.DateTimeFormat>()

function formatOf(zone: string): Intl.DateTimeFormat {
  const known = formats.get(zone)
  if (known) return known
  // US English knows the short names of North American zones (MST); others come as GMT+1.
  const format = new Intl.DateTimeFormat('en-US', {
    timeZone: zone,
    weekday: 'short',
    day: 'numeric',
    month: 'short',
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
    timeZoneName: 'short',
  })
  formats.set(zone, format)
  return format
}

function partsOf(ms: number, zone: string): Record<string, string> {
  return Object.fromEntries(
    formatOf(zone)
      .formatToParts(ms)
      .map((part) => [part.type, part.value]),
  )
}

/** `Sat 14 Nov, 17:42 MST`. */
export function formatTime(ms: number, zone: string): string {
  const { weekday, day, month, hour, minute, timeZoneName } = partsOf(ms, zone)
  return `${weekday} ${day} ${month}, ${hour}:${minute} ${timeZoneName}`
}

/** `17:42`, for where the day and the zone already stand beside it. */
export function formatClock(ms: number, zone: string): string {
  const { hour, minute } = partsOf(ms, zone)
  return `${hour}:${minute}`
}

/** `Saturday 14 November 2026` from a calendar day, whatever the zone. */
export function formatDate(date: string): string {
  const format = new Intl.DateTimeFormat('en-US', {
    timeZone: 'UTC',
    weekday: 'long',
    day: 'numeric',
    month: 'long',
    year: 'numeric',
  })
  const parts = format.formatToParts(new Date(`${date}T00:00:00Z`))
  const { weekday, day, month, year } = Object.fromEntries(parts.map((p) => [p.type, p.value]))
  return `${weekday} ${day} ${month} ${year}`
}

/** `42 min`, from two hours on `2 h 05 min`. Never less than none. */
export function formatMinutes(minutes: number): string {
  const whole = Math.max(0, Math.floor(minutes))
  if (whole < 120) return `${whole} min`
  return `${Math.floor(whole / 60)} h ${String(whole % 60).padStart(2, '0')} min`
}
