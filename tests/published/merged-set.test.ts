/**
 * The union of entries, held against two general-purpose CRDT libraries on the same inputs: Automerge
 * (Kleppmann, Beresford, "A Conflict-Free Replicated JSON Datatype", IEEE TPDS 28(10), 2017) and Yjs
 * (Nicolaescu, Jahns, Derntl, Klamma, "Near Real-Time Peer-to-Peer Shared Editing on Extensible Data
 * Types", GROUP 2016). Each holds a file's entries as a map and merges the maps by its own rules.
 */
import { join } from 'node:path'
import * as Automerge from '@automerge/automerge'
import { expect, test } from 'vitest'
import * as Y from 'yjs'
import { connectionOf } from '../../db/connection.ts'
import { readLog } from '../../db/log/read-log.ts'
import { mergeLogs } from '../../db/merge/merge.ts'
import { draft } from '../../shared-types/entry.ts'
import { personId } from '../../shared-types/sample-number.ts'
import { desk, value } from '../db/temp-log.ts'
import { type Fate, folderForAll, meet, playedLogs } from '../merge/histories.ts'

type Facts = Record<string, string>

function factsIn(path: string): Facts {
  const log = value(readLog(path))
  const rows = connectionOf(log)
    .prepare<[], { key: string; body: string }>(
      "SELECT desk || ' ' || seq || ' ' || hash AS key, body FROM entry ORDER BY 1",
    )
    .all()
  log.close()
  return Object.fromEntries(rows.map(({ key, body }) => [key, body]))
}

function byAutomerge(files: readonly Facts[]): Facts {
  const documents = files.map((facts) => Automerge.from<Facts>(facts))
  const merged = documents.reduce(
    (all, each) => Automerge.merge(all, each),
    Automerge.init<Facts>(),
  )
  return { ...merged }
}

function byYjs(files: readonly Facts[]): Facts {
  const merged = new Y.Doc()
  for (const facts of files) {
    const document = new Y.Doc()
    for (const [key, body] of Object.entries(facts)) document.getMap('facts').set(key, body)
    Y.applyUpdate(merged, Y.encodeStateAsUpdate(document))
  }
  return merged.getMap('facts').toJSON()
}

const dutyOf = (duty: 'on' | 'break') => [
  draft('duty.changed', { person: personId(desk, 1), duty }),
]

/** A copy, a file cut short, one with a middle missing, and a log that both its copies went on in. */
const fates: readonly Fate[] = [
  { is: 'copied' },
  { is: 'cut', at: 0.6 },
  { is: 'gap', from: 0.2, to: 0.4 },
  { is: 'went-on', at: 0.7, drafts: dutyOf('on') },
  { is: 'went-on', at: 0.7, drafts: dutyOf('break') },
]

test('Automerge and Yjs reach the same set of facts as a merge, from the same files in any order', async () => {
  const folder = folderForAll()
  const logs = await playedLogs(folder, { desks: 2, animals: 20 })
  const files = logs.flatMap((log, which) =>
    fates.map((fate, at) => {
      const path = join(folder, `${which}-${at}.stationlog`)
      meet(log, fate, path)
      return path
    }),
  )
  const out = join(folder, 'merged')
  value(mergeLogs({ out, files, office: null }))
  const ours = factsIn(out)
  const theirs = files.map(factsIn)
  for (const order of [theirs, theirs.toReversed()]) {
    expect(byAutomerge(order)).toEqual(ours)
    expect(byYjs(order)).toEqual(ours)
  }
}, 120_000)
