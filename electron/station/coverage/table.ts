/** Coverage as a plain table, for a spreadsheet: a row for each unit and species. */
import { ageWords, speciesWords } from '../../../shared-types/animal.ts'
import { coverageWords, type UnitCoverage } from '../../../shared-types/views/coverage.ts'
import { percentOf } from './figures.ts'

type Row = Record<string, string | number | null>

/** Shares as numbers from 0 to 1, so that a spreadsheet can go on with them. */
export function coverageTable(herds: readonly UnitCoverage[]): Row[] {
  return herds.map((herd) => ({
    unit: herd.unit,
    name: herd.name,
    species: speciesWords[herd.species],
    population: herd.population,
    harvested: herd.harvested,
    checked: herd.counts.checked,
    sampled: herd.counts.sampled,
    usable: herd.counts.usable,
    tested: herd.counts.tested,
    presumptive: herd.counts.presumptive,
    detected: herd.counts.detected,
    state: coverageWords[herd.state],
    method: herd.proof?.method ?? null,
    probability_of_detection: herd.proof?.detection ?? null,
    ...neededColumns(herd),
    goal: herd.goal,
    still_to_sample: herd.proof?.moreToSample ?? null,
    points: herd.proof?.weighted?.points ?? null,
    share_detected: herd.prevalence?.share ?? null,
    exact_95_low: herd.prevalence?.exact.low ?? null,
    exact_95_high: herd.prevalence?.exact.high ?? null,
    wilson_95_low: herd.prevalence?.wilson.low ?? null,
    wilson_95_high: herd.prevalence?.wilson.high ?? null,
    none_detected_at_most_95: herd.atMost,
    warnings: herd.warnings.join(' '),
  }))
}

function neededColumns({ proof }: UnitCoverage): Row {
  return Object.fromEntries(
    (proof?.needed ?? []).map(({ confidence, more }) => [
      `still_to_test_${percentOf(confidence)}`,
      more ?? 'not reachable',
    ]),
  )
}

/** A row for each class of each herd, with what the class counts toward the target. */
export function classTable(herds: readonly UnitCoverage[]): Row[] {
  return herds.flatMap((herd) =>
    herd.classes.map((each) => ({
      unit: herd.unit,
      species: speciesWords[herd.species],
      sex: each.sex,
      age: ageWords[each.age],
      counts_toward_target: each.counts ? 'yes' : 'no',
      weight: each.weight,
      checked: each.checked,
      sampled: each.sampled,
      usable: each.usable,
      tested: each.tested,
      presumptive: each.presumptive,
      detected: each.detected,
    })),
  )
}
