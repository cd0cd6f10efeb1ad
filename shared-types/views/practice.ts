/** What a learner sees of a live practice morning beyond the screens of the desk, and its score. */
import { z } from 'zod'
import { PersonId, SampleNumber } from '../sample-number.ts'
import { PracticeRole, PracticeSpeed } from '../practice.ts'
import { TissueCheck, TissueSite } from '../tissue.ts'
import { Ms } from './common.ts'

/** Where a point was lost, and the entry of the log that shows it. */
export const ScoreLine = z.strictObject({
  is: z.enum(['facts', 'label', 'tissue', 'wait', 'variance', 'undone']),
  /** Taken off; 0 for what was done as it should be. */
  points: z.int().min(0),
  say: z.string(),
  entry: z.strictObject({ seq: z.int(), ms: Ms, say: z.string() }).nullable(),
})
export type ScoreLine = z.infer<typeof ScoreLine>

export const ScoreView = z.strictObject({
  /** 0 to 100. */
  points: z.int().min(0).max(100),
  lines: z.array(ScoreLine),
})
export type ScoreView = z.infer<typeof ScoreView>

export const LivePracticeView = z.strictObject({
  role: PracticeRole,
  trainee: PersonId,
  speed: PracticeSpeed,
  /** Practice minutes since the first car could come, and of the whole morning. */
  minute: z.int(),
  minutes: z.int(),
  come: z.int(),
  animals: z.int(),
  isOver: z.boolean(),
  /** Check-in: what the hunter at the window says. */
  atWindow: z
    .strictObject({ waiting: z.int(), minutes: z.int(), says: z.array(z.string()) })
    .nullable(),
  /** Bench: what lies under the knife, as it looks and feels; drawn without its name. */
  underKnife: z
    .strictObject({ site: TissueSite, looks: TissueCheck.nullable(), feels: z.string() })
    .nullable(),
  /** Bench: labels on the table that the learner can scan. */
  onTable: z.array(z.strictObject({ words: z.string(), number: SampleNumber })),
  /** What happened that the desk has not been told. */
  told: z.array(z.string()),
})
export type LivePracticeView = z.infer<typeof LivePracticeView>
