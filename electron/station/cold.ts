/**
 * How cold a cooler was: gaps between readings, times outside the limits, mean kinetic temperature.
 * None of it decides anything: the laboratory judges the tissue.
 */

export interface ColdPoint {
  readonly ms: number
  readonly celsius: number
}

export interface Span {
  readonly fromMs: number
  readonly toMs: number
}

const minuteMs = 60_000
const hourMs = 60 * minuteMs

function intervals(points: readonly ColdPoint[]): number[] {
  return points.slice(1).map(({ ms }, place) => ms - (points[place]?.ms ?? ms))
}

function median(numbers: readonly number[]): number {
  const sorted = numbers.toSorted((a, b) => a - b)
  return sorted[Math.floor((sorted.length - 1) / 2)] ?? 0
}

/**
 * How long without a reading is a gap, in milliseconds: three times the usual interval, at least half
 * an hour, at most twelve hours, because a cold store without a recorder is read twice a day (vaccine
 * storage guidance of the CDC, told by the American Academy of Pediatrics).
 */
export function gapMs(points: readonly ColdPoint[]): number {
  return Math.min(12 * hourMs, Math.max(30 * minuteMs, 3 * median(intervals(points))))
}

/** Times without a reading that are longer than that. `points` are oldest first. */
export function gapsIn(points: readonly ColdPoint[]): Span[] {
  const most = gapMs(points)
  return points.slice(1).flatMap(({ ms }, place) => {
    const fromMs = points[place]?.ms ?? ms
    return ms - fromMs > most ? [{ fromMs, toMs: ms }] : []
  })
}

/** Activation energy over the gas constant, in kelvin: 83.14472 kJ/mol over 8.314472 J/(mol·K). */
const kelvins = 10_000
const zeroCelsius = 273.15

/**
 * Mean kinetic temperature in °C: T = (ΔH/R) / −ln(mean of exp(−ΔH/(R·T))), in kelvin (USP <1079>, told
 * in Compounding Today newsletter 16-06). A reading stands for the time until the next one, never for
 * longer than a gap; the last one for the usual interval. Null without readings. Made for the decay of
 * drugs: no source ties it to how well tissue can be tested.
 */
export function meanKineticCelsius(points: readonly ColdPoint[]): number | null {
  if (points.length === 0) return null
  const most = gapMs(points)
  const lengths = intervals(points)
  const usual = median(lengths) || 1
  let weight = 0
  let sum = 0
  for (const [place, { celsius }] of points.entries()) {
    const stands = Math.min(most, lengths[place] ?? usual)
    weight += stands
    sum += stands * Math.exp(-kelvins / (celsius + zeroCelsius))
  }
  return weight === 0 ? null : kelvins / -Math.log(sum / weight) - zeroCelsius
}

export interface ReadPoint extends ColdPoint {
  /** Outside the limits as they stood when it was recorded. */
  readonly excursion: boolean
}

/** A time outside the limits. */
export interface Excursion {
  readonly fromMs: number
  /** Null while it goes on. */
  readonly toMs: number | null
  readonly lowest: number
  readonly highest: number
}

/**
 * Times outside the limits. Nobody knows when in between it began or ended, so it counts from the last
 * good reading before to the first good one after.
 */
export function excursionsOf(points: readonly ReadPoint[]): Excursion[] {
  const found: Excursion[] = []
  let lastGood: number | null = null
  let open: { fromMs: number; lowest: number; highest: number } | null = null
  for (const { ms, celsius, excursion } of points) {
    if (excursion) {
      open ??= { fromMs: lastGood ?? ms, lowest: celsius, highest: celsius }
      open.lowest = Math.min(open.lowest, celsius)
      open.highest = Math.max(open.highest, celsius)
      continue
    }
    if (open) found.push({ ...open, toMs: ms })
    open = null
    lastGood = ms
  }
  return open ? [...found, { ...open, toMs: null }] : found
}

/** Those whose stay overlaps the excursion, each once. */
export function insideDuring<B extends string>(
  stays: readonly { readonly bag: B; readonly fromMs: number; readonly toMs: number | null }[],
  { fromMs, toMs }: Pick<Excursion, 'fromMs' | 'toMs'>,
): B[] {
  const inside = stays.filter(
    (stay) => stay.fromMs < (toMs ?? Infinity) && (stay.toMs ?? Infinity) > fromMs,
  )
  return [...new Set(inside.map(({ bag }) => bag))].toSorted()
}
