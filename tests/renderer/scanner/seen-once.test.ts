import { expect, test } from 'vitest'
import { createSeenOnce } from '../../../renderer/camera/seen-once.ts'

test('a label held before the camera is scanned once, and again when it comes back', () => {
  const isNew = createSeenOnce()
  expect(isNew('a', 0)).toBe(true)
  expect([150, 300, 1400, 2600].map((at) => isNew('a', at))).toEqual([false, false, false, false])
  expect(isNew(null, 2700)).toBe(false)
  expect(isNew('a', 2800)).toBe(false)
  expect(isNew('b', 2900)).toBe(true)
  expect(isNew('b', 4500)).toBe(true)
})
