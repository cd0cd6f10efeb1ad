/** The evidence at dusk: what the log holds that may explain why a count differs. */
import type { ReadableLog } from '../../db/connection.ts'
import { understood } from '../../db/fold/fold.ts'
import { animalsInLine } from '../../db/read/animals.ts'
import { bagOf, bagsOnBench, tissuesOf } from '../../db/read/bags.ts'
import { coolers } from '../../db/read/coolers.ts'
import {
  kitsOpenedForAnother,
  kitsVoidedAsSpoiled,
  lastHandedMs,
  reprintedLabels,
  tagsSeenTwice,
} from '../../db/read/evidence.ts'
import { dutySince } from '../../db/read/line.ts'
import { personOf } from '../../db/read/people.ts'
import { entriesAbout } from '../../db/read/story.ts'
import { kitAccountKey } from '../../shared-types/kit.ts'
import type { AnimalNumber, PersonId } from '../../shared-types/sample-number.ts'
import type { DayRecord, StationRecord } from '../../shared-types/station.ts'
import type { Evidence } from '../station/likely-cause.ts'
import { localTime } from '../station/local-time.ts'
import type { DuskView } from '../station/reconcile.ts'

/** Who else had an animal before its sampler, or null. */
function samplerBefore(log: ReadableLog, animal: AnimalNumber, sampler: PersonId): PersonId | null {
  const before = entriesAbout(log, [animal])
    .map(understood)
    .flatMap((entry) => (entry?.kind === 'animal.assigned' ? [entry.body.sampler] : []))
  return before.findLast((each) => each !== sampler) ?? null
}

export function evidenceOf(
  log: ReadableLog,
  { openedMs, date }: DayRecord,
  { kitsInHand }: DuskView,
  { zone, settings }: StationRecord,
): Evidence {
  const at = (ms: number | null | undefined) =>
    ms === null || ms === undefined ? '' : localTime(ms, zone)
  const [duties, handed] = [dutySince(log), lastHandedMs(log)]
  return {
    hands: kitsInHand.map(({ person: { person, name, duty }, kits }) => ({
      person,
      name,
      duty,
      dutySince: at(duties.get(person)),
      kits,
      lastHanded: at(handed.get(kitAccountKey({ in: 'hands', person }))),
    })),
    openedForAnother: kitsOpenedForAnother(log, openedMs).map(({ ms, ...kit }) => ({
      ...kit,
      before: samplerBefore(log, kit.animal, kit.sampler),
      at: at(ms),
    })),
    voidedAsSpoiled: kitsVoidedAsSpoiled(log).map(({ kit, ms }) => ({ kit, at: at(ms) })),
    reprinted: reprintedLabels(log, openedMs).map(({ ms, ...label }) => ({ ...label, at: at(ms) })),
    bench: bagsOnBench(log).map(({ bag, sealedMs }) => ({ bag, at: at(sealedMs) })),
    coolers: coolers(log),
    coolerOf: (bag) => bagOf(log, bag)?.cooler ?? null,
    withSampler: animalsInLine(log).flatMap(({ animal, state, sampler, assignedMs }) => {
      const holder = state === 'with-sampler' && sampler ? personOf(log, sampler) : null
      if (!holder) return []
      const { name, duty } = holder
      const tissues = tissuesOf(log, animal)
      const bags = tissues.filter(({ bag }) => bag !== null).length
      const settled = new Set(
        tissues.flatMap(({ site, bag, missed }) => (bag || missed ? [site] : [])),
      )
      const openSites = settings.tissues.filter(({ site }) => !settled.has(site)).length
      return [{ animal, name, duty, since: at(assignedMs), bags, openSites }]
    }),
    twice: tagsSeenTwice(log, date),
  }
}
