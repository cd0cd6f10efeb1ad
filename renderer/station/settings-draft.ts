/** Station settings while they are being typed: numbers are text, and a species may have no ages yet. */
import { type AgeClass, Species } from '../../shared-types/animal.ts'
import { type Keeping, type LocationNeed, StationSettings } from '../../shared-types/station.ts'
import { type Kept, TissueSite } from '../../shared-types/tissue.ts'
import {
  type LineDraft,
  type LineErrors,
  lineDraftOf,
  lineFieldOf,
  lineInput,
  lineSays,
} from './line-draft.ts'
import { typedNumber } from './typed-number.ts'

export interface UnitDraft {
  /** Keeps a row's identity while its code is typed. */
  readonly id: number
  readonly code: string
  readonly name: string
  readonly mandatory: boolean
}

export type KeptOrNot = Kept | 'not-taken'

export interface SettingsDraft {
  readonly units: readonly UnitDraft[]
  readonly ages: Readonly<Record<Species, readonly AgeClass[]>>
  readonly tissues: Readonly<Record<TissueSite, KeptOrNot>>
  readonly locationNeed: LocationNeed
  readonly laboratory: string
  readonly askForResult: string
  readonly holdHours: string
  readonly limits: Readonly<Record<Keeping, { readonly low: string; readonly high: string }>>
  readonly targetWaitMinutes: string
  /** Whether a second person signs the close. */
  readonly secondSigner: boolean
  /** Left out at set-up: a station begins with what most do, and settles its line later. */
  readonly line?: LineDraft
}

/** What most stations begin with (common practice, no source); the laboratory's own limits go first. */
export const usualSettings: SettingsDraft = {
  units: [{ id: 1, code: '', name: '', mandatory: true }],
  ages: {
    'white-tailed-deer': ['yearling', 'adult'],
    'mule-deer': ['yearling', 'adult'],
    elk: ['yearling', 'adult'],
    moose: [],
  },
  tissues: { left: 'fresh', right: 'fresh', obex: 'not-taken' },
  locationNeed: 'unit-and-place',
  laboratory: '',
  askForResult:
    'Ask the wildlife office with the number on this stub. It can take weeks to a few months. Wait for the result before anyone eats the meat; local advice goes first.',
  holdHours: '48',
  limits: {
    chilled: { low: '0', high: '8' },
    frozen: { low: '-40', high: '-10' },
    room: { low: '5', high: '30' },
  },
  targetWaitMinutes: '30',
  secondSigner: true,
}

/** The draft that changes standing settings. */
export function draftOf(settings: StationSettings): SettingsDraft {
  const agesOf = (species: Species) =>
    settings.species.find((sampled) => sampled.species === species)?.ages ?? []
  const keptOf = (site: TissueSite) =>
    settings.tissues.find((taken) => taken.site === site)?.kept ?? 'not-taken'
  const limitsOf = ({ low, high }: { low: number; high: number }) => ({
    low: String(low),
    high: String(high),
  })
  return {
    ...settings,
    units: settings.units.map((unit, place) => ({ ...unit, id: place + 1 })),
    ages: {
      'white-tailed-deer': agesOf('white-tailed-deer'),
      'mule-deer': agesOf('mule-deer'),
      elk: agesOf('elk'),
      moose: agesOf('moose'),
    },
    tissues: { left: keptOf('left'), right: keptOf('right'), obex: keptOf('obex') },
    holdHours: String(settings.holdHours),
    limits: {
      chilled: limitsOf(settings.limits.chilled),
      frozen: limitsOf(settings.limits.frozen),
      room: limitsOf(settings.limits.room),
    },
    targetWaitMinutes: String(settings.targetWaitMinutes),
    secondSigner: settings.secondSigner !== false,
    line: settings.line && lineDraftOf(settings.line),
  }
}

function toInput(draft: SettingsDraft): unknown {
  const limitsIn = ({ low, high }: { low: string; high: string }) => ({
    low: typedNumber(low),
    high: typedNumber(high),
  })
  const { ages, ...rest } = draft
  return {
    ...rest,
    units: draft.units
      .filter((unit) => unit.code.trim() !== '' || unit.name.trim() !== '')
      .map(({ code, name, mandatory }) => ({ code, name, mandatory })),
    species: Species.options
      .filter((species) => ages[species].length > 0)
      .map((species) => ({ species, ages: ages[species] })),
    tissues: TissueSite.options
      .filter((site) => draft.tissues[site] !== 'not-taken')
      .map((site) => ({ site, kept: draft.tissues[site] })),
    holdHours: typedNumber(draft.holdHours),
    limits: {
      chilled: limitsIn(draft.limits.chilled),
      frozen: limitsIn(draft.limits.frozen),
      room: limitsIn(draft.limits.room),
    },
    targetWaitMinutes: typedNumber(draft.targetWaitMinutes),
    // Two sign unless the station says otherwise.
    secondSigner: draft.secondSigner ? undefined : false,
    line: draft.line && lineInput(draft.line),
  }
}

export type SettingsField = keyof StationSettings
export type SettingsErrors = Partial<Record<SettingsField, string>>

const says: Record<SettingsField, string> = {
  units: 'Give at least one unit a code of 1 to 12 characters.',
  species: 'Choose at least one age class of one species.',
  tissues: 'Choose at least one tissue that is taken.',
  locationNeed: 'Choose what the laboratory needs to know.',
  laboratory: 'Name the laboratory in 2 to 120 characters.',
  askForResult: 'Say in 5 to 200 characters how a hunter asks for the result.',
  holdHours: 'Hours between 1 and 240.',
  limits: 'Degrees between −90 and 60, the low limit under the high one.',
  targetWaitMinutes: 'Whole minutes between 1 and 600.',
  secondSigner: 'Choose who signs the close.',
  line: 'Correct what is marked about the line.',
}

function isField(name: PropertyKey | undefined): name is SettingsField {
  return typeof name === 'string' && Object.hasOwn(says, name)
}

/** Settings out of a draft, or what is wrong with it, field by field. */
export function readSettings(
  draft: SettingsDraft,
):
  | { ok: true; settings: StationSettings }
  | { ok: false; errors: SettingsErrors; lineErrors: LineErrors } {
  const read = StationSettings.safeParse(toInput(draft))
  if (read.success) return { ok: true, settings: read.data }
  const paths = read.error.issues.map(({ path }) => path)
  const fields = paths.map(([field]) => field).filter(isField)
  const lineFields = paths.filter(([field]) => field === 'line').map(lineFieldOf)
  return {
    ok: false,
    errors: Object.fromEntries(fields.map((field) => [field, says[field]])),
    lineErrors: Object.fromEntries(lineFields.map((field) => [field, lineSays[field]])),
  }
}
