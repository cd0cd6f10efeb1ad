/**
 * What a row of somebody's file proves by itself. An entry is taken in if it hashes to what it says:
 * a rule for each row alone, so that what a merge takes in never depends on the order of files.
 */
import { DeskId, PersonId } from '../../shared-types/sample-number.ts'
import { entryHash } from '../log/hash-chain.ts'
import type { EntryTable } from '../schema.ts'

/** A row as found, before anything is believed of it. */
export type FoundRow = { readonly [K in keyof EntryTable]: unknown }

const hex64 = /^[0-9a-f]{64}$/
const kindShape = /^[a-z]+\.[a-z-]+$/
const isWhole = (value: unknown) => Number.isSafeInteger(value) && (value as number) >= 0

/** The row as an entry, if every column is what an entry's may be and the hash holds; else null. */
export function provedRow(row: FoundRow): EntryTable | null {
  return isEntryShaped(row) && hashHolds(row) && isObjectText(row.body) ? row : null
}

function isEntryShaped(row: FoundRow): row is EntryTable {
  return (
    isDesk(row.desk) &&
    [row.seq, row.ms, row.n, row.wall, row.v].every(isWhole) &&
    Number(row.seq) >= 1 &&
    Number(row.v) >= 1 &&
    (row.by === null || isPerson(row.by)) &&
    isKind(row.kind) &&
    isText(row.prev, hex64) &&
    typeof row.hash === 'string' &&
    typeof row.body === 'string'
  )
}

function isText(value: unknown, shape: RegExp): boolean {
  return typeof value === 'string' && shape.test(value)
}

const desks = new Map<string, boolean>()
const persons = new Map<string, boolean>()

export const isDesk = (value: unknown): boolean =>
  remembered(desks, value, (text) => DeskId.safeParse(text).success)
export const isPerson = (value: unknown): boolean =>
  remembered(persons, value, (text) => PersonId.safeParse(text).success)
export const isKind = (value: unknown): boolean => isText(value, kindShape)

/** A million entries name a few hundred desks and people: each is looked at once. */
function remembered(
  seen: Map<string, boolean>,
  value: unknown,
  look: (text: string) => boolean,
): boolean {
  if (typeof value !== 'string') return false
  const known = seen.get(value)
  if (known !== undefined) return known
  // A file made to be hostile must not fill the memory.
  if (seen.size > 10_000) seen.clear()
  const answer = look(value)
  seen.set(value, answer)
  return answer
}

function hashHolds({ ms, n, wall, body, prev, hash, ...rest }: EntryTable): boolean {
  if (!body.isWellFormed()) return false
  return entryHash(prev, { ...rest, at: { ms, n, wall } }, body) === hash
}

/** The hash holds for any text; only an object can be an entry's body, and one that the database reads too. */
export function isObjectText(body: string): boolean {
  if (!body.startsWith('{')) return false
  try {
    const value: unknown = JSON.parse(body)
    return body.length < 2 * deepest || !nestsDeeper(value, deepest)
  } catch {
    return false
  }
}

/** SQLite reads JSON down to level 1000 (sqlite.org/json1.html); no entry of ours has ten. */
const deepest = 500

function nestsDeeper(value: unknown, levels: number): boolean {
  if (typeof value !== 'object' || value === null) return false
  return levels === 0 || Object.values(value).some((each) => nestsDeeper(each, levels - 1))
}
