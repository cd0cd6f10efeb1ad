/**
 * The one way a station log's database is reached. A reader is given a `ReadableLog`, a writer a
 * `WritableLog`; both are nominal types, so a query cannot be handed a write.
 */
import Database from 'better-sqlite3'
import type { Result } from '../shared-types/result.ts'
import type { DeskId } from '../shared-types/sample-number.ts'

export type Connection = Database.Database

/** Marks the file as a station log in bytes 68 to 71 of its header: 'Dusk' in ASCII. */
export const applicationId = 0x4475736b

/** How long a command waits for another program that is writing, in milliseconds. */
const patienceMs = 2000

/** A log that can be read. Its connection is reached by `db` alone, through `connectionOf`. */
export class ReadableLog {
  readonly #connection: Connection
  /** The file it was read from. */
  readonly path: string
  /** The desk whose log this is, which signs what is appended here. */
  readonly desk: DeskId
  /** The format of the file as found: higher than `latestFormat` if a newer version wrote it. */
  readonly format: number

  constructor(connection: Connection, path: string, desk: DeskId, format: number) {
    this.#connection = connection
    this.path = path
    this.desk = desk
    this.format = format
  }

  static connectionOf(log: ReadableLog): Connection {
    return log.#connection
  }

  close(): void {
    this.#connection.close()
  }
}

/** A log that can also be written, by `transact`. */
export class WritableLog extends ReadableLog {
  /** Never there: it only keeps a reader's log from passing as a writer's. */
  declare private readonly writable: true
}

/** The connection of a log, for the files of `db` only. */
export function connectionOf(log: ReadableLog): Connection {
  return ReadableLog.connectionOf(log)
}

/**
 * Opens a database file for writing. WAL with `synchronous=FULL`: what a screen has confirmed
 * survives a power cut. FULL is set after WAL, because the library falls back to NORMAL in WAL.
 */
export function connectForWriting(path: string): Connection {
  return guarded(new Database(path, { fileMustExist: true, timeout: patienceMs }), (connection) => {
    connection.pragma('journal_mode = WAL')
    connection.pragma('synchronous = FULL')
    // A purged phone number leaves the file, not only the table.
    connection.pragma('secure_delete = ON')
  })
}

/** Settings for a file that is thrown away unless it is finished: no waiting for the disk, and no undo. */
export const forBulk = ['synchronous = OFF', 'journal_mode = OFF', 'cache_size = -32768']

/** Opens a part file with those settings; a new one is made if there is none. */
export function connectForBulk(path: string): Connection {
  return guarded(new Database(path), (connection) => {
    for (const setting of forBulk) connection.pragma(setting)
  })
}

/** Opens a file beside the program that is writing it; changes nothing in it. */
export function connectForReading(path: string): Connection {
  return guarded(new Database(path, { readonly: true, fileMustExist: true, timeout: patienceMs }))
}

/** A database of its own in memory, from a file's bytes or empty; nothing reaches the disk. */
export function connectInMemory(image?: Buffer): Connection {
  return guarded(new Database(image ?? ':memory:'))
}

/** Closes a connection again if what it was opened for is refused or fails. */
export function closedUnlessGranted<T>(connection: Connection, open: () => Result<T>): Result<T> {
  let kept = false
  try {
    const result = open()
    kept = result.ok
    return result
  } finally {
    if (!kept) connection.close()
  }
}

/** A log may come from a stranger's stick: its schema is not trusted to call functions. */
function guarded(connection: Connection, setUp?: (connection: Connection) => void): Connection {
  try {
    setUp?.(connection)
    connection.pragma('trusted_schema = OFF')
    connection.pragma('cell_size_check = ON')
    connection.pragma('foreign_keys = ON')
    // Else INSERT OR REPLACE could take an entry out past the trigger that refuses it.
    connection.pragma('recursive_triggers = ON')
    return connection
  } catch (error) {
    connection.close()
    throw error
  }
}
