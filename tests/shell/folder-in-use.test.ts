import { mkdirSync, mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test, vi } from 'vitest'
import { holdFolder } from '../../db/folder-lock.ts'
import { browserPath } from '../loopback/support/chromium.ts'
import { eventually } from '../loopback/support/eventually.ts'
import { machine } from './stand-in/electron.ts'

vi.mock('electron', () => import('./stand-in/electron.ts'))

test.skipIf(browserPath === undefined)(
  'a program whose folder another window of it has open says so and ends: one folder, one desk',
  async () => {
    process.env.XDG_DATA_HOME = mkdtempSync(join(tmpdir(), 'duskline-home-'))
    const folder = join(process.env.XDG_DATA_HOME, 'duskline')
    mkdirSync(folder)
    const held = holdFolder(folder)
    await import('../../electron/shell/main.ts')
    await eventually(() => machine.exitCode).toBe(1)
    expect(machine.errors).toEqual([
      expect.stringContaining('Duskline is already open on this folder'),
    ])
    expect(machine.windows).toEqual([])
    if (held.ok) held.value()
  },
)
