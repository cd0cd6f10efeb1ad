import { describe, expect, test } from 'vitest'
import { readOptions } from '../../electron/loopback/options.ts'

describe('the command line of the browser host', () => {
  test('names the folder of the station logs; the rest has a default', () => {
    expect(readOptions(['--folder', 'logs'])).toEqual({ folder: 'logs', port: 0, window: true })
  })

  test('takes a port, and no window', () => {
    const options = readOptions(['--folder=logs', '--port=8080', '--no-window'])
    expect(options).toEqual({ folder: 'logs', port: 8080, window: false })
  })

  test.each([
    [[], '--folder DIR'],
    [['--folder=logs', '--port=65536'], 'from 0 to 65535'],
    [['--folder=logs', '--port='], 'from 0 to 65535'],
    [['--folder=logs', '--windows'], '--windows'],
    [['--folder=logs', 'extra'], 'extra'],
  ])('is refused in words when it says anything else: %j', (args, say) => {
    expect(() => readOptions(args)).toThrow(say)
  })
})
