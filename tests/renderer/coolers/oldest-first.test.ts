import { describe, expect, it } from 'vitest'
import { oldestFirst } from '../../../renderer/coolers/oldest-first.ts'
import { DeskId, animalNumber, bagNumber } from '../../../shared-types/sample-number.ts'
import type { BagView } from '../../../shared-types/views/coolers.ts'

const desk = DeskId.parse('26KRVA')

function sealedAt(serial: number, sealedMs: number): BagView {
  return {
    bag: bagNumber(desk, serial, 'L'),
    animal: animalNumber(desk, serial),
    species: 'elk',
    site: 'left',
    kept: 'fresh',
    check: 'lymph-node',
    sealedMs,
    holdUntilMs: null,
    excursion: false,
  }
}

describe('bags in the order in which their tissue ages', () => {
  it('puts the one that was sealed first on top', () => {
    const { shown, more } = oldestFirst(
      [sealedAt(1, 300), sealedAt(2, 100), sealedAt(3, 200)],
      false,
    )
    expect(shown.map(({ sealedMs }) => sealedMs)).toEqual([100, 200, 300])
    expect(more).toBe(0)
  })

  it('cuts a long list, says how many are left, and shows all when asked', () => {
    const bags = Array.from({ length: 100 }, (_, place) => sealedAt(place + 1, 1000 - place))
    const { shown, more } = oldestFirst(bags, false)
    expect(shown.length + more).toBe(100)
    expect(more).toBeGreaterThan(0)
    expect(shown[0]?.sealedMs).toBe(901)
    expect(oldestFirst(bags, true)).toMatchObject({ more: 0, shown: { length: 100 } })
  })
})
