/** Finding what a command names, or saying that it is not in this log. */
import type { ReadableLog } from '../../db/connection.ts'
import { animalOf } from '../../db/read/animals.ts'
import { bagOf } from '../../db/read/bags.ts'
import { coolerOf } from '../../db/read/coolers.ts'
import { handoffOf } from '../../db/read/handoffs.ts'
import { kitRecordOf } from '../../db/read/kits.ts'
import { personOf } from '../../db/read/people.ts'
import { stationOf } from '../../db/read/station.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import {
  type DeskId,
  grouped,
  partWords,
  type SampleNumber,
} from '../../shared-types/sample-number.ts'
import {
  partOf,
  scanAnimal,
  scanBag,
  scanCooler,
  scanHandoff,
  scanKit,
  scanPerson,
} from '../station/scan.ts'

/** The desk whose station's labels are used here; null at an office, which reads those of all. */
export function homeOf(log: ReadableLog): DeskId | null {
  return stationOf(log)?.office === true ? null : log.desk
}

function found<N extends SampleNumber, R>(
  log: ReadableLog,
  number: Result<N>,
  read: (log: ReadableLog, number: N) => R | null,
  next: string,
): Result<R> {
  if (!number.ok) return number
  const record = read(log, number.value)
  if (record !== null) return granted(record)
  const part = partOf(number.value)
  return refused(
    'not-in-this-log',
    `The log of this desk has no ${partWords[part]} ${grouped(number.value)}.`,
    next,
  )
}

export function findAnimal(log: ReadableLog, text: string) {
  return found(
    log,
    scanAnimal(homeOf(log), text),
    animalOf,
    'Check it in first, or look at the other desk.',
  )
}
export function findBag(log: ReadableLog, text: string) {
  return found(
    log,
    scanBag(homeOf(log), text),
    bagOf,
    'Seal it on the bench first: choose the animal and scan the bag there. A bag that another desk sealed goes into a cooler of that desk.',
  )
}
export function findKit(log: ReadableLog, text: string) {
  return found(
    log,
    scanKit(homeOf(log), text),
    kitRecordOf,
    'Print its labels here first (kits screen).',
  )
}
export function findCooler(log: ReadableLog, text: string) {
  return found(
    log,
    scanCooler(homeOf(log), text),
    coolerOf,
    'Open the cooler first (coolers screen).',
  )
}
export function findPerson(log: ReadableLog, text: string) {
  return found(
    log,
    scanPerson(homeOf(log), text),
    personOf,
    'Ask the lead to add them (station screen).',
  )
}
export function findHandoff(log: ReadableLog, text: string) {
  return found(log, scanHandoff(homeOf(log), text), handoffOf, 'Choose a handoff of the list.')
}
