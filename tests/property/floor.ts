/**
 * A station floor on which anything may be tried in any order: deeds as people would do them, right and
 * wrong, each told to a real desk. What the desk grants is kept in a plain model beside it.
 */
import { copyFileSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { basename, join } from 'node:path'
import Database from 'better-sqlite3'
import { createDesk, type Session } from '../../electron/desk/desk.ts'
import type { CallInput, CallName, CallOutput } from '../../shared-types/desk-api.ts'
import type { Result } from '../../shared-types/result.ts'
import {
  type BagNumber,
  bagNumber,
  numberParts,
  type PersonId,
} from '../../shared-types/sample-number.ts'
import { type Crew, openingMs, openStation } from '../support/desk.ts'

/** A station already set up, to begin each run from a copy of its log. */
export interface Start {
  readonly file: string
  readonly crew: Crew
  readonly kits: readonly string[]
  readonly end: () => Promise<void>
}

export async function stationToStartFrom(): Promise<Start> {
  const { desk, crew } = await openStation({ kits: 30, blankLabels: 300 })
  const { kits } = await desk.ask('labels.printKits', {
    for: { whom: 'reserve', count: 12 },
    stock: 'sheet-letter',
  })
  await desk.ask('shelf.shut', {})
  return { file: desk.file, crew, kits, end: () => desk.end() }
}

export class Floor {
  readonly #folder = mkdtempSync(join(tmpdir(), 'duskline-floor-'))
  readonly #file: string
  readonly #reader: Database.Database
  #now = openingMs + 60_000
  readonly #desk = createDesk({
    folder: this.#folder,
    now: () => this.#now,
    zone: 'America/Denver',
    randomBytes: (count) => new Uint8Array(count),
  })
  readonly #session: Session = this.#desk.openSession()
  readonly crew: Crew
  readonly people: readonly PersonId[]
  readonly animals: string[] = []
  readonly kits: string[]
  readonly coolers: string[] = []
  readonly handoffs: string[] = []
  readonly seals: string[] = []
  /** Where each bag should be, by nothing but the deeds that were granted. */
  readonly bagsAt = new Map<string, string>()
  readonly tags = new Set<string>()

  constructor({ file, crew, kits }: Start) {
    this.#file = join(this.#folder, basename(file))
    copyFileSync(file, this.#file)
    this.#reader = new Database(this.#file, { readonly: true, fileMustExist: true })
    this.crew = crew
    this.people = [crew.lead, crew.sampler, crew.volunteer]
    this.kits = [...kits]
  }

  async open(): Promise<void> {
    await this.#desk.call(this.#session, 'shelf.open', { file: basename(this.#file) })
    // Signed in already: what a PIN is for is tested elsewhere, and slow by intent.
    this.#session.person = this.crew.lead
  }

  /** Someone else sits down at the window. */
  turnTo(person: PersonId): void {
    this.#session.person = person
  }

  pass(minutes: number): void {
    this.#now += minutes * 60_000
  }

  /** Tells the desk; a refusal must have written nothing. */
  async tell<N extends CallName>(name: N, input: CallInput<N>): Promise<Result<CallOutput<N>>> {
    const before = this.entries
    const result = await this.#desk.call(this.#session, name, input)
    if (!result.ok && this.entries !== before) throw new Error(`${name} was refused, yet wrote`)
    return result
  }

  get entries(): number {
    return this.#reader.prepare('SELECT count(*) FROM entry').pluck().get() as number
  }

  /** The rows of a table, read past the desk. */
  table(name: string): readonly Record<string, unknown>[] {
    return this.#reader.prepare(`SELECT * FROM "${name}"`).all() as Record<string, unknown>[]
  }

  get path(): string {
    return this.#file
  }

  /** Every bag label that the known kits could have. */
  get bagLabels(): BagNumber[] {
    return this.kits.flatMap((kit) => {
      const { desk, serial } = numberParts(kit as never)
      return [bagNumber(desk, serial, 'L'), bagNumber(desk, serial, 'R')]
    })
  }

  async shut(): Promise<void> {
    this.#reader.close()
    await this.#desk.close()
  }

  async end(): Promise<void> {
    await this.shut()
    rmSync(this.#folder, { recursive: true, force: true })
  }
}
