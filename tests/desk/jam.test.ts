/** A run of labels that jams goes on from the exact label, and no number comes out good twice. */
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import {
  kitOf,
  type KitNumber,
  numberParts,
  sampleNumber,
} from '../../shared-types/sample-number.ts'
import { pageTexts } from '../print/read-pdf.ts'
import { checkIn, type Crew, kitFor, openStation, type TestDesk } from '../support/desk.ts'

let desk: TestDesk
let crew: Crew
let kits: readonly KitNumber[]
/** The labels as they came out of the printer. */
let out: readonly string[]

const texts = (pdf: { base64: string }) =>
  pageTexts(new Uint8Array(Buffer.from(pdf.base64, 'base64')))

beforeEach(async () => {
  ;({ desk, crew } = await openStation())
  await desk.sit(crew.volunteer)
  const reserve = { whom: 'reserve', count: 4 } as const
  const printed = await desk.ask('labels.printKits', { for: reserve, stock: 'roll-51x25' })
  kits = printed.kits
  out = await texts(printed.pdf)
})
afterEach(() => desk.end())

const part = (kit: KitNumber, letter: 'L' | 'R' | 'H') => {
  const { desk: of, serial } = numberParts(kit)
  return sampleNumber(of, serial, letter)
}
const second = () => kits[1] as KitNumber
const labelsOf = async (kit: KitNumber) =>
  (await desk.ask('kits', {})).reserved.find((each) => each.kit === kit)?.labels ?? []
const blanks = async () => (await desk.ask('kits', {})).labels.blanks

describe('after a jam', () => {
  test('the person sees which labels follow the one they scanned', async () => {
    const jam = await desk.ask('labels.jam', { last: part(second(), 'R') })
    expect(jam.total).toBe(out.length)
    expect(jam.ahead.slice(0, 3).map(({ words }) => words)).toEqual([
      expect.stringMatching(/^right bag label of kit 26-KRV-A0002-K/),
      expect.stringMatching(/^outer bag label of kit 26-KRV-A0002-K/),
      expect.stringMatching(/^data card of kit 26-KRV-A0002-K-., 1 of \d/),
    ])
  })

  test('with none ruined the rest comes out as it was, and takes no more blanks', async () => {
    const before = await blanks()
    const last = part(second(), 'R')
    const rest = await desk.ask('labels.goOn', { last, good: 1, ruined: 0 })
    const left = out.slice(
      out.findIndex((text) => text.includes('RIGHT') && text.includes('A0002')) + 1,
    )
    expect(await texts(rest.pdf)).toEqual(left)
    expect(rest).toMatchObject({ labels: left.length, again: 0 })
    expect(await blanks()).toBe(before)
  })

  test('a ruined label is void, destroyed, and comes out first, marked as a reprint', async () => {
    const before = await blanks()
    const last = part(second(), 'L')
    const rest = await desk.ask('labels.goOn', { last, good: 1, ruined: 1 })
    const [first, next] = await texts(rest.pdf)
    expect(first).toMatch(/A0002-R.*RIGHT.*REPRINT 1/)
    expect(next).toMatch(/A0002-K.*KIT/)
    expect(next).not.toContain('REPRINT')
    const right = (await labelsOf(second())).filter(({ number }) => number === part(second(), 'R'))
    expect(right.map(({ copy, fate }) => [copy, fate])).toEqual([
      [1, 'void'],
      [2, 'printed'],
    ])
    expect(await blanks()).toBe(before - 1)
  })

  test('in the middle of a data card the rest of the card comes out, not its first label', async () => {
    // The outer bag label and the first label of the card, which carry the number of the kit.
    const rest = await desk.ask('labels.goOn', { last: second(), good: 2, ruined: 0 })
    expect((await texts(rest.pdf))[0]).toMatch(/Card 2\/\d/)
  })

  test('a ruined label of a card has the whole card come out again, and the blanks are told', async () => {
    const before = await blanks()
    const rest = await desk.ask('labels.goOn', { last: second(), good: 2, ruined: 1 })
    const again = (await texts(rest.pdf)).slice(0, 4)
    expect(again[0]).toMatch(/KIT.*REPRINT 1/)
    expect(again[1]).toMatch(/Card 1\/3.*REPRINT 1/)
    expect(again[3]).toMatch(/Card 3\/3/)
    // Two good labels of the old copy and the ruined one are waste; the last had not come out.
    expect(await blanks()).toBe(before - 3)
  })

  test('not one good label: the whole run comes out, the ruined ones as reprints', async () => {
    const rest = await desk.ask('labels.goOn', { last: null, good: 0, ruined: 2 })
    const all = await texts(rest.pdf)
    expect(all).toHaveLength(out.length)
    expect(all.filter((text) => text.includes('REPRINT 1'))).toHaveLength(2)
    expect(all.slice(2)).toEqual(out.slice(2))
  })

  test('a second jam goes on again, from a reprint as from any other label', async () => {
    const right = part(second(), 'R')
    await desk.ask('labels.goOn', { last: part(second(), 'L'), good: 1, ruined: 1 })
    const rest = await desk.ask('labels.goOn', { last: right, good: 1, ruined: 1 })
    const [first, , , , next] = await texts(rest.pdf)
    expect(first).toMatch(/A0002-K.*KIT.*REPRINT 1/)
    expect(next).toMatch(/A0002-K.*Stub 1/)
    const live = await labelsOf(second())
    for (const number of new Set(live.map((each) => each.number)))
      expect(live.filter((each) => each.number === number && each.fate !== 'void')).toHaveLength(1)
  })

  test('no number ever has two good labels, wherever it jams', async () => {
    for (const [good, ruined] of [
      [1, 3],
      [2, 0],
      [0, 1],
    ] as const) {
      const { ahead } = await desk.ask('labels.jam', { last: kits[0] ?? null })
      expect(ahead.length).toBeGreaterThan(good + ruined)
      await desk.ask('labels.goOn', { last: kits[0] ?? null, good, ruined })
      const { reserved } = await desk.ask('kits', {})
      const good1 = reserved.flatMap(({ labels }) => labels.filter(({ fate }) => fate !== 'void'))
      expect(new Set(good1.map(({ number }) => number)).size).toBe(good1.length)
    }
  })
})

describe('is refused', () => {
  const jam = { good: 1, ruined: 0 }
  test('a label that is of no run of kits, or of another station', async () => {
    const [foreign, unknown] = ['26KRTA', '26KRVA'].map((of) => sampleNumber(of as never, 777, 'L'))
    expect(await desk.code('labels.goOn', { ...jam, last: foreign ?? '' })).toBe('another-station')
    expect(await desk.code('labels.goOn', { ...jam, last: unknown ?? '' })).toBe('no-run-to-go-on')
    expect(await desk.code('labels.goOn', { ...jam, last: '26-KRV-A0042-L-9' })).toBe(
      'check-character-wrong',
    )
  })

  test('more labels than the run has, and a run that is out', async () => {
    const stub = part(kits[3] as KitNumber, 'H')
    expect(await desk.code('labels.goOn', { last: stub, good: 1, ruined: 400 })).toBe(
      'jam-beyond-run',
    )
    const { left } = await desk.ask('labels.jam', { last: stub })
    expect(await desk.code('labels.goOn', { last: stub, good: left, ruined: 0 })).toBe('run-is-out')
  })

  test('a ruined label that is stuck on a kit in use', async () => {
    const animal = await checkIn(desk)
    await desk.sit(crew.sampler)
    await desk.ask('animal.assign', { animal, sampler: crew.sampler })
    await desk.ask('kit.open', { animal, kit: second() })
    await desk.sit(crew.volunteer)
    const last = part(second(), 'R')
    expect(await desk.code('labels.goOn', { last, good: 1, ruined: 1 })).toBe('label-in-use')
  })

  test('before any kit label was printed', async () => {
    const { desk: fresh } = await openStation()
    expect(await fresh.code('labels.jam', { last: null })).toBe('no-run-to-go-on')
    await fresh.end()
  })
})

test('labels of one animal are a run too', async () => {
  desk.wait(1)
  const kit = await kitFor(desk, await checkIn(desk))
  const { ahead } = await desk.ask('labels.jam', { last: null })
  expect(ahead.every(({ number }) => kitOf(number) === kit)).toBe(true)
})
