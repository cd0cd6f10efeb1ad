/** How many samplers keep the typical wait under the station's target, for the rest of the day. */
import type { Draws } from './draws.ts'
import { lowTypicalHigh } from './figures.ts'
import type { CameLater, Scenario, Simulated, SimulatedSampler } from './line-simulation.ts'
import { simulateLine } from './line-simulation.ts'
import type { Pace } from './service-time.ts'
import { everySkill } from './skills.ts'

/** More people at the line from some minute on. */
export interface ExtraSamplers {
  readonly count: number
  readonly fromMinutes: number
}

/** Minutes of wait of those who wait now and those who come, to the close. */
export interface RestOfDayWaits {
  /** Null where nobody is taken. */
  readonly typical: number | null
  readonly ninetieth: number | null
  /** Animals that nobody would take before the last sampler goes home, on a typical day. */
  readonly leftOver: number
}

export interface DayOutlook extends RestOfDayWaits {
  /** The waits of those who come within each hour, from so many minutes from now on. */
  readonly hours: readonly {
    readonly fromMinutes: number
    readonly low: number
    readonly typical: number
    readonly high: number
  }[]
}

/** Enough runs for a typical wait good to a minute or so; the answer must come at once. */
const runs = 32
const hourMinutes = 60

export type RestOfDay = Omit<Scenario, 'runs' | 'followComing'>

/** The rest of the day by simulation, with these people and so many more. */
export function outlookOf(
  rest: RestOfDay,
  extra: readonly ExtraSamplers[],
  pace: Pace,
  draws: Draws,
): DayOutlook {
  const simulated = simulateRest(rest, extra, pace, draws)
  return { ...waitsOf(simulated), hours: hoursOf(simulated.later) }
}

function simulateRest(
  rest: RestOfDay,
  extra: readonly ExtraSamplers[],
  pace: Pace,
  draws: Draws,
): Simulated {
  const added = extra.flatMap(({ count, fromMinutes }) =>
    Array.from({ length: count }, () => newcomer(fromMinutes, pace)),
  )
  const samplers = [...rest.samplers, ...added]
  return simulateLine({ ...rest, samplers, runs, followComing: true }, draws)
}

function waitsOf({ waits, later }: Simulated): RestOfDayWaits {
  const all = [...waits.flatMap((each) => [...each]), ...later.map(({ wait }) => wait)]
  const taken = all.filter((wait) => wait !== Infinity)
  const range = lowTypicalHigh(taken)
  return {
    typical: range?.typical ?? null,
    ninetieth: range?.high ?? null,
    leftOver: Math.round((all.length - taken.length) / runs),
  }
}

/** Somebody trained for every head who stays to the end, at the pace of the crew. */
function newcomer(from: number, pace: Pace): SimulatedSampler {
  return { skills: everySkill, pace, from, until: Infinity, inHand: [], since: 0 }
}

function hoursOf(later: readonly CameLater[]): DayOutlook['hours'] {
  const waitsByHour = new Map<number, number[]>()
  for (const { arrived, wait } of later) {
    if (wait === Infinity) continue
    const hour = Math.floor(arrived / hourMinutes)
    const waits = waitsByHour.get(hour) ?? []
    if (waits.length === 0) waitsByHour.set(hour, waits)
    waits.push(wait)
  }
  return [...waitsByHour]
    .toSorted(([a], [b]) => a - b)
    .flatMap(([hour, waits]) => {
      const range = lowTypicalHigh(waits)
      return range === null ? [] : [{ fromMinutes: hour * hourMinutes, ...range }]
    })
}

/**
 * How many more samplers, from now, keep the typical wait at the target and take everyone; null when
 * even the most do not. One more never makes waits longer, so the number is found by halving.
 */
export function samplersToAdd(
  rest: RestOfDay,
  pace: Pace,
  draws: Draws,
  targetMinutes: number,
): number | null {
  const isEnough = (count: number) => {
    const more = [{ count, fromMinutes: 0 }]
    const { typical, leftOver } = waitsOf(simulateRest(rest, more, pace, draws))
    return leftOver === 0 && (typical ?? 0) <= targetMinutes
  }
  if (!isEnough(mostToAdd)) return null
  let [low, high] = [-1, mostToAdd]
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (isEnough(middle)) high = middle
    else low = middle
  }
  return high
}

/** More than this many at once is not a matter of one more volunteer. */
const mostToAdd = 7
