import { describe, expect, test } from 'vitest'
import { printPurgeCertificate } from '../../electron/print/purge-certificate.ts'
import { printResultLetters, type ResultLetter } from '../../electron/print/result-letter.ts'
import { tellingWords } from '../../electron/station/results/result-words.ts'
import { ResultWord } from '../../shared-types/laboratory-result.ts'
import { animalNumber, grouped } from '../../shared-types/sample-number.ts'
import { collisions, pageTexts, pageWords } from './read-pdf.ts'
import { desk } from './samples.ts'

function letter(word: ResultWord, serial: number, name = 'Pell Łukasz Arden'): ResultLetter {
  return {
    animal: animalNumber(desk, serial),
    name,
    hunter: 'H1001',
    species: 'Mule deer',
    harvested: '2026-11-14',
    unit: '12',
    because: 'One sample is enough, whatever the others say.',
    samples: ['Left node: detected by ELISA on 2026-11-24.'],
    ...tellingWords(word, 'Wildlife health office, weekdays'),
  }
}

const run = (letters: ResultLetter[], practice = false) => ({
  station: 'Cinder Gap',
  practice,
  date: '2026-12-04',
  letters,
  madeAtMs: Date.parse('2026-12-04T09:00:00-07:00'),
})

const textsOf = async (letters: ResultLetter[], practice = false) =>
  (await pageTexts(await printResultLetters(run(letters, practice), 'letter'))).map((text) =>
    text.replace(/\s+/g, ' '),
  )

describe('a letter to a hunter', () => {
  test('is one page each, to one hunter, about one animal', async () => {
    const pages = await textsOf([letter('detected', 1), letter('detected', 2, '')])
    expect(pages).toHaveLength(2)
    expect(pages[0]).toContain(grouped(animalNumber(desk, 1)))
    expect(pages[0]).toContain('Pell Łukasz Arden')
    expect(pages[1]).toContain(grouped(animalNumber(desk, 2)))
    expect(pages[1]).not.toContain('Arden')
    expect(pages[1]).toContain('To the hunter H1001')
  })

  // cdc.gov/prions/cwd/prevention.html: wait for results, do not eat meat of an animal that tests
  // positive, and a "not detected" does not guarantee that an animal was free of infection.
  test.each([
    [
      'detected',
      /Do not eat meat from an animal that tests positive.*veterinarian and the health authorities/,
    ],
    ['presumptive', /Wait for the second test\. Do not eat the meat until then/],
    ['not-detected', /no promise that the animal was free of it.*health authorities/],
    ['unsuitable', /could not be tested, so nothing is known.*Ask the agency/],
    ['pending', /Wait for the result before eating the meat/],
  ] as const)(
    'that says “%s” gives the usual caution and defers to who decides',
    async (word, words) => {
      const [page = ''] = await textsOf([letter(word, 1)])
      expect(page).toMatch(words)
      expect(page).toContain('Questions: Wildlife health office, weekdays.')
    },
  )

  test('of a practice log says so', async () => {
    expect((await textsOf([letter('detected', 1)], true))[0]).toContain(
      'PRACTICE, not a real result',
    )
  })

  test('has no words upon each other', async () => {
    const pdf = await printResultLetters(
      run(ResultWord.options.map((word, at) => letter(word, at + 1))),
      'a4',
    )
    for (const words of await pageWords(pdf)) expect(collisions(words)).toEqual([])
  })
})

test('a certificate says who erased how many contacts, and which entry proves it', async () => {
  const pdf = await printPurgeCertificate(
    {
      station: 'Cinder Gap',
      practice: false,
      desk: '26KRVA',
      by: 'Orla Vance',
      at: 'Fri 4 Dec 2026, 09:00 MST',
      upTo: '2026-11-15',
      contacts: 41,
      entry: { desk: '26KRVA', seq: 812, hash: 'ab'.repeat(32) },
      left: 0,
      printedAt: 'Fri 4 Dec 2026, 09:01 MST',
      madeAtMs: 0,
    },
    'letter',
  )
  const [page = ''] = await pageTexts(pdf)
  const text = page.replace(/\s+/g, ' ')
  expect(text).toContain('41 contacts of hunters whose animals came in up to and with 2026-11-15')
  expect(text).toContain('Erased by Orla Vance on Fri 4 Dec 2026, 09:00 MST')
  expect(text).toContain('number 812 of desk 26KRVA')
  expect(text).toContain('ab'.repeat(32))
  expect(text).toContain('the log held 0 contacts')
})
