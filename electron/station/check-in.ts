/** Check-in: is the tag already here, is the animal to be sampled, can the laboratory use the place? */
import type { AnimalFacts, AnimalRecord, NoSampleReason } from '../../shared-types/animal.ts'
import { draft, type EntryDraft } from '../../shared-types/entry.ts'
import type { LocalDate } from '../../shared-types/local-date.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import { type AnimalNumber, grouped } from '../../shared-types/sample-number.ts'
import type { StationSettings } from '../../shared-types/station.ts'

/** Why an animal is recorded but not sampled here, or null when it joins the line. */
export function noSampleReason(
  settings: StationSettings,
  facts: AnimalFacts,
): NoSampleReason | null {
  if (facts.consent === 'refused') return 'consent-refused'
  const sampled = settings.species.find(({ species }) => species === facts.species)
  if (!sampled) return 'species-not-taken'
  return sampled.ages.includes(facts.age) ? null : 'age-not-taken'
}

/** Whether the place of harvest is precise enough for this station's laboratory. */
export function placeUsable(settings: StationSettings, facts: Pick<AnimalFacts, 'place'>): boolean {
  const { place } = facts
  if (place.by === 'not-known') return false
  if (place.by === 'coordinates') return true
  if (settings.locationNeed === 'coordinates') return false
  return settings.locationNeed === 'unit' || place.place.length >= 3
}

/**
 * What a volunteer should hear before the hunter drives off. That samples without a usable place are
 * commonly not tested is told by several agencies' submission guides.
 */
export function checkInWarnings(settings: StationSettings, facts: AnimalFacts): string[] {
  const warnings: string[] = []
  if (!placeUsable(settings, facts))
    warnings.push(
      'The place of harvest is not precise enough: the laboratory commonly does not test such a sample. Ask the hunter again before they leave.',
    )
  if (facts.head.faults.includes('frozen'))
    warnings.push('A frozen head cannot be sampled here until it has thawed: tell the sampler.')
  if (facts.head.faults.includes('spoiled'))
    warnings.push(
      'The head is spoiled: tissue may be unfit, so tell the hunter that it may not be tested.',
    )
  return warnings
}

/** Refusals of facts that cannot be: a unit that is not of this station's list, a harvest after today. */
function checkFacts(settings: StationSettings, facts: AnimalFacts, today: LocalDate): Result<null> {
  if (facts.harvested > today)
    return refused(
      'harvest-in-future',
      `The harvest date ${facts.harvested} is after today, ${today}.`,
      'Correct the harvest date.',
      'facts.harvested',
    )
  const unit = facts.place.by === 'not-known' ? '' : facts.place.unit
  if (unit !== '' && !settings.units.some(({ code }) => code === unit))
    return refused(
      'unit-unknown',
      `There is no harvest unit ${unit} on this station's list.`,
      'Choose a unit of the list, or ask the lead to add it in the station settings.',
      'facts.place.unit',
    )
  return granted(null)
}

export interface CheckInView {
  readonly settings: StationSettings
  readonly today: LocalDate
  /** The station's open day. */
  readonly day: LocalDate
  /** Another animal that carries this tag, if any. */
  readonly tagHolder: AnimalRecord | null
}

function tagTaken(tag: string, holder: AnimalNumber): Result<never> {
  return refused(
    'tag-already-here',
    `Tag ${tag} is already on animal ${grouped(holder)}.`,
    'Compare the tag with the hunter. If it is the same animal, open its story; if not, correct the tag number.',
    'facts.tag',
  )
}

/** Decides a check-in under a new number. `contact` is the digest under which the contact is kept. */
export function decideCheckIn(
  view: CheckInView,
  animal: AnimalNumber,
  facts: AnimalFacts,
  contact: string | null,
): Result<EntryDraft[]> {
  if (view.tagHolder) return tagTaken(facts.tag, view.tagHolder.animal)
  const sound = checkFacts(view.settings, facts, view.today)
  if (!sound.ok) return sound
  const noSample = noSampleReason(view.settings, facts)
  return granted([draft('animal.checked-in', { animal, day: view.day, facts, contact, noSample })])
}

/** Decides a correction of an animal's facts; what was first recorded stays in the log. */
export function decideAmend(
  view: CheckInView & { readonly animal: AnimalRecord },
  facts: AnimalFacts,
  reason: string,
): Result<EntryDraft[]> {
  const { animal } = view.animal
  if (view.tagHolder && view.tagHolder.animal !== animal)
    return tagTaken(facts.tag, view.tagHolder.animal)
  const sound = checkFacts(view.settings, facts, view.today)
  if (!sound.ok) return sound
  const noSample = noSampleReason(view.settings, facts)
  return granted([draft('animal.amended', { animal, facts, noSample, reason })])
}
