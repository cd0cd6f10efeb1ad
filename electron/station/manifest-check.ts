/** Whether a manifest on paper or in a file agrees with the log, and where it does not. */
import { siteWords } from '../../shared-types/tissue.ts'
import type { Manifest, ManifestBag, ManifestCooler } from '../../shared-types/manifest.ts'
import { type BagNumber, grouped } from '../../shared-types/sample-number.ts'

export interface CheckFinding {
  readonly say: string
  readonly bag: BagNumber | null
}

interface Listed {
  readonly bag: ManifestBag
  readonly cooler: ManifestCooler
}

function listedIn(manifest: Manifest): Map<BagNumber, Listed> {
  return new Map(
    manifest.coolers.flatMap((cooler) =>
      cooler.bags.map((bag) => [bag.bag, { bag, cooler }] as const),
    ),
  )
}

/** Every difference between a manifest's data and the log's own, bag by bag. */
export function differences(theirs: Manifest, ours: Manifest): CheckFinding[] {
  const there = listedIn(theirs)
  const here = listedIn(ours)
  return [
    ...coolerDifferences(theirs, ours),
    ...[...there.values()].flatMap(({ bag, cooler }) => {
      const listed = here.get(bag.bag)
      if (!listed)
        return [
          {
            say: `Bag ${grouped(bag.bag)} is in the file, and the log did not hand it over.`,
            bag: bag.bag,
          },
        ]
      return bagDifferences({ bag, cooler }, listed)
    }),
    ...[...here.keys()].flatMap((bag) =>
      there.has(bag)
        ? []
        : [
            {
              say: `Bag ${grouped(bag)} was handed over by the log, and the file leaves it out.`,
              bag,
            },
          ],
    ),
  ]
}

function bagDifferences(theirs: Listed, ours: Listed): CheckFinding[] {
  const { bag } = ours.bag
  const name = `Bag ${grouped(bag)}`
  const wrong = [
    theirs.cooler.cooler === ours.cooler.cooler
      ? null
      : `${name} is in cooler ${theirs.cooler.name} by the file, in ${ours.cooler.name} by the log.`,
    theirs.bag.animal === ours.bag.animal
      ? null
      : `${name} is of animal ${grouped(theirs.bag.animal)} by the file, of ${grouped(ours.bag.animal)} by the log.`,
    theirs.bag.side === ours.bag.side
      ? null
      : `${name} holds the ${siteWords[theirs.bag.side]} by the file, the ${siteWords[ours.bag.side]} by the log.`,
    theirs.bag.kept === ours.bag.kept && theirs.bag.check === ours.bag.check
      ? null
      : `${name} is described otherwise in the file than in the log.`,
  ]
  return wrong.flatMap((say) => (say === null ? [] : [{ say, bag }]))
}

function coolerDifferences(theirs: Manifest, ours: Manifest): CheckFinding[] {
  return ours.coolers.flatMap(({ cooler, name, seal }) => {
    const there = theirs.coolers.find((each) => each.cooler === cooler)
    if (!there) return [{ say: `Cooler ${name} is not in the file.`, bag: null }]
    if (there.seal === seal) return []
    return [
      { say: `Cooler ${name} has seal ${there.seal} by the file, ${seal} by the log.`, bag: null },
    ]
  })
}

/** Bags that paper and data do not both list. */
export function paperDifferences(
  onPaper: readonly BagNumber[],
  inData: readonly BagNumber[],
): CheckFinding[] {
  const paper = new Set(onPaper)
  const data = new Set(inData)
  return [
    ...onPaper.flatMap((bag) =>
      data.has(bag)
        ? []
        : [{ say: `Bag ${grouped(bag)} is on the paper and not in the data.`, bag }],
    ),
    ...inData.flatMap((bag) =>
      paper.has(bag)
        ? []
        : [{ say: `Bag ${grouped(bag)} is in the data and not on the paper.`, bag }],
    ),
    ...twice(onPaper).map((bag) => ({ say: `Bag ${grouped(bag)} is on the paper twice.`, bag })),
  ]
}

function twice(bags: readonly BagNumber[]): BagNumber[] {
  const seen = new Set<BagNumber>()
  return bags.filter((bag) => {
    const again = seen.has(bag)
    seen.add(bag)
    return again
  })
}
