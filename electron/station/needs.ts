/** What needs the lead now, the most urgent first; each with what to do and where. */
import type { AnimalRecord } from '../../shared-types/animal.ts'
import type { DayRecord, Keeping } from '../../shared-types/station.ts'
import type { Need } from '../../shared-types/views/common.ts'
import type { CrewMember } from '../../shared-types/views/line.ts'
import { whenThere } from './local-time.ts'

export interface LeadView {
  readonly nowMs: number
  readonly zone: string
  readonly targetWaitMinutes: number
  readonly day: DayRecord | null
  readonly waiting: readonly AnimalRecord[]
  readonly crew: readonly CrewMember[]
  readonly kitsInStock: number
  /** Animals in the line whose place of harvest the laboratory cannot use. */
  readonly placesMissing: number
  /** Bags that have lain on the bench for longer than they should. */
  readonly bagsLate: number
  readonly coolers: readonly {
    readonly name: string
    readonly keeping: Keeping
    readonly bags: number
    readonly holdUntilMs: number | null
    readonly lastReading: {
      readonly celsius: number
      readonly excursion: boolean
      readonly ms: number
    } | null
  }[]
}

const minuteMs = 60_000
const hourMs = 60 * minuteMs
/** A bag warms on a bench; half an hour is common practice, no source. */
export const benchLimitMs = 30 * minuteMs
/** Coolers are read at least this often while they hold bags: common practice, no source. */
const readingEveryMs = 4 * hourMs

export function needsOfLead(view: LeadView): Need[] {
  const needs = [
    ...dayNeeds(view),
    ...holdNeeds(view),
    ...temperatureNeeds(view),
    ...kitNeeds(view),
    ...benchNeeds(view),
    ...waitNeeds(view),
    ...placeNeeds(view),
  ]
  return needs.toSorted((a, b) => Number(b.urgent) - Number(a.urgent))
}

function dayNeeds({ day }: LeadView): Need[] {
  if (day?.state === 'open') return []
  return [
    {
      code: 'no-day-open',
      // A day closed in order is the end of the work, not an alarm.
      urgent: day === null,
      say: day ? `The day ${day.date} is closed.` : 'No day is open.',
      next: 'Open the day to check animals in.',
      screen: 'station',
    },
  ]
}

function holdNeeds({ coolers, nowMs, zone }: LeadView): Need[] {
  return coolers.flatMap(({ name, holdUntilMs }) => {
    if (holdUntilMs === null || holdUntilMs - nowMs > 12 * hourMs) return []
    const over = holdUntilMs <= nowMs
    return [
      {
        code: over ? 'hold-over' : 'hold-soon',
        urgent: holdUntilMs - nowMs <= 2 * hourMs,
        say: `Cooler ${name}: the hold clock of its oldest bag ${over ? 'ran out' : 'runs out'} ${whenThere(holdUntilMs, nowMs, zone)}.`,
        next: 'Freeze its bags or hand them to the courier.',
        screen: 'coolers' as const,
      },
    ]
  })
}

function temperatureNeeds({ coolers, nowMs }: LeadView): Need[] {
  return coolers.flatMap(({ name, bags, lastReading }): Need[] => {
    if (lastReading?.excursion)
      return [
        {
          code: 'excursion',
          urgent: true,
          say: `Cooler ${name} read ${lastReading.celsius} °C, outside its limits.`,
          next: 'Put it right and read it again.',
          screen: 'coolers',
        },
      ]
    if (bags === 0 || (lastReading && nowMs - lastReading.ms < readingEveryMs)) return []
    return [
      {
        code: 'reading-due',
        urgent: false,
        say: lastReading
          ? `Cooler ${name} was last read ${Math.floor((nowMs - lastReading.ms) / hourMs)} hours ago.`
          : `Cooler ${name} holds bags and was never read.`,
        next: 'Read its temperature.',
        screen: 'coolers',
      },
    ]
  })
}

/** On duty and at a bench: a lead counts only once they took kits or an animal in hand. */
function isSampling({ duty, role, kits, animals }: CrewMember): boolean {
  return duty === 'on' && (role !== 'lead' || kits > 0 || animals.length > 0)
}

function kitNeeds({ crew, kitsInStock, waiting }: LeadView): Need[] {
  const working = crew.filter(isSampling)
  const short = working.filter(({ kitsLow }) => kitsLow !== 'enough')
  const needs: Need[] = short.map(({ name, kits, kitsLow }) => ({
    code: kitsLow === 'none' ? 'no-kits-in-hand' : 'few-kits-in-hand',
    urgent: kitsLow === 'none',
    say:
      kits <= 0
        ? `${name} has no kits in hand.`
        : `${name} has only ${kits} ${kits === 1 ? 'kit' : 'kits'} in hand.`,
    next: kitsInStock > 0 ? 'Hand out kits from stock.' : 'Stock is empty: ask for more kits.',
    screen: 'kits',
  }))
  const inHand = working.reduce((sum, { kits }) => sum + Math.max(0, kits), 0)
  if (kitsInStock + inHand < waiting.length)
    needs.push({
      code: 'kits-short-of-line',
      urgent: true,
      say: `${waiting.length} animals wait and only ${kitsInStock + inHand} kits are left.`,
      next: 'Ask for more kits now.',
      screen: 'kits',
    })
  return needs
}

function benchNeeds({ bagsLate: late }: LeadView): Need[] {
  if (late === 0) return []
  return [
    {
      code: 'bags-on-bench',
      urgent: true,
      say: `${late} sealed ${late === 1 ? 'bag has' : 'bags have'} lain on the bench for over half an hour.`,
      next: 'Scan them into a cooler.',
      screen: 'coolers',
    },
  ]
}

/** Asked while the hunter is still here: afterwards the sample is commonly not tested. */
function placeNeeds({ placesMissing: count }: LeadView): Need[] {
  if (count === 0) return []
  return [
    {
      code: 'place-missing',
      urgent: false,
      say: `${count} ${count === 1 ? 'animal in the line has' : 'animals in the line have'} no place of harvest that the laboratory can use.`,
      next: 'Ask the hunters before they drive off, and correct the check-in.',
      screen: 'line',
    },
  ]
}

function waitNeeds({ waiting, nowMs, targetWaitMinutes, crew }: LeadView): Need[] {
  const over = waiting.filter(({ arrivedMs }) => nowMs - arrivedMs > targetWaitMinutes * minuteMs)
  const free = crew.filter((each) => isSampling(each) && each.animals.length === 0)
  const needs: Need[] = []
  if (over.length > 0 && free.length > 0)
    needs.push({
      code: 'free-and-waiting',
      urgent: true,
      say: `${free.map(({ name }) => name).join(', ')} ${free.length === 1 ? 'is' : 'are'} free while ${over.length} ${over.length === 1 ? 'animal waits' : 'animals wait'} longer than ${targetWaitMinutes} minutes.`,
      next: 'Assign the longest waiting.',
      screen: 'line',
    })
  if (waiting.length > 0 && !crew.some(({ duty }) => duty === 'on'))
    needs.push({
      code: 'nobody-on-duty',
      urgent: true,
      say: 'Animals wait and no sampler is on duty.',
      next: 'Put samplers on duty.',
      screen: 'station',
    })
  return needs
}
