/**
 * Walking a desk's chain from its first entry to its last. What holds of a whole chain:
 *
 * 1. the numbers run 1, 2, 3 ... with none missing;
 * 2. each entry hashes to what it says;
 * 3. each entry carries the hash of one with the number before, the first the chain's start;
 * 4. each entry's stamp is later than that of the one it follows.
 *
 * A number that is there twice is a fork: the file was copied and both copies went on. Both branches
 * can be whole, so a fork is told but is no damage. Entries taken off the end leave no trace in the
 * chain itself; the head printed on a manifest shows them, and so do the read tables.
 */
import { type Stamp, orderStamp, zeroStamp } from '../../shared-types/stamp.ts'
import type { DeskId } from '../../shared-types/sample-number.ts'
import { entryFinding, type Finding } from './finding.ts'
import { chainStart, entryHash } from './hash-chain.ts'
import type { Head } from './read-entries.ts'
import type { StoredEntry } from './stored-entries.ts'

/** All entries of one number, by hash: one, or one a branch. */
interface Place {
  readonly seq: number
  readonly stamps: Map<string, Stamp>
}

export interface DeskReport {
  readonly desk: DeskId
  readonly entries: number
  readonly head: Head
}

/** Walks one chain after another; give it every row in the order desk, seq, hash. */
export class ChainWalk {
  readonly findings: Finding[] = []
  readonly desks: DeskReport[] = []
  #before: Place = start()
  #here: Place = start()

  see(row: StoredEntry): void {
    this.#step(row)
    if (!hashHolds(row)) this.#find('altered', row, 'was altered after it was written.')
    this.#follow(row)
    this.#here.stamps.set(row.hash, { ms: row.ms, n: row.n })
    this.#note(row)
  }

  /** Goes on to the next number, or finds that this one is here already or that one is missing. */
  #step(row: StoredEntry): void {
    if (row.desk !== this.desks.at(-1)?.desk) this.#here = start()
    if (row.seq === this.#here.seq) return this.#fork(row)
    this.#before = this.#here
    this.#here = { seq: row.seq, stamps: new Map() }
    if (row.seq !== this.#before.seq + 1)
      this.#find(
        'gap',
        row,
        `does not follow entry ${this.#before.seq}: those between are missing.`,
      )
  }

  #fork(row: StoredEntry): void {
    if (this.#here.stamps.size === 1)
      this.#find('fork', row, 'is there more than once: a copy of the log was worked in as well.')
  }

  #follow(row: StoredEntry): void {
    if (row.seq !== this.#before.seq + 1) return
    const stamp = this.#before.stamps.get(row.prev)
    if (stamp === undefined)
      this.#find('broken-link', row, `does not follow the entry before it: that one was replaced.`)
    else if (orderStamp(stamp, { ms: row.ms, n: row.n }) >= 0)
      this.#find('clock-order', row, 'has an earlier time than the entry before it.')
  }

  #find(what: Finding['what'], { desk, seq }: StoredEntry, say: string): void {
    this.findings.push(entryFinding(what, desk, seq, say))
  }

  #note({ desk, seq, hash }: StoredEntry): void {
    const last = this.desks.at(-1)
    const entries = last?.desk === desk ? (this.desks.pop() as DeskReport).entries : 0
    this.desks.push({ desk, entries: entries + 1, head: { seq, hash } })
  }
}

function start(): Place {
  return { seq: 0, stamps: new Map([[chainStart, zeroStamp]]) }
}

const utf8 = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true })

function hashHolds(row: StoredEntry): boolean {
  const { ms, n, wall, body, prev, hash, ...rest } = row
  const text = decoded(body)
  return text !== null && entryHash(prev, { ...rest, at: { ms, n, wall } }, text) === hash
}

/** Null for bytes that are no UTF-8: read leniently, two different ones could look alike. */
function decoded(bytes: Buffer): string | null {
  try {
    return utf8.decode(bytes)
  } catch {
    return null
  }
}
