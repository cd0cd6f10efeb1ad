/** Hunters told, detections followed up, and the look-up by animal number. */
import { stringify } from 'csv-stringify/sync'
import type { ReadableLog } from '../../../db/connection.ts'
import { animalOf } from '../../../db/read/animals.ts'
import { resultRulesOf, sampleResultsOf } from '../../../db/read/results.ts'
import { followUpsOf } from '../../../db/read/told.ts'
import { FollowUpStep, resultWords } from '../../../shared-types/laboratory-result.ts'
import { granted } from '../../../shared-types/result.ts'
import type { AnimalNumber } from '../../../shared-types/sample-number.ts'
import type { FollowUpView } from '../../../shared-types/views/results.ts'
import { animalResult } from '../../station/animal-result.ts'
import { localDate } from '../../station/local-time.ts'
import { heldBackTelling, heldBackWords, isHeldBack } from '../../station/results/held-back.ts'
import { detectionCautions, tellingWords } from '../../station/results/result-words.ts'
import { decideFollowUp, decideTold, type ToTell } from '../../station/results/telling.ts'
import type { CommandHandlers, QueryCall, QueryHandlers } from '../call.ts'
import { done } from '../decided.ts'
import { findAnimal } from '../find.ts'
import { animalsOf, aroundOf, resultAnimal, resultOfEach } from './animals.ts'
import { openRowsByAnimal } from './in-doubt.ts'

function wordOf(log: ReadableLog, animal: AnimalNumber) {
  return animalResult(sampleResultsOf(log, animal), resultRulesOf(log).obex).word
}

/** Detections first, then presumptive results; those with nothing left to do last. */
function followUps(call: QueryCall): FollowUpView['animals'] {
  const { log } = call
  const around = aroundOf(log)
  const numbers = (['detected', 'presumptive'] as const).flatMap((word) =>
    animalsOf(log, { word, untoldOnly: false }),
  )
  const views = numbers.flatMap((number) => {
    const animal = resultAnimal(call, number, around)
    return animal ? [{ ...animal, ...stepsOf(log, number, around.nameOf) }] : []
  })
  return views.toSorted((a, b) => Number(a.closed) - Number(b.closed))
}

function stepsOf(log: ReadableLog, animal: AnimalNumber, nameOf: (id: string) => string) {
  const done = followUpsOf(log, animal)
  const steps = FollowUpStep.options.map((step) => {
    const row = done.get(step)
    const by = row?.by ? nameOf(row.by) : ''
    return { step, done: row ? { by, ms: row.ms, words: row.words } : null }
  })
  return { steps, closed: done.has('closed') }
}

export const tellingQueries = {
  'results.followUp': (call) =>
    granted({ animals: followUps(call), cautions: [...detectionCautions] }),
  'results.lookUp': ({ log }, { animal: text }) => {
    const found = findAnimal(log, text)
    if (!found.ok) return found
    const { animal, facts } = found.value
    const rules = resultRulesOf(log)
    const results = sampleResultsOf(log, animal)
    const { word, because } = animalResult(results, rules.obex)
    const { species, harvested } = facts
    if (isHeldBack(word, openRowsByAnimal(log).get(animal) ?? 0))
      return granted({ animal, species, harvested, word: null, ...heldBackTelling, samples: [] })
    const { say, next } = tellingWords(word, rules.askWhom)
    return granted({
      animal,
      species,
      harvested,
      word,
      say: word === null ? say : `${say} ${because}`,
      next: next.join(' '),
      samples: results.map(({ laboratory: _laboratory, hash: _hash, ...sample }) => sample),
    })
  },
  'results.lookUpList': ({ log }) => {
    const openRows = openRowsByAnimal(log)
    const rows = [...resultOfEach(log)]
      .flatMap(([animal, { word }]) => {
        const record = animalOf(log, animal)
        if (word === null || !record) return []
        const result = isHeldBack(word, openRows.get(animal) ?? 0)
          ? heldBackWords
          : resultWords[word]
        return [{ animal, harvested: record.facts.harvested, result }]
      })
      .toSorted((a, b) => (a.animal < b.animal ? -1 : 1))
    const columns = ['animal', 'harvested', 'result']
    const text = stringify(rows, { columns, header: true, escape_formulas: true })
    return granted({ name: `look-up-${log.desk}.csv`, text })
  },
} satisfies Partial<QueryHandlers>

export const tellingCommands = {
  'hunter.tell': ({ act, station, now }, { animals, ...telling }) =>
    act((tx) => {
      const told: ToTell[] = []
      const openRows = openRowsByAnimal(tx)
      for (const text of new Set(animals)) {
        const found = findAnimal(tx, text)
        if (!found.ok) return found
        const { animal } = found.value
        told.push({ animal, word: wordOf(tx, animal), openRows: openRows.get(animal) ?? 0 })
      }
      const drafts = decideTold(told, telling, localDate(now, station.zone))
      return drafts.ok
        ? granted({ drafts: drafts.value, value: { told: drafts.value.length } })
        : drafts
    }),
  'result.followUp': ({ act }, { animal: text, step, words }) =>
    act((tx) => {
      const found = findAnimal(tx, text)
      if (!found.ok) return found
      const { animal } = found.value
      return done(decideFollowUp({ animal, word: wordOf(tx, animal) }, step, words))
    }),
} satisfies Partial<CommandHandlers>
