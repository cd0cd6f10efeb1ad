/** Letters and mail merges: the only lists with names in them, for leads and the office. */
import { stringify } from 'csv-stringify/sync'
import { speciesWords } from '../../../shared-types/animal.ts'
import { resultRulesOf } from '../../../db/read/results.ts'
import { resultWords } from '../../../shared-types/laboratory-result.ts'
import { granted, type Result, refused } from '../../../shared-types/result.ts'
import { grouped } from '../../../shared-types/sample-number.ts'
import { siteWords } from '../../../shared-types/tissue.ts'
import type { Reach, ResultAnimalView } from '../../../shared-types/views/results.ts'
import { printResultLetters, type ResultLetter } from '../../print/result-letter.ts'
import { localDate } from '../../station/local-time.ts'
import { heldBack } from '../../station/results/held-back.ts'
import { tellingWords } from '../../station/results/result-words.ts'
import type { QueryCall, QueryHandlers } from '../call.ts'
import { paperOf, pdfFile } from '../pdf.ts'
import {
  animalsOf,
  aroundOf,
  mayReach,
  notYours,
  resultAnimal,
  type WhichAnimals,
} from './animals.ts'

/** Letters in one file. */
const mostLetters = 500

/** Whom a letter or a mail merge tells; an animal that a row in doubt holds back is in neither. */
function asked(call: QueryCall, which: WhichAnimals): Result<ResultAnimalView[]> {
  if (!mayReach(call)) return notYours()
  const numbers = animalsOf(call.log, which)
  if (numbers.length === 0)
    return refused(
      'nobody-to-tell',
      `No animal of this list is ${resultWords[which.word]}.`,
      'Choose another result, or show those who were told already.',
      'word',
    )
  const around = aroundOf(call.log)
  const animals = numbers.flatMap((number) => resultAnimal(call, number, around) ?? [])
  const toTell = animals.filter((animal) => !animal.heldBack)
  const [first] = animals
  return toTell.length === 0 && first ? heldBack(first.animal) : granted(toTell)
}

function sampleLine({ site, word, method, tested }: ResultAnimalView['samples'][number]): string {
  const how = method === '' ? '' : ` by ${method}`
  const when = tested === null ? '' : ` on ${tested}`
  return `${capital(siteWords[site])}: ${resultWords[word]}${how}${when}.`
}

const capital = (words: string) => words.charAt(0).toUpperCase() + words.slice(1)

function letterOf(animal: ResultAnimalView, askWhom: string): ResultLetter {
  const { say, next } = tellingWords(animal.word, askWhom)
  const { hunter, harvested, unit, because } = animal
  return {
    animal: animal.animal,
    hunter,
    harvested,
    unit,
    because,
    say,
    next,
    name: animal.reach.is === 'here' ? animal.reach.name : '',
    species: capital(speciesWords[animal.species]),
    samples: animal.samples.map(sampleLine),
  }
}

/** What stands in the place of a contact that cannot be read, so that nobody takes it for a slip. */
const instead: Record<Exclude<Reach['is'], 'here'>, string> = {
  'none-left': 'no contact was left',
  erased: 'contact erased after results were told',
  locked: 'contact locked on this laptop',
  'not-yours': 'contact not shown',
}

function mergeRow(animal: ResultAnimalView, askWhom: string) {
  const { reach } = animal
  const { say, next } = tellingWords(animal.word, askWhom)
  const here = reach.is === 'here' ? reach : { name: '', phone: '', email: '' }
  return {
    animal: grouped(animal.animal),
    hunter: animal.hunter,
    tag: animal.tag,
    name: here.name,
    phone: here.phone,
    email: here.email,
    contact: reach.is === 'here' ? 'kept' : instead[reach.is],
    species: speciesWords[animal.species],
    harvested: animal.harvested,
    unit: animal.unit,
    result: resultWords[animal.word],
    says: say,
    next: next.join(' '),
  }
}

export const letterQueries = {
  'results.letters': async (call, which) => {
    const animals = asked(call, which)
    if (!animals.ok) return animals
    if (animals.value.length > mostLetters)
      return refused(
        'too-many-letters',
        `${animals.value.length} letters are too many for one file; ${mostLetters} fit.`,
        'Record those you have told, or use the mail merge.',
        'word',
      )
    const { log, station, now } = call
    const { askWhom } = resultRulesOf(log)
    const date = localDate(now, station.zone)
    const letters = animals.value.map((animal) => letterOf(animal, askWhom))
    const { name, practice } = station
    const run = { station: name, practice, date, letters, madeAtMs: now }
    const pdf = await printResultLetters(run, paperOf(station.zone))
    return granted(pdfFile(`letters-${which.word}-${date}.pdf`, pdf))
  },
  'results.mailMerge': (call, which) => {
    const animals = asked(call, which)
    if (!animals.ok) return animals
    const { askWhom } = resultRulesOf(call.log)
    const rows = animals.value.map((animal) => mergeRow(animal, askWhom))
    // The mark in front lets spreadsheets and mail merges read names with accents rightly.
    const text = `\uFEFF${stringify(rows, { header: true, escape_formulas: true })}`
    const date = localDate(call.now, call.station.zone)
    return granted({ name: `mail-merge-with-names-${which.word}-${date}.csv`, text })
  },
} satisfies Partial<QueryHandlers>
