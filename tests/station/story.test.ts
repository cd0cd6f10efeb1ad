import { describe, expect, test } from 'vitest'
import fc from 'fast-check'
import { sayEntry } from '../../electron/station/story.ts'
import type { EntryDraft, KnownEntry } from '../../shared-types/entry.ts'
import { allKinds, draftOf } from '../db/some-drafts.ts'
import { animal, bag, cooler, desk, kit, morning, nameOf, sampler } from './records.ts'

const nowhere = '0'.repeat(64)

function entry(draft: EntryDraft): KnownEntry {
  const at = { ms: morning, n: 0, wall: morning }
  return { ...draft, desk, seq: 1, at, by: null, prev: nowhere, hash: nowhere } as KnownEntry
}

const say = <K extends EntryDraft['kind']>(
  kind: K,
  body: Extract<EntryDraft, { kind: K }>['body'],
) => sayEntry(entry({ kind, v: 1, body } as EntryDraft), nameOf)

describe('every entry says what happened in one sentence', () => {
  test.each(allKinds)('%s', (kind) => {
    fc.assert(
      fc.property(draftOf(kind), (draft) => {
        const sentence = sayEntry(entry(draft), nameOf)
        expect(sentence).toMatch(/\.$/s)
        expect(sentence).not.toMatch(/undefined|\[object|null/)
      }),
      { seed: 11, numRuns: 25 },
    )
  })
})

describe('with the words of the trade and the names of people', () => {
  const { animal: number } = animal()

  test('on the bench', () => {
    const look = { animal: number, kit: kit().kit, site: 'left', check: 'salivary-gland' } as const
    expect(say('tissue.checked', { ...look, sizeMm: 31 })).toBe(
      'Left node looked at: salivary gland, 31 mm.',
    )
    expect(say('animal.assigned', { animal: number, sampler: sampler.person })).toBe(
      'Assigned to Ines Tarr.',
    )
    expect(
      say('animal.finished', { animal: number, sampler: sampler.person, outcome: 'one' }),
    ).toBe('Finished by Ines Tarr: one side.')
    expect(
      say('tissue.missed', {
        animal: number,
        site: 'right',
        reason: 'cut-away',
        words: 'cape cut',
      }),
    ).toBe('Right node not taken: cut away before (cape cut).')
  })

  test('at the coolers', () => {
    expect(say('cooler.read', { cooler: cooler().cooler, celsius: 9, excursion: true })).toMatch(
      /read at 9 °C, outside its limits\.$/,
    )
    expect(say('bag.placed', { bag: bag().bag, cooler: cooler().cooler })).toMatch(
      /^Bag 26-KRV-A0001-L-. put into cooler /,
    )
  })

  test('in the ledger, where one kit is one kit', () => {
    const move = { from: { in: 'stock' }, to: { in: 'hands', person: sampler.person } } as const
    expect(say('kits.moved', { ...move, count: 5, reason: '' })).toBe(
      '5 kits moved: in stock → in hand: Ines Tarr.',
    )
    expect(say('kits.moved', { ...move, count: 1, reason: 'asked' })).toBe(
      '1 kit moved: in stock → in hand: Ines Tarr (asked).',
    )
  })

  test('and a reason is told in words, not by its code', () => {
    expect(
      say('label.voided', { number: bag().bag, copy: 1, reason: 'kit-spoiled', words: '' }),
    ).toMatch(/void: kit spoiled\.$/)
    expect(
      say('variance.explained', {
        date: '2026-11-14' as never,
        item: { of: 'kits-in-stock' },
        expected: 80,
        counted: 79,
        reason: 'spoiled-not-recorded',
        words: '',
      }),
    ).toBe('Kits in stock: variance of −1 explained: spoiled, not recorded.')
  })
})
