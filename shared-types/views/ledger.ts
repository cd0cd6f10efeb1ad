import { z } from 'zod'
import { Ms } from './common.ts'

/** Three ledgers: what is in none of its accounts is nowhere. */
export const LedgerName = z.enum(['kits', 'labels', 'bags'])
export type LedgerName = z.infer<typeof LedgerName>

export const LedgerAccount = z.strictObject({
  key: z.string(),
  words: z.string(),
  /** The world outside is shown as what came out of it in all, so no balance is negative for reading. */
  outside: z.boolean(),
  balance: z.int(),
})
export type LedgerAccount = z.infer<typeof LedgerAccount>

/** One entry as far as it moved something into or out of the account. */
export const LedgerLine = z.strictObject({
  ms: Ms,
  by: z.string(),
  say: z.string(),
  other: z.string(),
  delta: z.int(),
  balance: z.int(),
})
export type LedgerLine = z.infer<typeof LedgerLine>

export const LedgerView = z.strictObject({
  accounts: z.array(LedgerAccount),
  /** The lines of the account that was asked for, latest first; the last five hundred. */
  lines: z.array(LedgerLine),
  lineCount: z.int(),
})
export type LedgerView = z.infer<typeof LedgerView>
