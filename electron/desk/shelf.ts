/** The shelf: the station logs in this laptop's folder, one of which may be open. */
import { existsSync, mkdirSync, readdirSync, renameSync, rmSync } from 'node:fs'
import { basename, join } from 'node:path'
import type { ReadableLog, WritableLog } from '../../db/connection.ts'
import { createLog } from '../../db/log/create.ts'
import { openLog } from '../../db/log/open.ts'
import { countEntries, latestStamp } from '../../db/log/read-entries.ts'
import { readLog } from '../../db/log/read-log.ts'
import { stationOf } from '../../db/read/station.ts'
import { granted, type Result, refused } from '../../shared-types/result.ts'
import type { DeskId } from '../../shared-types/sample-number.ts'
import type { ShelfView } from '../../shared-types/views/shelf.ts'
import { neverSetUp } from './refusals.ts'

const ending = '.stationlog'
type LogOnShelf = ShelfView['logs'][number]

export class Shelf {
  readonly #folder: string
  #open: WritableLog | null = null

  constructor(folder: string) {
    mkdirSync(folder, { recursive: true })
    this.#folder = folder
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
    if (!readdirSync(this.#folder).includes(file) || !file.endsWith(ending))
      return refused(
        'not-on-shelf',
        `There is no station log ${file} in the folder.`,
        'Choose a log of the list.',
        'file',
      )
    if (file === this.openFile && this.#open) return granted(this.#open)
    const opened = openLog(join(this.#folder, file))
    if (!opened.ok) return opened
    if (!stationOf(opened.value)) {
      opened.value.close()
      return neverSetUp(file)
    }
    this.shut()
    this.#open = opened.value
    return opened
  }

  /** Makes a new log under a name that is still free, and opens it. */
  create(name: string, desk: DeskId): Result<WritableLog> {
    const created = createLog(join(this.#folder, name + ending), desk)
    if (!created.ok) return created
    this.shut()
    this.#open = created.value
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
    if (this.#open && file === this.openFile) return described(file, this.#open)
    const read = readLog(join(this.#folder, file))
    if (!read.ok)
      return {
        file,
        desk: null,
        name: file,
        practice: false,
        entries: 0,
        lastMs: null,
        trouble: read.refusal.say,
      }
    try {
      return described(file, read.value)
    } finally {
      read.value.close()
    }
  }
}

function described(file: string, log: ReadableLog): LogOnShelf {
  const station = stationOf(log)
  const entries = countEntries(log)
  return {
    file,
    desk: log.desk,
    name: station?.name ?? file,
    practice: station?.practice ?? false,
    entries,
    lastMs: entries === 0 ? null : latestStamp(log).ms,
    trouble: station ? null : 'It was begun but never set up.',
  }
}
