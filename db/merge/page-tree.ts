/**
 * Rows of a table straight from the pages of a sound file, of which only those on the way are read.
 * Source: SQLite database file format, section 1.6 "B-tree Pages" (sqlite.org/fileformat2.html).
 */
import { type Cell, type Pages, payloadsOf, recordIn, rowidAt } from './page-walk.ts'

const insideOfTable = 5
const insideOfIndex = 2
/** More levels than any file of ours has: one that goes round in circles is none. */
const deepest = 20

/** Every record of a small table or index, by the page its tree begins at. */
export function* recordsUnder(pages: Pages, root: number, level = 0): Generator<Cell[]> {
  const page = pageOf(pages, root)
  if (level > deepest) throw new RangeError('a tree that goes round in circles')
  const head = headOf(root)
  for (const child of childrenOf(page, head)) yield* recordsUnder(pages, child, level + 1)
  if (page[head] === insideOfTable) return
  for (const payload of payloadsOf(pages, page, head)) {
    const record = recordIn(payload, null)
    if (record !== null) yield record
  }
}

/** The last record of a table or index; null if it has none. */
export function lastUnder(pages: Pages, root: number): { rowid: number; record: Cell[] } | null {
  const leaf = lastLeaf(pages, root)
  const page = pageOf(pages, leaf)
  const payload = [...payloadsOf(pages, page, headOf(leaf))].at(-1)
  const record = payload && recordIn(payload, null)
  return record ? { rowid: rowidAt(page, headOf(leaf)), record } : null
}

function lastLeaf(pages: Pages, root: number): number {
  let number = root
  for (let level = 0; level < deepest; level += 1) {
    const last = childrenOf(pageOf(pages, number), headOf(number)).at(-1)
    if (last === undefined) return number
    number = last
  }
  throw new RangeError('a tree that goes round in circles')
}

const headOf = (number: number) => (number === 1 ? 100 : 0)

function pageOf(pages: Pages, number: number): Buffer {
  const page = pages.page(number)
  if (page === undefined) throw new RangeError(`no page ${number}`)
  return page
}

/** The pages that an inner page leads to, the last of them last; none for a leaf. */
function childrenOf(page: Buffer, head: number): number[] {
  const kind = page[head]
  if (kind !== insideOfTable && kind !== insideOfIndex) return []
  const cells = page.readUInt16BE(head + 3)
  const firsts = Array.from({ length: cells }, (_, cell) =>
    page.readUInt32BE(page.readUInt16BE(head + 12 + 2 * cell)),
  )
  return [...firsts, page.readUInt32BE(head + 8)]
}
