import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { normaliseStrokes } from '../../../renderer/handoff/strokes.ts'
import { Strokes } from '../../../shared-types/handoff.ts'

const field = { width: 480, height: 160 }

describe('a signature drawn on a field three times as wide as high', () => {
  it('is told in shares of the field, not in pixels of this screen', () => {
    const strokes = [
      [
        { x: 0, y: 0 },
        { x: 240, y: 40 },
        { x: 480, y: 160 },
      ],
    ]
    expect(normaliseStrokes(strokes, field)).toEqual([
      [
        { x: 0, y: 0 },
        { x: 0.5, y: 0.25 },
        { x: 1, y: 1 },
      ],
    ])
  })

  it('keeps a stroke that ran over the rim on the rim', () => {
    expect(normaliseStrokes([[{ x: 500, y: -20 }]], field)).toEqual([[{ x: 1, y: 0 }]])
  })

  it('is always something the desk takes, however long somebody scribbles', () => {
    const point = fc.record({ x: fc.double({ noNaN: true, min: -99, max: 999 }), y: fc.nat(300) })
    fc.assert(
      fc.property(fc.array(fc.array(point, { maxLength: 9 }), { maxLength: 300 }), (strokes) => {
        expect(Strokes.safeParse(normaliseStrokes(strokes, field)).success).toBe(true)
      }),
    )
    const scribble = Array.from({ length: 5001 }, (_, n) => ({ x: n % 480, y: n % 160 }))
    const [thinned = []] = normaliseStrokes([scribble], field)
    expect(thinned.length).toBeLessThanOrEqual(2000)
    expect(thinned.length).toBeGreaterThan(1600)
  })
})
