/** Kits on a made-up day: printed in reserve, handed out, delivered when stock runs low, spoiled. */
import { type KitNumber, kitNumber } from '../../../shared-types/sample-number.ts'
import type { Process } from './agenda.ts'
import { plantOtherHands } from './faults.ts'
import { befalls, type Floor, type Guest, type Member } from './floor.ts'
import { practiceStock } from './station-facts.ts'

/** Two bags, the data card, the stub. */
const labelsOfKit = 4
const reserveSize = 12
const boxOfKits = 40

/** Kits and blank labels that are there in the morning. A kit takes about seven blank labels. */
export function openingCounts(animals: number): { kits: number; blankLabels: number } {
  return { kits: 40 + Math.ceil(animals * 0.8), blankLabels: 200 + animals * 10 }
}

function numberNext(floor: Floor): KitNumber {
  floor.kitsNumbered += 1
  floor.unusedLabels += labelsOfKit
  return kitNumber(floor.frame.desk, floor.kitsNumbered)
}

/** Prints labels for kits that go to whoever comes. */
function printReserve(floor: Floor, count: number): void {
  const wanted = { whom: 'reserve', count } as const
  floor.tell(floor.helper(), 'labels.printKits', { for: wanted, stock: practiceStock })
  for (let each = 0; each < count; each += 1) floor.reserved.push(numberNext(floor))
}

/** Prints labels with an animal's own facts. */
export function printFor(floor: Floor, guest: Guest): KitNumber {
  const wanted = { whom: 'animal', animal: guest.animal } as const
  floor.tell(floor.helper(), 'labels.printKits', { for: wanted, stock: practiceStock })
  guest.kit = numberNext(floor)
  return guest.kit
}

/** Looks after the reserve until dusk, never printing far more than can still come. */
export function* keepReserve(floor: Floor): Process {
  while (!floor.dusk) {
    const toCome = floor.guests.filter(({ state }) => state !== 'done').length
    const wanted = Math.min(reserveSize, toCome - floor.reserved.length)
    if (floor.reserved.length < 4 && wanted > 0) printReserve(floor, wanted)
    yield 8
  }
}

/** Takes a delivery in when stock cannot give so many. */
function stockUp(floor: Floor, needed: number): void {
  if (floor.kitsInStock >= needed) return
  floor.tell(floor.lead, 'kits.move', {
    from: { in: 'delivered' },
    to: { in: 'stock' },
    count: boxOfKits,
    reason: 'a box came from the office',
  })
  floor.kitsInStock += boxOfKits
}

/** Hands kits to a sampler. */
export function handOut(floor: Floor, member: Member, count: number): void {
  stockUp(floor, count)
  const hands = { in: 'hands', person: member.plan.person } as const
  const move = { from: { in: 'stock' }, to: hands, count, reason: '' } as const
  floor.tell(floor.helper(), 'kits.move', move)
  floor.kitsInStock -= count
  member.kits += count
  member.hadKits = true
}

/** A sampler going home gives back what is left. */
export function giveBack(floor: Floor, member: Member): void {
  if (member.kits === 0) return
  const { person } = member.plan
  const hands = { in: 'hands', person } as const
  const move = { from: hands, to: { in: 'stock' }, count: member.kits, reason: '' } as const
  floor.tell(person, 'kits.move', move)
  floor.kitsInStock += member.kits
  member.kits = 0
}

function spoil(floor: Floor, member: Member, kit: KitNumber): void {
  stockUp(floor, 1)
  const reason = 'outer bag torn open by a nail'
  floor.tell(member.plan.person, 'kit.spoil', { kit, reason })
  floor.kitsInStock -= 1
  floor.unusedLabels -= labelsOfKit
}

/**
 * Opens a kit on an animal: the one printed for it, else one of the reserve, else a new one. `from` is
 * the other sampler whose kit it is in truth, and then the lead tells the desk.
 */
export function* openKit(
  floor: Floor,
  guest: Guest,
  member: Member,
  from: Member | undefined,
): Generator<number, KitNumber, void> {
  if (member.kits <= 2) handOut(floor, member, 8)
  let kit = guest.kit ?? floor.reserved.shift() ?? printFor(floor, guest)
  yield floor.chance.between(0.4, 1)
  if (befalls(guest, 'kit-spoiled')) {
    spoil(floor, member, kit)
    kit = floor.reserved.shift() ?? printFor(floor, guest)
    yield 0.5
  }
  if (from) plantOtherHands(floor, kit, member, from)
  floor.tell(from ? floor.lead : member.plan.person, 'kit.open', { animal: guest.animal, kit })
  member.kits -= 1
  // Card and stub are now in use.
  floor.unusedLabels -= 2
  return kit
}
