import { expect, test } from 'vitest'
import { type CrewMember, crewState, orderCrew } from '../../../renderer/line/crew.ts'
import { DeskId, animalNumber, personId } from '../../../shared-types/sample-number.ts'

const desk = DeskId.parse('26KRVA')

function member(serial: number, changed: Partial<CrewMember>): CrewMember {
  return {
    person: personId(desk, serial),
    name: `Person ${serial}`,
    role: 'sampler',
    training: ['deer'],
    active: true,
    duty: 'on',
    shift: null,
    kits: 5,
    kitsLow: 'enough',
    animals: [],
    finishedToday: 0,
    usualMinutes: null,
    ...changed,
  }
}

test('free people stand first, then those at work, on a break, off duty', () => {
  const crew = [
    member(1, { duty: 'off' }),
    member(2, { animals: [animalNumber(desk, 1)] }),
    member(3, { duty: 'break' }),
    member(4, {}),
  ]
  expect(orderCrew(crew).map(crewState)).toEqual(['free', 'working', 'break', 'off'])
})

test('of the free people, one without kits stands after those who can begin at once', () => {
  const crew = [member(1, { role: 'lead', kits: 0, kitsLow: 'none' }), member(2, {})]
  expect(orderCrew(crew).map(({ person }) => person)).toEqual([
    personId(desk, 2),
    personId(desk, 1),
  ])
})

test('someone on a break with an animal in hand is not free', () => {
  expect(crewState(member(1, { duty: 'break', animals: [animalNumber(desk, 1)] }))).toBe('break')
})
