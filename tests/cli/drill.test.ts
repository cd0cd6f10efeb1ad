import { copyFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { draft } from '../../shared-types/entry.ts'
import { lead, tempFolder, tempLog, work } from '../db/temp-log.ts'
import { answer, digest, duskline } from './run.ts'

const signedIn = draft('person.signed-in', { person: lead })

test('a backup is restored for a try: it is whole, and so many entries behind the log', async () => {
  const log = tempLog()
  work(log, [signedIn, signedIn])
  log.close()
  const backup = join(tempFolder(), 'stick.stationlog')
  copyFileSync(log.path, backup)
  const before = digest(backup)
  const told = answer(await duskline('drill', backup, log.path, '--json'))
  expect(told).toMatchObject({ ok: true, value: { entries: 2, behind: 0, whole: true } })
  expect((await duskline('drill', backup)).out).toContain(
    '2 entries, nothing of the desk is missing',
  )
  expect(digest(backup)).toBe(before)
})

test('a backup that would not bring the desk back is refused, with what to do', async () => {
  const torn = join(tempFolder(), 'stick.stationlog')
  writeFileSync(torn, 'SQLite format 3\0 and then nothing')
  const refused = await duskline('drill', torn)
  expect(refused.code).toBe(1)
  expect(refused.err).toContain('stick.stationlog')
})
