/** The desk API of coverage: what the samples of each unit prove, and what the office says of units. */
import { z } from 'zod'
import { Species } from './animal.ts'
import { command, query } from './call-shape.ts'
import { CoveragePlan, UnitCode } from './coverage.ts'
import { Brought } from './result-calls.ts'
import { TextFile } from './views/common.ts'
import {
  CoverageTimesView,
  CoverageView,
  FigureName,
  FigureView,
  NumbersRead,
  OutlinesLook,
  UnitNeedView,
} from './views/coverage.ts'

const nothing = z.strictObject({})
const done = z.strictObject({})
const topics = [
  'animal',
  'tissue',
  'bag',
  'result',
  'results',
  'handoff',
  'settings',
  'discrepancy',
  'coverage',
  'outline',
] as const

export const coverageCalls = {
  coverage: query(nothing, CoverageView, topics),
  /** Samples over time, and how long results take. */
  'coverage.times': query(nothing, CoverageTimesView, topics),
  /** Where a figure comes from. */
  'coverage.figure': query(
    z.strictObject({ unit: UnitCode, species: Species, figure: FigureName }),
    FigureView,
    topics,
  ),
  /** What a unit still needs, of one species or of any. */
  'coverage.need': query(
    z.strictObject({ unit: z.string().trim().max(12), species: Species.nullable() }),
    UnitNeedView,
    topics,
  ),
  /** A row for each unit and species, or for each of their classes. */
  'coverage.csv': query(z.strictObject({ by: z.enum(['herd', 'class']) }), TextFile, topics),
  /** The office's numbers of units out of a table with headings; nothing is kept yet. */
  'coverage.readNumbers': query(
    z.strictObject({ text: z.string().min(1).max(900_000) }),
    NumbersRead,
    [],
  ),
  'coverage.plan': command(z.strictObject({ plan: CoveragePlan }), done),
  /** What a GeoJSON file holds that was brought, for a person to say which property is the unit's code. */
  'outlines.look': query(z.strictObject({ brought: Brought }), OutlinesLook, ['settings']),
  'outlines.supply': command(
    z.strictObject({ brought: Brought, property: z.string().min(1).max(120) }),
    z.strictObject({ outlines: z.int() }),
  ),
} as const
