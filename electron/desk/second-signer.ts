/** The second person at a close: found, of those who may sign, and proved by their own PIN. */
import { pinRecordOf } from '../../db/kept-apart.ts'
import type { ParsedInput } from '../../shared-types/desk-api.ts'
import type { PersonRecord } from '../../shared-types/person.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import type { PersonId } from '../../shared-types/sample-number.ts'
import type { CommandCall } from './call.ts'
import { findPerson } from './find.ts'

/** Null where nobody is named. Refuses `second-not-of-crew`, or as the PIN does. */
export async function secondSigner(
  { log, pins, now }: CommandCall,
  second: ParsedInput<'day.close'>['second'],
  mayBe: (person: PersonRecord) => boolean,
): Promise<Result<PersonId | null>> {
  if (second === null) return granted(null)
  const person = findPerson(log, second.person)
  if (!person.ok) return person
  const { person: id, name, active } = person.value
  if (!active || !mayBe(person.value))
    return refused(
      'second-not-of-crew',
      `${name} is not of the crew that works here.`,
      'Choose somebody of the crew who has seen the counts.',
      'second',
    )
  const right = await pins.check(id, second.pin, pinRecordOf(log, id), now)
  return right.ok ? granted(id) : { ok: false, refusal: { ...right.refusal, field: 'second.pin' } }
}
