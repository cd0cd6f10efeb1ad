/** Who held a bag from when to when, by every entry that touched it. */
import type { ReadableLog } from '../../db/connection.ts'
import { understood } from '../../db/fold/fold.ts'
import { entriesAbout } from '../../db/read/story.ts'
import { knownOfKind } from '../../db/read/disputes.ts'
import type { EntryKind, KnownEntry } from '../../shared-types/entry.ts'
import { granted } from '../../shared-types/result.ts'
import { orderStamp } from '../../shared-types/stamp.ts'
import type { BagRecord } from '../../shared-types/tissue.ts'
import type { CustodyView } from '../../shared-types/views/custody.ts'
import { custodyOf } from '../station/custody.ts'
import type { QueryHandlers } from './call.ts'
import { findBag } from './find.ts'
import { namesOf } from './names.ts'

/** Kinds that touch a bag without naming it or its animal at the top of their body. */
const around = [
  'cooler.kept',
  'cooler.sealed',
  'seal.broken',
  'day.closed',
  'handoff.signed',
  'handoff.corrected',
  'receipt.counted',
] as const satisfies readonly EntryKind[]

function entriesOf(log: ReadableLog, bag: BagRecord): KnownEntry[] {
  const about = entriesAbout(log, [bag.animal, bag.bag]).flatMap((entry) => {
    const known = understood(entry)
    return known ? [known] : []
  })
  const handoffs = new Set<string>()
  const near = around
    .flatMap((kind): KnownEntry[] => knownOfKind(log, kind))
    .filter((entry) => {
      if (entry.kind !== 'handoff.signed' && entry.kind !== 'handoff.corrected') return true
      const listed = entry.body.manifest.coolers.some(({ bags }) =>
        bags.some((each) => each.bag === bag.bag),
      )
      const struck = entry.body.manifest.corrections.some(({ strokes }) =>
        strokes.some((each) => each.bag === bag.bag),
      )
      if (listed || struck) handoffs.add(entry.body.handoff)
      return listed || struck
    })
  return [...about, ...near.filter((entry) => ofItsHandoff(entry, handoffs))].toSorted(
    (a, b) => orderStamp(a.at, b.at) || a.seq - b.seq,
  )
}

/** A counter-scan says nothing of bags of another handoff. */
function ofItsHandoff(entry: KnownEntry, handoffs: ReadonlySet<string>): boolean {
  return entry.kind !== 'receipt.counted' || handoffs.has(entry.body.handoff)
}

/** The chain of custody of a bag. */
export function custodyView(log: ReadableLog, bag: BagRecord): CustodyView {
  const { steps, holes, corrections } = custodyOf(bag.bag, entriesOf(log, bag), namesOf(log))
  return { bag: bag.bag, steps: [...steps], holes: [...holes], corrections: [...corrections] }
}

export const custodyQueries = {
  custody: ({ log }, { bag: text }) => {
    const bag = findBag(log, text)
    return bag.ok ? granted(custodyView(log, bag.value)) : bag
  },
} satisfies Partial<QueryHandlers>
