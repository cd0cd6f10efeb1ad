import { describe, expect, test } from 'vitest'
import {
  type BenchRecord,
  checkAdvice,
  decideCheckTissue,
  decideMissTissue,
  decideOpenKit,
  isBaggable,
} from '../../electron/station/tissue.ts'
import { TissueCheck } from '../../shared-types/tissue.ts'
import { settings } from '../support/station.ts'
import {
  animal,
  bag,
  code,
  inHand,
  kit,
  lead,
  person,
  refusal,
  sampler,
  tissue,
  written,
} from './records.ts'

const opened = kit(1, { state: 'opened', animal: animal().animal })
const bench: BenchRecord = { animal: inHand(), kit: opened, tissues: [], by: sampler }
const empty: BenchRecord = { ...bench, kit: null }

describe('a kit is opened on an animal', () => {
  const open = (on: BenchRecord, the = kit(1), kitsInHand = 3) =>
    decideOpenKit(on, the, kitsInHand, 'Ines Tarr')

  test('that is in hand, and counts as used by the sampler who holds the animal', () => {
    expect(written(open(empty))).toEqual([
      {
        kind: 'kit.opened',
        v: 1,
        body: { kit: kit(1).kit, animal: animal().animal, sampler: sampler.person },
      },
    ])
    expect(open({ ...empty, by: lead }).ok).toBe(true)
  })

  test('by the sampler who has the animal, or a lead, and by nobody else', () => {
    expect(code(open({ ...empty, by: person('sampler', 9) }))).toBe('not-your-animal')
    expect(code(open({ ...empty, animal: animal() }))).toBe('animal-not-in-hand')
  })

  test('once: a used kit is refused with the animal that it was used on', () => {
    const used = refusal(open(empty, kit(2, { state: 'opened', animal: animal(9).animal })))
    expect(used.code).toBe('kit-already-used')
    expect(used.say).toContain('26-KRV-A0009-A')
    expect(used.next).toContain('Put it aside for the lead')
  })

  test('and the same scan twice, a second kit, a spoiled one are each told apart', () => {
    expect(code(open(bench, opened))).toBe('kit-already-open')
    expect(code(open(bench, kit(2)))).toBe('animal-has-kit')
    expect(code(open(empty, kit(2, { state: 'spoiled' })))).toBe('kit-spoiled')
  })

  test('but not if its labels were printed for another animal', () => {
    expect(code(open(empty, kit(2, { animal: animal(9).animal })))).toBe('kit-of-another-animal')
    expect(open(empty, kit(2, { animal: animal().animal })).ok).toBe(true)
  })

  test('and only while the ledger has kits in those hands', () => {
    const none = refusal(open(empty, kit(1), 0))
    expect(none).toMatchObject({ code: 'no-kits-in-hand' })
    expect(none.next).toContain('Record the kits picked up')
  })
})

describe('tissue on the cut face', () => {
  const look = { site: 'left', check: 'lymph-node', sizeMm: 23 } as const

  test('is bagged when it is a node, or nobody is sure; salivary gland, muscle and fat never are', () => {
    expect(TissueCheck.options.filter((each) => isBaggable('left', each))).toEqual([
      'lymph-node',
      'unsure',
    ])
    expect(TissueCheck.options.filter((each) => isBaggable('obex', each))).toEqual([
      'obex',
      'unsure',
    ])
  })

  test('is recorded with its size, right or wrong, and the sampler is told what to do', () => {
    expect(written(decideCheckTissue(bench, settings, look))[0]).toMatchObject({
      kind: 'tissue.checked',
      body: { kit: opened.kit, site: 'left', check: 'lymph-node', sizeMm: 23 },
    })
    const gland = { ...look, check: 'salivary-gland' } as const
    expect(written(decideCheckTissue(bench, settings, gland))).toHaveLength(1)
    expect(checkAdvice('left', 'salivary-gland')).toMatch(/salivary gland, which cannot be tested/)
    expect(checkAdvice('left', 'lymph-node')).toContain('Bag it')
    expect(checkAdvice('right', 'unsure')).toContain('Ask the lead to look')
    expect(checkAdvice('obex', 'muscle')).toContain('not obex')
  })

  test('is judged on an animal in hand, with a kit open, at a site that is taken here', () => {
    expect(code(decideCheckTissue({ ...bench, animal: animal() }, settings, look))).toBe(
      'animal-not-in-hand',
    )
    expect(code(decideCheckTissue(empty, settings, look))).toBe('open-a-kit-first')
    expect(code(decideCheckTissue(bench, settings, { ...look, site: 'obex' }))).toBe(
      'site-not-taken-here',
    )
    expect(code(decideCheckTissue(bench, settings, { ...look, check: 'obex' }))).toBe(
      'check-of-another-site',
    )
  })

  test('is not judged again once it lies in a sealed bag', () => {
    const done = { ...bench, tissues: [tissue({ seen: 'lymph-node', bag: bag().bag })] }
    expect(code(decideCheckTissue(done, settings, look))).toBe('site-already-bagged')
    expect(
      code(decideMissTissue(done, settings, { site: 'left', reason: 'spoiled', words: '' })),
    ).toBe('site-already-bagged')
  })
})

describe('tissue is not taken', () => {
  test('with a reason, and needs no kit', () => {
    const missed = { site: 'right', reason: 'shot-away', words: '' } as const
    expect(written(decideMissTissue(empty, settings, missed))[0]).toMatchObject({
      kind: 'tissue.missed',
      body: { site: 'right', reason: 'shot-away' },
    })
  })

  test('and "other" needs a few words', () => {
    const other = { site: 'right', reason: 'other', words: '' } as const
    expect(code(decideMissTissue(bench, settings, other))).toBe('reason-needed')
    expect(decideMissTissue(bench, settings, { ...other, words: 'head went home' }).ok).toBe(true)
  })
})
