/** Code 128 (ISO/IEC 15417) as drawn on the labels, against published worked examples. */
import bwipjs from 'bwip-js/node'
import { describe, expect, test } from 'vitest'
import { code128Bars } from '../../electron/print/barcode.ts'
import { DeskId, bagNumber } from '../../shared-types/sample-number.ts'

/** Bar and space widths of the values 0 to 105, ISO/IEC 15417 table 1 (from memory). */
const patterns = `
  212222 222122 222221 121223 121322 131222 122213 122312 132212 221213 221312 231212 112232 122132
  122231 113222 123122 123221 223211 221132 221231 213212 223112 312131 311222 321122 321221 312212
  322112 322211 212123 212321 232121 111323 131123 131321 112313 132113 132311 211313 231113 231311
  112133 112331 132131 113123 113321 133121 313121 211331 231131 213113 213311 213131 311123 311321
  331121 312113 312311 332111 314111 221411 431111 111224 111422 121124 121421 141122 141221 112214
  112412 122114 122411 142112 142211 241211 221114 413111 241112 134111 111242 121142 121241 114212
  124112 124211 411212 421112 421211 212141 214121 412121 111143 111341 131141 114113 114311 411113
  411311 113141 114131 311141 411131 211412 211214 211232`
  .trim()
  .split(/\s+/)
const stop = '2331112'

/** Symbol values read off the bars, without the stop. */
function readOff(widths: readonly number[]): number[] {
  const bars = widths.join('')
  expect(bars.endsWith(stop)).toBe(true)
  return (bars.slice(0, -stop.length).match(/.{6}/g) ?? []).map((six) => patterns.indexOf(six))
}

/** The bars of given symbol values, start first; the library adds check symbol and stop. */
function barsOf(values: readonly number[]): readonly number[] {
  const text = values.map((value) => `^${String(value).padStart(3, '0')}`).join('')
  const [symbol] = bwipjs.raw('code128', text, 'raw')
  if (!symbol || !('sbs' in symbol)) throw new Error('no bars')
  return symbol.sbs
}

/** Letters of set A and B count from the space. */
function lettersOf(text: string): number[] {
  return [...text].map((letter) => letter.charCodeAt(0) - 32)
}

const startA = 103
const startC = 105

describe('the check symbol of Code 128', () => {
  test('of AIM1234 is 87 (weighted sum 1014; example named at onbarcode.com, value from memory)', () => {
    const { widths } = code128Bars('AIM1234')
    expect(readOff(widths)).toEqual([104, 33, 41, 45, 99, 12, 34, 87])
  })

  test('of abcdef in set B is 97 (weighted sum 1539; barcoderesource.com)', () => {
    expect(readOff(code128Bars('abcdef').widths)).toEqual([104, 65, 66, 67, 68, 69, 70, 97])
  })

  test('of 345678 in set C is 73 (weighted sum 485; barcoderesource.com)', () => {
    expect(readOff(code128Bars('345678').widths)).toEqual([105, 34, 56, 78, 73])
  })

  test('of ABCDEF in set A is 42 (weighted sum 866; barcoderesource.com)', () => {
    expect(readOff(barsOf([startA, ...lettersOf('ABCDEF')])).at(-1)).toBe(42)
  })

  test('of FNC1 0160000116030603 in set C is 71 (weighted sum 586; IDAutomation questions and answers)', () => {
    const pairs = [1, 60, 0, 1, 16, 3, 6, 3]
    expect(readOff(barsOf([startC, 102, ...pairs])).at(-1)).toBe(71)
  })

  test('of PJJ123C in set A is 54 (weighted sum 878; a common textbook example, from memory)', () => {
    expect(readOff(barsOf([startA, ...lettersOf('PJJ123C')])).at(-1)).toBe(54)
  })

  test('is the weighted sum modulo 103 on every label of a desk (ISO/IEC 15417)', () => {
    const desk = DeskId.parse('26KRVA')
    for (let serial = 1; serial <= 9999; serial += 101) {
      const [start = 0, ...rest] = readOff(code128Bars(bagNumber(desk, serial, 'L')).widths)
      const sum = rest.slice(0, -1).reduce((all, value, place) => all + value * (place + 1), start)
      expect(rest.at(-1)).toBe(sum % 103)
    }
  })
})

test('every symbol character is three bars and three spaces over eleven modules (ISO/IEC 15417)', () => {
  expect(new Set(patterns).size).toBe(106)
  for (const pattern of patterns)
    expect([...pattern].reduce((sum, width) => sum + Number(width), 0)).toBe(11)
})

test('a symbol stays within 48 characters and 165.10 mm (GS1 General Specifications 5.4.4.3)', () => {
  const number = bagNumber(DeskId.parse('26KRVA'), 42, 'L')
  expect(number.length).toBeLessThanOrEqual(48)
  expect((code128Bars(number).modules + 20) * 0.495).toBeLessThanOrEqual(165.1)
})
