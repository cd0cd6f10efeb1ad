import { describe, expect, test } from 'vitest'
import { checkDayOpen, decideOpenDay, decideReopen } from '../../electron/station/day.ts'
import { code, date, day, refusal, written } from './records.ts'

const closed = day({ state: 'closed' })
const next = { date: date('2026-11-15'), kits: 40, blankLabels: 500, stockCounted: null }

describe('work on animals belongs to an open day', () => {
  test('which is there', () => {
    expect(checkDayOpen(day())).toEqual({ ok: true, value: day() })
  })

  test('and without one the refusal says who opens it, and where', () => {
    expect(code(checkDayOpen(null))).toBe('no-day-open')
    const shut = refusal(checkDayOpen(closed))
    expect(shut).toMatchObject({ code: 'day-closed', say: 'The day 2026-11-14 is closed.' })
    expect(shut.next).toContain('Ask the lead')
  })
})

const opened = (
  days: Parameters<typeof decideOpenDay>[0],
  opening: Parameters<typeof decideOpenDay>[1] = next,
) => decideOpenDay(days, opening, date('2026-11-15'), { inStock: 40, missing: 2 })

describe('a day is opened', () => {
  test('with what was delivered for it: kits go into stock', () => {
    expect(written(opened([closed]))).toEqual([
      { kind: 'day.opened', v: 1, body: next },
      {
        kind: 'kits.moved',
        v: 1,
        body: {
          from: { in: 'delivered' },
          to: { in: 'stock' },
          count: 40,
          reason: 'opening count of 2026-11-15',
        },
      },
    ])
  })

  test('and without a delivery no kits move', () => {
    expect(written(opened([closed], { ...next, kits: 0 }))).toHaveLength(1)
  })

  test('from the kits that were counted: those short are missing, those over were found or came', () => {
    const moves = (stockCounted: number) =>
      written(opened([closed], { ...next, kits: 0, stockCounted })).flatMap(({ kind, body }) =>
        kind === 'kits.moved' ? [`${body.from.in} > ${body.to.in} ${body.count}`] : [],
      )
    expect(moves(40)).toEqual([])
    expect(moves(37)).toEqual(['stock > missing 3'])
    expect(moves(45)).toEqual(['missing > stock 2', 'delivered > stock 3'])
  })

  test('one at a time, each once', () => {
    expect(code(opened([day()]))).toBe('day-still-open')
    expect(code(opened([closed], { ...next, date: closed.date }))).toBe('day-was-closed')
    const later = day({ date: date('2026-11-15'), state: 'closed' })
    expect(code(opened([closed, later], { ...next, date: closed.date }))).toBe('day-was-closed')
  })
})

describe('the date of a day', () => {
  const on = (text: string) => opened([closed], { ...next, date: date(text) })

  test('goes forward only', () => {
    expect(code(on('2026-11-13'))).toBe('day-before-last')
    expect(on('2026-11-16').ok).toBe(true)
  })

  test('may be some days ahead, but not a slip of the year away', () => {
    expect(on('2026-11-22').ok).toBe(true)
    expect(refusal(on('2026-11-23')).say).toBe(
      'The day 2026-11-23 is more than 7 days after today, 2026-11-15.',
    )
    expect(code(on('2062-11-15'))).toBe('day-too-far')
  })
})

test('only the day closed last is reopened, with a reason', () => {
  expect(written(decideReopen(closed, 'a late truck'))).toEqual([
    { kind: 'day.reopened', v: 1, body: { date: closed.date, reason: 'a late truck' } },
  ])
  expect(code(decideReopen(day(), 'a late truck'))).toBe('day-not-closed')
  expect(code(decideReopen(null, 'a late truck'))).toBe('day-not-closed')
})
