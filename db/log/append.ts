/** Writing: one action of a person, one transaction, entries and read tables together. */
import {
  type Entry,
  type EntryDraft,
  formatVersion,
  isKnownKind,
} from '../../shared-types/entry.ts'
import type { Result } from '../../shared-types/result.ts'
import type { PersonId } from '../../shared-types/sample-number.ts'
import { type Stamp, zeroStamp } from '../../shared-types/stamp.ts'
import { canonicalJson, type Json } from '../canonical-json.ts'
import { connectionOf, ReadableLog, type WritableLog } from '../connection.ts'
import { foldKnown, understood } from '../fold/fold.ts'
import { applyRowWrites } from '../fold/row-write.ts'
import { inTransaction } from '../transaction.ts'
import { clockSetBack, noteWallTime } from './desk-clock.ts'
import { fileGone } from './file-mark.ts'
import { chainStart, entryHash, type UnsealedEntry } from './hash-chain.ts'
import { tick } from './hybrid-clock.ts'
import { type Head, headOf, latestStamp } from './read-entries.ts'
import { storeEntry } from './store-entry.ts'

/** When an action happens and who does it. */
export interface Occasion {
  /** The laptop's wall clock, in milliseconds since 1970-01-01 UTC. */
  readonly now: number
  /** The person signed in; null before there is one. */
  readonly by: PersonId | null
  /** The lead stands by a clock that reads earlier than the log. For that one command only. */
  readonly acceptClock?: boolean
}

/**
 * Does one action: everything it appends is on disk when this returns granted, and nothing of it
 * when this returns refused. `act` reads and appends through the transaction it is given.
 *
 * Refuses with `file-gone` or `clock-set-back` before `act` is called, and with `disk-full`,
 * `disk-failed`, `medium-read-only`, `log-in-use` or `torn` when the medium fails; else with what
 * `act` refuses.
 * An exception of `act` is a bug: nothing is written and it is thrown on.
 */
export function transact<T>(
  log: WritableLog,
  occasion: Occasion,
  act: (tx: LogTransaction) => Result<T>,
): Result<T> {
  const gone = fileGone(log)
  if (gone) return gone
  return inTransaction(connectionOf(log), () => {
    const tx = new LogTransaction(log, occasion)
    return clockSetBack(tx, occasion) ?? act(tx)
  })
}

/** The log during one action: it reads what it has already appended. Of no use afterwards. */
export class LogTransaction extends ReadableLog {
  readonly #occasion: Occasion
  #head: Head | undefined
  #last: Stamp = zeroStamp

  constructor(log: WritableLog, occasion: Occasion) {
    super(connectionOf(log), log.path, log.desk, log.format)
    this.#occasion = occasion
  }

  /** Appends facts in order and folds them into the read tables; answers with the entries made. */
  append(drafts: readonly EntryDraft[]): Entry[] {
    if (!connectionOf(this).inTransaction) throw new Error('this action is over')
    return drafts.map((draft) => this.#appendOne(draft))
  }

  #appendOne(draft: EntryDraft): Entry {
    const before = this.#head ?? this.#begin()
    this.#last = tick(this.#last, this.#occasion.now)
    const text = canonicalJson(draft.body as unknown as Json)
    const unsealed = this.#unsealed(draft, before.seq + 1, text)
    const hash = entryHash(before.hash, unsealed, text)
    const entry = { ...unsealed, prev: before.hash, hash }
    const known = understood(entry)
    // It would be on disk and in no table; only an entry of a later version may be that.
    if (known === null && isKnownKind(draft.kind) && draft.v <= formatVersion)
      throw new Error(`the body of a ${draft.kind} does not fit its own schema`)
    storeEntry(this, entry, text)
    applyRowWrites(connectionOf(this), known === null ? [] : foldKnown(known))
    this.#head = entry
    return entry
  }

  /** The entry with its body as a rebuild will read it: the fold sees the same thing both times. */
  #unsealed({ kind, v }: EntryDraft, seq: number, text: string): UnsealedEntry {
    const body = JSON.parse(text) as Entry['body']
    const { now, by } = this.#occasion
    return { desk: this.desk, seq, at: { ...this.#last, wall: now }, by, kind, v, body }
  }

  /** Where the chain and the clock stand before the first entry of this action. */
  #begin(): Head {
    noteWallTime(this, this.#occasion)
    this.#last = latestStamp(this)
    return headOf(this, this.desk) ?? { seq: 0, hash: chainStart }
  }
}
