/**
 * Laboratory result: what a laboratory reports of one sample, how its files are read, what a person
 * settled of the rows that could not be taken as they came, and what the hunter was told.
 */
import { z } from 'zod'
import { LocalDate } from './local-date.ts'
import { AnimalNumber, BagNumber } from './sample-number.ts'
import { DateOrder } from './readings-file.ts'

/**
 * The trade's words for a result. `presumptive`: a screening test reacted and a second test has not
 * confirmed it yet. `unsuitable`: the tissue could not be tested.
 */
export const ResultWord = z.enum([
  'not-detected',
  'detected',
  'presumptive',
  'unsuitable',
  'pending',
])
export type ResultWord = z.infer<typeof ResultWord>

export const resultWords: Record<ResultWord, string> = {
  'not-detected': 'not detected',
  detected: 'detected',
  presumptive: 'presumptive',
  unsuitable: 'unsuitable',
  pending: 'pending',
}

const Digest = z.string().regex(/^[0-9a-f]{64}$/)
const Laboratory = z.string().trim().min(2).max(120)
const Method = z.string().trim().max(60)
const FileName = z.string().trim().min(1).max(120)

/** The most rows of one file, and the most of them that may be in doubt: beyond it the reading is wrong. */
export const mostResults = 50_000
export const mostRowProblems = 2000

/** How the bytes of a file are letters. */
export const FileEncoding = z.enum(['utf-8', 'utf-16le', 'utf-16be', 'windows-1252'])
export type FileEncoding = z.infer<typeof FileEncoding>

export const encodingWords: Record<FileEncoding, string> = {
  'utf-8': 'UTF-8',
  'utf-16le': 'UTF-16, low byte first',
  'utf-16be': 'UTF-16, high byte first',
  'windows-1252': 'Windows Western (1252)',
}

export const FileDelimiter = z.enum([',', ';', '\t', '|'])
export type FileDelimiter = z.infer<typeof FileDelimiter>

export const delimiterWords: Record<FileDelimiter, string> = {
  ',': 'commas',
  ';': 'semicolons',
  '\t': 'tabs',
  '|': 'upright bars',
}

/** A column as a person picked it: its place from nought, and its heading, by which it is found again. */
export const PickedColumn = z.strictObject({
  at: z.int().min(0).max(199),
  heading: z.string().trim().max(120),
})
export type PickedColumn = z.infer<typeof PickedColumn>

/** What a laboratory's own word means; `skip` for rows that are no result, such as a control. */
export const WordMeans = z.union([ResultWord, z.literal('skip')])
export type WordMeans = z.infer<typeof WordMeans>

/** What a person says of a laboratory's file. Nothing in it is guessed; it is remembered by laboratory. */
export const ResultReading = z.strictObject({
  table: z.discriminatedUnion('is', [
    z.strictObject({ is: z.literal('text'), encoding: FileEncoding, delimiter: FileDelimiter }),
    z.strictObject({ is: z.literal('workbook'), sheet: z.string().min(1).max(120) }),
  ]),
  /** Lines above the heading: titles, addresses, merged cells. */
  linesAbove: z.int().min(0).max(200),
  number: PickedColumn,
  word: PickedColumn,
  /** Null where the whole file is of one method, which `methodSaid` then names. */
  method: PickedColumn.nullable(),
  methodSaid: Method,
  /** Null where the whole file was tested on one day, which `testedOn` then names. */
  tested: PickedColumn.nullable(),
  testedOn: LocalDate.nullable(),
  dateOrder: DateOrder,
  words: z.array(z.strictObject({ said: z.string().trim().max(80), means: WordMeans })).max(60),
})
export type ResultReading = z.infer<typeof ResultReading>

/** Why a row was not taken as it came. */
export const RowDoubt = z.enum([
  'number-not-read',
  'check-character-wrong',
  'number-damaged',
  'not-a-bag',
  'wrong-season',
  'not-found',
  'never-sent',
  'twice',
  'contradictory',
  'changed',
  'unsuitable',
  'wrong-tissue',
  'word-not-known',
  'date-not-read',
  'date-impossible',
  'row-torn',
])
export type RowDoubt = z.infer<typeof RowDoubt>

export const doubtWords: Record<RowDoubt, string> = {
  'number-not-read': 'Not a sample number',
  'check-character-wrong': 'Check character does not fit',
  'number-damaged': 'Number damaged by a spreadsheet',
  'not-a-bag': 'Number of something else than a bag',
  'wrong-season': 'Another season',
  'not-found': 'Not found in this log',
  'never-sent': 'Never given to a courier',
  twice: 'Twice in the file',
  contradictory: 'Rows contradict each other',
  changed: 'Differs from the result on record',
  unsuitable: 'Unsuitable tissue',
  'wrong-tissue': 'Tissue noted as no lymph node',
  'word-not-known': 'Word without a meaning',
  'date-not-read': 'Test date not read',
  'date-impossible': 'Test date impossible',
  'row-torn': 'More cells than headings',
}

/** A row in doubt, as it stood in the file: only the cells that were picked, no other of the row. */
export const DoubtfulRow = z.strictObject({
  /** Counted from 1, as a spreadsheet shows it. */
  line: z.int().min(1).max(1_100_000),
  doubt: RowDoubt,
  /** The bag it is about, where that much is certain. */
  bag: BagNumber.nullable(),
  number: z.string().max(60),
  said: z.string().max(80),
  method: Method,
  /** The test date as written. */
  date: z.string().max(40),
})
export type DoubtfulRow = z.infer<typeof DoubtfulRow>

/** A laboratory's file was read in, by this reading; what was in doubt waits for a person. */
export const ResultsRead = z.strictObject({
  laboratory: Laboratory,
  file: FileName,
  /** SHA-256 of the file as it came. */
  digest: Digest,
  reading: ResultReading,
  /** Rows below the heading that are not empty. */
  rows: z.int().min(0).max(mostResults),
  /** Rows that became results. */
  taken: z.int().min(0).max(mostResults),
  /** Rows that say what the log already has. */
  known: z.int().min(0).max(mostResults),
  skipped: z.int().min(0).max(mostResults),
  doubts: z.array(DoubtfulRow).max(mostRowProblems),
})
export type ResultsRead = z.infer<typeof ResultsRead>

/** One result of one sample. A later one of the same sample does not replace it: both stay on record. */
export const ResultReported = z.strictObject({
  bag: BagNumber,
  animal: AnimalNumber,
  word: ResultWord,
  method: Method,
  /** The day of the test; null where the laboratory does not say. */
  tested: LocalDate.nullable(),
  laboratory: Laboratory,
  /** The file and line it came in. */
  file: Digest,
  line: z.int().min(1).max(1_100_000),
})
export type ResultReported = z.infer<typeof ResultReported>

/** `taken`: it became a result, as it stood or put right. `left`: it stays out. */
export const RowSettlement = z.enum(['taken', 'left'])
export type RowSettlement = z.infer<typeof RowSettlement>

/** A person settled a row in doubt; where it was taken, a result follows in the same action. */
export const RowSettled = z.strictObject({
  file: Digest,
  line: z.int().min(1).max(1_100_000),
  settlement: RowSettlement,
  words: z.string().trim().max(200),
})

/** How a hunter was told. */
export const ToldBy = z.enum(['letter', 'e-mail', 'phone', 'in-person', 'look-up'])
export type ToldBy = z.infer<typeof ToldBy>

export const toldByWords: Record<ToldBy, string> = {
  letter: 'by letter',
  'e-mail': 'by e-mail',
  phone: 'by phone',
  'in-person': 'in person',
  'look-up': 'looked it up',
}

/** A hunter was told the animal's result, by the person who signs this entry. */
export const HunterTold = z.strictObject({
  animal: AnimalNumber,
  word: ResultWord,
  how: ToldBy,
  on: LocalDate,
  words: z.string().trim().max(200),
})
export type HunterTold = z.infer<typeof HunterTold>

/** What is to be done after a detection, in this order; each step is the agency's, not the program's. */
export const FollowUpStep = z.enum([
  'veterinarian-told',
  'hunter-reached',
  'meat-asked-after',
  'carcass-asked-after',
  'public-health-told',
  'closed',
])
export type FollowUpStep = z.infer<typeof FollowUpStep>

export const followUpWords: Record<FollowUpStep, string> = {
  'veterinarian-told': "The agency's veterinarian was told",
  'hunter-reached': 'The hunter was reached in person or by phone',
  'meat-asked-after': 'Asked where the meat is, and told not to eat it',
  'carcass-asked-after': 'Asked where head, spine and bones went',
  'public-health-told': 'Public health was told, where local rules ask for it',
  closed: 'Nothing is left to do',
}

export const ResultFollowedUp = z.strictObject({
  animal: AnimalNumber,
  step: FollowUpStep,
  words: z.string().trim().max(200),
})
export type ResultFollowedUp = z.infer<typeof ResultFollowedUp>

/** What an obex proves: it counts for a detection always, for "not detected" as the programme says. */
export const ObexRule = z.enum(['not-enough', 'enough', 'needed'])
export type ObexRule = z.infer<typeof ObexRule>

export const obexRuleWords: Record<ObexRule, string> = {
  'not-enough': 'an obex alone does not make an animal "not detected"',
  enough: 'an obex alone is enough for "not detected"',
  needed: '"not detected" needs the obex and a node',
}

/** How an office works with results. */
export const ResultRules = z.strictObject({
  obex: ObexRule,
  /** Days after which a sample without a result is overdue. */
  overdueDays: z.int().min(1).max(400),
  /** Contacts are to be erased after this day; null while the office has set none. */
  contactsUntil: LocalDate.nullable(),
  /** Whom a hunter asks, as the agency publishes it: an office or a veterinarian on duty. */
  askWhom: z.string().trim().max(200),
})
export type ResultRules = z.infer<typeof ResultRules>

/** What holds until an office says otherwise. */
export const usualResultRules: ResultRules = {
  obex: 'not-enough',
  overdueDays: 60,
  contactsUntil: null,
  askWhom: '',
}

export const ResultRulesSet = z.strictObject({ rules: ResultRules })
