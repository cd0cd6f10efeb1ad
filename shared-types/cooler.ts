/** Coolers: numbered boxes of bags, their temperature and their tamper seals. */
import { z } from 'zod'
import { CoolerNumber, type HandoffNumber } from './sample-number.ts'
import { Keeping } from './station.ts'

/** The number printed on a tamper seal, as the maker printed it. */
export const SealNumber = z
  .string()
  .trim()
  .toUpperCase()
  .regex(/^[0-9A-Z-]{3,20}$/, '3 to 20 letters, digits and hyphens')

export const Celsius = z.number().min(-90).max(60)

export const CoolerOpened = z.strictObject({
  cooler: CoolerNumber,
  name: z.string().trim().min(1).max(40),
  keeping: Keeping,
  /** Bags it holds with its ice, or null when nobody measured. */
  capacity: z.int().min(1).max(5000).nullable(),
})

export const CoolerRead = z.strictObject({
  cooler: CoolerNumber,
  celsius: Celsius,
  /** Outside the station's limits for how this cooler is kept. */
  excursion: z.boolean(),
})

export const CoolerSealed = z.strictObject({
  cooler: CoolerNumber,
  seal: SealNumber,
  bags: z.int().nonnegative(),
})

export const SealBroken = z.strictObject({
  cooler: CoolerNumber,
  seal: SealNumber,
  reason: z.string().trim().min(3).max(200),
})

/**
 * How custody of a cooler that is not sealed is kept, beside possession and seal: in view of whoever is
 * named, under lock, or in an area that only named people enter (after EPA 905R78115, 1978).
 */
export const CoolerKeptBy = z.enum(['view', 'locked', 'secure-area'])
export type CoolerKeptBy = z.infer<typeof CoolerKeptBy>

export const keptByWords: Record<CoolerKeptBy, string> = {
  view: 'in view',
  locked: 'locked',
  'secure-area': 'in a secure area',
}

/** The cooler is kept so from now on; `where` names the place, and who has key or access. */
export const CoolerKept = z.strictObject({
  cooler: CoolerNumber,
  kept: CoolerKeptBy,
  where: z.string().trim().min(3).max(120),
})

export const CoolerState = z.enum(['open', 'sealed', 'handed-off'])
export type CoolerState = z.infer<typeof CoolerState>

/** A cooler as the log knows it now. */
export interface CoolerRecord {
  readonly cooler: CoolerNumber
  readonly name: string
  readonly keeping: Keeping
  readonly capacity: number | null
  readonly state: CoolerState
  readonly seal: string | null
  /** The handoff it is being loaded for or left with. */
  readonly handoff: HandoffNumber | null
}
