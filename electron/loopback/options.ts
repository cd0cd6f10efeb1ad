/** What can be said on the command line of this host. */
import { parseArgs } from 'node:util'

export interface Options {
  /** Where the station logs are. */
  readonly folder: string
  /** A folder that the lead may choose for backups; the screens can name none themselves. */
  readonly backup: string | undefined
  /** 0: any free port. */
  readonly port: number
  /** Whether to open a window, and to stop when the last one has closed. */
  readonly window: boolean
}

/**
 * Reads `--folder DIR`, `--backup DIR`, `--port N` and `--no-window`; the logs are in `usual` unless
 * said otherwise. Throws one plain sentence for anything else.
 */
export function readOptions(args: readonly string[], usual: string): Options {
  const { values } = parseArgs({
    args: [...args],
    options: {
      folder: { type: 'string', default: usual },
      backup: { type: 'string' },
      port: { type: 'string', default: '0' },
      'no-window': { type: 'boolean', default: false },
    },
  })
  const { folder, backup, port } = values
  return { folder, backup, port: readPort(port), window: !values['no-window'] }
}

function readPort(text: string): number {
  const port = /^\d{1,5}$/.test(text) ? Number(text) : Number.NaN
  if (port <= 65_535) return port
  throw new Error(`--port takes a number from 0 to 65535, not '${text}'.`)
}
