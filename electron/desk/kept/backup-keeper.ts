/**
 * Keeps a backup of the open log at a second place, over and over while people work: soon after each
 * change, but with a pause in proportion to how long a copy takes, so that a slow stick is not worn out.
 */
import { basename, join } from 'node:path'
import { aside } from '../../../db/aside.ts'
import type { Refusal, Result } from '../../../shared-types/result.ts'
import { granted, refused } from '../../../shared-types/result.ts'
import type { BackupView } from '../../../shared-types/views/safekeeping.ts'
import type { Shelf } from '../shelf.ts'
import type { KeptChoices } from './choices.ts'
import { areApart, isThere, logsIn, placeOf, placesAt } from './places.ts'

export interface KeeperDeps {
  /** Where the logs are. */
  readonly folder: string
  readonly shelf: Shelf
  readonly choices: KeptChoices
  readonly now: () => number
  /** The least pause between two backups, in milliseconds. */
  readonly pauseMs: number
  /** Told when there is something new to show. */
  readonly onNews: () => void
}

/** A copy takes at most this share of the time. */
const share = 10

export class BackupKeeper {
  readonly #deps: KeeperDeps
  readonly #offered = new Set<string>()
  #timer: NodeJS.Timeout | undefined
  #running: Promise<Result<number>> | undefined
  #isBehind = false
  #tookMs = 0
  #trouble: Refusal | null = null

  constructor(deps: KeeperDeps) {
    this.#deps = deps
  }

  /** Something was written: a backup is due before long. */
  changed(): void {
    this.#isBehind = true
    this.#plan()
  }

  /** A folder of this laptop that its person has picked in a dialog or named at the start. */
  offer(folder: string): void {
    this.#offered.add(folder)
    this.#deps.onNews()
  }

  /** Begins to keep backups at a place of the list. */
  async choose(mark: string): Promise<Result<number>> {
    const path = placesAt([...this.#offered]).get(mark)
    if (path === undefined)
      return refused(
        'place-gone',
        'That disk or folder is no longer there.',
        'Plug it in again, or choose another.',
        'place',
      )
    this.#deps.choices.change({ backup: path, apart: areApart(path, this.#deps.folder) })
    this.#trouble = null
    return this.renew()
  }

  /** Keeps no more backups; those that are there stay. */
  stop(): void {
    clearTimeout(this.#timer)
    this.#timer = undefined
    this.#trouble = null
    this.#deps.choices.change({ backup: null })
    this.#deps.onNews()
  }

  /** Makes a backup now, or waits for the one that is being made. */
  renew(): Promise<Result<number>> {
    this.#running ??= this.#renew().finally(() => {
      this.#running = undefined
      this.#deps.onNews()
      if (this.#isBehind) this.#plan()
    })
    return this.#running
  }

  /** The last backup before the log is put away, if one is due. */
  async finish(): Promise<void> {
    clearTimeout(this.#timer)
    this.#timer = undefined
    await this.#running
    if (this.#isBehind && this.#deps.choices.now.backup !== null) await this.renew()
    clearTimeout(this.#timer)
    this.#timer = undefined
  }

  /** The file of the open log's backup, or null where no place was chosen. */
  fileOf(log: string): string | null {
    const { backup } = this.#deps.choices.now
    return backup === null ? null : join(backup, log)
  }

  /** The folder of the backups, or null. */
  get folder(): string | null {
    return this.#deps.choices.now.backup
  }

  look(): BackupView {
    const { backup, apart, backedUp } = this.#deps.choices.now
    const open = this.#deps.shelf.openFile
    const paths = [...placesAt([...this.#offered]).values()].filter((path) => path !== backup)
    return {
      place: backup === null ? null : placeOf(backup),
      apart,
      others: paths.map(placeOf),
      found: backup === null ? [] : logsIn(backup),
      last: (open && backedUp[open]) || null,
      running: this.#running !== undefined,
      trouble: this.#trouble && { say: this.#trouble.say, next: this.#trouble.next },
    }
  }

  /**
   * Some systems leave an empty folder where a stick was, and a backup would go to the laptop's own disk
   * without a word.
   */
  #stickGone(): Result<never> | null {
    const { backup, apart } = this.#deps.choices.now
    if (backup !== null && isThere(backup) && (!apart || areApart(backup, this.#deps.folder)))
      return null
    return refused(
      'stick-gone',
      'The disk or stick for backups is not plugged in.',
      'Plug it in again; the desk goes on without it and catches up by itself.',
    )
  }

  #plan(): void {
    if (this.#timer || this.#running || this.#deps.choices.now.backup === null) return
    const wait = Math.max(this.#deps.pauseMs, share * this.#tookMs)
    this.#timer = setTimeout(() => {
      this.#timer = undefined
      void this.renew()
    }, wait)
    this.#timer.unref()
  }

  async #renew(): Promise<Result<number>> {
    const { shelf, choices, now } = this.#deps
    const log = shelf.log?.path
    const to = log && this.fileOf(basename(log))
    if (!log || !to) return noPlace()
    this.#isBehind = false
    const [atMs, began] = [now(), performance.now()]
    const made = this.#stickGone() ?? (await aside({ do: 'renew-backup', log, to }))
    this.#tookMs = performance.now() - began
    this.#trouble = made.ok ? null : made.refusal
    if (made.ok) {
      const last = { atMs, entries: made.value }
      choices.change({ backedUp: { ...choices.now.backedUp, [basename(log)]: last } })
    } else this.#isBehind = true
    return made.ok ? granted(made.value) : made
  }
}

function noPlace(): Result<never> {
  return refused(
    'no-backup-place',
    'No place for backups has been chosen on this laptop.',
    'Plug in a stick or disk, then the lead chooses it (station screen, Safekeeping).',
  )
}
