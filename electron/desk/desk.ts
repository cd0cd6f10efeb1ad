/** The desk: the one implementation of the desk API, whichever host serves it. */
import { randomUUID } from 'node:crypto'
import type { WritableLog } from '../../db/connection.ts'
import type { SealedContact } from '../../db/kept-apart.ts'
import { type LogTransaction, transact } from '../../db/log/append.ts'
import { newerVersion } from '../../db/log/open-refusals.ts'
import { personOf } from '../../db/read/people.ts'
import { stationOf } from '../../db/read/station.ts'
import {
  type CallName,
  type CallOutput,
  deskApi,
  isCallName,
  isCommandName,
} from '../../shared-types/desk-api.ts'
import type { EntryDraft } from '../../shared-types/entry.ts'
import type { PersonRecord } from '../../shared-types/person.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import { checkAuthority } from '../station/authority.ts'
import type { CommandCall, Decision, DeskDeps, OpenCall, ShelfCall } from './call.ts'
import { commandHandlers, openHandlers, queryHandlers, shelfHandlers } from './handlers.ts'
import { badInput, noLogOpen, unknownCall } from './refusals.ts'
import { LivePractice } from './practice/live.ts'
import { PinGuard } from './pin.ts'
import { BackupKeeper } from './kept/backup-keeper.ts'
import { KeptChoices } from './kept/choices.ts'
import { openContact } from './kept/contacts.ts'
import { Diary } from './kept/diary.ts'
import type { Kept } from './kept/kept.ts'
import { KeyRing } from './kept/key-ring.ts'
import { nowhere } from './machine.ts'
import { PrintRoom } from './print-room.ts'
import { lockIfIdle, type Session } from './session.ts'
import { Shelf } from './shelf.ts'

export type { DeskDeps } from './call.ts'
export type { Session } from './session.ts'

export interface Desk {
  /** A new window: nobody is signed in at it. */
  openSession(): Session
  closeSession(session: Session): void
  /** Answers a call of the contract. Never throws for what came in; an exception is a bug. */
  call<N extends CallName>(
    session: Session,
    name: N,
    input: unknown,
  ): Promise<Result<CallOutput<N>>>
  call(session: Session, name: string, input: unknown): Promise<Result<unknown>>
  /** Tells which topics changed, after each change is on disk. Answers with how to stop listening. */
  watch(listener: (topics: readonly string[]) => void): () => void
  /** A folder of this laptop that its person picked outside the screens: the lead may choose it. */
  offerBackupFolder(folder: string): void
  /** The same for a folder of station logs: the office may merge from it. */
  offerLogsFolder(folder: string): void
  /** Keeps word of a fault of the program, for the report. */
  noteFault(where: string, fault: unknown): void
  /** Makes the last backup that is due, and puts the log away. */
  close(): Promise<void>
}

/** A backup follows a change after this long, in milliseconds. */
const usualBackupPauseMs = 15_000

/** Opens the desk over a folder of station logs. No log is open until one is chosen or set up. */
export function createDesk(deps: DeskDeps): Desk {
  return new OneDesk(deps)
}

/** The usual timer; it keeps no program running. */
function everyReal(ms: number, run: () => void): () => void {
  const timer = setInterval(run, ms)
  timer.unref()
  return () => clearInterval(timer)
}

class OneDesk implements Desk {
  readonly #deps: DeskDeps
  readonly #live: LivePractice
  readonly #shelf: Shelf
  readonly #pins = new PinGuard()
  readonly #kept: Kept
  readonly #room: PrintRoom
  readonly #uptime: () => number
  readonly #sessions = new Set<Session>()
  readonly #listeners = new Set<(topics: readonly string[]) => void>()

  constructor(deps: DeskDeps) {
    const { laptop, uptime, keyStore } = deps.machine ?? nowhere
    this.#live = new LivePractice({
      now: deps.now,
      every: deps.every ?? everyReal,
      call: (session, name, input) => this.call(session, name, input),
      openSession: () => this.openSession(),
      closeSession: (session) => this.closeSession(session),
      onNews: (isClockChanged) => this.#tell(isClockChanged ? ['practice', 'who'] : ['practice']),
    })
    // While a practice morning runs, its log goes by a clock of its own; any other by the laptop's.
    this.#deps = { ...deps, now: () => this.#live.now() }
    this.#uptime = uptime
    this.#shelf = new Shelf(deps.folder, laptop)
    this.#room = new PrintRoom({
      printers: deps.printers,
      onNews: () => this.#tell(['printing']),
    })
    const choices = new KeptChoices(deps.folder)
    this.#kept = {
      choices,
      ring: new KeyRing(deps.keyFolder ?? deps.folder, keyStore),
      diary: new Diary(deps.folder, deps.now),
      keeper: new BackupKeeper({
        folder: deps.folder,
        shelf: this.#shelf,
        choices,
        now: deps.now,
        pauseMs: deps.backupPauseMs ?? usualBackupPauseMs,
        onNews: () => this.#tell(['backup']),
      }),
    }
  }

  openSession(): Session {
    const session: Session = { id: randomUUID(), person: null }
    this.#sessions.add(session)
    return session
  }

  closeSession(session: Session): void {
    this.#sessions.delete(session)
  }

  watch(listener: (topics: readonly string[]) => void): () => void {
    this.#listeners.add(listener)
    return () => this.#listeners.delete(listener)
  }

  async close(): Promise<void> {
    this.#live.stop()
    await this.#room.close()
    await this.#kept.keeper.finish()
    this.#shelf.shut()
  }

  offerBackupFolder(folder: string): void {
    this.#kept.keeper.offer(folder)
  }

  offerLogsFolder(folder: string): void {
    this.#shelf.offered.add(folder)
    this.#tell(['merge'])
  }

  noteFault(where: string, fault: unknown): void {
    this.#kept.diary.noteFault(where, fault)
  }

  call<N extends CallName>(
    session: Session,
    name: N,
    input: unknown,
  ): Promise<Result<CallOutput<N>>>
  async call(session: Session, name: string, input: unknown): Promise<Result<unknown>> {
    if (!isCallName(name)) return unknownCall(name)
    this.#noteSeen(session, name)
    try {
      const result = await this.#answer(session, name, input)
      if (!result.ok) this.#live.noteRefused(session, result.refusal)
      if (!result.ok) this.#kept.diary.note('refused', { name, code: result.refusal.code })
      return result.ok || result.refusal.code !== 'file-gone' ? result : this.#rescue(result)
    } catch (fault) {
      this.#kept.diary.noteFault(name, fault)
      throw fault
    }
  }

  /** Only what a person does counts as being there; a screen asks again by itself. */
  #noteSeen(session: Session, name: CallName): void {
    if (lockIfIdle(session, this.#uptime())) this.#tell(['who'])
    if (isCommandName(name)) session.seenMs = this.#uptime()
  }

  /** The log's file is gone: what the desk still holds of it is written anew, and work goes on there. */
  #rescue(gone: Result<never>): Result<never> {
    const saved = this.#shelf.rescue()
    this.#kept.diary.note('file-gone', { rescued: saved.ok ? 'yes' : saved.refusal.code })
    if (!saved.ok) return gone
    this.#tell(['shelf'])
    return refused(
      'file-gone',
      `The file of the log was taken away beneath the desk. Every confirmed action is in ${saved.value}, which is open now.`,
      'Nothing of this last action was written: do it again.',
    )
  }

  async #answer(session: Session, name: CallName, input: unknown): Promise<Result<unknown>> {
    const parsed = deskApi[name].input.safeParse(input)
    if (!parsed.success) return badInput(parsed.error)
    const call: ShelfCall = {
      deps: this.#deps,
      shelf: this.#shelf,
      live: this.#live,
      kept: this.#kept,
      room: this.#room,
      tell: (topics) => this.#tell(topics),
      pins: this.#pins,
      session,
      now: this.#deps.now(),
      anotherDesk: (deps) => createDesk({ ...deps, keyFolder: this.#deps.folder }),
    }
    if (Object.hasOwn(shelfHandlers, name)) return this.#shelfCall(call, name, parsed.data)
    const log = this.#shelf.log
    if (!log) return noLogOpen()
    const result = await this.#logCall(call, log, name, parsed.data)
    if (name === 'desk.moveOut' && result.ok) {
      this.#signEveryoneOutBut(null)
      this.#tell(['shelf', 'who'])
    }
    // Another window may have put the log away while a PIN was being checked.
    return result.ok || this.#shelf.log === log ? result : noLogOpen()
  }

  async #shelfCall(call: ShelfCall, name: CallName, input: unknown): Promise<Result<unknown>> {
    const before = this.#shelf.log
    if (name === 'shelf.shut') await this.#kept.keeper.finish()
    const result = await handlerOf(shelfHandlers, name)(call, input)
    if (result.ok && name === 'light.choose') this.#tell(['light'])
    this.#live.keepTo(this.#shelf.log)
    if (this.#shelf.log !== before) {
      this.#signEveryoneOutBut(result.ok ? call.session : null)
      this.#tell(['shelf', 'who'])
    }
    return result
  }

  /** People are known by their log, so another log means signing in again. */
  #signEveryoneOutBut(keep: Session | null): void {
    for (const session of this.#sessions) if (session !== keep) session.person = null
  }

  async #logCall(
    shelfCall: ShelfCall,
    log: WritableLog,
    name: CallName,
    input: unknown,
  ): Promise<Result<unknown>> {
    const station = stationOf(log)
    if (!station) return noLogOpen()
    const { session } = shelfCall
    const person = personAt(log, session)
    const reveal = (sealed: SealedContact) => openContact(sealed, this.#kept.ring)
    const call: OpenCall = { ...shelfCall, log, station, person, reveal }
    if (Object.hasOwn(openHandlers, name)) return this.#openCall(call, name, input)
    if (!isCommandName(name))
      return queryAllowed(name, person) ?? handlerOf(queryHandlers, name)(call, input)
    const allowed = checkAuthority(person?.role ?? null, name)
    if (!allowed.ok) return allowed
    if (this.#shelf.isReadOnly) return newerVersion(log.path)
    return handlerOf(commandHandlers, name)(this.#commandCall(call, person as PersonRecord), input)
  }

  async #openCall(call: OpenCall, name: CallName, input: unknown): Promise<Result<unknown>> {
    const result = await handlerOf(openHandlers, name)(call, input)
    if (result.ok && name !== 'person.here') this.#tell(['who'])
    return result
  }

  #commandCall(call: OpenCall, by: PersonRecord): CommandCall {
    return {
      ...call,
      by,
      act: <T>(decide: (tx: LogTransaction) => Result<Decision<T>>, occasion = {}) => {
        const topics = new Set<string>()
        const when = { now: this.#deps.now(), by: by.person, ...occasion }
        const result = transact(call.log, when, (tx): Result<T> => {
          const decided = decide(tx)
          if (!decided.ok) return decided
          const { drafts, value } = decided.value
          tx.append(drafts)
          for (const each of drafts) topics.add(topicOf(each))
          return granted(value)
        })
        if (result.ok) this.#changed([...topics])
        return result
      },
    }
  }

  #changed(topics: readonly string[]): void {
    this.#kept.keeper.changed()
    this.#tell(topics)
  }

  #tell(topics: readonly string[]): void {
    if (topics.length > 0) for (const listener of this.#listeners) listener(topics)
  }
}

/** Who sits at a window. Someone who no longer works here is nobody from that moment on. */
function personAt(log: WritableLog, { person }: Session): PersonRecord | null {
  const known = person && personOf(log, person)
  return known?.active ? known : null
}

/** The topic of an entry: its kind up to the dot. */
function topicOf(draft: EntryDraft): string {
  return draft.kind.slice(0, draft.kind.indexOf('.'))
}

type Handler = (call: never, input: never) => Result<unknown> | Promise<Result<unknown>>

/** The name picks the handler, so input and call fit it; the compiler cannot follow that through. */
function handlerOf(handlers: object, name: CallName) {
  return (handlers as Record<string, Handler>)[name] as (
    call: ShelfCall,
    input: unknown,
  ) => Promise<Result<unknown>>
}

const beforeSignIn: readonly CallName[] = ['who', 'people', 'board']

/** Only who works here is shown before anyone has signed in. */
function queryAllowed(name: CallName, person: PersonRecord | null): Result<never> | null {
  if (person || beforeSignIn.includes(name)) return null
  return refused('sign-in-first', 'Nobody is signed in at this window.', 'Sign in with your PIN.')
}
