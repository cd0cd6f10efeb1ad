/** A plan as it is typed: texts, until the schema has read them. */
import type { AgeClass, Sex, Species } from '../../shared-types/animal.ts'
import { classKey, CoveragePlan, type UnitNumbers } from '../../shared-types/coverage.ts'
import type { CoverageView } from '../../shared-types/views/coverage.ts'
import { typedNumber } from '../station/typed-number.ts'

export interface NumbersDraft {
  readonly unit: string
  readonly species: Species
  readonly population: string
  readonly harvested: string
  readonly goal: string
}

export interface WeightDraft {
  readonly species: Species
  readonly sex: Sex
  readonly age: AgeClass
  readonly weight: string
}

export interface PlanDraft {
  /** Per cent. */
  readonly prevalence: string
  readonly sensitivity: string
  readonly confidence: string
  readonly ages: AgeClass[]
  readonly numbers: readonly NumbersDraft[]
  readonly weights: readonly WeightDraft[]
}

/** What was typed, by the field where it went wrong. */
export type PlanErrors = Readonly<Record<string, string>>

const allAges: readonly AgeClass[] = ['adult', 'yearling', 'young']
const allSexes: readonly Sex[] = ['male', 'female', 'unknown']

/** Everything the office could say: a row for each herd of the record, a weight for each class. */
export function planDraft({ plan, units }: CoverageView): PlanDraft {
  const known = plan?.numbers ?? []
  const herds = new Map<string, NumbersDraft>()
  for (const { unit, species } of [...units, ...known])
    herds.set(rowKey({ unit, species }), { unit, species, population: '', harvested: '', goal: '' })
  for (const numbers of known) herds.set(rowKey(numbers), numbersDraft(numbers))
  const weights = new Map((plan?.weights ?? []).map((each) => [classKey(each), each.weight]))
  const several = [...new Set([...herds.values()].map(({ species }) => species))]
  return {
    prevalence: plan === null ? '' : percent(plan.design.prevalence),
    sensitivity: plan === null ? '' : percent(plan.design.sensitivity),
    confidence: plan === null ? '' : percent(plan.design.confidence),
    ages: plan?.ages ?? ['yearling', 'adult'],
    numbers: [...herds.values()],
    weights: several.flatMap((species) =>
      allAges.flatMap((age) =>
        allSexes.map((sex) => {
          const weight = weights.get(classKey({ species, sex, age }))
          return { species, sex, age, weight: weight === undefined ? '' : String(weight) }
        }),
      ),
    ),
  }
}

export function rowKey({ unit, species }: { unit: string; species: Species }): string {
  return `${unit} ${species}`
}

function percent(share: number): string {
  return String(Number((share * 100).toFixed(6)))
}

const text = (value: number | null) => (value === null ? '' : String(value))

function numbersDraft({ unit, species, population, harvested, goal }: UnitNumbers): NumbersDraft {
  return {
    unit,
    species,
    population: text(population),
    harvested: text(harvested),
    goal: text(goal),
  }
}

/** Rows that a file brought, laid over those typed; an empty cell of the file leaves what was there. */
export function withNumbers(draft: PlanDraft, read: readonly UnitNumbers[]): PlanDraft {
  const rows = new Map(draft.numbers.map((row) => [rowKey(row), row]))
  for (const numbers of read) {
    const was = rows.get(rowKey(numbers))
    const now = numbersDraft(numbers)
    rows.set(rowKey(numbers), {
      ...now,
      population: now.population || (was?.population ?? ''),
      harvested: now.harvested || (was?.harvested ?? ''),
      goal: now.goal || (was?.goal ?? ''),
    })
  }
  return { ...draft, numbers: [...rows.values()] }
}

type Read = { ok: true; plan: CoveragePlan } | { ok: false; errors: PlanErrors }

/** The plan, or what is wrong with it; herds of which nothing is known are left out. */
export function readPlan(draft: PlanDraft): Read {
  const share = (typed: string) => {
    const number = typedNumber(typed)
    return typeof number === 'number' ? Number((number / 100).toPrecision(12)) : typed
  }
  const count = (typed: string) => (typed.trim() === '' ? null : typedNumber(typed))
  const rows = draft.numbers.filter(({ population, harvested, goal }) =>
    [population, harvested, goal].some((typed) => typed.trim() !== ''),
  )
  const read = CoveragePlan.safeParse({
    design: {
      prevalence: share(draft.prevalence),
      sensitivity: share(draft.sensitivity),
      confidence: share(draft.confidence),
    },
    ages: draft.ages,
    weights: draft.weights
      .filter(({ weight }) => weight.trim() !== '')
      .map((each) => ({ ...each, weight: typedNumber(each.weight) })),
    numbers: rows.map((row) => ({
      unit: row.unit,
      species: row.species,
      population: count(row.population),
      harvested: count(row.harvested),
      goal: count(row.goal),
    })),
  })
  if (read.success) return { ok: true, plan: read.data }
  return {
    ok: false,
    errors: Object.fromEntries(
      read.error.issues.map(({ path, message }) => [fieldOf(path, rows), saidOf(path, message)]),
    ),
  }
}

/** The field of an issue: of a row by its herd, so that rows left out do not shift it. */
function fieldOf(path: readonly PropertyKey[], rows: readonly NumbersDraft[]): string {
  const [part, at, cell] = path
  const row = part === 'numbers' && typeof at === 'number' ? rows[at] : undefined
  if (row) return `${rowKey(row)} ${String(cell)}`
  return part === 'design' ? String(at) : String(part)
}

const designSays: Readonly<Record<string, string>> = {
  prevalence: 'per cent: over 0 and under 100',
  sensitivity: 'per cent: over 0, at most 100',
  confidence: 'per cent: 50 to 99.9',
}

function saidOf([part, at]: readonly PropertyKey[], message: string): string {
  if (part === 'design') return designSays[String(at)] ?? message
  if (part === 'numbers') return 'a whole number of animals, or nothing'
  if (part === 'weights') return 'a weight is a number over 0, or nothing'
  return message
}
