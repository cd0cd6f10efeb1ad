/**
 * Coverage: what the samples of a harvest unit so far prove. The office says what the sampling is
 * meant to find, in which herds, and what outline a unit has on the map; nothing of it is built in.
 */
import { z } from 'zod'
import { AgeClass, Sex, Species } from './animal.ts'

/** The code of a harvest unit, as on the tag. */
export const UnitCode = z.string().trim().min(1).max(12)

/** What the sampling is meant to find, and how surely. */
export const SurveillanceDesign = z.strictObject({
  /** The share of infected animals from which on the disease should be found. */
  prevalence: z
    .number()
    .gt(0, 'a design prevalence is over 0: no number of samples finds what is not there')
    .lt(1, 'a design prevalence is under 1: where all are infected one sample is enough'),
  /** The share of infected animals that the test shows. */
  sensitivity: z
    .number()
    .gt(0, 'a sensitivity is over 0: a test that never shows proves nothing')
    .max(1, 'a sensitivity is at most 1'),
  /** The probability of detection that the programme wants. */
  confidence: z.number().min(0.5).max(0.999),
})
export type SurveillanceDesign = z.infer<typeof SurveillanceDesign>

/** How much an animal of a class counts against one of the reference class, whose weight is 1. */
export const ClassWeight = z.strictObject({
  species: Species,
  sex: Sex,
  age: AgeClass,
  weight: z.number().min(0.01).max(1000),
})
export type ClassWeight = z.infer<typeof ClassWeight>

const Animals = z.int().min(1).max(10_000_000)

/** What the office knows of one species in one unit. Animals are those of the ages that count. */
export const UnitNumbers = z.strictObject({
  unit: UnitCode,
  species: Species,
  /** Animals alive at the start of the season, by the office's estimate; null where there is none. */
  population: Animals.nullable(),
  /** Animals harvested, where it is known. */
  harvested: z.int().min(0).max(10_000_000).nullable(),
  /** Usable samples to take here, where the office set a number; null: what the design needs. */
  goal: Animals.nullable(),
})
export type UnitNumbers = z.infer<typeof UnitNumbers>

export const CoveragePlan = z.strictObject({
  design: SurveillanceDesign,
  /** The age classes that count toward the target. */
  ages: z
    .array(AgeClass)
    .min(1, 'at least one age class counts')
    .refine((ages) => new Set(ages).size === ages.length, 'an age class is listed twice'),
  /** Empty where the programme does not weight. */
  weights: z
    .array(ClassWeight)
    .max(60)
    .refine((list) => eachOnce(list.map(classKey)), 'a class is weighted twice'),
  numbers: z
    .array(UnitNumbers)
    .max(2000)
    .refine(
      (list) => eachOnce(list.map(({ unit, species }) => `${unit} ${species}`)),
      'a species of a unit is listed twice',
    ),
})
export type CoveragePlan = z.infer<typeof CoveragePlan>

function eachOnce(keys: readonly string[]): boolean {
  return new Set(keys).size === keys.length
}

export function classKey(of: { species: Species; sex: Sex; age: AgeClass }): string {
  return `${of.species} ${of.sex} ${of.age}`
}

/** The office set or changed what coverage is judged by; the last one of a desk stands, as a whole. */
export const CoveragePlanned = z.strictObject({ plan: CoveragePlan })

/** Degrees, WGS 84: longitude, then latitude (RFC 7946, section 3.1.1). */
export const Position = z.tuple([z.number().min(-180).max(180), z.number().min(-90).max(90)])
export type Position = z.infer<typeof Position>

/** The most corners that are kept of a ring: what a picture on a screen can show. */
export const mostCorners = 400

/** The most corners of all the rings of a unit: smaller islands are left out beyond it. */
export const mostCornersOfUnit = 4000

/** A closed ring: its last position is its first. Which way round it runs does not matter here. */
export const Ring = z
  .array(Position)
  .min(4)
  .max(mostCorners + 1)
export type Ring = z.infer<typeof Ring>

/** A polygon is its outer ring, then its holes. */
export const OutlinePolygon = z.array(Ring).min(1).max(50)

/**
 * The outline of a unit as the office supplied it, thinned to what a picture shows: an entry for each
 * unit, so that outlines merge as every other fact does, and a unit drawn anew replaces only itself.
 */
export const UnitOutlined = z.strictObject({
  unit: UnitCode,
  polygons: z.array(OutlinePolygon).min(1).max(50),
  /** The file it came from. */
  file: z.string().trim().min(1).max(120),
})
export type UnitOutlined = z.infer<typeof UnitOutlined>
