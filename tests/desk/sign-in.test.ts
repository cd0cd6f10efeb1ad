import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import {
  type Crew,
  checkIn,
  crewPin,
  leadPin,
  openStation,
  type TestDesk,
} from '../support/desk.ts'

let desk: TestDesk
let crew: Crew
beforeAll(async () => {
  ;({ desk, crew } = await openStation())
})
afterAll(() => desk.end())

const who = async () => (await desk.ask('who', {})).person?.name ?? null

describe('before anyone has signed in', () => {
  beforeEach(() => {
    desk.newWindow()
  })

  test('a window shows who works here, and nothing else', async () => {
    expect(await who()).toBeNull()
    expect((await desk.ask('who', {})).may).toEqual([])
    expect((await desk.ask('people', {})).people).toHaveLength(3)
    for (const name of ['line', 'close', 'coolers', 'kits', 'handoffs'] as const)
      expect(await desk.code(name, {})).toBe('sign-in-first')
    expect(await desk.code('animal', { animal: crew.lead })).toBe('sign-in-first')
    expect(await desk.code('tagSeen', { tag: 'T1' })).toBe('sign-in-first')
    expect(await desk.code('table', { what: 'animals', format: 'csv' })).toBe('sign-in-first')
  })

  test('and takes no command', async () => {
    expect(await desk.code('day.reopen', { reason: 'late truck' })).toBe('sign-in-first')
    expect(
      await desk.code('kits.move', {
        from: { in: 'stock' },
        to: { in: 'missing' },
        count: 1,
        reason: 'x y z',
      }),
    ).toBe('sign-in-first')
  })

  test('and cannot be talked round: a made-up window is no way in', async () => {
    const forged = { id: 'forged', person: null }
    expect(await desk.desk.call(forged, 'line', {})).toMatchObject({ ok: false })
  })
})

describe('a person signs in', () => {
  test('with the PIN, and may then do what their role may', async () => {
    await desk.sit(crew.volunteer)
    const me = await desk.ask('who', {})
    expect(me.person).toMatchObject({ name: 'Bo Quill', role: 'volunteer' })
    expect(me.may).toContain('animal.checkIn')
    expect(me.may).not.toContain('day.close')
    expect(await desk.code('day.reopen', { reason: 'late truck' })).toBe('role-may-not')
  })

  test('quickly in another’s place, while the other windows keep their people', async () => {
    await desk.sit(crew.lead, leadPin)
    const first = desk.session
    desk.newWindow()
    await desk.as(crew.sampler)
    expect(await who()).toBe('Ines Tarr')
    await desk.as(crew.volunteer)
    expect(await who()).toBe('Bo Quill')
    desk.session = first
    expect(await who()).toBe('Orla Vance')
  })

  test('and what each did is told under their own name', async () => {
    await desk.sit(crew.volunteer)
    const animal = await checkIn(desk)
    await desk.sit(crew.sampler)
    await desk.ask('animal.assign', { animal, sampler: crew.sampler })
    const { story } = await desk.ask('animal', { animal })
    expect(story.map(({ by, kind }) => [by, kind])).toEqual([
      ['Bo Quill', 'animal.checked-in'],
      ['Ines Tarr', 'animal.assigned'],
    ])
  })

  test('and locks the window behind them', async () => {
    await desk.sit(crew.volunteer)
    await desk.ask('person.lock', {})
    expect(await who()).toBeNull()
    expect(await desk.code('line', {})).toBe('sign-in-first')
  })

  test('by a badge of this station only', async () => {
    desk.newWindow()
    expect(await desk.code('person.signIn', { person: '26KRVA0009PX', pin: crewPin })).toMatch(
      /check-character-wrong|not-in-this-log/,
    )
  })
})

describe('a wrong PIN', () => {
  const guess = (pin: string) => desk.code('person.signIn', { person: crew.sampler, pin })

  test('is refused, changes nobody, and after five in a row the person must wait half a minute', async () => {
    await desk.sit(crew.volunteer)
    for (let tries = 0; tries < 5; tries += 1) expect(await guess('9999')).toBe('pin-wrong')
    const { code, next } = await desk.refusal('person.signIn', {
      person: crew.sampler,
      pin: crewPin,
    })
    expect(code).toBe('pin-wait')
    expect(next).toMatch(/^Wait 30 seconds/)
    expect(await who()).toBe('Bo Quill')
  })

  test('keeps only that person waiting', async () => {
    desk.newWindow()
    await desk.as(crew.lead, leadPin)
    expect(await who()).toBe('Orla Vance')
  })

  test('is forgiven after the wait', async () => {
    desk.wait(0.4)
    expect(await guess(crewPin)).toBe('pin-wait')
    desk.wait(0.2)
    desk.newWindow()
    await desk.as(crew.sampler)
    expect(await who()).toBe('Ines Tarr')
  })

  test('cannot be guessed faster by asking many times at once', async () => {
    desk.newWindow()
    const answers = await Promise.all(
      Array.from({ length: 8 }, (_, guess) =>
        desk.desk.call(desk.session, 'person.signIn', {
          person: crew.volunteer,
          pin: String(1000 + guess),
        }),
      ),
    )
    const codes = answers.map((each) => (each.ok ? 'in' : each.refusal.code))
    expect(codes.filter((code) => code === 'pin-wrong')).toHaveLength(5)
    expect(codes.filter((code) => code === 'pin-wait')).toHaveLength(3)
  })

  test('is put right at once when the lead sets a new one', async () => {
    await desk.sit(crew.lead, leadPin)
    await desk.ask('person.setPin', { person: crew.volunteer, ownPin: leadPin, pin: '2468' })
    desk.newWindow()
    await desk.as(crew.volunteer, '2468')
    expect(await who()).toBe('Bo Quill')
  })
})
