import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { chmodSync, mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeAll, describe, expect, test } from 'vitest'
import { buildStale, screens } from '../../build/bundles.ts'
import { browserPath, openChromium } from './support/chromium.ts'
import { eventually } from './support/eventually.ts'

const root = join(import.meta.dirname, '../..')
const main = join(root, 'electron/loopback/main.ts')
const freshFolder = () => mkdtempSync(join(tmpdir(), 'duskline-logs-'))

interface Program {
  readonly process: ChildProcess
  readonly said: () => string
  /** Its exit code, once it has ended. */
  readonly ended: Promise<number | null>
}

beforeAll(() => buildStale(root, [screens]), 60_000)

const started: ChildProcess[] = []
afterEach(() => {
  for (const process of started.splice(0)) process.kill('SIGKILL')
})

/** The home of the test's own person, so that no mark of this laptop is left in another's. */
const XDG_DATA_HOME = freshFolder()

function start(args: readonly string[], env: NodeJS.ProcessEnv = {}): Program {
  const child = spawn(process.execPath, [main, ...args], {
    env: { ...process.env, XDG_DATA_HOME, ...env },
  })
  started.push(child)
  let text = ''
  const hear = (chunk: Buffer) => {
    text += chunk.toString()
  }
  child.stdout.on('data', hear)
  child.stderr.on('data', hear)
  const ended = once(child, 'exit').then(([code]) => code as number | null)
  return { process: child, said: () => text, ended }
}

async function addressOf(program: Program): Promise<string> {
  const line = /^Duskline is at (http:\/\/127\.0\.0\.1:\d+\/enter\?token=[\w-]+)$/m
  await eventually(program.said).toMatch(line)
  return line.exec(program.said())?.[1] ?? ''
}

describe('the program without a window', () => {
  test.skipIf(browserPath === undefined)(
    'prints where it is; there are the screens, with a live desk behind them',
    async () => {
      const program = start(['--folder', freshFolder(), '--no-window'])
      const browser = await openChromium()
      const page = await browser.newPage()
      const complaints: string[] = []
      page.on('console', (message) => {
        if (message.type() === 'error') complaints.push(message.text())
      })
      await page.goto(await addressOf(program))
      await eventually(() => page.title()).toContain('Duskline')
      await eventually(() => page.locator('h1').count()).toBeGreaterThan(0)
      expect(complaints).toEqual([])
      await browser.close()
    },
  )

  test.each(['SIGTERM', 'SIGINT'] as const)('ends cleanly on %s', async (signal) => {
    const program = start(['--folder', freshFolder(), '--no-window'])
    await addressOf(program)
    program.process.kill(signal)
    expect(await program.ended).toBe(0)
  })

  test.each([
    [['--no-window', '--port', 'x'], "from 0 to 65535, not 'x'"],
    [['--folder', '/dev/null/logs', '--no-window'], 'ENOTDIR'],
  ])('that cannot start says why and exits 1: %j', async (args, say) => {
    const program = start(args)
    expect(await program.ended).toBe(1)
    expect(program.said()).toContain(say)
  })

  test('that is open on a folder already is not started there again', async () => {
    const folder = freshFolder()
    const first = start(['--folder', folder, '--no-window'])
    await addressOf(first)
    const second = start(['--folder', folder, '--no-window'])
    expect(await second.ended).toBe(1)
    expect(second.said()).toContain('Duskline is already open on this folder')
    first.process.kill('SIGKILL')
    await first.ended
    await addressOf(start(['--folder', folder, '--no-window']))
  })

  test('without a folder named uses the one of its person', async () => {
    const program = start(['--no-window'])
    await addressOf(program)
    expect(readdirSync(join(XDG_DATA_HOME, 'duskline'))).toContain('this-laptop')
  })

  test('whose port is taken says so and exits 1', async () => {
    const other = createServer().listen(0, '127.0.0.1')
    await once(other, 'listening')
    const port = String((other.address() as AddressInfo).port)
    const program = start(['--folder', freshFolder(), '--no-window', '--port', port])
    expect(await program.ended).toBe(1)
    expect(program.said()).toContain(`Port ${port} is taken`)
    other.close()
  })
})

describe('the program with a window', () => {
  /** A browser that opens its windows unseen, and leaves word of its process. */
  function unseenBrowser(): { path: string; pid: () => number } {
    const folder = mkdtempSync(join(tmpdir(), 'duskline-browser-'))
    const path = join(folder, 'browser')
    const flags = '--headless=new --disable-dev-shm-usage'
    writeFileSync(path, `#!/bin/sh\necho $$ > ${folder}/pid\nexec ${browserPath} ${flags} "$@"\n`)
    chmodSync(path, 0o755)
    return { path, pid: () => Number(readFileSync(join(folder, 'pid'), 'utf8')) }
  }

  test.skipIf(browserPath === undefined)('ends when its last window has been closed', async () => {
    const browser = unseenBrowser()
    const program = start(['--folder', freshFolder()], { CHROME_PATH: browser.path })
    await addressOf(program)
    await new Promise((resolve) => setTimeout(resolve, 3000))
    process.kill(browser.pid())
    expect(await program.ended).toBe(0)
    expect(program.said()).not.toContain('did not open')
  })

  test('that does not open leaves the person with the address', async () => {
    const program = start(['--folder', freshFolder()], { CHROME_PATH: '/bin/false' })
    await eventually(program.said).toContain('The window did not open')
    program.process.kill('SIGTERM')
    expect(await program.ended).toBe(0)
  })

  test('where there is no browser asks for the address to be opened', async () => {
    const program = start(['--folder', freshFolder()], { CHROME_PATH: '' })
    await eventually(program.said).toContain('open that address in a browser')
  })
})
