import { describe, expect, test } from 'vitest'
import {
  decideReprint,
  decideVoid,
  decideCopy,
  draftsOfNewKits,
  kitLabelNumbers,
  liveCopy,
} from '../../electron/station/labels.ts'
import type { LabelFate, LabelRecord } from '../../shared-types/label.ts'
import { grouped, sampleNumber } from '../../shared-types/sample-number.ts'
import type { StationSettings } from '../../shared-types/station.ts'
import { settings } from '../support/station.ts'
import { animal, code, desk, kit, written } from './records.ts'

const left = sampleNumber(desk, 1, 'L')
const print = { stock: 'roll-51x25', blanks: 1 } as const
const why = { reason: 'torn', words: 'wet gloves', destroyed: true } as const

const copies = (...fates: LabelFate[]): LabelRecord[] =>
  fates.map((fate, at) => ({ number: left, copy: at + 1, fate }))

describe('a kit is labelled', () => {
  const parts = (taken: StationSettings['tissues']) =>
    kitLabelNumbers(kit().kit, { ...settings, tissues: taken }).map((each) => grouped(each)[13])

  test('with a bag for each side, the data card and the hunter’s stub', () => {
    expect(parts(settings.tissues)).toEqual(['L', 'R', 'K', 'H'])
  })

  test('with a bag for the obex too, where the programme asks for it', () => {
    expect(parts([...settings.tissues, { site: 'obex', kept: 'formalin' }])).toEqual([
      'L',
      'R',
      'X',
      'K',
      'H',
    ])
  })

  test('and gets its number in the same action in which its labels are printed, each copy 1', () => {
    const { animal: number } = animal()
    const kits = [
      { kit: kit(1).kit, animal: number },
      { kit: kit(2).kit, animal: null },
    ]
    const drafts = written({ ok: true, value: draftsOfNewKits(kits, settings, 'sheet-letter', 8) })
    expect(drafts.map(({ kind }) => kind)).toEqual([
      'kit.numbered',
      'kit.numbered',
      'labels.printed',
    ])
    expect(drafts[2]?.body).toMatchObject({ stock: 'sheet-letter', blanks: 8 })
    const printed = drafts.flatMap((each) =>
      each.kind === 'labels.printed' ? each.body.labels : [],
    )
    expect(new Set(printed.map(({ number }) => number)).size).toBe(8)
    expect(printed.every(({ copy }) => copy === 1)).toBe(true)
  })
})

describe('a label is void', () => {
  test('when it was printed and not stuck on yet', () => {
    expect(written(decideVoid(left, copies('void', 'printed'), 'smeared', ''))).toEqual([
      {
        kind: 'label.voided',
        v: 1,
        body: { number: left, copy: 2, reason: 'smeared', words: '' },
      },
    ])
  })

  test('but not while it is in use, not twice, and not if it was never printed', () => {
    expect(code(decideVoid(left, copies('used'), 'torn', ''))).toBe('label-in-use')
    expect(code(decideVoid(left, copies('void'), 'torn', ''))).toBe('label-already-void')
    expect(code(decideVoid(left, [], 'torn', ''))).toBe('label-never-printed')
  })
})

describe('a label is printed again', () => {
  test.each(['printed', 'used'] as const)('and the %s copy before it is void first', (fate) => {
    const drafts = written(decideReprint(left, copies(fate), [], why, print))
    expect(drafts.map(({ kind }) => kind)).toEqual(['label.voided', 'labels.printed'])
    expect(drafts[0]?.body).toMatchObject({ copy: 1, ...why })
    expect(drafts[1]?.body).toMatchObject({ labels: [{ number: left, copy: 2 }] })
  })

  test('only when the copy before it is destroyed, lost or void: else one number could be on two things', () => {
    const still = { ...why, destroyed: false }
    expect(code(decideReprint(left, copies('printed'), [], still, print))).toBe(
      'first-copy-still-good',
    )
    expect(code(decideCopy(left, copies('used'), still, print))).toBe('first-copy-still-good')
    expect(decideReprint(left, copies('void'), [], still, print).ok).toBe(true)
    const lost = { ...still, reason: 'lost' } as const
    expect(decideReprint(left, copies('printed'), [], lost, print).ok).toBe(true)
  })

  test('without another void where the copy before is void already', () => {
    const drafts = written(decideReprint(left, copies('void', 'void'), [], why, print))
    expect(drafts.map(({ kind }) => kind)).toEqual(['labels.printed'])
    expect(drafts[0]?.body).toMatchObject({ labels: [{ number: left, copy: 3 }] })
  })

  test('only if it was printed before: a number comes into being with its kit', () => {
    expect(code(decideReprint(left, [], [], why, print))).toBe('label-never-printed')
  })

  test('or if its kit was labelled before the station took this tissue', () => {
    const obex = sampleNumber(desk, 1, 'X')
    const drafts = written(decideReprint(obex, [], [left, obex], why, print))
    expect(drafts.map(({ body }) => body)).toMatchObject([{ labels: [{ number: obex, copy: 1 }] }])
  })

  test('while the label of a cooler may be printed for the first time', () => {
    const drafts = written(decideCopy(left, [], why, print))
    expect(drafts.map(({ kind }) => kind)).toEqual(['labels.printed'])
  })
})

test('of all copies the one that is not void is live; of void ones none is', () => {
  expect(liveCopy(copies('void', 'used'))?.copy).toBe(2)
  expect(liveCopy(copies('void', 'void'))).toBeNull()
  expect(liveCopy([])).toBeNull()
})
