import { expect, test } from 'vitest'
import { connectionOf } from '../../db/connection.ts'
import { transact } from '../../db/log/append.ts'
import { alikeAnimals, coveragePlanOf } from '../../db/read/coverage.ts'
import { CoveragePlan } from '../../shared-types/coverage.ts'
import { draft, type EntryDraft } from '../../shared-types/entry.ts'
import type { ResultWord } from '../../shared-types/laboratory-result.ts'
import { LocalDate } from '../../shared-types/local-date.ts'
import { granted } from '../../shared-types/result.ts'
import { animalNumber, bagNumber, kitNumber } from '../../shared-types/sample-number.ts'
import { factsOf } from '../support/station.ts'
import { desk, tempLog, value } from './temp-log.ts'

const now = Date.parse('2026-11-14T08:00:00-07:00')

const checkedIn = (serial: number, place: Parameters<typeof factsOf>[0] = {}) =>
  draft('animal.checked-in', {
    animal: animalNumber(desk, serial),
    day: LocalDate.parse('2026-11-14'),
    facts: factsOf(place),
    contact: null,
    noSample: null,
  })

const sealed = (serial: number, animal: number, part: 'L' | 'R'): EntryDraft[] => [
  draft('tissue.checked', {
    animal: animalNumber(desk, animal),
    kit: kitNumber(desk, serial),
    site: part === 'L' ? 'left' : 'right',
    check: 'lymph-node',
    sizeMm: 22,
  }),
  draft('bag.sealed', {
    bag: bagNumber(desk, serial, part),
    animal: animalNumber(desk, animal),
    kit: kitNumber(desk, serial),
    site: part === 'L' ? 'left' : 'right',
    kept: 'fresh',
  }),
]

const reported = (serial: number, animal: number, part: 'L' | 'R', word: ResultWord) =>
  draft('result.reported', {
    bag: bagNumber(desk, serial, part),
    animal: animalNumber(desk, animal),
    word,
    method: 'ELISA',
    tested: null,
    laboratory: 'Invented Laboratory',
    file: '0'.repeat(64),
    line: 2,
  })

function logWith(drafts: readonly EntryDraft[]) {
  const log = tempLog()
  value(transact(log, { now, by: null }, (tx) => granted(tx.append(drafts))))
  return log
}

test('animals that are alike come out as one row, whatever their number', () => {
  const drafts = Array.from({ length: 50 }, (_, at) => checkedIn(at + 1))
  expect(alikeAnimals(logWith(drafts))).toMatchObject([
    { animals: 50, tissue: 'none', results: [] },
  ])
})

test('an animal without a unit is counted apart, and so is one whose unit is left empty', () => {
  const log = logWith([
    checkedIn(1, { place: { by: 'not-known' } }),
    checkedIn(2, { place: { by: 'coordinates', latitude: 45, longitude: -140, unit: '' } }),
  ])
  expect(alikeAnimals(log)).toMatchObject([{ unit: null, animals: 2 }])
})

test('a second bag of the same side never adds up to another word', () => {
  // A node was cut again, and the laboratory reports both bags.
  const both = (first: ResultWord, second: ResultWord) =>
    alikeAnimals(
      logWith([
        checkedIn(1),
        ...sealed(1, 1, 'L'),
        ...sealed(2, 1, 'L'),
        reported(1, 1, 'L', first),
        reported(2, 1, 'L', second),
      ]),
    )[0]?.results
  expect(both('not-detected', 'not-detected')).toEqual([{ site: 'left', word: 'not-detected' }])
  expect(both('unsuitable', 'not-detected')).toEqual([{ site: 'left', word: 'not-detected' }])
  expect(both('detected', 'not-detected')).toEqual([{ site: 'left', word: 'detected' }])
})

test('a check-in that was taken back counts nowhere', () => {
  const log = logWith([checkedIn(1), checkedIn(2)])
  connectionOf(log).exec("UPDATE animal SET state = 'struck-out'")
  expect(alikeAnimals(log)).toEqual([])
})

test('units, species and classes are read from an index, not from each animal', () => {
  const log = logWith([checkedIn(1)])
  const plan = connectionOf(log)
    .prepare<[], { detail: string }>(
      "EXPLAIN QUERY PLAN SELECT unit, species, sex, age, count(*) FROM animal WHERE state <> 'struck-out' GROUP BY 1, 2, 3, 4",
    )
    .all()
    .map(({ detail }) => detail)
  expect(plan).toEqual(['SCAN animal USING COVERING INDEX animal_of_class'])
})

test('an office judges by its own plan; where it set none, by the latest of any desk', () => {
  const log = logWith([])
  const insert = connectionOf(log).prepare('INSERT INTO coverage_plan VALUES (?, ?, ?)')
  const named = (prevalence: number) => JSON.stringify({ design: { prevalence } })
  insert.run('26KRVC', named(0.01), 1000)
  insert.run('26KRVD', named(0.02), 2000)
  expect(coveragePlanOf(log)?.design.prevalence).toBe(0.02)
  insert.run(desk, named(0.05), 500)
  expect(coveragePlanOf(log)?.design.prevalence).toBe(0.05)
})

test('the plan that a desk set last stands', () => {
  const of = (prevalence: number) =>
    CoveragePlan.parse({
      design: { prevalence, sensitivity: 1, confidence: 0.95 },
      ages: ['adult'],
      weights: [],
      numbers: [],
    })
  const log = logWith([
    draft('coverage.planned', { plan: of(0.02) }),
    draft('coverage.planned', { plan: of(0.01) }),
  ])
  expect(coveragePlanOf(log)?.design.prevalence).toBe(0.01)
})
