/** The letters and columns of a text file that does not say what they are. */
import { isUtf8 } from 'node:buffer'
import { parse } from 'csv-parse/sync'
import { FileDelimiter, type FileEncoding } from '../../../shared-types/laboratory-result.ts'

export interface Guess<T> {
  readonly is: T
  /** False: it cannot be known from the file, so a person is asked. */
  readonly sure: boolean
}

const startsWith = (bytes: Uint8Array, mark: readonly number[]) =>
  mark.every((byte, place) => bytes[place] === byte)

/** A byte order mark is certain (Unicode 15, section 23.8); so are letters that are sound UTF-8. */
export function guessEncoding(bytes: Uint8Array): Guess<FileEncoding> {
  if (startsWith(bytes, [0xef, 0xbb, 0xbf])) return { is: 'utf-8', sure: true }
  if (startsWith(bytes, [0xff, 0xfe])) return { is: 'utf-16le', sure: true }
  if (startsWith(bytes, [0xfe, 0xff])) return { is: 'utf-16be', sure: true }
  const start = bytes.subarray(0, 4000)
  const zeros = (from: number) => start.filter((byte, at) => at % 2 === from && byte === 0).length
  if (zeros(1) > start.length / 4) return { is: 'utf-16le', sure: false }
  if (zeros(0) > start.length / 4) return { is: 'utf-16be', sure: false }
  return isUtf8(bytes) ? { is: 'utf-8', sure: true } : { is: 'windows-1252', sure: false }
}

/** The text. Bytes that are no letter of the encoding become U+FFFD, which everybody can see. */
export function decoded(bytes: Uint8Array, encoding: FileEncoding): string {
  return new TextDecoder(encoding).decode(bytes)
}

/** Lines of cells; lines need not be of one length. A `sep=` line of a spreadsheet is no row. */
export function cutText(text: string, delimiter: FileDelimiter): string[][] {
  return parse(text.replace(/^sep=.\r?\n/i, '\n'), {
    delimiter,
    bom: true,
    trim: true,
    relax_column_count: true,
    relax_quotes: true,
    skip_empty_lines: false,
  })
}

/**
 * The separator by which most lines have the same number of cells; the more cells, the likelier, for
 * decimal commas cut every line in two as well.
 */
export function guessDelimiter(text: string): Guess<FileDelimiter> {
  const start = text.slice(0, 20_000).split(/\r?\n/).slice(0, 60).join('\n')
  const scores = FileDelimiter.options
    .map((is) => ({ is, score: evenness(start, is) }))
    .toSorted((a, b) => b.score - a.score)
  const [best, second] = scores
  if (!best || best.score === 0) return { is: ',', sure: false }
  return { is: best.is, sure: second === undefined || second.score < best.score * 0.8 }
}

/** The share of lines with the commonest number of cells, by how many these are; nought if it is one. */
function evenness(text: string, delimiter: FileDelimiter): number {
  const tally = new Map<number, number>()
  let lines = 0
  for (const row of rowsOrNone(text, delimiter)) {
    if (row.every((cell) => cell === '')) continue
    lines += 1
    tally.set(row.length, (tally.get(row.length) ?? 0) + 1)
  }
  const [most] = [...tally].toSorted((a, b) => b[1] - a[1])
  return most === undefined ? 0 : (Math.log2(most[0]) * most[1]) / lines
}

function rowsOrNone(text: string, delimiter: FileDelimiter): string[][] {
  try {
    return cutText(text, delimiter)
  } catch {
    return []
  }
}
