/**
 * Sample numbers: what the barcodes carry and people read out.
 *
 *   26 KRV A 0042 L 7
 *   |  |   | |    | +-- check character, ISO/IEC 7064 MOD 37,36
 *   |  |   | |    +---- part: what the label is stuck on
 *   |  |   | +--------- serial, counted by the desk
 *   |  |   +----------- desk letter
 *   |  +--------------- station code
 *   +------------------ season, two digits
 *
 * Two desks never share station, letter and season, so numbers are unique with no network.
 * Station codes and desk letters avoid characters that are misread by hand (0/O, 1/I/L, 2/Z,
 * 5/S, 8/B, 6/G, U/V). Each place holds either a digit or a letter, so look-alikes typed by hand
 * are put right there; the check character is taken as typed and must match.
 */
import { z } from 'zod'
import { checkCharacter } from './mod-37-36.ts'
import { type Result, granted, refused } from './result.ts'

/** What a label is stuck on. L and R are the trade's own letters for the sides. */
export const Part = z.enum(['L', 'R', 'X', 'K', 'H', 'A', 'C', 'P', 'M'])
export type Part = z.infer<typeof Part>

export const partWords: Record<Part, string> = {
  L: 'left bag',
  R: 'right bag',
  X: 'obex bag',
  K: 'kit',
  H: "hunter's stub",
  A: 'animal',
  C: 'cooler',
  P: 'person badge',
  M: 'manifest',
}

/** As in a sentence: `a kit label`, `an animal label`, `a left bag or right bag label`. */
export function labelInWords(...parts: readonly Part[]): string {
  const words = parts.map((part) => partWords[part]).join(' or ')
  return `${/^[aeiou]/.test(words) ? 'an' : 'a'} ${words} label`
}

const clearLetters = 'ACDEFHJKMNPQRTVWXY'
const clearDigits = '34679'

export const Season = z.string().regex(/^\d{2}$/, 'two digits of the year, like 26')
export const StationCode = z
  .string()
  .regex(
    new RegExp(`^[${clearLetters}${clearDigits}]{3}$`),
    'three of A C D E F H J K M N P Q R T V W X Y 3 4 6 7 9',
  )
/** Every letter that a desk may have, in order. */
export const deskLetters: readonly string[] = clearLetters.split('')
export const DeskLetter = z
  .string()
  .regex(new RegExp(`^[${clearLetters}]$`), 'one of A C D E F H J K M N P Q R T V W X Y')

const shape = new RegExp(
  `^(\\d{2})([${clearLetters}${clearDigits}]{3})([${clearLetters}])(\\d{4})([${Part.options.join('')}])([0-9A-Z])$`,
)

/** The desk a log belongs to: season, station code and letter, like `26KRVA`. */
export const DeskId = z
  .string()
  .regex(new RegExp(`^\\d{2}[${clearLetters}${clearDigits}]{3}[${clearLetters}]$`))
  .brand<'DeskId'>()
export type DeskId = z.infer<typeof DeskId>

/** A station of a season, whatever desks it has: season and station code, like `26KRV`. */
export const SeasonStation = z
  .string()
  .regex(new RegExp(`^\\d{2}[${clearLetters}${clearDigits}]{3}$`))
  .brand<'SeasonStation'>()
export type SeasonStation = z.infer<typeof SeasonStation>

export function stationOfDesk(desk: DeskId): SeasonStation {
  return SeasonStation.parse(desk.slice(0, 5))
}

/** Stands for the desk of a merged log that no office has taken up yet; no station has season 00. */
export const nobodysDesk = DeskId.parse('00AAAA')

/** The part that a good number is stuck on, or null. */
function partIn(text: string): string | null {
  const read = shape.exec(text)
  return read !== null && checkCharacter(text.slice(0, -1)) === read[6] ? (read[5] ?? null) : null
}

/** Entries name the same few numbers again and again: the last ones need not be worked out anew. */
const lastParts = new Map<string, string | null>()
const mostRemembered = 2000

function isNumberOf(parts: string): (text: string) => boolean {
  return (text) => {
    let part = lastParts.get(text)
    if (part === undefined) {
      part = partIn(text)
      if (lastParts.size >= mostRemembered) lastParts.clear()
      lastParts.set(text, part)
    }
    return part !== null && parts.includes(part)
  }
}

const checked = 'not a sample number: its characters or its check character are wrong'
export const SampleNumber = z
  .string()
  .refine(isNumberOf(Part.options.join('')), checked)
  .brand<'SampleNumber'>()
export type SampleNumber = z.infer<typeof SampleNumber>
export const BagNumber = z
  .string()
  .refine(isNumberOf('LRX'), checked)
  .brand<'SampleNumber'>()
  .brand<'Bag'>()
export type BagNumber = z.infer<typeof BagNumber>
export const KitNumber = z
  .string()
  .refine(isNumberOf('K'), checked)
  .brand<'SampleNumber'>()
  .brand<'Kit'>()
export type KitNumber = z.infer<typeof KitNumber>
export const AnimalNumber = z
  .string()
  .refine(isNumberOf('A'), checked)
  .brand<'SampleNumber'>()
  .brand<'Animal'>()
export type AnimalNumber = z.infer<typeof AnimalNumber>
export const CoolerNumber = z
  .string()
  .refine(isNumberOf('C'), checked)
  .brand<'SampleNumber'>()
  .brand<'Cooler'>()
export type CoolerNumber = z.infer<typeof CoolerNumber>
/** A person is known by the number on their badge. */
export const PersonId = z
  .string()
  .refine(isNumberOf('P'), checked)
  .brand<'SampleNumber'>()
  .brand<'Person'>()
export type PersonId = z.infer<typeof PersonId>
export const HandoffNumber = z
  .string()
  .refine(isNumberOf('M'), checked)
  .brand<'SampleNumber'>()
  .brand<'Handoff'>()
export type HandoffNumber = z.infer<typeof HandoffNumber>

export interface NumberParts {
  readonly desk: DeskId
  readonly serial: number
  readonly part: Part
}

/** The highest serial four digits hold; a desk that reaches it must be given a new letter. */
export const lastSerial = 9999

function composed(desk: DeskId, serial: number, part: Part): string {
  if (!Number.isInteger(serial) || serial < 1 || serial > lastSerial)
    throw new Error(`serial ${serial} is not within 1 to ${lastSerial}`)
  const body = `${desk}${String(serial).padStart(4, '0')}${part}`
  return body + checkCharacter(body)
}

/** The number of one part of one serial of a desk. Throws beyond serial 9999. */
export function sampleNumber(desk: DeskId, serial: number, part: Part): SampleNumber {
  return SampleNumber.parse(composed(desk, serial, part))
}
export function animalNumber(desk: DeskId, serial: number): AnimalNumber {
  return AnimalNumber.parse(composed(desk, serial, 'A'))
}
export function kitNumber(desk: DeskId, serial: number): KitNumber {
  return KitNumber.parse(composed(desk, serial, 'K'))
}
export function coolerNumber(desk: DeskId, serial: number): CoolerNumber {
  return CoolerNumber.parse(composed(desk, serial, 'C'))
}
export function personId(desk: DeskId, serial: number): PersonId {
  return PersonId.parse(composed(desk, serial, 'P'))
}
export function handoffNumber(desk: DeskId, serial: number): HandoffNumber {
  return HandoffNumber.parse(composed(desk, serial, 'M'))
}
export type BagPart = 'L' | 'R' | 'X'
export function bagNumber(desk: DeskId, serial: number, part: BagPart): BagNumber {
  return BagNumber.parse(composed(desk, serial, part))
}

/** Desk, serial and part of a number that is known to be good: its shape says that they are too. */
export function numberParts(number: SampleNumber): NumberParts {
  if (number.length !== 12) throw new Error(`not a sample number: ${number}`)
  const desk = number.slice(0, 6) as DeskId
  return { desk, serial: Number(number.slice(6, 10)), part: number.charAt(10) as Part }
}

/** The kit whose labels a bag, card or stub belongs to: they share desk and serial. */
export function kitOf(number: SampleNumber): KitNumber {
  const { desk, serial } = numberParts(number)
  return kitNumber(desk, serial)
}

/** As people read it out: `26-KRV-A0042-L-7`. */
export function grouped(number: SampleNumber): string {
  return number.replace(/^(..)(...)(.....)(.)(.)$/, '$1-$2-$3-$4-$5')
}

const toDigit: Record<string, string> = {
  O: '0',
  Q: '0',
  I: '1',
  L: '1',
  Z: '2',
  S: '5',
  B: '8',
  G: '6',
}
const toLetter: Record<string, string> = { '1': 'L', I: 'L' }

function lookAlikesPutRight(text: string): string {
  return [...text]
    .map((character, place) => {
      if (place < 2 || (place >= 6 && place < 10)) return toDigit[character] ?? character
      return place === 10 ? (toLetter[character] ?? character) : character
    })
    .join('')
}

/** Scanner decorations taken off: symbology identifier (ISO/IEC 15424), group separators, spaces, hyphens. */
function bare(text: string): string {
  const withoutSymbology = text.trim().replace(/^\](?:C[0-4]|d[0-6])/, '')
  return [...withoutSymbology]
    .filter((character) => character > ' ' && character !== '-')
    .join('')
    .toUpperCase()
}

/** Characters of a number. */
const numberLength = 12
/** What scanners are set to put around what they read: GS1 application identifiers, letters, a site code. */
const mostAround = 12

/**
 * The number itself, look-alikes put right. Where more was read, the one number within it that is exactly
 * right, check character included; if there is none, or more than one, all of it.
 */
function unwrapped(text: string): string {
  if (text.length <= numberLength || text.length > numberLength + mostAround)
    return lookAlikesPutRight(text)
  const starts = Array.from({ length: text.length - numberLength + 1 }, (_, start) => start)
  const within = starts
    .map((start) => text.slice(start, start + numberLength))
    .filter(isNumberOf(Part.options.join('')))
  const [number, ...others] = within
  if (number === undefined || others.length > 0) return lookAlikesPutRight(text)
  // One more letter or digit is a key struck twice, and no setting of a scanner.
  return /^[0-9A-Z]$/.test(text.replace(number, '')) ? text : number
}

/** What was typed, in the groups of the printed label, for comparing the two by eye. */
export function groupedAsTyped(text: string): string {
  return bare(text).replace(/^(..)(...)(.....)(.)(.)$/, '$1-$2-$3-$4-$5')
}

/**
 * Reads a scanned or typed number; the check character is verified before anything else happens.
 * Refuses with `not-a-sample-number` or `check-character-wrong`.
 */
export function readSampleNumber(text: string): Result<SampleNumber> {
  const tidy = unwrapped(bare(text))
  const read = shape.exec(tidy)
  if (!read)
    return refused(
      'not-a-sample-number',
      `"${text.trim().slice(0, 40)}" is not one of our numbers: they look like 26-KRV-A0042-L-7.`,
      'Scan the label again, or type the twelve characters printed on it.',
    )
  if (checkCharacter(tidy.slice(0, -1)) !== read[6])
    return refused(
      'check-character-wrong',
      `The last character of ${tidy} does not fit the others, so one of them was misread.`,
      'Compare with the label and type it again, or scan it.',
    )
  return granted(SampleNumber.parse(tidy))
}

/** Reads a number that must be stuck on one of `parts`; refuses `wrong-label` naming both. */
export function readNumberFor(parts: readonly Part[], text: string): Result<SampleNumber> {
  const read = readSampleNumber(text)
  if (!read.ok) return read
  const { part } = numberParts(read.value)
  if (parts.includes(part)) return read
  return refused(
    'wrong-label',
    `That is ${labelInWords(part)}, not ${labelInWords(...parts)}.`,
    `Scan the ${parts.map((each) => partWords[each]).join(' or ')} label.`,
  )
}
