/** What stands in the way of the line's suggestions and forecasts, and what to do about it. */
import { trainingWords } from '../../shared-types/person.ts'
import { grouped } from '../../shared-types/sample-number.ts'
import type { Need } from '../../shared-types/views/common.ts'
import { trainingNeeded } from './training.ts'
import type { Waiting } from './line-order.ts'
import { suffices } from './skills.ts'

export interface LinePeople {
  readonly name: string
  readonly skills: number
  readonly duty: 'on' | 'break' | 'off'
  readonly kits: number
}

export interface ObstacleView {
  readonly line: readonly Waiting[]
  /** Everyone who takes samples and is here or expected today. */
  readonly people: readonly LinePeople[]
  readonly nowMs: number
  /** The latest wall time in the log. */
  readonly lastMs: number
}

const minuteMs = 60_000
/** A log that is written by the minute has a gap like this only when the clock was moved. */
const jumpMinutes = 12 * 60
/** A laptop that corrects itself moves its clock by less than this. */
const toleratedMinutes = 10

/** The most urgent first. */
export function obstaclesOf(view: ObstacleView): Need[] {
  return [...clockNeeds(view), ...shiftNeeds(view), ...trainingNeeds(view), ...kitNeeds(view)]
}

function clockNeeds({ nowMs, lastMs, line }: ObstacleView): Need[] {
  const minutes = Math.round((nowMs - lastMs) / minuteMs)
  const isBack = minutes < -toleratedMinutes
  if (!isBack && !(minutes > jumpMinutes && line.length > 0)) return []
  return [
    {
      code: 'clock-jump',
      urgent: true,
      say: isBack
        ? `The laptop's clock reads ${-minutes} minutes earlier than the last entry, so waits are counted wrong.`
        : `The last entry is ${Math.round(minutes / 60)} hours old and animals wait, so the laptop's clock may have jumped.`,
      next: 'Compare it with a phone and set it right, or accept the clock on the station screen.',
      screen: 'station',
    },
  ]
}

function shiftNeeds({ line, people }: ObstacleView): Need[] {
  if (line.length === 0 || people.length > 0) return []
  return [
    {
      code: 'nobody-on-shift',
      urgent: true,
      say: 'Nobody on shift takes samples, so no wait can be told.',
      next: 'Put a sampler on duty or plan a shift.',
      screen: 'station',
    },
  ]
}

function trainingNeeds({ line, people }: ObstacleView): Need[] {
  if (people.length === 0) return []
  const stuck = line.filter(({ needs }) => !people.some(({ skills }) => suffices(skills, needs)))
  const [first] = stuck
  if (!first) return []
  const lacked = trainingNeeded(first.animal.facts).map((each) => trainingWords[each])
  const others = stuck.length > 1 ? ` and ${stuck.length - 1} more` : ''
  return [
    {
      code: 'no-training-here',
      urgent: true,
      say: `Nobody on shift is trained for animal ${grouped(first.animal.animal)} (${lacked.join(' and ')})${others}.`,
      next: 'Call somebody who is, or tell the hunter where else the head can go.',
      screen: 'station',
    },
  ]
}

function kitNeeds({ line, people }: ObstacleView): Need[] {
  const here = people.filter(({ duty }) => duty === 'on')
  if (line.length === 0 || here.length === 0 || here.some(({ kits }) => kits > 0)) return []
  return [
    {
      code: 'no-kits-at-the-line',
      urgent: true,
      say: 'Nobody on duty has a kit in hand, so nobody can begin.',
      next: 'Hand out kits from stock, or ask for more.',
      screen: 'kits',
    },
  ]
}
