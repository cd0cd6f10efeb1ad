import { describe, expect, test } from 'vitest'
import { doubtOf, type KnownBag } from '../../../electron/station/results/result-check.ts'
import type { ResultWord } from '../../../shared-types/laboratory-result.ts'
import { LocalDate } from '../../../shared-types/local-date.ts'
import { animalNumber, bagNumber, DeskId } from '../../../shared-types/sample-number.ts'

const desk = DeskId.parse('26KRVA')
const day = (text: string) => LocalDate.parse(text)
const record = { seasons: new Set(['26']), today: day('2026-12-04') }
const sent: KnownBag = {
  animal: animalNumber(desk, 1),
  place: 'handed-off',
  seen: 'lymph-node',
  sealed: day('2026-11-14'),
  latest: null,
}
const row = (word: ResultWord, tested = '2026-11-24') => ({
  bag: bagNumber(desk, 1, 'L'),
  word,
  method: 'ELISA',
  tested: day(tested),
})
const after = (word: ResultWord) => ({
  ...sent,
  latest: { word, method: 'ELISA', tested: day('2026-11-20') },
})

describe('a row of a laboratory’s file', () => {
  test('of tissue that was noted as no lymph node proves nothing by “not detected”, and all by “detected”', () => {
    for (const seen of ['salivary-gland', 'muscle', 'fat', 'unsure'] as const) {
      expect(doubtOf(row('not-detected'), { ...sent, seen }, record)).toBe('wrong-tissue')
      expect(doubtOf(row('detected'), { ...sent, seen }, record)).toBeNull()
    }
    expect(doubtOf(row('not-detected'), { ...sent, seen: null }, record)).toBeNull()
  })

  test('after a pending one is the end of it; after any other word that differs it is a change', () => {
    expect(doubtOf(row('detected'), after('pending'), record)).toBeNull()
    expect(doubtOf(row('unsuitable'), after('pending'), record)).toBe('unsuitable')
    expect(doubtOf(row('not-detected'), after('presumptive'), record)).toBe('changed')
    expect(doubtOf(row('detected'), after('not-detected'), record)).toBe('changed')
    expect(doubtOf(row('not-detected'), after('detected'), record)).toBe('changed')
  })

  test('that says the same by another test is taken', () => {
    expect(doubtOf(row('detected', '2026-12-01'), after('detected'), record)).toBeNull()
  })

  test('may be of the very day the bag was sealed, and of today', () => {
    expect(doubtOf(row('detected', '2026-11-14'), sent, record)).toBeNull()
    expect(doubtOf(row('detected', '2026-12-04'), sent, record)).toBeNull()
    expect(doubtOf(row('detected', '2026-11-13'), sent, record)).toBe('date-impossible')
    expect(doubtOf(row('detected', '2026-12-05'), sent, record)).toBe('date-impossible')
  })
})
