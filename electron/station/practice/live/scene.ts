/** What the learner sees and hears at a moment that no screen of the desk could know. */
import type { AnimalRecord } from '../../../../shared-types/animal.ts'
import { fill } from '../../../../shared-types/fill.ts'
import { kitAccountKey } from '../../../../shared-types/kit.ts'
import { bagNumber, numberParts } from '../../../../shared-types/sample-number.ts'
import { sitePart } from '../../../../shared-types/tissue.ts'
import type { LivePracticeView } from '../../../../shared-types/views/practice.ts'
import { hunterSays } from './hunter-says.ts'
import { guestsByAnimal } from './match.ts'
import type { Seen } from './seen.ts'
import type { LiveGuest, LiveStage } from './stage.ts'
import { feels, missedFeels, tableWords, taskWords } from './words.ts'

type Scene = Pick<LivePracticeView, 'come' | 'atWindow' | 'underKnife' | 'onTable' | 'told'>

/** `looksAt` counts the looks already recorded at a site of an animal. */
export function sceneOf(
  stage: LiveStage,
  seen: Seen,
  looksAt: (animal: AnimalRecord['animal'], site: string) => number,
): Scene {
  const come = stage.guests.filter(({ arrivesMs }) => arrivesMs <= seen.nowMs)
  return {
    come: come.length,
    atWindow: stage.role === 'check-in' ? atWindow(stage, seen, come) : null,
    ...(stage.role === 'bench' ? atBench(stage, seen, looksAt) : nothingAtBench),
    told: [
      ...stage.tasks.filter(({ atMs }) => atMs <= seen.nowMs).map(({ say }) => say),
      ...(stage.role === 'lead' ? asking(seen) : []),
    ],
  }
}

function atWindow(
  { guests }: LiveStage,
  seen: Seen,
  come: readonly LiveGuest[],
): Scene['atWindow'] {
  const guestOf = guestsByAnimal(guests, seen.animals)
  const met = new Set(seen.animals.map(({ animal }) => guestOf(animal)))
  const waiting = come.filter((guest) => !met.has(guest))
  const [first] = waiting
  if (!first) return null
  return {
    waiting: waiting.length,
    minutes: Math.floor((seen.nowMs - first.arrivesMs) / 60_000),
    says: hunterSays(first.plan.facts),
  }
}

const nothingAtBench = { underKnife: null, onTable: [] }

function atBench(
  stage: LiveStage,
  seen: Seen,
  looksAt: (animal: AnimalRecord['animal'], site: string) => number,
): Pick<Scene, 'underKnife' | 'onTable'> {
  const { trainee } = stage.cast
  const animal = seen.animals.find(
    ({ state, sampler }) => state === 'with-sampler' && sampler === trainee,
  )
  if (!animal) return nothingAtBench
  const guest = guestsByAnimal(stage.guests, seen.animals)(animal.animal)
  return {
    underKnife: guest ? underKnife(guest, animal, seen, looksAt) : null,
    onTable: onTable(animal, seen),
  }
}

function underKnife(
  { plan }: LiveGuest,
  { animal }: AnimalRecord,
  seen: Seen,
  looksAt: (animal: AnimalRecord['animal'], site: string) => number,
): Scene['underKnife'] {
  const done = seen.tissuesOf(animal)
  const next = plan.tissues.find(({ site }) => {
    const tissue = done.find((each) => each.site === site)
    return !tissue?.bag && !tissue?.missed
  })
  if (!next) return null
  const { site, looks, missed } = next
  const look = looks[looksAt(animal, site)]
  if (look) return { site, looks: look.check, feels: feels[look.check] }
  if (missed) return { site, looks: null, feels: missedFeels[missed] }
  const last = looks.at(-1)?.check ?? 'unsure'
  return { site, looks: last, feels: feels[last] }
}

/** The kit that lies there: the one of this animal, else the next of the reserve. */
function onTable({ animal }: AnimalRecord, seen: Seen): Scene['onTable'] {
  const kit = seen.kitOf(animal)?.kit ?? seen.reserved.at(-1)
  if (!kit) return []
  const { desk, serial } = numberParts(kit)
  return [
    { words: tableWords.card, number: kit },
    { words: tableWords.left, number: bagNumber(desk, serial, sitePart.left) },
    { words: tableWords.right, number: bagNumber(desk, serial, sitePart.right) },
  ]
}

function asking(seen: Seen): string[] {
  return seen.crew
    .filter(({ role, duty }) => role === 'sampler' && duty === 'on')
    .filter(({ person }) => seen.kitsAt(kitAccountKey({ in: 'hands', person })) < 1)
    .map(({ name }) => fill(taskWords.asks, { name }))
}
