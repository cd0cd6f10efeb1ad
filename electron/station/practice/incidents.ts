/** What does not go as it should on a practice day, dealt out so that none of it is left to luck. */
import type { Chance } from './random.ts'

/** The share of animals that each befalls: invented for teaching, nearer to a bad day than a usual one. */
const atCheckIn = {
  'consent-refused': 0.025,
  young: 0.11,
  'species-not-taken': 0.012,
  'place-not-known': 0.04,
  amended: 0.04,
} as const

const inTheLine = {
  'leaves-for-good': 0.02,
  'leaves-and-returns': 0.015,
  'labels-at-check-in': 0.3,
} as const

const atTheBench = {
  'put-back': 0.025,
  reassigned: 0.03,
  'kit-spoiled': 0.025,
  'label-torn': 0.03,
  'bag-split': 0.015,
  'one-sided': 0.06,
  'wrong-tissue-first': 0.12,
  unsure: 0.02,
  'wrong-cooler': 0.012,
} as const

export type Incident = keyof typeof atCheckIn | keyof typeof inTheLine | keyof typeof atTheBench
export type Incidents = ReadonlySet<Incident>

/** Of fewer animals than this, an incident may spare all. */
const smallDay = 15

interface Struck {
  readonly soundHead: boolean
  readonly incidents: Set<Incident>
}

/** Each kind strikes its share of the animals, rounded, and one at least unless the day is small. */
function deal(
  chance: Chance,
  animals: readonly Struck[],
  shares: Partial<Record<Incident, number>>,
): void {
  for (const [kind, share] of Object.entries(shares)) {
    const rounded = Math.round(animals.length * share)
    const count = animals.length < smallDay ? rounded : Math.max(1, rounded)
    const struck = chance.shuffled(animals).slice(0, count)
    for (const { incidents } of struck) incidents.add(kind as Incident)
  }
}

const recordedOnly: readonly Incident[] = ['consent-refused', 'young', 'species-not-taken']

/**
 * The incidents of each animal. What happens in the line strikes only those that join it; what happens at
 * the bench strikes only sound heads that are worked, so that it does happen.
 */
export function dealIncidents(chance: Chance, soundHeads: readonly boolean[]): Incidents[] {
  const animals = soundHeads.map((soundHead) => ({ soundHead, incidents: new Set<Incident>() }))
  deal(chance, animals, atCheckIn)
  const joining = animals.filter(
    ({ incidents }) => !recordedOnly.some((each) => incidents.has(each)),
  )
  deal(chance, joining, inTheLine)
  const worked = joining.filter(
    ({ soundHead, incidents }) => soundHead && !incidents.has('leaves-for-good'),
  )
  deal(chance, worked, atTheBench)
  return animals.map(({ incidents }) => incidents)
}
