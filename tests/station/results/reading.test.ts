import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import {
  isOrderInDoubt,
  ordersThatFit,
  readDay,
} from '../../../electron/station/results/result-date.ts'
import { readBag } from '../../../electron/station/results/result-number.ts'
import { bagNumber, DeskId, grouped } from '../../../shared-types/sample-number.ts'

const desk = DeskId.parse('06KRVA')
const bag = bagNumber(desk, 42, 'L')

describe('a sample number in a laboratory’s file', () => {
  test.each([
    ['as printed', grouped(bag)],
    ['bare', bag],
    ['in small letters with spaces', ` ${bag.toLowerCase()} `],
    ['as text for a spreadsheet', `'${bag}`],
    ['as a formula of text', `="${bag}"`],
  ])('is read %s', (_, text) => {
    expect(readBag(text)).toEqual({ ok: true, bag })
  })

  test('one wrong character is found by the check character', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 9999 }),
        fc.integer({ min: 0, max: 9 }),
        (serial, digit) => {
          const right = bagNumber(desk, serial, 'R')
          const wrong = right.slice(0, 8) + digit + right.slice(9)
          if (wrong === right) return
          expect(readBag(wrong)).toEqual({ ok: false, doubt: 'check-character-wrong', meant: null })
        },
      ),
    )
  })

  test('noughts that a spreadsheet dropped are seen, and what was meant is offered and not taken', () => {
    const damaged = { ok: false, doubt: 'number-damaged', meant: bag }
    expect(readBag(bag.slice(1))).toEqual(damaged)
    expect(readBag(grouped(bag).replace('A0042', 'A42'))).toEqual(damaged)
    expect(readBag(grouped(bag).replace('06-', '6-').replace('A0042', 'A42'))).toEqual(damaged)
  })

  test.each(['2.60001E+11', '2,6E+11', '6e05'])(
    '%s was a number before a spreadsheet had it',
    (text) => {
      expect(readBag(text)).toEqual({ ok: false, doubt: 'number-damaged', meant: null })
    },
  )

  test('the number of an animal or kit is of something else than a bag', () => {
    expect(readBag('26KRVA0001A')).toMatchObject({ doubt: 'number-not-read' })
    const kit = '06KRVA0042K'
    const found = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ'
      .split('')
      .map((check) => readBag(kit + check))
    expect(found.filter((each) => !each.ok && each.doubt === 'not-a-bag')).toHaveLength(1)
  })

  test.each(['', 'Total: 45', 'QC', '0042'])('“%s” is no number', (text) => {
    expect(readBag(text)).toMatchObject({ doubt: 'number-not-read' })
  })
})

describe('the day of a test', () => {
  test.each([
    // ISO 8601: a year of four digits in front is year, month, day whatever else the file does.
    ['2026-11-24', 'month-day-year', '2026-11-24'],
    ['2026-11-24T08:15:00', 'day-month-year', '2026-11-24'],
    ['11/24/2026', 'month-day-year', '2026-11-24'],
    ['24/11/2026', 'day-month-year', '2026-11-24'],
    ['24.11.2026', 'day-month-year', '2026-11-24'],
    ['3/4/26', 'month-day-year', '2026-03-04'],
    ['3/4/26', 'day-month-year', '2026-04-03'],
    ['2026/11/24', 'year-month-day', '2026-11-24'],
    ['24-Nov-2026', 'month-day-year', '2026-11-24'],
    ['24 November 26', 'year-month-day', '2026-11-24'],
    ['Nov 24, 2026', 'day-month-year', '2026-11-24'],
    ['11/24/2026 14:05', 'month-day-year', '2026-11-24'],
  ] as const)('%s as %s is %s', (text, order, day) => {
    expect(readDay(text, order)).toBe(day)
  })

  test.each([
    ['24/11/2026', 'month-day-year'],
    ['2/30/2026', 'month-day-year'],
    ['46339', 'month-day-year'],
    ['', 'month-day-year'],
    ['soon', 'day-month-year'],
    ['24 Foo 2026', 'day-month-year'],
  ] as const)('%s as %s is no day', (text, order) => {
    expect(readDay(text, order)).toBeNull()
  })

  test('nobody can tell 3/4 by looking: both orders fit, and a person is asked', () => {
    expect(ordersThatFit(['3/4/2026', '5/6/2026'])).toEqual(['month-day-year', 'day-month-year'])
    expect(isOrderInDoubt(['3/4/2026', '5/6/2026'])).toBe(true)
  })

  test('one day after the twelfth settles it; days that read alike settle nothing and need not', () => {
    expect(ordersThatFit(['3/4/2026', '3/14/2026'])).toEqual(['month-day-year'])
    expect(isOrderInDoubt(['3/4/2026', '3/14/2026'])).toBe(false)
    expect(isOrderInDoubt(['3/3/2026', '2026-11-24', '24-Nov-2026'])).toBe(false)
  })
})
