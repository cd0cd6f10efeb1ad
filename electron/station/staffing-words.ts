/** What the staffing figures say, in sentences a lead can repeat. */
import type { SteadyLine } from './erlang-c.ts'

export function saySteady(line: SteadyLine, working: number): string {
  const crew = `${working} ${working === 1 ? 'sampler' : 'samplers'}`
  if (line.is === 'grows')
    return working === 0
      ? 'Nobody is on duty, so the line grows with everyone who comes.'
      : `At the last hour's arrivals the line grows without limit with ${crew}: by about ${Math.round(line.growth * 60)} an hour.`
  const wait = Math.round(line.meanWait)
  const chance = Math.round(line.chanceOfWait * 100)
  return `If arrivals stayed as in the last hour, ${crew} would make ${chance} in 100 wait, ${wait < 1 ? 'under a minute' : `about ${wait} min`} on average.`
}

export function sayToAdd(toAdd: number | null, targetMinutes: number): string {
  if (toAdd === null)
    return `Not even seven more samplers keep the typical wait under ${targetMinutes} minutes: tell hunters early, and send some to another station.`
  if (toAdd === 0)
    return `Those on shift keep the typical wait under ${targetMinutes} minutes for the rest of the day.`
  return `${toAdd} more ${toAdd === 1 ? 'sampler' : 'samplers'} from now would keep the typical wait under ${targetMinutes} minutes.`
}

interface Figures {
  readonly typical: number | null
  readonly leftOver: number
}

/** What a change would do. */
export function sayOutlook(before: Figures, after: Figures): string {
  const words = ({ typical }: Figures) =>
    typical === null ? 'nobody taken' : `${Math.round(typical)} min`
  const saved = before.leftOver - after.leftOver
  const more = saved > 0 ? `, and ${saved} more are taken before the last sampler goes home` : ''
  return `Typical wait for the rest of the day: ${words(after)} instead of ${words(before)}${more}.`
}
