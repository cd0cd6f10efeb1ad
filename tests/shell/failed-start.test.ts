import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test, vi } from 'vitest'
import { browserPath } from '../loopback/support/chromium.ts'
import { eventually } from '../loopback/support/eventually.ts'
import { machine } from './stand-in/electron.ts'

vi.mock('electron', () => import('./stand-in/electron.ts'))
vi.mock('../../electron/desk/desk.ts', () => ({ createDesk: vi.fn() }))

test.skipIf(browserPath === undefined)(
  'a program that cannot keep its logs says so and ends, rather than show an empty desk',
  async () => {
    process.env.XDG_DATA_HOME = join(mkdtempSync(join(tmpdir(), 'duskline-home-')), 'a-file')
    writeFileSync(process.env.XDG_DATA_HOME, 'in the way')
    await import('../../electron/shell/main.ts')
    await eventually(() => machine.exitCode).toBe(1)
    expect(machine.errors).toEqual([expect.stringContaining('Duskline cannot start: ENOTDIR')])
    expect(machine.windows).toEqual([])
  },
)
