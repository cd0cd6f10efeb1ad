import { expect, test } from 'vitest'
import { readFolder } from '../../electron/shell/folder.ts'

test.each([
  [['.', '--folder', 'logs'], 'logs'],
  [['--folder=logs', '--inspect=0', '--no-sandbox'], 'logs'],
  [['.'], 'usual'],
  [['.', '--folder'], 'usual'],
])('the folder of the station logs, when started with %j, is %s', (args, folder) => {
  expect(readFolder(args, 'usual')).toBe(folder)
})
