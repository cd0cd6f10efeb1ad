/** What a scan must be before a command looks it up: one of our numbers, of the right part, of this station. */
import { granted, type Result, refused } from '../../shared-types/result.ts'
import {
  type AnimalNumber,
  type BagNumber,
  type CoolerNumber,
  type DeskId,
  type HandoffNumber,
  type KitNumber,
  kitOf,
  numberParts,
  type Part,
  type PersonId,
  readNumberFor,
  type SampleNumber,
} from '../../shared-types/sample-number.ts'

/** Season and station code of a desk or number: its first five characters. */
const stationOf = (text: string) => text.slice(0, 5)

/**
 * Refuses `another-station`: its labels must never be used here, whatever is printed on them. `desk`
 * is null at an office, which reads the record of all stations.
 */
export function ofThisStation<N extends SampleNumber>(desk: DeskId | null, number: N): Result<N> {
  if (desk === null || stationOf(number) === stationOf(desk)) return granted(number)
  return refused(
    'another-station',
    `That label belongs to station ${number.slice(2, 5)}, season ${number.slice(0, 2)}; this is station ${desk.slice(2, 5)}, season ${desk.slice(0, 2)}.`,
    'Use a label of this station, and put the other one aside for its own lead.',
  )
}

function scanned<N extends SampleNumber>(
  desk: DeskId | null,
  parts: readonly Part[],
  text: string,
  field: string,
): Result<N> {
  const read = readNumberFor(parts, text)
  const local = read.ok ? ofThisStation(desk, read.value) : read
  // The part was checked, so the number is of the kind its type says.
  return local.ok ? granted(local.value as N) : { ok: false, refusal: { ...local.refusal, field } }
}

export function scanAnimal(desk: DeskId | null, text: string): Result<AnimalNumber> {
  return scanned(desk, ['A'], text, 'animal')
}
export function scanBag(desk: DeskId | null, text: string): Result<BagNumber> {
  return scanned(desk, ['L', 'R', 'X'], text, 'bag')
}
export function scanCooler(desk: DeskId | null, text: string): Result<CoolerNumber> {
  return scanned(desk, ['C'], text, 'cooler')
}
export function scanPerson(desk: DeskId | null, text: string): Result<PersonId> {
  return scanned(desk, ['P'], text, 'person')
}
export function scanHandoff(desk: DeskId | null, text: string): Result<HandoffNumber> {
  return scanned(desk, ['M'], text, 'handoff')
}

/** Any label of a kit tells which kit it is. */
export function scanKit(desk: DeskId | null, text: string): Result<KitNumber> {
  const read = scanned(desk, ['K', 'L', 'R', 'X', 'H'], text, 'kit')
  return read.ok ? granted(kitOf(read.value)) : read
}

/** A label of a kit or any other thing that can be printed again. */
export function scanLabel(desk: DeskId | null, text: string): Result<SampleNumber> {
  return scanned(desk, ['L', 'R', 'X', 'K', 'H', 'C', 'P'], text, 'number')
}

/** The part of a number, in one word for the code that branches on it. */
export function partOf(number: SampleNumber): Part {
  return numberParts(number).part
}
