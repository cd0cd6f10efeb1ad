import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { laboratoryFile, laboratorySays } from '../../electron/station/practice/laboratory-file.ts'
import { isFinal } from '../../electron/station/animal-result.ts'
import type { LaboratoryFile } from '../../electron/station/practice/laboratory-file.ts'
import { verifyLog } from '../../db/log/verify.ts'
import { type ResultReading, ResultWord } from '../../shared-types/laboratory-result.ts'
import { LocalDate } from '../../shared-types/local-date.ts'
import { grouped } from '../../shared-types/sample-number.ts'
import { leadPin } from '../support/desk.ts'
import { bring, laboratory } from '../support/delivered.ts'
import { bagsSent, factsIn, playSeason, type Season } from '../support/season.ts'
import { folderForFile } from './played.ts'

const folder = folderForFile()
let season: Season
let file: LaboratoryFile

beforeAll(async () => {
  season = await playSeason(folder, { desks: 2, animals: 60, seed: 11 })
  const sent = await bagsAway()
  file = laboratoryFile({
    seed: 5,
    sent,
    tooEarly: LocalDate.parse('2026-01-05'),
    tested: LocalDate.parse('2026-11-22'),
  })
}, 240_000)
afterAll(() => season?.desk.end())

/** The bags that a courier took: those of signed manifests. */
async function bagsAway() {
  const { bags } = await season.desk.ask('results.overdue', {})
  const known = new Set(bagsSent(factsIn(season.log)).map(({ bag }) => bag))
  return bags.map(({ bag }) => bag).filter((bag) => known.has(bag))
}

/** Honest rows of tissue that a sampler of the practice day bagged without being sure of it. */
function rowsNotedOtherwise() {
  const facts = factsIn(season.log)
  const sealed = facts.flatMap(({ kind, body }) => (kind === 'bag.sealed' ? [body] : []))
  const unsure = new Set(
    facts.flatMap(({ kind, body }) =>
      kind === 'tissue.checked' && body.check === 'unsure' ? [body.animal + body.site] : [],
    ),
  )
  return sealed
    .filter(({ animal, site, bag }) => {
      return unsure.has(animal + site) && file.honest.get(bag) === 'not-detected'
    })
    .map(({ bag }) => ({
      line: 1 + file.text.split('\r\n').findIndex((row) => row.includes(grouped(bag))),
      doubt: 'wrong-tissue' as const,
      bag,
    }))
}

const reading: ResultReading = {
  table: { is: 'text', encoding: 'utf-8', delimiter: ';' },
  linesAbove: 3,
  number: { at: 1, heading: 'Sample ID' },
  word: { at: 2, heading: 'Result' },
  method: { at: 3, heading: 'Method' },
  methodSaid: '',
  tested: { at: 4, heading: 'Date tested' },
  testedOn: null,
  dateOrder: 'month-day-year',
  words: [
    ...ResultWord.options.map((means) => ({ said: laboratorySays[means], means })),
    { said: 'QC', means: 'skip' },
  ],
}

// From check-in to told hunters, in the order in which it happens.
describe('a practice season', () => {
  test('its laboratory’s file is looked at, and what cannot be known is asked', async () => {
    const look = await season.desk.ask('results.look', {
      brought: await bring(season.desk, file.text),
      laboratory,
      table: null,
      linesAbove: null,
      wordColumn: 2,
      dateColumn: 4,
    })
    expect(look).toMatchObject({
      table: { delimiter: ';', encoding: 'utf-8' },
      delimiterSure: true,
      linesAbove: 3,
      dateOrders: ['month-day-year'],
    })
  })

  test('is read in: every honest row becomes a result, and every planted one is caught by its name', async () => {
    expect(file.planted.length).toBe(14)
    const brought = await bring(season.desk, file.text)
    const done = await season.desk.ask('results.import', { brought, laboratory, reading })
    const unsure = rowsNotedOtherwise()
    const expected = [...file.planted, ...unsure].map(({ line, doubt }) => `${line} ${doubt}`)
    expect(done).toEqual({
      taken: file.honest.size + 1 - unsure.length,
      known: 0,
      skipped: 1,
      doubts: expected.length,
    })
    const { doubts } = await season.desk.ask('results.doubts', {})
    const caught = doubts.map(({ line, doubt }) => `${line} ${doubt}`)
    expect(caught.toSorted()).toEqual(expected.toSorted())
    for (const { animals } of await Promise.all(
      ResultWord.options.map((word) =>
        season.desk.ask('results.animals', { word, untoldOnly: false }),
      ),
    ))
      for (const { samples } of animals)
        for (const { bag, word } of samples)
          expect(word).toBe(file.honest.get(bag) ?? 'not-detected')
  })

  test('its rows in doubt are settled one by one by a person, with the bag that was meant', async () => {
    const { doubts } = await season.desk.ask('results.doubts', {})
    let contradictory = 0
    for (const { file: of, line, doubt } of doubts) {
      const rows = [...file.planted, ...rowsNotedOtherwise()]
      const meant = rows.find((each) => each.line === line)?.bag ?? null
      contradictory += doubt === 'contradictory' ? 1 : 0
      const isTaken = meant !== null && doubt !== 'twice' && contradictory !== 2
      if (doubt === 'contradictory' && contradictory === 2) contradictory += 1
      await season.desk.ask('results.settle', {
        file: of,
        line,
        settlement: isTaken ? 'taken' : 'left',
        bag: isTaken ? meant : '',
        word: doubt === 'word-not-known' && isTaken ? 'not-detected' : null,
        tested: doubt.startsWith('date') ? LocalDate.parse('2026-11-22') : null,
        words: 'the laboratory was asked',
      })
    }
    expect((await season.desk.ask('results.doubts', {})).open).toBe(0)
    const { words } = await season.desk.ask('results', {})
    expect(words.find(({ word }) => word === 'detected')?.animals).toBeGreaterThan(0)
  })

  test('ends with every hunter told whose result is final, detections first and followed up', async () => {
    const { animals: urgent } = await season.desk.ask('results.followUp', {})
    for (const { animal, word } of urgent) {
      await season.desk.ask('result.followUp', { animal, step: 'veterinarian-told', words: '' })
      if (word === 'detected') await tell([animal], 'phone')
    }
    for (const word of ResultWord.options.filter(isFinal)) {
      const { animals } = await season.desk.ask('results.animals', { word, untoldOnly: true })
      if (animals.length > 0)
        await tell(
          animals.map(({ animal }) => animal),
          'letter',
        )
    }
    const { words } = await season.desk.ask('results', {})
    expect(words.map(({ untold }) => untold)).toEqual([0, 0, 0, 0, 0])
  })

  async function tell(animals: string[], how: 'phone' | 'letter') {
    const on = LocalDate.parse('2026-11-25')
    await season.desk.ask('hunter.tell', { animals, how, on, words: '' })
  }

  test('and with contacts erased and a log that is whole', async () => {
    const { days } = await season.desk.ask('retention', {})
    const upTo = days.at(-1)?.day
    if (upTo === undefined) throw new Error('no contact was left at check-in')
    const wait = days.reduce((all, { untold, awaiting }) => all + untold + awaiting, 0)
    const purged = await season.desk.ask('contacts.purge', { upTo, pin: leadPin, sure: wait > 0 })
    expect(purged).toMatchObject({ whole: true, clean: true })
    const verified = verifyLog(season.log)
    expect(verified).toMatchObject({ whole: true })
  })
})
