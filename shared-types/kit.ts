/** Kits and the kit ledger: every kit is always in exactly one account. */
import { z } from 'zod'
import { AnimalNumber, KitNumber, PersonId } from './sample-number.ts'

/**
 * `delivered` is the world outside, where kits come from; its balance is minus all that came.
 * `other-desk` is on the way to or from another desk of the station: at one desk it holds what was given
 * less what was brought, and over all desks of a station nothing.
 */
export const KitAccount = z.discriminatedUnion('in', [
  z.strictObject({ in: z.literal('delivered') }),
  z.strictObject({ in: z.literal('stock') }),
  z.strictObject({ in: z.literal('hands'), person: PersonId }),
  z.strictObject({ in: z.literal('used') }),
  z.strictObject({ in: z.literal('spoiled') }),
  z.strictObject({ in: z.literal('sent') }),
  z.strictObject({ in: z.literal('missing') }),
  z.strictObject({ in: z.literal('other-desk') }),
])
export type KitAccount = z.infer<typeof KitAccount>

/** The account as a key of tables and screens: `stock`, or `hands:` and the person. */
export function kitAccountKey(account: KitAccount): string {
  return account.in === 'hands' ? `hands:${account.person}` : account.in
}

export const KitsMoved = z.strictObject({
  from: KitAccount,
  to: KitAccount,
  count: z.int().min(1).max(1_000_000),
  reason: z.string().trim().max(200),
})

/** A kit gets its number when its labels are printed: for one animal, or reserved for whoever comes. */
export const KitNumbered = z.strictObject({ kit: KitNumber, animal: AnimalNumber.nullable() })

/** A kit that another desk of the station numbered is brought here, to be used here. */
export const KitBrought = z.strictObject({ kit: KitNumber })

/** A sampler opens a kit on an animal: it leaves their hands and is used. */
export const KitOpened = z.strictObject({
  kit: KitNumber,
  animal: AnimalNumber,
  sampler: PersonId,
})

/** A numbered kit that is torn, wet or dropped, before or after it was opened. */
export const KitSpoiled = z.strictObject({
  kit: KitNumber,
  from: KitAccount,
  reason: z.string().trim().min(3).max(200),
})

export const KitState = z.enum(['reserved', 'opened', 'spoiled'])
export type KitState = z.infer<typeof KitState>

/** A numbered kit as the log knows it now. */
export interface KitRecord {
  readonly kit: KitNumber
  readonly animal: AnimalNumber | null
  readonly state: KitState
  readonly sampler: PersonId | null
  readonly numberedMs: number
  readonly openedMs: number | null
}
