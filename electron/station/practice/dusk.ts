/** Dusk: the last bags, the seals, the counts, the close and what was wrong with it. */
import type { Process } from './agenda.ts'
import { carryAll, readAll, sealBox } from './coolers.ts'
import { countAll } from './counting.ts'
import type { Floor } from './floor.ts'
import { handOff } from './hand-off.ts'
import { importLogger } from './logger-file.ts'
import { settleAll } from './settling.ts'
import { goHome } from './shift.ts'
import { practicePin } from './station-facts.ts'

export function* closeDown(floor: Floor): Process {
  yield floor.shape.lastMinute - floor.agenda.now
  while (!floor.quiet || floor.carrying) yield 3
  floor.dusk = true
  yield* carryAll(floor)
  readAll(floor)
  importLogger(floor)
  yield* sealAll(floor)
  yield* countAll(floor)
  yield* settleAndClose(floor)
  if (floor.frame.reopens) yield* reopen(floor)
  writeNote(floor)
  yield* handOff(floor)
  goHome(floor)
}

/** What the next lead should know. */
function writeNote(floor: Floor): void {
  const words = 'Ice is short: bring two bags. The printer jams on a damp sheet.'
  floor.tell(floor.lead, 'handover.write', { words })
}

/** Seals what holds bags. The first seal is smudged: it is broken and replaced by another. */
function* sealAll(floor: Floor): Process {
  for (const box of floor.boxes) {
    if (box.bags.length === 0 || box.seal) continue
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

/** The lead looks over what differs, settles it, and closes with somebody who counted along. */
function* settleAndClose(floor: Floor): Process {
  yield 1
  floor.steps.push({ is: 'looked-over', atMs: floor.msAt(floor.agenda.now), by: floor.lead })
  yield* settleAll(floor)
  yield 1
  close(floor)
}

function close(floor: Floor): void {
  const person = floor.helper()
  floor.tell(
    floor.lead,
    'day.close',
    person === floor.lead
      ? { pin: practicePin, aloneBecause: 'everyone else has gone home' }
      : { pin: practicePin, second: { person, pin: practicePin } },
  )
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
  close(floor)
}
