/** What a query or command is handed, and what it answers with. */
import type { ReadableLog, WritableLog } from '../../db/connection.ts'
import type { SealedContact } from '../../db/kept-apart.ts'
import type { LogTransaction } from '../../db/log/append.ts'
import type { Contact } from '../../shared-types/animal.ts'
import type {
  CallOutput,
  CommandName,
  ParsedInput,
  QueryName,
  Topic,
} from '../../shared-types/desk-api.ts'
import type { EntryDraft } from '../../shared-types/entry.ts'
import type { PersonRecord } from '../../shared-types/person.ts'
import type { Result } from '../../shared-types/result.ts'
import type { StationRecord } from '../../shared-types/station.ts'
import type { Printers } from '../print/printers.ts'
import type { Desk } from './desk.ts'
import type { Kept } from './kept/kept.ts'
import type { Machine } from './machine.ts'
import type { LivePractice } from './practice/live.ts'
import type { PinGuard } from './pin.ts'
import type { PrintRoom } from './print-room.ts'
import type { Shelf } from './shelf.ts'
import type { Session } from './session.ts'

/** The world outside, given by the host: nothing below it reads a clock or draws a random number. */
export interface DeskDeps {
  /** The folder in which the station logs lie. */
  readonly folder: string
  /** Wall milliseconds since 1970-01-01 UTC. */
  readonly now: () => number
  readonly randomBytes: (count: number) => Uint8Array
  /** The time zone of this laptop, for a station not set up yet. */
  readonly zone: string
  /** Runs something over and over, in real milliseconds; answers with how to stop. The usual timer, if absent. */
  readonly every?: (ms: number, run: () => void) => () => void
  /** What is set up here is marked as practice for ever. No call can ask for it, and no host does. */
  readonly practice?: true
  /** The laptop; absent where a log is only played, which is then free to be taken by any. */
  readonly machine?: Machine
  /** The least pause between two backups, in milliseconds, where it is not the usual one. */
  readonly backupPauseMs?: number
  /** The printers of this laptop; absent where they cannot be reached. */
  readonly printers?: Printers
  /** Where the keys of contacts are kept, if not beside the logs. */
  readonly keyFolder?: string
}

/** A call before any log is needed. */
export interface ShelfCall {
  readonly deps: DeskDeps
  readonly shelf: Shelf
  readonly live: LivePractice
  readonly kept: Kept
  readonly room: PrintRoom
  /** Tells every window what changed, where no entry does. */
  readonly tell: (topics: readonly Topic[]) => void
  readonly pins: PinGuard
  readonly session: Session
  readonly now: number
  /** Another desk, over another folder: at one a practice day is played before it is shown. */
  readonly anotherDesk: (deps: DeskDeps) => Desk
}

/** A query of a log, whether it is open at a desk or read from a file. */
export interface QueryCall {
  readonly log: ReadableLog
  readonly station: StationRecord
  /** Who asks, or null: then nothing that is kept apart is answered. */
  readonly person: PersonRecord | null
  readonly now: number
  /** Opens a sealed contact; null where its key is not. */
  readonly reveal: (sealed: SealedContact) => Contact | null
}

/** A call on the open log by anyone at the window. */
export interface OpenCall extends ShelfCall, QueryCall {
  readonly log: WritableLog
}

/** What a command decided: the facts to write, and the answer once they are on disk. */
export interface Decision<T> {
  readonly drafts: readonly EntryDraft[]
  readonly value: T
}

/** A command on the open log, by a person whose role may give it. */
export interface CommandCall extends OpenCall {
  readonly by: PersonRecord
  /**
   * Loads, decides and appends in one transaction. `decide` reads through `tx`, so that nothing it
   * has seen can change before its entries are written.
   */
  readonly act: <T>(
    decide: (tx: LogTransaction) => Result<Decision<T>>,
    occasion?: { readonly acceptClock: true },
  ) => Result<T>
}

type Answer<T> = Result<T> | Promise<Result<T>>
export type QueryHandler<N extends QueryName> = (
  call: QueryCall,
  input: ParsedInput<N>,
) => Answer<CallOutput<N>>
export type CommandHandler<N extends CommandName> = (
  call: CommandCall,
  input: ParsedInput<N>,
) => Answer<CallOutput<N>>

/** The calls that need no open log. */
export type ShelfCallName =
  | 'shelf.look'
  | 'shelf.open'
  | 'shelf.shut'
  | 'station.setUp'
  | 'practice.open'
  | 'practice.live'
  | 'practice.pace'
  | 'practice.end'
  | 'practice'
  | 'practice.score'
  | 'merge.look'
  | 'merge.begin'
  | 'merge.cancel'
  | 'office.setUp'
  | 'backup'
  | 'backup.restore'
  | 'desk.takeOver'
  | 'contacts'
  | 'light'
  | 'light.choose'
  | 'tour'
  | 'tour.take'
  | 'report'
  | 'printers'
  | 'printing'

export type ShelfHandlers = {
  readonly [N in ShelfCallName]: (call: ShelfCall, input: ParsedInput<N>) => Answer<CallOutput<N>>
}
/** Calls of people who have not signed in yet. */
export type OpenCallName = 'person.signIn' | 'person.lock' | 'person.here'
export type OpenHandlers = {
  readonly [N in OpenCallName]: (call: OpenCall, input: ParsedInput<N>) => Answer<CallOutput<N>>
}
export type QueryHandlers = {
  readonly [N in Exclude<QueryName, ShelfCallName>]: QueryHandler<N>
}
export type CommandHandlers = {
  readonly [N in Exclude<CommandName, ShelfCallName | OpenCallName>]: CommandHandler<N>
}
