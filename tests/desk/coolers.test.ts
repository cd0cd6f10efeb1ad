import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import type { BagNumber, CoolerNumber } from '../../shared-types/sample-number.ts'
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
beforeAll(async () => {
  ;({ desk, crew } = await openStation())
})
beforeEach(() => desk.sit(crew.sampler))
afterAll(() => desk.end())

let opened = 0
async function cooler(): Promise<CoolerNumber> {
  opened += 1
  return openCooler(desk, `Box ${opened}`)
}
async function twoBags(): Promise<[BagNumber, BagNumber]> {
  const { bags } = await sampleBoth(desk, await checkIn(desk), crew.sampler)
  const [left, right] = bags
  if (!left || !right) throw new Error('two bags were expected')
  return [left, right]
}
const inside = async (number: CoolerNumber) =>
  (await desk.ask('cooler', { cooler: number })).bags.map(({ bag }) => bag)

describe('a bag is in one place', () => {
  test('and a second scan, or another cooler, is refused until it is taken out', async () => {
    const [north, south] = [await cooler(), await cooler()]
    const [bag] = await twoBags()
    await desk.ask('bag.place', { bag, cooler: north })
    expect(await desk.code('bag.place', { bag, cooler: north })).toBe('bag-already-here')
    expect(await desk.code('bag.place', { bag, cooler: south })).toBe('bag-in-another-cooler')
    await desk.ask('bag.takeOut', { bag, reason: 'wrong cooler' })
    expect(await desk.code('bag.takeOut', { bag, reason: 'wrong cooler' })).toBe(
      'bag-not-in-cooler',
    )
    expect((await desk.ask('coolers', {})).bench.map((each) => each.bag)).toContain(bag)
    await desk.ask('bag.place', { bag, cooler: south })
    expect([await inside(north), await inside(south)]).toEqual([[], [bag]])
  })

  test('and is not discarded out of a cooler', async () => {
    const north = await cooler()
    const [bag] = await twoBags()
    await desk.ask('bag.place', { bag, cooler: north })
    expect(await desk.code('bag.discard', { bag, reason: 'torn at the zip' })).toBe('bag-in-cooler')
  })

  test('and a label that is on no bag yet goes nowhere', async () => {
    const north = await cooler()
    const { kits } = await desk.ask('labels.printKits', {
      for: { whom: 'reserve', count: 1 },
      stock: 'roll-51x25',
    })
    const { reserved } = await desk.ask('kits', {})
    const label = reserved
      .find(({ kit }) => kit === kits[0])
      ?.labels.find(({ number }) => number.charAt(10) === 'L')
    expect(await desk.code('bag.place', { bag: label?.number ?? '', cooler: north })).toBe(
      'not-in-this-log',
    )
  })
})

describe('a cooler', () => {
  test('has a name nobody else has while it is here', async () => {
    await openCooler(desk, 'Blue one')
    expect(
      await desk.code('cooler.open', { name: ' Blue one ', keeping: 'frozen', capacity: null }),
    ).toBe('cooler-name-taken')
  })

  test('takes no more than it holds', async () => {
    const { cooler: small } = await desk.ask('cooler.open', {
      name: 'Small',
      keeping: 'chilled',
      capacity: 1,
    })
    const [left, right] = await twoBags()
    await desk.ask('bag.place', { bag: left, cooler: small })
    expect(await desk.code('bag.place', { bag: right, cooler: small })).toBe('cooler-full')
  })

  test('is read: outside its limits the reading says what to do, and the lead hears of it', async () => {
    const north = await cooler()
    expect(await desk.ask('cooler.read', { cooler: north, celsius: 4 })).toEqual({
      excursion: false,
      advice: 'Within the limits.',
    })
    desk.wait(30)
    const warm = await desk.ask('cooler.read', { cooler: north, celsius: 9.5 })
    expect(warm.excursion).toBe(true)
    expect(warm.advice).toContain('Too warm')
    const { needs } = await desk.ask('line', {})
    expect(needs.map(({ code }) => code)).toContain('excursion')
    const { readings } = await desk.ask('cooler', { cooler: north })
    expect(readings.map(({ celsius, by }) => [celsius, by])).toEqual([
      [9.5, 'Ines Tarr'],
      [4, 'Ines Tarr'],
    ])
    desk.wait(1)
    await desk.ask('cooler.read', { cooler: north, celsius: 5 })
    expect((await desk.ask('line', {})).needs.map(({ code }) => code)).not.toContain('excursion')
  })
})

describe('a seal', () => {
  test('closes a cooler to bags, both ways', async () => {
    const north = await cooler()
    const [left, right] = await twoBags()
    expect(await desk.code('cooler.seal', { cooler: north, seal: 'S-100' })).toBe('cooler-empty')
    await desk.ask('bag.place', { bag: left, cooler: north })
    await desk.ask('cooler.seal', { cooler: north, seal: ' s-100 ' })
    expect((await desk.ask('cooler', { cooler: north })).cooler).toMatchObject({
      state: 'sealed',
      seal: 'S-100',
    })
    expect(await desk.code('bag.place', { bag: right, cooler: north })).toBe('cooler-sealed')
    expect(await desk.code('bag.takeOut', { bag: left, reason: 'wrong cooler' })).toBe(
      'cooler-sealed',
    )
    expect(await desk.code('cooler.seal', { cooler: north, seal: 'S-101' })).toBe('cooler-sealed')
  })

  test('has a number that can be read, and is on one cooler only', async () => {
    const [north, south] = [await cooler(), await cooler()]
    const [left, right] = await twoBags()
    await desk.ask('bag.place', { bag: left, cooler: north })
    await desk.ask('bag.place', { bag: right, cooler: south })
    for (const seal of ['', 'S', 'S 1', 'S#100'])
      expect(await desk.code('cooler.seal', { cooler: north, seal })).toBe('seal-not-readable')
    await desk.ask('cooler.seal', { cooler: north, seal: 'S-200' })
    expect(await desk.code('cooler.seal', { cooler: south, seal: 's-200' })).toBe('seal-used-twice')
  })

  test('is broken by the lead, with a reason, and the cooler is open again', async () => {
    const north = await cooler()
    const [left, right] = await twoBags()
    await desk.ask('bag.place', { bag: left, cooler: north })
    await desk.ask('cooler.seal', { cooler: north, seal: 'S-300' })
    expect(await desk.code('seal.break', { cooler: north, reason: 'one bag forgotten' })).toBe(
      'role-may-not',
    )
    await desk.sit(crew.lead, leadPin)
    await desk.ask('seal.break', { cooler: north, reason: 'one bag forgotten' })
    expect(await desk.code('seal.break', { cooler: north, reason: 'one bag forgotten' })).toBe(
      'cooler-not-sealed',
    )
    await desk.ask('bag.place', { bag: right, cooler: north })
  })
})
