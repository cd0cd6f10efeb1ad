/** What the screens show of laboratory results: files, rows in doubt, animals, and who was told. */
import { z } from 'zod'
import { Species } from '../animal.ts'
import {
  DoubtfulRow,
  FileDelimiter,
  FileEncoding,
  FollowUpStep,
  ResultReading,
  ResultRules,
  ResultWord,
  RowDoubt,
  RowSettlement,
  ToldBy,
} from '../laboratory-result.ts'
import { LocalDate } from '../local-date.ts'
import { DateOrder } from '../readings-file.ts'
import { AnimalNumber, BagNumber, HandoffNumber, PersonId } from '../sample-number.ts'
import { TissueSite } from '../tissue.ts'
import { Ms } from './common.ts'

const Count = z.int().nonnegative()
const Share = z.number().min(0).max(1)

export const ResultFileView = z.strictObject({
  digest: z.string(),
  file: z.string(),
  laboratory: z.string(),
  ms: Ms,
  by: z.string(),
  rows: Count,
  taken: Count,
  known: Count,
  skipped: Count,
  doubts: Count,
})
export type ResultFileView = z.infer<typeof ResultFileView>

/** Where everything stands: what came in, what waits for a person, who is still to be told. */
export const ResultsView = z.strictObject({
  rules: ResultRules,
  /** Laboratories known here, the last one first. */
  laboratories: z.array(z.string()),
  files: z.array(ResultFileView),
  /** Rows in doubt that nobody has settled. */
  openDoubts: Count,
  /** Animals by their result; `untold` only counts results that are final. */
  words: z.array(z.strictObject({ word: ResultWord, animals: Count, untold: Count })),
  overdue: Count,
  /** Animals with a result that a row in doubt holds back from being told. */
  heldBack: Count,
  /** Bags given to a courier: nothing reported yet, and reported as pending. */
  awaiting: z.strictObject({ unreported: Count, pending: Count }),
  /** Contacts are kept beyond the day that the rules set. */
  contactsDue: z.boolean(),
})
export type ResultsView = z.infer<typeof ResultsView>

/** What a person must say of a file before it can be read, and what was found out about it. */
export const ResultLookView = z.strictObject({
  is: z.enum(['text', 'workbook']),
  /** Sheets of a workbook; empty for text. */
  sheets: z.array(z.string()),
  table: ResultReading.shape.table,
  /** False: the letters or the separator cannot be known from the file, so a person is asked. */
  encodingSure: z.boolean(),
  delimiterSure: z.boolean(),
  encodings: z.array(FileEncoding),
  delimiters: z.array(FileDelimiter),
  /** The first lines, as they are cut by this table. */
  rows: z.array(z.array(z.string())),
  lines: Count,
  linesAbove: Count,
  headings: z.array(z.string()),
  /** The laboratory's own words with how often each stands, once a column is picked. */
  said: z.array(z.strictObject({ said: z.string(), rows: Count })),
  /** Orders by which every date can be read, once a column is picked, and whether it makes a difference. */
  dateOrders: z.array(DateOrder),
  orderInDoubt: z.boolean(),
  datesSeen: z.array(z.string()),
  /** How the last file of this laboratory was read, where it fits this one. */
  remembered: ResultReading.nullable(),
  /** The same file, byte for byte, was read in before. */
  readBefore: z.boolean(),
})
export type ResultLookView = z.infer<typeof ResultLookView>

export const ResultPreview = z.strictObject({
  rows: Count,
  good: z.array(z.strictObject({ word: ResultWord, rows: Count })),
  known: Count,
  skipped: Count,
  doubts: z.array(z.strictObject({ doubt: RowDoubt, rows: Count, first: z.array(DoubtfulRow) })),
})
export type ResultPreview = z.infer<typeof ResultPreview>

export const DoubtView = DoubtfulRow.extend({
  file: z.string(),
  fileName: z.string(),
  laboratory: z.string(),
  ms: Ms,
  /** What the word means by the reading of its file; null where it has no meaning. */
  word: ResultWord.nullable(),
  say: z.string(),
  next: z.string(),
  /** Whether it can be taken as it stands, or only put right or left out. */
  canTake: z.boolean(),
  settled: z
    .strictObject({ settlement: RowSettlement, words: z.string(), by: z.string(), ms: Ms })
    .nullable(),
})
export type DoubtView = z.infer<typeof DoubtView>

export const DoubtsView = z.strictObject({ open: Count, doubts: z.array(DoubtView) })

/** How a hunter can be reached: nothing left, erased after the results, locked, or here. */
export const Reach = z.discriminatedUnion('is', [
  z.strictObject({ is: z.literal('none-left') }),
  z.strictObject({ is: z.literal('erased') }),
  z.strictObject({ is: z.literal('locked') }),
  z.strictObject({ is: z.literal('not-yours') }),
  z.strictObject({
    is: z.literal('here'),
    name: z.string(),
    phone: z.string(),
    email: z.string(),
  }),
])
export type Reach = z.infer<typeof Reach>

export const SampleResultView = z.strictObject({
  bag: BagNumber,
  site: TissueSite,
  word: ResultWord,
  method: z.string(),
  tested: LocalDate.nullable(),
  laboratory: z.string(),
})

export const ToldView = z.strictObject({
  word: ResultWord,
  how: ToldBy,
  on: LocalDate,
  by: z.string(),
  words: z.string(),
})

export const ResultAnimalView = z.strictObject({
  animal: AnimalNumber,
  hunter: z.string(),
  tag: z.string(),
  species: Species,
  unit: z.string(),
  harvested: LocalDate,
  word: ResultWord,
  because: z.string(),
  samples: z.array(SampleResultView),
  /** What was reported of them before, oldest first: a changed result is another entry. */
  earlier: z.array(SampleResultView.omit({ site: true }).extend({ ms: Ms })),
  told: ToldView.nullable(),
  /** A row in doubt about it is open: its hunter is not told before it is settled. */
  heldBack: z.boolean(),
  /** The hunter was told something else before. */
  changedSinceTold: z.boolean(),
  reach: Reach,
})
export type ResultAnimalView = z.infer<typeof ResultAnimalView>

export const ResultAnimalsView = z.strictObject({
  all: Count,
  /** Of all of them, those held back by a row in doubt: in no letter and no mail merge. */
  heldBack: Count,
  animals: z.array(ResultAnimalView),
})

export const FollowUpView = z.strictObject({
  animals: z.array(
    ResultAnimalView.extend({
      steps: z.array(
        z.strictObject({
          step: FollowUpStep,
          done: z.strictObject({ by: z.string(), ms: Ms, words: z.string() }).nullable(),
        }),
      ),
      closed: z.boolean(),
    }),
  ),
  /** The cautions that go with a detection, in words that defer to the agency. */
  cautions: z.array(z.string()),
})
export type FollowUpView = z.infer<typeof FollowUpView>

/** What a hunter is told at a counter: no name, no tag, no hunter number. */
export const LookUpView = z.strictObject({
  animal: AnimalNumber,
  species: Species,
  harvested: LocalDate,
  word: ResultWord.nullable(),
  say: z.string(),
  next: z.string(),
  samples: z.array(SampleResultView.omit({ laboratory: true })),
})
export type LookUpView = z.infer<typeof LookUpView>

export const OverdueView = z.strictObject({
  days: z.int(),
  bags: z.array(
    z.strictObject({
      bag: BagNumber,
      animal: AnimalNumber,
      handoff: HandoffNumber.nullable(),
      destination: z.string(),
      handedOffMs: Ms,
      daysOut: Count,
      overdue: z.boolean(),
      /** The laboratory said that it is being tested. */
      pending: z.boolean(),
    }),
  ),
  all: Count,
})
export type OverdueView = z.infer<typeof OverdueView>

/** Unsuitable tissue of one sampler on one side, with a Wilson interval of 95%. */
export const TrainingView = z.strictObject({
  rows: z.array(
    z.strictObject({
      sampler: PersonId,
      name: z.string(),
      site: TissueSite,
      tested: Count,
      unsuitable: Count,
      share: Share,
      low: Share,
      high: Share,
    }),
  ),
  /** The same over all samplers of the record. */
  overall: z.strictObject({
    tested: Count,
    unsuitable: Count,
    share: Share,
    low: Share,
    high: Share,
  }),
  say: z.string(),
})
export type TrainingView = z.infer<typeof TrainingView>

/** What must still be told before contacts can be erased, and what was erased. */
export const RetentionView = z.strictObject({
  contactsUntil: LocalDate.nullable(),
  /** The day has passed and contacts are still here. */
  due: z.boolean(),
  days: z.array(
    z.strictObject({
      day: LocalDate,
      contacts: Count,
      /** Animals with a contact whose final result nobody told, and those that still await one. */
      untold: Count,
      awaiting: Count,
    }),
  ),
  purges: z.array(
    z.strictObject({
      entry: z.string(),
      ms: Ms,
      by: z.string(),
      upTo: LocalDate,
      contacts: Count,
    }),
  ),
})
export type RetentionView = z.infer<typeof RetentionView>
