import { describe, expect, test } from 'vitest'
import { decideDiscardBag, decideSealBag, type DiscardView } from '../../electron/station/bag.ts'
import { type BenchRecord, decideFinish, outcomeOf } from '../../electron/station/tissue.ts'
import type { LabelRecord } from '../../shared-types/label.ts'
import { bagNumber, sampleNumber } from '../../shared-types/sample-number.ts'
import type { StationSettings } from '../../shared-types/station.ts'
import { settings } from '../support/station.ts'
import {
  animal,
  bag,
  code,
  desk,
  inHand,
  kit,
  refusal,
  sampler,
  tissue,
  written,
} from './records.ts'

const left = bagNumber(desk, 1, 'L')
const right = bagNumber(desk, 1, 'R')
const opened = kit(1, { state: 'opened', animal: animal().animal })
const seen = [tissue({ seen: 'lymph-node' })]
const bench: BenchRecord = { animal: inHand(), kit: opened, tissues: seen, by: sampler }
const good: LabelRecord = { number: left, copy: 1, fate: 'printed' }

describe('a bag is sealed', () => {
  const seal = (
    on: Partial<BenchRecord> = {},
    changed: Partial<Parameters<typeof decideSealBag>[2]> = {},
    taken: StationSettings = settings,
  ) =>
    decideSealBag({ ...bench, ...on }, taken, {
      site: 'left',
      bag: left,
      copies: [good],
      ...changed,
    })

  test('under the label of this kit and this side, kept as the station says', () => {
    expect(written(seal())[0]).toEqual({
      kind: 'bag.sealed',
      v: 1,
      body: { bag: left, animal: animal().animal, kit: opened.kit, site: 'left', kept: 'fresh' },
    })
    const fixed = { ...settings, tissues: [{ site: 'left', kept: 'formalin' } as const] }
    expect(written(seal({}, {}, fixed))[0]?.body).toMatchObject({ kept: 'formalin' })
  })

  test('never under the label of another kit, nor of the other side', () => {
    const other = refusal(seal({}, { bag: bagNumber(desk, 2, 'L') }))
    expect(other).toMatchObject({ code: 'bag-of-another-kit', field: 'bag' })
    expect(other.next).toContain('Do not swap labels')
    const side = refusal(seal({}, { bag: right }))
    expect(side).toMatchObject({
      code: 'wrong-side',
      say: 'That is the right bag label, and the tissue is the left node.',
      next: 'Put the tissue into the left bag.',
    })
  })

  test('only after someone looked, and only with tissue that can be tested or is unsure', () => {
    expect(code(seal({ tissues: [] }))).toBe('look-first')
    expect(code(seal({ tissues: [tissue({ seen: 'fat' })] }))).toBe('wrong-tissue')
    expect(seal({ tissues: [tissue({ seen: 'unsure' })] }).ok).toBe(true)
  })

  test('only with a label that was printed and is not void', () => {
    expect(code(seal({}, { copies: [] }))).toBe('label-void')
    expect(code(seal({}, { copies: [{ ...good, fate: 'void' }] }))).toBe('label-void')
    const again = [
      { ...good, fate: 'void' },
      { ...good, copy: 2 },
    ] as const
    expect(seal({}, { copies: again }).ok).toBe(true)
  })

  test('once a side, and with a kit open', () => {
    expect(code(seal({ tissues: [tissue({ seen: 'lymph-node', bag: left })] }))).toBe(
      'site-already-bagged',
    )
    expect(code(seal({ kit: null }))).toBe('open-a-kit-first')
  })
})

describe('an animal comes out', () => {
  const both = [tissue({ bag: left }), tissue({ site: 'right', bag: right })]

  test('as both sides, one side, or none; the obex makes no side', () => {
    expect(outcomeOf(both)).toBe('both')
    expect(outcomeOf(both.slice(1))).toBe('one')
    expect(outcomeOf([tissue({ site: 'obex', bag: bagNumber(desk, 1, 'X') })])).toBe('none')
    expect(outcomeOf([])).toBe('none')
  })

  test('once each tissue is bagged or said to be missing', () => {
    const half = [tissue({ bag: left }), tissue({ site: 'right' })]
    const open = refusal(decideFinish({ ...bench, tissues: half }, settings, []))
    expect(open.say).toBe('The right node is neither bagged nor recorded as not taken.')
    const told = [tissue({ bag: left }), tissue({ site: 'right', missed: 'shot-away' })]
    expect(decideFinish({ ...bench, tissues: told }, settings, [])).toMatchObject({
      value: { outcome: 'one' },
    })
  })

  test('and the labels of bags that stay empty are void, so that none goes astray', () => {
    const told = [tissue({ bag: left }), tissue({ site: 'right', missed: 'not-found' })]
    const labels: LabelRecord[] = [
      { number: left, copy: 1, fate: 'used' },
      { number: right, copy: 1, fate: 'void' },
      { number: right, copy: 2, fate: 'printed' },
      { number: sampleNumber(desk, 1, 'K'), copy: 1, fate: 'used' },
    ]
    const finished = decideFinish({ ...bench, tissues: told }, settings, labels)
    if (!finished.ok) throw new Error(finished.refusal.say)
    expect(written({ ok: true, value: finished.value.drafts })).toMatchObject([
      { kind: 'label.voided', body: { number: right, copy: 2, reason: 'not-taken' } },
      { kind: 'animal.finished', body: { sampler: sampler.person, outcome: 'one' } },
    ])
  })
})

test('the new copy of a torn bag’s label is void too, if the side was not done again after all', () => {
  const told = [
    tissue({ missed: 'other', missedWords: 'node lost' }),
    tissue({ site: 'right', missed: 'not-found' }),
  ]
  const labels: LabelRecord[] = [
    { number: left, copy: 1, fate: 'void' },
    // The bag that was discarded still makes the number look used.
    { number: left, copy: 2, fate: 'used' },
  ]
  const finished = decideFinish({ ...bench, tissues: told }, settings, labels)
  if (!finished.ok) throw new Error(finished.refusal.say)
  expect(finished.value.drafts[0]).toMatchObject({
    kind: 'label.voided',
    body: { number: left, copy: 2, reason: 'not-taken' },
  })
})

describe('a sealed bag is discarded', () => {
  const view: DiscardView = {
    bag: bag(),
    animal: inHand(),
    tissues: [tissue({ bag: left }), tissue({ site: 'right', bag: right })],
    copies: [{ ...good, fate: 'used' }],
  }

  test('with its label, and its side is open again while the animal is in hand', () => {
    expect(written(decideDiscardBag(view, 'torn at the zip'))).toMatchObject([
      { kind: 'bag.discarded', body: { bag: left, reason: 'torn at the zip' } },
      { kind: 'label.voided', body: { number: left, copy: 1, words: 'torn at the zip' } },
    ])
  })

  test('and a finished animal gets the outcome that is left', () => {
    const finished = inHand(1, { state: 'finished', outcome: 'both' })
    const drafts = written(decideDiscardBag({ ...view, animal: finished }, 'torn at the zip'))
    // Not finished once more: the hour at which it was finished stays.
    expect(drafts.at(-1)).toMatchObject({
      kind: 'animal.outcome-changed',
      body: { outcome: 'one' },
    })
  })

  test.each([
    ['cooler', 'bag-in-cooler'],
    ['handed-off', 'bag-handed-off'],
    ['discarded', 'bag-already-discarded'],
  ] as const)('but not from %s', (place, refused) => {
    expect(code(decideDiscardBag({ ...view, bag: bag(1, { place }) }, 'torn'))).toBe(refused)
  })
})
