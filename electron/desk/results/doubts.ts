/** Rows of laboratory files in doubt: shown, and settled by a person. */
import type { RowDoubtTable } from '../../../db/result-tables.ts'
import { readingOfFile } from '../../../db/read/results.ts'
import {
  countOpenDoubts,
  doubtAt,
  openDoubts,
  openDoubtsOf,
  settledDoubts,
} from '../../../db/read/row-doubts.ts'
import type { ResultReading, ResultWord } from '../../../shared-types/laboratory-result.ts'
import type { ParsedInput } from '../../../shared-types/desk-api.ts'
import type { EntryDraft } from '../../../shared-types/entry.ts'
import { granted, type Result, refused } from '../../../shared-types/result.ts'
import type { RecordSeen } from '../../station/results/result-check.ts'
import { readBag } from '../../station/results/result-number.ts'
import { readDay } from '../../station/results/result-date.ts'
import { canTakeAsItStands, decideSettle } from '../../station/results/result-drafts.ts'
import { doubtSentence } from '../../station/results/doubt-words.ts'
import { wordKey } from '../../station/results/result-rows.ts'
import type { CommandHandlers, QueryHandlers } from '../call.ts'
import { namesOf } from '../names.ts'
import { importingOf, readingInNow } from './import.ts'
import { recordSeen } from './record-seen.ts'

/** What a word of the file means by its reading; null where it has no meaning. */
function meaningOf(reading: ResultReading | null, said: string): ResultWord | null {
  const means = reading?.words.find((each) => wordKey(each.said) === wordKey(said))?.means
  return means === undefined || means === 'skip' ? null : means
}

/** Detections first: nobody should have to look for them. */
const rank: Record<ResultWord, number> = {
  detected: 0,
  presumptive: 1,
  'not-detected': 3,
  unsuitable: 2,
  pending: 4,
}

export const doubtQueries = {
  'results.doubts': ({ log }, { settled }) => {
    const nameOf = namesOf(log)
    const readings = new Map<string, ResultReading | null>()
    const readingFor = (file: string) => {
      if (!readings.has(file)) readings.set(file, readingOfFile(log, file)?.reading ?? null)
      return readings.get(file) ?? null
    }
    const views = (settled ? settledDoubts(log) : openDoubts(log)).map((row) =>
      doubtView(row, meaningOf(readingFor(row.file), row.said), nameOf),
    )
    const doubts = settled ? views : views.toSorted((a, b) => order(a.word) - order(b.word))
    return granted({ open: countOpenDoubts(log), doubts })
  },
} satisfies Partial<QueryHandlers>

const order = (word: ResultWord | null) => (word === null ? 2 : rank[word])

function doubtView(row: RowDoubtTable, word: ResultWord | null, nameOf: (id: string) => string) {
  const { file, file_name, laboratory, line, doubt, bag, number, said, method, date, ms } = row
  const { settlement, words, settled_by, settled_ms } = row
  return {
    file,
    fileName: file_name,
    laboratory,
    line,
    doubt,
    bag,
    number,
    said,
    method,
    date,
    ms,
    word,
    ...doubtSentence({ doubt, number, said, date, bag }),
    canTake: canTakeAsItStands(doubt),
    settled:
      settlement === null
        ? null
        : { settlement, words, by: settled_by ? nameOf(settled_by) : '', ms: settled_ms ?? 0 },
  }
}

type Asked = ParsedInput<'results.settle'>

/** The result that a person settled on: what they gave, and where they gave nothing what the row says. */
function settledResult(row: RowDoubtTable, asked: Asked, reading: ResultReading | null) {
  const word = asked.word ?? meaningOf(reading, row.said)
  if (word === null) return needs('word', 'what the result is')
  const bag = asked.bag === '' ? bagOf(row) : readBag(asked.bag)
  if (!bag.ok) return needs('bag', 'the number of the bag, its check character included')
  const written = reading ? readDay(row.date, reading.dateOrder) : null
  if (row.date !== '' && written === null && asked.tested === null)
    return needs('tested', 'the day of the test')
  const tested = asked.tested ?? written ?? reading?.testedOn ?? null
  const { method, laboratory } = row
  return granted({ bag: bag.bag, word, method, tested, laboratory })
}

function bagOf(row: RowDoubtTable) {
  // A number put right by adding noughts is only taken where a person typed it.
  return row.bag !== null && row.doubt !== 'number-damaged'
    ? { ok: true as const, bag: row.bag }
    : { ok: false as const }
}

function needs(field: string, what: string): Result<never> {
  return refused(
    `${field}-needed`,
    `This row cannot be taken without ${what}.`,
    'Ask the laboratory and give it here, or leave the row out.',
    field,
  )
}

const isUrgent = (word: ResultWord | null) => word === 'detected' || word === 'presumptive'

function oneByOne(): Result<never> {
  return refused(
    'detections-one-by-one',
    'Some of these rows say detected or presumptive.',
    'Settle those one by one first; then the others can be settled together.',
    'doubt',
  )
}

function notInDoubt(): Result<never> {
  return refused(
    'not-in-doubt',
    'No such row is waiting: somebody settled it already.',
    'Look at the list again.',
    'line',
  )
}

export const doubtCommands = {
  'results.settle': ({ act, log, station, now }, asked) => {
    if (importingOf(log)) return readingInNow()
    return act((tx) => {
      const row = doubtAt(tx, asked.file, asked.line)
      if (!row || row.settlement !== null) return notInDoubt()
      const reading = readingOfFile(tx, asked.file)?.reading ?? null
      const settled = settle(row, asked, reading, recordSeen(tx, station.zone, now))
      return settled.ok ? granted({ drafts: settled.value, value: {} }) : settled
    })
  },
  'results.settleAll': ({ act, log, station, now }, { file, doubt, settlement, words }) => {
    if (importingOf(log)) return readingInNow()
    return act((tx) => {
      const rows = openDoubtsOf(tx, { file, doubt })
      if (rows.length === 0) return notInDoubt()
      if (settlement === 'taken' && !canTakeAsItStands(doubt))
        return needs('line', 'being put right')
      const drafts: EntryDraft[] = []
      const reading = readingOfFile(tx, file)?.reading ?? null
      const record = recordSeen(tx, station.zone, now)
      if (rows.some((row) => isUrgent(meaningOf(reading, row.said)))) return oneByOne()
      for (const row of rows) {
        const same = { file, line: row.line, settlement, bag: '', word: null, tested: null, words }
        const settled = settle(row, same, reading, record)
        if (!settled.ok) return settled
        drafts.push(...settled.value)
      }
      return granted({ drafts, value: { settled: rows.length } })
    })
  },
} satisfies Partial<CommandHandlers>

function settle(
  row: RowDoubtTable,
  asked: Asked,
  reading: ResultReading | null,
  record: RecordSeen,
): Result<EntryDraft[]> {
  const { file, line, settlement, words } = asked
  if (settlement === 'left') return decideSettle({ file, line, words, result: null }, null, record)
  const result = settledResult(row, asked, reading)
  if (!result.ok) return result
  const bag = record.bagOf(result.value.bag)
  return decideSettle({ file, line, words, result: result.value }, bag, record)
}
