import { expect, test } from 'vitest'
import { readArguments } from '../../electron/shell/arguments.ts'

test.each([
  [['.', '--folder', 'logs'], 'logs', undefined],
  [['--folder=logs', '--inspect=0', '--no-sandbox'], 'logs', undefined],
  [['.'], 'usual', undefined],
  [['.', '--folder'], 'usual', undefined],
  [['/media/stick/station-26KRVA.stationlog'], '/media/stick', 'station-26KRVA.stationlog'],
])('started with %j, the logs are in %s, and the one to open is %s', (args, folder, file) => {
  expect(readArguments(args, 'usual')).toEqual({ folder, file })
})
