/** Animals whose bags went to the laboratory, and files that come back from it. */
import type { Contact } from '../../shared-types/animal.ts'
import type { ResultReading, ResultWord, WordMeans } from '../../shared-types/laboratory-result.ts'
import type { LocalDate } from '../../shared-types/local-date.ts'
import type { AnimalNumber, BagNumber } from '../../shared-types/sample-number.ts'
import {
  type Crew,
  factsOf,
  leadPin,
  openCooler,
  openStation,
  sampleBoth,
  type TestDesk,
} from './desk.ts'

export interface Delivered {
  readonly desk: TestDesk
  readonly crew: Crew
  readonly animals: readonly SentAnimal[]
}
export interface SentAnimal {
  readonly animal: AnimalNumber
  readonly left: BagNumber
  readonly right: BagNumber
}

export const contactOf = (at: number): Contact => ({
  name: `Hunter Number${at}`,
  phone: `555-01${String(at).padStart(2, '0')}`,
  email: `hunter${at}@example.org`,
})

/** So many deer with contacts, sampled on both sides and given to a courier; the lead sits at the desk. */
export async function delivered(count: number, contact?: Contact): Promise<Delivered> {
  const { desk, crew } = await openStation()
  const cooler = await openCooler(desk)
  const animals: SentAnimal[] = []
  for (let at = 0; at < count; at += 1) {
    const { animal } = await desk.ask('animal.checkIn', {
      facts: factsOf(),
      contact: contact ?? contactOf(at),
    })
    const { bags } = await sampleBoth(desk, animal, crew.sampler)
    const [left, right] = bags as [BagNumber, BagNumber]
    for (const bag of [left, right]) await desk.ask('bag.place', { bag, cooler })
    animals.push({ animal, left, right })
  }
  await desk.ask('cooler.seal', { cooler, seal: 'K-100' })
  const { handoff } = await desk.ask('handoff.begin', {
    destination: 'Basin Animal Disease Laboratory',
    coolers: [cooler],
  })
  const counted = count * 2
  await desk.ask('cooler.scanOut', {
    handoff,
    cooler,
    seal: 'K-100',
    celsius: 3,
    counted,
    words: '',
  })
  await desk.ask('handoff.sign', {
    asItIs: true,
    handoff,
    courier: { name: 'Tam Ridley', organisation: 'Basin Couriers', vehicle: 'van 7' },
    pin: leadPin,
    leadSignature: { how: 'on-paper' },
    courierSignature: { how: 'on-paper' },
  })
  desk.wait(20 * 24 * 60)
  return { desk, crew, animals }
}

export const laboratory = 'Basin Animal Disease Laboratory'

/** The words that most files of these tests use. */
export const usualWords: { said: string; means: WordMeans }[] = [
  { said: 'Not detected', means: 'not-detected' },
  { said: 'Detected', means: 'detected' },
  { said: 'Presumptive', means: 'presumptive' },
  { said: 'Unsuitable', means: 'unsuitable' },
  { said: 'Pending', means: 'pending' },
  { said: 'QC', means: 'skip' },
]

/** The reading of a file with the columns number, result, method and day. */
export function plainReading(changed: Partial<ResultReading> = {}): ResultReading {
  return {
    table: { is: 'text', encoding: 'utf-8', delimiter: ',' },
    linesAbove: 0,
    number: { at: 0, heading: 'Sample' },
    word: { at: 1, heading: 'Result' },
    method: { at: 2, heading: 'Method' },
    methodSaid: '',
    tested: { at: 3, heading: 'Tested' },
    testedOn: null,
    dateOrder: 'year-month-day',
    words: usualWords,
    ...changed,
  }
}

export const testedOn = '2026-11-24' as LocalDate

/** A file of those four columns. */
export function plainFile(
  rows: readonly (readonly [number: string, said: string, tested?: string])[],
) {
  const lines = rows.map(
    ([number, said, tested]) => `${number},${said},ELISA,${tested ?? testedOn}`,
  )
  return ['Sample,Result,Method,Tested', ...lines, ''].join('\n')
}

/** Brings a file to the desk in pieces, as the screen does. */
export async function bring(desk: TestDesk, bytes: string | Uint8Array, name = 'results.csv') {
  const all = Buffer.from(bytes as Uint8Array)
  let brought: string | null = null
  for (let from = 0; from === 0 || from < all.length; from += 600_000) {
    const base64 = all.subarray(from, from + 600_000).toString('base64')
    const answer: { brought: string } = await desk.ask('results.bring', { brought, name, base64 })
    brought = answer.brought
  }
  return brought ?? ''
}

/** Reads a file in. */
export async function readIn(
  desk: TestDesk,
  bytes: string | Uint8Array,
  reading: ResultReading = plainReading(),
  name = 'results.csv',
) {
  const brought = await bring(desk, bytes, name)
  return desk.ask('results.import', { brought, laboratory, reading })
}

const said: Record<ResultWord, string> = {
  'not-detected': 'Not detected',
  detected: 'Detected',
  presumptive: 'Presumptive',
  unsuitable: 'Unsuitable',
  pending: 'Pending',
}

/** Results of both sides of an animal. */
export function bothSides({ left, right }: SentAnimal, words: readonly [ResultWord, ResultWord]) {
  return [
    [left, said[words[0]]],
    [right, said[words[1]]],
  ] as const
}
