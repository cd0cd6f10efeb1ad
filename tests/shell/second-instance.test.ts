import { expect, test, vi } from 'vitest'
import { machine } from './stand-in/electron.ts'

const createDesk = vi.hoisted(() => vi.fn())
vi.mock('electron', () => import('./stand-in/electron.ts'))
vi.mock('../../electron/desk/desk.ts', () => ({ createDesk }))

test('a program that is running already is not started again: one program, one log', async () => {
  machine.isFirstInstance = false
  await import('../../electron/shell/main.ts')
  expect(machine.exitCode).toBe(0)
  expect(machine.windows).toEqual([])
  expect(createDesk).not.toHaveBeenCalled()
})
