import { z } from 'zod'
import { LocalDate } from '../local-date.ts'
import { Duty, Role, Training } from '../person.ts'
import { DeskId, PersonId } from '../sample-number.ts'
import { StationSettings } from '../station.ts'

export const PersonView = z.strictObject({
  person: PersonId,
  name: z.string(),
  role: Role,
  training: z.array(Training),
  active: z.boolean(),
  duty: Duty,
  /** Today's shift, or null. */
  shift: z.strictObject({ from: z.string(), to: z.string() }).nullable(),
})
export type PersonView = z.infer<typeof PersonView>

export const PeopleView = z.strictObject({ people: z.array(PersonView) })

export const DayState = z.enum(['none', 'open', 'closed'])
export type DayState = z.infer<typeof DayState>

/** Who sits at this window, and at what station. */
export const WhoView = z.strictObject({
  person: PersonView.nullable(),
  station: z.strictObject({
    desk: DeskId,
    name: z.string(),
    zone: z.string(),
    practice: z.boolean(),
    /** An office that merges the logs of stations. */
    office: z.boolean(),
  }),
  day: z.strictObject({ date: LocalDate.nullable(), state: DayState }),
  today: LocalDate,
  nowMs: z.int(),
  settings: StationSettings,
  /** The commands this person's role may give. */
  may: z.array(z.string()),
})
export type WhoView = z.infer<typeof WhoView>
