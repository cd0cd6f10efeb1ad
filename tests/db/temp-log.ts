/** Logs in a folder that is gone after the test. */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { onTestFinished } from 'vitest'
import { connectionOf, type ReadableLog, type WritableLog } from '../../db/connection.ts'
import { transact } from '../../db/log/append.ts'
import { createLog } from '../../db/log/create.ts'
import type { Entry, EntryDraft } from '../../shared-types/entry.ts'
import { granted, type Result } from '../../shared-types/result.ts'
import { DeskId, personId } from '../../shared-types/sample-number.ts'

export const desk = DeskId.parse('26KRVA')
export const otherDesk = DeskId.parse('26KRVC')
export const lead = personId(desk, 1)

/** Half past six in the morning of an opening day, in milliseconds since 1970 UTC. */
export const morning = Date.UTC(2026, 10, 14, 13, 30)

/** Within a test only: it is cleared away when that test ends. */
export function tempFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'duskline-test-'))
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
  return folder
}

/** The value of what must have been granted. */
export function value<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(`${result.refusal.code}: ${result.refusal.say}`)
  return result.value
}

/** The code of what must have been refused. */
export function refusal(result: Result<unknown>): string {
  if (result.ok) throw new Error('granted')
  return result.refusal.code
}

/** Closes a log at the end of the test, if the test has not. */
export function closing<L extends ReadableLog>(log: L): L {
  onTestFinished(() => void (connectionOf(log).open && log.close()))
  return log
}

export function tempLog(of: DeskId = desk): WritableLog {
  return closing(value(createLog(join(tempFolder(), `${of}.stationlog`), of)))
}

/** Appends, one action a draft, a second apart. */
export function work(log: WritableLog, drafts: readonly EntryDraft[], from = morning): Entry[] {
  return drafts.flatMap((draft, at) =>
    value(transact(log, { now: from + 1000 * at, by: lead }, (tx) => granted(tx.append([draft])))),
  )
}
