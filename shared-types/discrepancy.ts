/** Discrepancy: what the merged record cannot settle by itself and a person must. */
import { z } from 'zod'
import { Ruling } from './ruling.ts'

/** What is in dispute. */
export const DiscrepancyKind = z.enum([
  'tag-twice',
  'checked-in-twice',
  'bag-twice',
  'bag-in-two-places',
  'bag-on-two-manifests',
  'kit-twice',
  'facts-contradict',
  'amended-after-close',
  'clocks-apart',
  'fork',
  'broken-chain',
  'gap',
  'altered',
  'damaged-file',
  'bag-not-received',
  'bag-received-extra',
  'bag-received-damaged',
])
export type DiscrepancyKind = z.infer<typeof DiscrepancyKind>

export const discrepancyWords: Record<DiscrepancyKind, string> = {
  'tag-twice': 'One tag on two animals',
  'checked-in-twice': 'Checked in at two stations',
  'bag-twice': 'One bag number twice',
  'bag-in-two-places': 'One bag in two coolers',
  'bag-on-two-manifests': 'One bag on two manifests',
  'kit-twice': 'One kit used twice',
  'facts-contradict': 'Facts contradict each other',
  'amended-after-close': 'Corrected after the close',
  'clocks-apart': 'Clocks were apart',
  fork: 'A log was worked in twice',
  'broken-chain': 'An entry does not follow the one before',
  gap: 'Entries are missing',
  altered: 'An entry was altered',
  'damaged-file': 'A file was damaged',
  'bag-not-received': 'A bag did not arrive',
  'bag-received-extra': 'A bag arrived that is on no list',
  'bag-received-damaged': 'A bag arrived damaged',
}

/** How a person settles it. `one-holds` names the side that holds. */
export const SettleChoice = z.enum([
  'one-holds',
  'all-hold',
  'same-animal',
  'cannot-tell',
  'lost',
  'acknowledged',
])
export type SettleChoice = z.infer<typeof SettleChoice>

export const settleWords: Record<SettleChoice, string> = {
  'one-holds': 'one holds, the others do not',
  'all-hold': 'all of it holds',
  'same-animal': 'they are one animal',
  'cannot-tell': 'nobody can tell',
  lost: 'lost for good',
  acknowledged: 'seen and accepted',
}

const Hash = z.string().regex(/^[0-9a-f]{64}$/)

/** A discrepancy by the SHA-256 of its evidence: more evidence is another discrepancy. */
export const DiscrepancyId = Hash

/**
 * How one office settled a discrepancy. Settling is an entry, so it merges: two offices that settle
 * differently stay side by side until a later settlement replaces both.
 */
export const DiscrepancySettled = z.strictObject({
  discrepancy: DiscrepancyId,
  kind: DiscrepancyKind,
  choice: SettleChoice,
  /** The side that holds, by the key it has in the discrepancy; null where none is named. */
  side: z.string().min(1).max(80).nullable(),
  words: z.string().trim().max(200),
  /** What is so in the record from then on; null where settling is only put on record. */
  ruling: Ruling.nullable(),
  /** The settlements this one takes the place of, by the hashes of their entries. */
  replaces: z.array(Hash).max(50),
})
export type DiscrepancySettled = z.infer<typeof DiscrepancySettled>
