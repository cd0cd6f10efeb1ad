import { spawn } from 'node:child_process'
import { once } from 'node:events'
import { readdirSync } from 'node:fs'
import { expect, test } from 'vitest'
import { holdFolder } from '../../db/folder-lock.ts'
import { refusal, tempFolder, value } from './temp-log.ts'

test('a folder is held by one program at a time, and free again when it lets go', () => {
  const folder = tempFolder()
  const letGo = value(holdFolder(folder))
  expect(refusal(holdFolder(folder))).toBe('folder-in-use')
  letGo()
  value(holdFolder(folder))()
})

test('a program that is killed leaves no mark that a person must clear away', async () => {
  const folder = tempFolder()
  const lock = new URL('../../db/folder-lock.ts', import.meta.url).href
  const hold = `import { holdFolder } from '${lock}'
    console.log(holdFolder(process.argv[1]).ok); setInterval(() => {}, 1000)`
  const args = ['--input-type=module', '--eval', hold, folder]
  const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'inherit'] })
  const [said] = (await once(child.stdout, 'data')) as [Buffer]
  expect(said.toString()).toBe('true\n')
  expect(refusal(holdFolder(folder))).toBe('folder-in-use')
  child.kill('SIGKILL')
  await once(child, 'exit')
  value(holdFolder(folder))()
  expect(readdirSync(folder)).toEqual(['.duskline-open'])
})
