/** The people of a station: their roles, what they are trained for, when they work. */
import { z } from 'zod'
import { LocalDate, TimeOfDay } from './local-date.ts'
import { PersonId } from './sample-number.ts'

export const Role = z.enum(['lead', 'sampler', 'volunteer', 'office'])
export type Role = z.infer<typeof Role>

export const roleWords: Record<Role, string> = {
  lead: 'station lead',
  sampler: 'sampler',
  volunteer: 'volunteer',
  office: 'office',
}

/** What a sampler is trained to work on. A skinned head still has to serve the taxidermist. */
export const Training = z.enum(['deer', 'elk-and-moose', 'skinned-heads'])
export type Training = z.infer<typeof Training>

export const trainingWords: Record<Training, string> = {
  deer: 'deer',
  'elk-and-moose': 'elk and moose',
  'skinned-heads': 'skinned heads',
}

/** A short secret typed with gloves on: 4 to 8 digits. Kept only as an scrypt record, never in an entry. */
export const Pin = z.string().regex(/^\d{4,8}$/, '4 to 8 digits')

export const PersonName = z.string().trim().min(2).max(60)

export const Duty = z.enum(['on', 'break', 'off'])
export type Duty = z.infer<typeof Duty>

export const PersonAdded = z.strictObject({
  person: PersonId,
  name: PersonName,
  role: Role,
  training: z.array(Training),
})

export const PersonChanged = z.strictObject({
  person: PersonId,
  name: PersonName,
  role: Role,
  training: z.array(Training),
  active: z.boolean(),
})

export const PinSet = z.strictObject({ person: PersonId })

export const SignedIn = z.strictObject({ person: PersonId })

export const ShiftPlanned = z.strictObject({
  person: PersonId,
  date: LocalDate,
  from: TimeOfDay,
  to: TimeOfDay,
})

export const DutyChanged = z.strictObject({ person: PersonId, duty: Duty })

/** A person as the log knows them now. */
export interface PersonRecord {
  readonly person: PersonId
  readonly name: string
  readonly role: Role
  readonly training: readonly Training[]
  readonly active: boolean
  readonly duty: Duty
}
