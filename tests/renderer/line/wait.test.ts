import { expect, test } from 'vitest'
import { barShare, fullBarMinutes, waitLook } from '../../../renderer/line/wait.ts'

test('a wait is fine, then soon near the target, then over it', () => {
  expect(waitLook(10, 30)).toEqual({ shape: 'fine', words: '20 min left' })
  expect(waitLook(23, 30)).toEqual({ shape: 'soon', words: '7 min left' })
  expect(waitLook(30, 30)).toEqual({ shape: 'now', words: '0 min over' })
  expect(waitLook(47, 30)).toEqual({ shape: 'now', words: '17 min over' })
})

test('all bars share one scale, on which the target always has room beyond it', () => {
  expect(fullBarMinutes(12, 30)).toBe(45)
  expect(fullBarMinutes(90, 30)).toBe(90)
  expect(barShare(45, 90)).toBe(0.5)
  expect(barShare(200, 90)).toBe(1)
})
