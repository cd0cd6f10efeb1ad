/** Desks on laptops that tell themselves apart, with a stick that goes between them. */
import { randomBytes } from 'node:crypto'
import { cpSync, mkdtempSync, readdirSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { onTestFinished } from 'vitest'
import { createDesk, type Desk, type Session } from '../../electron/desk/desk.ts'
import type { KeyStore } from '../../electron/desk/machine.ts'
import type { CallInput, CallName, CallOutput } from '../../shared-types/desk-api.ts'
import type { Refusal } from '../../shared-types/result.ts'
import { leadPin, openingMs, setUpInput } from '../support/desk.ts'

export const tempFolder = () => mkdtempSync(join(tmpdir(), 'duskline-laptop-'))

export class Laptop {
  readonly folder: string
  readonly desk: Desk
  readonly session: Session
  now = openingMs
  uptime = 0

  constructor(laptop: string, given: { folder?: string; keyStore?: KeyStore } = {}) {
    this.folder = given.folder ?? tempFolder()
    const uptime = () => this.uptime
    this.desk = createDesk({
      folder: this.folder,
      now: () => this.now,
      randomBytes,
      zone: 'America/Denver',
      machine: { laptop, uptime, keyStore: given.keyStore, about: { window: 'test' } },
      backupPauseMs: 10,
    })
    this.session = this.desk.openSession()
    onTestFinished(() => this.desk.close())
  }

  async ask<N extends CallName>(name: N, input: CallInput<N>): Promise<CallOutput<N>> {
    const result = await this.desk.call(this.session, name, input)
    if (!result.ok) throw new Error(`${name}: ${JSON.stringify(result.refusal)}`)
    return result.value
  }

  async refusal<N extends CallName>(name: N, input: CallInput<N>): Promise<Refusal> {
    const result = await this.desk.call(this.session, name, input)
    if (result.ok) throw new Error(`${name} was granted`)
    return result.refusal
  }

  setUp = () => this.ask('station.setUp', setUpInput)

  /** Signs the station's first lead in. */
  async signIn(): Promise<void> {
    const { people } = await this.ask('people', {})
    await this.ask('person.signIn', { person: people[0]?.person ?? '', pin: leadPin })
  }

  /** Begins to keep backups on a stick. */
  async plugIn(stick: string): Promise<void> {
    this.desk.offerBackupFolder(stick)
    const { others } = await this.ask('backup', {})
    await this.ask('backup.choose', { place: others.at(0)?.mark ?? '' })
  }

  /** Takes a log in by hand, as from a stick. */
  copyIn(from: string, file: string): void {
    cpSync(join(from, file), join(this.folder, file))
  }

  get logs(): string[] {
    return logsIn(this.folder)
  }
}

export const logsIn = (folder: string) =>
  readdirSync(folder).filter((file) => file.endsWith('.stationlog'))
