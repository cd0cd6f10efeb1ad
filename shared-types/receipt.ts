/** The counter-scan: what whoever received a handoff found in the coolers. */
import { z } from 'zod'
import { BagNumber, CoolerNumber, HandoffNumber } from './sample-number.ts'
import { Celsius, SealNumber } from './cooler.ts'

export const ReceivedState = z.enum(['good', 'damaged'])
export type ReceivedState = z.infer<typeof ReceivedState>

export const ReceivedBag = z.strictObject({
  bag: BagNumber,
  state: ReceivedState,
  /** What is wrong with it; empty when it is good. */
  words: z.string().trim().max(120),
})
export type ReceivedBag = z.infer<typeof ReceivedBag>

export const ReceivedCooler = z.strictObject({
  cooler: CoolerNumber,
  seal: SealNumber,
  celsius: Celsius.nullable(),
})
export type ReceivedCooler = z.infer<typeof ReceivedCooler>

/** What a person says of the columns of a counter-scan's file; they count from nought. */
export const ReceiptColumns = z.strictObject({
  bag: z.int().min(0).max(99),
  /** What is wrong with the bag; null where the file does not say. */
  condition: z.int().min(0).max(99).nullable(),
})
export type ReceiptColumns = z.infer<typeof ReceiptColumns>

/** The most bags of one counter-scan. */
export const mostReceived = 5000

export const ReceiptCounted = z.strictObject({
  handoff: HandoffNumber,
  /** As written by whoever received it. */
  receivedBy: z.string().trim().min(2).max(80),
  /** The file it came in; null where the bags were scanned here. */
  file: z.string().trim().min(1).max(120).nullable(),
  /** Those whose seal was read; the others were not said anything of. */
  coolers: z.array(ReceivedCooler).max(200),
  bags: z.array(ReceivedBag).max(mostReceived),
})
export type ReceiptCounted = z.infer<typeof ReceiptCounted>
