/** Where results stand as a whole, the rules they are worked by, and what is overdue. */
import { stringify } from 'csv-stringify/sync'
import type { ReadableLog } from '../../../db/connection.ts'
import { resultFiles, resultRulesOf } from '../../../db/read/results.ts'
import { countOpenDoubts } from '../../../db/read/row-doubts.ts'
import { bagsAwaiting, countAwaiting } from '../../../db/read/told.ts'
import { draft } from '../../../shared-types/entry.ts'
import { granted } from '../../../shared-types/result.ts'
import type { OverdueView, ResultFileView } from '../../../shared-types/views/results.ts'
import { localDate } from '../../station/local-time.ts'
import type { CommandHandlers, QueryHandlers } from '../call.ts'
import { namesOf } from '../names.ts'
import { areContactsDue } from './retention.ts'
import { heldBackIn, wordTallies } from './animals.ts'

const dayMs = 86_400_000
const mostListed = 500

function fileViews(log: ReadableLog): ResultFileView[] {
  const nameOf = namesOf(log)
  return resultFiles(log).map(({ hash: _hash, reading: _reading, by, ...file }) => ({
    ...file,
    by: by ? nameOf(by) : '',
  }))
}

/** Bags with a courier or laboratory and without a result, oldest first. */
function awaiting(log: ReadableLog, now: number): OverdueView['bags'] {
  const { overdueDays } = resultRulesOf(log)
  return bagsAwaiting(log).map(
    ({ bag, animal, handoff, destination, signed_ms, sealed_ms, word }) => {
      const handedOffMs = signed_ms ?? sealed_ms
      const daysOut = Math.max(0, Math.floor((now - handedOffMs) / dayMs))
      const overdue = daysOut > overdueDays
      const pending = word === 'pending'
      return {
        bag,
        animal,
        handoff,
        handedOffMs,
        daysOut,
        overdue,
        pending,
        destination: destination ?? '',
      }
    },
  )
}

export const overviewQueries = {
  results: ({ log, station, now }) => {
    const files = fileViews(log)
    const named = [...files.map(({ laboratory }) => laboratory), station.settings.laboratory]
    return granted({
      rules: resultRulesOf(log),
      laboratories: [...new Set(named)],
      files,
      openDoubts: countOpenDoubts(log),
      words: wordTallies(log),
      overdue: awaiting(log, now).filter(({ overdue }) => overdue).length,
      heldBack: heldBackIn(log).size,
      awaiting: countAwaiting(log),
      contactsDue: areContactsDue(log, localDate(now, station.zone)),
    })
  },
  'results.overdue': ({ log, now }) => {
    const bags = awaiting(log, now)
    const days = resultRulesOf(log).overdueDays
    return granted({ days, all: bags.length, bags: bags.slice(0, mostListed) })
  },
  'results.overdueList': ({ log, station, now }) => {
    const rows = awaiting(log, now).map(({ handedOffMs, ...bag }) => ({
      ...bag,
      handedOff: localDate(handedOffMs, station.zone),
    }))
    const columns = [
      'bag',
      'animal',
      'handoff',
      'destination',
      'handedOff',
      'daysOut',
      'overdue',
      'pending',
    ]
    const text = stringify(rows, {
      columns,
      header: true,
      escape_formulas: true,
      cast: { boolean: (yes) => (yes ? 'yes' : 'no') },
    })
    return granted({ name: `awaiting-results-${log.desk}.csv`, text })
  },
} satisfies Partial<QueryHandlers>

export const overviewCommands = {
  'results.setRules': ({ act }, { rules }) =>
    act(() => granted({ drafts: [draft('results.rules-set', { rules })], value: {} })),
} satisfies Partial<CommandHandlers>
