import { randomBytes } from 'node:crypto'
import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, onTestFinished, test } from 'vitest'
import { pinRecordOf } from '../../db/kept-apart.ts'
import { verifyLog } from '../../db/log/verify.ts'
import { createDesk, type Desk, type Session } from '../../electron/desk/desk.ts'
import { practiceSettings } from '../../electron/station/practice/station-facts.ts'
import type { CallInput, CallName } from '../../shared-types/desk-api.ts'
import { tempFolder } from '../db/temp-log.ts'
import { reading, value } from './played.ts'

/** A desk on the clock of this computer, over a folder of its own. */
function deskHere(): { desk: Desk; folder: string; at: Session } {
  const folder = tempFolder()
  const desk = createDesk({ folder, now: Date.now, randomBytes, zone: 'America/Denver' })
  onTestFinished(() => desk.close())
  return { desk, folder, at: desk.openSession() }
}

/** Calls that must be granted. */
const caller =
  (desk: Desk, at: Session) =>
  async <N extends CallName>(name: N, input: CallInput<N>) =>
    value(await desk.call(at, name, input))

async function opened(wish: CallInput<'practice.open'> = {}) {
  const here = deskHere()
  const call = caller(here.desk, here.at)
  const { pin } = await call('practice.open', wish)
  const { people } = await call('people', {})
  const signIn = async (role: string) => {
    const person = people.find((each) => each.role === role && each.duty !== 'off')?.person ?? ''
    await call('person.signIn', { person, pin })
    return person
  }
  return { ...here, call, people, signIn, pin }
}

describe('a practice day opened at the desk', () => {
  test('signs nobody in, and everyone signs in with the PIN that is told', async () => {
    const { call, people, pin } = await opened()
    expect((await call('who', {})).person).toBeNull()
    expect((await call('who', {})).station.practice).toBe(true)
    expect(new Set(people.map(({ role }) => role))).toEqual(
      new Set(['lead', 'sampler', 'volunteer', 'office']),
    )
    for (const { person } of people) {
      await call('person.signIn', { person, pin })
      expect((await call('who', {})).person?.person).toBe(person)
    }
  })

  test.each([1, 2, 3, 4, 5, 6, 7, 8])(
    'stands in the rush of the morning: about a dozen wait (seed %i)',
    async (seed) => {
      const { call, signIn } = await opened({ seed })
      await signIn('lead')
      const line = await call('line', {})
      expect(line.waiting.length).toBeGreaterThanOrEqual(9)
      expect(line.waiting.length).toBeLessThanOrEqual(16)
      expect(line.working.length).toBeGreaterThan(0)
      expect(line.totals.finished).toBeGreaterThan(3)
      expect(line.crew.filter(({ kits }) => kits > 0).length).toBeGreaterThan(1)
      const { coolers } = await call('coolers', {})
      expect(coolers.every(({ state, lastReading }) => state === 'open' && lastReading)).toBe(true)
      expect(coolers.some(({ bags }) => bags > 0)).toBe(true)
      const { reserved } = await call('kits', {})
      expect(reserved.length).toBeGreaterThan(0)
      expect(line.nowMs - (line.waiting[0]?.arrivedMs ?? 0)).toBeLessThan(60 * 60_000)
    },
  )

  test('is played once more under another name', async () => {
    const { call, folder } = await opened({ animals: 3 })
    await call('practice.open', { animals: 3 })
    const names = readdirSync(folder).filter((name) => name.endsWith('.stationlog'))
    expect(names.length).toBe(2)
    expect(names.every((name) => name.startsWith('practice-'))).toBe(true)
    expect((await call('shelf.look', {})).open).toBe(names.find((name) => name.includes('-2.')))
    // Nothing of the playing is left behind.
    expect(readdirSync(folder).filter((name) => name.startsWith('.'))).toEqual([])
  })

  test('goes on by hand, from an animal that waits to a cooler that holds its bags', async () => {
    const { call, signIn, people, pin } = await opened()
    await signIn('lead')
    const { waiting, crew } = await call('line', {})
    const [next] = waiting
    const sampler = crew.find(
      ({ person, role, duty }) =>
        role === 'sampler' && duty === 'on' && next?.canWork.includes(person),
    )
    const animal = next?.animal ?? ''
    await call('animal.assign', { animal, sampler: sampler?.person ?? '' })
    expect(people.map(({ person }) => person)).toContain(sampler?.person)
    await call('person.signIn', { person: sampler?.person ?? '', pin })
    const kit = next?.kit ?? (await call('kits', {})).reserved.find((each) => !each.animal)?.kit
    await call('kit.open', { animal, kit: kit ?? '' })
    for (const site of ['left', 'right'] as const) {
      await call('tissue.check', { animal, site, check: 'lymph-node', sizeMm: 22 })
      const { sites } = await call('animal', { animal })
      const bag = sites.find((each) => each.site === site)?.expectedBag ?? ''
      await call('bag.seal', { animal, site, bag })
    }
    expect(await call('animal.finish', { animal })).toEqual({ outcome: 'both' })
    const { coolers, bench } = await call('coolers', {})
    for (const { bag } of bench) await call('bag.place', { bag, cooler: coolers[0]?.cooler ?? '' })
    expect((await call('coolers', {})).bench).toEqual([])
  })

  test('can be closed and handed off from where it stands', async () => {
    const { call, signIn, pin, folder } = await opened()
    await signIn('lead')
    const { waiting, working } = await call('line', {})
    for (const { animal } of waiting) await call('animal.leave', { animal, reason: 'went home' })
    for (const { animal } of working) await finish(call, animal)
    const { coolers, bench } = await call('coolers', {})
    for (const { bag } of bench) await call('bag.place', { bag, cooler: coolers[0]?.cooler ?? '' })
    const filled = (await call('coolers', {})).coolers.filter(({ bags }) => bags > 0)
    for (const [place, { cooler }] of filled.entries())
      await call('cooler.seal', { cooler, seal: `TST-${place}00` })
    await countAsExpected(call)
    await call('day.close', { pin, aloneBecause: 'alone in this test' })
    const numbers = filled.map(({ cooler }) => cooler)
    const { handoff } = await call('handoff.begin', { destination: 'lab', coolers: numbers })
    for (const [place, { cooler, bags }] of filled.entries())
      await call('cooler.scanOut', {
        handoff,
        cooler,
        seal: `TST-${place}00`,
        celsius: 3,
        counted: bags,
        words: '',
      })
    const courier = { name: 'Somebody', organisation: '', vehicle: '' }
    const onPaper = { how: 'on-paper' } as const
    const signatures = { leadSignature: onPaper, courierSignature: onPaper }
    await call('handoff.sign', { handoff, pin, courier, ...signatures, asItIs: true })
    const { open } = await call('shelf.look', {})
    expect(reading(join(folder, open ?? ''), (log) => verifyLog(log)).whole).toBe(true)
  })
})

type Call = Awaited<ReturnType<typeof opened>>['call']

/** A lead may end what a sampler began. */
async function finish(call: Call, animal: string): Promise<void> {
  for (const { site, bag, missed } of (await call('animal', { animal })).sites)
    if (!bag && !missed) await call('tissue.miss', { animal, site, reason: 'spoiled', words: '' })
  await call('animal.finish', { animal })
}

/** Counts each thing twice: blind, and then as the log expects it. */
async function countAsExpected(call: Call): Promise<void> {
  for (const { item } of (await call('close', {})).items)
    await call('count.enter', { item, counted: 0 })
  for (const { item, expected } of (await call('close', {})).items)
    await call('count.enter', { item, counted: expected ?? 0 })
}

describe('practice and earnest never mix', () => {
  const setUp: CallInput<'station.setUp'> = {
    season: '26',
    station: 'HMT',
    letter: 'A',
    name: 'A real station',
    zone: 'America/Denver',
    date: '2026-11-14',
    settings: practiceSettings,
    lead: { name: 'Some Lead', pin: '97531' },
    kits: 10,
    blankLabels: 100,
  }

  test('no call sets up a station as practice', async () => {
    const { desk, at } = deskHere()
    const asked = await desk.call(at, 'station.setUp', { ...setUp, practice: true })
    expect(asked.ok).toBe(false)
    await caller(desk, at)('station.setUp', setUp)
    expect((await caller(desk, at)('who', {})).station.practice).toBe(false)
  })

  test('a real PIN is slow to guess, and a practice PIN quick to check', async () => {
    const real = deskHere()
    const call = caller(real.desk, real.at)
    const { lead } = await call('station.setUp', setUp)
    const { open } = await call('shelf.look', {})
    const record = reading(join(real.folder, open ?? ''), (log) => pinRecordOf(log, lead))
    expect(record).toMatch(/^scrypt\$15\$/)
    const practice = await opened({ animals: 2 })
    const file = (await practice.call('shelf.look', {})).open ?? ''
    const person = practice.people[0]?.person
    expect(
      reading(join(practice.folder, file), (log) => person && pinRecordOf(log, person)),
    ).toMatch(/^scrypt\$10\$/)
  })
})
