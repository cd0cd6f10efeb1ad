/** Source of every value here: RFC 8785, JSON Canonicalization Scheme, June 2020. */
import { describe, expect, test } from 'vitest'
import { canonicalJson, type Json } from '../../db/canonical-json.ts'
import { sha256 } from '../../db/log/hash-chain.ts'

describe('RFC 8785 section 3.2.2, the sample', () => {
  const sample = String.raw`{
    "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
    "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
    "literals": [null, true, false]
  }`
  const text = canonicalJson(JSON.parse(sample) as Json)

  test('gives the canonical text of section 3.2.3', () => {
    expect(text).toBe(
      String.raw`{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}`,
    )
  })

  test('gives the bytes of section 3.2.4', () => {
    const bytes = Buffer.from(text, 'utf8')
    expect(bytes).toHaveLength(118)
    expect(bytes.toString('hex')).toMatch(/^7b226c69746572616c73223a5b6e756c6c/)
    expect(bytes.toString('hex')).toMatch(/5c225c5c5c5c5c222f227d$/)
  })

  test('hashes to the value computed from those bytes by a second implementation', () => {
    expect(sha256(text)).toBe('2d5e01a318d0f0879ab568c4be289c8b1f64ef8921a53c6277d5e069978baacb')
  })
})

describe('RFC 8785 section 3.2.3, the order of members', () => {
  test('is that of UTF-16 code units, so an emoji comes before U+FB33', () => {
    const members = {
      '\u20ac': 'Euro Sign',
      '\r': 'Carriage Return',
      '\ufb33': 'Hebrew Letter Dalet With Dagesh',
      '1': 'One',
      '\ud83d\ude00': 'Emoji: Grinning Face',
      '\u0080': 'Control',
      '\u00f6': 'Latin Small Letter O With Diaeresis',
    }
    expect(Object.values(JSON.parse(canonicalJson(members)) as object).slice(1)).toEqual([
      'Carriage Return',
      'Control',
      'Latin Small Letter O With Diaeresis',
      'Euro Sign',
      'Emoji: Grinning Face',
      'Hebrew Letter Dalet With Dagesh',
    ])
    // Read back, JavaScript moves a member named like a number to the front; in the text it is second.
    expect(canonicalJson(members)).toMatch(/^\{"\\r":"Carriage Return","1":"One"/)
  })
})

describe('RFC 8785 Appendix B, numbers', () => {
  test.each([
    ['0000000000000000', '0'],
    ['8000000000000000', '0'],
    ['0000000000000001', '5e-324'],
    ['4430000000000000', '295147905179352830000'],
    ['44b52d02c7e14af5', '9.999999999999997e+22'],
    ['44b52d02c7e14af6', '1e+23'],
    ['444b1ae4d6e2ef50', '1e+21'],
    ['3eb0c6f7a0b5ed8d', '0.000001'],
    ['becbf647612f3696', '-0.0000033333333333333333'],
    ['43143ff3c1cb0959', '1424953923781206.2'],
  ])('the double %s is written %s', (bits, text) => {
    expect(canonicalJson(double(bits))).toBe(text)
  })

  test.each([
    ['7fffffffffffffff', 'NaN'],
    ['7ff0000000000000', 'Infinity'],
    ['fff0000000000000', '-Infinity'],
  ])('the double %s, %s, is refused', (bits) => {
    expect(() => canonicalJson(double(bits))).toThrow(TypeError)
  })
})

function double(bits: string): number {
  return Buffer.from(bits, 'hex').readDoubleBE()
}
