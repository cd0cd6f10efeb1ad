/** What a merge could not take in as an entry, kept in the merged log so that a person can look at it. */
import { z } from 'zod'
import { DeskId } from '../../shared-types/sample-number.ts'
import { canonicalJson, type Json } from '../canonical-json.ts'
import { sha256 } from '../log/hash-chain.ts'
import type { UnprovedTable } from '../schema.ts'

/** The end of a chain as far as a damaged file could be read. */
export const ReadHead = z.strictObject({
  desk: DeskId,
  seq: z.int().min(1),
  hash: z.string(),
})
export type ReadHead = z.infer<typeof ReadHead>

/** A damaged file by its SHA-256, with where its chains end and how many rows were beyond reading. */
export const DamagedFile = z.strictObject({
  file: z.string().regex(/^[0-9a-f]{64}$/),
  heads: z.array(ReadHead),
  unreadable: z.int().nonnegative(),
})
export type DamagedFile = z.infer<typeof DamagedFile>

/** An entry as it was found, which does not hash to what it says. */
export const AlteredRow = z.looseObject({ desk: z.string(), seq: z.int(), hash: z.string() })
export type AlteredRow = z.infer<typeof AlteredRow>

/**
 * The row to keep for what was found; null if it is of no known form. Everything in it follows from
 * `holds`, so that the same thing met twice is one row.
 */
export function unprovedRow(holds: Json): UnprovedTable | null {
  const damaged = DamagedFile.safeParse(holds)
  if (damaged.success) {
    const first = damaged.data.heads[0]
    return row('damaged-file', holds, first?.desk ?? null, first?.seq ?? null)
  }
  const altered = AlteredRow.safeParse(holds)
  const desk = DeskId.safeParse(altered.data?.desk)
  return altered.success ? row('altered', holds, desk.data ?? null, altered.data.seq) : null
}

function row(
  what: UnprovedTable['what'],
  holds: Json,
  desk: UnprovedTable['desk'],
  seq: number | null,
): UnprovedTable {
  const text = canonicalJson(holds)
  return { key: sha256(text), what, desk, seq, holds: text }
}
