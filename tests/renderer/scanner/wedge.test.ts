import { expect, test } from 'vitest'
import { createWedge, leastCharacters, longestGapMs } from '../../../renderer/scanner/wedge.ts'

const label: string = '26KRVA0042L7'
const newWedge = () => createWedge((text) => text === label)

/** Keys at an even pace; what each was taken for. */
function typed(text: string, gapMs: number, end = 'Enter') {
  const wedge = newWedge()
  return [...text, end].map((key, place) => wedge.press(key, 1000 + place * gapMs))
}

test('a scanner is known by its speed, whether it ends with Enter or Tab', () => {
  for (const end of ['Enter', 'Tab'])
    expect(typed(label, 4, end).at(-1)).toEqual({ is: 'scan', text: label, runs: 1 })
})

test('a person typing the same number and Enter is no scanner', () => {
  expect(typed(label, 80).at(-1)).toEqual({ is: 'other' })
})

test('a person who types fast and then rests on Enter is no scanner', () => {
  const wedge = newWedge()
  for (const [place, key] of [...label].entries()) wedge.press(key, place * 4)
  expect(wedge.press('Enter', 12 * 4 + longestGapMs)).toEqual({ is: 'other' })
})

test('fewer characters than any of our numbers are no scan, however fast', () => {
  const short = '2'.repeat(leastCharacters - 1)
  expect(typed(short, 4).at(-1)).toEqual({ is: 'other' })
})

test('only the fast run before Enter is the scan: what a person typed before stays theirs', () => {
  const wedge = newWedge()
  wedge.press('h', 0)
  wedge.press('i', 120)
  const keys = [...label].map((key, place) => wedge.press(key, 400 + place * 4))
  expect(keys[0]).toEqual({ is: 'first' })
  expect(keys[1]).toEqual({ is: 'more' })
  expect(wedge.press('Enter', 400 + 12 * 4)).toEqual({ is: 'scan', text: label, runs: 1 })
})

test('the Shift that a scanner holds for capitals does not break its run', () => {
  const wedge = newWedge()
  let at = 0
  for (const key of 'KRVACD') {
    wedge.press('Shift', (at += 4))
    wedge.press(key, (at += 4))
  }
  expect(wedge.press('Enter', at + 4)).toEqual({ is: 'scan', text: 'KRVACD', runs: 1 })
})

test('two scans in a row are two scans', () => {
  const wedge = newWedge()
  const run = (start: number) => {
    for (const [place, key] of [...label].entries()) wedge.press(key, start + place * 4)
    return wedge.press('Enter', start + 48)
  }
  expect(run(0)).toEqual(run(60))
})

/** A label whose scanner pauses after some characters. */
function stuttered(pauseMs: number, text = label) {
  const wedge = newWedge()
  let at = 0
  for (const [place, key] of [...text].entries())
    wedge.press(key, (at += place === 4 || place === 8 ? pauseMs : 4))
  return wedge.press('Enter', at + 4)
}

test('a scan that stutters is one scan where its runs together are one of our numbers', () => {
  expect(stuttered(60)).toEqual({ is: 'scan', text: label, runs: 3 })
})

test('runs that make no number of ours, or lie too far apart, are pieces and not put together', () => {
  expect(stuttered(60, '26KRVA0042L8')).toEqual({ is: 'pieces' })
  expect(stuttered(400)).toEqual({ is: 'pieces' })
})

test('keys that a person strikes before a scan are no pieces of it, and neither is an old scan', () => {
  const wedge = newWedge()
  for (const [place, key] of ['g', 'o', 'n'].entries()) wedge.press(key, place * 200)
  const tag = 'WY2026081'.split('')
  const foreign = tag.map((key, place) => wedge.press(key, 1000 + place * 4))
  expect(foreign.at(-1)).toEqual({ is: 'more' })
  expect(wedge.press('Enter', 1000 + 36)).toEqual({ is: 'scan', text: 'WY2026081', runs: 1 })
  for (const [place, key] of ['2', '6', 'K', 'R'].entries()) wedge.press(key, 5000 + place * 4)
  const later = tag.map((key, place) => wedge.press(key, 60_000 + place * 4))
  expect(later).toHaveLength(9)
  expect(wedge.press('Enter', 60_000 + 36)).toEqual({ is: 'scan', text: 'WY2026081', runs: 1 })
})

test('characters struck just before a scan are not of it, although scanners add such characters too', () => {
  const wedge = createWedge((text) => text.endsWith(label))
  wedge.press('2', 0)
  wedge.press('6', 45)
  for (const [place, key] of [...label].entries()) wedge.press(key, 120 + place * 4)
  expect(wedge.press('Enter', 120 + 48)).toEqual({ is: 'scan', text: label, runs: 1 })
})
