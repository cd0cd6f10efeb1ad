/** A long log: many animals with the entries that a sampled animal leaves behind. */
import type { WritableLog } from '../../db/connection.ts'
import { transact } from '../../db/log/append.ts'
import { draft, type EntryDraft } from '../../shared-types/entry.ts'
import { LocalDate } from '../../shared-types/local-date.ts'
import { granted } from '../../shared-types/result.ts'
import {
  animalNumber,
  bagNumber,
  coolerNumber,
  type DeskId,
  kitNumber,
  type PersonId,
  sampleNumber,
} from '../../shared-types/sample-number.ts'
import { factsOf } from '../support/desk.ts'

/** Ten days of a season, the last of them today. */
function dayOf(serial: number): LocalDate {
  return LocalDate.parse(`2026-11-${String(5 + (serial % 10)).padStart(2, '0')}`)
}

/** The entries of an animal from check-in to outcome. */
function lifeOf(desk: DeskId, serial: number, sampler: PersonId): EntryDraft[] {
  const animal = animalNumber(desk, serial)
  const kit = kitNumber(desk, serial)
  const parts = ['L', 'R', 'K', 'H'] as const
  const labels = parts.map((part) => ({ number: sampleNumber(desk, serial, part), copy: 1 }))
  const sides = [
    ['left', 'L'],
    ['right', 'R'],
  ] as const
  return [
    draft('animal.checked-in', {
      animal,
      day: dayOf(serial),
      facts: factsOf(),
      contact: null,
      noSample: null,
    }),
    draft('kit.numbered', { kit, animal }),
    draft('labels.printed', { labels, stock: 'roll-51x25', blanks: 6 }),
    draft('animal.assigned', { animal, sampler }),
    draft('kit.opened', { kit, animal, sampler }),
    ...sides.flatMap(([site, part]) => [
      draft('tissue.checked', { animal, kit, site, check: 'lymph-node', sizeMm: 22 }),
      draft('bag.sealed', { bag: bagNumber(desk, serial, part), animal, kit, site, kept: 'fresh' }),
      draft('bag.placed', { bag: bagNumber(desk, serial, part), cooler: coolerNumber(desk, 1) }),
    ]),
    draft('animal.finished', { animal, sampler, outcome: 'both' }),
  ]
}

/**
 * Appends animals of a desk that are all finished. The numbers are those of another desk, as in a
 * merged log, so that the desk under test has its own serials free.
 */
export function fillWithFinished(
  log: WritableLog,
  of: { desk: DeskId; animals: number; sampler: PersonId; now: number },
): void {
  const portion = 500
  for (let first = 1; first <= of.animals; first += portion) {
    const filled = transact(log, { now: of.now, by: of.sampler }, (tx) => {
      for (let serial = first; serial < first + portion && serial <= of.animals; serial += 1)
        tx.append(lifeOf(of.desk, serial, of.sampler))
      return granted(null)
    })
    if (!filled.ok) throw new Error(filled.refusal.say)
  }
}
