/** A whole practice day: per desk its log, in a folder that a person named. */
import { mkdtempSync, renameSync, rmSync } from 'node:fs'
import { basename, join } from 'node:path'
import { granted, type Result } from '../../../shared-types/result.ts'
import type { DeskId } from '../../../shared-types/sample-number.ts'
import { practiceDay } from '../../station/practice/plan.ts'
import type { DeskDeps } from '../call.ts'
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
  const apart = mkdtempSync(join(wish.folder, '.practice-'))
  try {
    return await playDesks(wish, apart)
  } finally {
    rmSync(apart, { recursive: true, force: true })
  }
}

/** What a desk keeps for itself stays apart; its log and the key to its contacts are brought out. */
async function playDesks(wish: DayWish, apart: string): Promise<Result<PlayedDesk[]>> {
  const keyed = (deps: DeskDeps) => createDesk({ ...deps, keyFolder: wish.folder })
  const played: PlayedDesk[] = []
  for (const script of practiceDay(wish)) {
    const { desk, animals, steps } = script
    const progress = (done: number, total: number) => wish.progress(desk, done, total)
    const made = await playScript(script, { folder: apart, createDesk: keyed, progress })
    if (!made.ok) return made
    const log = join(wish.folder, basename(made.value))
    renameSync(made.value, log)
    played.push({ desk, animals, log, endMs: steps.at(-1)?.atMs ?? 0 })
  }
  return granted(played)
}
