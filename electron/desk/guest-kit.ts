/**
 * A kit of another desk of the station, used here. What that desk printed is in its own log, so its
 * labels are taken for good unless this desk has made them void; the merged log shows if that was wrong.
 */
import type { ReadableLog } from '../../db/connection.ts'
import { kitRecordOf } from '../../db/read/kits.ts'
import { copiesOf, labelsOfKit, wasVoidedHere } from '../../db/read/labels.ts'
import { draft, type EntryDraft } from '../../shared-types/entry.ts'
import type { KitRecord } from '../../shared-types/kit.ts'
import type { LabelRecord } from '../../shared-types/label.ts'
import { granted, type Result } from '../../shared-types/result.ts'
import {
  bagNumber,
  type BagPart,
  type KitNumber,
  numberParts,
  type PersonId,
  type SampleNumber,
} from '../../shared-types/sample-number.ts'
import type { StationSettings } from '../../shared-types/station.ts'
import { sitePart } from '../../shared-types/tissue.ts'
import { scanKit } from '../station/scan.ts'
import { findKit, homeOf } from './find.ts'

function isGuest(log: ReadableLog, number: SampleNumber): boolean {
  return numberParts(number).desk !== log.desk
}

/** The kit scanned, and whether it comes from another desk and is not known here yet. */
export function kitToOpen(
  log: ReadableLog,
  text: string,
  now: number,
): Result<{ kit: KitRecord; brought: boolean }> {
  const number = scanKit(homeOf(log), text)
  if (!number.ok || !isGuest(log, number.value) || kitRecordOf(log, number.value) !== null) {
    const known = findKit(log, text)
    return known.ok ? granted({ kit: known.value, brought: false }) : known
  }
  const kit: KitRecord = {
    kit: number.value,
    animal: null,
    state: 'reserved',
    sampler: null,
    numberedMs: now,
    openedMs: null,
  }
  return granted({ kit, brought: true })
}

/** The kit comes over from the other desk, into the hands of whoever uses it. */
export function draftsOfBringing(kit: KitNumber, sampler: PersonId): EntryDraft[] {
  return [
    draft('kit.brought', { kit }),
    draft('kits.moved', {
      from: { in: 'other-desk' },
      to: { in: 'hands', person: sampler },
      count: 1,
      reason: 'brought from another desk',
    }),
  ]
}

/** The copies of a label as far as this desk can know them. */
export function copiesHere(log: ReadableLog, number: SampleNumber): LabelRecord[] {
  return isGuest(log, number)
    ? [{ number, copy: 1, fate: wasVoidedHere(log, number) ? 'void' : 'printed' }]
    : copiesOf(log, number)
}

/** The labels of a kit; of another desk's kit those that the tissues taken here need. */
export function kitLabelsHere(
  log: ReadableLog,
  kit: KitNumber,
  { tissues }: StationSettings,
): LabelRecord[] {
  if (!isGuest(log, kit)) return labelsOfKit(log, kit)
  const { desk, serial } = numberParts(kit)
  return tissues.flatMap(({ site }) =>
    copiesHere(log, bagNumber(desk, serial, sitePart[site] as BagPart)),
  )
}
