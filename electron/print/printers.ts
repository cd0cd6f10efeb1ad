/** The printers of this laptop, as the desk sees them. */
import type { Result } from '../../shared-types/result.ts'

export interface PrinterFound {
  /** As the operating system names it. */
  readonly name: string
  /** As a person set it up; the same as the name where they did not say. */
  readonly words: string
  /** What stands in the way of printing on it now, in words; null for nothing. */
  readonly trouble: string | null
}

/** How a document fares that was handed to a printer. */
export type Progress = { readonly is: 'out' } | { readonly is: 'waiting'; readonly say: string }

export interface Handed {
  /** By what the printing system knows it; empty where it keeps none. */
  readonly job: string
  readonly printer: string
}

export interface Page {
  readonly widthMm: number
  readonly heightMm: number
}

export interface Printers {
  readonly list: () => Promise<Result<readonly PrinterFound[]>>
  /** Hands a PDF over, at its true size. Refuses `printer-gone`, `printing-failed`. */
  readonly send: (pdf: Uint8Array, printer: string, page: Page) => Promise<Result<Handed>>
  /** Refuses `printer-gone`. */
  readonly progress: (handed: Handed) => Promise<Result<Progress>>
  /** Takes back what has not come out yet, as far as the printing system can. */
  readonly cancel: (handed: Handed) => Promise<void>
}
