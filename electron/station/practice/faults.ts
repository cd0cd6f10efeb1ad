/**
 * What goes wrong on a practice day without anybody telling the desk. Each leaves its trace in the log
 * and puts counts off at dusk: the close is to find every one of them, and nothing else.
 */
import { type CountItem, countItemKey } from '../../../shared-types/close.ts'
import {
  type BagNumber,
  type BagPart,
  bagNumber,
  type CoolerNumber,
  type KitNumber,
  numberParts,
  type PersonId,
  type SampleNumber,
  sampleNumber,
} from '../../../shared-types/sample-number.ts'
import type { CauseCode } from '../../../shared-types/views/cause.ts'
import { trainingLacked } from '../training.ts'
import type { Process } from './agenda.ts'
import type { Floor, Guest, Member } from './floor.ts'
import type { Chance } from './random.ts'
import { practiceStock } from './station-facts.ts'

const bagFaults: readonly CauseCode[] = ['bag-in-no-cooler', 'bag-in-other-cooler']
const others: readonly CauseCode[] = [
  'kit-not-returned',
  'kit-from-other-hands',
  'kit-spoiled-unrecorded',
  'label-printed-twice',
  'sheet-jammed',
  'animal-with-sampler',
]

/** Three or four of a day, no two of the bags: two could hide each other in one cooler. */
export function faultsWanted(chance: Chance): CauseCode[] {
  const bag = chance.happens(0.6) ? [chance.oneOf(bagFaults)] : []
  return [...bag, ...chance.shuffled(others).slice(0, chance.whole(2, 3))]
}

type Off = readonly (readonly [CountItem, number])[]

/** Notes a fault that has just happened; each kind happens once. */
export function plant(floor: Floor, code: CauseCode, about: SampleNumber, off: Off): void {
  floor.toPlant.delete(code)
  const byKey = off.map(([item, count]) => [countItemKey(item), count] as const)
  floor.faults.push({ code, about, off: Object.fromEntries(byKey) })
}

const hands = (person: PersonId) => ({ of: 'kits-in-hand', person }) as const
const bagsOf = (cooler: CoolerNumber) => ({ of: 'bags', cooler }) as const

/** A sampler goes home and takes the kits along. Answers whether they did. */
export function takesKitsHome(floor: Floor, { plan, kits }: Member): boolean {
  if (!floor.toPlant.has('kit-not-returned') || kits === 0) return false
  plant(floor, 'kit-not-returned', plan.person, [[hands(plan.person), -kits]])
  return true
}

/** Whoever has kits in hand until dusk and could work the head, other than this one. */
export function otherHands(floor: Floor, member: Member, guest: Guest): Member | undefined {
  const stays = ({ plan }: Member) => (plan.shift?.to ?? 0) >= floor.shape.lastMinute
  if (!floor.toPlant.has('kit-from-other-hands') || !stays(member)) return undefined
  const from = floor.crew.find(
    (each) =>
      each !== member &&
      each.plan.role === 'sampler' &&
      each.onDuty &&
      each.kits > 1 &&
      trainingLacked(each, guest.facts).length === 0 &&
      stays(each),
  )
  // Taken at once: another animal may be given out before this kit is opened.
  if (from) floor.toPlant.delete('kit-from-other-hands')
  return from
}

/** The kit told as one sampler's came out of the hands of another. */
export function plantOtherHands(floor: Floor, kit: KitNumber, told: Member, from: Member): void {
  plant(floor, 'kit-from-other-hands', kit, [
    [hands(told.plan.person), 1],
    [hands(from.plan.person), -1],
  ])
}

/** A bag is put into a cooler, and nobody scans it. */
export function plantUnscanned(floor: Floor, bag: BagNumber, cooler: CoolerNumber): void {
  plant(floor, 'bag-in-no-cooler', bag, [[bagsOf(cooler), 1]])
}

/** A bag is scanned into one cooler and put into another. */
export function plantMisplaced(
  floor: Floor,
  bag: BagNumber,
  place: { told: CoolerNumber; lies: CoolerNumber },
): void {
  plant(floor, 'bag-in-other-cooler', bag, [
    [bagsOf(place.told), -1],
    [bagsOf(place.lies), 1],
  ])
}

/** Waits for a kit of the reserve to go wrong on; null once the day is over. */
function* reservedKit(floor: Floor): Generator<number, KitNumber | null, void> {
  while (!floor.dusk && floor.reserved.length === 0) yield 7
  return floor.dusk ? null : (floor.reserved[0] ?? null)
}

function reprint(floor: Floor, number: SampleNumber, reason: 'lost' | 'jammed'): void {
  const why = { reason, words: '', stock: practiceStock } as const
  const destroyed = reason === 'jammed'
  floor.tell(floor.helper(), 'label.reprint', { number, ...why, destroyed })
}

/** A label is given up as lost and printed again; later it turns up in somebody's pocket. */
export function* loseLabel(floor: Floor): Process {
  if (!floor.toPlant.has('label-printed-twice')) return
  yield floor.chance.whole(200, 700)
  const kit = yield* reservedKit(floor)
  if (!kit) return
  const { desk, serial } = numberParts(kit)
  const number = bagNumber(desk, serial, 'L')
  reprint(floor, number, 'lost')
  plant(floor, 'label-printed-twice', number, [[{ of: 'unused-kit-labels' }, 1]])
}

/** A label jams in the printer, and a few blank ones are thrown away with it. */
export function* jamSheet(floor: Floor): Process {
  if (!floor.toPlant.has('sheet-jammed')) return
  yield floor.chance.whole(200, 700)
  const kit = yield* reservedKit(floor)
  if (!kit) return
  reprint(floor, kit, 'jammed')
  plant(floor, 'sheet-jammed', kit, [[{ of: 'blank-labels' }, -floor.chance.whole(2, 9)]])
}

/** A torn kit is thrown away and its labels are made void, but nobody records the kit itself. */
export function* spoilUnrecorded(floor: Floor): Process {
  if (!floor.toPlant.has('kit-spoiled-unrecorded')) return
  yield floor.chance.whole(200, 700)
  const kit = yield* reservedKit(floor)
  if (!kit || floor.kitsInStock === 0) return
  floor.reserved.shift()
  const { desk, serial } = numberParts(kit)
  const by = floor.helper()
  for (const part of ['L', 'R'] as const satisfies readonly BagPart[])
    voidSpoiled(floor, by, bagNumber(desk, serial, part))
  voidSpoiled(floor, by, kit)
  voidSpoiled(floor, by, sampleNumber(desk, serial, 'H'))
  floor.unusedLabels -= 4
  plant(floor, 'kit-spoiled-unrecorded', kit, [[{ of: 'kits-in-stock' }, -1]])
}

function voidSpoiled(floor: Floor, by: PersonId, number: SampleNumber): void {
  floor.tell(by, 'label.void', { number, reason: 'kit-spoiled', words: '' })
}
