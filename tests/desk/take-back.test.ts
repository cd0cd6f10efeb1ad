import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { checkIn, type Crew, kitFor, openCooler, openStation, sampleBoth } from '../support/desk.ts'
import type { TestDesk } from '../support/desk.ts'

let desk: TestDesk
let crew: Crew

beforeEach(async () => {
  const opened = await openStation()
  desk = opened.desk
  crew = opened.crew
  desk.wait(5)
})
afterEach(() => desk.end())

const offered = async () => (await desk.ask('slip', {})).slip?.say ?? null

describe('whoever made a slip takes it back at the desk', () => {
  test('a sampler records a side as missing, and finds it open again', async () => {
    const animal = await checkIn(desk)
    await desk.ask('animal.assign', { animal, sampler: crew.sampler })
    desk.wait(1)
    await desk.sit(crew.sampler)
    const missed = { animal, site: 'left', reason: 'not-found', words: '' } as const
    await desk.ask('tissue.miss', missed)
    expect(await offered()).toBe('A0001: left node not taken')
    await desk.ask('slip.takeBack', {})
    const { sites, story } = await desk.ask('animal', { animal })
    expect(sites[0]).toMatchObject({ site: 'left', check: null, missed: null })
    expect(story.at(-2)?.say).toBe('Left node open again: what was recorded was a slip.')
    expect(story.at(-1)?.say).toMatch(/^Taken back within a minute: entry \d+ of desk 26KRVA\.$/)
  })

  test('a bag in the wrong cooler lies on the bench again, until that cooler is sealed', async () => {
    const { bags } = await sampleBoth(desk, await checkIn(desk), crew.sampler)
    const [bag = ''] = bags
    const cooler = await openCooler(desk)
    desk.wait(1)
    await desk.sit(crew.volunteer)
    await desk.ask('bag.place', { bag, cooler })
    await desk.ask('slip.takeBack', {})
    expect((await desk.ask('coolers', {})).bench.map((each) => each.bag)).toContain(bag)
    desk.wait(0.1)
    await desk.ask('bag.place', { bag, cooler })
    await desk.sit(crew.lead)
    await desk.ask('cooler.seal', { cooler, seal: 'PR-1001' })
    await desk.sit(crew.volunteer)
    expect(await desk.code('slip.takeBack', {})).toBe('cooler-sealed-since')
  })

  test('kits given to the wrong hands go back to stock', async () => {
    await desk.sit(crew.volunteer)
    const before = (await desk.ask('line', {})).kitsInStock
    const to = { in: 'hands', person: crew.sampler } as const
    await desk.ask('kits.move', { from: { in: 'stock' }, to, count: 7, reason: '' })
    expect(await offered()).toBe('kits moved (7)')
    await desk.ask('slip.takeBack', {})
    expect((await desk.ask('line', {})).kitsInStock).toBe(before)
  })

  test('each person takes back their own, and only for a minute', async () => {
    await desk.sit(crew.volunteer)
    await checkIn(desk)
    await desk.sit(crew.sampler)
    expect(await offered()).toBeNull()
    await desk.sit(crew.volunteer)
    desk.wait(1.1)
    expect(await offered()).toBeNull()
    const late = await desk.refusal('slip.takeBack', {})
    expect(late).toMatchObject({ code: 'take-back-late', next: expect.stringContaining('lead') })
  })

  test('a check-in whose labels are printed stays: paper does not go back', async () => {
    await desk.sit(crew.volunteer)
    const animal = await checkIn(desk)
    desk.wait(0.1)
    await kitFor(desk, animal)
    expect(await offered()).toBeNull()
    expect(await desk.code('slip.takeBack', {})).toBe('ask-the-lead')
  })

  test('a struck-out animal is in no line, no total and no count of the close', async () => {
    await desk.sit(crew.volunteer)
    const animal = await checkIn(desk)
    await desk.ask('slip.takeBack', {})
    const { waiting, totals } = await desk.ask('line', {})
    expect(waiting).toEqual([])
    expect(totals.checkedIn).toBe(0)
    expect((await desk.ask('ahead', { extra: [] })).came).toBe(0)
    await desk.sit(crew.lead)
    expect(await desk.code('animal.assign', { animal, sampler: crew.sampler })).toBe(
      'animal-not-in-line',
    )
  })
})
