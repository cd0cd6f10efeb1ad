import { describe, expect, test } from 'vitest'
import { manifestCautions } from '../../electron/print/manifest-front.ts'
import { type ManifestSheet, printManifest } from '../../electron/print/manifest.ts'
import { coolerNumber, grouped, handoffNumber } from '../../shared-types/sample-number.ts'
import {
  collisions,
  drawnPages,
  pageTexts,
  pageWords,
  pictureCount,
  sightings,
} from './read-pdf.ts'
import { bagsOf, desk, digest, smallHandoff } from './samples.ts'

async function texts(sheet: ManifestSheet): Promise<string[]> {
  return pageTexts(await printManifest(sheet, 'letter'))
}

const [blue, red] = smallHandoff.coolers
if (!blue || !red) throw new Error('the sample has two coolers')

const bigHandoff: ManifestSheet = {
  ...smallHandoff,
  coolers: [
    { ...blue, counted: 140, bags: bagsOf(1, 70) },
    { ...red, counted: 60, bags: bagsOf(101, 30) },
  ],
}

/** The numbers of the bags in the order in which a page lists them. */
function bagNumbers(text: string): string[] {
  return text.match(/26-KRV-A\d{4}-[LRX]-./g) ?? []
}

describe('the first page of a manifest', () => {
  test('says what goes from whom by whom to whom', async () => {
    const [page] = await texts(smallHandoff)
    expect(page).toContain(`Handoff manifest ${grouped(handoffNumber(desk, 1))}`)
    expect(page).toContain('From Kerravale Junction (KRV) desk A Saturday 14 November 2026')
    expect(page).toContain('Courier Tobias Anderle Ridge Road Freight vehicle KTR 4471')
    expect(page).toContain('To the laboratory Diagnostic laboratory, receiving dock')
  })

  test('gives number, seal, temperature and count of each cooler, and the total', async () => {
    const [page] = await texts(smallHandoff)
    expect(page).toContain(`${grouped(coolerNumber(desk, 3))} Blue two on ice 0045511 3.4 6`)
    expect(page).toContain(`${grouped(coolerNumber(desk, 4))} Red one frozen 0045512 −18.3 4`)
    expect(page).toContain('2 in all 10')
    expect(page).toContain(
      '10 bags listed: 5 left, 5 right, 0 obex. 10 fresh, for immunoassay (ELISA).',
    )
  })

  test('says when a count differs from the list, and why', async () => {
    const coolers = [
      { ...blue, counted: 5, difference: 'one bag kept back' },
      { ...red, counted: 5 },
    ]
    const [page] = await texts({ ...smallHandoff, coolers })
    expect(page).toContain('▲ 6 bags listed, 5 counted: one bag kept back')
    expect(page).toContain('▲ 4 bags listed, 5 counted: NO REASON GIVEN')
  })

  test('tells the test that tissue in formalin can have, and that it must not freeze', async () => {
    const bags = blue.bags.map((bag, place) =>
      place === 0 ? { ...bag, kept: 'formalin' as const } : bag,
    )
    const [page] = await texts({ ...smallHandoff, coolers: [{ ...blue, bags }] })
    expect(page).toContain(
      '5 fresh, for immunoassay (ELISA). 1 in formalin, for immunohistochemistry (IHC): never freeze.',
    )
  })

  test('says what custody is (EPA Region V manual 905R78115, 1978) and how to correct an error', async () => {
    const [page] = await texts(smallHandoff)
    expect(page).toMatch(
      /in your possession or in your view, locked up .* restricted secure area, or closed with a seal that breaks on opening/,
    )
    expect(page).toMatch(/single line through it, initialled and dated, in indelible ink/)
  })

  test('warns of open coolers, knives, dry ice, and puts carrier and local rules first', async () => {
    const [page] = await texts(smallHandoff)
    for (const caution of manifestCautions) expect(page).toContain(caution)
    for (const word of ['gloves', 'knife', 'seal', 'vent', 'carrier', 'local rules'])
      expect(manifestCautions.join(' ')).toContain(word)
  })

  test('has a place for everyone in the chain: name, time, and at the door temperature and condition', async () => {
    const [page] = await texts(smallHandoff)
    expect(page).toContain('Relinquished by Name: Ines Okonedo When: 14 Nov 2026 18:42 MST')
    expect(page).toContain('Received by courier sign here Name: Tobias Anderle When:')
    expect(page).toContain(
      'Received at the laboratory sign here Name: When: Coolest and warmest °C: Condition:',
    )
  })

  test('prints the condition where it is known, else leaves a line', async () => {
    const lines = async (condition: string) => (await texts({ ...smallHandoff, condition }))[0]
    expect(await lines('seals whole, lid of Red one cracked')).toContain(
      'Condition at handoff: seals whole, lid of Red one cracked',
    )
    expect(await lines('')).toContain('Condition at handoff: Relinquished by')
  })

  test('carries its number as Code 128 and the digest as Data Matrix and in words', async () => {
    const pdf = await printManifest(smallHandoff, 'a4')
    const seen = await sightings(await drawnPages(pdf, 300))
    const found = seen.map(({ format, text }) => `${format} ${text}`).toSorted()
    expect(found).toEqual([`Code128 ${handoffNumber(desk, 1)}`, `DataMatrix ${digest}`])
    expect((await pageTexts(pdf))[0]?.replaceAll(' ', '')).toContain(digest)
  })
})

describe('the bags of a manifest', () => {
  test('stand in consecutive order, whatever order they were packed in', async () => {
    const coolers = [{ ...blue, bags: blue.bags.toReversed() }, red]
    const listed = bagNumbers((await texts({ ...smallHandoff, coolers })).join(' '))
    expect(listed).toEqual([...blue.bags, ...red.bags].map(({ bag }) => grouped(bag)))
  })

  test('show side, species, how kept, when sealed and the tissue check', async () => {
    expect((await texts(smallHandoff)).join(' ')).toMatch(
      /1 26-KRV-A0001-L-. left white-tailed deer fresh 14 Nov 16:05 MST lymph node/,
    )
  })

  test('are counted at the foot of each page, and the last page has them all', async () => {
    const pages = await texts(bigHandoff)
    expect(pages.length).toBeGreaterThan(3)
    let soFar = 0
    pages.forEach((page, place) => {
      const here = bagNumbers(page).length
      soFar += here
      expect(page).toContain(`bags on this page ${here}, so far ${soFar} of 200`)
      expect(page).toContain(`page ${place + 1} of ${pages.length}`)
    })
    expect(soFar).toBe(200)
  })

  test('each stand in one place only', async () => {
    const listed = bagNumbers((await texts(bigHandoff)).join(' '))
    expect(new Set(listed).size).toBe(200)
  })

  test('stand under the number and seal of their cooler on every page', async () => {
    const pages = await texts(bigHandoff)
    for (const page of pages.slice(1)) expect(page).toMatch(/^Bags in cooler 26-KRV-A000[34]-C-. /)
  })
})

const [struck, added] = bagsOf(1, 1).map(({ bag }) => bag)

/** A bag taken off and one put on after the handoff, one bag marked, packed with dry ice. */
const correctedHandoff: ManifestSheet = {
  ...smallHandoff,
  supplements: handoffNumber(desk, 7),
  transport: 'Exempt animal specimen, chosen by the lead with Ms Orrin (the carrier’s page)',
  dryIceKg: 2.5,
  coolers: smallHandoff.coolers.map((each) => ({
    ...each,
    bags: each.bags
      .filter(({ bag }) => bag !== struck)
      .map((bag, place) => ({ ...bag, excursion: place === 1 })),
  })),
  corrections: [
    {
      edition: 2,
      replaces: digest,
      reason: 'found on the bench after the van had left',
      at: 'Sat 14 Nov 2026, 19:42 MST',
      initials: 'O. V.',
      strokes: [
        { bag: struck ?? bagOne(), cooler: 'Blue two', what: 'taken-off' },
        { bag: added ?? bagOne(), cooler: 'Blue two', what: 'added' },
      ],
    },
  ],
}

function bagOne(): never {
  throw new Error('a kit has two bags')
}

describe('a corrected manifest', () => {
  test('names the one it replaces, who struck what and why, and leaves the bag out of the list', async () => {
    const pages = await texts(correctedHandoff)
    const all = pages.join(' ')
    expect(pages[0]).toContain('CORRECTED · edition 2')
    expect(all).toContain(`replaces the one with digest ${digest.slice(0, 16)}`)
    expect(all).toMatch(/found on the bench.*O\. V\. Sat 14 Nov 2026/)
    expect(all).toContain(`${struck}, Blue two`)
    expect(all).toContain(`+ ${added}, Blue two`)
    expect(bagNumbers(all)).not.toContain(grouped(struck ?? bagOne()))
  })

  test('says which manifest it adds to, its class and dry ice, and which bags lay out of limits', async () => {
    const [page] = await texts(correctedHandoff)
    expect(page).toContain(`adds to manifest ${grouped(handoffNumber(desk, 7))}`)
    // 49 CFR 173.217(c): proper shipping name, class 9, UN1845 and net quantity.
    expect(page).toContain('Dry ice, UN1845, class 9: net 2.5 kg over all coolers.')
    expect(page).toContain('Class for transport: Exempt animal specimen, chosen by the lead')
    expect(page).toContain('2 bags lay in a cooler while it was outside its limits')
    const [plain] = await texts(smallHandoff)
    expect(plain).toContain('Class for transport: not chosen here')
  })
})

describe.each(['a4', 'letter'] as const)('on %s', (paper) => {
  const long = 'Upper Kerravale Junction weigh yard behind the old grain elevator, north gate'
  const awkward: ManifestSheet = {
    ...bigHandoff,
    practice: true,
    station: long,
    destination: `${long}; ${long}`,
    courier: { name: long, organisation: `${long}-${'x'.repeat(60)}`, vehicle: long },
    condition: `${long}, ${long}`,
    received: { ...bigHandoff.received, name: long },
    coolers: [
      { ...blue, name: long, seal: 'ABCDEFGHIJ0123456789', counted: 3, difference: long },
      red,
    ],
  }

  test('everything stands between the margins, at 10 points or more, and nothing collides', async () => {
    const width = paper === 'a4' ? 595.28 : 612
    for (const sheet of [bigHandoff, awkward])
      for (const words of await pageWords(await printManifest(sheet, paper))) {
        expect(words.filter(({ left, right }) => left < 35.5 || right > width - 35.5)).toEqual([])
        expect(words.filter(({ size }) => size < 9.99)).toEqual([])
        expect(collisions(words)).toEqual([])
      }
  })
})

describe('the file', () => {
  test('is the same to the byte for the same data, and holds no pictures', async () => {
    const [first, second] = [
      await printManifest(bigHandoff, 'a4'),
      await printManifest(bigHandoff, 'a4'),
    ]
    expect(Buffer.compare(first, second)).toBe(0)
    expect(await pictureCount(first)).toBe(0)
  })

  test('of a practice handoff says so on every page', async () => {
    const pages = await texts({ ...bigHandoff, practice: true })
    for (const page of pages) expect(page).toContain('PRACTICE')
    expect((await texts(bigHandoff)).join(' ')).not.toContain('PRACTICE')
  })

  test('says not read where nobody could read the temperature', async () => {
    const [page] = await texts({ ...smallHandoff, coolers: [{ ...blue, celsius: null }] })
    expect(page).toContain('0045511 not read 6')
  })
})

test('a corrected manifest says for which edition both signed, and leaves a line for the new one', async () => {
  const corrected = {
    edition: 2,
    replaces: 'a'.repeat(64),
    reason: 'found on the bench',
    at: 'Sat 14 Nov 2026, 18:20 MST',
    initials: 'O. V.',
    strokes: [
      { bag: bagsOf(900, 1)[0]?.bag as never, cooler: 'North 1', what: 'taken-off' as const },
    ],
  }
  const pages = await pageTexts(
    await printManifest({ ...smallHandoff, corrections: [corrected] }, 'letter'),
  )
  const text = pages.join(' ').replaceAll(/\s+/g, ' ')
  expect(text).toContain('Received by courier (edition 1)')
  expect(text).toContain(
    'Edition 2 was made afterwards, initialled O. V. Sat 14 Nov 2026, 18:20 MST',
  )
  expect(text).toContain('Edition 2 acknowledged by courier or laboratory')
})

test('each bag says where its animal was taken; where nobody knows stands on the first page too', async () => {
  const [cooler] = smallHandoff.coolers
  if (!cooler) throw new Error('a load has a cooler')
  const bags = cooler.bags.map((bag, place) => (place === 0 ? { ...bag, harvest: '' } : bag))
  const pages = await pageTexts(
    await printManifest({ ...smallHandoff, coolers: [{ ...cooler, bags }] }, 'a4'),
  )
  const text = pages.join(' ').replaceAll(/\s+/g, ' ')
  expect(text).toContain('unit 12, head of Dry Fork')
  expect(text).toContain('▲ NOT KNOWN')
  expect(pages[0]?.replaceAll(/\s+/g, ' ')).toContain(
    'Of 1 bag nobody knows where the animal was taken',
  )
})
