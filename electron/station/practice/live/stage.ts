/** Setting a live morning up: the station is open, the crew stands ready, and no car has come yet. */
import type { AnimalNumber, PersonId } from '../../../../shared-types/sample-number.ts'
import { type KitAccount, kitAccountKey } from '../../../../shared-types/kit.ts'
import type { PracticeRole } from '../../../../shared-types/practice.ts'
import { fill } from '../../../../shared-types/fill.ts'
import type { AnimalPlan } from '../animals.ts'
import type { CrewPlan } from '../crew.ts'
import { practiceOpening } from '../plan.ts'
import type { DeskScript } from '../script.ts'
import { taskWords } from './words.ts'

/** A hunter on the way, and what is true of the animal whatever is written down. */
export interface LiveGuest {
  readonly arrivesMs: number
  readonly plan: AnimalPlan
}

export interface LiveCast {
  readonly trainee: PersonId
  readonly lead: PersonId
  /** Meets hunters, unless the learner does. */
  readonly host: PersonId
  /** Carries bags, hands out kits, prints. */
  readonly carrier: PersonId
}

/** Something that happens with kits and that the learner is told to record. */
export interface KitTask {
  readonly atMs: number
  readonly say: string
  readonly from: string
  readonly to: string
  readonly count: number
}

export interface LiveStage {
  readonly script: DeskScript
  readonly role: PracticeRole
  readonly cast: LiveCast
  readonly guests: readonly LiveGuest[]
  readonly tasks: readonly KitTask[]
  /** When the first car can come, and when the last has come and should have been dealt with. */
  readonly startMs: number
  readonly endMs: number
}

/** Which guest an animal of the log is. */
export type GuestOf = (animal: AnimalNumber) => LiveGuest | undefined

/** So long before the laptop's time the morning begins: it is over before it could reach it. */
const beforeMs = 5 * 3_600_000

/** Minutes for the crew to work off what has come last. */
const after = 25

export function liveStage(wish: {
  readonly seed: number
  readonly animals: number
  readonly nowMs: number
  readonly zone: string
  readonly role: PracticeRole
}): LiveStage {
  const { role, nowMs } = wish
  const { script, crew, guests, fromMinute, toMinute } = practiceOpening({
    ...wish,
    nowMs: nowMs - beforeMs,
  })
  const msAt = (minute: number) => nowMs - beforeMs + Math.round((minute - fromMinute) * 60_000)
  const cast = castOf(crew, role)
  const span = { startMs: msAt(fromMinute), endMs: msAt(toMinute + after) }
  return {
    script,
    role,
    cast,
    guests: guests.map(({ arrives, plan }) => ({ arrivesMs: msAt(arrives), plan })),
    tasks: [taskOf(role, cast, crew, span.startMs + (span.endMs - span.startMs) * 0.35)],
    ...span,
  }
}

function castOf(crew: readonly CrewPlan[], role: PracticeRole): LiveCast {
  const of = (wanted: CrewPlan['role']) => crew.filter((each) => each.role === wanted)
  const [lead] = of('lead')
  const [host, carrier] = of('volunteer')
  const [sampler] = of('sampler')
  if (!lead || !host || !carrier || !sampler) throw new Error('a practice crew lacks somebody')
  const trainee = { lead, 'check-in': host, bench: sampler }[role]
  return {
    trainee: trainee.person,
    lead: lead.person,
    host: host.person,
    carrier: carrier.person,
  }
}

function taskOf(
  role: PracticeRole,
  cast: LiveCast,
  crew: readonly CrewPlan[],
  atMs: number,
): KitTask {
  const moved = (from: KitAccount, to: KitAccount, count: number, say: string): KitTask => ({
    atMs,
    say,
    from: kitAccountKey(from),
    to: kitAccountKey(to),
    count,
  })
  const stock = { in: 'stock' } as const
  switch (role) {
    case 'check-in': {
      const sampler = crew.find((each) => each.role === 'sampler')
      const person = sampler?.person ?? cast.lead
      const say = fill(taskWords.given, { name: sampler?.name ?? '' })
      return moved(stock, { in: 'hands', person }, 5, say)
    }
    case 'bench': {
      const mine = { in: 'hands', person: cast.trainee } as const
      return moved(mine, { in: 'spoiled' }, 1, taskWords.spoiled)
    }
    case 'lead':
      return moved({ in: 'delivered' }, stock, 40, taskWords.delivered)
  }
}
