/** The faults in short; `npm run faults` does each many times and prints a table. */
import { expect, test } from 'vitest'
import {
  clockJumps,
  diskFull,
  fileDeleted,
  fileLimit,
  fileReplaced,
  killed,
  type Outcome,
  readOnly,
  type Skipped,
  stickPulled,
  twoPrograms,
} from './faults.ts'

/** A row of chances, the same at every run. */
function chances(seed: number): () => number {
  let state = seed
  return () => {
    // The multiplier and modulus of MINSTD (Park and Miller 1988, revised 1993).
    state = (state * 48_271) % 2_147_483_647
    return state / 2_147_483_647
  }
}

const faults: [string, () => Promise<Outcome | Skipped>, string | null][] = [
  ['is killed at a random moment', () => killed(3, chances(7)), null],
  ['has a full disk', diskFull, 'disk-full'],
  ['may not let a file grow', fileLimit, 'disk-failed'],
  ['is on a write-protected medium', readOnly, 'medium-read-only'],
  ['has its file deleted beneath it', fileDeleted, 'file-gone'],
  ['has its file replaced beneath it', fileReplaced, 'file-gone'],
  ['has its backup stick pulled half way', () => stickPulled(2, chances(7)), null],
  ['has its clock set forward and back', clockJumps, 'clock-set-back'],
  ['shares its log with a second program', twoPrograms, null],
]

test.each(faults)(
  'a desk that %s loses nothing it confirmed, repeats nothing, and says what happened',
  { timeout: 180_000 },
  async (_fault, doIt, told) => {
    const outcome = await doIt()
    // Not every user may mount a small disk; `npm run faults` says which fault was not done.
    if ('why' in outcome) return
    const { account, badBackups } = outcome
    expect(account).toMatchObject({ lost: 0, twice: 0, whole: true })
    expect(account.acknowledged).toBeGreaterThan(0)
    expect(badBackups).toBe(0)
    if (told !== null) expect(outcome.told).toContain(told)
  },
)
