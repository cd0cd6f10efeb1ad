/** The handoff: sealed coolers given to a courier, and the record that says what was given. */
import { z } from 'zod'
import { Celsius, SealNumber } from './cooler.ts'
import { Manifest } from './manifest.ts'
import { CoolerNumber, HandoffNumber, KitNumber, PersonId } from './sample-number.ts'
import type { HandoffClassed, HandoffPacked } from './transport.ts'

/** A drawn signature: strokes of points, both axes 0 to 1 on a field three times as wide as high. */
export const Strokes = z
  .array(
    z.array(z.strictObject({ x: z.number().min(0).max(1), y: z.number().min(0).max(1) })).max(2000),
  )
  .max(200)

/** How a person signed: on the screen, or with a pen on the printed manifest. */
export const Signature = z.discriminatedUnion('how', [
  z.strictObject({ how: z.literal('drawn'), strokes: Strokes }),
  z.strictObject({ how: z.literal('on-paper') }),
])
export type Signature = z.infer<typeof Signature>

export const HandoffBegun = z.strictObject({
  handoff: HandoffNumber,
  destination: z.string().trim().min(2).max(120),
  coolers: z.array(CoolerNumber).min(1),
  /** The handoff whose manifest this one adds to. */
  supplements: HandoffNumber.nullable(),
})

/** One cooler carried out: the seal and count as seen now, beside what the log holds. */
export const CoolerScannedOut = z.strictObject({
  handoff: HandoffNumber,
  cooler: CoolerNumber,
  seal: SealNumber,
  celsius: Celsius,
  counted: z.int().nonnegative(),
  expected: z.int().nonnegative(),
  /** Why counted and expected differ; empty when they agree. */
  words: z.string().trim().max(200),
})

export const HandoffCalledOff = z.strictObject({
  handoff: HandoffNumber,
  reason: z.string().trim().min(3).max(200),
})

export const HandoffSigned = z.strictObject({
  handoff: HandoffNumber,
  lead: PersonId,
  leadSignature: Signature,
  courierSignature: Signature,
  /** SHA-256 of the manifest's canonical JSON. */
  digest: z.string().regex(/^[0-9a-f]{64}$/),
  /** The manifest itself: what was signed stays what was signed, whatever is corrected later. */
  manifest: Manifest,
  /** Kits whose bags left for the first time with this handoff. */
  kits: z.array(KitNumber),
})

/** The manifest put right after it was signed. The one before stays in the log, and is named. */
export const HandoffCorrected = z.strictObject({
  handoff: HandoffNumber,
  lead: PersonId,
  digest: z.string().regex(/^[0-9a-f]{64}$/),
  manifest: Manifest,
  /** Kits whose bags left for the first time after all, and those of which none has left. */
  kits: z.array(KitNumber),
  kitsBack: z.array(KitNumber),
})

export const HandoffState = z.enum(['loading', 'signed', 'called-off'])
export type HandoffState = z.infer<typeof HandoffState>

/** One cooler of a handoff; scanned out once its seal and count were read off it. */
export interface HandoffCoolerRecord {
  readonly cooler: CoolerNumber
  readonly scanned: {
    readonly seal: string
    readonly celsius: number
    readonly counted: number
    readonly expected: number
    readonly words: string
    readonly ms: number
  } | null
}

/** A handoff as the log knows it now. */
export interface HandoffRecord {
  readonly handoff: HandoffNumber
  readonly destination: string
  readonly state: HandoffState
  readonly supplements: HandoffNumber | null
  readonly classed: HandoffClassed | null
  readonly packed: HandoffPacked | null
  readonly begunMs: number
  readonly signed: {
    readonly ms: number
    readonly manifest: Manifest
    readonly leadSignature: Signature
    readonly courierSignature: Signature
    readonly digest: string
  } | null
  readonly coolers: readonly HandoffCoolerRecord[]
}
