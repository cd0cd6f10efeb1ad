/** Data Matrix ECC 200 (ISO/IEC 16022) as drawn on the labels, against the standard's own examples. */
import { describe, expect, test } from 'vitest'
import { dataMatrixCells } from '../../electron/print/barcode.ts'

/** Where each bit lies in the 8 by 8 field of a 10 by 10 symbol: codeword.bit, annex F (from memory). */
const placement = `
  2.1 2.2 3.6 3.7 3.8 4.3 4.4 4.5
  2.3 2.4 2.5 5.1 5.2 4.6 4.7 4.8
  2.6 2.7 2.8 5.3 5.4 5.5 1.1 1.2
  1.5 6.1 6.2 5.6 5.7 5.8 1.3 1.4
  1.8 6.3 6.4 6.5 8.1 8.2 1.6 1.7
  7.2 6.6 6.7 6.8 8.3 8.4 8.5 7.1
  7.4 7.5 3.1 3.2 8.6 8.7 8.8 7.3
  7.7 7.8 3.3 3.4 3.5 4.1 4.2 7.6`
  .trim()
  .split('\n')
  .map((row) => row.trim().split(' '))

/** Data and error correction codewords read off a 10 by 10 symbol. */
function codewords(text: string): number[] {
  const { cells } = dataMatrixCells(text)
  const words = Array.from({ length: 8 }, () => 0)
  placement.forEach((row, y) =>
    row.forEach((place, x) => {
      const [word = 0, bit = 0] = place.split('.').map(Number)
      if (cells[y + 1]?.[x + 1]) words[word - 1] = (words[word - 1] ?? 0) + 2 ** (8 - bit)
    }),
  )
  return words
}

describe('Data Matrix', () => {
  test('of 123456 is the 10 by 10 symbol of the ISO/IEC 16022 annex, module for module', () => {
    const rows = ['AA8', 'CB4', 'C10', 'C74', 'C20', '83C', 'EC0', 'F64', '9D0', 'FFC']
    const published = rows.map((row) =>
      parseInt(row, 16).toString(2).padStart(12, '0').slice(0, 10),
    )
    const drawn = dataMatrixCells('123456').cells
    expect(drawn.map((row) => row.map(Number).join(''))).toEqual(published)
  })

  test('of 123456 has data 142 164 186 and error correction 114 25 5 88 102 (same annex)', () => {
    expect(codewords('123456')).toEqual([142, 164, 186, 114, 25, 5, 88, 102])
  })

  test('of A is padded to 66 129 70, error correction 138 234 82 82 95 (same annex)', () => {
    expect(codewords('A')).toEqual([66, 129, 70, 138, 234, 82, 82, 95])
  })

  test('has a solid left and lower edge and a broken upper and right one (ISO/IEC 16022 finder)', () => {
    const { cells } = dataMatrixCells('26KRVA0042LL')
    const last = cells.length - 1
    expect(cells.every((row) => row[0])).toBe(true)
    expect(cells[last]?.every(Boolean)).toBe(true)
    expect(cells[0]?.every((dark, column) => dark === (column % 2 === 0))).toBe(true)
    expect(cells.every((row, y) => row[last] === (y % 2 === 1))).toBe(true)
  })
})
