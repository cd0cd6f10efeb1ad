/** Tissue on the bench: a kit opened for it, judged on the cut face, not taken with a reason, finished. */
import type { AnimalRecord, Outcome } from '../../shared-types/animal.ts'
import { animalStateWords } from '../../shared-types/animal.ts'
import { draft, type EntryDraft } from '../../shared-types/entry.ts'
import type { KitRecord } from '../../shared-types/kit.ts'
import type { LabelRecord } from '../../shared-types/label.ts'
import type { PersonRecord } from '../../shared-types/person.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import { grouped, numberParts, type SampleNumber } from '../../shared-types/sample-number.ts'
import type { StationSettings } from '../../shared-types/station.ts'
import {
  checkWords,
  type MissedReason,
  siteWords,
  type TissueCheck,
  type TissueRecord,
  type TissueSite,
} from '../../shared-types/tissue.ts'

/** An animal on the bench with all that is known of it. */
export interface BenchRecord {
  readonly animal: AnimalRecord
  /** The kit opened on it, or null. */
  readonly kit: KitRecord | null
  readonly tissues: readonly TissueRecord[]
  readonly by: PersonRecord
}

function checkInHand({ animal, by }: BenchRecord): Result<null> {
  if (animal.state !== 'with-sampler')
    return refused(
      'animal-not-in-hand',
      `Animal ${grouped(animal.animal)} is ${animalStateWords[animal.state]}.`,
      'Assign it to a sampler first.',
      'animal',
    )
  if (by.role !== 'lead' && animal.sampler !== by.person)
    return refused(
      'not-your-animal',
      `Animal ${grouped(animal.animal)} is in another sampler's hands.`,
      'Ask the station lead to reassign it, or work one of your own.',
      'animal',
    )
  if (animal.facts.consent === 'refused')
    return refused(
      'consent-withdrawn',
      `The hunter of animal ${grouped(animal.animal)} does not agree to sampling any more.`,
      'Stop. Discard what is bagged, give the head back, and record that the hunter left.',
      'animal',
    )
  return granted(null)
}

/** Opens a kit on an animal: the kit leaves the sampler's hands and is used. */
export function decideOpenKit(
  bench: BenchRecord,
  kit: KitRecord,
  kitsInHand: number,
  samplerName: string,
): Result<EntryDraft[]> {
  const inHand = checkInHand(bench)
  if (!inHand.ok) return inHand
  const { animal } = bench
  if (bench.kit?.kit === kit.kit)
    return refused(
      'kit-already-open',
      `Kit ${grouped(kit.kit)} is already open on this animal.`,
      'Go on with the tissue.',
      'kit',
    )
  if (bench.kit)
    return refused(
      'animal-has-kit',
      `Animal ${grouped(animal.animal)} already has kit ${grouped(bench.kit.kit)}.`,
      'Go on with that kit.',
      'kit',
    )
  if (kit.state === 'spoiled')
    return refused(
      'kit-spoiled',
      `Kit ${grouped(kit.kit)} is recorded as spoiled.`,
      'Take another kit.',
      'kit',
    )
  if (kit.state === 'opened')
    return refused(
      'kit-already-used',
      `Kit ${grouped(kit.kit)} was already used on animal ${kit.animal ? grouped(kit.animal) : 'another'}.`,
      'Put it aside for the lead and take a new kit.',
      'kit',
    )
  if (kit.animal && kit.animal !== animal.animal)
    return refused(
      'kit-of-another-animal',
      `The labels of kit ${grouped(kit.kit)} were printed for animal ${grouped(kit.animal)}.`,
      'Find the kit that was printed for this animal, or take a kit reserved for nobody.',
      'kit',
    )
  if (kitsInHand < 1)
    return refused(
      'no-kits-in-hand',
      `By the ledger ${samplerName} has no kits in hand.`,
      'Record the kits picked up (kits screen: move from stock to this sampler), then scan again.',
      'kit',
    )
  const sampler = animal.sampler as NonNullable<AnimalRecord['sampler']>
  return granted([draft('kit.opened', { kit: kit.kit, animal: animal.animal, sampler })])
}

/** Whether tissue may be bagged. Unsure goes to the laboratory as unsure; wrong tissue never goes. */
export function isBaggable(site: TissueSite, check: TissueCheck): boolean {
  if (check === 'unsure') return true
  return site === 'obex' ? check === 'obex' : check === 'lymph-node'
}

/** What to do after a look at the cut face. Signs of the tissues: common practice, no source. */
export function checkAdvice(site: TissueSite, check: TissueCheck): string {
  if (isBaggable(site, check))
    return check === 'unsure'
      ? 'Ask the lead to look, if one is near. Bag it as unsure rather than losing it.'
      : 'Good. Bag it and scan the bag label.'
  if (site === 'obex') return 'That is not obex. Cut again, or record the obex as not taken.'
  return `That is ${checkWords[check]}, which cannot be tested. Look again beside it: a node is firm, bean-shaped, with paler follicles near the rim of its cut face.`
}

/** Whether a site of the animal in hand is still to be dealt with. */
export function checkSite(
  bench: BenchRecord,
  settings: StationSettings,
  site: TissueSite,
): Result<null> {
  const inHand = checkInHand(bench)
  if (!inHand.ok) return inHand
  if (!settings.tissues.some((each) => each.site === site))
    return refused(
      'site-not-taken-here',
      `The ${siteWords[site]} is not taken at this station.`,
      'Take the tissues listed on the bench.',
      'site',
    )
  if (bench.tissues.find((each) => each.site === site)?.bag)
    return refused(
      'site-already-bagged',
      `The ${siteWords[site]} of this animal is already in a sealed bag.`,
      'Discard that bag first, with a reason, if it must be done again.',
      'site',
    )
  return granted(null)
}

export function kitNeeded(animal: AnimalRecord): Result<never> {
  return refused(
    'open-a-kit-first',
    `No kit is open on animal ${grouped(animal.animal)}.`,
    "Scan the kit's data card first.",
    'kit',
  )
}

/** Records what was seen and felt on the cut face, right tissue or wrong. */
export function decideCheckTissue(
  bench: BenchRecord,
  settings: StationSettings,
  look: { site: TissueSite; check: TissueCheck; sizeMm: number | null },
): Result<EntryDraft[]> {
  const sound = checkSite(bench, settings, look.site)
  if (!sound.ok) return sound
  if (!bench.kit) return kitNeeded(bench.animal)
  if (look.site !== 'obex' && look.check === 'obex')
    return refused(
      'check-of-another-site',
      'Obex was chosen for a lymph node.',
      'Choose what you saw at this side.',
      'check',
    )
  return granted([
    draft('tissue.checked', { animal: bench.animal.animal, kit: bench.kit.kit, ...look }),
  ])
}

/** Records that a tissue could not be taken, and why. */
export function decideMissTissue(
  bench: BenchRecord,
  settings: StationSettings,
  missed: { site: TissueSite; reason: MissedReason; words: string },
): Result<EntryDraft[]> {
  const sound = checkSite(bench, settings, missed.site)
  if (!sound.ok) return sound
  if (missed.reason === 'other' && missed.words.length < 3)
    return refused(
      'reason-needed',
      '"Other" needs a few words.',
      'Say why it was not taken.',
      'words',
    )
  return granted([draft('tissue.missed', { animal: bench.animal.animal, ...missed })])
}

/** Both nodes, one, or none; the obex does not make a side. */
export function outcomeOf(tissues: readonly TissueRecord[]): Outcome {
  const sides = tissues.filter(({ site, bag }) => site !== 'obex' && bag !== null).length
  if (sides >= 2) return 'both'
  return sides === 1 ? 'one' : 'none'
}

/**
 * Finishes an animal once each tissue is bagged or said to be missing. Labels of bags that stay empty
 * are void, so that no loose label can end up on another animal.
 */
export function decideFinish(
  bench: BenchRecord,
  settings: StationSettings,
  labels: readonly LabelRecord[],
): Result<{ outcome: Outcome; drafts: EntryDraft[] }> {
  const inHand = checkInHand(bench)
  if (!inHand.ok) return inHand
  const open = settings.tissues.find(({ site }) => {
    const tissue = bench.tissues.find((each) => each.site === site)
    return !tissue?.bag && !tissue?.missed
  })
  if (open)
    return refused(
      'site-still-open',
      `The ${siteWords[open.site]} is neither bagged nor recorded as not taken.`,
      'Bag it, or record why it was not taken.',
      'site',
    )
  const outcome = outcomeOf(bench.tissues)
  const { animal } = bench
  const sampler = animal.sampler as NonNullable<AnimalRecord['sampler']>
  return granted({
    outcome,
    drafts: [
      ...labels
        .filter(({ fate }) => fate !== 'void')
        .filter(({ number }) => isLooseBagLabel(number, bench.tissues))
        .map(({ number, copy }) =>
          draft('label.voided', { number, copy, reason: 'not-taken', words: '' }),
        ),
      draft('animal.finished', { animal: animal.animal, sampler, outcome }),
    ],
  })
}

/** Whether a label is one for a bag, and no sealed bag of the animal carries it. */
function isLooseBagLabel(number: SampleNumber, tissues: readonly TissueRecord[]): boolean {
  const { part } = numberParts(number)
  return 'LRX'.includes(part) && !tissues.some(({ bag }) => bag === number)
}
