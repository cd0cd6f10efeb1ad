/** How the line runs, while it is being typed: numbers are text, the profile is one line of text. */
import type { LineSettings } from '../../shared-types/line.ts'
import { typedNumber } from './typed-number.ts'

export interface LineDraft {
  readonly mandatoryFirst: boolean
  readonly overtakenAtMost: string
  readonly spoilingHours: string
  readonly deer: string
  readonly elkOrMoose: string
  readonly between: string
  readonly damagedHeadTimes: string
  readonly opens: string
  readonly closes: string
  /** `07:00 1, 08:00 4`: from when on, and how busy against the others. */
  readonly profile: string
  readonly expectedAnimals: string
  /** As a percentage of the animals expected. */
  readonly expectedSpread: string
  readonly breakMinutes: string
  readonly samplersAtTable: string
}

export function lineDraftOf(line: LineSettings): LineDraft {
  const { usualMinutes } = line
  return {
    mandatoryFirst: line.mandatoryFirst,
    overtakenAtMost: String(line.overtakenAtMost),
    spoilingHours: String(line.spoilingHours),
    deer: String(usualMinutes.deer),
    elkOrMoose: String(usualMinutes.elkOrMoose),
    between: String(usualMinutes.between),
    damagedHeadTimes: String(line.damagedHeadTimes),
    opens: line.opens,
    closes: line.closes,
    profile: line.profile.map(({ from, weight }) => `${from} ${weight}`).join(', '),
    expectedAnimals: String(line.expectedAnimals),
    expectedSpread: String(Math.round(line.expectedSpread * 100)),
    breakMinutes: String(line.breakMinutes),
    samplersAtTable: String(line.samplersAtTable),
  }
}

/** The settings as typed, for the schema to take or refuse. */
export function lineInput(draft: LineDraft): unknown {
  const spread = typedNumber(draft.expectedSpread)
  return {
    mandatoryFirst: draft.mandatoryFirst,
    overtakenAtMost: typedNumber(draft.overtakenAtMost),
    spoilingHours: typedNumber(draft.spoilingHours),
    usualMinutes: {
      deer: typedNumber(draft.deer),
      elkOrMoose: typedNumber(draft.elkOrMoose),
      between: typedNumber(draft.between),
    },
    damagedHeadTimes: typedNumber(draft.damagedHeadTimes),
    opens: draft.opens,
    closes: draft.closes,
    profile: profileInput(draft.profile),
    expectedAnimals: typedNumber(draft.expectedAnimals),
    expectedSpread: typeof spread === 'number' ? spread / 100 : spread,
    breakMinutes: typedNumber(draft.breakMinutes),
    samplersAtTable: typedNumber(draft.samplersAtTable),
  }
}

function profileInput(text: string): unknown {
  return text
    .split(',')
    .filter((stretch) => stretch.trim() !== '')
    .map((stretch) => {
      const [from = '', weight = ''] = stretch.trim().split(/\s+/)
      return { from, weight: typedNumber(weight) }
    })
}

/** A field of the draft for a field of the settings that was refused. */
export function lineFieldOf(path: readonly PropertyKey[]): keyof LineDraft {
  const [, field, part] = path
  return (field === 'usualMinutes' ? part : field) as keyof LineDraft
}

export type LineErrors = Partial<Record<keyof LineDraft, string>>

export const lineSays: Record<keyof LineDraft, string> = {
  mandatoryFirst: 'Choose what goes first.',
  overtakenAtMost: 'A whole number from 0 to 50.',
  spoilingHours: 'Hours from 1 to 240.',
  deer: 'Minutes from 0.5 to 120.',
  elkOrMoose: 'Minutes from 0.5 to 120.',
  between: 'Minutes from 0.5 to 120.',
  damagedHeadTimes: 'A number from 1 to 10.',
  opens: 'A time of day, like 07:00.',
  closes: 'A time of day, like 20:00.',
  profile: 'Times and numbers from 0 to 1000, like 07:00 1, 08:00 4.',
  expectedAnimals: 'A number from 1 to 20,000.',
  expectedSpread: 'A percentage from 0 to 300.',
  breakMinutes: 'Whole minutes from 1 to 240.',
  samplersAtTable: 'A whole number from 1 to 20.',
}
