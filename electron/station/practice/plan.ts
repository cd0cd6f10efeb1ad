/**
 * Making a practice day up: an invented opening day at one station, written out desk by desk before a
 * single entry is made. The same seed always gives the same day.
 */
import { LocalDate } from '../../../shared-types/local-date.ts'
import { DeskId, deskLetters } from '../../../shared-types/sample-number.ts'
import { localDate } from '../local-time.ts'
import { inventedAnimals } from './animals.ts'
import { arrivalMinutes } from './arrivals.ts'
import { carryInPortions, leaveLidOpen } from './coolers.ts'
import { crewOf } from './crew.ts'
import { closeDown } from './dusk.ts'
import { faultsWanted, jamSheet, loseLabel, spoilUnrecorded } from './faults.ts'
import { type DayFrame, Floor } from './floor.ts'
import { receive } from './line.ts'
import { inventedCast } from './names.ts'
import { addTraining, addUnit, openStation } from './opening.ts'
import { Chance } from './random.ts'
import type { DeskScript } from './script.ts'
import { type DayShape, openingDay, openingMorning, practiceHours } from './shapes.ts'
import { workShift } from './shift.ts'
import { practiceStation } from './station-facts.ts'
import { tellWaits } from './waits.ts'

/** Each part of a day draws from a stream of its own. */
const stream = { station: 1, desk: 100, animals: 200, floor: 300, salts: 400, faults: 500 }

interface Arrival {
  readonly minute: number
  readonly desk: number
}

/** The station's arrivals, each at the desk that happened to be free. */
function arrivalsOf(seed: number, animals: number, desks: number, shape: DayShape): Arrival[] {
  const chance = new Chance(seed, stream.station)
  return arrivalMinutes(chance, animals, shape.arrivals).map((minute) => ({
    minute,
    desk: chance.whole(0, desks - 1),
  }))
}

interface Wish {
  readonly seed: number
  readonly shape: DayShape
  readonly frame: DayFrame
  /** Which of the desks, from 0. */
  readonly place: number
  readonly harvested: LocalDate
  /** Arrivals of the whole station. */
  readonly arrivals: readonly Arrival[]
  /** Whether things go wrong that nobody tells the desk, for the close to find. */
  readonly goesWrong: boolean
}

function floorOf({ seed, shape, frame, place, harvested, arrivals, goesWrong }: Wish): Floor {
  const here = arrivals.flatMap((arrival, tag) =>
    arrival.desk === place ? [{ ...arrival, tag }] : [],
  )
  const chance = (part: number) => new Chance(seed, part + place)
  const posts = shape.posts(here.length)
  const crew = crewOf(frame.desk, posts, inventedCast(chance(stream.desk), posts.length))
  const tags = here.map(({ tag }) => tag)
  const plans = inventedAnimals(chance(stream.animals), tags, harvested)
  const guests = plans.map((plan, at) => ({ plan, arrives: here[at]?.minute ?? 0 }))
  const faults = goesWrong ? faultsWanted(chance(stream.faults)) : []
  return new Floor(frame, shape, chance(stream.floor), crew, guests, faults)
}

/** Starts everything that goes on at one desk. */
function begin(floor: Floor): void {
  const { agenda, crew, lead } = floor
  agenda.start(openStation(floor))
  for (const member of crew) if (member.plan.person !== lead) agenda.start(workShift(floor, member))
  const courses = [receive, tellWaits, carryInPortions, addUnit, addTraining, leaveLidOpen]
  const faults = [loseLabel, jamSheet, spoilUnrecorded]
  for (const start of [...courses, ...faults, closeDown]) agenda.start(start(floor))
}

/** Plays the day in the mind, to its end or up to the end of a minute, and writes it down. */
function script(wish: Wish, until?: number): DeskScript {
  const floor = floorOf(wish)
  begin(floor)
  floor.agenda.run(until)
  const { steps, guests, faults } = floor
  const { desk, zone, date } = floor.frame
  return { seed: wish.seed, desk, zone, date, faults, steps, animals: guests.length }
}

/** What the player of a script uses for salts, so that the digests in its entries come out the same. */
export function saltsOf({ seed, desk }: DeskScript): Chance {
  return new Chance(seed, stream.salts + deskLetters.indexOf(desk.slice(5)))
}

/** A zone must be a real one; everything else about the day is invented. */
const dayZone = 'America/Denver'
const dayDate = LocalDate.parse('2026-11-14')
const dayStartMs = Date.parse('2026-11-14T06:00:00-07:00')

/** A whole opening day at a station with so many desks: 1 to 18. */
export function practiceDay(
  wish: { seed: number; animals: number; desks: number },
  shape: DayShape = openingDay,
): DeskScript[] {
  const { seed, animals, desks } = wish
  const arrivals = arrivalsOf(seed, animals, desks, shape)
  return deskLetters.slice(0, desks).map((letter, place) => {
    const desk = DeskId.parse(`26${practiceStation.code}${letter}`)
    const frame = { desk, zone: dayZone, date: dayDate, startMs: dayStartMs, reopens: place === 0 }
    const made = { seed, shape, frame, place, harvested: dayDate, arrivals }
    return script({ ...made, goesWrong: true })
  })
}

/** The minute of the rush in which the line first grows to a dozen, or to a third of a small day. */
function rushMinute(wish: Wish): number {
  const floor = floorOf(wish)
  begin(floor)
  const wanted = Math.min(12, Math.ceil(floor.guests.length / 3))
  const last = (floor.guests.at(-1)?.arrives ?? 0) + 1
  let minute = openingMorning.warmReading + 40
  for (; minute < last; minute += 1) {
    floor.agenda.run(minute)
    if (floor.inLine >= wanted) return minute
  }
  return last
}

/**
 * An opening morning that stands in its rush at `nowMs`, for the desk at hand to go on with. Of the
 * animals of the morning some have not come by then.
 */
export function practiceMorning(given: {
  seed: number
  animals: number
  nowMs: number
  zone: string
}): DeskScript {
  const { seed, animals, nowMs, zone } = given
  const date = localDate(nowMs, zone)
  const desk = DeskId.parse(`${date.slice(2, 4)}${practiceStation.code}${deskLetters[0] ?? ''}`)
  const arrivals = arrivalsOf(seed, animals, 1, openingMorning)
  const wishAt = (startMs: number): Wish => ({
    seed,
    shape: openingMorning,
    frame: { desk, zone, date, startMs, reopens: false },
    place: 0,
    harvested: localDate(startMs, zone),
    arrivals,
    goesWrong: false,
  })
  const until = rushMinute(wishAt(nowMs))
  return script(wishAt(nowMs - Math.round(until * 60_000)), until)
}

/**
 * A station that has just opened at `nowMs`, its crew in place, and the hunters who are on their way;
 * what they bring and when is known here and not yet to its log.
 */
export function practiceOpening(given: {
  seed: number
  animals: number
  nowMs: number
  zone: string
}) {
  const { seed, animals, nowMs, zone } = given
  const { fromMinute, stretch, rates } = practiceHours.arrivals
  const startMs = nowMs - fromMinute * 60_000
  const date = localDate(nowMs, zone)
  const desk = DeskId.parse(`${date.slice(2, 4)}${practiceStation.code}${deskLetters[0] ?? ''}`)
  const wish: Wish = {
    seed,
    shape: practiceHours,
    frame: { desk, zone, date, startMs, reopens: false },
    place: 0,
    harvested: date,
    arrivals: arrivalsOf(seed, animals, 1, practiceHours),
    goesWrong: false,
  }
  const floor = floorOf(wish)
  return {
    script: script(wish, fromMinute - 1),
    crew: floor.crew.map(({ plan }) => plan),
    guests: floor.guests.map(({ arrives, plan }) => ({ arrives, plan })),
    fromMinute,
    toMinute: fromMinute + stretch * rates.length,
  }
}
