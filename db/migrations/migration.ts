/** One step from an older form of the file to the next. A step that was shipped is never edited. */
import type { Connection } from '../connection.ts'

export interface Migration {
  /** By tens, so that a repair fits in between. The highest one is the file's `user_version`. */
  readonly number: number
  /**
   * `log`: tables that hold facts; the step runs once in a file's life.
   * `read-tables`: tables folded from the entries; the step runs again at every rebuild.
   */
  readonly makes: 'log' | 'read-tables'
  readonly up: (connection: Connection) => void
}
