import { spawn } from 'node:child_process'
import { execPath } from 'node:process'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'
import { openLog } from '../../db/log/open.ts'
import { headOf } from '../../db/log/read-entries.ts'
import { readLog } from '../../db/log/read-log.ts'
import { verifyLog } from '../../db/log/verify.ts'
import { closing, desk, tempLog, value } from './temp-log.ts'

const writer = fileURLToPath(new URL('crash-writer.ts', import.meta.url))

/** Lets a desk work until it has acknowledged some actions, kills it, and answers with the last. */
async function killedAfter(path: string, actions: number): Promise<number> {
  const child = spawn(execPath, [writer, path], { stdio: ['ignore', 'pipe', 'inherit'] })
  let said = ''
  child.stdout.setEncoding('utf8')
  child.stdout.on('data', (text: string) => {
    said += text
    if (said.split('\n').length > actions) child.kill('SIGKILL')
  })
  await new Promise((resolve) => child.on('close', resolve))
  // The last line may be cut short by the kill.
  return Number(said.split('\n').slice(0, -1).at(-1))
}

// kill -9 is not a power cut: it shows that the order of writing is right, not that the disk obeys.
test('a desk that is killed at work has lost no action it acknowledged, and none is half there', async () => {
  const log = tempLog()
  log.close()
  let before = 0
  for (const actions of [1, 40, 300]) {
    const acknowledged = await killedAfter(log.path, actions)
    expect(acknowledged).toBeGreaterThan(before)
    const left = value(readLog(log.path))
    const seq = headOf(left, desk)?.seq ?? 0
    expect(seq).toBeGreaterThanOrEqual(acknowledged)
    expect(seq % 2).toBe(0)
    left.close()
    before = seq
  }
  const again = closing(value(openLog(log.path)))
  expect(verifyLog(again)).toMatchObject({ whole: true, entries: before })
})
