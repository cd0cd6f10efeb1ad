/**
 * Which desks' entries meet in a row of a read table. Entries of desks that are tied must be folded
 * together, in the order of a merged log; those of desks that are not may be folded apart.
 */
import type { KnownEntry } from '../../shared-types/entry.ts'
import type { Connection } from '../connection.ts'
import type { RowWrite } from '../fold/row-write.ts'

/** Two names that belong together: each a desk, or a row that belongs to none. */
export type Tie = readonly [desk: string, other: string]

/** Stands for everything: what it is tied to cannot be folded apart from anything. */
export const everything = '*'

type Cells = Readonly<Record<string, unknown>>

const none: Cells = {}

/** The desk that a number begins with; null for any other text. */
function deskOf(text: string): string | null {
  return /^\d\d[A-Z0-9]{3}[A-Z]/.test(text) ? text.slice(0, 6) : null
}

/** Gathers ties from what entries write while they are folded. */
export class Ties {
  readonly #connection: Connection
  readonly #firstKeys = new Map<string, string>()
  readonly #ties = new Map<string, Tie>()

  constructor(connection: Connection) {
    this.#connection = connection
  }

  get all(): Tie[] {
    return [...this.#ties.values()]
  }

  see({ desk, hash }: KnownEntry, writes: readonly RowWrite[]): void {
    for (const write of writes) {
      const [key, values] = 'row' in write ? [write.row, none] : [write.key, valuesOf(write)]
      this.#seeKey(desk, hash, write.table, key)
      this.#seeNumbers(desk, key)
      this.#seeNumbers(desk, values)
    }
  }

  /** A row is a desk's own if its key begins with the desk or with the hash of the very entry. */
  #seeKey(desk: string, hash: string, table: string, key: Cells): void {
    const first = key[this.#firstKeyOf(table)]
    if (first === undefined) return this.#seeOtherKey(desk, key)
    const text = typeof first === 'string' ? first : JSON.stringify(first)
    if (text.startsWith(desk) || text.startsWith(hash)) return
    this.#tie(desk, deskOf(text) ?? `${table} ${text}`)
  }

  /** Rows found by another column: whoever wrote that column is known only if it holds a number. */
  #seeOtherKey(desk: string, key: Cells): void {
    const isKnown = Object.values(key).some((cell) => typeof cell === 'string' && deskOf(cell))
    if (!isKnown) this.#tie(desk, everything)
  }

  #seeNumbers(desk: string, cells: Cells): void {
    for (const name in cells) {
      const cell = cells[name]
      if (typeof cell !== 'string' || cell.startsWith(desk)) continue
      const other = deskOf(cell)
      if (other !== null) this.#tie(desk, other)
    }
  }

  #tie(desk: string, other: string): void {
    this.#ties.set(`${desk} ${other}`, [desk, other])
  }

  #firstKeyOf(table: string): string {
    const known = this.#firstKeys.get(table)
    if (known !== undefined) return known
    const columns = this.#connection.pragma(`table_info("${table}")`) as {
      name: string
      pk: number
    }[]
    const first = columns.find(({ pk }) => pk === 1)?.name ?? ''
    this.#firstKeys.set(table, first)
    return first
  }
}

function valuesOf(write: RowWrite): Cells {
  return write.write === 'patch' ? write.values : none
}
