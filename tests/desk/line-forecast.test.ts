import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { type Crew, checkIn, openStation, sampleBoth, type TestDesk } from '../support/desk.ts'

let desk: TestDesk
let crew: Crew
beforeEach(async () => {
  const opened = await openStation()
  desk = opened.desk
  crew = opened.crew
  desk.wait(120)
})
afterEach(() => desk.end())

const story = async (animal: string) => (await desk.ask('animal', { animal })).story
const kinds = async (animal: string) => (await story(animal)).map(({ kind }) => kind)

describe('a hunter is told a wait at check-in', () => {
  test('once: what was told stays told, and is in the log', async () => {
    await checkIn(desk)
    const animal = await checkIn(desk)
    const told = await desk.ask('wait.tell', { animal })
    expect(told.highMinutes).toBeGreaterThan(told.lowMinutes)
    desk.wait(20)
    expect(await desk.ask('wait.tell', { animal })).toEqual(told)
    expect((await kinds(animal)).filter((kind) => kind === 'wait.told')).toHaveLength(1)
    expect((await story(animal)).at(-1)?.say).toBe(
      `Hunter told a wait of ${told.lowMinutes} to ${told.highMinutes} minutes.`,
    )
  })

  test('and the screen counts whether it held', async () => {
    const [held, late] = [await checkIn(desk), await checkIn(desk)]
    await desk.ask('wait.tell', { animal: held })
    await desk.ask('wait.tell', { animal: late })
    desk.wait(1)
    await sampleBoth(desk, held, crew.sampler)
    expect((await desk.ask('forecast', {})).held).toEqual({ told: 1, held: 1 })
    desk.wait(240)
    await desk.ask('animal.assign', { animal: late, sampler: crew.sampler })
    expect((await desk.ask('forecast', {})).held).toEqual({ told: 2, held: 1 })
    // Its wait ended when it was first taken, whatever happens after.
    await desk.ask('animal.putBack', { animal: late, reason: 'blade broke' })
    expect((await desk.ask('forecast', {})).held).toEqual({ told: 2, held: 1 })
  })

  test('but none when nobody on shift can work the head, and what to do is said', async () => {
    const skinned = { presented: 'head-only' as const, faults: ['skinned' as const] }
    const animal = await checkIn(desk, { head: skinned })
    const refusal = await desk.refusal('wait.tell', { animal })
    expect(refusal.code).toBe('no-wait-known')
    expect(refusal.say).toContain('skinned heads')
    expect((await desk.ask('forecast', {})).obstacles.map(({ code }) => code)).toEqual([
      'no-training-here',
    ])
  })

  test('and none once a sampler has it', async () => {
    const animal = await checkIn(desk)
    await desk.ask('animal.assign', { animal, sampler: crew.sampler })
    expect((await desk.refusal('wait.tell', { animal })).code).toBe('animal-not-waiting')
  })
})

describe('the next animal is suggested', () => {
  test('in the order in which the line is shown and the bench is offered it', async () => {
    const voluntary = await checkIn(desk, { programme: 'voluntary' })
    desk.wait(3)
    const mandatory = await checkIn(desk)
    const { suggestions } = await desk.ask('forecast', {})
    expect(suggestions).toHaveLength(1)
    expect(suggestions[0]).toMatchObject({ animal: mandatory, sampler: crew.sampler })
    const { waiting } = await desk.ask('line', {})
    expect(waiting.map(({ animal }) => animal)).toEqual([mandatory, voluntary])
    expect((await desk.ask('bench', { sampler: crew.sampler })).nextInLine).toEqual([
      mandatory,
      voluntary,
    ])
  })

  test('a lead sets it aside: an entry, and not suggested to that sampler again', async () => {
    const [first, second] = [await checkIn(desk), await checkIn(desk)]
    await desk.ask('suggestion.setAside', { animal: first, sampler: crew.sampler })
    expect((await desk.ask('forecast', {})).suggestions[0]?.animal).toBe(second)
    expect((await kinds(first)).at(-1)).toBe('suggestion.overridden')
    const again = { animal: first, sampler: crew.sampler }
    expect((await desk.refusal('suggestion.setAside', again)).code).toBe('not-suggested')
  })

  test('a lead assigns another one by hand: the override is an entry too', async () => {
    const [first, second] = [await checkIn(desk), await checkIn(desk)]
    await desk.ask('animal.assign', { animal: second, sampler: crew.sampler })
    expect((await story(first)).at(-1)?.say).toMatch(
      /^Suggested to Ines Tarr, who was given animal 26-KRV-A0002-A-.+ instead\.$/,
    )
    expect(await kinds(second)).not.toContain('suggestion.overridden')
  })

  test('and taking what is suggested is no override', async () => {
    const animal = await checkIn(desk)
    await desk.ask('animal.assign', { animal, sampler: crew.sampler })
    expect(await kinds(animal)).not.toContain('suggestion.overridden')
  })

  test('a head in the warm goes first once its hours are up', async () => {
    await checkIn(desk)
    const old = await checkIn(desk, {
      harvested: '2026-11-13' as never,
      harvestedAt: '08:00',
    })
    await desk.ask('air.read', { celsius: 4 })
    expect((await desk.ask('forecast', {})).suggestions[0]?.animal).not.toBe(old)
    await desk.ask('air.read', { celsius: 21 })
    const { suggestions, air } = await desk.ask('forecast', {})
    expect(suggestions[0]?.animal).toBe(old)
    expect(suggestions[0]?.why).toMatch(/spoiling, harvested about 24 hours ago.*21 °C/)
    expect(air?.celsius).toBe(21)
  })

  test('nothing while nobody is on duty, and that is said', async () => {
    await checkIn(desk)
    await desk.ask('duty.change', { person: crew.sampler, duty: 'off' })
    const { suggestions, waits, obstacles } = await desk.ask('forecast', {})
    expect(suggestions).toEqual([])
    expect(waits[0]?.range).toBeNull()
    expect(obstacles[0]).toMatchObject({ code: 'nobody-on-shift', screen: 'station' })
  })

  test('nothing without a kit in hand, and that is said', async () => {
    await checkIn(desk)
    const from = { in: 'hands' as const, person: crew.sampler }
    await desk.ask('kits.move', { from, to: { in: 'stock' }, count: 20, reason: '' })
    const { suggestions, obstacles } = await desk.ask('forecast', {})
    expect(suggestions).toEqual([])
    expect(obstacles.map(({ code }) => code)).toEqual(['no-kits-at-the-line'])
  })
})

describe('the rest of the day', () => {
  test('is told for arrivals, waits, samplers and kits', async () => {
    for (let come = 0; come < 6; come += 1) {
      await checkIn(desk)
      desk.wait(4)
    }
    const ahead = await desk.ask('ahead', {})
    expect(ahead.came).toBe(6)
    expect(ahead.more.low).toBeLessThan(ahead.more.high)
    expect(ahead.hours.map(({ is }) => is)).toContain('now')
    expect(ahead.staffing).toMatchObject({ working: 1, lastHour: 6 })
    expect(ahead.kits.kits).toBe(100)
    expect(ahead.whatIf).toBeNull()
  })

  test('more samplers from a time on shorten the wait', async () => {
    for (let come = 0; come < 8; come += 1) await checkIn(desk)
    const now = await desk.ask('ahead', { extra: [{ count: 2, at: null }] })
    const noon = await desk.ask('ahead', { extra: [{ count: 2, at: '12:00' }] })
    const asItIs = now.staffing.outlook.typical ?? 0
    expect(now.whatIf?.typical).toBeLessThan(noon.whatIf?.typical ?? 0)
    expect(noon.whatIf?.typical).toBeLessThan(asItIs)
  })

  test('a move that is proposed can be made, and is not proposed again', async () => {
    const { kits } = await desk.ask('ahead', {})
    const [move] = kits.moves
    if (!move) throw new Error('no move is proposed')
    expect(move).toMatchObject({ from: null, to: crew.sampler })
    const to = { in: 'hands' as const, person: move.to }
    await desk.ask('kits.move', { from: { in: 'stock' }, to, count: move.count, reason: '' })
    expect((await desk.ask('ahead', {})).kits.moves).toEqual([])
  })
})

test('a settled line is what the desk goes by', async () => {
  const { settings } = await desk.ask('who', {})
  const { usualLineSettings } = await import('../../electron/station/line-settings.ts')
  const line = { ...usualLineSettings, mandatoryFirst: false, expectedAnimals: 40 }
  await desk.ask('settings.change', { settings: { ...settings, line } })
  const voluntary = await checkIn(desk, { programme: 'voluntary' })
  await checkIn(desk)
  expect((await desk.ask('forecast', {})).suggestions[0]?.animal).toBe(voluntary)
  expect((await desk.ask('ahead', {})).more.high).toBeLessThan(100)
})
