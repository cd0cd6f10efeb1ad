/** People: who sits at this window, signing in, and the crew. */
import { keepPin, pinRecordOf } from '../../db/kept-apart.ts'
import { transact } from '../../db/log/append.ts'
import type { ReadableLog } from '../../db/connection.ts'
import { people as everyone, shiftsByPerson } from '../../db/read/people.ts'
import { nextSerial } from '../../db/read/serials.ts'
import { latestDay } from '../../db/read/station.ts'
import { draft } from '../../shared-types/entry.ts'
import type { PersonRecord } from '../../shared-types/person.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import { lastSerial, numberParts, personId } from '../../shared-types/sample-number.ts'
import type { PersonView, WhoView } from '../../shared-types/views/people.ts'
import { commandsOf } from '../station/authority.ts'
import { lineSettingsOf } from '../station/line-settings.ts'
import { localDate } from '../station/local-time.ts'
import type { CommandHandlers, OpenHandlers, QueryHandlers } from './call.ts'
import { findPerson } from './find.ts'
import { pinRecord } from './pin.ts'
import { serialsExhausted } from './refusals.ts'

type Shifts = ReturnType<typeof shiftsByPerson>

/** A person as screens show them, with the shift of the day. */
export function personView(person: PersonRecord, shifts: Shifts): PersonView {
  return { ...person, training: [...person.training], shift: shifts.get(person.person) ?? null }
}

export const peopleQueries = {
  who: ({ log, station, person, now }) => {
    const today = localDate(now, station.zone)
    const day = latestDay(log)
    const view: WhoView = {
      person: person && personView(person, shiftsByPerson(log, today)),
      station: {
        desk: station.desk,
        name: station.name,
        zone: station.zone,
        practice: station.practice,
        office: station.office,
      },
      day: { date: day?.date ?? null, state: day?.state ?? 'none' },
      today,
      nowMs: now,
      // The line as it is gone by, so that a lead sees and changes what the forecasts begin with.
      settings: { ...station.settings, line: lineSettingsOf(station.settings) },
      may: person ? commandsOf(person.role) : [],
    }
    return granted(view)
  },
  people: ({ log, station, now }) => {
    const shifts = shiftsByPerson(log, localDate(now, station.zone))
    // At an office the crews of all stations are in the record, but only its own people work there.
    const here = everyone(log).filter(
      ({ person }) => !station.office || numberParts(person).desk === station.desk,
    )
    return granted({ people: here.map((person) => personView(person, shifts)) })
  },
} satisfies Partial<QueryHandlers>

/** Refusals of the entry that do not keep a person from signing in. */
const stillLetsIn = ['clock-set-back', 'medium-read-only']

export const signingIn: OpenHandlers = {
  'person.signIn': async ({ log, pins, session, now, deps }, input) => {
    const person = findPerson(log, input.person)
    if (!person.ok) return person
    const { name, active, person: id } = person.value
    if (!active)
      return refused(
        'person-not-active',
        `${name} no longer works at this station.`,
        'Choose another person.',
        'person',
      )
    const right = await pins.check(id, input.pin, pinRecordOf(log, id), now)
    if (!right.ok) return right
    const signed = transact(log, { now: deps.now(), by: id }, (tx) => {
      tx.append([draft('person.signed-in', { person: id })])
      return granted({})
    })
    // A lead must be able to sign in to a desk whose clock was set back, to put it right.
    // And whoever looks at a log that cannot be written must still be known to it.
    if (!signed.ok && !stillLetsIn.includes(signed.refusal.code)) return signed
    session.person = id
    return granted({})
  },
  // That the call came is enough: the desk notes when each window was last heard.
  'person.here': () => granted({}),
  'person.lock': ({ session }) => {
    session.person = null
    return granted({})
  },
}

/** A station must keep someone who can open the day and sign the close. */
function isLastLead(log: ReadableLog, person: PersonRecord): boolean {
  return !everyone(log).some(
    (each) => each.person !== person.person && each.role === 'lead' && each.active,
  )
}

export const peopleCommands = {
  'person.add': async ({ act, deps, station }, input) => {
    const { pin, ...rest } = input
    const record = await pinRecord(pin, deps.randomBytes(16), station.practice)
    return act((tx) => {
      const serial = nextSerial(tx, 'person')
      if (serial > lastSerial) return serialsExhausted('people')
      const person = personId(tx.desk, serial)
      keepPin(tx, person, record)
      const drafts = [draft('person.added', { person, ...rest }), draft('pin.set', { person })]
      return granted({ drafts, value: { person } })
    })
  },
  'person.change': ({ act }, { person: text, ...changed }) =>
    act((tx) => {
      const person = findPerson(tx, text)
      if (!person.ok) return person
      const staysLead = changed.role === 'lead' && changed.active
      if (person.value.role === 'lead' && !staysLead && isLastLead(tx, person.value))
        return refused(
          'last-lead',
          `${person.value.name} is the only station lead.`,
          'Make someone else a lead first.',
          'role',
        )
      const drafts = [draft('person.changed', { person: person.value.person, ...changed })]
      return granted({ drafts, value: {} })
    }),
  'person.setPin': async ({ log, act, by, pins, now, deps, station }, input) => {
    const person = findPerson(log, input.person)
    if (!person.ok) return person
    const { person: id, name } = person.value
    if (id !== by.person && by.role !== 'lead')
      return refused(
        'only-your-own-pin',
        `Only ${name} or a station lead may set this PIN.`,
        'Ask the station lead.',
        'person',
      )
    const right = await pins.check(by.person, input.ownPin, pinRecordOf(log, by.person), now)
    if (!right.ok) return { ok: false, refusal: { ...right.refusal, field: 'ownPin' } }
    const record = await pinRecord(input.pin, deps.randomBytes(16), station.practice)
    const set = act((tx) => {
      keepPin(tx, id, record)
      return granted({ drafts: [draft('pin.set', { person: id })], value: {} })
    })
    if (set.ok) pins.forgive(id)
    return set
  },
  'shift.plan': ({ act }, { person: text, ...shift }) =>
    act((tx) => {
      const person = findPerson(tx, text)
      if (!person.ok) return person
      if (shift.from === shift.to)
        return refused(
          'shift-empty',
          'The shift begins and ends at the same time.',
          'Correct one of the times.',
          'to',
        )
      const drafts = [draft('shift.planned', { person: person.value.person, ...shift })]
      return granted({ drafts, value: {} })
    }),
  'duty.change': ({ act, by }, { person: text, duty }) =>
    act((tx) => {
      const person = findPerson(tx, text)
      if (!person.ok) return person
      if (by.role !== 'lead' && person.value.person !== by.person) return onlyYourself()
      const drafts = [draft('duty.changed', { person: person.value.person, duty })]
      return granted({ drafts, value: {} })
    }),
} satisfies Partial<CommandHandlers>

function onlyYourself(): Result<never> {
  return refused(
    'only-for-yourself',
    'You may change only whether you yourself are on duty.',
    'Ask the station lead for others.',
    'person',
  )
}
