import { describe, expect, test } from 'vitest'
import { type KitLabels, layKitLabels } from '../../electron/print/kit-labels.ts'
import { commonStocks } from '../../shared-types/common-stocks.ts'
import type { LabelStock } from '../../shared-types/label-stock.ts'
import { grouped, kitNumber } from '../../shared-types/sample-number.ts'
import { overlaps, stickingOut } from './marks.ts'
import { words, yes } from './runs.ts'
import { assignedKit, batch, desk, everyLabel, firstCopies, reservedKit } from './samples.ts'

const roll = commonStocks['roll-51x25']

describe.each(Object.entries(commonStocks))('on a label of %s', (_, { widthMm, heightMm, dpi }) => {
  // Alone on its page, so that the edge of the page is the edge of the label.
  const stock: LabelStock = { ...roll, widthMm, heightMm, dpi }
  const awkward: KitLabels = {
    ...assignedKit(43),
    facts: {
      ...assignedKit(43).facts,
      species: 'white-tailed deer',
      harvestPlace:
        'Unit 48, upper Sorrel drainage above the second bridge, north bank, 44.12345 N 110.54321 W',
      headCondition: 'head only, skinned for the taxidermist, skull plate cut, neck shot',
      sampler: 'Bartholomew-Constantine Featherstonehaugh-Wolstenholme',
    },
  }
  const runs = [reservedKit(1), assignedKit(43), awkward].map((kit) =>
    yes(
      layKitLabels([kit], stock, {
        ...batch,
        practice: true,
        station: 'Upper Kerravale Junction weigh yard (KRV)',
      }),
    ),
  )

  test('nothing sticks out of a label, and nothing lies over anything else', () => {
    for (const page of runs.flatMap((run) => run.pages)) {
      expect(stickingOut(page)).toEqual([])
      expect(overlaps(page)).toEqual([])
    }
  })

  test('no type is smaller than 6 points', () => {
    for (const mark of runs.flatMap((run) => run.pages).flatMap(({ marks }) => marks))
      if (mark.kind === 'text') expect(mark.size).toBeGreaterThanOrEqual(6)
  })

  test('labels of a practice day say so', () => {
    for (const run of runs) expect(words(run)[0]).toContain('PRACTICE')
  })

  test('the blanks it says it used are the labels it drew', () => {
    const numbers = /26-KRV-A\d{4}-[LRX]-.|KIT |(Card|Stub) \d/g
    for (const run of runs) expect(words(run).join(' ').match(numbers)).toHaveLength(run.blanks)
  })
})

describe('a label that does not fit', () => {
  test('is refused, naming a stock that would do', () => {
    const tiny: LabelStock = { ...roll, widthMm: 25, heightMm: 12 }
    const answer = layKitLabels([reservedKit(1)], tiny, batch)
    expect(answer).toEqual({
      ok: false,
      refusal: {
        code: 'label-too-small',
        say: `The left bag label of kit ${grouped(kitNumber(desk, 1))} does not fit roll, 25 × 12 mm, 203 dpi.`,
        next: 'Load roll, 50.8 × 25.4 mm, 203 dpi and print again.',
        field: 'stock',
      },
    })
  })

  test.each(everyLabel)('because of a very long name says what else would help: %s', (label) => {
    const station = 'An endless name '.repeat(60)
    const kit = { ...reservedKit(1), labels: firstCopies([label]) }
    const answer = layKitLabels([kit], roll, { ...batch, station })
    expect(answer.ok ? '' : answer.refusal.next).toContain('Shorten the names')
  })

  test.each(everyLabel)('on the roll for its long name is sent to a larger stock: %s', (label) => {
    const station = 'A rather long name '.repeat(12)
    const kit = { ...reservedKit(1), labels: firstCopies([label]) }
    const answer = layKitLabels([kit], roll, { ...batch, station })
    expect(answer.ok ? '' : answer.refusal.next).toMatch(/^Load (?:roll|.* sheet), /)
  })

  test('is not the only refusal: no label at all is one too', () => {
    const answer = layKitLabels([], roll, batch)
    expect(answer.ok ? '' : answer.refusal.code).toBe('nothing-to-print')
  })
})
