import { describe, expect, test } from 'vitest'
import { type LeadView, needsOfLead } from '../../electron/station/needs.ts'
import type { CrewMember } from '../../shared-types/views/line.ts'
import { animal, day, minutes, morning, sampler } from './records.ts'

const hours = (count: number) => minutes(60 * count)
const noon = morning + hours(6)

const ines: CrewMember = {
  ...sampler,
  training: [...sampler.training],
  shift: null,
  kits: 12,
  kitsLow: 'enough',
  animals: [animal(9).animal],
  finishedToday: 3,
  usualMinutes: 6,
}

const north = {
  name: 'North 1',
  keeping: 'chilled',
  bags: 10,
  holdUntilMs: noon + hours(40),
  lastReading: { celsius: 4, excursion: false, ms: noon - hours(1) },
} as const

const calm: LeadView = {
  nowMs: noon,
  zone: 'America/Denver',
  targetWaitMinutes: 30,
  day: day(),
  waiting: [],
  crew: [ines],
  kitsInStock: 60,
  bagsLate: 0,
  placesMissing: 0,
  coolers: [north],
}

const codes = (view: Partial<LeadView>) => needsOfLead({ ...calm, ...view }).map(({ code }) => code)
const said = (view: Partial<LeadView>) => needsOfLead({ ...calm, ...view }).map(({ say }) => say)

test('on a calm morning nothing needs the lead', () => {
  expect(codes({})).toEqual([])
})

test('every need says what to do, in a sentence, and where', () => {
  const all = needsOfLead({
    ...calm,
    day: null,
    waiting: [animal(1, { arrivedMs: noon - minutes(50) })],
    crew: [{ ...ines, animals: [], kits: 0, kitsLow: 'none' }],
    kitsInStock: 0,
    bagsLate: 2,
    coolers: [
      { ...north, holdUntilMs: noon + hours(1), lastReading: null },
      { ...north, lastReading: { celsius: 9, excursion: true, ms: noon } },
    ],
  })
  expect(all.length).toBeGreaterThan(6)
  for (const { say, next } of all) {
    expect(say).toMatch(/^[A-Z0-9].*\.$/)
    expect(next).toMatch(/^[A-Z].*\.$/)
  }
  const firstCalm = all.findIndex(({ urgent }) => !urgent)
  expect(all.slice(firstCalm).every(({ urgent }) => !urgent)).toBe(true)
})

describe('the lead hears of the day', () => {
  test('when none is open', () => {
    expect(codes({ day: null })).toEqual(['no-day-open'])
    expect(said({ day: day({ state: 'closed' }) })).toEqual(['The day 2026-11-14 is closed.'])
  })
})

describe('the lead hears of the hold clock', () => {
  const until = (holdUntilMs: number | null) =>
    needsOfLead({ ...calm, coolers: [{ ...north, holdUntilMs }] })

  test('twelve hours before it runs out, urgently in the last two, and after it ran out', () => {
    expect(until(noon + hours(13))).toEqual([])
    expect(until(noon + hours(11))[0]).toMatchObject({ code: 'hold-soon', urgent: false })
    expect(until(noon + hours(2))[0]).toMatchObject({ code: 'hold-soon', urgent: true })
    expect(until(noon)[0]).toMatchObject({ code: 'hold-over', urgent: true })
    expect(until(null)).toEqual([])
  })

  test('with the hour, and the day where it is another one', () => {
    expect(until(noon + hours(2))[0]?.say).toContain('runs out at 14:30')
    expect(until(noon - hours(13))[0]?.say).toContain('ran out Fri 13 Nov at 23:30')
  })
})

describe('the lead hears of temperatures', () => {
  const last = (lastReading: LeadView['coolers'][number]['lastReading'], bags = 10) =>
    codes({ coolers: [{ ...north, lastReading, bags }] })

  test('outside the limits, until a reading within them', () => {
    expect(last({ celsius: 9, excursion: true, ms: noon })).toEqual(['excursion'])
  })

  test('not read for four hours, or never, while there are bags inside', () => {
    expect(last({ celsius: 4, excursion: false, ms: noon - hours(4) })).toEqual(['reading-due'])
    expect(last({ celsius: 4, excursion: false, ms: noon - hours(4) + 1 })).toEqual([])
    expect(last(null)).toEqual(['reading-due'])
    expect(last(null, 0)).toEqual([])
  })
})

describe('the lead hears of kits', () => {
  const handsOf = (changed: Partial<CrewMember>) => ({ crew: [{ ...ines, ...changed }] })

  test('that run low in the hands of those on duty', () => {
    expect(said(handsOf({ kits: 1, kitsLow: 'low' }))).toEqual([
      'Ines Tarr has only 1 kit in hand.',
    ])
    expect(codes(handsOf({ kits: 0, kitsLow: 'none' }))).toEqual(['no-kits-in-hand'])
    expect(codes(handsOf({ kits: 0, kitsLow: 'none', duty: 'off' }))).toEqual([])
  })

  test('that do not reach for the animals waiting', () => {
    const waiting = [1, 2, 3].map((serial) => animal(serial, { arrivedMs: noon }))
    expect(said({ waiting, kitsInStock: 0, ...handsOf({ kits: 2 }) })).toContain(
      '3 animals wait and only 2 kits are left.',
    )
    expect(codes({ waiting, kitsInStock: 1, ...handsOf({ kits: 2 }) })).not.toContain(
      'kits-short-of-line',
    )
  })
})

test('the lead hears of bags that warm on the bench', () => {
  expect(said({ bagsLate: 1 })[0]).toBe('1 sealed bag has lain on the bench for over half an hour.')
  expect(said({ bagsLate: 3 })[0]).toContain('3 sealed bags have')
})

describe('the lead hears of the line', () => {
  const waiting = [animal(1, { arrivedMs: noon - minutes(31) })]

  test('when someone is free while an animal waits longer than the station wants', () => {
    const free = { ...ines, animals: [] }
    expect(said({ waiting, crew: [free] })).toEqual([
      'Ines Tarr is free while 1 animal waits longer than 30 minutes.',
    ])
    expect(codes({ waiting, crew: [ines] })).toEqual([])
    const fresh = [animal(1, { arrivedMs: noon - minutes(30) })]
    expect(codes({ waiting: fresh, crew: [free] })).toEqual([])
  })

  test('when animals wait and nobody is on duty', () => {
    expect(codes({ waiting, crew: [{ ...ines, duty: 'off' }] })).toContain('nobody-on-duty')
  })
})

test('a hunter whose place of harvest is no use is asked again while still here', () => {
  expect(said({ placesMissing: 2 })[0]).toBe(
    '2 animals in the line have no place of harvest that the laboratory can use.',
  )
  expect(said({})).toEqual([])
})
