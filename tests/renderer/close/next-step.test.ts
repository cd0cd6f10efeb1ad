import { describe, expect, it } from 'vitest'
import { nextStep } from '../../../renderer/close/next-step.ts'
import type { CloseItem } from '../../../shared-types/views/close.ts'

type Plain = Pick<CloseItem, 'key'> & Partial<CloseItem>

function item(plain: Plain): CloseItem {
  return {
    item: { of: 'animals' },
    words: plain.key,
    counted: null,
    expected: null,
    variance: null,
    scanned: null,
    explained: null,
    tries: [],
    causes: [],
    ...plain,
  }
}

const agrees = { counted: 4, expected: 4, variance: 0 }
const differs = { counted: 3, expected: 4, variance: -1 }

describe('the way through the close', () => {
  it('goes from each count to the next thing nobody has counted', () => {
    const items = [item({ key: 'a', ...agrees }), item({ key: 'b' }), item({ key: 'c' })]
    expect(nextStep(items)).toEqual({ at: 'count', key: 'b' })
    expect(nextStep(items, 'b')).toEqual({ at: 'count', key: 'c' })
  })

  it('goes round to what was skipped', () => {
    const items = [item({ key: 'a' }), item({ key: 'b', ...agrees }), item({ key: 'c' })]
    expect(nextStep(items, 'c')).toEqual({ at: 'count', key: 'a' })
  })

  it('counts everything before it asks for a reason', () => {
    const items = [item({ key: 'a', ...differs }), item({ key: 'b' })]
    expect(nextStep(items, 'a')).toEqual({ at: 'count', key: 'b' })
  })

  it('then asks for the reason of each variance, and then for the signature', () => {
    const open = item({ key: 'b', ...differs })
    const settled = { ...open, explained: { reason: 'lost' as const, words: '' } }
    expect(nextStep([item({ key: 'a', ...agrees }), open])).toEqual({ at: 'explain', key: 'b' })
    expect(nextStep([item({ key: 'a', ...agrees }), settled])).toEqual({ at: 'sign' })
  })
})
