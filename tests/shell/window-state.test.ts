import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test, vi } from 'vitest'
import { readWindowState } from '../../electron/shell/window-state.ts'

vi.mock('electron', () => ({
  screen: { getAllDisplays: () => [{ workArea: { x: 0, y: 0, width: 1366, height: 728 } }] },
}))

const path = join(mkdtempSync(join(tmpdir(), 'duskline-window-')), 'window.json')
const state = { x: 20, y: 10, width: 1200, height: 700, maximized: true }

test('the window opens where it stood', () => {
  writeFileSync(path, JSON.stringify(state))
  expect(readWindowState(path)).toEqual(state)
})

test.each([
  ['on a screen that is no longer plugged in', { ...state, x: 1366 }],
  ['with only its edge on the screen', { ...state, x: 1300 }],
  ['smaller than its screens can be read', { ...state, width: 200 }],
  ['from words that are no state', 'torn'],
])('but not %s', (_how, kept) => {
  writeFileSync(path, JSON.stringify(kept))
  expect(readWindowState(path)).toBeUndefined()
})
