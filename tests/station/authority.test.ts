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

test('what begins before anyone has signed in may be done by anyone', () => {
  const open = commands.filter((name) => checkAuthority(null, name).ok)
  expect(open.toSorted()).toEqual([
    'person.lock',
    'person.signIn',
    'practice.open',
    'shelf.open',
    'shelf.shut',
    'station.setUp',
  ])
  expect(code(checkAuthority(null, 'animal.checkIn'))).toBe('sign-in-first')
})

describe('each role is refused what is not its work', () => {
  const leadsOnly = [
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
  ] satisfies CommandName[]

  const bench = [
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
  ] satisfies CommandName[]

  test('a sampler leads nothing and corrects no check-in', () => {
    expect(refusedTo('sampler').toSorted()).toEqual([...leadsOnly, 'animal.amend'].toSorted())
  })

  test('a volunteer leads nothing and cuts nothing', () => {
    expect(refusedTo('volunteer').toSorted()).toEqual([...leadsOnly, ...bench].toSorted())
  })

  test('the office corrects animals and sets its own PIN, and does nothing at the station', () => {
    const may = commandsOf('office').filter((name) => authority[name].roles !== 'anyone')
    expect(may.toSorted()).toEqual(['animal.amend', 'person.setPin'])
  })

  test.each(Role.options)('and a %s hears what may not be done, and whom to ask', (role) => {
    for (const name of refusedTo(role)) {
      const { say, next, code } = refusal(checkAuthority(role, name))
      expect(code).toBe('role-may-not')
      expect(say).toBe(`${say.split(' may not ')[0]} may not ${authority[name].deed}.`)
      expect(next).toMatch(/^Ask a station lead.* to do it, with their own PIN\.$/)
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
