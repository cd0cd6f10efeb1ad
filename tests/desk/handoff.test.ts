import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { createHash } from 'node:crypto'
import { canonicalJson } from '../../db/canonical-json.ts'
import type { CallInput } from '../../shared-types/desk-api.ts'
import { Manifest } from '../../shared-types/manifest.ts'
import type { CoolerNumber, HandoffNumber } from '../../shared-types/sample-number.ts'
import { closeDay } from '../support/close.ts'
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
beforeEach(() => desk.sit(crew.lead, leadPin))
afterAll(() => desk.end())

let loaded = 0
const destination = 'Basin Animal Disease Laboratory'

/** A sealed cooler with the two bags of one animal. */
async function sealed(): Promise<{ cooler: CoolerNumber; seal: string }> {
  loaded += 1
  const cooler = await openCooler(desk, `Box ${loaded}`)
  const { bags } = await sampleBoth(desk, await checkIn(desk), crew.sampler)
  for (const bag of bags) await desk.ask('bag.place', { bag, cooler })
  const seal = `K-${loaded}00`
  await desk.ask('cooler.seal', { cooler, seal })
  return { cooler, seal }
}

async function begin(...coolers: CoolerNumber[]): Promise<HandoffNumber> {
  return (await desk.ask('handoff.begin', { destination, coolers })).handoff
}

const signing = (handoff: HandoffNumber): CallInput<'handoff.sign'> => ({
  handoff,
  courier: { name: 'Tam Ridley', organisation: 'Basin Couriers', vehicle: 'van 7' },
  pin: leadPin,
  leadSignature: {
    how: 'drawn',
    strokes: [
      [
        { x: 0.1, y: 0.5 },
        { x: 0.9, y: 0.4 },
      ],
    ],
  },
  courierSignature: { how: 'on-paper' },
  asItIs: true,
})

describe('a handoff begins', () => {
  test('with sealed coolers that no other handoff holds', async () => {
    const open = await openCooler(desk, 'Still open')
    expect(await desk.code('handoff.begin', { destination, coolers: [open] })).toBe(
      'cooler-not-sealed',
    )
    const { cooler } = await sealed()
    const handoff = await begin(cooler)
    expect(await desk.code('handoff.begin', { destination, coolers: [cooler] })).toBe(
      'cooler-in-handoff',
    )
    expect(await desk.code('seal.break', { cooler, reason: 'one bag forgotten' })).toBe(
      'cooler-in-handoff',
    )
    await desk.ask('handoff.callOff', { handoff, reason: 'courier broke down' })
    await desk.ask('seal.break', { cooler, reason: 'one bag forgotten' })
  })

  test('with at least one cooler, and with none that is not of this log', async () => {
    expect(await desk.code('handoff.begin', { destination, coolers: [] })).toBe('bad-input')
    const { cooler } = await sealed()
    const unknown = cooler.slice(0, 6) + '9999C'
    expect(await desk.code('handoff.begin', { destination, coolers: [cooler, unknown] })).toMatch(
      /not-a-sample-number/,
    )
  })
})

describe('a cooler is scanned out', () => {
  test('under the very seal that the log has, with its count, by anyone of the crew', async () => {
    const { cooler, seal } = await sealed()
    const other = await sealed()
    const handoff = await begin(cooler)
    await desk.sit(crew.volunteer)
    const scan = { handoff, cooler, seal, celsius: 4, counted: 2, words: '' }
    expect(await desk.code('cooler.scanOut', { ...scan, seal: other.seal })).toBe('seal-differs')
    expect(await desk.code('cooler.scanOut', { ...scan, seal: '#' })).toBe('seal-not-readable')
    expect(await desk.code('cooler.scanOut', { ...scan, counted: 1 })).toBe(
      'difference-unexplained',
    )
    expect(
      await desk.code('cooler.scanOut', { ...scan, cooler: other.cooler, seal: other.seal }),
    ).toBe('cooler-not-in-handoff')
    await desk.ask('cooler.scanOut', { ...scan, seal: seal.toLowerCase() })
    const { coolers } = await desk.ask('handoff', { handoff })
    expect(coolers[0]?.scanned).toMatchObject({ seal, celsius: 4, counted: 2, words: '' })
  })
})

describe('a handoff is signed', () => {
  test('once every cooler was scanned out, by the lead with their PIN, and only once', async () => {
    const [one, two] = [await sealed(), await sealed()]
    const handoff = await begin(one.cooler, two.cooler)
    const scan = (of: typeof one) =>
      desk.ask('cooler.scanOut', { ...of, handoff, celsius: 4, counted: 2, words: '' })
    await scan(one)
    expect(await desk.refusal('handoff.sign', signing(handoff))).toMatchObject({
      code: 'coolers-not-scanned-out',
    })
    expect(await desk.code('manifest', { handoff })).toBe('handoff-not-signed')
    await scan(two)
    expect(await desk.code('handoff.sign', { ...signing(handoff), pin: '0000' })).toBe('pin-wrong')
    await desk.sit(crew.volunteer)
    expect(await desk.code('handoff.sign', signing(handoff))).toBe('role-may-not')
    await desk.sit(crew.lead, leadPin)
    await desk.ask('handoff.sign', signing(handoff))
    expect(await desk.code('handoff.sign', signing(handoff))).toBe('handoff-not-loading')
    expect(await desk.code('handoff.callOff', { handoff, reason: 'second thoughts' })).toBe(
      'handoff-not-loading',
    )
    expect(await desk.code('handoff.begin', { destination, coolers: [one.cooler] })).toBe(
      'cooler-handed-off',
    )
    expect(await desk.code('cooler.read', { cooler: one.cooler, celsius: 4 })).toBe(
      'cooler-handed-off',
    )
  })

  test('and the manifest says what was given, in one digest, as canonical JSON', async () => {
    const { cooler, seal } = await sealed()
    const handoff = await begin(cooler)
    await desk.ask('cooler.scanOut', {
      handoff,
      cooler,
      seal,
      celsius: -1,
      counted: 1,
      words: 'one bag torn open',
    })
    const { digest } = await desk.ask('handoff.sign', signing(handoff))
    const { json, csv } = await desk.ask('manifest', { handoff })
    const file = JSON.parse(json.text) as { digest: string; manifest: unknown }
    const manifest = Manifest.parse(file.manifest)
    expect(file.digest).toBe(digest)
    // RFC 8785 and FIPS 180-4: anyone with the file can make the digest again.
    const again = createHash('sha256')
      .update(canonicalJson(file.manifest as never))
      .digest('hex')
    expect(again).toBe(digest)
    expect(manifest.coolers[0]).toMatchObject({
      seal,
      celsius: -1,
      counted: 1,
      difference: 'one bag torn open',
    })
    expect(manifest.bags).toBe(2)
    const [head = '', ...rows] = csv.text.trim().split('\n')
    expect(rows).toHaveLength(2)
    for (const row of rows) {
      const cells = Object.fromEntries(
        head.split(',').map((name, at) => [name, row.split(',')[at]]),
      )
      expect(cells).toMatchObject({ handoff, digest, cooler, seal, celsius: '-1' })
    }
  })

  test('and what was signed stays as signed, whatever is corrected later', async () => {
    const { handoffs } = await desk.ask('handoffs', {})
    const signed = handoffs.find(({ state }) => state === 'signed')
    const before = await desk.ask('manifest', { handoff: signed?.handoff ?? '' })
    const { text } = await desk.ask('table', { what: 'samples', format: 'json' })
    const { animal } = (JSON.parse(text) as { animal: string; place: string }[]).find(
      ({ place }) => place === 'handed-off',
    ) ?? { animal: '' }
    const { facts } = await desk.ask('animal', { animal })
    await desk.ask('animal.amend', {
      animal,
      facts: { ...facts, species: 'elk' },
      reason: 'it was an elk',
    })
    const after = await desk.ask('manifest', { handoff: signed?.handoff ?? '' })
    expect(after.json).toEqual(before.json)
    expect(after.csv).toEqual(before.csv)
  })

  test('also after the day was closed: the courier comes late', async () => {
    const { cooler, seal } = await sealed()
    await closeDay(desk)
    const handoff = await begin(cooler)
    await desk.ask('cooler.scanOut', { handoff, cooler, seal, celsius: 4, counted: 2, words: '' })
    await desk.ask('handoff.sign', signing(handoff))
    const { balances } = await desk.ask('kits', {})
    expect(balances.find(({ key }) => key === 'sent')?.count).toBeGreaterThan(0)
  })
})

test('a name that a spreadsheet would run as a formula is written as text', async () => {
  await desk.ask('day.reopen', { reason: 'one more cooler' })
  const { cooler } = await desk.ask('cooler.open', {
    name: '=2+2',
    keeping: 'chilled',
    capacity: null,
  })
  const { bags } = await sampleBoth(desk, await checkIn(desk), crew.sampler)
  for (const bag of bags) await desk.ask('bag.place', { bag, cooler })
  await desk.ask('cooler.seal', { cooler, seal: 'K-9900' })
  const handoff = await begin(cooler)
  await desk.ask('cooler.scanOut', {
    handoff,
    cooler,
    seal: 'K-9900',
    celsius: 4,
    counted: 2,
    words: '',
  })
  await desk.ask('handoff.sign', signing(handoff))
  const { csv } = await desk.ask('manifest', { handoff })
  expect(csv.text).toContain(",'=2+2,")
})
