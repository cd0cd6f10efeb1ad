import { expect, test } from 'vitest'
import { checkCharacter, checks } from '../../shared-types/mod-37-36.ts'

// ISO/IEC 7064 MOD 37,36 as the Global Release Identifier uses it: the worked example of the GRid
// standard (IFPI, "GRid Standard", A1-2425G-ABC1234002-M), found quoted in two places.
test('the check character is that of ISO/IEC 7064 MOD 37,36: the example of the GRid standard', () => {
  expect(checkCharacter('A12425GABC1234002')).toBe('M')
  expect(checks('A12425GABC1234002M')).toBe(true)
})

// The recursion of ISO/IEC 7064 for hybrid systems, written down a second time from its definition
// (from memory): P(1) = M; S(j) = P(j) mod (M + 1) + a(j); P(j + 1) = (S(j) mod M, or M) * 2; and the
// last S(n) mod M = 1.
function fitsByDefinition(text: string): boolean {
  const values = [...text].map((each) => Number.parseInt(each, 36))
  const last = values.pop() ?? 0
  const product = values.reduce((p, a) => (((p % 37) + a) % 36 || 36) * 2, 36)
  return ((product % 37) + last) % 36 === 1
}

test('of the 36 characters, just the one that ISO/IEC 7064 defines makes a text check', () => {
  const endings = '0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZ'.split('')
  for (const text of ['26KRVA0042L', '26KRVA0001A', 'A12425GABC1234002', '0', 'ZZZZ']) {
    const fitting = endings.filter((each) => fitsByDefinition(text + each))
    expect(fitting).toEqual([checkCharacter(text)])
    expect(endings.filter((each) => checks(text + each))).toEqual(fitting)
  }
})
