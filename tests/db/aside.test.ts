import { join } from 'node:path'
import { expect, test } from 'vitest'
import { aside } from '../../db/aside.ts'
import { draft } from '../../shared-types/entry.ts'
import { lead, tempFolder, tempLog, value, work } from './temp-log.ts'

const signedIn = draft('person.signed-in', { person: lead })

test('a log that the desk has open is verified beside it, while the desk goes on', async () => {
  const log = tempLog()
  work(log, [signedIn, signedIn])
  const verified = aside({ do: 'verify', log: log.path })
  work(log, [signedIn])
  expect(value(await verified)).toMatchObject({ whole: true })
})

test('where no other thread can be started, the work is done here rather than not at all', async () => {
  const log = tempLog()
  work(log, [signedIn])
  const to = join(tempFolder(), 'stick.stationlog')
  const missing = new URL('no-such-worker.js', import.meta.url)
  expect(value(await aside({ do: 'renew-backup', log: log.path, to }, missing))).toBe(1)
})
