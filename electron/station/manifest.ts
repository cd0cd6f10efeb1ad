/** The manifest: what the sealed coolers hold, bag by bag, without a word about any hunter. */
import type { CoolerRecord } from '../../shared-types/cooler.ts'
import type { Courier } from '../../shared-types/courier.ts'
import type { HandoffRecord } from '../../shared-types/handoff.ts'
import type { Manifest, ManifestBag, ManifestCooler } from '../../shared-types/manifest.ts'
import type { PersonRecord } from '../../shared-types/person.ts'
import type { HarvestPlace, Species } from '../../shared-types/animal.ts'
import type { StationRecord } from '../../shared-types/station.ts'
import type { BagRecord, TissueCheck } from '../../shared-types/tissue.ts'
import { harvestWords } from './harvest.ts'
import { localIso } from './local-time.ts'

export type BagOnManifest = BagRecord & {
  readonly species: Species
  readonly check: TissueCheck | null
  readonly harvest: HarvestPlace
  /** It lay in a cooler while that was outside its limits. */
  readonly excursion: boolean
}

export interface ManifestView {
  readonly station: StationRecord
  readonly handoff: HandoffRecord
  readonly lead: PersonRecord
  readonly courier: Courier
  readonly handedOverMs: number
  readonly coolers: readonly (CoolerRecord & { readonly inside: readonly BagOnManifest[] })[]
}

/** Builds the manifest of a handoff whose coolers were all scanned out. */
export function manifestOf(view: ManifestView): Manifest {
  const { station, handoff } = view
  const coolers = view.coolers.map((cooler) => manifestCooler(view, cooler))
  return {
    form: 'duskline-manifest-1',
    handoff: handoff.handoff,
    desk: station.desk,
    station: station.name,
    zone: station.zone,
    practice: station.practice,
    destination: handoff.destination,
    handedOverAt: localIso(view.handedOverMs, station.zone),
    lead: { person: view.lead.person, name: view.lead.name },
    courier: view.courier,
    supplements: handoff.supplements,
    transport: handoff.classed && {
      class: handoff.classed.transport,
      agreedWith: handoff.classed.agreedWith,
      citation: handoff.classed.citation,
    },
    dryIceKg: handoff.packed?.dryIceKg ?? null,
    corrections: [],
    coolers,
    bags: coolers.reduce((sum, { bags }) => sum + bags.length, 0),
  }
}

function manifestCooler(
  { station, handoff }: ManifestView,
  cooler: ManifestView['coolers'][number],
): ManifestCooler {
  const scanned = handoff.coolers.find((each) => each.cooler === cooler.cooler)?.scanned
  if (!scanned) throw new Error(`cooler ${cooler.cooler} was not scanned out`)
  return {
    cooler: cooler.cooler,
    name: cooler.name,
    keeping: cooler.keeping,
    seal: scanned.seal,
    celsius: scanned.celsius,
    counted: scanned.counted,
    difference: scanned.words,
    bags: cooler.inside.map((bag) => manifestBag(bag, station.zone)),
  }
}

/** One line of the list. */
export function manifestBag(bag: BagOnManifest, zone: string): ManifestBag {
  return {
    bag: bag.bag,
    animal: bag.animal,
    species: bag.species,
    side: bag.site,
    kept: bag.kept,
    check: bag.check ?? 'unsure',
    sealedAt: localIso(bag.sealedMs, zone),
    harvest: harvestWords(bag.harvest),
    excursion: bag.excursion,
  }
}
