/** The one fold: what an entry does to the read tables, whenever and wherever it is folded. */
import {
  type Entry,
  type EntryKind,
  entryBodies,
  isKnownKind,
  type KnownEntry,
} from '../../shared-types/entry.ts'
import { folds } from './folds.ts'
import type { RowWrite } from './row-write.ts'

/** What entries of one kind do to the read tables. Pure: from the entry alone, no reads, no clock. */
export type Fold<K extends EntryKind> = (
  entry: Extract<KnownEntry, { kind: K }>,
) => readonly RowWrite[]

/** Every kind has its fold; one that changes no table answers with no writes. */
export type Folds = { readonly [K in EntryKind]: Fold<K> }

/** The row writes of an entry of a kind and body that this version knows. */
export function foldKnown(entry: KnownEntry): readonly RowWrite[] {
  // The kind picks the fold, so the two match; the compiler cannot follow that through a union.
  return (folds[entry.kind] as Fold<EntryKind>)(entry)
}

/**
 * The entry with its body read by the schema of its kind, or null if this version does not know the
 * kind or the body: an entry of a later version is kept and passed on, not guessed at.
 */
export function understood(entry: Entry): KnownEntry | null {
  if (!isKnownKind(entry.kind)) return null
  const body = entryBodies[entry.kind].safeParse(entry.body)
  return body.success ? ({ ...entry, body: body.data } as KnownEntry) : null
}
