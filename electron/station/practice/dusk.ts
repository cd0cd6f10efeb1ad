/** Dusk: the last bags, the seals, the counts, the close and what was wrong with it. */
import { type CountItem, countItemKey } from '../../../shared-types/close.ts'
import type { PersonId } from '../../../shared-types/sample-number.ts'
import type { Process } from './agenda.ts'
import { carryAll, readAll, sealBox } from './coolers.ts'
import type { Floor } from './floor.ts'
import { handOff } from './hand-off.ts'
import type { PlantedFault } from './script.ts'
import { goHome } from './shift.ts'
import { practicePin } from './station-facts.ts'

/** The faults planted in the counts of a desk: known before the day is played. */
export function plantedFaults(floor: Pick<Floor, 'crew' | 'shape'>): PlantedFault[] {
  const late = floor.crew.find(
    ({ plan }) => plan.role === 'sampler' && (plan.shift?.to ?? 0) >= floor.shape.lastMinute,
  )
  const blanks: PlantedFault = {
    item: { of: 'blank-labels' },
    off: -4,
    reason: 'spoiled-not-recorded',
    words: 'a jammed sheet was thrown away',
  }
  if (!late) return [blanks]
  const item: CountItem = { of: 'kits-in-hand', person: late.plan.person }
  return [blanks, { item, off: -1, reason: 'lost', words: 'one kit fell off the tailgate' }]
}

export function* closeDown(floor: Floor, faults: readonly PlantedFault[]): Process {
  yield floor.shape.lastMinute - floor.agenda.now
  while (!floor.quiet || floor.carrying) yield 3
  floor.dusk = true
  yield* carryAll(floor)
  readAll(floor)
  yield* sealAll(floor)
  yield* countAll(floor, faults)
  yield* explainAndClose(floor, faults)
  if (floor.frame.reopens) yield* reopen(floor)
  yield* handOff(floor)
  goHome(floor)
}

/** Seals what holds bags. The first seal is smudged: it is broken and replaced by another. */
function* sealAll(floor: Floor): Process {
  for (const box of floor.boxes) {
    if (box.bags === 0 || box.seal) continue
    sealBox(floor, box)
    yield 1
  }
  const smudged = floor.boxes.find(({ seal }) => seal !== null)
  if (!smudged) return
  const reason = 'the number is smudged and cannot be read'
  floor.tell(floor.lead, 'seal.break', { cooler: smudged.cooler, reason })
  yield 1
  sealBox(floor, smudged)
}

function expectedCounts(floor: Floor): { item: CountItem; expected: number }[] {
  return [
    { item: { of: 'animals' }, expected: floor.guests.length },
    ...floor.boxes.map(({ cooler, bags }) => ({
      item: { of: 'bags', cooler } as const,
      expected: bags,
    })),
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

function* countAll(floor: Floor, faults: readonly PlantedFault[]): Process {
  const offBy = (item: CountItem) =>
    faults.find((fault) => countItemKey(fault.item) === countItemKey(item))?.off ?? 0
  for (const { item, expected } of expectedCounts(floor)) {
    yield 0.7
    floor.tell(floor.helper(), 'count.enter', { item, counted: expected + offBy(item) })
  }
  yield 1
  countBlanks(floor, floor.helper(), offBy({ of: 'blank-labels' }))
}

function countBlanks(floor: Floor, by: PersonId, off: number): void {
  floor.steps.push({ is: 'blanks-counted', atMs: floor.msAt(floor.agenda.now), by, off })
}

function* explainAndClose(floor: Floor, faults: readonly PlantedFault[]): Process {
  for (const { item, reason, words } of faults) {
    yield 1
    floor.tell(floor.lead, 'variance.explain', { item, reason, words })
  }
  yield 1
  floor.tell(floor.lead, 'day.close', { pin: practicePin })
}

/** The lead finds a slip that was read wrongly, reopens the day in plain sight and closes it again. */
function* reopen(floor: Floor): Process {
  const guest = floor.guests.at(-1)
  if (!guest) return
  yield 12
  floor.tell(floor.lead, 'day.reopen', { reason: 'a paper slip was read wrongly' })
  yield 2
  const facts = {
    ...guest.facts,
    place: { by: 'unit', unit: 'P7', place: 'upper bridge' } as const,
  }
  const reason = 'the place on the slip is the upper bridge'
  floor.tell(floor.lead, 'animal.amend', { animal: guest.animal, facts, reason })
  yield 2
  floor.tell(floor.lead, 'day.close', { pin: practicePin })
}
