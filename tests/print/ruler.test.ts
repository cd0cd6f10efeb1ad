import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { textWidth, wrapped } from '../../electron/print/ruler.ts'

const text = fc.stringMatching(/^[A-Za-zÄÖØŁżñ0-9 .,-]{0,120}$/)

describe('text wrapped to a width', () => {
  test('keeps every letter in order, at any width', () => {
    fc.assert(
      fc.property(text, fc.integer({ min: 5, max: 300 }), (words, width) => {
        const letters = wrapped(words, 'regular', 8, width).join('').replaceAll(' ', '')
        expect(letters).toBe(words.replaceAll(' ', ''))
      }),
    )
  })

  test('never has a line wider than the width, unless it is a single letter', () => {
    fc.assert(
      fc.property(text, fc.integer({ min: 5, max: 300 }), (words, width) => {
        for (const line of wrapped(words, 'bold', 8, width))
          if (line.length > 1) expect(textWidth(line, 'bold', 8)).toBeLessThanOrEqual(width)
      }),
    )
  })

  test('breaks between words where it can', () => {
    expect(wrapped('upper Sorrel drainage', 'regular', 10, 50)).toEqual([
      'upper',
      'Sorrel',
      'drainage',
    ])
  })
})
