import fc from 'fast-check'
import { expect, test } from 'vitest'
import { canonicalJson, type Json } from '../../db/canonical-json.ts'

const json = fc.jsonValue({ stringUnit: 'grapheme' }) as fc.Arbitrary<Json>

test('reads back as the value it was made from', () => {
  fc.assert(
    fc.property(json, (value) => {
      // JSON has one zero: RFC 8785 writes -0 as 0.
      const oneZero = JSON.parse(JSON.stringify(value)) as Json
      expect(JSON.parse(canonicalJson(value))).toEqual(oneZero)
    }),
  )
})

test('is the same text in whatever order the members were written', () => {
  fc.assert(
    fc.property(fc.dictionary(fc.string(), json), (members) => {
      const reversed = Object.fromEntries(Object.entries(members).reverse())
      expect(canonicalJson(reversed)).toBe(canonicalJson(members))
    }),
  )
})

test.each([
  ['undefined', { size: undefined }],
  ['a lone surrogate in a text', { name: '\ud83d' }],
  ['a lone surrogate in a name', { '\ude00': 1 }],
  ['a date', { at: new Date(0) }],
  ['a set', new Set([1])],
  ['a big integer', { count: 1n }],
  ['a function', { count: () => 1 }],
])('refuses %s, which JSON would drop or change without a word', (_, value) => {
  expect(() => canonicalJson(value as unknown as Json)).toThrow(TypeError)
})
