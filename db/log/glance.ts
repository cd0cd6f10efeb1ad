/**
 * What a log says of itself at a glance: a list of logs must not cost the reading of them all. Nothing is
 * opened and nothing beside the file changes; whether the file is sound only opening it tells.
 */
import { closeSync, existsSync, fstatSync, openSync, readSync } from 'node:fs'
import { DeskId, nobodysDesk } from '../../shared-types/sample-number.ts'
import { applicationId } from '../connection.ts'
import { latestFormat } from '../migrations/list.ts'
import type { Cell, Pages } from '../merge/page-walk.ts'
import { lastUnder, recordsUnder } from '../merge/page-tree.ts'
import { mergedName } from '../read/station.ts'

export interface Glance {
  readonly desk: DeskId
  readonly entries: number
  /** The latest stamp of any entry, in milliseconds; null if there is none. */
  readonly lastMs: number | null
  /** The own desk's station; null if it was never set up. */
  readonly station: {
    readonly desk: DeskId
    readonly name: string
    readonly practice: boolean
    readonly office: boolean
  } | null
}

/** Null where a glance does not do: part of the log lies beside the file, or it is not as expected. */
export function glanceAt(path: string): Glance | null {
  if (existsSync(`${path}-wal`) || existsSync(`${path}-shm`)) return null
  try {
    const file = openSync(path, 'r')
    try {
      return glanceIn(file)
    } finally {
      closeSync(file)
    }
  } catch {
    // Not there, not readable, or not a database: whoever opens it says which.
    return null
  }
}

function glanceIn(file: number): Glance | null {
  const pages = pagesIn(file)
  // Of another version the tables may look otherwise.
  if (pages === null || pages.format !== latestFormat) return null
  const roots = rootsIn(pages.pages)
  const under = (name: string) => recordsUnder(pages.pages, rootOf(roots, name))
  const desk = DeskId.safeParse([...under('own_desk')][0]?.[1])
  if (!desk.success) return null
  const last = lastUnder(pages.pages, rootOf(roots, 'entry'))
  const latest = lastUnder(pages.pages, rootOf(roots, 'entry_in_order'))
  return {
    desk: desk.data,
    // No entry is ever taken out, so that the place of the last one counts them.
    entries: last?.rowid ?? 0,
    lastMs: latest ? Number(latest.record[0]) : null,
    station: whoReads(desk.data, [...under('station')].map(stationIn)),
  }
}

/** The desk's own station; of a log merged and not taken up, the record as it is called. */
function whoReads(
  desk: DeskId,
  stations: readonly ReturnType<typeof stationIn>[],
): Glance['station'] {
  if (desk !== nobodysDesk) return stations.find((each) => each.desk === desk) ?? null
  const [first] = stations.toSorted((a, b) => (a.desk < b.desk ? -1 : 1))
  return first ? { ...first, desk, name: mergedName, office: true } : null
}

/** Columns in the order of the table: desk, name, zone, practice, office. */
function stationIn([desk, name, , practice, office]: Cell[]) {
  return {
    desk: String(desk) as DeskId,
    name: String(name),
    practice: practice === 1,
    office: office === 1,
  }
}

/** Where each table and index begins: columns type, name, tbl_name, rootpage, sql. */
function rootsIn(pages: Pages): Map<Cell, number> {
  return new Map([...recordsUnder(pages, 1)].map((row) => [row[1], Number(row[3])]))
}

function rootOf(roots: ReadonlyMap<Cell, number>, name: string): number {
  const root = roots.get(name)
  if (root === undefined) throw new RangeError(`no table ${name}`)
  return root
}

/** Source: SQLite database file format, section 1.3 "The Database Header". */
function pagesIn(file: number): { pages: Pages; format: number } | null {
  const header = Buffer.alloc(100)
  if (readSync(file, header, 0, 100, 0) < 100 || header.readInt32BE(68) !== applicationId)
    return null
  const size = header.readUInt16BE(16) === 1 ? 65_536 : header.readUInt16BE(16)
  const count = header.readUInt32BE(28)
  // A file cut short, or one whose header does not know its length, is read in full.
  if (size < 512 || fstatSync(file).size !== size * count) return null
  const page = (number: number) => {
    const bytes = Buffer.alloc(size)
    const isThere = number >= 1 && number <= count
    return isThere && readSync(file, bytes, 0, size, (number - 1) * size) === size
      ? bytes
      : undefined
  }
  const pages = { size, usable: size - header.readUInt8(20), count, page }
  return { pages, format: header.readUInt32BE(60) }
}
