/** Practising one role in a live morning: which role, and how fast its clock runs. */
import { z } from 'zod'

/** The work that the learner does; everybody else is simulated. */
export const PracticeRole = z.enum(['check-in', 'bench', 'lead'])
export type PracticeRole = z.infer<typeof PracticeRole>

/** How many minutes of practice pass in a minute; 0 is a pause. */
export const practiceSpeeds = [0, 1, 2, 5, 10, 20] as const
export const PracticeSpeed = z.literal(practiceSpeeds)
export type PracticeSpeed = z.infer<typeof PracticeSpeed>
