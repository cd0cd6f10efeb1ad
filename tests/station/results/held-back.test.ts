import { describe, expect, test } from 'vitest'
import { isHeldBack } from '../../../electron/station/results/held-back.ts'
import { ResultWord } from '../../../shared-types/laboratory-result.ts'

describe('a result held back by rows in doubt (common practice, no source)', () => {
  test('every word but detected is held back while one row is open, and none when all are settled', () => {
    const held = ResultWord.options.filter((word) => isHeldBack(word, 1))
    expect(held).toEqual(['not-detected', 'presumptive', 'unsuitable', 'pending'])
    expect(isHeldBack(null, 1)).toBe(true)
    expect(ResultWord.options.some((word) => isHeldBack(word, 0))).toBe(false)
  })
})
