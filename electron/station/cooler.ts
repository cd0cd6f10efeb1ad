/** Coolers: what may go into which, what a temperature means, when a seal goes on. */
import type { CoolerKeptBy, CoolerRecord } from '../../shared-types/cooler.ts'
import { draft, type EntryDraft } from '../../shared-types/entry.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import { grouped } from '../../shared-types/sample-number.ts'
import { type Keeping, keepingWords, type StationSettings } from '../../shared-types/station.ts'
import { type BagRecord, type Kept, keptWords } from '../../shared-types/tissue.ts'
import { unitInDoubt } from './logger.ts'

/**
 * Which tissue a cooler takes. Fixed tissue is never frozen, and submission guides ask not to pack it
 * with ice (SCWDS, University of Georgia: avoid packing formalin-fixed tissue with ice packs).
 */
export function mayKeep(keeping: Keeping, kept: Kept): boolean {
  return kept === 'formalin' ? keeping === 'room' : keeping !== 'room'
}

function checkOpen(cooler: CoolerRecord): Result<null> {
  if (cooler.state === 'handed-off')
    return refused(
      'cooler-handed-off',
      `Cooler ${cooler.name} has left with the courier.`,
      'Use another cooler.',
      'cooler',
    )
  if (cooler.state === 'sealed')
    return refused(
      'cooler-sealed',
      `Cooler ${cooler.name} is sealed with ${cooler.seal ?? ''}.`,
      'Use another cooler, or ask the lead to break the seal with a reason.',
      'cooler',
    )
  return granted(null)
}

/** Puts a bag into a cooler: it is then in that one place and no other. */
export function decidePlaceBag(
  bag: BagRecord,
  cooler: CoolerRecord,
  bagsInside: number,
): Result<EntryDraft[]> {
  const open = checkOpen(cooler)
  if (!open.ok) return open
  if (bag.place === 'cooler')
    return bag.cooler === cooler.cooler
      ? refused(
          'bag-already-here',
          `Bag ${grouped(bag.bag)} is already in ${cooler.name}.`,
          'Scan the next bag.',
          'bag',
        )
      : refused(
          'bag-in-another-cooler',
          `Bag ${grouped(bag.bag)} is in another cooler by the log.`,
          'Take it out of that cooler first, so that it is in one place only.',
          'bag',
        )
  if (bag.place !== 'bench')
    return refused(
      'bag-not-here',
      `Bag ${grouped(bag.bag)} is ${bag.place === 'discarded' ? 'discarded' : 'already handed to a courier'} by the log.`,
      'Put it aside and ask the lead.',
      'bag',
    )
  if (!mayKeep(cooler.keeping, bag.kept))
    return refused(
      'wrong-keeping',
      `Bag ${grouped(bag.bag)} is ${keptWords[bag.kept]}; ${cooler.name} is kept ${keepingWords[cooler.keeping]}.`,
      bag.kept === 'formalin'
        ? 'Put it into a cooler kept at room temperature: tissue in formalin must never freeze.'
        : 'Put it into a cooler on ice, or a frozen one.',
      'cooler',
    )
  if (cooler.capacity !== null && bagsInside >= cooler.capacity)
    return refused(
      'cooler-full',
      `Cooler ${cooler.name} holds ${cooler.capacity} bags and has ${bagsInside}.`,
      'Seal it and go on with another cooler.',
      'cooler',
    )
  return granted([draft('bag.placed', { bag: bag.bag, cooler: cooler.cooler })])
}

/** Takes a bag out again, with a reason; it is then back on the bench. */
export function decideTakeOut(
  bag: BagRecord,
  cooler: CoolerRecord | null,
  reason: string,
): Result<EntryDraft[]> {
  if (bag.place !== 'cooler' || !cooler)
    return refused(
      'bag-not-in-cooler',
      `Bag ${grouped(bag.bag)} is in no cooler by the log.`,
      'Nothing needs taking out.',
      'bag',
    )
  const open = checkOpen(cooler)
  if (!open.ok) return open
  return granted([draft('bag.taken-out', { bag: bag.bag, cooler: cooler.cooler, reason })])
}

/** Whether a reading lies outside the station's limits for how a cooler is kept. */
export function isExcursion(settings: StationSettings, keeping: Keeping, celsius: number): boolean {
  const { low, high } = settings.limits[keeping]
  return celsius < low || celsius > high
}

/** What to do about a reading. */
export function readingAdvice(
  settings: StationSettings,
  keeping: Keeping,
  celsius: number,
): string {
  if (!isExcursion(settings, keeping, celsius)) return 'Within the limits.'
  const { low, high } = settings.limits[keeping]
  const limits = `The limits are ${low} to ${high} °C.`
  if (keeping === 'room') return `${limits} Move it out of the sun, or into a warm place.`
  if (celsius > high)
    return `Too warm. ${limits} Add ice or move the bags to a freezer, read again in 30 minutes, and tell the laboratory.`
  return keeping === 'chilled'
    ? `Too cold. ${limits} Fresh tissue may be frozen, but say so to the laboratory; take ice out if it should stay chilled.`
    : `Colder than the limits set here. ${limits} Check the thermometer.`
}

/** Asks about the unit of a temperature that would be right in °F. Refuses `unit-in-doubt`. */
export function checkUnit(
  cooler: CoolerRecord,
  settings: StationSettings,
  celsius: number,
): Result<null> {
  if (!unitInDoubt(celsius, 'C', settings.limits[cooler.keeping])) return granted(null)
  return refused(
    'unit-in-doubt',
    `${celsius} °C is far outside the limits of ${cooler.name}; ${celsius} °F would lie near them.`,
    'Look at the thermometer. If it shows °F, type an F behind the number; if it is °C, say so and record it again.',
    'celsius',
  )
}

/** Records a reading; one outside the limits is marked as an excursion. */
export function decideReading(
  cooler: CoolerRecord,
  settings: StationSettings,
  celsius: number,
  sure: boolean,
): Result<EntryDraft[]> {
  const unit = sure ? granted(null) : checkUnit(cooler, settings, celsius)
  if (!unit.ok) return unit
  if (cooler.state === 'handed-off')
    return refused(
      'cooler-handed-off',
      `Cooler ${cooler.name} has left with the courier.`,
      'Read a cooler that is here.',
      'cooler',
    )
  const excursion = isExcursion(settings, cooler.keeping, celsius)
  return granted([draft('cooler.read', { cooler: cooler.cooler, celsius, excursion })])
}

/**
 * Records how custody of a cooler is kept while no seal is on it. One that is sealed is in custody by its
 * seal; to be locked up as well says more, and is taken.
 */
export function decideKeep(
  cooler: CoolerRecord,
  kept: CoolerKeptBy,
  where: string,
): Result<EntryDraft[]> {
  if (cooler.state === 'handed-off')
    return refused(
      'cooler-handed-off',
      `Cooler ${cooler.name} has left with the courier.`,
      'Record how a cooler is kept that is here.',
      'cooler',
    )
  return granted([draft('cooler.kept', { cooler: cooler.cooler, kept, where })])
}

/** A seal that was put on before: on which cooler, and whether it was broken since. */
export interface PastSeal {
  readonly cooler: string
  readonly broken: boolean
}

/** Seals a cooler. An empty one is refused, and so is a seal whose number was ever used. */
export function decideSeal(
  cooler: CoolerRecord,
  seal: string,
  bagsInside: number,
  before: PastSeal | null,
): Result<EntryDraft[]> {
  const open = checkOpen(cooler)
  if (!open.ok) return open
  if (bagsInside === 0)
    return refused(
      'cooler-empty',
      `Cooler ${cooler.name} is empty.`,
      'Put the bags in first.',
      'cooler',
    )
  if (before)
    return refused(
      'seal-used-twice',
      before.broken
        ? `Seal ${seal} was on ${before.cooler} and is broken: a broken seal proves nothing.`
        : `Seal ${seal} is already recorded on ${before.cooler}.`,
      'Read the number on the seal again; each seal is used once.',
      'seal',
    )
  return granted([draft('cooler.sealed', { cooler: cooler.cooler, seal, bags: bagsInside })])
}

/** Breaks a seal with a reason. Not once the cooler is being loaded for a handoff. */
export function decideBreakSeal(cooler: CoolerRecord, reason: string): Result<EntryDraft[]> {
  if (cooler.state !== 'sealed' || !cooler.seal)
    return refused(
      'cooler-not-sealed',
      `Cooler ${cooler.name} is not sealed here.`,
      'Nothing needs breaking.',
      'cooler',
    )
  if (cooler.handoff)
    return refused(
      'cooler-in-handoff',
      `Cooler ${cooler.name} is being loaded for the courier.`,
      'Call the handoff off first.',
      'cooler',
    )
  return granted([draft('seal.broken', { cooler: cooler.cooler, seal: cooler.seal, reason })])
}
