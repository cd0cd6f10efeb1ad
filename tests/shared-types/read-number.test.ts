import { expect, test } from 'vitest'
import {
  DeskId,
  readNumberFor,
  readSampleNumber,
  sampleNumber,
} from '../../shared-types/sample-number.ts'

const desk = DeskId.parse('26KRVA')
const left = sampleNumber(desk, 42, 'L')
const read = (text: string) => readSampleNumber(text)
const code = (text: string) => {
  const answer = read(text)
  return answer.ok ? 'read' : answer.refusal.code
}

/** The number as printed for people: grouped by hyphens. */
const printed = left.replace(/^(..)(...)(.....)(.)(.)$/, '$1-$2-$3-$4-$5')

// ISO/IEC 15424 symbology identifiers: ]C0 to ]C4 Code 128, ]d0 to ]d6 Data Matrix (values from memory).
test.each([
  ['scanned from Code 128', `]C1${left}`],
  ['scanned from Data Matrix', `]d2${left}`],
  ['scanned with a group separator behind it', `${left}\u001d`],
  ['scanned with group separators inside', `]C1\u001d${left}\u001d`],
  ['scanned with Enter behind it', `${left}\r\n`],
  ['typed as printed', printed],
  ['typed with spaces', printed.replaceAll('-', ' ')],
  ['typed in lower case', left.toLowerCase()],
  ['typed with spaces around it', `  ${printed.toLowerCase()} `],
])('a number %s is read', (_, text) => {
  expect(read(text)).toEqual({ ok: true, value: left })
})

// GS1 application identifier 21, serial number (GS1 General Specifications, section 3; value from memory).
test.each([
  ['a GS1 application identifier before it', `]C121${left}`],
  ['one in brackets, as printed under a code', `(21)${left}`],
  ['a plain prefix and suffix of the scanner', `SCAN${left}#`],
  ['a site code before it', `K07${left}`],
])('a number with %s is read', (_, text) => {
  expect(read(text)).toEqual({ ok: true, value: left })
})

test('around a number with a slip nothing is guessed, and of two numbers none is chosen', () => {
  expect(code(`21${left.slice(0, 11)}${left.endsWith('7') ? '8' : '7'}`)).toBe(
    'not-a-sample-number',
  )
  expect(code(`${left}${left}`)).toBe('not-a-sample-number')
})

const slips: [string, string][] = [
  ['0', 'O'],
  ['0', 'Q'],
  ['1', 'I'],
  ['1', 'L'],
  ['2', 'Z'],
  ['5', 'S'],
  ['6', 'G'],
  ['8', 'B'],
]

test.each(slips)('%s typed as %s where only a digit can stand is put right', (digit, typed) => {
  const serial = Number(`${digit}${digit}9${digit}`) || 90
  const number = sampleNumber(DeskId.parse(`${digit}7KRVA`), serial, 'R')
  const [season, middle, count, rest] = [
    number.slice(0, 2),
    number.slice(2, 6),
    number.slice(6, 10),
    number.slice(10),
  ]
  const slip = (text: string) => text.replaceAll(digit, typed)
  expect(read(slip(season) + middle + slip(count) + rest)).toEqual({ ok: true, value: number })
  expect(read((slip(season) + middle + slip(count) + rest).toLowerCase())).toMatchObject({
    value: number,
  })
})

test.each(['1', 'I', 'i', 'l'])('L for the left bag, typed as %s, is put right', (typed) => {
  expect(read(left.slice(0, 10) + typed + left.slice(11))).toEqual({ ok: true, value: left })
})

test('a letter of the station or desk is never guessed: those have no look-alikes', () => {
  expect(code(left.replace('K', 'X'))).toBe('check-character-wrong')
  expect(code(left.replace('V', 'U'))).toBe('not-a-sample-number')
})

test('the check character is taken as typed and must match', () => {
  const wrong = left.endsWith('7') ? '8' : '7'
  const answer = read(left.slice(0, 11) + wrong)
  expect(answer).toMatchObject({ ok: false, refusal: { code: 'check-character-wrong' } })
  if (answer.ok) return
  expect(answer.refusal.say).toContain('does not fit the others')
  expect(answer.refusal.next).toContain('Compare with the label')
})

test.each([
  ['nothing', ''],
  ['a tag number', '12-345-678'],
  ['too short', left.slice(0, 11)],
  ['too long', `${left}7`],
  ['a web address', 'https://example.org/26KRVA0042L'],
  ['a part that is not ours', `${left.slice(0, 10)}Z${left.slice(11)}`],
  ['letters of another script', left.replace('A', 'А')],
])('%s is not a sample number', (_, text) => {
  expect(code(text)).toBe('not-a-sample-number')
})

test('a very long scan is told by its beginning only', () => {
  const answer = read('9'.repeat(500))
  expect(answer.ok ? '' : answer.refusal.say.length).toBeLessThan(140)
})

test('a good number on the wrong thing is refused by naming both', () => {
  const stub = sampleNumber(desk, 42, 'H')
  expect(readNumberFor(['H'], stub)).toEqual({ ok: true, value: stub })
  const answer = readNumberFor(['L', 'R'], stub)
  expect(answer).toMatchObject({
    ok: false,
    refusal: {
      code: 'wrong-label',
      say: "That is a hunter's stub label, not a left bag or right bag label.",
      next: 'Scan the left bag or right bag label.',
    },
  })
})

test('an animal label is told as one', () => {
  const animal = sampleNumber(desk, 42, 'A')
  expect(readNumberFor(['C'], animal)).toMatchObject({
    refusal: { say: 'That is an animal label, not a cooler label.' },
  })
})

test('a misread number is told as misread before anything is said of its part', () => {
  const wrong = `${left.slice(0, 11)}${left.endsWith('7') ? '8' : '7'}`
  expect(readNumberFor(['C'], wrong)).toMatchObject({ refusal: { code: 'check-character-wrong' } })
})
