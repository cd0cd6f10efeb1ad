/** The desk API of laboratory results: reading them in, settling doubts, telling hunters. */
import { z } from 'zod'
import { command, query } from './call-shape.ts'
import {
  FollowUpStep,
  ResultReading,
  ResultRules,
  ResultWord,
  RowDoubt,
  RowSettlement,
  ToldBy,
} from './laboratory-result.ts'
import { LocalDate } from './local-date.ts'
import { PdfFile, TextFile } from './views/common.ts'
import {
  DoubtsView,
  FollowUpView,
  LookUpView,
  OverdueView,
  ResultAnimalsView,
  ResultLookView,
  ResultPreview,
  ResultsView,
  RetentionView,
  TrainingView,
} from './views/results.ts'

const Scan = z.string().min(1).max(80)
const Words = z.string().trim().max(200)
const nothing = z.strictObject({})
const done = z.strictObject({})
const Laboratory = z.string().trim().min(2, 'name the laboratory').max(120)
const FileName = z.string().trim().min(1).max(120)
/** What stands for a file that was brought to the desk. */
export const Brought = z.string().regex(/^[0-9a-f]{16}$/)
const Line = z.int().min(1).max(1_100_000)
const Digest = z.string().regex(/^[0-9a-f]{64}$/)
const topics = ['results', 'result', 'hunter', 'animal', 'bag', 'handoff', 'contacts'] as const

/** Which animals a list, letter run or mail merge is about. */
const Which = z.strictObject({
  word: ResultWord,
  /** Only those who were not told this result yet. */
  untoldOnly: z.boolean(),
})

export const resultCalls = {
  results: query(nothing, ResultsView, topics),
  'results.setRules': command(z.strictObject({ rules: ResultRules }), done),

  // Results in
  /** Brings a file to the desk in pieces, because a call takes no more than a megabyte. */
  'results.bring': command(
    z.strictObject({
      brought: Brought.nullable(),
      name: FileName,
      base64: z.string().min(1).max(900_000),
    }),
    z.strictObject({ brought: Brought, bytes: z.int() }),
  ),
  'results.look': query(
    z.strictObject({
      brought: Brought,
      laboratory: z.string().trim().max(120),
      table: ResultReading.shape.table.nullable(),
      linesAbove: z.int().min(0).max(200).nullable(),
      wordColumn: z.int().min(0).max(199).nullable(),
      dateColumn: z.int().min(0).max(199).nullable(),
    }),
    ResultLookView,
    ['results'],
  ),
  /** What reading it in would bring; nothing is written. */
  'results.preview': query(
    z.strictObject({ brought: Brought, laboratory: Laboratory, reading: ResultReading }),
    ResultPreview,
    [],
  ),
  'results.import': command(
    z.strictObject({ brought: Brought, laboratory: Laboratory, reading: ResultReading }),
    z.strictObject({ taken: z.int(), known: z.int(), skipped: z.int(), doubts: z.int() }),
  ),
  /** How far a file that is being read in is; null while none is. */
  'results.progress': query(
    nothing,
    z.strictObject({
      importing: z.strictObject({ done: z.int(), total: z.int() }).nullable(),
    }),
    ['results'],
  ),
  'results.doubts': query(
    z.strictObject({ settled: z.boolean().default(false) }),
    DoubtsView,
    topics,
  ),
  /** Settles a row in doubt; what is given here takes the place of what the row says. */
  'results.settle': command(
    z.strictObject({
      file: Digest,
      line: Line,
      settlement: RowSettlement,
      bag: z.string().trim().max(80).default(''),
      word: ResultWord.nullable().default(null),
      tested: LocalDate.nullable().default(null),
      words: Words,
    }),
    done,
  ),
  /** Settles every open row of one doubt alike. */
  'results.settleAll': command(
    z.strictObject({
      file: Digest,
      doubt: RowDoubt,
      settlement: RowSettlement,
      words: z.string().trim().min(3, 'say why in a few words').max(200),
    }),
    z.strictObject({ settled: z.int() }),
  ),

  // Hunters told
  'results.animals': query(
    Which.extend({ from: z.int().min(0).default(0) }),
    ResultAnimalsView,
    topics,
  ),
  /** One page for each hunter; names are in it. For the office and leads. */
  'results.letters': query(Which, PdfFile, topics),
  /** A table for a mail merge; names are in it. For the office and leads. */
  'results.mailMerge': query(Which, TextFile, topics),
  'hunter.tell': command(
    z.strictObject({
      animals: z.array(Scan).min(1).max(2000),
      how: ToldBy,
      on: LocalDate,
      words: Words,
    }),
    z.strictObject({ told: z.int() }),
  ),
  'results.followUp': query(nothing, FollowUpView, topics),
  'result.followUp': command(
    z.strictObject({ animal: Scan, step: FollowUpStep, words: Words }),
    done,
  ),
  'results.lookUp': query(z.strictObject({ animal: Scan }), LookUpView, topics),
  /** Animal numbers and results, for a notice board or a web page. No person is in it. */
  'results.lookUpList': query(nothing, TextFile, topics),

  /** For a practice log only: a file of invented results, and which rows of it are bad. */
  'results.practiceFile': query(
    z.strictObject({ seed: z.int().min(0).max(999_999_999).default(1) }),
    z.strictObject({
      file: TextFile,
      rows: z.int(),
      planted: z.array(z.strictObject({ line: z.int(), doubt: RowDoubt })),
    }),
    topics,
  ),

  // Overdue, training, privacy
  'results.overdue': query(nothing, OverdueView, topics),
  'results.overdueList': query(nothing, TextFile, topics),
  'results.training': query(nothing, TrainingView, topics),
  retention: query(nothing, RetentionView, topics),
  'retention.certificate': query(z.strictObject({ entry: Digest }), PdfFile, ['contacts']),
} as const
