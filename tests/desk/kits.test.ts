import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { DeskId, personId, sampleNumber } from '../../shared-types/sample-number.ts'
import { type Crew, checkIn, kitFor, leadPin, openStation, type TestDesk } from '../support/desk.ts'

let desk: TestDesk
let crew: Crew
beforeAll(async () => {
  ;({ desk, crew } = await openStation())
})
beforeEach(() => desk.sit(crew.volunteer))
afterAll(() => desk.end())

const stock = { in: 'stock' } as const
const hands = (person = crew.sampler) => ({ in: 'hands', person }) as const
const balances = async () =>
  new Map((await desk.ask('kits', {})).balances.map(({ key, count }) => [key, count]))

describe('the kit ledger', () => {
  test('moves kits and makes none', async () => {
    const before = await balances()
    await desk.ask('kits.move', { from: stock, to: hands(), count: 7, reason: '' })
    const after = await balances()
    expect(after.get('stock')).toBe((before.get('stock') ?? 0) - 7)
    expect(after.get(`hands:${crew.sampler}`)).toBe((before.get(`hands:${crew.sampler}`) ?? 0) + 7)
    const all = [...after].reduce(
      (sum, [key, count]) => (key === 'delivered' ? sum : sum + count),
      0,
    )
    expect(all).toBe(after.get('delivered'))
  })

  test('gives no more than is there, and nothing to hands nobody knows', async () => {
    const move = { from: stock, to: hands(), reason: '' }
    expect(await desk.code('kits.move', { ...move, count: 99_999 })).toBe('not-enough-kits')
    const nobody = hands(personId(DeskId.parse('26KRVA'), 77))
    expect(await desk.code('kits.move', { ...move, to: nobody, count: 1 })).toBe('not-in-this-log')
    const stranger = hands(personId(DeskId.parse('26KRTA'), 1))
    expect(await desk.code('kits.move', { ...move, to: stranger, count: 1 })).toBe(
      'another-station',
    )
  })

  test('is settled with the world outside by the lead alone', async () => {
    const delivery = {
      from: { in: 'delivered' },
      to: stock,
      count: 50,
      reason: 'second truck',
    } as const
    expect(await desk.code('kits.move', delivery)).toBe('lead-settles-kits')
    await desk.sit(crew.lead, leadPin)
    await desk.ask('kits.move', delivery)
    expect((await balances()).get('delivered')).toBe(150)
  })
})

describe('printed labels', () => {
  test('take blanks from the roll, and each number has one live copy', async () => {
    const { labels: before } = await desk.ask('kits', {})
    const animal = await checkIn(desk)
    const kit = await kitFor(desk, animal)
    const { labels: after, reserved } = await desk.ask('kits', {})
    expect(after.blanks).toBeLessThan(before.blanks)
    const printed = reserved.find((each) => each.kit === kit)
    expect(printed).toMatchObject({ animal, state: 'reserved' })
    expect(printed?.labels.map(({ copy, fate }) => [copy, fate])).toEqual(
      Array.from({ length: 4 }, () => [1, 'printed']),
    )
  })

  test('are reprinted as the next copy, and the copy before is void', async () => {
    const kit = await kitFor(desk, await checkIn(desk))
    const again = {
      number: kit,
      reason: 'smeared',
      words: '',
      stock: 'roll-51x25',
      destroyed: true,
    } as const
    expect(await desk.code('label.reprint', { ...again, destroyed: false })).toBe(
      'first-copy-still-good',
    )
    expect((await desk.ask('label.reprint', again)).copy).toBe(2)
    expect((await desk.ask('label.reprint', again)).copy).toBe(3)
    const card = (await desk.ask('kits', {})).reserved
      .find((each) => each.kit === kit)
      ?.labels.filter(({ number }) => number === kit)
    expect(card?.map(({ fate }) => fate)).toEqual(['void', 'void', 'printed'])
  })

  test('are void once, and then only a reprint brings the number back', async () => {
    const kit = await kitFor(desk, await checkIn(desk))
    const torn = { number: kit, reason: 'torn', words: '' } as const
    await desk.ask('label.void', torn)
    expect(await desk.code('label.void', torn)).toBe('label-already-void')
    await desk.ask('label.reprint', { ...torn, stock: 'roll-51x25' })
    await desk.ask('label.void', torn)
  })

  test('of a number never printed are not reprinted', async () => {
    const wrong = { reason: 'torn', words: '', stock: 'roll-51x25' } as const
    const number = await kitFor(desk, await checkIn(desk))
    const obex = sampleNumber(DeskId.parse('26KRVA'), Number(number.slice(6, 10)), 'X')
    expect(await desk.code('label.reprint', { ...wrong, number: obex })).toBe('label-never-printed')
  })

  test('come as a PDF named after what is on it', async () => {
    const { pdf, kits } = await desk.ask('labels.printKits', {
      for: { whom: 'reserve', count: 2 },
      stock: 'sheet-a4',
    })
    expect(pdf.name).toBe(`labels-${kits[0]}-to-${kits[1]}.pdf`)
    expect(Buffer.from(pdf.base64, 'base64').subarray(0, 5).toString()).toBe('%PDF-')
  })
})

describe('a kit that is spoiled', () => {
  test('leaves stock with its labels void, once', async () => {
    const kit = await kitFor(desk, await checkIn(desk))
    const before = await balances()
    await desk.ask('kit.spoil', { kit, reason: 'box got wet' })
    const after = await balances()
    expect(after.get('spoiled')).toBe((before.get('spoiled') ?? 0) + 1)
    expect(after.get('stock')).toBe((before.get('stock') ?? 0) - 1)
    const spoiled = (await desk.ask('kits', {})).latest.find((each) => each.kit === kit)
    expect(spoiled?.labels.every(({ fate }) => fate === 'void')).toBe(true)
    expect(await desk.code('kit.spoil', { kit, reason: 'box got wet' })).toBe('kit-already-spoiled')
  })
})
