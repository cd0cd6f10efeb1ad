import { describe, expect, test } from 'vitest'
import { isEntry, isOwnBlob, mayLoad } from '../../electron/shell/addresses.ts'

/** Addresses that contain ours, or begin like it, without being it. */
const lookalikes = [
  'app://duskline.evil.example/',
  'app://duskline:1/',
  'app://duskline@evil.example/',
  'app://evil.example/app://duskline/',
  'https://duskline/',
  'https://evil.example/?app://duskline/',
  'https://evil.example/#app://duskline/',
  'blob:https://evil.example/app://duskline/',
  'file:///app://duskline/',
  'javascript:alert(1)',
  'app://DUSKLINE/',
  'app://duskline',
  'app:',
  '',
]

describe('an address that only looks like ours', () => {
  test.each(lookalikes)('is not the page, nor a document of it, nor loaded: %s', (url) => {
    expect([isEntry(url), isOwnBlob(url), mayLoad(url)]).toEqual([false, false, false])
  })
})

describe('our own address', () => {
  test.each(['app://duskline/', 'app://duskline/#line', 'app://duskline/?board=1'])(
    'is the page: %s',
    (url) => expect(isEntry(url)).toBe(true),
  )

  test.each(['app://duskline/index.js', 'app://duskline//', 'app://duskline/../'])(
    'is not the page when it names a part: %s',
    (url) => expect(isEntry(url)).toBe(false),
  )

  test('is a document of the page only as a blob', () => {
    expect(isOwnBlob('blob:app://duskline/5f0c')).toBe(true)
    expect(isOwnBlob('app://duskline/5f0c')).toBe(false)
  })
})
