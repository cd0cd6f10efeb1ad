/**
 * Corrections as custody guidance wants them: what was wrong struck through and initialled, with its
 * date and what is right beside it; never erased (indelible ink and a single line, after published
 * site sampling plans).
 */
import { ageWords, speciesWords } from '../../shared-types/animal.ts'
import type { CoolerRecord } from '../../shared-types/cooler.ts'
import type { KnownEntry } from '../../shared-types/entry.ts'
import type { Manifest, ManifestBag, ManifestStroke } from '../../shared-types/manifest.ts'
import type { PersonRecord } from '../../shared-types/person.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import { type BagNumber, type CoolerNumber, grouped } from '../../shared-types/sample-number.ts'
import type { BagRecord } from '../../shared-types/tissue.ts'

/** `Orla Vance` signs with `O. V.`. */
export function initialsOf(name: string): string {
  const words = name.split(/\s+/).filter(Boolean)
  return words.map((word) => `${word.charAt(0).toUpperCase()}.`).join(' ')
}

type Facts = Extract<KnownEntry, { kind: 'animal.checked-in' }>['body']['facts']

/** What a manifest or custody record may say of an animal: nothing of its hunter. */
const told: readonly { what: string; of: (facts: Facts) => string }[] = [
  { what: 'species', of: ({ species }) => speciesWords[species] },
  { what: 'sex', of: ({ sex }) => sex },
  { what: 'age', of: ({ age }) => ageWords[age] },
  { what: 'day of harvest', of: ({ harvested }) => harvested },
]

/** The facts of an animal that were put right, each as it was and as it is. */
export function animalChanges(entries: readonly KnownEntry[], nameOf: (number: string) => string) {
  let facts: Facts | null = null
  return entries.flatMap((entry) => {
    if (entry.kind !== 'animal.checked-in' && entry.kind !== 'animal.amended') return []
    const before = facts
    facts = entry.body.facts
    if (before === null || entry.kind === 'animal.checked-in') return []
    const { reason, facts: after } = entry.body
    return told.flatMap(({ what, of }) =>
      of(before) === of(after)
        ? []
        : [
            {
              ms: entry.at.wall,
              what,
              was: of(before),
              is: of(after),
              initials: entry.by ? initialsOf(nameOf(entry.by)) : '',
              reason,
            },
          ],
    )
  })
}

export interface WishedStrokes {
  readonly takeOff: readonly BagNumber[]
  readonly add: readonly {
    readonly bag: BagRecord
    readonly cooler: CoolerRecord
    readonly row: ManifestBag
  }[]
}

/** What a correction strikes through and adds; refuses what does not fit the manifest or the log. */
export function strokesOf(
  manifest: Manifest,
  { takeOff, add }: WishedStrokes,
): Result<ManifestStroke[]> {
  if (takeOff.length + add.length === 0)
    return refused(
      'nothing-to-correct',
      'No bag is named.',
      'Scan the bags that are to be taken off or added.',
      'takeOff',
    )
  const strokes: ManifestStroke[] = []
  for (const bag of takeOff) {
    const cooler = coolerListing(manifest, bag)
    if (!cooler)
      return refused(
        'bag-not-on-manifest',
        `Bag ${grouped(bag)} is not on this manifest.`,
        'Scan a bag of its list.',
        'takeOff',
      )
    strokes.push({ bag, cooler, what: 'taken-off' })
  }
  for (const { bag, cooler } of add) {
    const right = mayAdd(manifest, bag, cooler)
    if (!right.ok) return right
    strokes.push({ bag: bag.bag, cooler: cooler.cooler, what: 'added' })
  }
  return granted(strokes)
}

function coolerListing(manifest: Manifest, bag: BagNumber): CoolerNumber | null {
  const cooler = manifest.coolers.find(({ bags }) => bags.some((each) => each.bag === bag))
  return cooler?.cooler ?? null
}

function mayAdd(manifest: Manifest, bag: BagRecord, cooler: CoolerRecord): Result<null> {
  if (coolerListing(manifest, bag.bag))
    return refused(
      'bag-already-on-manifest',
      `Bag ${grouped(bag.bag)} is on this manifest already.`,
      'Take it off the list of bags to add.',
      'add',
    )
  if (bag.place === 'handed-off' || bag.place === 'discarded')
    return refused(
      'bag-not-here',
      `Bag ${grouped(bag.bag)} is ${bag.place === 'discarded' ? 'discarded' : 'on another manifest'} by the log.`,
      'Correct that record first.',
      'add',
    )
  if (!manifest.coolers.some((each) => each.cooler === cooler.cooler))
    return refused(
      'cooler-not-in-handoff',
      `Cooler ${cooler.name} is not on this manifest.`,
      'Name the cooler in which the bag left.',
      'add',
    )
  return granted(null)
}

/** The next edition of a manifest: the strokes carried out, and written down with their reason. */
export function correctedManifest(
  before: { readonly manifest: Manifest; readonly digest: string },
  strokes: readonly ManifestStroke[],
  { add }: WishedStrokes,
  by: { readonly lead: PersonRecord; readonly reason: string; readonly at: string },
): Manifest {
  const off = new Set(strokes.flatMap(({ bag, what }) => (what === 'taken-off' ? [bag] : [])))
  const coolers = before.manifest.coolers.map((cooler) => ({
    ...cooler,
    bags: [
      ...cooler.bags.filter(({ bag }) => !off.has(bag)),
      ...add.flatMap((each) => (each.cooler.cooler === cooler.cooler ? [each.row] : [])),
    ],
  }))
  const { person, name } = by.lead
  return {
    ...before.manifest,
    coolers: coolers.map((cooler) => ({ ...cooler, ...explained(cooler, by.reason) })),
    bags: coolers.reduce((sum, { bags }) => sum + bags.length, 0),
    corrections: [
      ...before.manifest.corrections,
      {
        edition: before.manifest.corrections.length + 2,
        replaces: before.digest,
        reason: by.reason,
        correctedAt: by.at,
        by: { person, name, initials: initialsOf(name) },
        strokes: [...strokes],
      },
    ],
  }
}

/** Where the count at the handoff no longer fits the list, the reason of the correction says why. */
function explained(
  cooler: { counted: number; difference: string; bags: readonly unknown[] },
  reason: string,
): { difference: string } {
  const { counted, bags, difference } = cooler
  if (counted === bags.length) return { difference }
  return { difference: difference || reason }
}
