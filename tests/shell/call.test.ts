import { describe, expect, test } from 'vitest'
import { isOwnPage } from '../../electron/shell/call.ts'

const page = { origin: 'app://duskline', parent: null, detached: false }

describe('who may ask the desk', () => {
  test('is the page itself', () => {
    expect(isOwnPage(page)).toBe(true)
  })

  test.each([
    ['a frame inside it', { ...page, parent: page }],
    ['a page that is going', { ...page, detached: true }],
    ['a frame that is no longer known', null],
    ['a page without an origin', { ...page, origin: '' }],
    ['a sandboxed page', { ...page, origin: 'null' }],
    ['a page whose origin begins like ours', { ...page, origin: 'app://duskline.evil.example' }],
    ['a page with another scheme', { ...page, origin: 'https://duskline' }],
    ['a file', { ...page, origin: 'file://' }],
  ])('is not %s', (_who, frame) => {
    expect(isOwnPage(frame)).toBe(false)
  })
})
