/** What was chosen on this laptop and belongs to no log: the light of its screen, the place of its backups. */
import { join } from 'node:path'
import { z } from 'zod'
import { Light } from '../../../shared-types/views/safekeeping.ts'
import { readSmall, writeSmall } from './small-file.ts'

const Choices = z.object({
  light: Light.nullable().catch(null),
  /** The folder of the backups, or null. */
  backup: z.string().nullable().catch(null),
  /** Whether that folder is on another disk than the logs. */
  apart: z.boolean().catch(false),
  /** The last good backup of each log file: when, and how many entries it holds. */
  backedUp: z.record(z.string(), z.object({ atMs: z.int(), entries: z.int() })).catch({}),
})
export type Choices = z.infer<typeof Choices>

const nothingChosen: Choices = { light: null, backup: null, apart: false, backedUp: {} }

/** The choices of one folder. A medium that cannot be written forgets them at the end, no more. */
export class KeptChoices {
  readonly #path: string
  #now: Choices

  constructor(folder: string) {
    this.#path = join(folder, 'choices.json')
    this.#now = readSmall(this.#path, Choices) ?? nothingChosen
  }

  get now(): Choices {
    return this.#now
  }

  change(changed: Partial<Choices>): void {
    this.#now = { ...this.#now, ...changed }
    try {
      writeSmall(this.#path, this.#now)
    } catch {
      // A full or write-protected disk has its own refusals where it matters.
    }
  }
}
