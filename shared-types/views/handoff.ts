import { z } from 'zod'
import { Courier } from '../courier.ts'
import { HandoffState } from '../handoff.ts'
import { CoolerNumber, HandoffNumber } from '../sample-number.ts'
import { HandoffClassed, HandoffPacked } from '../transport.ts'
import { Ms } from './common.ts'

export const HandoffCooler = z.strictObject({
  cooler: CoolerNumber,
  name: z.string(),
  bags: z.int(),
  seal: z.string().nullable(),
  scanned: z
    .strictObject({
      seal: z.string(),
      celsius: z.number(),
      counted: z.int(),
      words: z.string(),
      ms: Ms,
    })
    .nullable(),
})
export type HandoffCooler = z.infer<typeof HandoffCooler>

export const HandoffView = z.strictObject({
  handoff: HandoffNumber,
  state: HandoffState,
  destination: z.string(),
  begunMs: Ms,
  signedMs: Ms.nullable(),
  courier: Courier.nullable(),
  coolers: z.array(HandoffCooler),
  digest: z.string().nullable(),
  supplements: HandoffNumber.nullable(),
  classed: HandoffClassed.nullable(),
  /** What was chosen the last time for the same destination. */
  classedBefore: HandoffClassed.nullable(),
  packed: HandoffPacked.nullable(),
  /** 1 as signed, more for each correction. */
  edition: z.int(),
})
export type HandoffView = z.infer<typeof HandoffView>

export const HandoffsView = z.strictObject({ handoffs: z.array(HandoffView) })
