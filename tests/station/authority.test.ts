import { describe, expect, test } from 'vitest'
import { authority, checkAuthority, commandsOf, mayGive } from '../../electron/station/authority.ts'
import { type CommandName, deskApi, isCommandName } from '../../shared-types/desk-api.ts'
import { Role } from '../../shared-types/person.ts'
import { code, refusal } from './records.ts'

const commands = (Object.keys(deskApi) as (keyof typeof deskApi)[]).filter(isCommandName)
const refusedTo = (role: Role) => commands.filter((name) => !mayGive(role, name))

test('every command of the contract says who may give it, and a lead may give them all', () => {
  expect(Object.keys(authority).toSorted()).toEqual(commands.toSorted())
  expect(commandsOf('lead').toSorted()).toEqual(commands.toSorted())
  expect(refusedTo('lead')).toEqual([])
})

/** The work of a station day, by who does it. */
const work = {
  anyone: ['shelf.open', 'shelf.shut', 'station.setUp', 'person.signIn', 'person.lock'],
  leads: [
    'person.add',
    'person.change',
    'shift.plan',
    'settings.change',
    'day.open',
    'day.reopen',
    'day.close',
    'clock.accept',
    'seal.break',
    'variance.explain',
    'handoff.begin',
    'handoff.callOff',
    'handoff.sign',
  ],
  samplers: [
    'animal.assign',
    'animal.putBack',
    'animal.finish',
    'kit.open',
    'tissue.check',
    'tissue.miss',
    'bag.seal',
    'bag.discard',
    'bag.takeOut',
    'cooler.open',
    'cooler.seal',
  ],
  crew: [
    'animal.checkIn',
    'animal.leave',
    'duty.change',
    'bag.place',
    'kits.move',
    'kit.spoil',
    'labels.printKits',
    'labels.printCooler',
    'label.reprint',
    'label.void',
    'cooler.read',
    'count.enter',
    'cooler.scanOut',
  ],
  corrections: ['animal.amend'],
} as const satisfies Record<string, readonly CommandName[]>

test('what begins before anyone has signed in may be done by anyone, and nothing of the day', () => {
  for (const name of work.anyone) expect(checkAuthority(null, name).ok).toBe(true)
  for (const name of [...work.leads, ...work.samplers, ...work.crew, ...work.corrections])
    expect(code(checkAuthority(null, name))).toBe('sign-in-first')
})

describe('each role is refused what is not its work', () => {
  const may = (role: Role, names: readonly CommandName[]) => {
    const granted = names.filter((name) => mayGive(role, name))
    return granted.length === names.length || (granted.length === 0 ? false : granted)
  }

  test('a sampler works the bench, leads nothing and corrects no check-in', () => {
    expect(may('sampler', [...work.samplers, ...work.crew])).toBe(true)
    expect(may('sampler', [...work.leads, ...work.corrections])).toBe(false)
  })

  test('a volunteer checks in, labels and counts, leads nothing and cuts nothing', () => {
    expect(may('volunteer', [...work.crew, ...work.corrections])).toBe(true)
    expect(may('volunteer', [...work.leads, ...work.samplers])).toBe(false)
  })

  test('the office corrects animals, and does nothing at the station', () => {
    expect(may('office', work.corrections)).toBe(true)
    expect(may('office', [...work.leads, ...work.samplers, ...work.crew])).toBe(false)
  })

  test.each(Role.options)('and a %s hears what may not be done, and whom to ask', (role) => {
    for (const name of refusedTo(role)) {
      const { say, next, code } = refusal(checkAuthority(role, name))
      expect(code).toBe('role-may-not')
      expect(say).toBe(`${say.split(' may not ')[0]} may not ${authority[name].deed}.`)
      expect(next).toMatch(/^Ask (a|someone) .* to do it, with their own PIN\.$/)
    }
  })

  test('in plain words', () => {
    expect(refusal(checkAuthority('volunteer', 'seal.break'))).toMatchObject({
      say: 'A volunteer may not break a seal.',
      next: 'Ask a station lead to do it, with their own PIN.',
    })
    expect(refusal(checkAuthority('office', 'kit.open'))).toMatchObject({
      say: 'Someone of the office may not open a kit on an animal.',
      next: 'Ask a station lead or a sampler to do it, with their own PIN.',
    })
  })
})
