/** What a sampler will find at each side of a made-up animal. */
import type { AnimalFacts } from '../../../shared-types/animal.ts'
import type { MissedReason, TissueCheck, TissueSite } from '../../../shared-types/tissue.ts'
import type { Incidents } from './incidents.ts'
import type { Chance } from './random.ts'

/** One look at a cut face; size in millimetres where somebody measured. */
export interface Look {
  readonly check: TissueCheck
  readonly sizeMm: number | null
}

export interface TissuePlan {
  readonly site: TissueSite
  readonly looks: readonly Look[]
  /** Why it is not taken, or null when the last look is bagged. */
  readonly missed: MissedReason | null
}

/** A node is about 21 to 24 mm (common practice, no source). */
function node(chance: Chance): Look {
  const sizeMm = chance.happens(0.5) ? chance.whole(18, 27) : null
  return { check: 'lymph-node', sizeMm }
}

function wrongTissue(chance: Chance): Look {
  const check = chance.weighted<TissueCheck>([
    ['salivary-gland', 60],
    ['muscle', 22],
    ['fat', 18],
  ])
  return { check, sizeMm: null }
}

/** Why each side of a head that is not sound is missed; null where it is taken all the same. */
function missedOf(chance: Chance, facts: AnimalFacts): [MissedReason | null, MissedReason | null] {
  const [fault] = facts.head.faults
  const perhaps = (reason: MissedReason, probability: number) =>
    chance.happens(probability) ? reason : null
  if (fault === 'frozen') return ['frozen-head', 'frozen-head']
  if (fault === 'spoiled') return [perhaps('spoiled', 0.5), perhaps('spoiled', 0.5)]
  if (fault === 'head-shot') return ['shot-away', perhaps('shot-away', 0.2)]
  if (fault === 'neck-shot') return [null, perhaps('shot-away', 0.5)]
  return [null, null]
}

function sidePlan(
  chance: Chance,
  site: TissueSite,
  missed: MissedReason | null,
  incidents: Incidents,
): TissuePlan {
  const first = incidents.has('wrong-tissue-first') && site === 'left' ? [wrongTissue(chance)] : []
  if (missed === 'not-found') return { site, missed, looks: [...first, wrongTissue(chance)] }
  if (missed) return { site, missed, looks: [] }
  const last: Look =
    incidents.has('unsure') && site === 'right' ? { check: 'unsure', sizeMm: null } : node(chance)
  return { site, missed, looks: [...first, last] }
}

/** Both sides of an animal; one of a one-sided animal is missed. */
export function tissuePlan(chance: Chance, facts: AnimalFacts, incidents: Incidents): TissuePlan[] {
  const [left, right] = missedOf(chance, facts)
  const oneSided = incidents.has('one-sided')
    ? chance.oneOf<MissedReason>(['cut-away', 'not-found'])
    : null
  return [
    sidePlan(chance, 'left', left, incidents),
    sidePlan(chance, 'right', right ?? oneSided, incidents),
  ]
}
