import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { type Crew, crewPin, leadPin, openStation, type TestDesk } from '../support/desk.ts'

let desk: TestDesk
let crew: Crew
beforeAll(async () => {
  ;({ desk, crew } = await openStation())
})
beforeEach(() => desk.sit(crew.lead, leadPin))
afterAll(() => desk.end())

const personAt = async (person: string) =>
  (await desk.ask('people', {})).people.find((each) => each.person === person)

const sampler = () => ({
  person: crew.sampler,
  name: 'Ines Tarr',
  role: 'sampler' as const,
  training: ['deer' as const],
  active: true,
})
const lead = () => ({ ...sampler(), person: crew.lead, name: 'Orla Vance', role: 'lead' as const })

describe('the crew', () => {
  test('is added by the lead, each with a badge number of their own', async () => {
    const { people } = await desk.ask('people', {})
    expect(people.map(({ name, role }) => [name, role])).toEqual([
      ['Orla Vance', 'lead'],
      ['Ines Tarr', 'sampler'],
      ['Bo Quill', 'volunteer'],
    ])
    expect(new Set(people.map(({ person }) => person)).size).toBe(3)
  })

  test('learns new work during the day', async () => {
    await desk.ask('person.change', { ...sampler(), training: ['deer', 'skinned-heads'] })
    expect((await personAt(crew.sampler))?.training).toEqual(['deer', 'skinned-heads'])
  })

  test('changes roles, and may then do what the new role may', async () => {
    await desk.ask('person.change', { ...sampler(), role: 'lead' })
    await desk.sit(crew.sampler)
    await desk.ask('shift.plan', {
      person: crew.volunteer,
      date: '2026-11-15' as never,
      from: '06:00',
      to: '14:00',
    })
    await desk.sit(crew.lead, leadPin)
    await desk.ask('person.change', sampler())
    await desk.sit(crew.sampler)
    expect(
      await desk.code('shift.plan', {
        person: crew.volunteer,
        date: '2026-11-15' as never,
        from: '06:00',
        to: '14:00',
      }),
    ).toBe('role-may-not')
  })

  test('never loses its last lead, by another role or by going home', async () => {
    const refused = await desk.refusal('person.change', { ...lead(), role: 'sampler' })
    expect(refused).toMatchObject({
      code: 'last-lead',
      say: 'Orla Vance is the only station lead.',
    })
    expect(await desk.code('person.change', { ...lead(), active: false })).toBe('last-lead')
    await desk.ask('person.change', { ...lead(), name: 'Orla Vance-Ode' })
    await desk.ask('person.change', lead())
  })

  test('who no longer work here are nobody at once, at whatever window they sit', async () => {
    await desk.sit(crew.volunteer)
    const window = desk.session
    await desk.sit(crew.lead, leadPin)
    const bo = {
      person: crew.volunteer,
      name: 'Bo Quill',
      role: 'volunteer' as const,
      training: [],
    }
    await desk.ask('person.change', { ...bo, active: false })
    desk.session = window
    expect(await desk.code('line', {})).toBe('sign-in-first')
    expect(await desk.code('duty.change', { person: crew.volunteer, duty: 'on' })).toBe(
      'sign-in-first',
    )
    expect(await desk.code('person.signIn', { person: crew.volunteer, pin: crewPin })).toBe(
      'person-not-active',
    )
    await desk.sit(crew.lead, leadPin)
    await desk.ask('person.change', { ...bo, active: true })
  })
})

describe('a PIN', () => {
  test('is set by its own person, who proves to be that person', async () => {
    await desk.sit(crew.sampler)
    const wrong = { person: crew.sampler, ownPin: '0000', pin: '8642' }
    expect(await desk.refusal('person.setPin', wrong)).toMatchObject({
      code: 'pin-wrong',
      field: 'ownPin',
    })
    await desk.ask('person.setPin', { ...wrong, ownPin: crewPin })
    desk.newWindow()
    await desk.as(crew.sampler, '8642')
  })

  test('of another is set by a lead only', async () => {
    await desk.sit(crew.volunteer)
    const another = { person: crew.sampler, ownPin: crewPin, pin: '8642' }
    expect(await desk.code('person.setPin', another)).toBe('only-your-own-pin')
  })
})

describe('who is on duty', () => {
  test('is changed by each for themselves, and by a lead for anyone', async () => {
    await desk.sit(crew.volunteer)
    await desk.ask('duty.change', { person: crew.volunteer, duty: 'on' })
    expect(await desk.code('duty.change', { person: crew.sampler, duty: 'off' })).toBe(
      'only-for-yourself',
    )
    await desk.sit(crew.lead, leadPin)
    await desk.ask('duty.change', { person: crew.sampler, duty: 'break' })
    expect((await personAt(crew.sampler))?.duty).toBe('break')
  })

  test('is planned in shifts, which may end after midnight but not as they begin', async () => {
    const shift = { person: crew.sampler, date: '2026-11-14' as never }
    await desk.ask('shift.plan', { ...shift, from: '18:00', to: '02:00' })
    expect((await personAt(crew.sampler))?.shift).toEqual({ from: '18:00', to: '02:00' })
    expect(await desk.code('shift.plan', { ...shift, from: '18:00', to: '18:00' })).toBe(
      'shift-empty',
    )
  })
})
