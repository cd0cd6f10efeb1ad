/** What the program was started with. Chromium's own switches may stand beside it. */
import { basename, dirname } from 'node:path'
import { parseArgs } from 'node:util'

const ending = '.stationlog'

export interface Arguments {
  /** Where the station logs are. */
  readonly folder: string
  /** The log that the person opened from their desktop, or undefined. */
  readonly file: string | undefined
}

/**
 * The folder named by `--folder DIR`, else that of a log which was opened with the program, else
 * `usual`; of a log it opens the folder, so that its person sees what lies beside it.
 */
export function readArguments(args: readonly string[], usual: string): Arguments {
  const { values, positionals } = parseArgs({
    args: [...args],
    options: { folder: { type: 'string' } },
    strict: false,
    allowPositionals: true,
  })
  const log = positionals.find((each) => each.endsWith(ending))
  const named = typeof values.folder === 'string' ? values.folder : undefined
  return { folder: named ?? (log ? dirname(log) : usual), file: log && basename(log) }
}
