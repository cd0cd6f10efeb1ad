import { copyFileSync, renameSync, rmSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { expect, test } from 'vitest'
import { rescue } from '../../db/log/file-mark.ts'
import { transact } from '../../db/log/append.ts'
import { countEntries } from '../../db/log/read-entries.ts'
import { readLog } from '../../db/log/read-log.ts'
import { verifyLog } from '../../db/log/verify.ts'
import type { WritableLog } from '../../db/connection.ts'
import { draft } from '../../shared-types/entry.ts'
import { granted } from '../../shared-types/result.ts'
import { lead, morning, refusal, tempLog, value, work } from './temp-log.ts'

const signedIn = draft('person.signed-in', { person: lead })

const act = (log: WritableLog) =>
  transact(log, { now: morning, by: lead }, (tx) => granted(tx.append([signedIn]).length))

/** What someone may do to a log's files while a desk has them open, on a system that lets them. */
const deeds: [string, (path: string) => void][] = [
  ['deleted', (path) => rmSync(path)],
  ['moved', (path) => renameSync(path, join(dirname(path), 'elsewhere'))],
  [
    'replaced by an older copy',
    (path) => {
      copyFileSync(path, `${path}.old`)
      renameSync(`${path}.old`, path)
    },
  ],
  ['robbed of its WAL', (path) => rmSync(`${path}-wal`)],
]

test.skipIf(process.platform === 'win32').each(deeds)(
  'a log that is %s beneath the desk takes no further action, and all it took is rescued',
  (_deed, doIt) => {
    const log = tempLog()
    work(log, [signedIn, signedIn, signedIn])
    doIt(log.path)
    expect(refusal(act(log))).toBe('file-gone')
    const saved = value(readLog(value(rescue(log))))
    expect(countEntries(saved)).toBe(3)
    expect(verifyLog(saved).whole).toBe(true)
    saved.close()
  },
)

test('a log whose files are as they were goes on, also after its WAL was emptied into it', () => {
  const log = tempLog()
  for (let times = 0; times < 3; times += 1) expect(value(act(log))).toBe(1)
})
