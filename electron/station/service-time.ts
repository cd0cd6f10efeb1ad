/**
 * How long a sampler takes, learned during the day. The logarithm of the minutes is taken as normal
 * with unknown mean and variance, so a belief about them is normal-inverse-gamma and each finished
 * animal updates it exactly. Source: Murphy, "Conjugate Bayesian analysis of the Gaussian
 * distribution", University of British Columbia 2007, section 6; also Gelman et al., "Bayesian Data
 * Analysis", 3rd edition, section 3.3.
 */
import type { AnimalFacts } from '../../shared-types/animal.ts'
import type { LineSettings } from '../../shared-types/line.ts'

/** What is believed of the logarithm of minutes. */
export interface Belief {
  readonly mean: number
  /** How many animals the belief about the mean is worth. */
  readonly weight: number
  /** Shape and scale of the inverse gamma of the variance. */
  readonly shape: number
  readonly scale: number
}

/**
 * Kinds of work whose times are learned apart. `between`: from one animal to the next that waits;
 * `calling`: from an arrival to somebody idle taking it.
 */
export const workKinds = [
  'deer',
  'deer-damaged',
  'elk-or-moose',
  'elk-or-moose-damaged',
  'between',
  'calling',
] as const
export type WorkKind = (typeof workKinds)[number]

export function workKindOf({ species, head }: Pick<AnimalFacts, 'species' | 'head'>): WorkKind {
  const big = species === 'elk' || species === 'moose'
  const damaged = head.faults.some((fault) => fault !== 'frozen' && fault !== 'spoiled')
  return `${big ? 'elk-or-moose' : 'deer'}${damaged ? '-damaged' : ''}`
}

/**
 * Times spread by about a third around the usual one, and the settings are worth two animals. Ours:
 * no published variance of these times was found.
 */
const priorWeight = 2
const priorShape = 3
const priorScale = 0.12 * (priorShape - 1)

/** The belief of somebody who knows only the usual minutes: their median. */
export function beliefIn(usualMinutes: number): Belief {
  return {
    mean: Math.log(usualMinutes),
    weight: priorWeight,
    shape: priorShape,
    scale: priorScale,
  }
}

/** What the station's settings say of a kind of work. */
export function priorOf(kind: WorkKind, { usualMinutes, damagedHeadTimes }: LineSettings): Belief {
  switch (kind) {
    case 'deer':
      return beliefIn(usualMinutes.deer)
    case 'deer-damaged':
      return beliefIn(usualMinutes.deer * damagedHeadTimes)
    case 'elk-or-moose':
      return beliefIn(usualMinutes.elkOrMoose)
    case 'elk-or-moose-damaged':
      return beliefIn(usualMinutes.elkOrMoose * damagedHeadTimes)
    case 'between':
    case 'calling':
      return beliefIn(usualMinutes.between)
  }
}

/** Standard deviation of the belief about the next time, on the logarithm. */
function reach({ weight, shape, scale }: Belief): number {
  return Math.sqrt((scale * (weight + 1)) / (shape * weight))
}

/** Times further off than this many deviations count as if they were just there. */
const farthest = 3

/**
 * Beliefs after these times. A time out of all reach (a finish forgotten over lunch) is drawn in to
 * the edge of what was believed possible, so that no single animal upsets the belief.
 */
export function learn(belief: Belief, minutes: readonly number[]): Belief {
  if (minutes.length === 0) return belief
  const edge = farthest * reach(belief)
  const logs = minutes.map((each) => {
    const log = Math.log(Math.max(each, 0.05))
    return Math.min(belief.mean + edge, Math.max(belief.mean - edge, log))
  })
  const count = logs.length
  const average = logs.reduce((sum, each) => sum + each, 0) / count
  const squares = logs.reduce((sum, each) => sum + (each - average) ** 2, 0)
  const weight = belief.weight + count
  return {
    mean: (belief.weight * belief.mean + count * average) / weight,
    weight,
    shape: belief.shape + count / 2,
    scale:
      belief.scale +
      squares / 2 +
      (belief.weight * count * (average - belief.mean) ** 2) / (2 * weight),
  }
}

/** What others' times are worth for one's own: at most so many animals. */
const pooledWeight = 4

/**
 * The same belief held less firmly: what the crew's times say of one of them. A power prior: Ibrahim
 * & Chen, "Power Prior Distributions for Regression Models", Statistical Science 15(1), 2000.
 */
export function loosened(belief: Belief): Belief {
  if (belief.weight <= pooledWeight) return belief
  const power = pooledWeight / belief.weight
  const shape = 1 + (belief.shape - 1) * power
  return {
    mean: belief.mean,
    weight: pooledWeight,
    // The expected variance stays as it is: only the firmness goes.
    shape: Math.max(shape, priorShape),
    scale: (belief.scale / (belief.shape - 1)) * (Math.max(shape, priorShape) - 1),
  }
}

/** One finished piece of work. */
export interface WorkTime {
  readonly sampler: string
  readonly kind: WorkKind
  readonly minutes: number
}

export type Pace = Readonly<Record<WorkKind, Belief>>

/** Answers with how fast a person works: the settings, then what others took, then their own times. */
export function paces(
  settings: LineSettings,
  times: readonly WorkTime[],
): (sampler: string) => Pace {
  const known = new Map<string, Pace>()
  return (sampler) => {
    const before = known.get(sampler)
    if (before) return before
    const pace = Object.fromEntries(
      workKinds.map((kind) => [kind, beliefAbout(sampler, kind, settings, times)]),
    ) as Pace
    known.set(sampler, pace)
    return pace
  }
}

function beliefAbout(
  sampler: string,
  kind: WorkKind,
  settings: LineSettings,
  times: readonly WorkTime[],
): Belief {
  const ofKind = times.filter((time) => time.kind === kind)
  const minutesOf = (own: boolean) =>
    ofKind.filter((time) => (time.sampler === sampler) === own).map(({ minutes }) => minutes)
  const crew = learn(priorOf(kind, settings), minutesOf(false))
  return learn(loosened(crew), minutesOf(true))
}

/** Minutes that half of such work takes less than. */
export function usualMinutesOf({ mean }: Belief): number {
  return Math.exp(mean)
}

/** The average of such work: a lognormal's, with the expected variance. */
export function averageMinutesOf({ mean, shape, scale }: Belief): number {
  return Math.exp(mean + scale / (2 * (shape - 1)))
}
