/** Bags into coolers in portions, temperatures, seals. */
import { coolerNumber, type PersonId } from '../../../shared-types/sample-number.ts'
import type { Process } from './agenda.ts'
import { plantMisplaced, plantUnscanned } from './faults.ts'
import type { BenchBag, Box, BoxKind, Floor } from './floor.ts'
import { practiceStock } from './station-facts.ts'

const capacity = 60

export function openBox(floor: Floor, kind: BoxKind): Box {
  const place = floor.boxes.filter((box) => box.kind === kind).length + 1
  const cooler = coolerNumber(floor.frame.desk, floor.boxes.length + 1)
  const box: Box = { cooler, name: `${kind} ${place}`, kind, bags: [], seal: null }
  floor.tell(floor.lead, 'cooler.open', { name: box.name, keeping: 'chilled', capacity })
  floor.tell(floor.helper(), 'labels.printCooler', { cooler, stock: practiceStock })
  floor.boxes.push(box)
  return box
}

/** Seals with the next seal of the roll. */
export function sealBox(floor: Floor, box: Box): void {
  box.seal = `PR-${floor.chance.whole(100_000, 999_999)}`
  floor.tell(floor.lead, 'cooler.seal', { cooler: box.cooler, seal: box.seal })
}

export function readBox(floor: Floor, box: Box, by: PersonId, celsius: number): void {
  floor.tell(by, 'cooler.read', { cooler: box.cooler, celsius })
}

/** A temperature that a cooler on ice should have. */
export function coldEnough(floor: Floor): number {
  return Number(floor.chance.between(1.4, 5.8).toFixed(1))
}

function openBoxOf(floor: Floor, kind: BoxKind): Box {
  const box = floor.boxes.findLast((each) => each.kind === kind && each.seal === null)
  if (box && box.bags.length < capacity) return box
  if (box) sealBox(floor, box)
  return openBox(floor, kind)
}

function place(floor: Floor, by: PersonId, { bag }: BenchBag, box: Box): void {
  floor.tell(by, 'bag.place', { bag, cooler: box.cooler })
  box.bags.push(bag)
}

/** Into the other cooler first, and out again when somebody sees it. */
function* misplace(floor: Floor, by: PersonId, bag: BenchBag): Process {
  const box = openBoxOf(floor, bag.kind === 'Elk' ? 'Deer' : 'Elk')
  place(floor, by, bag, box)
  yield 1.5
  const reason = 'scanned into the cooler of another species'
  floor.tell(floor.lead, 'bag.takeOut', { bag: bag.bag, reason })
  box.bags.splice(box.bags.indexOf(bag.bag), 1)
}

/** Late in the day a bag may be put in unscanned; there must be room for it when that comes out. */
function isForgotten(floor: Floor, box: Box): boolean {
  const toCome = 2 * floor.guests.filter(({ state }) => state !== 'done').length
  const room = capacity - box.bags.length - floor.bench.length - toCome
  return floor.isLate && floor.toPlant.has('bag-in-no-cooler') && room > 0
}

/** Late in the day a bag that was scanned may be dropped into the cooler beside. */
function dropElsewhere(floor: Floor, { bag, kind }: BenchBag, box: Box): void {
  if (!floor.isLate || !floor.toPlant.has('bag-in-other-cooler')) return
  const beside = floor.boxes.findLast((each) => each.kind !== kind && each.seal === null)
  if (beside) plantMisplaced(floor, bag, { told: box.cooler, lies: beside.cooler })
}

/** Carries what lies on the bench into the coolers, bag by bag. */
export function* carryAll(floor: Floor): Process {
  const by = floor.helper()
  const carrier = floor.crew.find(({ plan }) => plan.person === by)
  floor.carrying = true
  // Nobody goes on a break with bags in their arms.
  if (carrier) carrier.busy = true
  for (let bag = floor.bench.shift(); bag; bag = floor.bench.shift()) {
    yield floor.chance.between(0.1, 0.3)
    if (bag.goesWrong) yield* misplace(floor, by, bag)
    const box = openBoxOf(floor, bag.kind)
    if (isForgotten(floor, box)) plantUnscanned(floor, bag.bag, box.cooler)
    else place(floor, by, bag, box)
    dropElsewhere(floor, bag, box)
  }
  if (carrier) carrier.busy = false
  floor.carrying = false
}

/** Every quarter of an hour or so, as long as it is day. */
export function* carryInPortions(floor: Floor): Process {
  while (!floor.dusk) {
    yield floor.chance.between(10, 18)
    if (!floor.dusk) yield* carryAll(floor)
  }
}

/** A cold morning, a mild afternoon, in whole degrees Celsius. */
function airAt(minute: number): number {
  return Math.round(-4 + 13 * Math.sin((Math.PI * Math.min(minute, 1080)) / 1080))
}

/** Reads every cooler that is here. */
export function readAll(floor: Floor): void {
  const by = floor.helper()
  for (const box of floor.boxes) readBox(floor, box, by, coldEnough(floor))
}

export function* readEveryTwoHours(floor: Floor): Process {
  while (!floor.dusk) {
    readAll(floor)
    floor.tell(floor.helper(), 'air.read', { celsius: airAt(floor.agenda.now) })
    yield floor.chance.between(105, 125)
  }
}

/** Somebody leaves a lid open: one reading out of range, ice, and a good one after it. */
export function* leaveLidOpen(floor: Floor): Process {
  yield floor.shape.warmReading - floor.agenda.now
  const box = floor.boxes.findLast(({ kind, seal }) => kind === 'Deer' && seal === null)
  if (!box) return
  readBox(floor, box, floor.helper(), 11.4)
  yield 25
  readBox(floor, box, floor.helper(), 4.2)
}
