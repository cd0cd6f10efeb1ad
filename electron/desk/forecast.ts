/** Who works what next and how long everyone waits; what hunters were told; setting suggestions aside. */
import type { ReadableLog } from '../../db/connection.ts'
import { latestWallTime } from '../../db/log/desk-clock.ts'
import { latestAir, setAsides, toldAndOver, toldOf } from '../../db/read/line.ts'
import { latestDay } from '../../db/read/station.ts'
import { draft, type EntryDraft } from '../../shared-types/entry.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import { grouped } from '../../shared-types/sample-number.ts'
import type { StationRecord } from '../../shared-types/station.ts'
import type { MinutesRange } from '../../shared-types/views/forecast.ts'
import { checkDayOpen } from '../station/day.ts'
import { type Draws, drawsOf } from '../station/draws.ts'
import type { AssignView } from '../station/line.ts'
import { type ObstacleView, obstaclesOf } from '../station/line-needs.ts'
import { inTurn } from '../station/line-order.ts'
import type { AnimalHere, Scenario } from '../station/line-simulation.ts'
import { type FreeSampler, type Suggestion, suggestNext } from '../station/next-animal.ts'
import { workKindOf } from '../station/service-time.ts'
import { skillsOf } from '../station/skills.ts'
import {
  forecastWaits,
  heldOf,
  type PastWait,
  shareToCover,
  type WaitRange,
} from '../station/wait-forecast.ts'
import type { CommandCall, CommandHandlers, QueryHandlers } from './call.ts'
import { done } from './decided.ts'
import { findAnimal, findPerson } from './find.ts'
import { comingOf, kindsToday, leavingShare, type LineFacts, lineFacts } from './line-facts.ts'

const minuteMs = 60_000
/** One seed for ever: an answer changes only when the line does. */
const seed = 20_261_114
let draws: Draws | undefined

/** Random numbers for simulating, made when they are first asked for. */
export function lineDraws(): Draws {
  draws ??= drawsOf(seed)
  return draws
}

/** The line as the simulation takes it. */
export function animalsHere({ line, nowMs }: LineFacts): AnimalHere[] {
  return line.map(({ animal, rank, needs, overtaken }) => ({
    kind: workKindOf(animal.facts),
    needs,
    rank,
    overtaken,
    waited: Math.max(0, nowMs - animal.arrivedMs) / minuteMs,
  }))
}

function scenarioOf(
  facts: LineFacts,
  here: readonly AnimalHere[],
): Omit<Scenario, 'runs' | 'followComing'> {
  // Those to come matter to those here only when they may go before them.
  const mayOvertake = here.some(({ rank }) => rank === 2)
  return {
    here,
    samplers: facts.crew.map(({ simulated }) => simulated),
    coming: mayOvertake ? comingOf(facts) : null,
    overtakenAtMost: facts.settings.overtakenAtMost,
    leaving: leavingShare(facts),
  }
}

/** A car that drives in now brings what most have brought today. */
function carNow(facts: LineFacts): AnimalHere {
  const kinds = kindsToday(facts)
  const deer = kinds.filter(({ kind }) => kind.startsWith('deer'))
  const usual = 2 * deer.length >= kinds.length ? deer : kinds
  const voluntary = usual.filter(({ rank }) => rank === 2).length
  const kind = { kind: 'deer', needs: 1, rank: 2 * voluntary > usual.length ? 2 : 1 } as const
  return { ...kind, overtaken: 0, waited: 0 }
}

/** The wait of each animal in the line from its arrival, and that of a car that drives in now. */
export function waitsOf(
  facts: LineFacts,
  past: readonly PastWait[],
): { line: (WaitRange | null)[]; car: WaitRange | null } {
  const here = [...animalsHere(facts), carNow(facts)]
  const ranges = forecastWaits(scenarioOf(facts, here), lineDraws(), shareToCover(past))
  return { line: ranges.slice(0, -1), car: ranges.at(-1) ?? null }
}

/** Minutes still to wait, of a range counted from arrival. */
function fromNow(range: WaitRange | null, waited: number): MinutesRange | null {
  if (!range) return null
  const left = (minutes: number) => Math.max(0, Math.round(minutes - waited))
  return { low: left(range.low), typical: left(range.typical), high: left(range.high) }
}

/** Who should work which animal next. */
export function suggestionsOf(log: ReadableLog, facts: LineFacts): Suggestion[] {
  const free = facts.crew
    .filter(({ person, inHand }) => person.duty === 'on' && inHand.length === 0)
    .map(({ person, pace, kits, simulated }): FreeSampler => {
      const { until } = simulated
      return { person, pace, kits, minutesLeft: until === Infinity ? null : until }
    })
  return suggestNext(inTurn(facts.line, facts.settings), free, setAsides(log), facts.view)
}

export function obstacles(log: ReadableLog, facts: LineFacts): ReturnType<typeof obstaclesOf> {
  const view: ObstacleView = {
    line: facts.line,
    people: facts.crew.map(({ person, kits }) => ({
      name: person.name,
      skills: skillsOf(person),
      duty: person.duty,
      kits,
    })),
    nowMs: facts.nowMs,
    lastMs: latestWallTime(log),
  }
  return obstaclesOf(view)
}

/** What was told today and is over. */
function pastWaits(log: ReadableLog): PastWait[] {
  const day = latestDay(log)
  const told = day ? toldAndOver(log, day.date) : []
  return told.map(({ low, high, arrivedMs, takenMs }) => ({
    low,
    high,
    minutes: (takenMs - arrivedMs) / minuteMs,
  }))
}

/** A lead who gives a sampler another animal than the one suggested: the override is an entry. */
export function overridden(
  log: ReadableLog,
  { station, now }: Pick<CommandCall, 'station' | 'now'>,
  { animal, sampler, by }: AssignView,
): EntryDraft[] {
  if (by.role !== 'lead' || animal.state !== 'waiting') return []
  const suggested = suggestionsOf(log, lineFacts(log, station, now)).find(
    (each) => each.sampler === sampler.person,
  )
  if (!suggested || suggested.animal === animal.animal) return []
  return [draft('suggestion.overridden', { ...suggested, instead: animal.animal })]
}

export const forecastQueries = {
  forecast: ({ log, station, now }) => {
    const facts = lineFacts(log, station, now)
    const past = pastWaits(log)
    const { line, car } = waitsOf(facts, past)
    const nameOf = new Map(facts.crew.map(({ person }) => [person.person, person.name]))
    const here = animalsHere(facts)
    return granted({
      nowMs: now,
      suggestions: suggestionsOf(log, facts).map((each) => ({
        ...each,
        name: nameOf.get(each.sampler) ?? '',
      })),
      waits: facts.line.map(({ animal }, place) => ({
        animal: animal.animal,
        range: fromNow(line[place] ?? null, here[place]?.waited ?? 0),
      })),
      carNow: fromNow(car, 0),
      held: heldOf(past),
      air: latestAir(log),
      obstacles: obstacles(log, facts),
    })
  },
} satisfies Partial<QueryHandlers>

/** The range to tell a hunter, or why none can be told. */
function rangeToTell(
  log: ReadableLog,
  station: StationRecord,
  now: number,
  animal: string,
): Result<WaitRange> {
  const facts = lineFacts(log, station, now)
  const place = facts.line.findIndex((each) => each.animal.animal === animal)
  const range = waitsOf(facts, pastWaits(log)).line[place]
  if (range) return granted(range)
  const [obstacle] = obstacles(log, facts)
  return refused(
    'no-wait-known',
    obstacle?.say ?? 'Nobody who can work this head stays long enough today.',
    obstacle?.next ?? 'Tell the hunter so, and ask the lead who else can come.',
  )
}

export const forecastCommands = {
  'wait.tell': ({ act, station, now }, { animal: text }) =>
    act((tx) => {
      const animal = findAnimal(tx, text)
      if (!animal.ok) return animal
      const number = animal.value.animal
      const before = toldOf(tx, number)
      // Told once: what a hunter heard is what counts.
      if (before)
        return granted({
          drafts: [],
          value: { lowMinutes: before.low, highMinutes: before.high },
        })
      if (animal.value.state !== 'waiting')
        return refused(
          'animal-not-waiting',
          `Animal ${grouped(number)} does not wait in the line.`,
          'There is no wait to tell.',
          'animal',
        )
      const range = rangeToTell(tx, station, now, number)
      if (!range.ok) return range
      const minutes = { lowMinutes: range.value.low, highMinutes: range.value.high }
      const chance = Math.round(range.value.chance * 100)
      const drafts = [draft('wait.told', { animal: number, ...minutes, chance })]
      return granted({ drafts, value: minutes })
    }),
  'suggestion.setAside': ({ act, station, now }, { animal: animalText, sampler: samplerText }) =>
    act((tx) => {
      const animal = findAnimal(tx, animalText)
      if (!animal.ok) return animal
      const sampler = findPerson(tx, samplerText)
      if (!sampler.ok) return sampler
      const pair = { animal: animal.value.animal, sampler: sampler.value.person }
      const suggested = suggestionsOf(tx, lineFacts(tx, station, now)).find(
        (each) => each.animal === pair.animal && each.sampler === pair.sampler,
      )
      if (!suggested)
        return refused(
          'not-suggested',
          `Animal ${grouped(pair.animal)} is no longer suggested to ${sampler.value.name}.`,
          'Look at the suggestion shown now.',
        )
      const body = { ...pair, instead: null, why: suggested.why }
      return granted({ drafts: [draft('suggestion.overridden', body)], value: {} })
    }),
  'air.read': ({ act }, { celsius }) =>
    act((tx) => {
      const day = checkDayOpen(latestDay(tx))
      return done(day.ok ? granted([draft('air.read', { celsius })]) : day)
    }),
} satisfies Partial<CommandHandlers>
