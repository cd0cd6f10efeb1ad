/** What laboratories reported: by sample, by animal, by file, and what is still in doubt. */
import { sql } from 'kysely'
import {
  type ResultReading,
  type ResultRules,
  type ResultWord,
  usualResultRules,
} from '../../shared-types/laboratory-result.ts'
import type { AnimalNumber, BagNumber } from '../../shared-types/sample-number.ts'
import type { TissueSite } from '../../shared-types/tissue.ts'
import type { ReadableLog } from '../connection.ts'
import type { SampleResultTable } from '../result-tables.ts'
import { type Params, prepareAll, prepareOne } from '../statement.ts'

const rulesRow = prepareOne((db) => db.selectFrom('result_rules').select('rules'))

/** How the office works with results; the usual rules until it has said so. */
export function resultRulesOf(log: ReadableLog): ResultRules {
  const rules = rulesRow(log)?.rules
  return rules === undefined ? usualResultRules : (JSON.parse(rules) as ResultRules)
}

const sampleRow = prepareOne((db, p: Params<{ bag: BagNumber }>) =>
  db.selectFrom('sample_result').selectAll().where('bag', '=', p('bag')),
)

/** The latest result of a sample, or null while none was reported. */
export function sampleResultOf(log: ReadableLog, bag: BagNumber): SampleResultTable | null {
  return sampleRow(log, { bag }) ?? null
}

/** What the latest results say of one site. */
export interface SiteWord {
  readonly site: TissueSite
  readonly word: ResultWord
}

const siteRows = prepareAll((db, p: Params<{ animal: AnimalNumber }>) =>
  db
    .selectFrom('sample_result')
    .select(['site', 'word'])
    .where('animal', '=', p('animal'))
    .orderBy('bag'),
)

/** The latest result of each sample of an animal. */
export function siteWordsOf(log: ReadableLog, animal: AnimalNumber): SiteWord[] {
  return siteRows(log, { animal })
}

/** The latest results of an animal in one text, such as `left:not-detected right:unsuitable`. */
export const siteWordsText = sql<string>`group_concat(site || ':' || word, ' ')`

/** The way back from `siteWordsText`. An animal without results has the text ''. */
export function siteWordsIn(text: string): SiteWord[] {
  return text === ''
    ? []
    : text.split(' ').map((each) => {
        const at = each.indexOf(':')
        return { site: each.slice(0, at), word: each.slice(at + 1) } as SiteWord
      })
}

/**
 * Every animal with a result, its samples' latest results as one text (`siteWordsIn` reads it). The
 * animal's own result follows by `animalResult` in electron/station; there are few different texts, so
 * whoever counts asks the rule once for each.
 */
export const animalsWithResults = prepareAll((db) =>
  db
    .selectFrom('sample_result')
    .select(['animal', siteWordsText.as('sites')])
    .groupBy('animal'),
)

const historyRows = prepareAll((db, p: Params<{ animal: AnimalNumber }>) =>
  db
    .selectFrom('result')
    .selectAll()
    .where('animal', '=', p('animal'))
    .orderBy('ms')
    .orderBy('hash'),
)

/** Every result ever reported of an animal's samples, oldest first. */
export function resultsOfAnimal(log: ReadableLog, animal: AnimalNumber) {
  return historyRows(log, { animal })
}

/** Every laboratory file that was read in, the latest first. */
export const resultFiles = prepareAll((db) =>
  db.selectFrom('result_file').selectAll().orderBy('ms', 'desc').orderBy('hash'),
)

const readingRow = prepareOne((db, p: Params<{ laboratory: string }>) =>
  db
    .selectFrom('result_file')
    .select('reading')
    .where('laboratory', '=', p('laboratory'))
    .orderBy('ms', 'desc')
    .limit(1),
)

/** How a laboratory's last file was read, or null for its first. */
export function readingOf(log: ReadableLog, laboratory: string): ResultReading | null {
  const reading = readingRow(log, { laboratory })?.reading
  return reading === undefined ? null : (JSON.parse(reading) as ResultReading)
}

/** A bag with what was seen in it and its latest result, where there is one. */
export const bagSeenByLaboratory = prepareOne((db, p: Params<{ bag: BagNumber }>) =>
  db
    .selectFrom('bag')
    .leftJoin('tissue', (join) =>
      join.onRef('tissue.animal', '=', 'bag.animal').onRef('tissue.site', '=', 'bag.site'),
    )
    .leftJoin('sample_result', 'sample_result.bag', 'bag.bag')
    .select(['bag.animal', 'bag.place', 'bag.sealed_ms', 'tissue.seen'])
    .select(['sample_result.word', 'sample_result.method', 'sample_result.tested'])
    .where('bag.bag', '=', p('bag')),
)

const fileRead = prepareOne((db, p: Params<{ digest: string }>) =>
  db.selectFrom('result_file').select('hash').where('digest', '=', p('digest')).limit(1),
)

/** Whether a file, byte for byte, was read in before. */
export function isFileRead(log: ReadableLog, digest: string): boolean {
  return fileRead(log, { digest }) !== undefined
}

const readingOfFileRow = prepareOne((db, p: Params<{ digest: string }>) =>
  db
    .selectFrom('result_file')
    .select(['reading', 'laboratory'])
    .where('digest', '=', p('digest'))
    .orderBy('ms', 'desc')
    .limit(1),
)

/** By what reading a file was read in last, and whose it is. */
export function readingOfFile(
  log: ReadableLog,
  digest: string,
): { reading: ResultReading; laboratory: string } | null {
  const row = readingOfFileRow(log, { digest })
  return row ? { ...row, reading: JSON.parse(row.reading) as ResultReading } : null
}

const sampleRowsOf = prepareAll((db, p: Params<{ animal: AnimalNumber }>) =>
  db
    .selectFrom('sample_result')
    .select(['bag', 'site', 'word', 'method', 'tested', 'laboratory', 'hash'])
    .where('animal', '=', p('animal'))
    .orderBy('bag'),
)

/** The latest result of each sample of an animal, with how and when it was tested. */
export function sampleResultsOf(log: ReadableLog, animal: AnimalNumber) {
  return sampleRowsOf(log, { animal })
}

/** Every result ever reported, oldest first: a later one of the same bag does not replace it. */
export const allResults = prepareAll((db) =>
  db
    .selectFrom('result')
    .select(['bag', 'animal', 'word', 'method', 'tested', 'laboratory', 'ms'])
    .orderBy('ms')
    .orderBy('bag')
    .orderBy('hash'),
)
