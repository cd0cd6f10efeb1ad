/** The line as its rules want it: who waits in what order, who works at what pace, who is to come. */
import type { ReadableLog } from '../../db/connection.ts'
import { animalsInLine } from '../../db/read/animals.ts'
import { kitBalances } from '../../db/read/kits.ts'
import {
  animalsOfDay,
  type DayAnimal,
  dutySince,
  latestAir,
  takenAfter,
} from '../../db/read/line.ts'
import { people, shiftsByPerson } from '../../db/read/people.ts'
import { latestDay } from '../../db/read/station.ts'
import type { AnimalRecord } from '../../shared-types/animal.ts'
import { kitAccountKey } from '../../shared-types/kit.ts'
import type { LineSettings } from '../../shared-types/line.ts'
import type { PersonRecord } from '../../shared-types/person.ts'
import type { StationRecord } from '../../shared-types/station.ts'
import {
  type DayBelief,
  type DayProfile,
  dayProfile,
  learnDay,
  minuteOf,
  minuteOfDay,
  priorOfDay,
  shareBy,
} from '../station/arrivals.ts'
import { inTurn, type OrderView, type Waiting, waitingLine } from '../station/line-order.ts'
import { lineSettingsOf } from '../station/line-settings.ts'
import type { Coming, SimulatedAnimal, SimulatedSampler } from '../station/line-simulation.ts'
import { localDate, minuteOfLocalDay } from '../station/local-time.ts'
import { type Pace, paces, workKindOf } from '../station/service-time.ts'
import { skillsNeeded, skillsOf } from '../station/skills.ts'
import { airAt } from '../station/spoiling.ts'
import { takesSamples } from '../station/training.ts'
import { type Worked, workTimes } from '../station/work-times.ts'

export interface CrewAtWork {
  readonly person: PersonRecord
  readonly pace: Pace
  readonly kits: number
  /** The one being worked first. */
  readonly inHand: readonly AnimalRecord[]
  readonly simulated: SimulatedSampler
}

export interface LineFacts {
  readonly nowMs: number
  /** Minutes since midnight at the station. */
  readonly minute: number
  readonly station: StationRecord
  readonly settings: LineSettings
  readonly view: OrderView
  /** First come first. */
  readonly line: readonly Waiting[]
  readonly crew: readonly CrewAtWork[]
  readonly paceOf: (person: string) => Pace
  readonly today: readonly DayAnimal[]
  readonly profile: DayProfile
  readonly belief: DayBelief
}

const minuteMs = 60_000

/** What decides whose turn it is among these. */
export function orderView(
  log: ReadableLog,
  station: StationRecord,
  nowMs: number,
  waiting: readonly AnimalRecord[],
): OrderView {
  const day = latestDay(log)
  const firstMs = Math.min(...waiting.map(({ arrivedMs }) => arrivedMs))
  const byId = new Map(people(log).map((person) => [person.person, person]))
  const taken = day && waiting.length > 0 ? takenAfter(log, day.date, firstMs) : []
  return {
    settings: lineSettingsOf(station.settings),
    air: airAt(nowMs, station.zone, latestAir(log)?.celsius ?? null),
    nowMs,
    taken: taken.flatMap(({ sampler: id, ...times }) => {
      const sampler = byId.get(id)
      return sampler ? [{ ...times, sampler }] : []
    }),
  }
}

/** The animals waiting in the order in which they should be worked. */
export function waitingInTurn(
  log: ReadableLog,
  station: StationRecord,
  nowMs: number,
): AnimalRecord[] {
  const waiting = animalsInLine(log).filter(({ state }) => state === 'waiting')
  const view = orderView(log, station, nowMs, waiting)
  return inTurn(waitingLine(waiting, view), view.settings).map(({ animal }) => animal)
}

/** The animals of the day that is open or was last. */
function todaysAnimals(log: ReadableLog): DayAnimal[] {
  const day = latestDay(log)
  return day ? animalsOfDay(log, day.date) : []
}

export function lineFacts(log: ReadableLog, station: StationRecord, nowMs: number): LineFacts {
  const settings = lineSettingsOf(station.settings)
  const today = todaysAnimals(log)
  const inLine = animalsInLine(log)
  const waiting = inLine.filter(({ state }) => state === 'waiting')
  const view = orderView(log, station, nowMs, waiting)
  const worked = today.flatMap((each): Worked[] =>
    each.sampler && each.assignedMs !== null
      ? [{ ...each, sampler: each.sampler, assignedMs: each.assignedMs }]
      : [],
  )
  const paceOf = paces(settings, workTimes(worked))
  const minute = minuteOfLocalDay(nowMs, station.zone)
  const profile = dayProfile(settings)
  const share = shareBy(profile, minute)
  const facts = { nowMs, minute, station, settings, view, today, paceOf, profile }
  return {
    ...facts,
    line: waitingLine(waiting, view),
    crew: crewAtWork(log, facts, inLine, worked),
    belief: learnDay(priorOfDay(settings), cameSinceOpening(facts), share),
  }
}

/** Those who came before the profile begins say nothing about how busy it will be. */
function cameSinceOpening({
  today,
  nowMs,
  minute,
  profile,
}: Pick<LineFacts, 'today' | 'nowMs' | 'minute' | 'profile'>): number {
  const openedMs = nowMs - (minute - (profile.edges[0] ?? 0)) * minuteMs
  return today.filter(({ arrivedMs }) => arrivedMs >= openedMs).length
}

type Known = Pick<LineFacts, 'nowMs' | 'minute' | 'station' | 'settings' | 'paceOf'>

function crewAtWork(
  log: ReadableLog,
  known: Known,
  inLine: readonly AnimalRecord[],
  worked: readonly Worked[],
): CrewAtWork[] {
  const shifts = shiftsByPerson(log, localDate(known.nowMs, known.station.zone))
  const since = dutySince(log)
  const balances = kitBalances(log)
  return people(log)
    .filter(takesSamples)
    .flatMap((person): CrewAtWork[] => {
      const inHand = inLine
        .filter(({ state, sampler }) => state === 'with-sampler' && sampler === person.person)
        .toSorted((a, b) => (a.assignedMs ?? 0) - (b.assignedMs ?? 0))
      const kits = balances.get(kitAccountKey({ in: 'hands', person: person.person })) ?? 0
      // A lead with empty hands leads; one who holds kits or an animal also works.
      if (person.role === 'lead' && kits <= 0 && inHand.length === 0) return []
      const shift = shifts.get(person.person)
      const from = minutesUntilHere(person, shift, since.get(person.person) ?? null, known)
      if (from === null) return []
      const end = shift ? minuteOfDay(shift.to) - known.minute : Infinity
      const simulated: SimulatedSampler = {
        skills: skillsOf(person),
        pace: known.paceOf(person.person),
        from,
        // Who is still here after their shift has decided to stay on.
        until: end > 0 ? end : Infinity,
        inHand: inHand.map(({ facts }) => workKindOf(facts)),
        since: minutesInHand(inHand[0], worked, known.nowMs),
      }
      return [{ person, pace: simulated.pace, kits, inHand, simulated }]
    })
}

/** Minutes until somebody is at the line; null for somebody who is not expected. */
function minutesUntilHere(
  { duty }: PersonRecord,
  shift: { from: string } | undefined,
  sinceMs: number | null,
  { nowMs, minute, settings }: Known,
): number | null {
  if (duty === 'on') return 0
  if (duty === 'break') {
    const passed = sinceMs === null ? 0 : (nowMs - sinceMs) / minuteMs
    return Math.max(1, settings.breakMinutes - Math.max(0, passed))
  }
  const begins = shift ? minuteOfDay(shift.from) - minute : -1
  return begins > 0 ? begins : null
}

/** How long the first one in hand has been worked: since it was taken or the one before was finished. */
function minutesInHand(
  first: AnimalRecord | undefined,
  worked: readonly Worked[],
  nowMs: number,
): number {
  if (!first) return 0
  const finished = worked.flatMap(({ sampler, finishedMs }) =>
    sampler === first.sampler && finishedMs !== null ? [finishedMs] : [],
  )
  const begunMs = Math.max(first.assignedMs ?? nowMs, ...finished)
  return Math.max(0, nowMs - begunMs) / minuteMs
}

/** Rank and kind of an animal of the kind that comes today. */
function likeToday(
  { species, head, programme }: DayAnimal,
  settings: LineSettings,
): SimulatedAnimal {
  return {
    kind: workKindOf({ species, head }),
    needs: skillsNeeded({ species, head }),
    rank: settings.mandatoryFirst && programme === 'voluntary' ? 2 : 1,
  }
}

const plainDeer: SimulatedAnimal = { kind: 'deer', needs: 1, rank: 1 }

/** What those who join the line are like, by today's; a plain deer before anyone has come. */
export function kindsToday({ today, settings }: LineFacts): SimulatedAnimal[] {
  const joining = today.filter(({ joinsLine }) => joinsLine)
  return joining.length > 0 ? joining.map((each) => likeToday(each, settings)) : [plainDeer]
}

/** The share of those who come that joins the line, and so needs a sampler and a kit. */
export function joiningShare({ today }: LineFacts): number {
  // Two made-up animals that join keep the share of a first one or two from being all or nothing.
  return (today.filter(({ joinsLine }) => joinsLine).length + 2) / (today.length + 2)
}

/** Those still to come who will join the line. */
export function comingOf(facts: LineFacts): Coming {
  const { belief, profile, minute } = facts
  return {
    shape: belief.shape,
    rate: belief.rate / joiningShare(facts),
    shareNow: shareBy(profile, minute),
    minutesUntil: (share) => minuteOf(profile, share) - minute,
    kinds: kindsToday(facts),
  }
}

/** The share of those in the line who leave it; before many have come, about one in thirty (ours). */
export function leavingShare({ today }: LineFacts): number {
  const joined = today.filter(({ joinsLine }) => joinsLine)
  return (joined.filter(({ left }) => left).length + 1) / (joined.length + 30)
}
