/** How safe this desk is: its backup, the contacts it keeps, the laptop it lives on. */
import { z } from 'zod'
import { Ms } from './common.ts'

/** A place for backups as screens know it: a name and a mark, never a path. */
export const BackupPlace = z.strictObject({ mark: z.string(), name: z.string() })
export type BackupPlace = z.infer<typeof BackupPlace>

export const BackupView = z.strictObject({
  /** The place the lead chose, or null. */
  place: BackupPlace.nullable(),
  /** Whether it is on another disk than the log. */
  apart: z.boolean(),
  /** The station logs that lie there. */
  found: z.array(z.string()),
  /** Other disks and sticks that are plugged in, and folders chosen on this laptop. */
  others: z.array(BackupPlace),
  /** The last backup of the open log that was read back, or null. */
  last: z.strictObject({ atMs: Ms, entries: z.int() }).nullable(),
  running: z.boolean(),
  /** Why the last try failed and what to do, or null. */
  trouble: z.strictObject({ say: z.string(), next: z.string() }).nullable(),
})
export type BackupView = z.infer<typeof BackupView>

export const DrillView = z.strictObject({
  file: z.string(),
  entries: z.int(),
  /** Entries that the working log has and the backup has not yet. */
  behind: z.int(),
  whole: z.boolean(),
  findings: z.array(z.string()),
})
export type DrillView = z.infer<typeof DrillView>

/**
 * Where the key to the contacts is. `none`: nothing is sealed yet; `key-store`: with the operating
 * system; `beside`: in a file of this laptop alone; `memory`: until the program ends; `locked`: a
 * passphrase is needed.
 */
export const SealState = z.enum(['none', 'key-store', 'beside', 'memory', 'locked'])
export type SealState = z.infer<typeof SealState>

export const ContactsView = z.strictObject({
  kept: z.int(),
  seal: SealState,
  hasPassphrase: z.boolean(),
})
export type ContactsView = z.infer<typeof ContactsView>

/** The lights a screen can be read in: by day, by headlamp, and with black on white. */
export const Light = z.enum(['day', 'night', 'contrast'])
export type Light = z.infer<typeof Light>
