/** A simulated sampler's work on one animal, as deeds with their times. */
import {
  type AnimalNumber,
  bagNumber,
  type KitNumber,
  numberParts,
  type PersonId,
} from '../../../../shared-types/sample-number.ts'
import { sitePart } from '../../../../shared-types/tissue.ts'
import type { Chance } from '../random.ts'
import type { TissuePlan } from '../tissue-plan.ts'
import type { Deed, Seen } from './seen.ts'

export interface TimedDeed extends Deed {
  readonly atMs: number
}

export interface Job {
  readonly animal: AnimalNumber
  readonly sampler: PersonId
  readonly steps: TimedDeed[]
}

interface Task {
  readonly sampler: PersonId
  readonly animal: AnimalNumber
  readonly kit: KitNumber
  readonly tissues: readonly TissuePlan[]
}

const minuteMs = 60_000

/** Everything that is still to be done on the animal, from now on. */
export function jobOf(task: Task, seen: Seen, chance: Chance): Job {
  const { animal, kit, sampler, tissues } = task
  const { desk, serial } = numberParts(kit)
  let atMs = seen.nowMs
  const steps: TimedDeed[] = []
  const next = (name: Deed['name'], input: unknown, low: number, high: number) => {
    atMs += chance.between(low, high) * minuteMs
    steps.push({ atMs, by: sampler, name, input })
  }
  const done = seen.tissuesOf(animal)
  if (!seen.kitOf(animal)?.isOpen) next('kit.open', { animal, kit }, 0.4, 1)
  for (const { site, looks, missed } of tissues) {
    const before = done.find((each) => each.site === site)
    if (before?.bag || before?.missed) continue
    for (const look of looks) next('tissue.check', { animal, site, ...look }, 0.8, 1.8)
    if (missed) next('tissue.miss', { animal, site, reason: missed, words: '' }, 0.2, 0.4)
    else next('bag.seal', { animal, site, bag: bagNumber(desk, serial, sitePart[site]) }, 0.3, 0.7)
  }
  next('animal.finish', { animal }, 0.3, 0.8)
  return { animal, sampler, steps }
}
