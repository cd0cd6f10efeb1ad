/** Discrepancies about bags and kits: where a wrong answer would give a hunter another's result. */
import type { KnownEntry } from '../../../shared-types/entry.ts'
import { type BagNumber, type CoolerNumber, grouped } from '../../../shared-types/sample-number.ts'
import type { Manifest } from '../../../shared-types/manifest.ts'
import type { ReceiptCounted } from '../../../shared-types/receipt.ts'
import { siteWords } from '../../../shared-types/tissue.ts'
import type { Discrepancy, Side } from './discrepancy.ts'
import { receiptFindings } from '../receipt.ts'
import { groupsOf } from './groups.ts'

type Of<K extends KnownEntry['kind']> = Extract<KnownEntry, { kind: K }>

/** One bag number sealed on two tissues, none of which was discarded before the next. */
export function bagsSealedTwice(
  seals: readonly Of<'bag.sealed'>[],
  discards: readonly Of<'bag.discarded'>[],
): Discrepancy[] {
  const standing = seals.filter((seal) => !isDoneAgain(seal, seals, discards))
  const twice = [...groupsOf(standing, ({ body }) => body.bag)].filter(
    ([, entries]) => entries.length > 1,
  )
  return twice.map(([bag, entries]) => ({
    kind: 'bag-twice',
    evidence: entries.map(({ hash }) => hash).toSorted(),
    say: `Bag number ${grouped(bag)} was sealed ${entries.length} times.`,
    next: 'Hold back both bags. Do not report a result under this number before it is settled.',
    sides: entries.map(({ hash, desk, at, body }) => ({
      key: hash,
      title: `${siteWords[body.site]} of animal ${grouped(body.animal)}`,
      lines: [`from kit ${grouped(body.kit)}`],
      desk,
      ms: at.wall,
      holds: { is: 'bag-of', bag, animal: body.animal, kit: body.kit, site: body.site },
    })),
  }))
}

/** A bag that was torn, discarded and done again under a new copy of its label is one bag. */
function isDoneAgain(
  seal: Of<'bag.sealed'>,
  seals: readonly Of<'bag.sealed'>[],
  discards: readonly Of<'bag.discarded'>[],
): boolean {
  const later = (each: Of<'bag.sealed' | 'bag.discarded'>) =>
    each.desk === seal.desk && each.body.bag === seal.body.bag && each.seq > seal.seq
  const next = Math.min(...seals.filter(later).map(({ seq }) => seq))
  return discards.some((discard) => later(discard) && discard.seq < next)
}

type Move = Of<'bag.placed' | 'bag.taken-out' | 'bag.discarded'>

/**
 * Bags put into a cooler while they were in another. `moves` are all that happened to those bags, in
 * the order of the merged log.
 */
export function bagsInTwoPlaces(
  moves: readonly Move[],
  nameOf: (number: string) => string,
): Discrepancy[] {
  return [...groupsOf(moves, ({ body }) => body.bag)].flatMap(([bag, ofBag]) => {
    const places = heldAtOnce(ofBag)
    return places.length < 2 ? [] : [twoPlaces(bag, places, nameOf)]
  })
}

/** The placings that stand beside each other: none was taken back before the next. */
function heldAtOnce(moves: readonly Move[]): Of<'bag.placed'>[] {
  const held = new Map<CoolerNumber, Of<'bag.placed'>>()
  let most: Of<'bag.placed'>[] = []
  for (const move of moves) {
    if (move.kind === 'bag.placed') held.set(move.body.cooler, move)
    else if (move.kind === 'bag.taken-out') held.delete(move.body.cooler)
    else held.clear()
    if (held.size > most.length) most = [...held.values()]
  }
  return most
}

function twoPlaces(
  bag: BagNumber,
  places: readonly Of<'bag.placed'>[],
  nameOf: (number: string) => string,
): Discrepancy {
  return {
    kind: 'bag-in-two-places',
    evidence: places.map(({ hash }) => hash).toSorted(),
    say: `Bag ${grouped(bag)} is recorded in ${places.length} coolers at once.`,
    next: 'Look into the coolers, or ask whoever received them.',
    sides: places.map(({ hash, desk, at, body }) => ({
      key: hash,
      title: `In cooler ${nameOf(body.cooler)}`,
      lines: [`cooler ${grouped(body.cooler)}`],
      desk,
      ms: at.wall,
      holds: { is: 'bag-in', bag, cooler: body.cooler },
    })),
  }
}

/** Bags that two signed manifests list. */
export function bagsOnTwoManifests(signed: readonly Of<'handoff.signed'>[]): Discrepancy[] {
  const listings = signed.flatMap((entry) =>
    entry.body.manifest.coolers.flatMap(({ bags }) => bags.map(({ bag }) => ({ bag, entry }))),
  )
  return [...groupsOf(listings, ({ bag }) => bag)].flatMap(([bag, listed]) =>
    listed.length < 2
      ? []
      : [
          {
            kind: 'bag-on-two-manifests' as const,
            evidence: [bag, ...listed.map(({ entry }) => entry.hash)].toSorted(),
            say: `Bag ${grouped(bag)} is on ${listed.length} signed manifests.`,
            next: 'Ask the laboratory with which delivery the bag came.',
            sides: listed.map(({ entry }) => manifestSide(bag, entry)),
          },
        ],
  )
}

function manifestSide(bag: BagNumber, { hash, desk, at, body }: Of<'handoff.signed'>): Side {
  return {
    key: hash,
    title: `Manifest ${grouped(body.handoff)}`,
    lines: [`${body.manifest.bags} bags for ${body.manifest.destination}`],
    desk,
    ms: at.wall,
    holds: { is: 'bag-with', bag, handoff: body.handoff },
  }
}

/** One kit opened on two animals. */
export function kitsUsedTwice(
  openings: readonly Of<'kit.opened'>[],
  nameOf: (number: string) => string,
): Discrepancy[] {
  return [...groupsOf(openings, ({ body }) => body.kit)].map(([kit, entries]) => ({
    kind: 'kit-twice',
    evidence: entries.map(({ hash }) => hash).toSorted(),
    say: `Kit ${grouped(kit)} was opened ${entries.length} times.`,
    next: 'Look whose bags carry its labels; labels of one kit may have been printed twice.',
    sides: entries.map(({ hash, desk, at, body }) => ({
      key: hash,
      title: `Used on animal ${grouped(body.animal)}`,
      lines: [`by ${nameOf(body.sampler)}`],
      desk,
      ms: at.wall,
      holds: { is: 'kit-of', kit, animal: body.animal, sampler: body.sampler },
    })),
  }))
}

const receivedKinds = {
  missing: 'bag-not-received',
  extra: 'bag-received-extra',
  damaged: 'bag-received-damaged',
} as const

const receivedNext: Record<keyof typeof receivedKinds, string> = {
  missing:
    'Look in the coolers, at the bench and at the laboratory; nothing is reported under this number.',
  extra: 'Find the manifest it belongs to, and hold its test back until then.',
  damaged: 'Ask the laboratory whether it can still be tested.',
}

/** What a counter-scan found otherwise than the manifest says: one discrepancy for each bag. */
export function receivedOtherwise(
  manifest: Manifest,
  receipt: { readonly hash: string; readonly counted: ReceiptCounted; readonly ms: number },
): Discrepancy[] {
  return receiptFindings(manifest, receipt.counted).flatMap(({ what, bag, say }) =>
    what === 'seal' || bag === null
      ? []
      : [
          {
            kind: receivedKinds[what],
            evidence: [receipt.hash, bag].toSorted(),
            say,
            next: receivedNext[what],
            sides: [
              {
                key: manifest.handoff,
                title: `Manifest ${grouped(manifest.handoff)}`,
                lines: [`${manifest.bags} bags for ${manifest.destination}`],
                desk: manifest.desk,
                ms: Date.parse(manifest.handedOverAt),
              },
              {
                key: receipt.hash,
                title: `Counted by ${receipt.counted.receivedBy}`,
                lines: [`${receipt.counted.bags.length} bags counted`],
                desk: null,
                ms: receipt.ms,
              },
            ],
          },
        ],
  )
}
