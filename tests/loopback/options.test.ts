import { describe, expect, test } from 'vitest'
import { readOptions } from '../../electron/loopback/options.ts'

describe('the command line of the browser host', () => {
  test('names the folder of the station logs; the rest has a default', () => {
    const usual = { backup: undefined, port: 0, window: true }
    expect(readOptions(['--folder', 'logs'], 'home')).toEqual({ folder: 'logs', ...usual })
    expect(readOptions([], 'home')).toEqual({ folder: 'home', ...usual })
  })

  test('takes a place for backups, a port, and no window', () => {
    const options = readOptions(['--backup=stick', '--port=8080', '--no-window'], 'home')
    expect(options).toEqual({ folder: 'home', backup: 'stick', port: 8080, window: false })
  })

  test.each([
    [['--folder=logs', '--port=65536'], 'from 0 to 65535'],
    [['--folder=logs', '--port='], 'from 0 to 65535'],
    [['--folder=logs', '--windows'], '--windows'],
    [['--folder=logs', 'extra'], 'extra'],
  ])('is refused in words when it says anything else: %j', (args, say) => {
    expect(() => readOptions(args, 'home')).toThrow(say)
  })
})
