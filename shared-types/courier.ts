/** The person who drives the coolers to the laboratory. */
import { z } from 'zod'

export const Courier = z.strictObject({
  name: z.string().trim().min(2).max(80),
  organisation: z.string().trim().max(80),
  vehicle: z.string().trim().max(40),
})
export type Courier = z.infer<typeof Courier>
