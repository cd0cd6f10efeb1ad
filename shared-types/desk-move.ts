/** A desk that goes from one laptop to another, with its log. */
import { z } from 'zod'

/** The log leaves this laptop: from here on only the copy that was made then may go on. */
export const DeskMovedOut = z.strictObject({})

/** A laptop goes on with a log that another had: after a move, or because the other one is lost. */
export const DeskTakenOver = z.strictObject({
  was: z.enum(['moved', 'lost']),
  reason: z.string().max(200),
})
