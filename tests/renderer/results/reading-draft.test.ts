import { describe, expect, test } from 'vitest'
import {
  nothingSaid,
  noColumn,
  type ReadingDraft,
  readingOf,
  rememberedDraft,
  stillToSay,
  wordKey,
} from '../../../renderer/results/reading-draft.ts'
import { ResultReading } from '../../../shared-types/laboratory-result.ts'
import type { ResultLookView } from '../../../shared-types/views/results.ts'

const look: ResultLookView = {
  is: 'text',
  sheets: [],
  table: { is: 'text', encoding: 'utf-8', delimiter: ';' },
  encodingSure: true,
  delimiterSure: true,
  encodings: [],
  delimiters: [],
  rows: [],
  lines: 9,
  linesAbove: 2,
  headings: ['Sample ', 'Result', 'Method', 'Tested'],
  said: [
    { said: 'Not  Detected', rows: 3 },
    { said: 'see note', rows: 1 },
  ],
  dateOrders: ['month-day-year', 'day-month-year'],
  orderInDoubt: true,
  datesSeen: ['3/4/2026'],
  remembered: null,
  readBefore: false,
}

const said: ReadingDraft = {
  ...nothingSaid,
  number: 0,
  word: 1,
  method: 2,
  tested: 3,
  dateOrder: 'day-month-year',
  words: { 'not detected': 'not-detected' },
}

describe('what a person says of a laboratory’s file', () => {
  test('is asked until nothing is guessed', () => {
    expect(stillToSay(nothingSaid, look)).toHaveLength(4)
    expect(stillToSay({ ...said, dateOrder: null }, look)).toEqual(['how its days are written'])
    expect(stillToSay({ ...said, words: {} }, look)).toEqual(['what its words mean'])
    expect(readingOf({ ...said, dateOrder: null }, look)).toBeUndefined()
  })

  test('becomes a reading with the headings as they stand; a word without a meaning stays out', () => {
    const reading = readingOf(said, look)
    expect(ResultReading.parse(reading)).toMatchObject({
      linesAbove: 2,
      number: { at: 0, heading: 'Sample' },
      tested: { at: 3, heading: 'Tested' },
      dateOrder: 'day-month-year',
      words: [{ said: 'not detected', means: 'not-detected' }],
    })
  })

  test('may hold for the whole file where there is no column', () => {
    const whole = {
      ...said,
      method: noColumn,
      methodSaid: 'IHC',
      tested: noColumn,
      testedOn: '2026-11-24',
    }
    expect(readingOf(whole, look)).toMatchObject({
      method: null,
      methodSaid: 'IHC',
      tested: null,
      testedOn: '2026-11-24',
    })
  })

  test('is remembered for the next file, but for the day of its tests', () => {
    const reading = readingOf(said, look)
    if (reading === undefined) throw new Error('everything was said')
    expect(rememberedDraft(reading)).toMatchObject({ ...said, testedOn: '' })
  })

  test('compares words as the desk does', () => {
    expect(wordKey('  Not   DETECTED ')).toBe('not detected')
  })
})
