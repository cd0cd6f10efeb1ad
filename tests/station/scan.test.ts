import { describe, expect, test } from 'vitest'
import {
  scanAnimal,
  scanBag,
  scanCooler,
  scanHandoff,
  scanKit,
  scanLabel,
  scanPerson,
} from '../../electron/station/scan.ts'
import { DeskId, kitNumber, Part, sampleNumber } from '../../shared-types/sample-number.ts'
import { code, desk, refusal } from './records.ts'

const scans = [
  ['an animal', scanAnimal, 'A'],
  ['a bag', scanBag, 'LRX'],
  ['a cooler', scanCooler, 'C'],
  ['a person', scanPerson, 'P'],
  ['a handoff', scanHandoff, 'M'],
  ['a kit', scanKit, 'KLRXH'],
  ['a label to print again', scanLabel, 'LRXKHCP'],
] as const

test.each(scans)(
  '%s is known by the labels that belong to it, and by no other',
  (_, scan, parts) => {
    for (const part of Part.options) {
      const read = scan(desk, sampleNumber(desk, 42, part))
      if (parts.includes(part)) expect(read.ok, part).toBe(true)
      else expect(code(read)).toBe('wrong-label')
    }
  },
)

test('any label of a kit tells which kit it is', () => {
  for (const part of ['L', 'R', 'X', 'K', 'H'] as const)
    expect(scanKit(desk, sampleNumber(desk, 42, part))).toMatchObject({
      value: kitNumber(desk, 42),
    })
})

describe('a label of elsewhere', () => {
  const of = (id: string) => sampleNumber(DeskId.parse(id), 42, 'L')

  test('is welcome from the other desk of this station: their coolers stand side by side', () => {
    expect(scanBag(desk, of('26KRVC')).ok).toBe(true)
  })

  test('is refused from another station, and from another season', () => {
    const other = refusal(scanBag(desk, of('26KRTA')))
    expect(other).toMatchObject({ code: 'another-station', field: 'bag' })
    expect(other.say).toContain('station KRT, season 26; this is station KRV, season 26')
    expect(other.next).toContain('put the other one aside')
    expect(code(scanBag(desk, of('25KRVA')))).toBe('another-station')
  })

  test('is told as misread first, if it is', () => {
    const misread = of('26KRTA').slice(0, 11) + (of('26KRTA').endsWith('7') ? '8' : '7')
    expect(refusal(scanBag(desk, misread))).toMatchObject({
      code: 'check-character-wrong',
      field: 'bag',
    })
  })
})
