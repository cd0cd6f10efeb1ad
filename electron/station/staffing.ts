/** How many samplers keep the typical wait under the station's target, for the rest of the day. */
import type { Draws } from './draws.ts'
import { lowTypicalHigh, quantile } from './figures.ts'
import type { CameLater, Scenario, SimulatedSampler } from './line-simulation.ts'
import { simulateLine } from './line-simulation.ts'
import type { Pace } from './service-time.ts'
import { everySkill } from './skills.ts'

/** More people at the line from some minute on. */
export interface ExtraSamplers {
  readonly count: number
  readonly fromMinutes: number
}

export interface DayOutlook {
  /** Minutes of wait of those who come and those who wait now, to the close; null where nobody is taken. */
  readonly typical: number | null
  readonly ninetieth: number | null
  /** By hour of arrival: from how many minutes on, and the same two figures. */
  readonly hours: readonly {
    readonly fromMinutes: number
    readonly low: number
    readonly typical: number
    readonly high: number
  }[]
  /** Animals that nobody would take before the last sampler goes home, on a typical day. */
  readonly leftOver: number
}

/** Enough runs for a typical wait good to a minute or so; the answer must come at once. */
const runs = 48
const hourMinutes = 60

export type RestOfDay = Omit<Scenario, 'runs' | 'followComing'>

/** The rest of the day by simulation, with these people and so many more. */
export function outlookOf(
  rest: RestOfDay,
  extra: readonly ExtraSamplers[],
  pace: Pace,
  draws: Draws,
): DayOutlook {
  const added = extra.flatMap(({ count, fromMinutes }) =>
    Array.from({ length: count }, () => newcomer(fromMinutes, pace)),
  )
  const samplers = [...rest.samplers, ...added]
  const { waits, later } = simulateLine({ ...rest, samplers, runs, followComing: true }, draws)
  const here = waits.flatMap((each) => [...each])
  const all = [...here, ...later.map(({ wait }) => wait)]
  const taken = all.filter((wait) => wait !== Infinity)
  return {
    typical: quantile(taken, 0.5),
    ninetieth: quantile(taken, 0.9),
    hours: hoursOf(later),
    leftOver: Math.round((all.length - taken.length) / runs),
  }
}

/** Somebody trained for every head who stays to the end, at the pace of the crew. */
function newcomer(from: number, pace: Pace): SimulatedSampler {
  return { skills: everySkill, pace, from, until: Infinity, inHand: [], since: 0 }
}

function hoursOf(later: readonly CameLater[]): DayOutlook['hours'] {
  const hours = new Set(later.map(({ arrived }) => Math.floor(arrived / hourMinutes)))
  return [...hours]
    .toSorted((a, b) => a - b)
    .flatMap((hour) => {
      const waits = later
        .filter(
          ({ arrived, wait }) => Math.floor(arrived / hourMinutes) === hour && wait < Infinity,
        )
        .map(({ wait }) => wait)
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
    const { typical, leftOver } = outlookOf(rest, [{ count, fromMinutes: 0 }], pace, draws)
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
