/** The line screen's one question: who waits, who works, who has kits, what needs the lead. */
import type { ReadableLog } from '../../db/connection.ts'
import { animalsInLine, dayFigures } from '../../db/read/animals.ts'
import { bagsOnBenchSince } from '../../db/read/bags.ts'
import { bagTally, coolers, oldestFreshMs, lastReadingOf } from '../../db/read/coolers.ts'
import { kitBalances, kitsByAnimalInLine } from '../../db/read/kits.ts'
import { people as everyone, shiftsByPerson } from '../../db/read/people.ts'
import { latestDay } from '../../db/read/station.ts'
import type { AnimalRecord } from '../../shared-types/animal.ts'
import { kitAccountKey } from '../../shared-types/kit.ts'
import type { PersonRecord } from '../../shared-types/person.ts'
import { granted } from '../../shared-types/result.ts'
import type { StationRecord } from '../../shared-types/station.ts'
import type { CrewMember, LineAnimal, LineView } from '../../shared-types/views/line.ts'
import { placeUsable } from '../station/check-in.ts'
import {
  type AnimalFigures,
  dayTotals,
  minutesOfWork,
  quantile,
  waits,
} from '../station/figures.ts'
import { kitsLow } from '../station/kit-ledger.ts'
import { isOnTheLine, whoCanWork } from '../station/line.ts'
import { localDate } from '../station/local-time.ts'
import { benchLimitMs, type LeadView, needsOfLead } from '../station/needs.ts'
import { takesSamples } from '../station/training.ts'
import { kitAt } from './animals.ts'
import type { QueryHandlers } from './call.ts'
import { holdOf } from './cold.ts'
import { waitingInTurn } from './line-facts.ts'
import { personView } from './people.ts'

/** The figures of the animals of a day, the one that is open or was last. */
export function figuresOfDay(log: ReadableLog, day = latestDay(log)): AnimalFigures[] {
  if (!day) return []
  return dayFigures(log, day.date).map((row) => ({
    state: row.state,
    outcome: row.outcome,
    arrivedMs: row.arrived_ms,
    assignedMs: row.assigned_ms,
    finishedMs: row.finished_ms,
    sampler: row.sampler,
  }))
}

interface LineFacts {
  readonly station: StationRecord
  readonly onDuty: readonly PersonRecord[]
  readonly kits: ReturnType<typeof kitsByAnimalInLine>
}

function lineAnimal({ station, onDuty, kits }: LineFacts, animal: AnimalRecord): LineAnimal {
  const kit = kitAt(kits.get(animal.animal) ?? [])
  const { hunter, tag, species, sex, age, head, programme } = animal.facts
  return {
    animal: animal.animal,
    hunter,
    tag,
    species,
    sex,
    age,
    head,
    programme,
    placeUsable: placeUsable(station.settings, animal.facts),
    state: animal.state,
    arrivedMs: animal.arrivedMs,
    assignedMs: animal.assignedMs,
    sampler: animal.sampler,
    kit: kit?.kit ?? null,
    kitOpened: kit?.state === 'opened',
    canWork: whoCanWork(onDuty, animal).map(({ person }) => person),
  }
}

function crewMember(
  person: PersonRecord,
  working: readonly AnimalRecord[],
  figures: readonly AnimalFigures[],
  kits: number,
  shifts: ReturnType<typeof shiftsByPerson>,
): CrewMember {
  const animals = working
    .filter(({ sampler }) => sampler === person.person)
    .toSorted((a, b) => (a.assignedMs ?? 0) - (b.assignedMs ?? 0))
    .map(({ animal }) => animal)
  const finished = figures.filter(
    ({ sampler, state }) => sampler === person.person && state === 'finished',
  )
  return {
    ...personView(person, shifts),
    kits,
    kitsLow: kitsLow(kits, animals.length),
    animals,
    finishedToday: finished.length,
    usualMinutes: quantile(minutesOfWork(finished), 0.5),
  }
}

function coldView(log: ReadableLog, station: StationRecord): LeadView['coolers'] {
  const until = holdOf(log, station.settings)
  return coolers(log)
    .filter(({ state }) => state !== 'handed-off')
    .map((cooler) => {
      const oldest = oldestFreshMs(log, cooler.cooler)
      const reading = lastReadingOf(log, cooler.cooler)
      return {
        name: cooler.name,
        keeping: cooler.keeping,
        bags: bagTally(log, cooler.cooler),
        holdUntilMs:
          oldest === null ? null : until({ kept: 'fresh', sealedMs: oldest }, cooler.keeping),
        lastReading: reading,
      }
    })
}

export const lineQueries = {
  line: ({ log, station, now }) => {
    const crew = everyone(log).filter(({ active }) => active)
    const inLine = animalsInLine(log)
    const figures = figuresOfDay(log)
    const balances = kitBalances(log)
    const shifts = shiftsByPerson(log, localDate(now, station.zone))
    const waiting = waitingInTurn(log, station, now)
    const working = inLine.filter(({ state }) => state === 'with-sampler')
    const facts = { station, onDuty: crew.filter(isOnTheLine), kits: kitsByAnimalInLine(log) }
    const members = crew
      .filter(takesSamples)
      .map((person) =>
        crewMember(
          person,
          working,
          figures,
          balances.get(kitAccountKey({ in: 'hands', person: person.person })) ?? 0,
          shifts,
        ),
      )
    const kitsInStock = balances.get('stock') ?? 0
    const view: LineView = {
      nowMs: now,
      waiting: waiting.map((animal) => lineAnimal(facts, animal)),
      working: working.map((animal) => lineAnimal(facts, animal)),
      crew: members,
      kitsInStock,
      totals: dayTotals(figures),
      waits: waits(figures),
      targetWaitMinutes: station.settings.targetWaitMinutes,
      needs: needsOfLead({
        nowMs: now,
        zone: station.zone,
        targetWaitMinutes: station.settings.targetWaitMinutes,
        day: latestDay(log),
        waiting,
        crew: members,
        kitsInStock,
        placesMissing: inLine.filter(({ facts }) => !placeUsable(station.settings, facts)).length,
        bagsLate: bagsOnBenchSince(log, now - benchLimitMs),
        coolers: coldView(log, station),
      }),
    }
    return granted(view)
  },
} satisfies Partial<QueryHandlers>
