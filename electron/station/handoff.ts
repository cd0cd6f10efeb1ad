/** The handoff: sealed coolers go to the courier, each seal and count read again on the way out. */
import type { CoolerRecord } from '../../shared-types/cooler.ts'
import { draft, type EntryDraft } from '../../shared-types/entry.ts'
import type { HandoffRecord } from '../../shared-types/handoff.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import { type CoolerNumber, grouped, type HandoffNumber } from '../../shared-types/sample-number.ts'
import type { StationSettings } from '../../shared-types/station.ts'
import {
  type HandoffClassed,
  type HandoffPacked,
  type PackingAnswer,
  PackingStep,
} from '../../shared-types/transport.ts'
import { checkUnit, isExcursion } from './cooler.ts'

/** Begins a handoff of sealed coolers that no other handoff holds. */
export function decideBeginHandoff(
  handoff: HandoffNumber,
  destination: string,
  coolers: readonly CoolerRecord[],
  supplements: HandoffRecord | null = null,
): Result<EntryDraft[]> {
  if (supplements && !supplements.signed)
    return refused(
      'handoff-not-signed',
      `Handoff ${grouped(supplements.handoff)} is not signed, so nothing can add to its manifest.`,
      'Choose a signed one, or none.',
      'supplements',
    )
  for (const cooler of coolers) {
    if (cooler.state === 'handed-off')
      return refused(
        'cooler-handed-off',
        `Cooler ${cooler.name} has already left.`,
        'Take it off the list.',
        'coolers',
      )
    if (cooler.handoff)
      return refused(
        'cooler-in-handoff',
        `Cooler ${cooler.name} is already being loaded for handoff ${grouped(cooler.handoff)}.`,
        'Finish that handoff or call it off.',
        'coolers',
      )
    if (cooler.state !== 'sealed')
      return refused(
        'cooler-not-sealed',
        `Cooler ${cooler.name} is not sealed.`,
        'Seal it first (coolers screen).',
        'coolers',
      )
  }
  const numbers = [...new Set(coolers.map(({ cooler }) => cooler))]
  return granted([
    draft('handoff.begun', {
      handoff,
      destination,
      coolers: numbers,
      supplements: supplements?.handoff ?? null,
    }),
  ])
}

function checkLoading(handoff: HandoffRecord): Result<null> {
  if (handoff.state === 'loading') return granted(null)
  return refused(
    'handoff-not-loading',
    `Handoff ${grouped(handoff.handoff)} is ${handoff.state === 'signed' ? 'already signed' : 'called off'}.`,
    'Begin another handoff for coolers that are still here.',
    'handoff',
  )
}

export interface ScannedOut {
  readonly seal: string
  readonly celsius: number
  readonly counted: number
  /** The person was asked about the unit and stands by °C. */
  readonly sure: boolean
  readonly words: string
}

/** Reads one cooler's seal and count as it leaves; a seal that differs stops it, a count must be explained. */
export function decideScanOut(
  handoff: HandoffRecord,
  cooler: CoolerRecord,
  bagsInside: number,
  seen: ScannedOut,
  settings: StationSettings,
): Result<EntryDraft[]> {
  const loading = checkLoading(handoff)
  if (!loading.ok) return loading
  if (!handoff.coolers.some((each) => each.cooler === cooler.cooler))
    return refused(
      'cooler-not-in-handoff',
      `Cooler ${cooler.name} is not part of this handoff.`,
      'Leave it here, or call the handoff off and begin again with it.',
      'cooler',
    )
  if (seen.seal !== cooler.seal)
    return refused(
      'seal-differs',
      `The seal reads ${seen.seal}, and the log has ${cooler.seal ?? 'none'} on ${cooler.name}.`,
      'Read the seal again. If it was replaced, stop: call the handoff off, break and reseal with a reason, and count the bags.',
      'seal',
    )
  if (seen.counted !== bagsInside && seen.words.length < 3)
    return refused(
      'difference-unexplained',
      `${seen.counted} bags counted, ${bagsInside} by the log.`,
      'Count again. If it stays so, say why in a few words: the manifest will show it.',
      'words',
    )
  const unit = seen.sure ? granted(null) : checkUnit(cooler, settings, seen.celsius)
  if (!unit.ok) return unit
  const { seal, celsius, counted } = seen
  return granted([
    draft('cooler.scanned-out', {
      handoff: handoff.handoff,
      cooler: cooler.cooler,
      expected: bagsInside,
      seal,
      celsius,
      counted,
      words: seen.counted === bagsInside ? '' : seen.words,
    }),
    draft('cooler.read', {
      cooler: cooler.cooler,
      celsius: seen.celsius,
      excursion: isExcursion(settings, cooler.keeping, seen.celsius),
    }),
  ])
}

/** Calls a handoff off; its coolers stay. */
export function decideCallOff(handoff: HandoffRecord, reason: string): Result<EntryDraft[]> {
  const loading = checkLoading(handoff)
  if (!loading.ok) return loading
  return granted([draft('handoff.called-off', { handoff: handoff.handoff, reason })])
}

/** What is still open of packing and class, a few words each. */
export function openBeforeSigning({ packed, classed }: HandoffRecord): string[] {
  const answers = new Map(packed?.answers.map(({ step, answer }) => [step, answer]))
  const count = (of: (answer: PackingAnswer | undefined) => boolean) =>
    PackingStep.options.filter((step) => of(answers.get(step))).length
  const unanswered = count((answer) => answer === undefined)
  const notDone = count((answer) => answer === 'not-done')
  return [
    ...(unanswered > 0
      ? [`${unanswered} of ${PackingStep.options.length} packing steps not answered`]
      : []),
    ...(notDone > 0 ? [`${notDone} packing ${notDone === 1 ? 'step' : 'steps'} not done`] : []),
    ...(classed ? [] : ['class for transport not chosen']),
  ]
}

/**
 * Whether a handoff may be signed: loading, each cooler scanned out as it stands now, and what is open
 * of packing and class asked about once (`asItIs`: the lead hands over all the same).
 */
export function checkReadyToSign(
  handoff: HandoffRecord,
  nameOf: (cooler: CoolerNumber) => string,
  asItIs: boolean,
): Result<null> {
  const loading = checkLoading(handoff)
  if (!loading.ok) return loading
  const left = handoff.coolers.filter(({ scanned }) => scanned === null)
  const open = asItIs ? [] : openBeforeSigning(handoff)
  if (left.length === 0 && open.length > 0)
    return refused(
      'packing-open',
      `Still open: ${open.join('; ')}.`,
      'Answer it with the carrier, or sign once more to hand over as it is.',
      'asItIs',
    )
  if (left.length === 0) return granted(null)
  return refused(
    'coolers-not-scanned-out',
    `Not scanned out yet: ${left.map(({ cooler }) => nameOf(cooler)).join(', ')}.`,
    'Scan each cooler, read its seal and its temperature.',
    'handoff',
  )
}

/** The lead's choice of transport class, made with the carrier; the program never makes it. */
export function decideClass(
  handoff: HandoffRecord,
  classed: Omit<HandoffClassed, 'handoff'>,
): Result<EntryDraft[]> {
  const loading = checkLoading(handoff)
  if (!loading.ok) return loading
  return granted([draft('handoff.classed', { ...classed, handoff: handoff.handoff })])
}

/** Answers to the packing checklist; a step is answered once, and dry ice has a mass. */
export function decidePack(
  handoff: HandoffRecord,
  packed: Omit<HandoffPacked, 'handoff'>,
): Result<EntryDraft[]> {
  const loading = checkLoading(handoff)
  if (!loading.ok) return loading
  if (new Set(packed.answers.map(({ step }) => step)).size !== packed.answers.length)
    return refused(
      'step-answered-twice',
      'A step is answered twice.',
      'Answer each step once.',
      'answers',
    )
  const dryIce = packed.answers.find(({ step }) => step === 'dry-ice')?.answer
  if (dryIce === 'done' && packed.dryIceKg === null)
    return refused(
      'dry-ice-mass-missing',
      'Dry ice is packed and its net mass is not said.',
      'Weigh it and type the kilograms over all coolers: by air they must stand outside.',
      'dryIceKg',
    )
  return granted([draft('handoff.packed', { ...packed, handoff: handoff.handoff })])
}
