/** What the coverage screen shows. Shares are from 0 to 1; counts are animals, not bags. */
import { z } from 'zod'
import { AgeClass, Sex, Species } from '../animal.ts'
import { CoveragePlan, OutlinePolygon, UnitNumbers } from '../coverage.ts'
import { LocalDate } from '../local-date.ts'

export const CoverageCounts = z.strictObject({
  /** Animals checked in. */
  checked: z.int(),
  /** With at least one sealed bag. */
  sampled: z.int(),
  /** With at least one bag of the right tissue that the laboratory has not called unsuitable. */
  usable: z.int(),
  /** With a result of "not detected", "detected" or "presumptive". */
  tested: z.int(),
  /** Of those tested: a screening test reacted, and a second test has yet to confirm it. */
  presumptive: z.int(),
  detected: z.int(),
})
export type CoverageCounts = z.infer<typeof CoverageCounts>

export const ClassCoverage = CoverageCounts.extend({
  sex: Sex,
  age: AgeClass,
  /** Whether this class counts toward the target. */
  counts: z.boolean(),
  weight: z.number().nullable(),
})
export type ClassCoverage = z.infer<typeof ClassCoverage>

/** How a unit stands. */
export const CoverageState = z.enum([
  'detected',
  'reached',
  'waiting-for-results',
  'short',
  'nothing-tested',
  'no-plan',
])
export type CoverageState = z.infer<typeof CoverageState>

export const coverageWords: Record<CoverageState, string> = {
  detected: 'detected',
  reached: 'target reached',
  'waiting-for-results': 'results to come',
  short: 'short',
  'nothing-tested': 'nothing sampled',
  'no-plan': 'no design set',
}

const IntervalView = z.strictObject({ low: z.number(), high: z.number() })

const Needed = z.strictObject({
  confidence: z.number(),
  /** Animals to be tested in all; null where even the whole herd is not enough. */
  total: z.int().nullable(),
  /** Of them, still to be tested. */
  more: z.int().nullable(),
})

export const UnitCoverage = z.strictObject({
  unit: z.string(),
  name: z.string(),
  species: Species,
  population: z.int().nullable(),
  harvested: z.int().nullable(),
  goal: z.int().nullable(),
  /** Of the age classes that count. */
  counts: CoverageCounts,
  classes: z.array(ClassCoverage),
  state: CoverageState,
  /** Null without a plan. */
  proof: z
    .strictObject({
      method: z.enum(['hypergeometric', 'binomial']),
      /** By the animals tested. */
      detection: z.number(),
      /** By all usable samples, as if each were tested and clear. */
      detectionInHand: z.number(),
      /** For 95%, 99% and what the programme wants. */
      needed: z.array(Needed),
      /** Usable samples still to take for the goal, or else for what the programme wants; null as above. */
      moreToSample: z.int().nullable(),
      target: z.int().nullable(),
      weighted: z
        .strictObject({ points: z.number(), detection: z.number(), more: z.int().nullable() })
        .nullable(),
    })
    .nullable(),
  /** After a detection. */
  prevalence: z
    .strictObject({ share: z.number(), wilson: IntervalView, exact: IntervalView })
    .nullable(),
  /** Where nothing was detected: with 95% confidence the share in all is no more than this. */
  atMost: z.number().nullable(),
  /** What of this unit needs looking after before its figures are believed. */
  warnings: z.array(z.string()),
})
export type UnitCoverage = z.infer<typeof UnitCoverage>

/** Animals checked in and sampled at stations on a day, and animals a laboratory tested on it. */
export const SampledDay = z.strictObject({
  date: LocalDate,
  checked: z.int(),
  sampled: z.int(),
  tested: z.int(),
})

/** Samples by whole days. */
export const TurnaroundBand = z.strictObject({ days: z.int(), samples: z.int() })

export const OutlineView = z.strictObject({
  unit: z.string(),
  polygons: z.array(OutlinePolygon),
})

export const CoverageView = z.strictObject({
  station: z.string(),
  practice: z.boolean(),
  /** Who may change the plan is asked elsewhere; null before anyone set one. */
  plan: CoveragePlan.nullable(),
  units: z.array(UnitCoverage),
  /** Animals checked in whose unit nobody knows: they count nowhere. */
  withoutUnit: z.int(),
  outlines: z.array(OutlineView),
  /** What cannot be concluded, whatever the figures. */
  limits: z.array(z.string()),
})
export type CoverageView = z.infer<typeof CoverageView>

/** The pictures over time. */
export const CoverageTimesView = z.strictObject({
  days: z.array(SampledDay),
  /** By the days from the courier's signature to the result. */
  turnaround: z.array(TurnaroundBand),
  medianDays: z.number().nullable(),
  /** Given to a courier and not reported. */
  waiting: z.int(),
})
export type CoverageTimesView = z.infer<typeof CoverageTimesView>

/** The figures of a unit that open. */
export const FigureName = z.enum([
  'harvested',
  'checked',
  'sampled',
  'usable',
  'tested',
  'detected',
  'detection',
  'detection-in-hand',
  'needed',
  'to-sample',
  'prevalence',
  'wilson',
  'exact',
  'at-most',
  'points',
])
export type FigureName = z.infer<typeof FigureName>

/** Where a figure comes from, so that anyone can work it out again. */
export const FigureView = z.strictObject({
  title: z.string(),
  value: z.string(),
  /** In words and signs, with the letters that `put` explains. */
  formula: z.string(),
  put: z.array(z.strictObject({ sign: z.string(), is: z.string(), from: z.string() })),
  source: z.string(),
  /** What the figure does not say. */
  caution: z.string(),
})
export type FigureView = z.infer<typeof FigureView>

/** What a unit still needs, for whoever checks an animal in. */
export const UnitNeedView = z.strictObject({
  /** Null where nothing is known to be short. */
  say: z.string().nullable(),
})

export const OutlinesLook = z.strictObject({
  features: z.int(),
  /** Properties of the features, those first whose values are unit codes. */
  properties: z.array(
    z.strictObject({ name: z.string(), fits: z.int(), examples: z.array(z.string()) }),
  ),
  /** The file's parts that are no outline, in words. */
  problems: z.array(z.string()),
})

export const NumbersRead = z.strictObject({
  numbers: z.array(UnitNumbers),
  problems: z.array(z.string()),
})
