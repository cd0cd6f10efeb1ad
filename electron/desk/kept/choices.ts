/** What was chosen on this laptop and belongs to no log: light, tour, place of backups, printers. */
import { join } from 'node:path'
import { z } from 'zod'
import { StockName } from '../../../shared-types/label-stock.ts'
import { PrinterOffset } from '../../../shared-types/views/printing.ts'
import { Light } from '../../../shared-types/views/safekeeping.ts'
import { readSmall, writeSmall } from './small-file.ts'

const onPdf = { printer: null, stock: 'roll-51x25' }
const LabelsOn = z.object({ printer: z.string().nullable(), stock: StockName }).catch(onPdf)
const noPrinting = { chosen: { kits: onPdf, coolers: onPdf, badges: onPdf }, offsets: {} }

/** Where each kind of label is printed, and how far off its place each printer prints. */
const Printing = z
  .object({
    chosen: z.object({ kits: LabelsOn, coolers: LabelsOn, badges: LabelsOn }),
    offsets: z.record(z.string(), PrinterOffset).catch({}),
  })
  .catch(noPrinting)

const Choices = z.object({
  light: Light.nullable().catch(null),
  /** Whether someone took, or skipped, the tour. */
  toured: z.boolean().catch(false),
  /** The folder of the backups, or null. */
  backup: z.string().nullable().catch(null),
  /** Whether that folder is on another disk than the logs. */
  apart: z.boolean().catch(false),
  /** The last good backup of each log file: when, and how many entries it holds. */
  backedUp: z.record(z.string(), z.object({ atMs: z.int(), entries: z.int() })).catch({}),
  printing: Printing,
})
export type Choices = z.infer<typeof Choices>

const nothingChosen: Choices = {
  light: null,
  toured: false,
  backup: null,
  apart: false,
  backedUp: {},
  printing: noPrinting,
}

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
