/** The made-up days: a whole opening day, a morning that stops in its rush, a morning to practise in. */
import type { ArrivalRates } from './arrivals.ts'
import { dayPosts, morningPosts } from './crew.ts'

/** Minutes are counted from the beginning of the day. */
export interface DayShape {
  readonly arrivals: ArrivalRates
  readonly posts: typeof dayPosts
  /** When the last hunter has come, and dusk may begin once the line is empty. */
  readonly lastMinute: number
  /** Kits handed to each sampler at the start of a shift. */
  readonly firstKits: number
  /** When the lead adds a harvest unit, and trains a sampler for skinned heads. */
  readonly unitAdded: number
  readonly trainingAdded: number
  /** When a cooler that was left open in the sun is read. */
  readonly warmReading: number
}

/**
 * From six in the morning: some animals at mid-morning, far more when the light goes. That opening
 * days peak so is common practice, no source.
 */
export const openingDay: DayShape = {
  arrivals: {
    fromMinute: 60,
    stretch: 30,
    rates: [1, 2, 4, 6, 7, 7, 6, 5, 4, 3, 3, 2.5, 2, 2, 2.5, 3, 4, 6, 9, 13, 16, 15, 10, 5],
  },
  posts: dayPosts,
  lastMinute: 785,
  firstKits: 10,
  unitAdded: 255,
  trainingAdded: 400,
  warmReading: 480,
}

/** Two hours of quiet work, then a rush that outgrows the crew: in it the learner takes over. */
export const openingMorning: DayShape = {
  arrivals: {
    fromMinute: 45,
    stretch: 10,
    rates: [1, 1, 1, 1.2, 1.2, 1.4, 1.4, 1.6, 1.6, 1.8, 1.8, 10, 12, 13, 13],
  },
  posts: morningPosts,
  lastMinute: 400,
  firstKits: 6,
  unitAdded: 70,
  trainingAdded: 90,
  warmReading: 115,
}

/** Two hours with one rush in their middle, short enough to be practised to the end. */
export const practiceHours: DayShape = {
  ...openingMorning,
  arrivals: { fromMinute: 45, stretch: 15, rates: [2, 3, 4, 7, 9, 7, 4, 3] },
}
