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
import { Kept, TissueCheck, TissueSite } from './tissue.ts'

export const ManifestBag = z.strictObject({
  bag: BagNumber,
  animal: AnimalNumber,
  species: Species,
  side: TissueSite,
  kept: Kept,
  check: TissueCheck,
  sealedAt: z.iso.datetime({ offset: true }),
})

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
  coolers: z.array(ManifestCooler),
  bags: z.int(),
})
export type Manifest = z.infer<typeof Manifest>
