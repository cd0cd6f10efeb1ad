/** A folder like that of Electron's runtime for Linux, with nothing in it that runs. */
import { chmodSync, mkdirSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

/** What marks the fuses within the executable (electronjs.org/docs/latest/tutorial/fuses). */
const sentinel = 'dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX'
const version = '\u0001'
/** As Electron ships them: nine fuses, some of them on. */
const shipped = '101100001'

export function standInRuntime(): string {
  const folder = mkdtempSync(join(tmpdir(), 'duskline-runtime-'))
  const { version: release } = JSON.parse(
    readFileSync(join(import.meta.dirname, '../../node_modules/electron/package.json'), 'utf8'),
  ) as { version: string }
  const executable = `#!/bin/sh\nexit 0\n${sentinel}${version}${String.fromCharCode(shipped.length)}${shipped}\n`
  for (const [name, content] of [
    ['electron', executable],
    ['version', release],
    ['LICENSE', 'licence'],
    ['LICENSES.chromium.html', '<p>licences</p>'],
  ] as const)
    writeFileSync(join(folder, name), content)
  chmodSync(join(folder, 'electron'), 0o755)
  for (const each of ['locales', 'resources']) mkdirSync(join(folder, each))
  return folder
}
