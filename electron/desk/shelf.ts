/** The shelf: the station logs in this laptop's folder, one of which may be open. */
import { existsSync, mkdirSync, readdirSync, renameSync, rmSync } from 'node:fs'
import { basename, join } from 'node:path'
import type { ReadableLog, WritableLog } from '../../db/connection.ts'
import { createLog } from '../../db/log/create.ts'
import { openLog } from '../../db/log/open.ts'
import { rescue } from '../../db/log/file-mark.ts'
import {
  countEntries,
  type Head,
  hasEntry,
  headOf,
  latestStamp,
} from '../../db/log/read-entries.ts'
import { type Glance, glanceAt } from '../../db/log/glance.ts'
import { openToRead, readLog } from '../../db/log/read-log.ts'
import { latestFormat } from '../../db/migrations/list.ts'
import { stationOf } from '../../db/read/station.ts'
import { storing } from '../../db/storage-refusal.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import { type DeskId, nobodysDesk } from '../../shared-types/sample-number.ts'
import type { ShelfView } from '../../shared-types/views/shelf.ts'
import { takeLease } from './lease.ts'
import { neverSetUp, noLogOpen, noOfficeYet } from './refusals.ts'

const ending = '.stationlog'
type LogOnShelf = ShelfView['logs'][number]

export class Shelf {
  readonly #folder: string
  #open: WritableLog | null = null

  readonly #laptop: string

  /** Folders of other logs that this laptop's person picked outside the screens, to merge from. */
  readonly offered = new Set<string>()

  /** `laptop` tells this one from others; `free` leaves logs to whichever opens them next. */
  constructor(folder: string, laptop: string) {
    mkdirSync(folder, { recursive: true })
    this.#folder = folder
    this.#laptop = laptop
  }

  /** The log being worked in, or null. */
  get log(): WritableLog | null {
    return this.#open
  }

  get openFile(): string | null {
    return this.#open ? basename(this.#open.path) : null
  }

  /** Every log in the folder, with what is wrong with those that cannot be opened. */
  list(): LogOnShelf[] {
    return readdirSync(this.#folder)
      .filter((file) => file.endsWith(ending))
      .toSorted()
      .map((file) => this.#describe(file))
  }

  /** Puts the open log away and opens another. A file name only: never a path from outside. */
  open(file: string): Result<WritableLog> {
    if (file === this.openFile && this.#open) return granted(this.#open)
    const opened = this.openUnheld(file)
    if (!opened.ok) return opened.refusal.code === 'newer-version' ? this.#openToRead(file) : opened
    const refusal = this.#olderCopy(opened.value) ?? takeLease(opened.value, this.#laptop)
    if (refusal) {
      opened.value.close()
      return refusal
    }
    this.putOut(opened.value)
    return opened
  }

  /** Whether the open log is of a newer version, which this one can show but must not write. */
  get isReadOnly(): boolean {
    return this.#open !== null && this.#open.format > latestFormat
  }

  #openToRead(file: string): Result<WritableLog> {
    const opened = openToRead(this.pathOf(file))
    if (opened.ok) this.putOut(opened.value)
    return opened
  }

  /** Opens a log whichever laptop goes on with it. The caller puts it out or closes it. */
  openUnheld(file: string): Result<WritableLog> {
    if (!this.isLogName(file) || !existsSync(this.pathOf(file))) return notOnShelf(file)
    if (file === this.openFile) this.shut()
    const opened = openLog(this.pathOf(file))
    if (!opened.ok) return opened
    const { desk } = opened.value
    if (desk !== nobodysDesk && stationOf(opened.value)) return opened
    opened.value.close()
    return desk === nobodysDesk ? noOfficeYet(file) : neverSetUp(file)
  }

  /** Makes a log the one that is worked in. */
  putOut(log: WritableLog): void {
    this.shut()
    this.#open = log
  }

  /** Whether a name is one that a log of this folder can have: never a path that leads elsewhere. */
  isLogName(file: string): boolean {
    return file.endsWith(ending) && basename(file) === file && !file.includes('\\')
  }

  pathOf(file: string): string {
    return join(this.#folder, file)
  }

  /**
   * Goes on in a copy of what the open log holds, when its file was taken away beneath the desk.
   * Answers with the name of the new file.
   */
  rescue(): Result<string> {
    const lost = this.#open
    if (!lost) return noLogOpen()
    const saved = storing(() => rescue(lost))
    const opened = saved.ok ? openLog(saved.value) : saved
    if (!opened.ok) return opened
    this.putOut(opened.value)
    return granted(basename(opened.value.path))
  }

  /** A copy of this desk's log that stopped earlier than another on this shelf must not go on. */
  #olderCopy(log: WritableLog): Result<never> | null {
    const own = basename(log.path)
    const head = headOf(log, log.desk)
    const rivals = readdirSync(this.#folder).filter(
      (file) => this.isLogName(file) && file !== own && file.includes(log.desk),
    )
    const newer = head && rivals.find((file) => goesFurther(this.pathOf(file), log.desk, head))
    return newer ? olderCopy(own, newer) : null
  }

  /** Makes a new log under a name that is still free, and opens it. */
  create(name: string, desk: DeskId): Result<WritableLog> {
    const created = createLog(this.pathOf(name + ending), desk)
    if (!created.ok) return created
    takeLease(created.value, this.#laptop)
    this.putOut(created.value)
    return created
  }

  /** Takes in a log that was made apart, under its name or the next one that is free, and opens it. */
  adopt(path: string): Result<WritableLog> {
    const name = basename(path, ending)
    let file = name + ending
    for (let count = 2; existsSync(join(this.#folder, file)); count += 1)
      file = `${name}-${count}${ending}`
    renameSync(path, join(this.#folder, file))
    return this.open(file)
  }

  shut(): void {
    this.#open?.close()
    this.#open = null
  }

  /** Takes away a log that was made a moment ago and could not be begun: it holds no entry. */
  dropUnused(): void {
    const log = this.#open
    if (!log || countEntries(log) > 0) return
    this.shut()
    for (const part of ['', '-wal', '-shm']) rmSync(log.path + part, { force: true })
  }

  #describe(file: string): LogOnShelf {
    if (this.#open && file === this.openFile) return described(file, atOneLook(this.#open))
    const glance = glanceAt(join(this.#folder, file))
    if (glance !== null) return described(file, glance)
    const read = readLog(join(this.#folder, file))
    if (!read.ok)
      return {
        file,
        desk: null,
        name: file,
        practice: false,
        office: false,
        entries: 0,
        lastMs: null,
        trouble: read.refusal.say,
      }
    try {
      return described(file, atOneLook(read.value))
    } finally {
      read.value.close()
    }
  }
}

function notOnShelf(file: string): Result<never> {
  return refused(
    'not-on-shelf',
    `There is no station log ${file} in the folder.`,
    'Choose a log of the list.',
    'file',
  )
}

function olderCopy(file: string, newer: string): Result<never> {
  return refused(
    'older-copy',
    `${file} is an older copy of ${newer}, which has gone on since.`,
    `Open ${newer}. Going on in both would give one number twice.`,
    'file',
  )
}

function goesFurther(path: string, desk: DeskId, head: Head): boolean {
  const read = readLog(path)
  if (!read.ok) return false
  const theirs = headOf(read.value, desk)
  const further = theirs !== null && theirs.seq > head.seq
  const isSameChain = further && hasEntry(read.value, { desk, ...head })
  read.value.close()
  return isSameChain
}

/** What a glance at its file would show of a log that is open. */
function atOneLook(log: ReadableLog): Glance {
  const entries = countEntries(log)
  return {
    desk: log.desk,
    entries,
    lastMs: entries === 0 ? null : latestStamp(log).ms,
    station: stationOf(log),
  }
}

function described(file: string, { desk, station, entries, lastMs }: Glance): LogOnShelf {
  return {
    file,
    desk,
    name: station?.name ?? file,
    practice: station?.practice ?? false,
    office: station?.office ?? false,
    entries,
    lastMs,
    trouble: troubleOf(desk, station !== null),
  }
}

function troubleOf(desk: DeskId, isSetUp: boolean): string | null {
  if (desk === nobodysDesk) return 'Merged; no office has taken it up yet.'
  return isSetUp ? null : 'It was begun but never set up.'
}
