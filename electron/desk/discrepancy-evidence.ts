/** Gathers from a merged log what the rules of discrepancies look at. */
import type { ReadableLog } from '../../db/connection.ts'
import { understood } from '../../db/fold/fold.ts'
import { headOf } from '../../db/log/read-entries.ts'
import { DamagedFile } from '../../db/merge/unproved.ts'
import { type ChainBreaks, type Fork, type Gap, chainBreaks } from '../../db/read/chain-breaks.ts'
import * as disputes from '../../db/read/disputes.ts'
import { handoffs } from '../../db/read/handoffs.ts'
import { receiptsOf } from '../../db/read/receipts.ts'
import type { DeskId } from '../../shared-types/sample-number.ts'
import { orderStamp } from '../../shared-types/stamp.ts'
import * as animals from '../station/discrepancy/animals.ts'
import * as chains from '../station/discrepancy/chains.ts'
import { clocksApart, clocksPutBack } from '../station/discrepancy/clocks.ts'
import type { Discrepancy } from '../station/discrepancy/discrepancy.ts'
import * as tissue from '../station/discrepancy/tissue.ts'
import { sayEntry } from '../station/story.ts'
import { namesOf } from './names.ts'

/** Everything that the record cannot settle by itself, the gravest first. */
export function discrepanciesIn(log: ReadableLog): Discrepancy[] {
  const breaks = chainBreaks(log)
  return [
    ...tissueDiscrepancies(log),
    ...animalDiscrepancies(log, breaks),
    ...clocksApart(disputes.clockSights(log)),
    ...clocksPutBack(disputes.knownOfKind(log, 'clock.accepted')),
    ...chainDiscrepancies(log, breaks),
  ]
}

function tissueDiscrepancies(log: ReadableLog): Discrepancy[] {
  const nameOf = namesOf(log)
  return [
    ...tissue.bagsSealedTwice(
      disputes.sealsOfOneBag(log),
      disputes.knownOfKind(log, 'bag.discarded'),
    ),
    ...tissue.bagsInTwoPlaces(movesOfBags(log), nameOf),
    ...receiptsInDispute(log),
    ...tissue.bagsOnTwoManifests(disputes.knownOfKind(log, 'handoff.signed')),
    ...tissue.kitsUsedTwice(disputes.openingsOfOneKit(log), nameOf),
  ]
}

/** What the latest counter-scan of each handoff found otherwise than its manifest says. */
function receiptsInDispute(log: ReadableLog): Discrepancy[] {
  return handoffs(log).flatMap((handoff) => {
    const [latest] = receiptsOf(log, handoff.handoff)
    return latest && handoff.signed ? tissue.receivedOtherwise(handoff.signed.manifest, latest) : []
  })
}

/** All that happened to bags that were placed more than once. */
function movesOfBags(log: ReadableLog) {
  const placings = disputes.placingsOfOneBag(log)
  const bags = new Set<string>(placings.map(({ body }) => body.bag))
  return [
    ...placings,
    ...disputes.knownOfKind(log, 'bag.taken-out'),
    ...disputes.knownOfKind(log, 'bag.discarded'),
  ]
    .filter(({ body }) => bags.has(body.bag))
    .toSorted(
      (a, b) =>
        orderStamp(a.at, b.at) ||
        (a.desk === b.desk ? a.seq - b.seq : a.desk < b.desk ? -1 : 1) ||
        (a.hash < b.hash ? -1 : 1),
    )
}

function animalDiscrepancies(log: ReadableLog, { sideOf }: ChainBreaks): Discrepancy[] {
  const lineOf: animals.LineOfWork = ({ desk, hash }) => {
    const side = sideOf.get(hash)
    return side === undefined ? desk : `${desk} ${side}`
  }
  return [
    ...animals.sharedTags(
      disputes.animalsSharingATag(log).map(({ arrived_ms, ...rest }) => ({
        ...rest,
        arrivedMs: arrived_ms,
      })),
    ),
    ...animals.numbersGivenTwice(disputes.checkInsOfOneNumber(log)),
    ...animals.amendedApart(disputes.amendmentsOfOneAnimal(log), lineOf),
    ...animals.outcomesApart(disputes.finishesOfOneAnimal(log)),
    ...lateDays(log),
  ]
}

function lateDays(log: ReadableLog): Discrepancy[] {
  const late = disputes.amendmentsOfClosedDays(log)
  if (late.length === 0) return []
  const closes = new Map(
    disputes
      .knownOfKind(log, 'day.closed')
      .map((close) => [`${close.desk} ${close.body.date}`, close]),
  )
  const after = late.filter(({ desk, date, ms, n }) => {
    const close = closes.get(`${desk} ${date}`)
    return close !== undefined && orderStamp({ ms, n }, close.at) > 0
  })
  return animals.lateAmendments(
    [...closes.values()].map(({ desk, hash, at, body }) => ({
      desk,
      date: body.date,
      hash,
      wall: at.wall,
    })),
    after.map(({ by_desk, ...rest }) => ({ ...rest, byDesk: by_desk })),
  )
}

function chainDiscrepancies(log: ReadableLog, breaks: ChainBreaks): Discrepancy[] {
  const unproved = disputes.unprovedFinds(log)
  return [
    ...chains.forks(breaks.forks.map((fork) => ({ ...fork, sides: sidesTold(log, fork) }))),
    ...chains.gaps(breaks.gaps.filter((gap) => !isAltered(gap, unproved))),
    ...chains.brokenChains(breaks.brokenLinks),
    ...chains.alteredEntries(
      unproved.flatMap(({ key, what, desk, seq, holds }) =>
        what === 'altered'
          ? [
              {
                key,
                desk,
                seq: seq ?? 0,
                kind: String((JSON.parse(holds) as { kind?: unknown }).kind),
                isHereUnaltered: desk !== null && disputes.hasEntryNumber(log, desk, seq ?? 0),
              },
            ]
          : [],
      ),
    ),
    ...chains.damagedFiles(
      unproved.flatMap(({ key, what, holds }) => {
        if (what !== 'damaged-file') return []
        const { heads, unreadable } = DamagedFile.parse(JSON.parse(holds))
        const here = (desk: DeskId) => headOf(log, desk)?.seq ?? 0
        return [
          { key, unreadable, heads: heads.map((head) => ({ ...head, here: here(head.desk) })) },
        ]
      }),
    ),
  ]
}

/** Whether all that is missing in a gap is there, but altered: that is told by itself. */
function isAltered(
  { desk, before, after }: Gap,
  unproved: ReturnType<typeof disputes.unprovedFinds>,
): boolean {
  const altered = new Set(
    unproved.filter((each) => each.what === 'altered' && each.desk === desk).map(({ seq }) => seq),
  )
  const isThere = (seq: number): boolean => seq >= after || (altered.has(seq) && isThere(seq + 1))
  return after - before <= 1 + altered.size && isThere(before + 1)
}

/** What the first entries of each side of a fork say: by them people remember which laptop it was. */
function sidesTold(log: ReadableLog, fork: Fork) {
  const nameOf = namesOf(log)
  return fork.sides.map((side) => ({
    ...side,
    says: disputes.entriesFollowing(log, fork.desk, side.hash, 3).map((entry) => {
      const known = understood(entry)
      return known ? sayEntry(known, nameOf) : entry.kind
    }),
  }))
}
