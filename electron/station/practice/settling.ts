/** Dusk once more: how the lead settles each planted fault, so that the day can be closed. */
import type { CountItem, VarianceReason } from '../../../shared-types/close.ts'
import type {
  AnimalNumber,
  BagNumber,
  KitNumber,
  PersonId,
} from '../../../shared-types/sample-number.ts'
import type { Process } from './agenda.ts'
import { sealBox } from './coolers.ts'
import { scanCount } from './counting.ts'
import type { Box, Floor } from './floor.ts'
import type { PlantedFault } from './script.ts'

export function* settleAll(floor: Floor): Process {
  for (const fault of floor.faults) {
    yield 1
    settle(floor, fault)
  }
}

function explain(floor: Floor, item: CountItem, reason: VarianceReason, words: string): void {
  floor.tell(floor.lead, 'variance.explain', { item, reason, words })
}

function settle(floor: Floor, { code, about, off }: PlantedFault): void {
  switch (code) {
    case 'kit-not-returned': {
      const item = { of: 'kits-in-hand', person: about as PersonId } as const
      return explain(floor, item, 'not-given-back', 'went home with them')
    }
    case 'kit-from-other-hands':
      for (const key of Object.keys(off)) {
        const person = key.split(':')[1] as PersonId
        explain(floor, { of: 'kits-in-hand', person }, 'other-hands', 'the kit was not theirs')
      }
      return
    case 'kit-spoiled-unrecorded':
      floor.kitsInStock -= 1
      return floor.tell(floor.lead, 'kit.spoil', { kit: about as KitNumber, reason: 'torn' })
    case 'label-printed-twice':
      return explain(floor, { of: 'unused-kit-labels' }, 'found', 'torn up now')
    case 'sheet-jammed':
      return explain(floor, { of: 'blank-labels' }, 'spoiled-not-recorded', 'thrown away')
    case 'animal-with-sampler':
      return floor.tell(floor.lead, 'animal.finish', { animal: about as AnimalNumber })
    case 'bag-in-no-cooler':
      return scanIn(floor, about as BagNumber, Object.keys(off))
    case 'bag-in-other-cooler':
      return putWhereTold(floor, Object.keys(off))
    default:
      throw new Error(`no practice day plants ${code}`)
  }
}

function boxesOf(floor: Floor, keys: readonly string[]): Box[] {
  return floor.boxes.filter(({ cooler }) => keys.includes(`bags:${cooler}`))
}

/** The bag is in the cooler already: the seal is broken, the bag scanned in, the cooler sealed again. */
function scanIn(floor: Floor, bag: BagNumber, keys: readonly string[]): void {
  const [box] = boxesOf(floor, keys)
  if (!box) return
  const { cooler } = box
  if (box.seal)
    floor.tell(floor.lead, 'seal.break', { cooler, reason: 'a bag inside was never scanned in' })
  floor.tell(floor.lead, 'bag.place', { bag, cooler })
  box.bags.push(bag)
  sealBox(floor, box)
}

/** The bag is carried to where the log has it, and both coolers are counted once more. */
function putWhereTold(floor: Floor, keys: readonly string[]): void {
  for (const box of boxesOf(floor, keys)) scanCount(floor, box, box.bags)
}
