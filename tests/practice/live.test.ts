import { createHash } from 'node:crypto'
import { readdirSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, onTestFinished, test } from 'vitest'
import { entriesInOrder } from '../../db/log/read-entries.ts'
import { verifyLog } from '../../db/log/verify.ts'
import { mergeLogs } from '../../db/merge/merge.ts'
import { createDesk } from '../../electron/desk/desk.ts'
import { atSpeed, practiceTime } from '../../electron/station/practice/live/clock.ts'
import { liveStage } from '../../electron/station/practice/live/stage.ts'
import type { CallInput, CallName } from '../../shared-types/desk-api.ts'
import type { PracticeRole } from '../../shared-types/practice.ts'
import { tempFolder } from '../db/temp-log.ts'
import { setUpInput } from '../support/desk.ts'
import { reading, value } from './played.ts'

const noon = Date.parse('2026-11-14T12:00:00-07:00')
const zone = 'America/Denver'

/** A desk on a clock of the test, whose crew looks up when the test lets time pass. */
function deskHere() {
  const folder = tempFolder()
  const clock = { now: noon, drawn: 0 }
  const looks = new Set<() => void>()
  const desk = createDesk({
    folder,
    zone,
    now: () => clock.now,
    randomBytes: (count) => {
      clock.drawn += 1
      return createHash('shake256', { outputLength: count }).update(`${clock.drawn}`).digest()
    },
    every: (_, run) => {
      looks.add(run)
      return () => looks.delete(run)
    },
  })
  onTestFinished(() => desk.close())
  const at = desk.openSession()
  const call = async <N extends CallName>(name: N, input: CallInput<N>) =>
    value(await desk.call(at, name, input))
  /** Real seconds pass, in looks of the crew half a second apart. */
  const pass = async (seconds: number) => {
    for (let each = 0; each < seconds * 2; each += 1) {
      clock.now += 500
      for (const run of looks) run()
      await new Promise((resolve) => setImmediate(resolve))
      await new Promise((resolve) => setTimeout(resolve, 0))
    }
  }
  const live = async () => (await call('practice', {})).live
  return { desk, folder, clock, looks, at, call, pass, live }
}

async function practising(role: PracticeRole, speed: 1 | 20 = 20) {
  const here = deskHere()
  const { person } = await here.call('practice.live', { role, speed, animals: 12, seed: 3 })
  return { ...here, person }
}

const stageOf = (role: PracticeRole) => liveStage({ seed: 3, animals: 12, nowMs: noon, zone, role })

describe('the practice clock', () => {
  const clock = { realMs: noon, practiceMs: noon - 3_600_000, speed: 10 as const }

  test('runs at its speed, stands still in a pause, and goes on from where it stood', () => {
    expect(practiceTime(clock, noon + 6000)).toBe(noon - 3_540_000)
    const paused = atSpeed(clock, noon + 6000, 0)
    expect(practiceTime(paused, noon + 900_000)).toBe(noon - 3_540_000)
    const slow = atSpeed(paused, noon + 900_000, 1)
    expect(practiceTime(slow, noon + 901_000)).toBe(noon - 3_539_000)
  })

  test('never passes the clock of the laptop, so that the log can be opened again', () => {
    const realMs = noon + 24 * 3_600_000
    expect(practiceTime(clock, realMs)).toBe(realMs)
  })
})

describe('a live practice morning', () => {
  test('is the same morning for the same seed', () => {
    expect(stageOf('bench')).toEqual(stageOf('bench'))
    expect(stageOf('bench').guests).toHaveLength(12)
  })

  test('checks animals in, works them and fills coolers around a learner who does nothing', async () => {
    const { call, pass, live } = await practising('bench')
    expect((await call('who', {})).station.practice).toBe(true)
    await pass(400)
    const view = await live()
    expect(view?.minute).toBeGreaterThan(100)
    const { totals, working, waiting } = await call('line', {})
    expect(totals.checkedIn).toBe(12)
    expect(totals.finished).toBeGreaterThan(3)
    expect(waiting.length + working.length).toBeGreaterThan(0)
    const { coolers } = await call('coolers', {})
    expect(coolers.some(({ bags }) => bags > 2)).toBe(true)
    expect((await live())?.underKnife).not.toBeNull()
    const score = await call('practice.score', {})
    expect(score.points).toBeLessThan(100)
    expect(score.lines.some(({ is, points }) => is === 'variance' && points > 0)).toBe(true)
  })

  test('leaves check-in to the learner, and scores facts by what the hunter said', async () => {
    const { call, pass, live } = await practising('check-in')
    await pass(50)
    const [guest, second] = stageOf('check-in').guests
    if (!guest || !second) throw new Error('nobody came')
    const window = await live().then((view) => view?.atWindow)
    expect(window?.says.join(' ')).toContain(guest.plan.facts.tag)
    expect((await call('line', {})).totals.checkedIn).toBe(0)
    await call('animal.checkIn', { facts: guest.plan.facts, contact: null })
    await pass(60)
    const wrong = { ...second.plan.facts, sex: 'unknown', tag: 'T0000001' } as const
    await call('animal.checkIn', { facts: wrong, contact: null })
    const { lines } = await call('practice.score', {})
    const told = lines.filter(({ is }) => is === 'facts' || is === 'label')
    expect(told.map(({ points, say }) => [points, say])).toEqual([
      [8, 'A0002: the tag is not what the hunter said.'],
      [4, 'A0002: the sex is not what the hunter said.'],
      [0, 'A0001: everything as the hunter said.'],
    ])
    for (const { entry } of told) expect(entry?.say).toMatch(/^Checked in: /)
  })

  test('scores what a sampler saw by what lay under the knife, and the labels the desk stopped', async () => {
    const { call, desk, at, pass, live, person } = await practising('bench')
    let mine: string | undefined
    for (let look = 0; look < 40 && !mine; look += 1) {
      await pass(5)
      mine = (await call('bench', { sampler: person })).animals[0]?.animal
    }
    const [card, , right] = (await live())?.onTable ?? []
    const animal = mine ?? ''
    await call('kit.open', { animal, kit: card?.number ?? '' })
    const truth = (await live())?.underKnife
    const check = truth?.looks === 'muscle' ? 'fat' : 'muscle'
    await call('tissue.check', { animal, site: 'left', check, sizeMm: null })
    await desk.call(at, 'bag.seal', { animal, site: 'left', bag: right?.number ?? '' })
    const { lines } = await call('practice.score', {})
    expect(lines.find(({ is }) => is === 'tissue')).toMatchObject({ points: 10 })
    expect(lines.find(({ is }) => is === 'tissue')?.entry?.say).toContain('looked at')
    expect(lines.find(({ is }) => is === 'label')?.say).toContain('stopped a wrong label')
  })

  test('leaves the line to a learning lead, counts waits over the target, and asks for a delivery to be recorded', async () => {
    const { call, pass, live } = await practising('lead')
    await pass(300)
    expect((await call('line', {})).working).toEqual([])
    expect((await live())?.told.join()).toContain('40 kits')
    await call('kits.move', {
      from: { in: 'delivered' },
      to: { in: 'stock' },
      count: 40,
      reason: 'box from the office',
    })
    const { lines } = await call('practice.score', {})
    const variance = lines.find(({ is }) => is === 'variance')
    expect(variance).toMatchObject({ points: 0 })
    expect(variance?.entry?.say).toContain('40 kits moved')
    const wait = lines.find(({ is, points }) => is === 'wait' && points > 0)
    expect(wait?.entry?.say).toMatch(/^Checked in/)
  })

  test('stands still in a pause, ends, and then answers with its score only', async () => {
    const { call, clock, pass, live } = await practising('lead')
    await pass(10)
    await call('practice.pace', { speed: 0 })
    const before = await live()
    const { nowMs } = await call('who', {})
    await pass(60)
    expect((await live())?.minute).toBe(before?.minute)
    expect((await call('who', {})).nowMs).toBe(nowMs)
    expect(nowMs).toBeLessThan(clock.now)
    await call('practice.end', {})
    expect((await live())?.isOver).toBe(true)
    expect((await call('practice.score', {})).points).toBeGreaterThanOrEqual(0)
  })
})

describe('practice and real records stay apart', () => {
  /** A practice that ran for a while, then put away; then a real station set up and put away. */
  async function both() {
    const here = await practising('lead')
    const { call, folder, looks, pass } = here
    await pass(20)
    const practice = join(folder, (await call('shelf.look', {})).open ?? '')
    await call('shelf.shut', {})
    expect(looks.size).toBe(0)
    await call('station.setUp', setUpInput)
    const real = join(folder, (await call('shelf.look', {})).open ?? '')
    return { ...here, practice, real }
  }

  test('another log ends the practice and goes by the laptop’s own clock', async () => {
    const { call, desk, at, clock, real } = await both()
    const who = await call('who', {})
    expect(who.nowMs).toBe(clock.now)
    expect(who.station.practice).toBe(false)
    expect((await call('practice', {})).live).toBeNull()
    expect(await desk.call(at, 'practice.pace', { speed: 20 })).toMatchObject({
      refusal: { code: 'not-practising' },
    })
    await call('shelf.shut', {})
    const walls = reading(real, (log) => [...entriesInOrder(log)].map(({ at: { wall } }) => wall))
    expect(new Set(walls)).toEqual(new Set([clock.now]))
  })

  test('a merge takes no practice in beside a real log, however long it was practised', async () => {
    const { call, folder, practice, real } = await both()
    await call('shelf.shut', {})
    const out = join(folder, 'merged.stationlog')
    const report = value(mergeLogs({ out, files: [real, practice], office: null }))
    expect(report.files.map(({ state }) => state)).toEqual(['whole', 'refused'])
    expect(report.files[1]).toMatchObject({ refusal: { code: 'practice-log' } })
    const kinds = reading(out, (log) => [...entriesInOrder(log)].map(({ desk }) => desk))
    expect(new Set(kinds)).toEqual(new Set(['26KRVA']))
  })

  test('the practice log is whole, and can be opened again afterwards', async () => {
    const { call, practice, folder } = await both()
    await call('shelf.shut', {})
    expect(reading(practice, verifyLog)).toMatchObject({ whole: true, readTables: 'equal' })
    await call('shelf.open', {
      file: readdirSync(folder).find((each) => practice.endsWith(each)) ?? '',
    })
    const { people } = await call('people', {})
    const lead = people.find(({ role }) => role === 'lead')?.person ?? ''
    await call('person.signIn', { person: lead, pin: '2468' })
    expect(await call('air.read', { celsius: 3 })).toEqual({})
  })
})
