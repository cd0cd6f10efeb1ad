/** A desk over a folder of its own, with a clock the test sets and a station day to work on. */
import { createHash } from 'node:crypto'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { createDesk, type Desk, type Session } from '../../electron/desk/desk.ts'
import type { Printers } from '../../electron/print/printers.ts'
import type { AnimalFacts } from '../../shared-types/animal.ts'
import {
  type CallInput,
  type CallName,
  type CallOutput,
  deskApi,
} from '../../shared-types/desk-api.ts'
import type { Refusal } from '../../shared-types/result.ts'
import type {
  AnimalNumber,
  CoolerNumber,
  KitNumber,
  PersonId,
} from '../../shared-types/sample-number.ts'
import { imprintOf, logsIn } from './raw-log.ts'
import { factsOf, settings } from './station.ts'

export { factsOf, settings } from './station.ts'

export const leadPin = '4821'
export const crewPin = '1357'

/** Sat 14 Nov 2026, 06:00 in Denver. */
export const openingMs = Date.parse('2026-11-14T06:00:00-07:00')

export const setUpInput: CallInput<'station.setUp'> = {
  season: '26',
  station: 'KRV',
  letter: 'A',
  name: 'Cinder Gap',
  zone: 'America/Denver',
  date: '2026-11-14' as never,
  settings,
  lead: { name: 'Orla Vance', pin: leadPin },
  kits: 100,
  blankLabels: 1000,
}

export class TestDesk {
  readonly folder = mkdtempSync(join(tmpdir(), 'duskline-desk-'))
  now = openingMs
  #drawn = 0
  readonly desk: Desk
  /** The window that the calls below come from. */
  session: Session
  readonly #windows: Session[]

  /** It reaches no printers unless it is given some. */
  constructor(printers?: Printers) {
    this.desk = createDesk({
      folder: this.folder,
      now: () => this.now,
      zone: 'America/Denver',
      randomBytes: (count) => {
        this.#drawn += 1
        return createHash('shake256', { outputLength: count }).update(String(this.#drawn)).digest()
      },
      ...(printers && { printers }),
    })
    this.session = this.desk.openSession()
    this.#windows = [this.session]
  }

  /** Time passes. */
  wait(minutes: number): void {
    this.now += minutes * 60_000
  }

  /** What the desk answers; the answer must be as its contract says. */
  async ask<N extends CallName>(name: N, input: CallInput<N>): Promise<CallOutput<N>> {
    const result = await this.desk.call(this.session, name, input)
    if (!result.ok) throw new Error(`${name} refused: ${JSON.stringify(result.refusal)}`)
    const checked = deskApi[name].output.safeParse(result.value)
    if (!checked.success) throw new Error(`${name} broke its contract: ${checked.error.message}`)
    return result.value
  }

  /** The refusal of a call that must be refused, and must have left no trace in any log. */
  async refusal(name: string, input: unknown): Promise<Refusal> {
    const before = imprintOf(this.folder)
    const result = await this.desk.call(this.session, name, input)
    if (result.ok) throw new Error(`${name} was granted`)
    if (imprintOf(this.folder) !== before) throw new Error(`${name} was refused, yet wrote`)
    for (const sentence of [result.refusal.say, result.refusal.next])
      if (!/^["A-Za-z0-9_].*\.$/s.test(sentence)) throw new Error(`no sentence: ${sentence}`)
    return result.refusal
  }

  /** The code of that refusal. */
  async code<N extends CallName>(name: N, input: CallInput<N>): Promise<string> {
    return (await this.refusal(name, input)).code
  }

  /** Turns to the window where a person sits; opens one, signed in with the PIN, if there is none. */
  async sit(person: PersonId, pin = crewPin): Promise<void> {
    const seat = this.#windows.find((window) => window.person === person)
    this.session = seat ?? this.newWindow()
    if (!seat) await this.as(person, pin)
  }

  /** Opens one more window, at which nobody is signed in, and turns to it. */
  newWindow(): Session {
    this.session = this.desk.openSession()
    this.#windows.push(this.session)
    return this.session
  }

  /** The one log of the folder. */
  get file(): string {
    const [file = ''] = logsIn(this.folder)
    return join(this.folder, file)
  }

  async as(person: PersonId, pin = crewPin): Promise<void> {
    await this.ask('person.signIn', { person, pin })
  }

  async end(): Promise<void> {
    await this.desk.close()
    rmSync(this.folder, { recursive: true, force: true })
  }
}

export interface Crew {
  readonly lead: PersonId
  readonly sampler: PersonId
  readonly volunteer: PersonId
}

/** A station set up, with a sampler on duty who has kits in hand, and a volunteer. */
export async function openStation(
  changed: Partial<CallInput<'station.setUp'>> = {},
  printers?: Printers,
): Promise<{ desk: TestDesk; crew: Crew }> {
  const desk = new TestDesk(printers)
  const { lead } = await desk.ask('station.setUp', { ...setUpInput, ...changed })
  const add = (
    name: string,
    role: 'sampler' | 'volunteer',
    training: ('deer' | 'elk-and-moose')[],
  ) => desk.ask('person.add', { name, role, training, pin: crewPin })
  const { person: sampler } = await add('Ines Tarr', 'sampler', ['deer', 'elk-and-moose'])
  const { person: volunteer } = await add('Bo Quill', 'volunteer', [])
  await desk.ask('duty.change', { person: sampler, duty: 'on' })
  await desk.ask('kits.move', {
    from: { in: 'stock' },
    to: { in: 'hands', person: sampler },
    count: 20,
    reason: '',
  })
  return { desk, crew: { lead, sampler, volunteer } }
}

export async function checkIn(
  desk: TestDesk,
  changed: Partial<AnimalFacts> = {},
): Promise<AnimalNumber> {
  const { animal } = await desk.ask('animal.checkIn', { facts: factsOf(changed), contact: null })
  return animal
}

export async function kitFor(desk: TestDesk, animal: AnimalNumber): Promise<KitNumber> {
  const { kits } = await desk.ask('labels.printKits', {
    for: { whom: 'animal', animal },
    stock: 'roll-51x25',
  })
  return kits[0] as KitNumber
}

/** Both nodes of an animal taken, bagged and sealed; the bags are on the bench. */
export async function sampleBoth(desk: TestDesk, animal: AnimalNumber, sampler: PersonId) {
  const kit = await kitFor(desk, animal)
  await desk.ask('animal.assign', { animal, sampler })
  desk.wait(1)
  await desk.ask('kit.open', { animal, kit })
  const bags = []
  for (const site of ['left', 'right'] as const) {
    await desk.ask('tissue.check', { animal, site, check: 'lymph-node', sizeMm: 22 })
    const { sites } = await desk.ask('animal', { animal })
    const bag = sites.find((each) => each.site === site)?.expectedBag
    if (!bag) throw new Error('no bag is expected')
    await desk.ask('bag.seal', { animal, site, bag })
    bags.push(bag)
  }
  desk.wait(4)
  await desk.ask('animal.finish', { animal })
  return { kit, bags }
}

export async function openCooler(desk: TestDesk, name = 'North 1'): Promise<CoolerNumber> {
  const { cooler } = await desk.ask('cooler.open', { name, keeping: 'chilled', capacity: 60 })
  return cooler
}
