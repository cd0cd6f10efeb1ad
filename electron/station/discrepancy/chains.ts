/** Discrepancies about the logs themselves: what is missing, altered, or there in two versions. */
import type { DeskId } from '../../../shared-types/sample-number.ts'
import type { Discrepancy, Side } from './discrepancy.ts'

export interface ForkFound {
  readonly desk: DeskId
  readonly seq: number
  readonly sides: readonly {
    readonly hash: string
    readonly entries: number
    readonly lastSeq: number
    readonly firstMs: number
    readonly lastMs: number
    /** What its first entries say. */
    readonly says: readonly string[]
  }[]
}

/** A log that was copied and worked in on both laptops. */
export function forks(found: readonly ForkFound[]): Discrepancy[] {
  return found.map(({ desk, seq, sides }) => ({
    kind: 'fork',
    evidence: sides.map(({ hash }) => hash).toSorted(),
    say: `The log of desk ${desk} divides at entry ${seq}: a copy of it was worked in as well.`,
    next: 'Ask which laptops had the log, and what each was used for from then on.',
    sides: sides.map(({ hash, entries, lastSeq, firstMs, says }, at) => ({
      key: hash,
      title: `Copy ${at + 1}: ${entries} ${entries === 1 ? 'entry' : 'entries'}, up to ${lastSeq}`,
      lines: says,
      desk,
      ms: firstMs,
    })),
  }))
}

/** A place in a chain that the evidence points at. */
interface Place {
  readonly desk: DeskId
  readonly seq: number
  readonly hash: string
}

function placeSide({ desk, hash }: Pick<Place, 'desk' | 'hash'>, title: string): Side {
  return { key: hash, title, lines: [`starts with ${hash.slice(0, 12)}`], desk, ms: null }
}

/** Entries that are missing from the middle or the beginning of a chain. */
export function gaps(
  found: readonly { desk: DeskId; before: number; after: number; hash: string }[],
): Discrepancy[] {
  return found.map(({ desk, before, after, hash }) => ({
    kind: 'gap',
    evidence: [desk, String(before), hash],
    say:
      after - before === 2
        ? `Entry ${after - 1} of desk ${desk} is missing.`
        : `Entries ${before + 1} to ${after - 1} of desk ${desk} are missing.`,
    next: "Merge another copy of this desk's log: the laptop itself, or its backup stick.",
    sides: [placeSide({ desk, hash }, `Entry ${after} follows what is missing`)],
  }))
}

/** Entries that follow one that nobody has. */
export function brokenChains(found: readonly Place[]): Discrepancy[] {
  return found.map((place) => ({
    kind: 'broken-chain',
    evidence: [place.hash],
    say: `Entry ${place.seq} of desk ${place.desk} follows another entry ${place.seq - 1} than the one here.`,
    next: "Merge another copy of this desk's log: one side of what happened is not here.",
    sides: [placeSide(place, `Entry ${place.seq}`)],
  }))
}

export interface AlteredFound {
  /** SHA-256 of the row as found. */
  readonly key: string
  readonly desk: DeskId | null
  readonly seq: number
  readonly kind: string
  /** Whether the entry as it was made came with another file. */
  readonly isHereUnaltered: boolean
}

/** Entries that do not hash to what they say: kept aside, in no table. */
export function alteredEntries(found: readonly AlteredFound[]): Discrepancy[] {
  return found.map(({ key, desk, seq, kind, isHereUnaltered }) => ({
    kind: 'altered',
    evidence: [key],
    say: `Entry ${seq} of desk ${desk ?? 'unknown'} was altered after it was written.`,
    next: isHereUnaltered
      ? 'The entry as it was made came with another file and is the one that counts.'
      : "Merge another copy of this desk's log, which may have the entry as it was made.",
    sides: [
      {
        key,
        title: `As found: ${kind}`,
        lines: [
          isHereUnaltered ? 'the unaltered entry is here too' : 'the unaltered entry is not here',
        ],
        desk,
        ms: null,
      },
    ],
  }))
}

export interface DamagedFound {
  readonly key: string
  readonly heads: readonly { readonly desk: DeskId; readonly seq: number; readonly here: number }[]
  readonly unreadable: number
}

/** Files that could be read in part. Whether more came after what was read, the file cannot say. */
export function damagedFiles(found: readonly DamagedFound[]): Discrepancy[] {
  return found.map(({ key, heads, unreadable }) => ({
    kind: 'damaged-file',
    evidence: [key],
    say: `A damaged file was read up to ${heads.map(({ desk, seq }) => `entry ${seq} of desk ${desk}`).join(', ') || 'no entry'}.`,
    next: 'Compare with the last number on its close sheet or manifest, and merge another copy if there is one.',
    sides: heads.map(({ desk, seq, here }) => ({
      key: desk,
      title: `Read up to entry ${seq}`,
      lines: [
        here > seq ? `another file goes on to entry ${here}` : 'no other file goes further',
        ...(unreadable === 0 ? [] : [`${unreadable} rows could not be read`]),
      ],
      desk,
      ms: null,
    })),
  }))
}
