import { z } from 'zod'

/** Milliseconds since 1970-01-01 UTC; screens show it as local time with the station's zone. */
export const Ms = z.int().nonnegative()

/** A file made by the desk, as the screens and the terminal receive it. */
export const PdfFile = z.strictObject({ name: z.string(), base64: z.string() })
export type PdfFile = z.infer<typeof PdfFile>

export const TextFile = z.strictObject({ name: z.string(), text: z.string() })
export type TextFile = z.infer<typeof TextFile>

/** Where a need is dealt with. */
export const Screen = z.enum([
  'line',
  'check-in',
  'bench',
  'kits',
  'coolers',
  'close',
  'handoff',
  'station',
  'coverage',
  'results',
  'discrepancies',
])
export type Screen = z.infer<typeof Screen>

/** Something that wants a person now: what is wrong, what to do, and where. */
export const Need = z.strictObject({
  code: z.string(),
  urgent: z.boolean(),
  say: z.string(),
  next: z.string(),
  screen: Screen,
})
export type Need = z.infer<typeof Need>
