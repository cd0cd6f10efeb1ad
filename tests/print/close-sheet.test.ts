import { describe, expect, test } from 'vitest'
import { attentionLines } from '../../electron/print/close-attention.ts'
import { type CloseSheet, printCloseSheet } from '../../electron/print/close-sheet.ts'
import { coolerNumber } from '../../shared-types/sample-number.ts'
import { collisions, pageTexts, pageWords, pictureCount } from './read-pdf.ts'
import { desk, quietDay } from './samples.ts'

const short = {
  what: 'kits in hand',
  place: 'sampler 3',
  expected: 12,
  counted: 10,
  reason: 'lost',
}

const hardDay: CloseSheet = {
  ...quietDay,
  counts: [...quietDay.counts, short, { ...short, expected: 4, counted: 5, reason: '' }],
  readingsOutside: [
    { cooler: 'Blue two', celsius: -1.5, limits: '0 to 6 °C', at: '14 Nov 14:10 MST', by: 'no. 3' },
  ],
  coolersHere: [
    { cooler: coolerNumber(desk, 3), name: 'Blue two', bags: 14, seal: '' },
    { cooler: coolerNumber(desk, 4), name: 'Red one', bags: 22, seal: '0045512' },
  ],
  amendments: [{ at: '15 Nov 07:10 MST', by: 'Ines Okonedo', words: 'Tag number corrected.' }],
}

async function texts(sheet: CloseSheet): Promise<string[]> {
  return pageTexts(await printCloseSheet(sheet, 'letter'))
}

describe('the first lines of a close sheet', () => {
  test('of a quiet day say that nothing needs attention', () => {
    expect(attentionLines(quietDay)).toEqual([
      '✓ All 2 counts agree.',
      '✓ All temperature readings within limits.',
      '✓ No bags are left in coolers here.',
    ])
  })

  test('of a hard day say what does, each with its number', () => {
    expect(attentionLines(hardDay)).toEqual([
      '▲ 2 of 4 counts differ. 1 WITHOUT A REASON.',
      '▲ 1 temperature reading outside limits.',
      '▲ 36 bags are still in coolers here.',
      '▲ Amended after an earlier close: 1 entry.',
    ])
  })

  test('tell an explained variance from one without a reason', () => {
    const [line] = attentionLines({ ...quietDay, counts: [short] })
    expect(line).toBe('▲ 1 of 1 counts differ. Each has a reason.')
  })
})

describe('a close sheet', () => {
  test('says whose day it closes, who led it and when it was signed', async () => {
    const [page] = await texts(quietDay)
    expect(page).toContain('Kerravale Junction (KRV) · desk A · Saturday 14 November 2026')
    expect(page).toContain('Lead Ines Okonedo · signed 14 Nov 2026 18:42 MST')
  })

  test('shows expected, counted, variance and reason of each thing', async () => {
    const [page] = await texts(hardDay)
    expect(page).toContain('animals checked in station 58 58 0')
    expect(page).toContain('kits in hand sampler 3 12 10 −2 lost')
    expect(page).toContain('kits in hand sampler 3 4 5 +1 NO REASON GIVEN')
  })

  test('counts animals by outcome and gives the waits in minutes', async () => {
    const [page] = await texts(quietDay)
    expect(page).toContain('both sides 52 one side 4 none 2 All 58')
    expect(page).toContain('Median 14 min Nine of ten within 38 min')
  })

  test('sets samples out by site and tissue check', async () => {
    const [page] = await texts(quietDay)
    expect(page).toContain('Site lymph node unsure left 52 2 right 54 0')
  })

  test('lists readings outside limits, coolers kept back, amendments and the proof', async () => {
    const [page] = await texts(hardDay)
    expect(page).toContain('Blue two −1.5 0 to 6 °C 14 Nov 14:10 MST no. 3')
    expect(page).toContain('Blue two 14 NOT SEALED')
    expect(page).toContain('15 Nov 07:10 MST Ines Okonedo Tag number corrected.')
    expect(page).toContain('Proof: 1432 entries, chain head 2d5e01a318d0f087.')
  })

  test('names who signed beside the lead, kits for tomorrow and the note to the next lead', async () => {
    const [page] = await texts({ ...quietDay, handover: 'the lid of Blue two is cracked' })
    expect(page).toContain('Second person Tobias Reed, with their own PIN')
    expect(page).toContain('Kits for tomorrow: About 60 animals. Here: 40. Ask for 35.')
    expect(page).toContain('To the next lead: the lid of Blue two is cracked')
  })

  test('tells unfit tissue by reason, and by sampler in the lead’s own copy only', async () => {
    const unfit = [
      { why: 'seen: muscle', sampler: 'Ines', count: 3 },
      { why: 'seen: muscle', sampler: 'Bo', count: 1 },
    ]
    expect((await texts({ ...quietDay, unfit }))[0]).toContain('seen: muscle (Ines 3, Bo 1) 4')
    const others = (await texts({ ...quietDay, unfit, unfitBySampler: false }))[0]
    expect(others).toContain('seen: muscle 4')
    expect(others).not.toContain('Ines 3')
  })

  test('says so where there is nothing to list', async () => {
    const [page] = await texts({
      ...quietDay,
      waits: { medianMinutes: null, ninetiethMinutes: null },
    })
    expect(page).toContain('Temperature readings outside limits: none.')
    expect(page).toContain('Still in coolers here: nothing.')
    expect(page).toContain('Amendments after an earlier close: none.')
    expect(page).toContain('Median not known')
  })

  test.each(['a4', 'letter'] as const)('of an ordinary day is one page of %s', async (paper) => {
    const pages = await pageTexts(await printCloseSheet(hardDay, paper))
    expect(pages).toHaveLength(1)
    expect(pages[0]).toContain('page 1 of 1')
  })

  test('of a practice day says so', async () => {
    expect((await texts({ ...quietDay, practice: true }))[0]).toContain('PRACTICE')
    expect((await texts(quietDay))[0]).not.toContain('PRACTICE')
  })

  test('goes on with its head on further pages when there is more, and loses no row', async () => {
    const counts = Array.from({ length: 90 }, (_, place) => ({ ...short, what: `thing-${place}.` }))
    const pages = await texts({ ...quietDay, counts })
    expect(pages.length).toBeGreaterThan(1)
    pages.forEach((page, place) => expect(page).toContain(`page ${place + 1} of ${pages.length}`))
    expect(pages[1]).toContain('What Place Expected Counted Variance Reason')
    for (const { what } of counts) expect(pages.join(' ').split(what)).toHaveLength(2)
  })

  test('cuts a reason longer than a page rather than losing its end', async () => {
    const reason = `${'because '.repeat(900)}of this.`
    const pages = await texts({ ...quietDay, counts: [{ ...short, reason }] })
    expect(pages.join(' ').match(/because/g)).toHaveLength(900)
    expect(pages.join(' ')).toContain('of this.')
  })

  test.each(['a4', 'letter'] as const)(
    'keeps long names between the margins of %s',
    async (paper) => {
      const long = 'Upper Kerravale Junction weigh yard behind the old grain elevator, north gate'
      const sheet = {
        ...hardDay,
        station: long,
        lead: { ...hardDay.lead, name: long },
        counts: [
          {
            ...short,
            what: long,
            place: long,
            reason: `${long}${'x'.repeat(90)}`,
            counted: 999_999,
          },
        ],
        outcomes: [{ words: long, count: 1 }],
        samples: ['lymph node', 'salivary gland', 'muscle', 'fat', 'obex', 'unsure'].map(
          (check) => ({
            site: 'left',
            check,
            count: 1234,
          }),
        ),
      }
      const width = paper === 'a4' ? 595.28 : 612
      for (const words of await pageWords(await printCloseSheet(sheet, paper))) {
        expect(words.filter(({ left, right }) => left < 35.5 || right > width - 35.5)).toEqual([])
        expect(collisions(words)).toEqual([])
      }
    },
  )

  test('is the same to the byte for the same data, and holds no pictures', async () => {
    const [first, second] = [
      await printCloseSheet(hardDay, 'a4'),
      await printCloseSheet(hardDay, 'a4'),
    ]
    expect(Buffer.compare(first, second)).toBe(0)
    expect(await pictureCount(first)).toBe(0)
  })

  test('can be signed by PIN or on paper as well', async () => {
    const by = (how: 'pin' | 'on-paper') =>
      texts({ ...quietDay, lead: { ...quietDay.lead, hand: { how } } })
    expect((await by('pin'))[0]).toContain('signed with PIN at the desk')
    expect((await by('on-paper'))[0]).toContain('sign here')
  })
})
