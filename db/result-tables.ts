/** The tables of laboratory results as Kysely knows them. */
import type {
  FollowUpStep,
  ResultWord,
  RowDoubt,
  RowSettlement,
  ToldBy,
} from '../shared-types/laboratory-result.ts'
import type { LocalDate } from '../shared-types/local-date.ts'
import type { AnimalNumber, BagNumber, PersonId } from '../shared-types/sample-number.ts'
import type { TissueSite } from '../shared-types/tissue.ts'

/** Every laboratory file that was read in. */
export interface ResultFileTable {
  hash: string
  laboratory: string
  file: string
  digest: string
  /** JSON of the reading, remembered by laboratory. */
  reading: string
  rows: number
  taken: number
  known: number
  skipped: number
  doubts: number
  ms: number
  by: PersonId | null
}

/** Rows of laboratory files that wait for a person, or were settled by one. */
export interface RowDoubtTable {
  file: string
  line: number
  laboratory: string
  file_name: string
  doubt: RowDoubt
  bag: BagNumber | null
  number: string
  said: string
  method: string
  date: string
  ms: number
  settlement: RowSettlement | null
  words: string
  settled_by: PersonId | null
  settled_ms: number | null
}

/** Every result ever reported of a sample. */
export interface ResultTable {
  hash: string
  bag: BagNumber
  animal: AnimalNumber
  word: ResultWord
  method: string
  tested: LocalDate | null
  laboratory: string
  file: string
  line: number
  ms: number
  by: PersonId | null
}

/** The latest result of each sample. */
export interface SampleResultTable {
  bag: BagNumber
  animal: AnimalNumber
  site: TissueSite
  word: ResultWord
  method: string
  tested: LocalDate | null
  laboratory: string
  hash: string
  ms: number
}

/** How the office works with results: one row once it has said so. */
export interface ResultRulesTable {
  one: 1
  rules: string
}

export interface FollowUpTable {
  hash: string
  animal: AnimalNumber
  step: FollowUpStep
  words: string
  ms: number
  by: PersonId | null
}

/** Every time a hunter was told, with the result that was told. */
export interface HunterToldTable {
  hash: string
  animal: AnimalNumber
  word: ResultWord
  how: ToldBy
  on: LocalDate
  words: string
  ms: number
  by: PersonId | null
}

export interface ResultTables {
  result_file: ResultFileTable
  row_doubt: RowDoubtTable
  result: ResultTable
  sample_result: SampleResultTable
  result_rules: ResultRulesTable
  follow_up: FollowUpTable
  hunter_told: HunterToldTable
}
