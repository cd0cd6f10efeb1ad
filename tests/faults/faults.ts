/** The faults, each done to a desk at work, and what it left behind. */
import { cpSync, existsSync, readdirSync, renameSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { readLog } from '../../db/log/read-log.ts'
import { type Account, accountFor, addAccounts } from './account.ts'
import { clearAway, newFolder, protect, pull, smallDisk } from './media.ts'
import { DeskAtWork, type Said } from './work.ts'

export interface Outcome {
  readonly fault: string
  readonly rounds: number
  readonly account: Account
  /** What people were told, each once. */
  readonly told: readonly string[]
  /** Backups that were found and could not be read back. */
  readonly badBackups: number
}

/** A fault that could not be done here, and why. */
export interface Skipped {
  readonly fault: string
  readonly why: string
}

const logsIn = (folder: string) =>
  readdirSync(folder).filter((name) => name.endsWith('.stationlog'))
const logIn = (folder: string) => join(folder, logsIn(folder)[0] ?? 'none.stationlog')
const unique = (texts: readonly string[]) => [...new Set(texts)]
const pause = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms))

/** Backups that stand under their final name must be whole, whenever the stick was pulled. */
function badBackups(folder: string): number {
  if (!existsSync(folder)) return 0
  return logsIn(folder).filter((file) => {
    const read = readLog(join(folder, file))
    if (read.ok) read.value.close()
    return !read.ok
  }).length
}

function outcome(
  fault: string,
  rounds: number,
  account: Account,
  said: readonly Said[],
  bad = 0,
): Outcome {
  const told = unique(said.flatMap(({ refusals, backups }) => [...refusals, ...backups]))
  return { fault, rounds, account, told, badBackups: bad }
}

const roundsALog = 25

/** The desk is killed at any moment: while it opens, sets up, writes, checkpoints or backs up. */
export async function killed(rounds: number, chance: () => number): Promise<Outcome> {
  const accounts: Account[] = []
  const said: Said[] = []
  let [folder, stick] = [newFolder(), newFolder()]
  let told: string[] = []
  let bad = 0
  for (let round = 1; round <= rounds; round += 1) {
    const desk = new DeskAtWork({ folder, seed: round, backup: stick })
    if (chance() < 0.2) await pause(chance() * 900)
    else await desk.saysMore(1 + Math.floor(chance() * 60))
    await pause(chance() * 4)
    const each = await desk.kill()
    said.push(each)
    told = [...told, ...each.acknowledged]
    bad += badBackups(stick)
    if (round % roundsALog !== 0 && round !== rounds) continue
    if (told.length > 0) accounts.push(accountFor(logIn(folder), told))
    for (const gone of [folder, stick]) rmSync(gone, { recursive: true, force: true })
    ;[folder, stick, told] = [newFolder(), newFolder(), []]
  }
  return outcome('killed at a random moment', rounds, addAccounts(accounts), said, bad)
}

/** A limit on the size of files stands for a disk without room where none can be mounted. */
export async function fileLimit(): Promise<Outcome> {
  const folder = newFolder()
  const desk = new DeskAtWork({ folder, seed: 1 }, 1400)
  const said = await desk.ended()
  const account = accountFor(logIn(folder), said.acknowledged)
  rmSync(folder, { recursive: true, force: true })
  return outcome('no file may grow further', 1, account, [said])
}

export async function diskFull(): Promise<Outcome | Skipped> {
  const fault = 'disk full'
  const disk = smallDisk(2500)
  if (!disk) return { fault, why: 'this user may not mount a small disk' }
  const said = await new DeskAtWork({ folder: disk, seed: 1 }).ended()
  const account = accountFor(logIn(disk), said.acknowledged)
  clearAway(disk)
  return outcome(fault, 1, account, [said])
}

export async function readOnly(): Promise<Outcome | Skipped> {
  const fault = 'medium write-protected'
  const disk = process.getuid?.() === 0 ? smallDisk(20_000) : newFolder()
  if (!disk) return { fault, why: 'this user may not mount a small disk' }
  const first = new DeskAtWork({ folder: disk, seed: 1 })
  await first.saysMore(40)
  const before = await first.kill()
  protect(disk)
  const after = await new DeskAtWork({ folder: disk, seed: 2, refusals: 1 }).ended()
  const account = accountFor(logIn(disk), before.acknowledged)
  clearAway(disk)
  return outcome(fault, 1, account, [before, after])
}

/** The log's file goes while the desk works in it; a power cut comes soon after. */
async function beneath(
  fault: string,
  take: (path: string, old: string) => void,
): Promise<Outcome | Skipped> {
  if (process.platform === 'win32') return { fault, why: 'this system keeps open files in place' }
  const [folder, aside] = [newFolder(), newFolder()]
  const desk = new DeskAtWork({ folder, seed: 1 })
  await desk.saysMore(20)
  const old = join(aside, 'old.stationlog')
  cpSync(logIn(folder), old)
  await desk.saysMore(60)
  take(logIn(folder), old)
  await desk.saysMore(60)
  const said = await desk.kill()
  const rescued = logsIn(folder).find((file) => file.includes('-rescued')) ?? 'none'
  const account = accountFor(join(folder, rescued), said.acknowledged)
  for (const gone of [folder, aside]) rmSync(gone, { recursive: true, force: true })
  return outcome(fault, 1, account, [said])
}

export const fileDeleted = () => beneath('file deleted beneath', (path) => rmSync(path))
export const fileReplaced = () =>
  beneath('file replaced beneath', (path, old) => renameSync(old, path))

/** The stick goes in the middle of a backup, again and again, and comes back. */
export async function stickPulled(rounds: number, chance: () => number): Promise<Outcome> {
  const folder = newFolder()
  const mounted = smallDisk(40_000)
  const stick = mounted ?? newFolder()
  const desk = new DeskAtWork({ folder, seed: 1, backup: stick })
  await desk.saysMore(10)
  let bad = 0
  for (let round = 0; round < rounds; round += 1) {
    await pause(chance() * 120)
    if (mounted) pull(stick)
    else renameSync(stick, `${stick}.pulled`)
    await desk.saysMore(30)
    if (!mounted) renameSync(`${stick}.pulled`, stick)
    bad += badBackups(stick)
    await desk.saysMore(30)
  }
  const said = await desk.kill()
  bad += badBackups(stick)
  const account = accountFor(logIn(folder), said.acknowledged)
  clearAway(stick)
  rmSync(folder, { recursive: true, force: true })
  return outcome('backup stick pulled half way', rounds, account, [said], bad)
}

export async function clockJumps(): Promise<Outcome> {
  const folder = newFolder()
  const desk = new DeskAtWork({ folder, seed: 1, clock: 'jumping', refusals: 500 })
  await desk.saysMore(400)
  const said = await desk.kill()
  const account = accountFor(logIn(folder), said.acknowledged)
  rmSync(folder, { recursive: true, force: true })
  return outcome('clock set forward and back', 1, account, [said])
}

/** The lock on the folder keeps two windows of the program apart; the log itself must hold as well. */
export async function twoPrograms(): Promise<Outcome> {
  const folder = newFolder()
  const first = new DeskAtWork({ folder, seed: 1, refusals: 500 })
  await first.saysMore(5)
  const second = new DeskAtWork({ folder, seed: 2, refusals: 500 })
  await Promise.all([first.saysMore(150), second.saysMore(150)])
  const said = [await first.kill(), await second.kill()]
  const acknowledged = said.flatMap((each) => each.acknowledged)
  const account = accountFor(logIn(folder), acknowledged)
  rmSync(folder, { recursive: true, force: true })
  return outcome('two programs on one log', 1, account, said)
}
