/** The order in which the line should be worked, and why each animal stands where it does. */
import type { AnimalRecord } from '../../shared-types/animal.ts'
import type { LineSettings } from '../../shared-types/line.ts'
import type { PersonRecord } from '../../shared-types/person.ts'
import { orderLine } from './line.ts'
import { everySkill, skillsNeeded, skillsOf, suffices } from './skills.ts'
import { type Air, hoursSinceHarvest, isSpoiling } from './spoiling.ts'
import { type Rank, Turns } from './turn.ts'

/** An animal waiting, with what its turn depends on. */
export interface Waiting {
  readonly animal: AnimalRecord
  readonly rank: Rank
  readonly needs: number
  /** How many came later and went to somebody who could have worked this one. */
  readonly overtaken: number
}

export interface OrderView {
  readonly settings: LineSettings
  readonly air: Air
  readonly nowMs: number
  /** Animals of the day that were given to a sampler, with who took them. */
  readonly taken: readonly {
    readonly arrivedMs: number
    readonly assignedMs: number
    readonly sampler: PersonRecord
  }[]
}

export function rankOf(animal: AnimalRecord, { settings, air, nowMs }: OrderView): Rank {
  if (isSpoiling(animal, settings, air, nowMs)) return 0
  return settings.mandatoryFirst && animal.facts.programme === 'voluntary' ? 2 : 1
}

function timesOvertaken(animal: AnimalRecord, needs: number, { taken }: OrderView): number {
  return taken.filter(
    ({ arrivedMs, assignedMs, sampler }) =>
      arrivedMs > animal.arrivedMs &&
      assignedMs > animal.arrivedMs &&
      suffices(skillsOf(sampler), needs),
  ).length
}

/** The animals waiting, first come first, each with its rank and how often it was overtaken. */
export function waitingLine(animals: readonly AnimalRecord[], view: OrderView): Waiting[] {
  return animals.toSorted(orderLine).map((animal) => {
    const needs = skillsNeeded(animal.facts)
    return {
      animal,
      rank: rankOf(animal, view),
      needs,
      overtaken: timesOvertaken(animal, needs, view),
    }
  })
}

/** The line in the order in which it should be worked, by people who can work every head. */
export function inTurn(line: readonly Waiting[], settings: LineSettings): Waiting[] {
  const turns = new Turns(line.length, settings.overtakenAtMost)
  line.forEach(({ rank, needs, overtaken }, place) => turns.join(place, rank, needs, overtaken))
  return line.flatMap(() => line[turns.take(everySkill)] ?? [])
}

/** Completes "Animal 12 is next: ...". */
export function whyItsTurn(waiting: Waiting, view: OrderView, isFirstCome: boolean): string {
  const { animal, rank, overtaken } = waiting
  if (rank === 0) {
    const hours = Math.round(hoursSinceHarvest(animal, view.air, view.nowMs))
    const air = view.air.celsius === null ? '' : ` and the air is at ${view.air.celsius} °C`
    return `its tissue is spoiling, harvested about ${hours} hours ago${air}`
  }
  if (overtaken >= view.settings.overtakenAtMost && overtaken > 0)
    return `${overtaken} that came later have gone before it, and no more may`
  if (isFirstCome) return 'it has waited longest'
  return view.settings.mandatoryFirst && animal.facts.programme === 'mandatory'
    ? 'its sampling is mandatory, and it has waited longest of those'
    : 'it has waited longest of those that can be worked now'
}
