/**
 * Taking back: an ordinary slip is put right within a minute by whoever made it, always by further
 * entries. Whatever left the desk as paper, tissue or a signature goes through the lead.
 */
import type { AnimalFacts } from '../../shared-types/animal.ts'
import type { CoolerRecord } from '../../shared-types/cooler.ts'
import { draft, type EntryDraft, type KnownEntry } from '../../shared-types/entry.ts'
import { fill } from '../../shared-types/fill.ts'
import { kitAccountKey } from '../../shared-types/kit.ts'
import { granted, type Refusal, type Result, refused } from '../../shared-types/result.ts'
import { type AnimalNumber, numberParts, type PersonId } from '../../shared-types/sample-number.ts'
import { siteWords } from '../../shared-types/tissue.ts'
import { noSampleReason } from './check-in.ts'
import type { StationSettings } from '../../shared-types/station.ts'
import { takeBackWords as words } from './take-back-words.ts'

/** How long a slip may be taken back by its maker. Our own choice. */
export const takeBackMs = 60_000

/** What follows an action by itself, or beside it, and does not stand in the way. */
const companions: readonly string[] = ['wait.told', 'suggestion.overridden', 'person.signed-in']

type Of<K extends KnownEntry['kind']> = Extract<KnownEntry, { kind: K }>

export interface TakeBackView {
  readonly now: number
  readonly settings: StationSettings
  /** Everything the person wrote lately, oldest first, companions and all. */
  readonly mine: readonly KnownEntry[]
  /** Every entry about an animal or bag, oldest first. */
  readonly about: (number: AnimalNumber | Of<'bag.placed'>['body']['bag']) => readonly KnownEntry[]
  readonly coolerOf: (cooler: CoolerRecord['cooler']) => CoolerRecord | null
  readonly kitsAt: (account: string) => number
  readonly nameOf: (number: string) => string
}

export interface TakeBack {
  readonly say: string
  readonly untilMs: number
  readonly drafts: readonly EntryDraft[]
}

const refuse = (
  code: string,
  { say, next }: Pick<Refusal, 'say' | 'next'>,
  values: Record<string, string> = {},
) => refused(code, fill(say, values), next)

/** Decides how the person's last action is taken back, or says why it is not. */
export function decideTakeBack(view: TakeBackView): Result<TakeBack> {
  const deed = lastDeed(view.mine)
  const [first] = deed
  if (!first) return refuse('nothing-to-take-back', words.nothing)
  const untilMs = first.at.wall + takeBackMs
  if (view.now > untilMs) return refuse('take-back-late', words.late)
  if (deed.some(({ kind }) => kind === 'slip.taken-back'))
    return refuse('slip-already-back', words.again)
  const [only, ...others] = deed
  if (!only || others.length > 0) return refuse('ask-the-lead', words.notAlone)
  const back = backOf(view, only)
  if (!back.ok) return back
  const { say, drafts } = back.value
  return granted({ say, untilMs, drafts: [...drafts, takenBack(only)] })
}

/** The entries of the last action: those written in one go have one wall time. */
function lastDeed(mine: readonly KnownEntry[]): KnownEntry[] {
  const own = mine.filter(({ kind }) => !companions.includes(kind))
  const last = own.at(-1)
  return last ? own.filter(({ at }) => at.wall === last.at.wall) : []
}

function takenBack({ desk, seq, kind, body }: KnownEntry): EntryDraft {
  const animal = 'animal' in body && body.animal ? { animal: body.animal } : {}
  const bag = !('animal' in body) && 'bag' in body && body.bag ? { bag: body.bag } : {}
  return draft('slip.taken-back', { desk, seq, kind, ...animal, ...bag })
}

type Back = Result<{ say: string; drafts: EntryDraft[] }>

function backOf(view: TakeBackView, entry: KnownEntry): Back {
  switch (entry.kind) {
    case 'animal.checked-in':
    case 'animal.amended':
    case 'animal.assigned':
    case 'animal.put-back':
    case 'animal.left':
    case 'tissue.checked':
    case 'tissue.missed':
      return animalBack(view, entry)
    case 'bag.placed':
    case 'bag.taken-out':
      return bagBack(view, entry)
    case 'kits.moved':
      return kitsBack(view, entry)
    default:
      return refuse('ask-the-lead', words.notAlone)
  }
}

type AnimalSlip = Of<
  | 'animal.checked-in'
  | 'animal.amended'
  | 'animal.assigned'
  | 'animal.put-back'
  | 'animal.left'
  | 'tissue.checked'
  | 'tissue.missed'
>

/** `A0042`, as the crew calls it. */
function called(animal: AnimalNumber): string {
  const { desk, serial } = numberParts(animal)
  return `${desk.slice(-1)}${String(serial).padStart(4, '0')}`
}

function animalBack(view: TakeBackView, entry: AnimalSlip): Back {
  const { animal } = entry.body
  const story = view.about(animal).filter(({ kind }) => !companions.includes(kind))
  const place = story.findIndex(({ hash }) => hash === entry.hash)
  if (place < story.length - 1) return refuse('worked-on-since', words.workedOn)
  const said = {
    animal: called(animal),
    name: 'sampler' in entry.body ? view.nameOf(entry.body.sampler) : '',
    site: 'site' in entry.body ? siteWords[entry.body.site] : '',
  }
  return granted({
    say: fill(words.deeds[entry.kind], said),
    drafts: animalDrafts(view, entry, story.slice(0, Math.max(place, 0))),
  })
}

function animalDrafts(
  { settings }: TakeBackView,
  entry: AnimalSlip,
  before: readonly KnownEntry[],
): EntryDraft[] {
  const { animal } = entry.body
  const { reason } = words
  switch (entry.kind) {
    case 'animal.checked-in':
      return [draft('animal.struck-out', { animal })]
    case 'animal.amended': {
      const facts = factsIn(before)
      const noSample = facts && noSampleReason(settings, facts)
      return facts ? [draft('animal.amended', { animal, facts, noSample, reason })] : []
    }
    case 'animal.assigned':
    case 'animal.left':
    case 'animal.put-back':
      return [standing(animal, before)]
    case 'tissue.checked':
    case 'tissue.missed':
      return [draft('tissue.reopened', { animal, site: entry.body.site })]
  }
}

function factsIn(story: readonly KnownEntry[]): AnimalFacts | null {
  const last = story.findLast(
    (each) => each.kind === 'animal.checked-in' || each.kind === 'animal.amended',
  )
  return last && 'facts' in last.body ? last.body.facts : null
}

/** Where the animal stood before: with a sampler, gone, or in the line. */
function standing(animal: AnimalNumber, before: readonly KnownEntry[]): EntryDraft {
  const { reason } = words
  const last = before.findLast(({ kind }) =>
    ['animal.assigned', 'animal.put-back', 'animal.left', 'animal.checked-in'].includes(kind),
  )
  if (last?.kind === 'animal.assigned') {
    const sampler: PersonId = last.body.sampler
    return draft('animal.assigned', { animal, sampler })
  }
  if (last?.kind === 'animal.left') return draft('animal.left', { animal, reason })
  return draft('animal.put-back', { animal, reason })
}

function bagBack(view: TakeBackView, entry: Of<'bag.placed' | 'bag.taken-out'>): Back {
  const { bag, cooler } = entry.body
  if (view.about(bag).at(-1)?.hash !== entry.hash) return refuse('worked-on-since', words.workedOn)
  const name = view.nameOf(cooler)
  if (view.coolerOf(cooler)?.state !== 'open')
    return refuse('cooler-sealed-since', words.coolerShut, { name })
  return granted({
    say: fill(words.deeds[entry.kind], { name }),
    drafts: [
      entry.kind === 'bag.placed'
        ? draft('bag.taken-out', { bag, cooler, reason: words.reason })
        : draft('bag.placed', { bag, cooler }),
    ],
  })
}

function kitsBack({ kitsAt }: TakeBackView, { body }: Of<'kits.moved'>): Back {
  const { from, to, count } = body
  const isGiven = [from, to].every((each) => each.in === 'stock' || each.in === 'hands')
  if (!isGiven) return refuse('kits-settled', words.kitsSettled)
  if (kitsAt(kitAccountKey(to)) < count) return refuse('kits-moved-on', words.kitsGone)
  return granted({
    say: fill(words.deeds['kits.moved'], { count }),
    drafts: [draft('kits.moved', { from: to, to: from, count, reason: words.reason })],
  })
}
