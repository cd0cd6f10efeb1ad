/** How long ice lasts in a box: the heat that comes in against the heat that melts it. */
import type { ColdPoint } from './cold.ts'

/** Latent heat of fusion of ice, kJ/kg: 333.55 (NIST), commonly rounded to 334. */
export const latentHeat = 334
/**
 * Specific heat of tissue above freezing, kJ/(kg·°C): 3.6 as published for lean beef with 74.5 % water.
 * No published value for lymph nodes was found.
 */
export const tissueHeat = 3.6
/** Melted ice stays at this until none is left, °C. */
const meltsAt = 0
const hourSeconds = 3600

/** Hours that ice lasts against a steady heat gain in watts. */
export function meltHours(iceKg: number, watts: number): number {
  return (iceKg * latentHeat * 1000) / watts / hourSeconds
}

/** Ice in kilograms that melts while tissue cools from one temperature in °C to another. */
export function iceToCool(tissueKg: number, fromC: number, toC: number): number {
  return (tissueKg * tissueHeat * Math.max(0, fromC - toC)) / latentHeat
}

/** A heat gain in watts for each degree between outside and ice, with its relative uncertainty. */
export interface HeatGain {
  readonly wattsPerDegree: number
  /** One standard uncertainty over the value. */
  readonly relative: number
  /** Readings it was fitted from; null where it was stated. */
  readonly fittedFrom: number | null
}

/** A gain that a maker states or a person measured: taken as good to a quarter (no source). */
export function statedGain(wattsPerDegree: number): HeatGain {
  return { wattsPerDegree, relative: 0.25, fittedFrom: null }
}

const leastPoints = 4

/** The readings after the ice was gone: the last of them, rising without a break from above 0.5 °C. */
function warmingRun(points: readonly ColdPoint[], ambientC: number): ColdPoint[] {
  let from = points.length
  while (from > 0) {
    const here = points[from - 1]
    const next = points[from]
    if (!here || here.celsius <= 0.5 || here.celsius >= ambientC) break
    if (next && here.celsius > next.celsius) break
    from -= 1
  }
  return points.slice(from)
}

/**
 * Fits the heat gain from readings of a box that warms up after its ice is gone (Newton's law of
 * cooling): ln(outside − inside) falls by gain / heat capacity a second. `contentsKg` is tissue and
 * melt water together, taken at 3.9 kJ/(kg·°C), midway between 3.6 and 4.19, good to 8 %. Null where
 * fewer than four readings rise, over less than an hour or a degree.
 */
export function fittedGain(
  points: readonly ColdPoint[],
  ambientC: number,
  contentsKg: number,
): HeatGain | null {
  const run = warmingRun(points, ambientC)
  const [first] = run
  const last = run.at(-1)
  if (!first || !last || run.length < leastPoints || contentsKg <= 0) return null
  if (last.ms - first.ms < hourSeconds * 1000 || last.celsius - first.celsius < 1) return null
  const line = straightLine(
    run.map(({ ms, celsius }) => ({
      x: (ms - first.ms) / 1000,
      y: Math.log(ambientC - celsius),
    })),
  )
  const wattsPerDegree = -line.slope * contentsKg * 3900
  const relative = Math.hypot(line.slopeError / Math.abs(line.slope), 0.08)
  return { wattsPerDegree, relative, fittedFrom: run.length }
}

/** Least squares: slope and its standard error. */
function straightLine(points: readonly { x: number; y: number }[]) {
  const n = points.length
  const meanX = points.reduce((sum, { x }) => sum + x, 0) / n
  const meanY = points.reduce((sum, { y }) => sum + y, 0) / n
  const sxx = points.reduce((sum, { x }) => sum + (x - meanX) ** 2, 0)
  const sxy = points.reduce((sum, { x, y }) => sum + (x - meanX) * (y - meanY), 0)
  const slope = sxy / sxx
  const rest = points.reduce((sum, { x, y }) => sum + (y - meanY - slope * (x - meanX)) ** 2, 0)
  return { slope, slopeError: Math.sqrt(rest / (n - 2) / sxx) }
}

export interface IceQuestion {
  readonly iceKg: number
  readonly ambientC: number
  readonly gain: HeatGain
  readonly tissueKg: number
  readonly tissueC: number
}

export interface IceAnswer {
  readonly hours: number
  readonly lowHours: number
  readonly highHours: number
  readonly watts: number
  readonly spentOnTissueKg: number
}

/** Scales good to 5 % and air good to 3 °C (common practice, no source). */
const massRelative = 0.05
const airDegrees = 3

/**
 * How long the ice lasts, and the range of two standard uncertainties: those of ice mass, air and heat
 * gain, added as squares, taken on the logarithm so that the range stays above nought. Null where it
 * does not melt: the air is not above freezing.
 */
export function iceLasts(question: IceQuestion): IceAnswer | null {
  const { iceKg, ambientC, gain, tissueKg, tissueC } = question
  const warmer = ambientC - meltsAt
  if (warmer <= 0) return null
  const spentOnTissueKg = Math.min(iceKg, iceToCool(tissueKg, tissueC, meltsAt))
  const watts = gain.wattsPerDegree * warmer
  const hours = meltHours(iceKg - spentOnTissueKg, watts)
  const relative = Math.hypot(massRelative, airDegrees / warmer, gain.relative)
  return {
    hours,
    lowHours: hours * Math.exp(-2 * relative),
    highHours: hours * Math.exp(2 * relative),
    watts,
    spentOnTissueKg,
  }
}
