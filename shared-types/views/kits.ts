import { z } from 'zod'
import { KitAccount, KitState } from '../kit.ts'
import { LabelFate } from '../label.ts'
import { AnimalNumber, KitNumber, SampleNumber } from '../sample-number.ts'
import { Ms } from './common.ts'

export const AccountBalance = z.strictObject({
  key: z.string(),
  account: KitAccount,
  words: z.string(),
  count: z.int(),
})
export type AccountBalance = z.infer<typeof AccountBalance>

export const LabelView = z.strictObject({
  number: SampleNumber,
  copy: z.int(),
  fate: LabelFate,
})

export const NumberedKit = z.strictObject({
  kit: KitNumber,
  animal: AnimalNumber.nullable(),
  state: KitState,
  printedMs: Ms,
  labels: z.array(LabelView),
})
export type NumberedKit = z.infer<typeof NumberedKit>

export const LabelCounts = z.strictObject({
  blanks: z.int(),
  printed: z.int(),
  used: z.int(),
  void: z.int(),
})

export const KitsView = z.strictObject({
  balances: z.array(AccountBalance),
  /** Kits with printed labels that nobody has opened. */
  reserved: z.array(NumberedKit),
  /** Kits opened or spoiled, latest first, the last hundred. */
  latest: z.array(NumberedKit),
  labels: LabelCounts,
})
export type KitsView = z.infer<typeof KitsView>
