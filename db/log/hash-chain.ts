/**
 * The chain: each entry carries the hash of the one before it, so none can be taken out or altered
 * without every later hash telling.
 *
 *     hash = SHA-256( prev || canonical JSON of {at, body, by, desk, kind, seq, v} )
 *
 * `prev` goes in as its 64 hex characters, so anyone can check a link with a text tool and
 * `sha256sum`. SHA-256: FIPS 180-4. Canonical JSON: RFC 8785.
 */
import { hash } from 'node:crypto'
import type { Entry } from '../../shared-types/entry.ts'
import { canonicalJson } from '../canonical-json.ts'

/** What stands before the first entry of a desk. */
export const chainStart = '0'.repeat(64)

/** An entry that is not yet chained. */
export type UnsealedEntry = Omit<Entry, 'prev' | 'hash'>

/** SHA-256 of the UTF-8 bytes of a text, as 64 lower-case hex characters. */
export function sha256(text: string): string {
  return hash('sha256', text)
}

/** The hash of an entry whose body is already canonical text, as the log stores it. */
export function entryHash(
  prev: string,
  entry: Omit<UnsealedEntry, 'body'>,
  bodyText: string,
): string {
  const { at, by, desk, kind, seq, v } = entry
  // Written out in the order of RFC 8785, member by member: a merge does this a million times.
  const time = `{"ms":${canonicalJson(at.ms)},"n":${canonicalJson(at.n)},"wall":${canonicalJson(at.wall)}}`
  const signed = `"by":${canonicalJson(by)},"desk":${canonicalJson(desk)},"kind":${canonicalJson(kind)}`
  const rest = `"seq":${canonicalJson(seq)},"v":${canonicalJson(v)}`
  return sha256(`${prev}{"at":${time},"body":${bodyText},${signed},${rest}}`)
}

/** Chains an entry to the hash of the one before it. */
export function sealEntry(entry: UnsealedEntry, prev: string): Entry {
  return { ...entry, prev, hash: entryHash(prev, entry, canonicalJson(entry.body)) }
}

/** Whether an entry is what its hash says, and follows the entry it claims to follow. */
export function checkLink(entry: Entry, before: Entry | null): 'whole' | 'altered' | 'broken-link' {
  if (entryHash(entry.prev, entry, canonicalJson(entry.body)) !== entry.hash) return 'altered'
  return entry.prev === (before?.hash ?? chainStart) ? 'whole' : 'broken-link'
}
