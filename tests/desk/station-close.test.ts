/** The station's close over the merged log of its desks. */
import { afterEach, expect, test } from 'vitest'
import type { StationCloseView } from '../../shared-types/views/station-close.ts'
import { pageTexts } from '../print/read-pdf.ts'
import { alone, closeDay, countEverything, handsOf } from '../support/close.ts'
import { crewPin, leadPin, type TestDesk } from '../support/desk.ts'
import {
  type DeskAtWork,
  kitAcross,
  merge,
  type Office,
  officeOver,
  oneDeer,
  station,
  twoDesks,
} from '../support/two-desks.ts'

const open: TestDesk[] = []
afterEach(async () => {
  for (const desk of open.splice(0)) await desk.end()
})

async function desks() {
  const both = await twoDesks()
  open.push(both.a.desk, both.c.desk)
  return both
}

async function office(...at: DeskAtWork[]): Promise<Office> {
  const made = await officeOver(...at)
  open.push(made.office)
  return made
}

const look = ({ office: desk }: Office) => desk.ask('stationClose', {})

const variances = ({ items }: StationCloseView) =>
  Object.fromEntries(
    items.flatMap(({ key, variance }) => (variance === 0 ? [] : [[key, variance]])),
  )

test('each desk closes by itself, and the station closes over both with two signatures', async () => {
  const { a, c } = await desks()
  await oneDeer(a, 'T100')
  await oneDeer(c, 'T200')
  await closeDay(a.desk)
  await closeDay(c.desk)
  const at = await office(a, c)
  const before = await look(at)
  expect(before).toMatchObject({
    day: { station, name: 'Cinder Gap', date: '2026-11-14', desks: 2, closed: 2, signed: false },
    totals: { checkedIn: 2, finished: 2, outcomes: { both: 2 } },
    open: [],
    signed: null,
    second: { wanted: true, people: [{ name: 'Wim Aster' }] },
  })
  expect(before.desks).toMatchObject([
    { desk: '26KRVA', state: 'closed', lead: 'Orla Vance', aloneBecause: alone, amended: [] },
    { desk: '26KRVC', state: 'closed', lead: 'Orla Vance', aloneBecause: alone, amended: [] },
  ])
  expect(before.items.find(({ key }) => key === 'kits')).toMatchObject({
    expected: 198,
    counted: 198,
    desks: [
      { desk: '26KRVA', counted: 99 },
      { desk: '26KRVC', counted: 99 },
    ],
  })
  const day = { station, date: before.day?.date ?? ('' as never) }
  expect(await at.office.code('station.close', { ...day, pin: leadPin })).toBe('second-wanted')
  await at.office.ask('station.close', {
    ...day,
    pin: leadPin,
    second: { person: at.second, pin: crewPin },
  })
  expect((await look(at)).signed).toMatchObject({
    lead: 'Ada Moor',
    second: 'Wim Aster',
    outdated: false,
  })
})

test('a kit printed at one desk and used at the other, its bag in the other’s cooler, is no variance of the station', async () => {
  const { a, c } = await desks()
  await kitAcross(a, c, 'T300')
  // The kit and its labels are not at desk A any more, and desk A cannot know where they went.
  await countEverything(a.desk, { 'kits-in-stock': -1, 'unused-kit-labels': -4 })
  for (const item of [{ of: 'kits-in-stock' }, { of: 'unused-kit-labels' }] as const)
    await a.desk.ask('variance.explain', { item, reason: 'other-desk', words: '' })
  await a.desk.ask('day.close', { pin: leadPin, aloneBecause: alone })
  await closeDay(c.desk)
  const at = await office(a, c)
  const seen = await look(at)
  expect(variances(seen)).toEqual({})
  expect(seen.open).toEqual([])
  expect(seen.items.find(({ key }) => key === 'kits')).toMatchObject({ between: -1 })
  expect(seen.items.find(({ key }) => key === 'unused-kit-labels')).toMatchObject({
    between: -4,
    desks: [
      { desk: '26KRVA', reasons: ['is at another desk of the station'] },
      { desk: '26KRVC', reasons: [] },
    ],
  })
  const ledger = await at.office.ask('ledger', { ledger: 'kits', account: null })
  expect(ledger.accounts.find(({ key }) => key === 'other-desk')?.balance).toBe(0)
  const { discrepancies } = await at.office.ask('discrepancies', {})
  expect(discrepancies).toEqual([])
})

test('kits given to another desk that no desk brought stay a variance until the lead of the office explains it', async () => {
  const { a, c } = await desks()
  await a.desk.ask('kits.move', {
    from: { in: 'stock' },
    to: { in: 'other-desk' },
    count: 5,
    reason: 'for desk C',
  })
  await closeDay(a.desk)
  await closeDay(c.desk, { [handsOf(c.crew.sampler)]: -1 })
  const at = await office(a, c)
  const seen = await look(at)
  expect(variances(seen)).toEqual({ kits: -6 })
  expect(seen.open.map(({ code }) => code)).toEqual(['variance-unexplained'])
  const day = { station, date: seen.day?.date ?? ('' as never) }
  const signing = { ...day, pin: leadPin, aloneBecause: 'nobody else is here' }
  expect(await at.office.code('station.close', signing)).toBe('variance-unexplained')
  const item = { of: 'kits' } as const
  expect(
    await at.office.code('station.explain', { ...day, item, reason: 'other', words: '' }),
  ).toBe('reason-needed')
  await at.office.ask('station.explain', { ...day, item, reason: 'lost', words: 'box fell off' })
  await at.office.ask('station.close', signing)
  expect(await look(at)).toMatchObject({ open: [], signed: { second: null } })
})

test('a station is not closed while a desk is open, and is signed again after a desk was reopened', async () => {
  const { a, c } = await desks()
  await oneDeer(a, 'T100')
  await closeDay(a.desk)
  const at = await office(a, c)
  const seen = await look(at)
  expect(seen.open[0]).toMatchObject({
    code: 'desk-not-closed',
    say: 'Desk 26KRVC is not closed for 2026-11-14.',
  })
  await closeDay(c.desk)
  await at.office.ask('shelf.shut', {})
  merge(at.office, [a, c])
  await at.office.ask('shelf.open', { file: 'weekend.stationlog' })
  await at.office.as(at.lead, leadPin)
  const day = { station, date: seen.day?.date ?? ('' as never) }
  const signing = { ...day, pin: leadPin, aloneBecause: 'nobody else is here' }
  await at.office.ask('station.close', signing)
  c.desk.wait(30)
  await c.desk.ask('day.reopen', { reason: 'a kit was found' })
  await closeDay(c.desk)
  await at.office.ask('shelf.shut', {})
  merge(at.office, [c])
  await at.office.ask('shelf.open', { file: 'weekend.stationlog' })
  await at.office.as(at.lead, leadPin)
  const again = await look(at)
  expect(again.signed).toMatchObject({ outdated: true })
  expect(again.desks[1]?.amended.join()).toContain('reopened: a kit was found')
  await at.office.ask('station.close', signing)
  expect((await look(at)).signed).toMatchObject({ outdated: false })
})

test('a correction made after a desk’s close shows beside its name', async () => {
  const { a, c } = await desks()
  const { kit } = await oneDeer(a, 'T100')
  await closeDay(a.desk)
  await closeDay(c.desk)
  a.desk.wait(20)
  const { animal } = await a.desk.ask('number', { text: kit })
  const { facts } = await a.desk.ask('animal', { animal: animal ?? '' })
  await a.desk.ask('animal.amend', {
    animal: animal ?? '',
    facts: { ...facts, sex: facts.sex === 'male' ? 'female' : 'male' },
    reason: 'misheard',
  })
  const seen = await look(await office(a, c))
  expect(seen.desks[0]?.amended).toHaveLength(1)
  expect(seen.desks[0]?.amended[0]).toContain('corrected: misheard')
  expect(seen.desks[1]?.amended).toEqual([])
  expect(seen.unsettled).toBe(1)
})

test('the station close sheet names the desks, what is left over and who signed', async () => {
  const { a, c } = await desks()
  await oneDeer(a, 'T100')
  await kitAcross(a, c, 'T300')
  await closeDay(a.desk, { 'kits-in-stock': -1, 'unused-kit-labels': -4 })
  await closeDay(c.desk, { 'blank-labels': -7 })
  const at = await office(a, c)
  const words = async () => {
    const { base64 } = await at.office.ask('stationCloseSheet', {})
    const pages = await pageTexts(new Uint8Array(Buffer.from(base64, 'base64')))
    return pages.join(' ').replaceAll(/\s+/g, ' ')
  }
  expect(await words()).toContain('NOT SIGNED YET')
  const { day } = await look(at)
  const of = { station, date: day?.date ?? ('' as never) }
  const item = { of: 'blank-labels' } as const
  await at.office.ask('station.explain', { ...of, item, reason: 'lost', words: 'wet roll' })
  await at.office.ask('station.close', {
    ...of,
    pin: leadPin,
    second: { person: at.second, pin: crewPin },
  })
  const sheet = await words()
  for (const part of [
    '26KRVA',
    '26KRVC',
    'Orla Vance',
    'Ada Moor',
    'Wim Aster',
    'lost: wet roll',
    '−7',
  ])
    expect(sheet).toContain(part)
  expect(sheet).toContain('1 of')
})

test('one desk’s own log shows its close, and does not close the station', async () => {
  const { a } = await desks()
  await closeDay(a.desk)
  const { day } = await a.desk.ask('stationClose', {})
  expect(day).toMatchObject({ desks: 1, closed: 1 })
  expect(
    await a.desk.code('station.close', { station, date: day?.date ?? ('' as never), pin: leadPin }),
  ).toBe('closed-at-office')
})

test('a kit of another desk is brought over once, and its labels are only used once', async () => {
  const { a, c } = await desks()
  const { kit, bag } = await kitAcross(a, c, 'T300')
  const { facts } = await c.desk.ask('animal', {
    animal: (await c.desk.ask('number', { text: kit })).animal ?? '',
  })
  const { animal } = await c.desk.ask('animal.checkIn', {
    facts: { ...facts, tag: 'T301' },
    contact: null,
  })
  await c.desk.ask('animal.assign', { animal, sampler: c.crew.sampler })
  expect(await c.desk.code('kit.open', { animal, kit })).toBe('kit-already-used')
  expect(await a.desk.code('bag.place', { bag, cooler: '26KRVC0001C' })).not.toBe('')
  const { accounts } = await c.desk.ask('ledger', { ledger: 'kits', account: null })
  expect(accounts.find(({ key }) => key === 'other-desk')?.balance).toBe(-1)
})
