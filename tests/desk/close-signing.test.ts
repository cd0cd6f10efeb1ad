import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { readLog } from '../../db/log/read-log.ts'
import { closeDay, countEverything } from '../support/close.ts'
import {
  type Crew,
  checkIn,
  crewPin,
  leadPin,
  openCooler,
  openStation,
  sampleBoth,
  settings,
  type TestDesk,
} from '../support/desk.ts'

let desk: TestDesk
let crew: Crew
beforeEach(async () => {
  ;({ desk, crew } = await openStation())
})
afterEach(() => desk.end())

const sampler = () => ({ person: crew.sampler, pin: crewPin })

describe('two people sign', () => {
  beforeEach(() => countEverything(desk))

  test('each with their own PIN, and both are told afterwards', async () => {
    const second = sampler()
    const wrong = await desk.refusal('day.close', {
      pin: leadPin,
      second: { ...second, pin: '9999' },
    })
    expect(wrong).toMatchObject({ code: 'pin-wrong', field: 'second.pin' })
    await desk.ask('day.close', { pin: leadPin, second })
    expect((await desk.ask('close', {})).signed).toMatchObject({
      lead: 'Orla Vance',
      second: 'Ines Tarr',
    })
  })

  test('and the lead signs alone only for a reason, which is kept', async () => {
    expect(await desk.code('day.close', { pin: leadPin })).toBe('second-wanted')
    await desk.ask('day.close', { pin: leadPin, aloneBecause: 'snow closed the road' })
    expect((await desk.ask('close', {})).signed).toMatchObject({
      second: null,
      aloneBecause: 'snow closed the road',
    })
  })

  test('not the lead twice', async () => {
    const second = { person: crew.lead, pin: leadPin }
    expect(await desk.code('day.close', { pin: leadPin, second })).toBe('second-is-the-lead')
  })

  test('unless the station has settled that the lead signs alone', async () => {
    await desk.ask('settings.change', { settings: { ...settings, secondSigner: false } })
    await desk.ask('day.close', { pin: leadPin })
    expect((await desk.ask('close', {})).state).toBe('closed')
  })

  test('when two close at once, one signs and the other is told that the day is closed', async () => {
    const close = () =>
      desk.desk.call(desk.session, 'day.close', { pin: leadPin, second: sampler() })
    const both = await Promise.all([close(), close()])
    const codes = both.map((each) => (each.ok ? 'signed' : each.refusal.code))
    expect(codes.toSorted()).toEqual(['day-closed', 'signed'])
    const log = readLog(desk.file)
    expect(log.ok).toBe(true)
    if (log.ok) log.value.close()
  })
})

describe('a count', () => {
  const stock = { of: 'kits-in-stock' } as const
  const item = async (key: string) =>
    (await desk.ask('close', {})).items.find((each) => each.key === key)

  test('below nothing or with a fraction is no count', async () => {
    expect(await desk.code('count.enter', { item: stock, counted: -1 })).toBe('bad-input')
    expect(await desk.code('count.enter', { item: stock, counted: 1.5 })).toBe('bad-input')
  })

  test('over ten times what can be here is asked for once more', async () => {
    expect(await desk.code('count.enter', { item: stock, counted: 801 })).toBe('count-absurd')
    await desk.ask('count.enter', { item: stock, counted: 801, sure: true })
    expect((await item('kits-in-stock'))?.counted).toBe(801)
  })

  test('keeps who made it, and those that were made before', async () => {
    await desk.ask('count.enter', { item: stock, counted: 78 })
    desk.wait(3)
    await desk.sit(crew.volunteer)
    await desk.ask('count.enter', { item: stock, counted: 80 })
    expect((await item('kits-in-stock'))?.tries).toEqual([
      { counted: 80, by: 'Bo Quill', ms: desk.now },
      { counted: 78, by: 'Orla Vance', ms: desk.now - 180_000 },
    ])
  })

  test('of a cooler by scanning names the bag that is missing and the one that is too many', async () => {
    const cooler = await openCooler(desk)
    const { bags } = await sampleBoth(desk, await checkIn(desk), crew.sampler)
    const [inside = '', outside = ''] = bags
    await desk.ask('bag.place', { bag: inside, cooler })
    await desk.ask('count.scan', { cooler, bags: [outside] })
    expect(await item(`bags:${cooler}`)).toMatchObject({
      variance: 0,
      scanned: { missing: [inside], extra: [outside] },
      causes: [
        { code: 'bag-in-no-cooler', about: outside },
        { code: 'bag-missing', about: inside },
      ],
    })
    expect(await desk.code('count.scan', { cooler, bags: [cooler] })).toBe('wrong-label')
  })
})

describe('from one day to the next', () => {
  test('goes what was counted, what is in the coolers, and a note to the next lead', async () => {
    const cooler = await openCooler(desk)
    const { bags } = await sampleBoth(desk, await checkIn(desk), crew.sampler)
    for (const bag of bags) await desk.ask('bag.place', { bag, cooler })
    await desk.ask('handover.write', { words: 'the lid of North 1 is cracked' })
    await closeDay(desk, { 'kits-in-stock': -3 })
    const { note, carry, tomorrow } = await desk.ask('handover', {})
    expect(note).toMatchObject({ words: 'the lid of North 1 is cracked', by: 'Orla Vance' })
    expect(carry).toMatchObject({
      kitsInStock: 77,
      kitsInHands: 19,
      coolers: [{ name: 'North 1', bags: 2 }],
      bagsFrozen: 0,
    })
    expect(tomorrow.ask).toBe(Math.max(0, tomorrow.enough - 96))
  })

  test('the opening count puts the ledger right before the delivery', async () => {
    await closeDay(desk)
    desk.wait(24 * 60)
    const opening = { kits: 40, blankLabels: 0, stockCounted: 75 }
    await desk.ask('day.open', { date: '2026-11-15' as never, ...opening })
    const { balances } = await desk.ask('kits', {})
    const of = (key: string) => balances.find((each) => each.key === key)?.count
    expect([of('stock'), of('missing')]).toEqual([115, 5])
  })
})

test('every balance of a ledger opens to its entries, and they add up to it', async () => {
  const cooler = await openCooler(desk)
  const { bags } = await sampleBoth(desk, await checkIn(desk), crew.sampler)
  for (const bag of bags) await desk.ask('bag.place', { bag, cooler })
  for (const ledger of ['kits', 'labels', 'bags'] as const) {
    const { accounts } = await desk.ask('ledger', { ledger, account: null })
    for (const { key, balance, outside } of accounts) {
      const { lines } = await desk.ask('ledger', { ledger, account: key })
      const sum = lines.reduce((all, { delta }) => all + delta, 0)
      expect(outside ? -sum : sum, `${ledger} ${key}`).toBe(balance)
    }
  }
})
