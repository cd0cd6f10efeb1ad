/**
 * The score of a live morning: what matters in the record. Every point lost names the entry that shows
 * it. The aims for window and bench are our own choice; the line is measured by the station's target.
 */
import type { AnimalFacts, AnimalRecord } from '../../../../shared-types/animal.ts'
import type { KnownEntry } from '../../../../shared-types/entry.ts'
import { fill } from '../../../../shared-types/fill.ts'
import { kitAccountKey } from '../../../../shared-types/kit.ts'
import { type AnimalNumber, numberParts } from '../../../../shared-types/sample-number.ts'
import { checkWords, siteWords, type TissueSite } from '../../../../shared-types/tissue.ts'
import type { ScoreLine, ScoreView } from '../../../../shared-types/views/practice.ts'
import { guestsByAnimal } from './match.ts'
import type { LiveGuest, LiveStage } from './stage.ts'
import { factWords, scoreWords as words } from './words.ts'

/** Minutes at the window from arriving to being checked in, and on the bench from taking to finishing. */
const aims = { window: 4, bench: 12 }

const costs = {
  fact: 4,
  tag: 8,
  label: 5,
  wrongTissue: 10,
  missed: 5,
  wait: 2,
  variance: 10,
} as const

/** A refusal that stopped a wrong label from being used. */
const labelCodes: readonly string[] = [
  'wrong-side',
  'bag-of-another-kit',
  'kit-of-another-animal',
  'kit-already-used',
  'label-void',
]

/** Something the desk refused the learner. */
export interface Slip {
  readonly atMs: number
  readonly code: string
  readonly say: string
}

export interface ScoreGiven {
  readonly stage: LiveStage
  readonly nowMs: number
  readonly targetWaitMinutes: number
  readonly animals: readonly AnimalRecord[]
  /** Every entry since the morning began, with what it says. */
  readonly entries: readonly { readonly entry: KnownEntry; readonly say: string }[]
  readonly slips: readonly Slip[]
}

export function scoreOf(given: ScoreGiven): ScoreView {
  const lines = [...byRole(given), ...slipLines(given), ...taskLines(given)]
  const lost = lines.reduce((sum, { points }) => sum + points, 0)
  return {
    points: Math.max(0, 100 - lost),
    lines: lines.toSorted((a, b) => b.points - a.points),
  }
}

function byRole(given: ScoreGiven): ScoreLine[] {
  switch (given.stage.role) {
    case 'check-in':
      return checkInLines(given)
    case 'bench':
      return benchLines(given)
    case 'lead':
      return given.animals.flatMap((animal) => lineWait(given, animal))
  }
}

/** `A0042`, as the crew calls it. */
function called(animal: AnimalNumber): string {
  const { desk, serial } = numberParts(animal)
  return `${desk.slice(-1)}${String(serial).padStart(4, '0')}`
}

const minutesBetween = (from: number, to: number) => Math.round((to - from) / 60_000)

type Find = (entry: KnownEntry) => boolean

/** The entry that shows it, as a score line names it: the last one that is so. */
function shown({ entries }: ScoreGiven, isIt: Find): ScoreLine['entry'] {
  const found = entries.findLast(({ entry }) => isIt(entry))
  return found ? { seq: found.entry.seq, ms: found.entry.at.wall, say: found.say } : null
}

const about =
  (animal: AnimalNumber, ...kinds: readonly KnownEntry['kind'][]): Find =>
  ({ kind, body }) =>
    kinds.includes(kind) && 'animal' in body && body.animal === animal

function line(
  is: ScoreLine['is'],
  points: number,
  say: string,
  entry: ScoreLine['entry'],
): ScoreLine {
  return { is, points, say, entry }
}

// Check-in

function checkInLines(given: ScoreGiven): ScoreLine[] {
  const { stage, animals, nowMs } = given
  const guestOf = guestsByAnimal(stage.guests, animals)
  const met = new Set<LiveGuest>()
  const lines = animals.flatMap((animal) => {
    const guest = guestOf(animal.animal)
    if (!guest) return []
    met.add(guest)
    return [...factLines(given, animal, guest), ...windowWait(given, animal, guest)]
  })
  const left = stage.guests.filter(
    (guest) => !met.has(guest) && minutesBetween(guest.arrivesMs, nowMs) > aims.window,
  )
  const never = left.map(({ plan }) =>
    line('undone', costs.fact, fill(words.notCheckedIn, { tag: plan.facts.tag }), null),
  )
  return [...lines, ...never]
}

const facts: readonly (keyof typeof factWords)[] = [
  'tag',
  'hunter',
  'species',
  'sex',
  'age',
  'harvested',
  'place',
  'head',
  'consent',
]

/** Texts are compared as a person reads them: case and spaces at the ends do not matter. */
function isSame(a: AnimalFacts, b: AnimalFacts, fact: keyof typeof factWords): boolean {
  const read = (value: unknown) => JSON.stringify(value).toLowerCase().replace(/\s+/g, ' ')
  if (fact === 'head') return a.head.presented === b.head.presented && sorted(a) === sorted(b)
  return read(a[fact]) === read(b[fact])
}

function sorted({ head }: AnimalFacts): string {
  return head.faults.toSorted().join()
}

function factLines(given: ScoreGiven, animal: AnimalRecord, { plan }: LiveGuest): ScoreLine[] {
  const number = animal.animal
  const entry = shown(given, about(number, 'animal.checked-in', 'animal.amended'))
  const wrong = facts.filter((fact) => !isSame(animal.facts, plan.facts, fact))
  if (wrong.length === 0)
    return [line('facts', 0, fill(words.rightFacts, { animal: called(number) }), entry)]
  return wrong.map((fact) =>
    line(
      fact === 'tag' ? 'label' : 'facts',
      fact === 'tag' ? costs.tag : costs.fact,
      fill(words.fact, { animal: called(number), fact: factWords[fact] }),
      entry,
    ),
  )
}

function windowWait(given: ScoreGiven, animal: AnimalRecord, guest: LiveGuest): ScoreLine[] {
  const minutes = minutesBetween(guest.arrivesMs, animal.arrivedMs)
  if (minutes <= aims.window) return []
  const say = fill(words.windowWait, { animal: called(animal.animal), minutes, aim: aims.window })
  return [line('wait', costs.wait, say, shown(given, about(animal.animal, 'animal.checked-in')))]
}

// Bench

function benchLines(given: ScoreGiven): ScoreLine[] {
  const { stage, animals } = given
  const mine = animals.filter(({ sampler }) => sampler === stage.cast.trainee)
  const guestOf = guestsByAnimal(stage.guests, animals)
  return mine.flatMap((animal) => [
    ...tissueLines(given, animal, guestOf(animal.animal)),
    ...benchWait(given, animal),
  ])
}

function tissueLines(
  given: ScoreGiven,
  { animal }: AnimalRecord,
  guest: LiveGuest | undefined,
): ScoreLine[] {
  return (guest?.plan.tissues ?? []).flatMap(({ site, looks, missed }) => {
    const said = { animal: called(animal), site: siteWords[site] }
    const entry = shown(given, ofSite(animal, site))
    const seen = given.entries.flatMap(({ entry: each }) =>
      each.kind === 'tissue.checked' && ofSite(animal, site)(each) ? [each.body.check] : [],
    )
    const wrong = seen.findIndex((check, place) => {
      const truth = looks[Math.min(place, looks.length - 1)]?.check
      return truth !== undefined && check !== truth && check !== 'unsure'
    })
    if (wrong >= 0) {
      const was = looks[Math.min(wrong, looks.length - 1)]?.check ?? 'unsure'
      const names = { called: checkWords[seen[wrong] ?? 'unsure'], was: checkWords[was] }
      const say = fill(words.wrongTissue, { ...said, ...names })
      return [line('tissue', costs.wrongTissue, say, entry)]
    }
    const isMissed = given.entries.some(
      ({ entry: each }) => each.kind === 'tissue.missed' && ofSite(animal, site)(each),
    )
    if (isMissed && missed === null)
      return [line('tissue', costs.missed, fill(words.missedNode, said), entry)]
    return seen.length > 0 ? [line('tissue', 0, fill(words.rightTissue, said), entry)] : []
  })
}

const ofSite =
  (animal: AnimalNumber, site: TissueSite): Find =>
  (entry) =>
    (entry.kind === 'tissue.checked' || entry.kind === 'tissue.missed') &&
    entry.body.animal === animal &&
    entry.body.site === site

function benchWait(given: ScoreGiven, animal: AnimalRecord): ScoreLine[] {
  const { assignedMs, finishedMs, state } = animal
  if (assignedMs === null) return []
  const name = { animal: called(animal.animal) }
  const entry = shown(given, about(animal.animal, 'animal.finished', 'animal.assigned'))
  const minutes = minutesBetween(assignedMs, finishedMs ?? given.nowMs)
  if (minutes > aims.bench)
    return [
      line('wait', costs.wait, fill(words.benchWait, { ...name, minutes, aim: aims.bench }), entry),
    ]
  return state === 'with-sampler' ? [line('undone', 0, fill(words.undone, name), entry)] : []
}

// The line

function lineWait(given: ScoreGiven, animal: AnimalRecord): ScoreLine[] {
  const { targetWaitMinutes: aim, nowMs } = given
  const { arrivedMs, assignedMs, state } = animal
  const isWaiting = state === 'waiting'
  if (!isWaiting && assignedMs === null) return []
  const minutes = minutesBetween(arrivedMs, assignedMs ?? nowMs)
  const said = { animal: called(animal.animal), minutes, aim }
  const entry = shown(given, about(animal.animal, 'animal.assigned', 'animal.checked-in'))
  if (minutes > aim)
    return [
      line('wait', costs.wait, fill(isWaiting ? words.stillWaits : words.lineWait, said), entry),
    ]
  return isWaiting ? [] : [line('wait', 0, fill(words.inTime, said), entry)]
}

// Labels and kits, for every role

/** A wrong label that the desk stopped; the entry is what was done in its place. */
function slipLines(given: ScoreGiven): ScoreLine[] {
  const { trainee } = given.stage.cast
  return given.slips
    .filter(({ code }) => labelCodes.includes(code))
    .map(({ atMs, say }) => {
      const next = given.entries.find(({ entry }) => entry.by === trainee && entry.at.wall >= atMs)
      const entry = next && { seq: next.entry.seq, ms: next.entry.at.wall, say: next.say }
      return line('label', costs.label, fill(words.stopped, { say }), entry ?? null)
    })
}

function taskLines(given: ScoreGiven): ScoreLine[] {
  return given.stage.tasks
    .filter(({ atMs }) => atMs <= given.nowMs)
    .map(({ say: task, from, to, count }) => {
      const entry = shown(
        given,
        ({ kind, body, by }) =>
          kind === 'kits.moved' &&
          by === given.stage.cast.trainee &&
          kitAccountKey(body.from) === from &&
          kitAccountKey(body.to) === to &&
          body.count === count,
      )
      return entry
        ? line('variance', 0, fill(words.recorded, { task }), entry)
        : line('variance', costs.variance, fill(words.untold, { task, count }), null)
    })
}
