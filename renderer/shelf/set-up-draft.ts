/** A station while it is being set up, step by step. */
import { z } from 'zod'
import type { CallInput } from '../../shared-types/desk-api.ts'
import { LocalDate, Zone } from '../../shared-types/local-date.ts'
import { PersonName, Pin } from '../../shared-types/person.ts'
import { DeskLetter, Season, StationCode } from '../../shared-types/sample-number.ts'
import {
  type SettingsDraft,
  type SettingsField,
  readSettings,
  usualSettings,
} from '../station/settings-draft.ts'

export interface SetUpDraft {
  readonly name: string
  readonly code: string
  readonly letter: string
  readonly season: string
  readonly zone: string
  readonly date: string
  readonly settings: SettingsDraft
  readonly kits: string
  readonly blankLabels: string
  readonly coolers: string
  readonly leadName: string
  readonly pin: string
  readonly pinAgain: string
}

/** The plain fields: all but the settings. */
export type PlainField = Exclude<keyof SetUpDraft, 'settings'>
export type SetUpErrors = Partial<Record<PlainField | SettingsField, string>>

/** A draft for today, with this computer's zone. */
export function newDraft(today: string, zone: string): SetUpDraft {
  return {
    name: '',
    code: '',
    letter: 'A',
    season: today.slice(2, 4),
    zone,
    date: today,
    settings: usualSettings,
    kits: '',
    blankLabels: '',
    coolers: '',
    leadName: '',
    pin: '',
    pinAgain: '',
  }
}

/** Three clear characters out of a station's name, to begin with: `Kestrel Valley` gives `KET`. */
export function suggestedCode(name: string): string {
  const clear = [...name.toUpperCase()].filter((letter) => DeskLetter.safeParse(letter).success)
  return [...new Set(clear)].slice(0, 3).join('')
}

const count = z
  .string()
  .trim()
  .regex(/^\d{1,6}$/)

const coolerCount = count.refine((typed) => Number(typed) <= 50)

const plainFields: Record<PlainField, { schema: z.ZodType; say: string }> = {
  name: { schema: z.string().trim().min(2).max(60), say: 'A name of 2 to 60 characters.' },
  code: {
    schema: StationCode,
    say: 'Three of A C D E F H J K M N P Q R T V W X Y 3 4 6 7 9.',
  },
  letter: { schema: DeskLetter, say: 'One of A C D E F H J K M N P Q R T V W X Y.' },
  season: { schema: Season, say: 'Two digits of the year, like 26.' },
  zone: { schema: Zone, say: 'A time zone by name, like America/Denver.' },
  date: { schema: LocalDate, say: 'The day the station opens.' },
  kits: { schema: count, say: 'A whole number; 0 if none have come yet.' },
  blankLabels: { schema: count, say: 'A whole number; 0 if none have come yet.' },
  coolers: { schema: coolerCount, say: 'A whole number up to 50; 0 if none have come yet.' },
  leadName: { schema: PersonName, say: 'A name of 2 to 60 characters.' },
  pin: { schema: Pin, say: '4 to 8 digits.' },
  pinAgain: { schema: z.string(), say: 'The two PINs differ: type both again.' },
}

export interface Step {
  readonly title: string
  readonly plain: readonly PlainField[]
  readonly settings: readonly SettingsField[]
}

export const steps: readonly Step[] = [
  {
    title: 'Station',
    plain: ['name', 'code', 'letter', 'season', 'zone', 'date'],
    settings: [],
  },
  { title: 'What is sampled', plain: [], settings: ['units', 'species'] },
  {
    title: 'How it is kept',
    plain: [],
    settings: [
      'tissues',
      'locationNeed',
      'laboratory',
      'askForResult',
      'holdHours',
      'limits',
      'targetWaitMinutes',
      'secondSigner',
    ],
  },
  {
    title: 'Counts and lead',
    plain: ['kits', 'blankLabels', 'coolers', 'leadName', 'pin', 'pinAgain'],
    settings: [],
  },
]

function isWrong(draft: SetUpDraft, field: PlainField): boolean {
  if (field === 'pinAgain') return draft.pin !== draft.pinAgain
  return !plainFields[field].schema.safeParse(draft[field]).success
}

/** What is wrong with the fields of one step. */
export function errorsOf(draft: SetUpDraft, step: Step): SetUpErrors {
  const plain = step.plain.filter((field) => isWrong(draft, field))
  const settings = readSettings(draft.settings)
  const wrong = settings.ok ? {} : settings.errors
  return Object.fromEntries([
    ...plain.map((field) => [field, plainFields[field].say]),
    ...step.settings.filter((field) => wrong[field]).map((field) => [field, wrong[field]]),
  ])
}

/** The command of a draft without errors; undefined if a step has any. */
export function commandOf(draft: SetUpDraft): CallInput<'station.setUp'> | undefined {
  const settings = readSettings(draft.settings)
  const wrong = steps.some((step) => Object.keys(errorsOf(draft, step)).length > 0)
  const date = LocalDate.safeParse(draft.date)
  if (wrong || !settings.ok || !date.success) return undefined
  return {
    name: draft.name,
    station: draft.code,
    letter: draft.letter,
    season: draft.season,
    zone: draft.zone,
    date: date.data,
    settings: settings.settings,
    kits: Number(draft.kits),
    blankLabels: Number(draft.blankLabels),
    coolers: Number(draft.coolers),
    lead: { name: draft.leadName, pin: draft.pin },
  }
}
