import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { openLog } from '../../db/log/open.ts'
import { verifyLog } from '../../db/log/verify.ts'
import {
  type Crew,
  checkIn,
  factsOf,
  leadPin,
  openingMs,
  openStation,
  sampleBoth,
  type TestDesk,
} from '../support/desk.ts'

const dayMs = 24 * 3_600_000
let desk: TestDesk
let crew: Crew
beforeAll(async () => {
  ;({ desk, crew } = await openStation())
  await checkIn(desk)
})
afterAll(() => desk.end())

describe('a laptop clock that is set back', () => {
  test('by some minutes is a laptop that corrects itself: work goes on', async () => {
    desk.now = openingMs - 9 * 60_000
    await checkIn(desk)
  })

  test('by a day stops every command, in plain words, and nothing is written', async () => {
    desk.now = openingMs - dayMs
    const refused = await desk.refusal('animal.checkIn', {
      facts: factsOf({ harvested: '2026-11-13' as never }),
      contact: null,
    })
    expect(refused.code).toBe('clock-set-back')
    expect(refused.say).toMatch(/clock of this computer reads .* but the last entry was made at/)
    expect(refused.next).toMatch(/station lead accepts it/)
    expect(
      await desk.code('kits.move', {
        from: { in: 'stock' },
        to: { in: 'hands', person: crew.sampler },
        count: 1,
        reason: '',
      }),
    ).toBe('clock-set-back')
  })

  test('still shows everything', async () => {
    expect((await desk.ask('line', {})).totals.checkedIn).toBe(2)
  })

  test('still lets people sign in, so that the lead can put it right', async () => {
    desk.newWindow()
    await desk.as(crew.lead, leadPin)
    await desk.sit(crew.volunteer)
    expect(await desk.code('clock.accept', {})).toBe('role-may-not')
  })

  test('is accepted by the lead, and then work goes on by the clock as it now reads', async () => {
    await desk.sit(crew.lead, leadPin)
    await desk.ask('clock.accept', {})
    const before = desk.now
    const animal = await checkIn(desk, { harvested: '2026-11-13' as never })
    desk.wait(12)
    expect((await desk.ask('animal', { animal })).arrivedMs).toBe(before)
    const { totals, waiting } = await desk.ask('line', {})
    expect(totals.checkedIn).toBe(3)
    expect(waiting.map((each) => each.animal).indexOf(animal)).toBe(2)
  })

  test('leaves waits, samples and the day’s figures true', async () => {
    const animal = await checkIn(desk, { harvested: '2026-11-13' as never })
    desk.wait(7)
    await sampleBoth(desk, animal, crew.sampler)
    const { waits, crew: members } = await desk.ask('line', {})
    expect(waits.medianMinutes).toBe(7)
    expect(members.find(({ person }) => person === crew.sampler)?.usualMinutes).toBe(5)
    const { bench } = await desk.ask('coolers', {})
    expect(
      bench.every(({ sealedMs }) => sealedMs > openingMs - dayMs && sealedMs <= desk.now),
    ).toBe(true)
  })

  test('leaves a log that is whole, its entries in the order in which they were made', async () => {
    await desk.ask('shelf.shut', {})
    const log = openLog(desk.file)
    if (!log.ok) throw new Error(log.refusal.say)
    expect(verifyLog(log.value)).toMatchObject({ whole: true, readTables: 'equal', findings: [] })
    log.value.close()
  })
})
