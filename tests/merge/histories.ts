/**
 * Histories to merge: opening days that were really played at several desks, then ill-treated as files
 * are: copied and worked in on both laptops, cut short, with a middle missing, altered.
 */
import { copyFileSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import fc, { type Arbitrary } from 'fast-check'
import { afterAll } from 'vitest'
import { type Connection, connectionOf } from '../../db/connection.ts'
import { transact } from '../../db/log/append.ts'
import { openLog } from '../../db/log/open.ts'
import { readLog } from '../../db/log/read-log.ts'
import { playPracticeDay } from '../../electron/desk/practice/day.ts'
import type { EntryDraft } from '../../shared-types/entry.ts'
import { granted } from '../../shared-types/result.ts'
import { drafts } from '../db/some-drafts.ts'
import { value } from '../db/temp-log.ts'

/** A folder for the whole file of tests. */
export function folderForAll(): string {
  const folder = mkdtempSync(join(tmpdir(), 'duskline-merge-'))
  afterAll(() => rmSync(folder, { recursive: true, force: true }))
  return folder
}

/** The logs of one played opening day, a desk each. */
export async function playedLogs(
  folder: string,
  of: { desks: number; animals: number; seed?: number },
): Promise<string[]> {
  const into = mkdtempSync(join(folder, 'day-'))
  const played = await playPracticeDay({ seed: 1, ...of, folder: into, progress: () => undefined })
  return value(played).map(({ log }) => log)
}

/** What befell one file. Shares are of its length, 0 to 1. */
export type Fate =
  | { readonly is: 'copied' }
  | { readonly is: 'cut'; readonly at: number }
  | { readonly is: 'gap'; readonly from: number; readonly to: number }
  | { readonly is: 'altered'; readonly at: number }
  | { readonly is: 'went-on'; readonly at: number; readonly drafts: readonly EntryDraft[] }

export interface FileFate {
  /** Which of the played logs it came from. */
  readonly log: number
  readonly fate: Fate
}

const share = fc.double({ min: 0, max: 1, noNaN: true })

const fate: Arbitrary<Fate> = fc.oneof(
  fc.constant({ is: 'copied' } as const),
  fc.record({ is: fc.constant('cut' as const), at: share }),
  fc.record({ is: fc.constant('gap' as const), from: share, to: share }),
  fc.record({ is: fc.constant('altered' as const), at: share }),
  // Twice as likely: this is how a fork comes about.
  fc.record({ is: fc.constant('went-on' as const), at: share, drafts }),
  fc.record({ is: fc.constant('went-on' as const), at: share, drafts }),
)

/** A stick of files, all of the same desks' logs, each with its own history. */
export function sticks(logs: number): Arbitrary<FileFate[]> {
  return fc.array(fc.record({ log: fc.nat({ max: logs - 1 }), fate }), {
    minLength: 2,
    maxLength: 4,
  })
}

/** Writes a played log as it looks after its fate. */
export function meet(log: string, fate: Fate, path: string): void {
  copyFileSync(log, path)
  if (fate.is === 'copied') return
  const opened = value(openLog(path))
  const connection = connectionOf(opened)
  unguarded(connection)
  const last = connection.prepare<[], number>('SELECT max(seq) FROM entry').pluck().get() ?? 0
  const seqAt = (at: number) => 1 + Math.round(at * (last - 1))
  switch (fate.is) {
    case 'cut':
      connection.prepare('DELETE FROM entry WHERE seq > ?').run(seqAt(fate.at))
      break
    case 'gap':
      connection
        .prepare('DELETE FROM entry WHERE seq BETWEEN ? AND ?')
        .run(...[seqAt(fate.from), seqAt(fate.to)].toSorted((a, b) => a - b))
      break
    case 'altered':
      connection.prepare('UPDATE entry SET ms = ms + 1 WHERE seq = ?').run(seqAt(fate.at))
      break
    case 'went-on': {
      connection.prepare('DELETE FROM entry WHERE seq > ?').run(seqAt(fate.at))
      const now = connection.prepare<[], number>('SELECT max(wall) FROM entry').pluck().get() ?? 0
      value(
        transact(opened, { now, by: null, acceptClock: true }, (tx) =>
          granted(tx.append(fate.drafts)),
        ),
      )
    }
  }
  opened.close()
}

/** A hand that alters a file knows no triggers. */
function unguarded(connection: Connection): void {
  connection.exec('DROP TRIGGER entry_is_never_changed; DROP TRIGGER entry_is_never_taken_out')
}

/** Everything of a merged log that must not depend on how it came about, table by table. */
export function contentOf(path: string): Record<string, unknown[]> {
  const log = value(readLog(path))
  const connection = connectionOf(log)
  const tables = connection
    .prepare<[], string>(
      "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT IN ('own_desk', 'lease', 'pin') ORDER BY name",
    )
    .pluck()
    .all()
  const content = Object.fromEntries(
    tables.map((table) => [
      table,
      connection
        .prepare(`SELECT * FROM "${table}"`)
        .all()
        .map((row) => JSON.stringify(row))
        .toSorted(),
    ]),
  )
  log.close()
  return content
}
