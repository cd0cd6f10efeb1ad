/**
 * The clock of a live practice morning: it runs faster than the laptop's, or stands still, but never
 * passes the laptop's own, so that the practice log can be opened again later.
 */
import type { PracticeSpeed } from '../../../../shared-types/practice.ts'

export interface PracticeClock {
  /** What the laptop's clock read when this speed was chosen. */
  readonly realMs: number
  /** What the practice clock read then. */
  readonly practiceMs: number
  readonly speed: PracticeSpeed
}

/** What the practice clock reads when the laptop's reads `realMs`. */
export function practiceTime(clock: PracticeClock, realMs: number): number {
  const passed = Math.max(0, realMs - clock.realMs)
  return Math.min(Math.max(realMs, clock.practiceMs), clock.practiceMs + passed * clock.speed)
}

/** The same clock at another speed from now on. */
export function atSpeed(clock: PracticeClock, realMs: number, speed: PracticeSpeed): PracticeClock {
  return { realMs, practiceMs: practiceTime(clock, realMs), speed }
}
