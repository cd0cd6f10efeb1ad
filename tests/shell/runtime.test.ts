import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { _electron } from 'playwright-core'
import { expect, test } from 'vitest'
import { findElectron } from '../../build/electron-runtime.ts'
import { sandboxFlags } from '../../electron/loopback/app-window.ts'

const electron = findElectron()
const root = join(import.meta.dirname, '../..')

test.skipIf(electron === undefined)('the real Electron runtime opens the desk', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'duskline-logs-'))
  const program = await _electron.launch({
    executablePath: electron,
    cwd: root,
    args: ['.', '--folder', folder, ...sandboxFlags()],
  })
  const page = await program.firstWindow()
  expect(page.url()).toBe('app://duskline/')
  expect(await page.evaluate(() => Object.keys(window.duskline ?? {}))).toEqual(['call', 'watch'])
  expect(await page.evaluate(() => window.duskline?.call('shelf.look', {}))).toMatchObject({
    ok: true,
  })
  await program.close()
})
