/** A whole practice day in a folder: per desk the log and the documents that its lead would print. */
import { granted, type Result } from '../../../shared-types/result.ts'
import type { DeskId } from '../../../shared-types/sample-number.ts'
import { practiceDay } from '../../station/practice/plan.ts'
import { createDesk } from '../desk.ts'
import { playScript } from './player.ts'

export interface PlayedDesk {
  readonly desk: DeskId
  readonly animals: number
  /** The path of its log. */
  readonly log: string
  /** The moment of its last entry. */
  readonly endMs: number
}

export interface DayWish {
  readonly seed: number
  readonly animals: number
  readonly desks: number
  /** A folder that exists. */
  readonly folder: string
  readonly progress: (desk: DeskId, done: number, total: number) => void
}

/** Plays an invented opening day, desk after desk. Refuses as the desk does. */
export async function playPracticeDay(wish: DayWish): Promise<Result<PlayedDesk[]>> {
  const played: PlayedDesk[] = []
  for (const script of practiceDay(wish)) {
    const { desk, animals, steps } = script
    const progress = (done: number, total: number) => wish.progress(desk, done, total)
    const log = await playScript(script, { folder: wish.folder, createDesk, progress })
    if (!log.ok) return log
    played.push({ desk, animals, log: log.value, endMs: steps.at(-1)?.atMs ?? 0 })
  }
  return granted(played)
}
