/**
 * Rows out of a damaged file, page by page, without the tree that should lead to them. Whatever is
 * found is only a candidate: an entry is believed by its hash, a contact by its digest.
 * Source: SQLite database file format, sections 1.6 "B-tree Pages" and 2.1 "Record Format", and 4
 * "The Write-Ahead Log" (sqlite.org/fileformat2.html).
 */

/** A value of a record; `undefined` for one that could not be read. */
export type Cell = string | number | null | undefined

export interface Pages {
  readonly size: number
  /** Bytes of a page that hold content. */
  readonly usable: number
  readonly count: number
  /** The page of this number, from 1; undefined where the file ends before it. */
  readonly page: (number: number) => Buffer | undefined
}

const leafOfTable = 13
const leafOfIndex = 10
const insideOfIndex = 2

/** The pages of a file, with those of the write-ahead log beside it laid over them. */
export function pagesOf(file: Buffer, wal: Buffer | null): Pages | null {
  if (file.length < 100) return null
  const stated = file.readUInt16BE(16)
  const size = stated === 1 ? 65_536 : stated
  if (size < 512 || (size & (size - 1)) !== 0) return null
  const over = wal === null ? new Map<number, Buffer>() : framesOf(wal, size)
  return {
    size,
    usable: size - file.readUInt8(20),
    count: Math.max(Math.ceil(file.length / size), ...over.keys()),
    page: (number) => over.get(number) ?? slice(file, (number - 1) * size, size),
  }
}

function slice(bytes: Buffer, start: number, length: number): Buffer | undefined {
  return start + length <= bytes.length ? bytes.subarray(start, start + length) : undefined
}

/** The last state of each page in a write-ahead log, up to its last commit. */
function framesOf(wal: Buffer, size: number): Map<number, Buffer> {
  const committed = new Map<number, Buffer>()
  const pending = new Map<number, Buffer>()
  for (let at = 32; at + 24 + size <= wal.length; at += 24 + size) {
    pending.set(wal.readUInt32BE(at), wal.subarray(at + 24, at + 24 + size))
    if (wal.readUInt32BE(at + 4) === 0) continue
    for (const [number, page] of pending) committed.set(number, page)
    pending.clear()
  }
  return committed
}

/** Every record of so many columns on any page that looks like one of a table or of an index. */
export function* recordsOf(pages: Pages, columns: ReadonlySet<number>): Generator<Cell[]> {
  for (let number = 1; number <= pages.count; number += 1) {
    const page = pages.page(number)
    if (page === undefined) continue
    for (const payload of payloadsOf(pages, page, number === 1 ? 100 : 0)) {
      const record = recordIn(payload, columns)
      if (record !== null) yield record
    }
  }
}

/** What lies on a page of a table or an index; `head` is where the page's own header begins. */
export function* payloadsOf(pages: Pages, page: Buffer, head: number): Generator<Buffer> {
  const kind = page[head] ?? 0
  if (![leafOfTable, leafOfIndex, insideOfIndex].includes(kind)) return
  const cells = page.readUInt16BE(head + 3)
  const pointers = head + (kind === insideOfIndex ? 12 : 8)
  for (let cell = 0; cell < cells && pointers + 2 * cell + 2 <= page.length; cell += 1) {
    const payload = payloadAt(pages, page, page.readUInt16BE(pointers + 2 * cell), kind)
    if (payload !== null) yield payload
  }
}

/** A payload longer than this is none of ours: the longest entry is a signed manifest. */
const longest = 16 * 1024 * 1024

function payloadAt(pages: Pages, page: Buffer, start: number, kind: number): Buffer | null {
  const at = new Place(page, kind === insideOfIndex ? start + 4 : start)
  const length = at.varint()
  if (kind === leafOfTable) at.varint()
  if (length < 2 || length > longest) return null
  const here = localLength(pages.usable, length, kind)
  if (at.offset + here > page.length) return null
  const local = page.subarray(at.offset, at.offset + here)
  return here === length ? local : withOverflow(pages, page, at.offset + here, local, length)
}

/** How much of a payload lies on its own page. */
function localLength(usable: number, length: number, kind: number): number {
  const most = kind === leafOfTable ? usable - 35 : Math.floor(((usable - 12) * 64) / 255) - 23
  if (length <= most) return length
  const least = Math.floor(((usable - 12) * 32) / 255) - 23
  const kept = least + ((length - least) % (usable - 4))
  return kept <= most ? kept : least
}

function withOverflow(
  pages: Pages,
  page: Buffer,
  pointer: number,
  local: Buffer,
  length: number,
): Buffer | null {
  if (pointer + 4 > page.length) return null
  const parts = [local]
  let [got, next] = [local.length, page.readUInt32BE(pointer)]
  while (got < length) {
    const over = pages.page(next)
    if (over === undefined || next === 0) return null
    const part = over.subarray(4, 4 + Math.min(length - got, pages.usable - 4))
    parts.push(part)
    got += part.length
    next = over.readUInt32BE(0)
  }
  return Buffer.concat(parts, length)
}

/** The place of the last row on a leaf of a table. */
export function rowidAt(page: Buffer, head: number): number {
  const last = page.readUInt16BE(head + 3) - 1
  const at = new Place(page, page.readUInt16BE(head + 8 + 2 * last))
  at.varint()
  return at.varint()
}

/** The cells of a record of one of these numbers of columns, or of any; null if it is none. */
export function recordIn(payload: Buffer, columns: ReadonlySet<number> | null): Cell[] | null {
  const at = new Place(payload, 0)
  const headEnd = at.varint()
  if (headEnd < 2 || headEnd > payload.length || headEnd > 128) return null
  const types: number[] = []
  while (at.offset < headEnd) types.push(at.varint())
  if (columns?.has(types.length) === false || at.offset !== headEnd) return null
  return types.map((type) => at.cell(type))
}

const utf8 = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true })

/** A place in bytes, moving on as values are read; beyond the end everything reads as nothing. */
class Place {
  readonly #bytes: Buffer
  offset: number

  constructor(bytes: Buffer, offset: number) {
    this.#bytes = bytes
    this.offset = offset
  }

  varint(): number {
    let value = 0
    for (let count = 0; count < 8; count += 1) {
      const byte = this.#bytes[this.offset] ?? 0
      this.offset += 1
      value = value * 128 + (byte & 127)
      if (byte < 128) return value
    }
    this.offset += 1
    return value * 256 + (this.#bytes[this.offset - 1] ?? 0)
  }

  cell(type: number): Cell {
    if (type === 0) return null
    if (type === 8) return 0
    if (type === 9) return 1
    const length = type >= 12 ? Math.floor((type - 12) / 2) : [0, 1, 2, 3, 4, 6, 8][type]
    if (length === undefined || length > longest) return undefined
    const bytes = this.#bytes.subarray(this.offset, this.offset + length)
    this.offset += length
    if (bytes.length !== length) return undefined
    if (type >= 12) return type % 2 === 1 ? textOf(bytes) : undefined
    return length === 8 ? Number(bytes.readBigInt64BE()) : bytes.readIntBE(0, length)
  }
}

function textOf(bytes: Buffer): string | undefined {
  try {
    return utf8.decode(bytes)
  } catch {
    return undefined
  }
}
