import { describe, expect, test } from 'vitest'
import { symbolSize } from '../../electron/print/barcode.ts'
import { layBadgeLabel } from '../../electron/print/badge-label.ts'
import { layCoolerLabel } from '../../electron/print/cooler-label.ts'
import { stubCautions } from '../../electron/print/hunter-stub.ts'
import { layKitLabels, printKitLabels } from '../../electron/print/kit-labels.ts'
import type { KitLabels } from '../../electron/print/kit-labels.ts'
import { type LabelRun, writeLabels } from '../../electron/print/label-run.ts'
import { commonStocks } from '../../shared-types/common-stocks.ts'
import type { LabelStock } from '../../shared-types/label-stock.ts'
import { type Mark, mm } from '../../electron/print/mark.ts'
import {
  animalNumber,
  bagNumber,
  coolerNumber,
  grouped,
  kitNumber,
  personId,
} from '../../shared-types/sample-number.ts'
import { words, yes } from './runs.ts'
import { drawnPages, pageTexts, pictureCount, sightings } from './read-pdf.ts'
import { assignedKit, batch, desk, everyLabel, firstCopies, reservedKit } from './samples.ts'

const roll = commonStocks['roll-51x25']

async function printed(kits: readonly KitLabels[], stock: LabelStock = roll): Promise<Uint8Array> {
  return yes(await printKitLabels(kits, stock, batch))
}

function shapes(marks: readonly Mark[]) {
  return marks.filter((mark) => mark.kind === 'shape')
}

describe('a bag label', () => {
  const run = yes(layKitLabels([assignedKit(43)], roll, batch))
  const [left, right, obex] = run.pages

  test('has its number at the top left, in the largest type (CLSI AUTO12-A 2011)', () => {
    const texts = left?.marks.filter((mark) => mark.kind === 'text') ?? []
    const number = texts.find(({ text }) => text === grouped(bagNumber(desk, 43, 'L')))
    expect(number).toBeDefined()
    expect(number?.x).toBe(Math.min(...texts.map(({ x }) => x)))
    expect(number?.y).toBe(Math.min(...texts.map(({ y }) => y)))
    expect(number?.size).toBe(Math.max(...texts.map(({ size }) => size)))
    expect(number?.size).toBeGreaterThanOrEqual(10)
  })

  test('says species, date, station and how the tissue is kept', () => {
    expect(words(run)[0]).toContain(
      'LEFT FRESH mule deer · Sat 14 Nov 2026 Kerravale Junction (KRV)',
    )
    expect(words(run)[2]).toContain('OBEX FORMALIN')
  })

  test('tells the sides apart by shape as well as by word', () => {
    const [leftShape, rightShape, obexShape] = [left, right, obex].map(
      (page) => shapes(page?.marks ?? [])[0],
    )
    expect(leftShape?.thick).toBe('filled')
    expect(rightShape?.thick).not.toBe('filled')
    const tip = (shape: typeof leftShape) => {
      const xs = shape?.points.map(({ x }) => x) ?? []
      const tips = { left: Math.min(...xs), right: Math.max(...xs) }
      const at = (x: number) =>
        new Set(shape?.points.filter((point) => point.x === x).map(({ y }) => y)).size
      return { left: at(tips.left) === 1, right: at(tips.right) === 1 }
    }
    expect(tip(leftShape)).toEqual({ left: true, right: false })
    expect(tip(rightShape)).toEqual({ left: false, right: true })
    expect(tip(obexShape)).toEqual({ left: true, right: true })
  })

  test('carries Data Matrix and Code 128 of its own number', async () => {
    const seen = await sightings(await drawnPages(await printed([assignedKit(43)]), 203))
    for (const [page, part] of (['L', 'R', 'X'] as const).entries()) {
      const here = seen.filter((each) => each.page === page)
      expect(here.map(({ format }) => format).toSorted()).toEqual(['Code128', 'DataMatrix'])
      expect(new Set(here.map(({ text }) => text))).toEqual(new Set([bagNumber(desk, 43, part)]))
    }
  })

  test('says nothing of the hunter: no tag number, no animal number', () => {
    for (const text of words(run).slice(0, 3)) {
      expect(text).not.toContain('T904417')
      expect(text).not.toContain('A0017')
    }
  })

  test('has bars of at most 12.7 mm, however large the label (GS1 table 6)', () => {
    const run = yes(layKitLabels([assignedKit(43)], commonStocks['sheet-letter'], batch))
    for (const mark of run.pages.flatMap(({ marks }) => marks))
      if (mark.kind === 'barcode')
        expect(symbolSize(mark.symbol).height).toBeLessThanOrEqual(mm(12.7))
  })

  test('keeps the Data Matrix and drops the Code 128 on a label too narrow for both', async () => {
    const narrow: LabelStock = { ...roll, widthMm: 46 }
    const bag = { ...reservedKit(1), labels: firstCopies(['left']) }
    const seen = await sightings(await drawnPages(await printed([bag], narrow), 203))
    expect(seen.map(({ format }) => format)).toEqual(['DataMatrix'])
  })
})

describe('a reprinted label', () => {
  test('says so and how often, on every kind of label', () => {
    const labels = everyLabel.map((label) => ({ label, copy: 3 }))
    const run = yes(layKitLabels([{ ...assignedKit(43), labels }], roll, batch))
    const firsts = words(run).filter((text) => !/(Card|Stub) [2-9]/.test(text))
    expect(firsts).toHaveLength(6)
    for (const text of firsts) expect(text).toContain('REPRINT 2')
  })

  test('is only the one that was asked for', () => {
    const labels = [{ label: 'right' as const, copy: 2 }]
    const run = yes(layKitLabels([{ ...assignedKit(43), labels }], roll, batch))
    expect(run.blanks).toBe(1)
    expect(words(run)[0]).toContain('RIGHT FRESH REPRINT 1')
  })

  test('differs from a first print, which does not say REPRINT', () => {
    expect(words(yes(layKitLabels([assignedKit(43)], roll, batch))).join(' ')).not.toContain(
      'REPRINT',
    )
  })
})

describe('a data card', () => {
  const card = (kit: KitLabels): LabelRun =>
    yes(layKitLabels([{ ...kit, labels: firstCopies(['card']) }], roll, batch))
  const rules = (run: LabelRun): number =>
    run.pages.flatMap(({ marks }) => marks).filter(({ kind }) => kind === 'line').length
  const ticks = (run: LabelRun): number => run.pages.flatMap(({ marks }) => shapes(marks)).length

  test('of an assigned kit carries what the laboratory needs', () => {
    const text = words(card(assignedKit(43))).join(' ')
    for (const fact of Object.values(assignedKit(43).facts).slice(1)) expect(text).toContain(fact)
    expect(text).toContain('26-KRV-A0017-A')
    expect(text).toContain('26-KRV-A0043-K')
    expect(text).toContain('Kerravale Junction (KRV)')
    expect(text).not.toContain('pen')
  })

  test('of an assigned kit has nothing left to write', () => {
    expect(rules(card(assignedKit(43)))).toBe(0)
    expect(ticks(card(assignedKit(43)))).toBe(0)
  })

  test('of a reserved kit has lines and boxes to fill in with a ball-point pen', () => {
    const run = card(reservedKit(43))
    expect(words(run).join(' ')).toContain('ball-point pen')
    expect(rules(run)).toBe(7)
    expect(ticks(run)).toBe(7)
  })

  test('leaves a line for the one fact that is not known yet', () => {
    const { sampler: _, ...facts } = assignedKit(43).facts
    expect(rules(card({ ...assignedKit(43), facts }))).toBe(1)
  })

  test('numbers the labels of its strip', () => {
    const texts = words(card(reservedKit(43)))
    texts.forEach((text, place) => expect(text).toContain(`Card ${place + 1}/${texts.length}`))
  })
})

describe("a hunter's stub", () => {
  const stub = (kit: KitLabels): string =>
    words(yes(layKitLabels([{ ...kit, labels: firstCopies(['stub']) }], roll, batch))).join(' ')

  test("gives the animal's number to ask with, or the kit's while there is no animal", () => {
    const ask = 'Ask for the result with this one number, of your'
    expect(stub(assignedKit(43))).toContain(`${ask} animal: 26-KRV-A0017-A-C.`)
    expect(stub(reservedKit(43))).toContain(`${ask} kit: ${grouped(kitNumber(desk, 43))}.`)
  })

  test('shows that one number on each label of its strip, and reads no other one out', () => {
    for (const [kit, number] of [
      [assignedKit(43), grouped(animalNumber(desk, 17))],
      [reservedKit(43), grouped(kitNumber(desk, 43))],
    ] as const) {
      const shown = stub(kit).match(/26-KRV-A\d{4}-[A-Z]-[0-9A-Z]/g) ?? []
      expect(shown.length).toBeGreaterThanOrEqual(2)
      expect(new Set(shown)).toEqual(new Set([number]))
    }
  })

  test('says when and where in a whole sentence, however the station has typed it', () => {
    const asked = { ...batch, askAt: 'at the county office, from 5 December 2026' }
    const kit = { ...assignedKit(43), labels: firstCopies(['stub']) }
    const text = words(yes(layKitLabels([kit], roll, asked))).join(' ')
    expect(text).toContain('At the county office, from 5 December 2026.')
  })

  test('says when and where to ask for the result', () => {
    expect(stub(assignedKit(43))).toContain(batch.askAt)
  })

  test('warns as the public advice does: wait, do not eat a positive, gloves, follow the authorities', () => {
    // cdc.gov/prions/cwd/prevention.html
    const text = stub(assignedKit(43))
    for (const caution of stubCautions) expect(text).toContain(caution)
    expect(text).toMatch(
      /Wait for the result.*Do not eat meat of an animal that tests positive.*gloves.*authorities/,
    )
  })
})

describe('the file', () => {
  test('is the same to the byte for the same data', async () => {
    const [first, second] = [await printed([assignedKit(43)]), await printed([assignedKit(43)])]
    expect(Buffer.compare(first, second)).toBe(0)
  })

  test('differs when the data differ', async () => {
    const [first, second] = [await printed([assignedKit(43)]), await printed([assignedKit(44)])]
    expect(Buffer.compare(first, second)).not.toBe(0)
  })

  test('holds vectors and letters, no pictures', async () => {
    const pdf = await printed([assignedKit(43), reservedKit(44)])
    expect(await pictureCount(pdf)).toBe(0)
    expect(Buffer.from(pdf).includes('/Subtype /Image')).toBe(false)
  })

  test('gives the words back letter by letter, whatever alphabet a name is written in', async () => {
    const pdf = yes(
      await printKitLabels([assignedKit(43)], roll, { ...batch, station: 'Größe Łódź Ñandú Қыз' }),
    )
    expect((await pageTexts(pdf))[0]).toContain('Größe Łódź Ñandú Қыз')
  })
})

describe('a batch of ten kits', () => {
  const serials = Array.from({ length: 10 }, (_, place) => 101 + place)

  test('decodes whole, each number on one label only', async () => {
    const pdf = await printed(serials.map(reservedKit))
    const seen = await sightings(await drawnPages(pdf, 203))
    const numbers = new Map<string, Set<number>>()
    for (const { text, page } of seen) numbers.set(text, (numbers.get(text) ?? new Set()).add(page))
    const expected = serials.flatMap((serial) =>
      (['L', 'R', 'X'] as const).map((part) => bagNumber(desk, serial, part)),
    )
    for (const number of expected) expect(numbers.get(number)?.size, number).toBe(1)
    // The kit's own number is on its outer bag and on its data card.
    for (const serial of serials) expect(numbers.get(kitNumber(desk, serial))?.size).toBe(2)
    expect(numbers.size).toBe(10 * 5)
    expect(seen.filter(({ format }) => format === 'DataMatrix')).toHaveLength(40)
    expect(seen.filter(({ format }) => format === 'Code128')).toHaveLength(60)
  }, 60_000)
})

describe('a cooler label', () => {
  const cooler = coolerNumber(desk, 3)
  const run = yes(
    layCoolerLabel({ cooler, name: 'Blue two', kept: 'on ice', copy: 1 }, roll, batch),
  )

  test('shows number, name and how it is kept, and decodes', async () => {
    expect(words(run)[0]).toContain(`${grouped(cooler)} COOLER Blue two · on ice`)
    const seen = await sightings(await drawnPages(await writeLabels(run), 203))
    expect(seen.map(({ text }) => text)).toEqual([cooler, cooler])
  })
})

describe('a label to be written by hand', () => {
  const kit = { ...reservedKit(43), byHand: true }
  const run = yes(layKitLabels([kit], roll, batch))

  test('has lines for species and date instead of a printed date', () => {
    const [left] = words(run)
    expect(left).toContain('Species Date')
    expect(left).not.toContain(batch.date)
    const lines = run.pages[0]?.marks.filter(({ kind }) => kind === 'line')
    expect(lines).toHaveLength(2)
  })

  test('scans like any other', async () => {
    const seen = await sightings(await drawnPages(await writeLabels(run), 203))
    const left = bagNumber(desk, 43, 'L')
    expect(
      seen
        .filter(({ text }) => text === left)
        .map(({ format }) => format)
        .toSorted(),
    ).toEqual(['Code128', 'DataMatrix'])
  })
})

test('an outer bag label carries the number of its kit, and says KIT', async () => {
  const kit = { ...reservedKit(43), labels: firstCopies(['kit']) }
  const run = yes(layKitLabels([kit], roll, batch))
  expect(words(run)).toEqual([
    `${grouped(kitNumber(desk, 43))} KIT Sat 14 Nov 2026 Kerravale Junction (KRV)`,
  ])
  const seen = await sightings(await drawnPages(await writeLabels(run), 203))
  expect(seen.map(({ text }) => text)).toEqual([kitNumber(desk, 43), kitNumber(desk, 43)])
})

test('a badge carries the number that signs its wearer in, and their name in words only', async () => {
  const person = personId(desk, 3)
  const badge = { person, name: 'Ines Tarr', role: 'sampler', copy: 1 }
  const run = yes(layBadgeLabel(badge, roll, batch))
  expect(words(run)[0]).toContain(`${grouped(person)} CREW Ines Tarr · sampler`)
  const seen = await sightings(await drawnPages(await writeLabels(run), 203))
  expect(seen.map(({ text }) => text)).toEqual([person, person])
})
