/** The rest of the day: arrivals, waits by the hour, samplers, and whether the kits last. */
import type { ReadableLog } from '../../db/connection.ts'
import { animalsWithoutKit } from '../../db/read/line.ts'
import { kitBalances } from '../../db/read/kits.ts'
import type { PersonId } from '../../shared-types/sample-number.ts'
import { granted } from '../../shared-types/result.ts'
import type {
  AheadView,
  DayOutlookView,
  HourView,
  KitHolderView,
  KitMoveView,
  KitsAheadView,
  MinutesRange,
} from '../../shared-types/views/forecast.ts'
import { minuteOfDay, shareBy, stillToCome } from '../station/arrivals.ts'
import { type Demand, shareOf, stockFor } from '../station/demand.ts'
import { serversFor, steadyLine } from '../station/erlang-c.ts'
import { lowTypicalHigh } from '../station/figures.ts'
import {
  kitOutlook,
  kitsToAskFor,
  type KitMove,
  type KitNeed,
  type KitOutlook,
  needOfHolder,
  proposeMoves,
} from '../station/kit-run-out.ts'
import { averageMinutesOf, type Pace } from '../station/service-time.ts'
import {
  type DayOutlook,
  type ExtraSamplers,
  outlookOf,
  type RestOfDay,
  samplersToAdd,
} from '../station/staffing.ts'
import { sayOutlook, saySteady, sayToAdd } from '../station/staffing-words.ts'
import type { QueryHandlers } from './call.ts'
import { animalsHere, lineDraws, obstacles } from './forecast.ts'
import { comingOf, joiningShare, leavingShare, type LineFacts, lineFacts } from './line-facts.ts'

const minuteMs = 60_000
const hourMinutes = 60

/** A demand's range; the middle one is its median. */
function rangeOf(demand: Demand): MinutesRange {
  const [low, typical, high] = [0.1, 0.5, 0.9].map((share) => stockFor(demand, share))
  return { low: low ?? 0, typical: typical ?? 0, high: high ?? 0 }
}

/** Minutes from now to the close; at least one, so that a late evening still has a rest of the day. */
function minutesToClose({ settings, minute }: LineFacts): number {
  return Math.max(1, minuteOfDay(settings.closes) - minute)
}

function restOfDay(facts: LineFacts): RestOfDay {
  return {
    here: animalsHere(facts),
    samplers: facts.crew.map(({ simulated }) => simulated),
    coming: comingOf(facts),
    overtakenAtMost: facts.settings.overtakenAtMost,
    leaving: leavingShare(facts),
  }
}

/** Arrivals from now on, within so many minutes. */
function comingWithin({ belief, profile, minute }: LineFacts, minutes: number): Demand {
  return stillToCome(belief, shareBy(profile, minute + minutes) - shareBy(profile, minute))
}

/** Each hour from opening to close: what was, and what is to be expected. */
function hoursOf(facts: LineFacts, outlook: DayOutlook): HourView[] {
  const { settings, minute, nowMs, today } = facts
  const startMs = nowMs - minute * minuteMs
  const firstCame = Math.min(...today.map(({ arrivedMs }) => (arrivedMs - startMs) / minuteMs))
  const first = Math.floor(Math.min(minuteOfDay(settings.opens), firstCame) / hourMinutes)
  const last = Math.ceil(Math.max(minuteOfDay(settings.closes), minute) / hourMinutes)
  return Array.from({ length: Math.max(0, last - first) }, (_, place) =>
    hourView(facts, outlook, (first + place) * hourMinutes, startMs),
  )
}

function hourView(
  { minute, today, belief, profile }: LineFacts,
  outlook: DayOutlook,
  from: number,
  startMs: number,
): HourView {
  const to = from + hourMinutes
  const is = to <= minute ? 'past' : from > minute ? 'ahead' : 'now'
  const came = today.filter(({ arrivedMs }) => {
    const at = (arrivedMs - startMs) / minuteMs
    return at >= from && at < to
  })
  const waited = came.flatMap(({ arrivedMs, assignedMs }) =>
    assignedMs === null ? [] : [(assignedMs - arrivedMs) / minuteMs],
  )
  const share = shareBy(profile, to) - shareBy(profile, Math.max(from, minute))
  const middle = (Math.max(from, minute) + to) / 2 - minute
  const ahead = outlook.hours.findLast(({ fromMinutes }) => fromMinutes <= middle)
  return {
    fromMs: Math.round(startMs + from * minuteMs),
    is,
    came: is === 'ahead' ? null : came.length,
    expected: is === 'past' ? null : rangeOf(stillToCome(belief, Math.max(0, share))),
    wait:
      is === 'past' || !ahead
        ? lowTypicalHigh(waited)
        : { low: ahead.low, typical: ahead.typical, high: ahead.high },
  }
}

/** Animals an hour that somebody of this pace does on average, over what came today. */
function animalsAnHour(facts: LineFacts, pace: Pace): number {
  const kinds = comingOf(facts).kinds
  const minutes = kinds.map(({ kind }) => averageMinutesOf(pace[kind]))
  const average = minutes.reduce((sum, each) => sum + each, 0) / minutes.length
  return hourMinutes / (average + averageMinutesOf(pace.between))
}

function viewOf({ typical, ninetieth, leftOver }: DayOutlook): DayOutlookView {
  return { typical, ninetieth, leftOver }
}

function staffingOf(facts: LineFacts, outlook: DayOutlook): AheadView['staffing'] {
  const { nowMs, today, crew, station } = facts
  const { targetWaitMinutes } = station.settings
  const working = crew.filter(({ person }) => person.duty === 'on').length
  const lastHour = today.filter(
    ({ arrivedMs, joinsLine }) => joinsLine && arrivedMs > nowMs - hourMinutes * minuteMs,
  ).length
  const perHour = animalsAnHour(facts, facts.paceOf(''))
  const load = { arrivals: lastHour / hourMinutes, service: perHour / hourMinutes }
  const toAdd = samplersToAdd(restOfDay(facts), facts.paceOf(''), lineDraws(), targetWaitMinutes)
  return {
    working,
    lastHour,
    perSamplerHour: perHour,
    steadySay: saySteady(steadyLine({ ...load, servers: working }), working),
    steadyNeeds: serversFor(load, targetWaitMinutes),
    outlook: viewOf(outlook),
    toAdd,
    say: sayToAdd(toAdd, targetWaitMinutes),
  }
}

interface KitFacts {
  readonly log: ReadableLog
  readonly facts: LineFacts
  readonly need: KitNeed
}

function atMs(facts: LineFacts, minutes: number | null): number | null {
  return minutes === null ? null : Math.round(facts.nowMs + minutes * minuteMs)
}

function outlookView(facts: LineFacts, { kits, chance, shortAfter, enough }: KitOutlook) {
  return { kits, chance, shortAtMs: atMs(facts, shortAfter), enough }
}

function kitsAhead({ log, facts, need }: KitFacts): KitsAheadView {
  const stock = Math.max(0, kitBalances(log).get('stock') ?? 0)
  const onDuty = facts.crew.filter(({ person }) => person.duty !== 'off')
  const speeds = onDuty.map(({ pace }) => animalsAnHour(facts, pace))
  const speed = speeds.reduce((sum, each) => sum + each, 0)
  // What falls to each is their part of the work of all: faster people take more.
  const holders = onDuty.map(({ person, kits }, place) => ({
    who: person.person,
    name: person.name,
    kits: Math.max(0, kits),
    share: (speeds[place] ?? 0) / speed,
    perHour: speeds[place] ?? 0,
  }))
  const kits = stock + holders.reduce((sum, holder) => sum + holder.kits, 0)
  const whole = kitOutlook(kits, need)
  const nameOf = new Map(holders.map(({ who, name }) => [who, name]))
  return {
    ...outlookView(facts, whole),
    ask: kitsToAskFor(whole),
    holders: holders.map(({ who, name, ...holder }): KitHolderView => {
      const own = kitOutlook(holder.kits, needOfHolder(holder, need))
      return { person: who, name, ...outlookView(facts, own) }
    }),
    moves: proposeMoves(holders, stock, need).map((move) => moveView(move, nameOf)),
    track: trackOf(facts, need),
  }
}

function moveView(
  { from, to, count }: KitMove<PersonId>,
  nameOf: ReadonlyMap<PersonId, string>,
): KitMoveView {
  const source = from === 'stock' ? 'stock' : (nameOf.get(from) ?? from)
  const say = `Move ${count} ${count === 1 ? 'kit' : 'kits'} from ${source} to ${nameOf.get(to) ?? to}.`
  return { from: from === 'stock' ? null : from, to, count, say }
}

/** Kits needed from now to each half hour, to the close. */
function trackOf(facts: LineFacts, need: KitNeed): KitsAheadView['track'] {
  const steps = Math.ceil(need.minutesToClose / 30)
  return Array.from({ length: steps + 1 }, (_, step) => {
    const minutes = Math.min(step * 30, need.minutesToClose)
    const { low, typical, high } = rangeOf(need.comingWithin(minutes))
    const { certain } = need
    return {
      ms: Math.round(facts.nowMs + minutes * minuteMs),
      need: { low: low + certain, typical: typical + certain, high: high + certain },
    }
  })
}

/** Samplers more from a time of day on; one that has passed means now. */
function extraOf(
  facts: LineFacts,
  extra: readonly { count: number; at: string | null }[],
): ExtraSamplers[] {
  return extra.map(({ count, at }) => ({
    count,
    fromMinutes: at === null ? 0 : Math.max(0, minuteOfDay(at) - facts.minute),
  }))
}

export const aheadQueries = {
  ahead: ({ log, station, now }, { extra }) => {
    const facts = lineFacts(log, station, now)
    const pace = facts.paceOf('')
    const outlook = outlookOf(restOfDay(facts), [], pace, lineDraws())
    const whatIf =
      extra.length === 0
        ? null
        : outlookOf(restOfDay(facts), extraOf(facts, extra), pace, lineDraws())
    const joining = joiningShare(facts)
    const need: KitNeed = {
      certain: animalsWithoutKit(log),
      comingWithin: (minutes) => shareOf(comingWithin(facts, minutes), joining),
      minutesToClose: minutesToClose(facts),
    }
    const view: AheadView = {
      nowMs: now,
      closesMs: Math.round(now + minutesToClose(facts) * minuteMs),
      came: facts.today.length,
      more: rangeOf(comingWithin(facts, minutesToClose(facts))),
      hours: hoursOf(facts, outlook),
      targetWaitMinutes: station.settings.targetWaitMinutes,
      staffing: staffingOf(facts, outlook),
      whatIf: whatIf && { ...viewOf(whatIf), say: sayOutlook(outlook, whatIf) },
      kits: kitsAhead({ log, facts, need }),
      obstacles: obstacles(log, facts),
    }
    return granted(view)
  },
} satisfies Partial<QueryHandlers>
