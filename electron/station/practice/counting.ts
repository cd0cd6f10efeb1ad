/** The counts of dusk: what is there, which is what the log expects but for what went wrong. */
import { type CountItem, countItemKey } from '../../../shared-types/close.ts'
import type { BagNumber, PersonId } from '../../../shared-types/sample-number.ts'
import type { Process } from './agenda.ts'
import type { Box, Floor } from './floor.ts'

function offBy({ faults }: Floor, item: CountItem): number {
  const key = countItemKey(item)
  return faults.reduce((sum, { off }) => sum + (off[key] ?? 0), 0)
}

function expectedCounts(floor: Floor): { item: CountItem; expected: number }[] {
  return [
    { item: { of: 'animals' }, expected: floor.guests.length },
    { item: { of: 'kits-in-stock' }, expected: floor.kitsInStock },
    ...floor.crew
      .filter(({ hadKits }) => hadKits)
      .map(({ plan: { person }, kits }) => ({
        item: { of: 'kits-in-hand', person } as const,
        expected: kits,
      })),
    { item: { of: 'unused-kit-labels' }, expected: floor.unusedLabels },
  ]
}

export function* countAll(floor: Floor): Process {
  for (const { item, expected } of expectedCounts(floor)) {
    yield 0.7
    floor.tell(floor.helper(), 'count.enter', { item, counted: expected + offBy(floor, item) })
  }
  for (const box of floor.boxes) {
    yield 2
    countBox(floor, box)
  }
  yield 1
  countBlanks(floor, floor.helper(), offBy(floor, { of: 'blank-labels' }))
}

function countBlanks(floor: Floor, by: PersonId, off: number): void {
  floor.steps.push({ is: 'blanks-counted', atMs: floor.msAt(floor.agenda.now), by, off })
}

/** By eye; by scanning each bag where one lies in the wrong cooler, which only scanning names. */
function countBox(floor: Floor, box: Box): void {
  const item = { of: 'bags', cooler: box.cooler } as const
  const misplaced = floor.faults.find(
    ({ code, off }) => code === 'bag-in-other-cooler' && countItemKey(item) in off,
  )
  if (misplaced) return scanCount(floor, box, seenIn(box, misplaced.about as BagNumber))
  const counted = box.bags.length + offBy(floor, item)
  floor.tell(floor.helper(), 'count.enter', { item, counted })
}

/** A cooler with the misplaced bag either lacks it or has it beside its own. */
function seenIn({ bags }: Box, misplaced: BagNumber): BagNumber[] {
  return bags.includes(misplaced) ? bags.filter((bag) => bag !== misplaced) : [...bags, misplaced]
}

export function scanCount(floor: Floor, { cooler }: Box, bags: readonly BagNumber[]): void {
  floor.tell(floor.helper(), 'count.scan', { cooler, bags: [...bags] })
}
