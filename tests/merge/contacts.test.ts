import { createHash } from 'node:crypto'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { connectionOf, type WritableLog } from '../../db/connection.ts'
import { contactOf, keepContact, noteSealKey, sealKeysOf } from '../../db/kept-apart.ts'
import { transact } from '../../db/log/append.ts'
import { createLog } from '../../db/log/create.ts'
import { readLog } from '../../db/log/read-log.ts'
import { mergeLogs } from '../../db/merge/merge.ts'
import { draft, type EntryDraft } from '../../shared-types/entry.ts'
import { LocalDate } from '../../shared-types/local-date.ts'
import { granted } from '../../shared-types/result.ts'
import { animalNumber } from '../../shared-types/sample-number.ts'
import { desk, morning, otherDesk, tempFolder, value } from '../db/temp-log.ts'
import { factsOf } from '../support/station.ts'

const day = LocalDate.parse('2026-11-14')

const sealed = (salt: string, details: string) => ({
  salt,
  details,
  digest: createHash('sha256').update(salt).update(details).digest('hex'),
})

function append(log: WritableLog, drafts: readonly EntryDraft[], kept?: ReturnType<typeof sealed>) {
  value(
    transact(log, { now: morning, by: null }, (tx) => {
      if (kept) {
        keepContact(tx, kept)
        noteSealKey(tx, { id: 'key-1', underPassphrase: 'under words' })
      }
      return granted(tx.append(drafts))
    }),
  )
}

/** A log of one animal whose hunter left a contact. */
function logWith(folder: string, of: typeof desk, kept: ReturnType<typeof sealed>): string {
  const path = join(folder, of)
  const log = value(createLog(path, of))
  const animal = animalNumber(of, 1)
  const body = { animal, day, facts: factsOf(), contact: kept.digest, noSample: null }
  append(log, [draft('animal.checked-in', body)], kept)
  log.close()
  return path
}

test('contacts and their keys come along to the office; one that its digest does not prove does not', () => {
  const folder = tempFolder()
  const kept = sealed('salt', 'sealed words')
  const path = logWith(folder, desk, kept)
  const forged = value(createLog(join(folder, 'forged'), otherDesk))
  connectionOf(forged)
    .prepare('INSERT INTO contact VALUES (?, ?, ?)')
    .run('f'.repeat(64), 'salt', 'other')
  forged.close()
  const out = join(folder, 'merged')
  value(mergeLogs({ out, files: [path, join(folder, 'forged')], office: null }))
  const log = value(readLog(out))
  expect(contactOf(log, kept.digest)).toEqual(kept)
  expect(contactOf(log, 'f'.repeat(64))).toBeNull()
  expect(sealKeysOf(log)).toEqual([{ id: 'key-1', underPassphrase: 'under words' }])
  log.close()
})

test('a contact that a station has erased does not come back with an older copy of its log', () => {
  const folder = tempFolder()
  const [mine, theirs] = [sealed('a', 'mine'), sealed('b', 'theirs')]
  const before = logWith(folder, desk, mine)
  const other = logWith(folder, otherDesk, theirs)
  const purging = value(createLog(join(folder, 'purging'), desk))
  append(purging, [draft('contacts.purged', { upTo: day, contacts: 1 })])
  purging.close()
  for (const files of [
    [before, other, join(folder, 'purging')],
    [join(folder, 'purging'), other, before],
  ]) {
    const out = join(folder, `merged-${files.indexOf(before)}`)
    value(mergeLogs({ out, files, office: null }))
    const merged = value(readLog(out))
    expect(contactOf(merged, mine.digest)).toBeNull()
    expect(contactOf(merged, theirs.digest)).toEqual(theirs)
    merged.close()
  }
})
