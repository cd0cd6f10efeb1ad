/** The manifest for machines: what was given to the courier. Holds no hunter, name or phone of one. */
import { z } from 'zod'
import { Species } from './animal.ts'
import { Celsius, SealNumber } from './cooler.ts'
import { Courier } from './courier.ts'
import {
  AnimalNumber,
  BagNumber,
  CoolerNumber,
  DeskId,
  HandoffNumber,
  PersonId,
} from './sample-number.ts'
import { Keeping } from './station.ts'
import { TransportClass } from './transport.ts'
import { Kept, TissueCheck, TissueSite } from './tissue.ts'

export const ManifestBag = z.strictObject({
  bag: BagNumber,
  animal: AnimalNumber,
  species: Species,
  side: TissueSite,
  kept: Kept,
  check: TissueCheck,
  sealedAt: z.iso.datetime({ offset: true }),
  /** Where the animal was taken, as the laboratory asks for it; empty where nobody knows. */
  harvest: z.string().max(120),
  /** It lay in a cooler while that was outside its limits. */
  excursion: z.boolean(),
})
export type ManifestBag = z.infer<typeof ManifestBag>

export const ManifestCooler = z.strictObject({
  cooler: CoolerNumber,
  name: z.string(),
  keeping: Keeping,
  seal: SealNumber,
  celsius: Celsius,
  counted: z.int(),
  /** Why counted and listed bags differ; empty when they agree. */
  difference: z.string(),
  bags: z.array(ManifestBag),
})

export type ManifestCooler = z.infer<typeof ManifestCooler>

/** A bag that an earlier edition had or had not; its line is struck through, never erased. */
export const ManifestStroke = z.strictObject({
  bag: BagNumber,
  cooler: CoolerNumber,
  what: z.enum(['taken-off', 'added']),
})
export type ManifestStroke = z.infer<typeof ManifestStroke>

/** A corrected manifest names the one that it replaces. */
export const ManifestCorrection = z.strictObject({
  edition: z.int().min(2).max(99),
  /** The digest of the edition before. */
  replaces: z.string().regex(/^[0-9a-f]{64}$/),
  reason: z.string().trim().min(3).max(200),
  correctedAt: z.iso.datetime({ offset: true }),
  by: z.strictObject({ person: PersonId, name: z.string(), initials: z.string() }),
  strokes: z.array(ManifestStroke).min(1).max(200),
})
export type ManifestCorrection = z.infer<typeof ManifestCorrection>

export const Manifest = z.strictObject({
  form: z.literal('duskline-manifest-1'),
  handoff: HandoffNumber,
  desk: DeskId,
  station: z.string(),
  zone: z.string(),
  practice: z.boolean(),
  destination: z.string(),
  handedOverAt: z.iso.datetime({ offset: true }),
  lead: z.strictObject({ person: PersonId, name: z.string() }),
  courier: Courier,
  /** The manifest that this one adds to, of a handoff earlier that day. */
  supplements: HandoffNumber.nullable(),
  /** As the lead chose with the carrier; null where nothing was chosen. */
  transport: z
    .strictObject({ class: TransportClass, agreedWith: z.string(), citation: z.string() })
    .nullable(),
  /** Net mass of dry ice in kilograms over all coolers. */
  dryIceKg: z.number().nullable(),
  /** Every correction since it was signed, the oldest first. */
  corrections: z.array(ManifestCorrection),
  coolers: z.array(ManifestCooler),
  bags: z.int(),
})
export type Manifest = z.infer<typeof Manifest>

/** The JSON file given with a handoff: the manifest, and the SHA-256 of its canonical form (RFC 8785). */
export const ManifestFile = z.strictObject({
  digest: z.string().regex(/^[0-9a-f]{64}$/),
  manifest: Manifest,
})
export type ManifestFile = z.infer<typeof ManifestFile>
