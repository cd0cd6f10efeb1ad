import { describe, expect, test } from 'vitest'
import { signatureField } from '../../electron/print/signature.ts'
import { strokes } from './samples.ts'

const signed = { name: 'Ines Okonedo', at: '18:42 MST' }

function linesOf(how: Parameters<typeof signatureField>[0]['hand']) {
  return signatureField({ ...signed, hand: how }, 150).marks.filter((mark) => mark.kind === 'line')
}

describe('a drawn signature', () => {
  test('is scaled to a field three times as wide as high', () => {
    const [first] = linesOf({ how: 'drawn', strokes })
    expect(first?.points[0]?.x).toBeCloseTo(0.05 * 150)
    expect(first?.points[0]?.y).toBeCloseTo(0.5 * 50)
    expect(first?.points[2]?.y).toBeCloseTo(0.9 * 50)
  })

  test('keeps every stroke, a dot included, above a line', () => {
    expect(linesOf({ how: 'drawn', strokes })).toHaveLength(strokes.length + 1)
  })

  test('that runs out of its field ends at the edge', () => {
    const wild = [
      [
        { x: -3, y: 0.5 },
        { x: 2, y: 9 },
      ],
    ]
    const [stroke] = linesOf({ how: 'drawn', strokes: wild })
    expect(stroke?.points).toEqual([
      { x: 0, y: 25 },
      { x: 150, y: 50 },
    ])
  })
})

test('a signature on paper is an empty line to sign on', () => {
  expect(linesOf({ how: 'on-paper' })).toHaveLength(1)
})
