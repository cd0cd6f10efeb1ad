/** Where the station logs are. */
import { parseArgs } from 'node:util'

/** The folder named by `--folder DIR`, else `usual`. Chromium's own switches may stand beside it. */
export function readFolder(args: readonly string[], usual: string): string {
  const { values } = parseArgs({
    args: [...args],
    options: { folder: { type: 'string' } },
    strict: false,
    allowPositionals: true,
  })
  return typeof values.folder === 'string' ? values.folder : usual
}
