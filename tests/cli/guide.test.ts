import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { tempFolder } from '../db/temp-log.ts'
import { duskline } from './run.ts'

test('the guide of a role is a PDF, and is never written over a file', async () => {
  const out = join(tempFolder(), 'guide.pdf')
  const made = await duskline('guide', '--role', 'volunteer', '--out', out)
  expect(made.code).toBe(0)
  expect(readFileSync(out).subarray(0, 5).toString()).toBe('%PDF-')
  expect((await duskline('guide', '--role', 'volunteer', '--out', out)).code).toBe(1)
  expect((await duskline('guide', '--role', 'mayor', '--out', out)).code).toBe(2)
})
