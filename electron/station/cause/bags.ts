/** Why a cooler holds other bags than the log has in it. */
import { type BagNumber, type CoolerNumber, grouped } from '../../../shared-types/sample-number.ts'
import type { Cause } from '../../../shared-types/views/cause.ts'
import type { CloseItem } from '../../../shared-types/views/close.ts'
import type { Evidence, Variance } from '../likely-cause.ts'

export function bagCauses(variance: Variance, cooler: CoolerNumber): Cause[] {
  const { scanned } = variance.item
  if (!scanned) return byNumberAlone(variance, cooler)
  return [
    ...scanned.extra.flatMap((bag) => extraBag(variance.evidence, bag, cooler)),
    ...scanned.missing.map((bag) => missingBag(variance, bag, cooler)),
  ]
}

function placeOf({ coolers }: Evidence, number: CoolerNumber) {
  const found = coolers.find(({ cooler }) => cooler === number)
  return { name: found?.name ?? grouped(number), isOpen: found?.state === 'open' }
}

/** A bag that was sealed and never scanned into a cooler. */
function inNoCooler(
  evidence: Evidence,
  { bag, at }: Evidence['bench'][number],
  cooler: CoolerNumber | null,
  weight: number,
): Cause {
  const place = cooler && placeOf(evidence, cooler)
  return {
    code: 'bag-in-no-cooler',
    about: bag,
    evidence: weight,
    say: `Bag ${grouped(bag)} was sealed at ${at} and scanned into no cooler.`,
    next: !place
      ? 'Find it, and scan it into a cooler.'
      : place.isOpen
        ? `If it is in ${place.name}, keep it there.`
        : `If it is in ${place.name}, break the seal, scan the bag in and seal it again.`,
    look: { screen: 'coolers', number: cooler },
    settle: place?.isOpen && cooler ? { command: 'bag.place', input: { bag, cooler } } : null,
  }
}

/** By its number alone a variance may be a bag of the bench, or one of another cooler. */
function byNumberAlone({ item, off, items, evidence }: Variance, cooler: CoolerNumber): Cause[] {
  const { bench } = evidence
  const exact = off > 0 && bench.length === off
  const fromBench =
    off > 0 ? bench.map((bag) => inNoCooler(evidence, bag, cooler, exact ? 90 : 65)) : []
  const opposite = items.flatMap((other) =>
    other.item.of === 'bags' && other.variance === -off && other.key !== item.key
      ? [other.item.cooler]
      : [],
  )
  return [
    ...fromBench,
    ...opposite.map(
      (other): Cause => ({
        code: 'bag-in-other-cooler',
        about: other,
        evidence: 60,
        say: `${placeOf(evidence, other).name} is off by as many the other way, so bags may lie in the wrong one.`,
        next: 'Count both by scanning: that names the bags.',
        look: { screen: 'coolers', number: other },
        settle: null,
      }),
    ),
  ]
}

function extraBag(evidence: Evidence, bag: BagNumber, cooler: CoolerNumber): Cause[] {
  const onBench = evidence.bench.find((each) => each.bag === bag)
  if (onBench) return [inNoCooler(evidence, onBench, cooler, 98)]
  const inLog = evidence.coolerOf(bag)
  return inLog ? [inOtherCooler(evidence, bag, { inLog, found: cooler })] : []
}

/** The same bag under both coolers, so that either leads to it. */
function inOtherCooler(
  evidence: Evidence,
  bag: BagNumber,
  { inLog, found }: { inLog: CoolerNumber; found: CoolerNumber },
): Cause {
  const [should, does] = [placeOf(evidence, inLog), placeOf(evidence, found)]
  return {
    code: 'bag-in-other-cooler',
    about: bag,
    evidence: 98,
    say: `Bag ${grouped(bag)} lies in ${does.name}, but was scanned into ${should.name}.`,
    next: `Put it into ${should.name} and count both again, or take it out in the log and scan it into ${does.name}.`,
    look: { screen: 'coolers', number: inLog },
    settle: should.isOpen
      ? {
          command: 'bag.takeOut',
          input: { bag, reason: `lay in ${does.name} when it was counted` },
        }
      : null,
  }
}

function missingBag({ item, items, evidence }: Variance, bag: BagNumber, cooler: CoolerNumber) {
  const found = items.find((each) => each.scanned?.extra.includes(bag))
  if (found?.item.of === 'bags')
    return inOtherCooler(evidence, bag, { inLog: cooler, found: found.item.cooler })
  return {
    code: 'bag-missing',
    about: bag,
    evidence: 50,
    say: `Bag ${grouped(bag)} should be in ${placeOf(evidence, cooler).name} and was not scanned.`,
    next: 'Scan the cooler once more, and the others; then look at the bench and the ice.',
    look: { screen: 'coolers', number: cooler },
    settle: {
      command: 'variance.explain',
      input: { item: item.item, reason: 'lost', words: `bag ${grouped(bag)} was not found` },
    },
  } satisfies Cause
}

/** Every bag that is in no cooler, with the cooler that holds one too many if there is one. */
export function bagsBetween(items: readonly CloseItem[], evidence: Evidence): Cause[] {
  return evidence.bench.map((bag) => {
    const named = items.find((each) => each.scanned?.extra.includes(bag.bag))
    const over =
      named ?? items.find(({ item, variance }) => item.of === 'bags' && (variance ?? 0) > 0)
    const cooler = over?.item.of === 'bags' ? over.item.cooler : null
    return inNoCooler(evidence, bag, cooler, named ? 98 : cooler ? 85 : 60)
  })
}
