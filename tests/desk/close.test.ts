import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { closeDay, countEverything, handsOf } from '../support/close.ts'
import {
  type Crew,
  checkIn,
  leadPin,
  openCooler,
  openStation,
  sampleBoth,
  type TestDesk,
} from '../support/desk.ts'

let desk: TestDesk
let crew: Crew
beforeEach(async () => {
  ;({ desk, crew } = await openStation())
})
afterEach(() => desk.end())

const stock = { of: 'kits-in-stock' } as const
const item = async (key: string) =>
  (await desk.ask('close', {})).items.find((each) => each.key === key)
const balance = async (key: string) =>
  (await desk.ask('kits', {})).balances.find((each) => each.key === key)?.count

/** Two animals sampled, their bags in one cooler. */
async function worked() {
  const cooler = await openCooler(desk)
  for (let animal = 0; animal < 2; animal += 1) {
    const { bags } = await sampleBoth(desk, await checkIn(desk), crew.sampler)
    for (const bag of bags) await desk.ask('bag.place', { bag, cooler })
  }
  return cooler
}

describe('counting at dusk', () => {
  test('is blind: what is expected shows only once a number was entered', async () => {
    await worked()
    const { items, open } = await desk.ask('close', {})
    expect(items.every(({ expected, variance }) => expected === null && variance === null)).toBe(
      true,
    )
    expect(open.map(({ code }) => code)).toEqual(['not-counted'])
    await desk.ask('count.enter', { item: stock, counted: 79 })
    expect(await item('kits-in-stock')).toMatchObject({ counted: 79, expected: 80, variance: -1 })
    expect((await item('blank-labels'))?.expected).toBeNull()
  })

  test('takes only what is on the list', async () => {
    const cooler = await openCooler(desk)
    const lost = { of: 'bags', cooler: cooler.replace('0001', '0002') as never } as const
    expect(await desk.code('count.enter', { item: lost, counted: 3 })).toMatch(
      /bad-input|not-on-the-list/,
    )
    const hands = { of: 'kits-in-hand', person: crew.volunteer } as const
    expect(await desk.code('count.enter', { item: hands, counted: 0 })).toBe('not-on-the-list')
  })

  test('is done by anyone of the crew, explaining by the lead alone', async () => {
    await desk.sit(crew.volunteer)
    await desk.ask('count.enter', { item: stock, counted: 79 })
    expect(await desk.code('variance.explain', { item: stock, reason: 'lost', words: '' })).toBe(
      'role-may-not',
    )
  })
})

describe('the day is not closed', () => {
  const close = () => desk.code('day.close', { pin: leadPin })

  test('with an animal waiting, in hand, or its bags on the bench', async () => {
    const animal = await checkIn(desk)
    expect(await close()).toBe('animals-still-open')
    await desk.ask('animal.assign', { animal, sampler: crew.sampler })
    expect(await close()).toBe('animals-still-open')
    await sampleBoth(desk, await checkIn(desk), crew.sampler)
    await desk.ask('animal.leave', { animal, reason: 'had to drive home' })
    expect(await close()).toBe('bags-on-bench')
  })

  test('with anything uncounted, unexplained, or explained for another number', async () => {
    await worked()
    expect(await close()).toBe('not-counted')
    await countEverything(desk, { 'kits-in-stock': -1 })
    expect(await close()).toBe('variance-unexplained')
    await desk.ask('variance.explain', { item: stock, reason: 'lost', words: 'blown away' })
    await desk.ask('kits.move', {
      from: { in: 'stock' },
      to: { in: 'hands', person: crew.sampler },
      count: 1,
      reason: '',
    })
    expect(await close()).toBe('variance-unexplained')
  })

  test('by anyone but a lead, or without the lead’s own PIN', async () => {
    await countEverything(desk)
    expect(await desk.code('day.close', { pin: '0000' })).toBe('pin-wrong')
    await desk.sit(crew.volunteer)
    expect(await desk.code('day.close', { pin: leadPin })).toBe('role-may-not')
  })

  test('twice', async () => {
    await closeDay(desk)
    expect(await desk.code('day.close', { pin: leadPin })).toBe('day-closed')
  })
})

describe('a closed day', () => {
  test('shows as it was signed, with who signed and when', async () => {
    await worked()
    desk.wait(700)
    await closeDay(desk, { 'kits-in-stock': -1, [handsOf(crew.sampler)]: 2 })
    const closed = await desk.ask('close', {})
    expect(closed).toMatchObject({
      state: 'closed',
      open: [],
      signed: { lead: 'Orla Vance', ms: desk.now },
    })
    expect(await item('kits-in-stock')).toMatchObject({
      expected: 80,
      counted: 79,
      explained: { reason: 'lost' },
    })
  })

  test('puts the ledger right, so that the next count starts from what is there', async () => {
    await worked()
    await closeDay(desk, { 'kits-in-stock': -3, [handsOf(crew.sampler)]: 2 })
    expect(await balance('stock')).toBe(77)
    expect(await balance(`hands:${crew.sampler}`)).toBe(20)
    expect(await balance('missing')).toBe(1)
  })

  test('takes no more animals, kits or counts', async () => {
    const animal = await checkIn(desk)
    await desk.ask('animal.leave', { animal, reason: 'had to drive home' })
    await closeDay(desk)
    const next = { facts: (await desk.ask('animal', { animal })).facts, contact: null }
    const refused = await desk.refusal('animal.checkIn', next)
    expect(refused.code).toBe('day-closed')
    expect(refused.next).toContain('Ask the lead to open the next day')
    expect(
      await desk.code('labels.printKits', {
        for: { whom: 'reserve', count: 1 },
        stock: 'roll-51x25',
      }),
    ).toBe('day-closed')
    expect(await desk.code('count.enter', { item: stock, counted: 1 })).toBe('day-closed')
    expect(await desk.code('variance.explain', { item: stock, reason: 'lost', words: '' })).toBe(
      'day-closed',
    )
  })

  test('has a sheet to print; an open one has not', async () => {
    expect(await desk.code('closeSheet', {})).toBe('day-not-closed')
    await closeDay(desk)
    expect((await desk.ask('closeSheet', {})).name).toBe('close-26KRVA-2026-11-14.pdf')
    expect(await desk.code('closeSheet', { date: '2026-11-13' as never })).toBe('day-not-closed')
  })

  test('is reopened by the lead with a reason, and closed again over what came late', async () => {
    await closeDay(desk)
    expect(await desk.code('day.reopen', { reason: '' })).toBe('bad-input')
    await desk.ask('day.reopen', { reason: 'a late truck' })
    expect(await desk.code('day.reopen', { reason: 'a late truck' })).toBe('day-not-closed')
    const animal = await checkIn(desk)
    await desk.ask('animal.leave', { animal, reason: 'too late for the lab' })
    expect(await desk.code('day.close', { pin: leadPin })).toBe('variance-unexplained')
    await closeDay(desk)
    expect((await desk.ask('close', {})).totals).toMatchObject({ checkedIn: 1, left: 1 })
  })

  test('waits for an animal that came back after it was put back in the line', async () => {
    const animal = await checkIn(desk)
    await desk.ask('animal.leave', { animal, reason: 'had to drive home' })
    await closeDay(desk)
    desk.wait(24 * 60)
    await desk.ask('day.open', { date: '2026-11-15' as never, kits: 0, blankLabels: 0 })
    await desk.ask('animal.putBack', { animal, reason: 'hunter came back' })
    await countEverything(desk)
    expect(await desk.code('day.close', { pin: leadPin })).toBe('animals-still-open')
  })
})
