import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { openLog } from '../../db/log/open.ts'
import { verifyLog } from '../../db/log/verify.ts'
import { closeDay } from '../support/close.ts'
import {
  type Crew,
  checkIn,
  factsOf,
  leadPin,
  openCooler,
  openStation,
  sampleBoth,
  type TestDesk,
} from '../support/desk.ts'

const sunday = '2026-11-15'
let desk: TestDesk
let crew: Crew

beforeAll(async () => {
  ;({ desk, crew } = await openStation())
  const cooler = await openCooler(desk, 'North 1')
  const { bags } = await sampleBoth(desk, await checkIn(desk), crew.sampler)
  for (const bag of bags) await desk.ask('bag.place', { bag, cooler })
})
afterAll(() => desk.end())

const balance = async (key: string) =>
  (await desk.ask('kits', {})).balances.find((each) => each.key === key)?.count
const open = (date: string, kits = 0, blankLabels = 0) => ({
  date: date as never,
  kits,
  blankLabels,
})
const animals = async () => (await desk.ask('line', {})).totals.checkedIn

describe('Saturday', () => {
  test('goes on past midnight for those who are still in the line', async () => {
    desk.now = Date.parse('2026-11-15T00:20:00-07:00')
    const animal = await checkIn(desk, { harvested: sunday as never })
    expect((await desk.ask('who', {})).today).toBe(sunday)
    expect(await animals()).toBe(2)
    await desk.ask('animal.leave', { animal, reason: 'tired, comes back tomorrow' })
  })

  test('must be closed before Sunday is opened', async () => {
    expect(await desk.code('day.open', open(sunday))).toBe('day-still-open')
    await closeDay(desk, { 'blank-labels': -12, 'kits-in-stock': -1 })
    expect(await desk.code('day.open', open('2026-11-14'))).toBe('day-was-closed')
    expect(await desk.code('day.open', open('2026-11-13'))).toBe('day-before-last')
    expect(await desk.code('day.open', open('2027-11-15'))).toBe('day-too-far')
  })
})

describe('Sunday', () => {
  test('opens with what Saturday left and what was delivered', async () => {
    desk.now = Date.parse('2026-11-15T06:00:00-07:00')
    const [stock, hands, { labels }] = [
      await balance('stock'),
      await balance(`hands:${crew.sampler}`),
      await desk.ask('kits', {}),
    ]
    await desk.ask('day.open', open(sunday, 40, 500))
    expect(await balance('stock')).toBe((stock ?? 0) + 40)
    expect(await balance(`hands:${crew.sampler}`)).toBe(hands)
    expect((await desk.ask('kits', {})).labels.blanks).toBe(labels.blanks + 500)
    expect((await desk.ask('who', {})).day).toEqual({ date: sunday, state: 'open' })
  })

  test('counts its own animals, while Saturday’s coolers are still here', async () => {
    expect(await animals()).toBe(0)
    const { items } = await desk.ask('close', {})
    expect(items.every(({ counted }) => counted === null)).toBe(true)
    expect(items.map(({ words }) => words)).toContain('Bags in cooler North 1')
    await sampleBoth(desk, await checkIn(desk, { harvested: sunday as never }), crew.sampler)
    expect(await animals()).toBe(1)
  })

  test('knows the tags of Saturday', async () => {
    const { text } = await desk.ask('table', { what: 'animals', format: 'json', hunters: true })
    const [saturday] = JSON.parse(text) as { tag: string; day: string }[]
    expect(saturday?.day).toBe('2026-11-14')
    const again = { facts: factsOf({ tag: saturday?.tag ?? '' }), contact: null }
    expect(await desk.code('animal.checkIn', again)).toBe('tag-already-here')
  })

  test('asks nothing again that Saturday’s close has settled', async () => {
    const { bench } = await desk.ask('coolers', {})
    const cooler = await openCooler(desk, 'South 1')
    for (const { bag } of bench) await desk.ask('bag.place', { bag, cooler })
    const { items } = await desk.ask('close', {})
    for (const { item } of items) await desk.ask('count.enter', { item, counted: 0 })
    const found = (await desk.ask('close', {})).items.find(({ key }) => key === 'blank-labels')
    const { labels } = await desk.ask('kits', {})
    expect(found?.expected).toBe(labels.blanks)
    // A roll of 1000, and 500 more, less 12 that were lost and those of three kits.
    expect(labels.blanks).toBeLessThanOrEqual(1500 - 12 - 2 * 4)
    expect(labels.blanks).toBeGreaterThan(1500 - 12 - 40)
  })

  test('closes, and both sheets can be printed, each of its own day', async () => {
    await closeDay(desk)
    for (const date of ['2026-11-14', sunday])
      expect((await desk.ask('closeSheet', { date: date as never })).name).toContain(date)
    expect((await desk.ask('closeSheet', {})).name).toContain(sunday)
  })

  test('and the coolers of both days go with one courier', async () => {
    const { coolers } = await desk.ask('coolers', {})
    for (const [place, { cooler }] of coolers.entries())
      await desk.ask('cooler.seal', { cooler, seal: `K-${place}00` })
    const { handoff } = await desk.ask('handoff.begin', {
      destination: 'Basin Animal Disease Laboratory',
      coolers: coolers.map(({ cooler }) => cooler),
    })
    for (const [place, { cooler, bags }] of coolers.entries())
      await desk.ask('cooler.scanOut', {
        handoff,
        cooler,
        seal: `K-${place}00`,
        celsius: 3,
        counted: bags,
        words: '',
      })
    await desk.ask('handoff.sign', {
      asItIs: true,
      handoff,
      courier: { name: 'Tam Ridley', organisation: '', vehicle: '' },
      pin: leadPin,
      leadSignature: { how: 'on-paper' },
      courierSignature: { how: 'on-paper' },
    })
    expect(await balance('sent')).toBe(2)
    expect(await balance('used')).toBe(0)
  })
})

test('after both days the log is whole, and its tables are what its entries say', async () => {
  await desk.ask('shelf.shut', {})
  const log = openLog(desk.file)
  if (!log.ok) throw new Error(log.refusal.say)
  expect(verifyLog(log.value)).toMatchObject({ whole: true, readTables: 'equal', notUnderstood: 0 })
  log.value.close()
})
