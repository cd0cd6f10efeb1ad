/** What is done beside the desk, by name: each takes seconds, and a person is waiting at the desk. */
import { existsSync } from 'node:fs'
import { granted, type Result } from '../shared-types/result.ts'
import { backupLog, renewBackup } from './backup.ts'
import { closedUnlessGranted, connectForReading, ReadableLog } from './connection.ts'
import { type Drill, drillBackup } from './drill.ts'
import { freeCopy } from './lease.ts'
import { openLog } from './log/open.ts'
import { latestFormat } from './migrations/list.ts'
import { torn } from './log/open-refusals.ts'
import { ownDeskOf } from './log/soundness.ts'
import { verifyLog } from './log/verify.ts'
import { storing } from './storage-refusal.ts'

export type AsideTask =
  | { readonly do: 'renew-backup'; readonly log: string; readonly to: string }
  | { readonly do: 'drill'; readonly backup: string; readonly headSeq: number | null }
  | { readonly do: 'verify'; readonly log: string }
  | { readonly do: 'copy-to-move'; readonly log: string; readonly to: string }

/** What each task answers with. */
export interface AsideAnswers {
  'renew-backup': number
  drill: Drill
  verify: { readonly whole: boolean; readonly entries: number }
  'copy-to-move': number
}

/** Does a task in the thread it is called in. */
export async function doTask(task: AsideTask): Promise<Result<unknown>> {
  switch (task.do) {
    case 'renew-backup':
      return withLog(task.log, (log) => renewBackup(log, task.to))
    case 'drill':
      return drillBackup(task.backup, task.headSeq)
    case 'verify':
      return withLog(task.log, async (log) => {
        const { whole, entries } = verifyLog(log)
        return granted({ whole, entries })
      })
    case 'copy-to-move':
      return withLog(task.log, (log) => copyToMove(log, task.to))
  }
}

/** A copy that the laptop which opens it first may go on with. */
async function copyToMove(log: ReadableLog, to: string): Promise<Result<number>> {
  const copied = await backupLog(log, to)
  if (!copied.ok) return copied
  const copy = openLog(to)
  if (!copy.ok) return copy
  freeCopy(copy.value)
  copy.value.close()
  return copied
}

/** A log of this laptop by its file: beside the desk if that has it open, else by itself. */
export async function withOwnLog<T>(
  path: string,
  work: (log: ReadableLog) => T,
): Promise<Result<T>> {
  if (existsSync(`${path}-wal`)) return withLog(path, async (log) => granted(work(log)))
  const opened = openLog(path)
  if (!opened.ok) return opened
  try {
    return granted(work(opened.value))
  } finally {
    opened.value.close()
  }
}

/**
 * A second connection to a log that the desk has open, holding one moment of it from here on, however
 * long the work takes and whatever the desk writes. The file is not looked at otherwise: a program that
 * closes any handle of a file loses all its locks on it (sqlite.org/howtocorrupt.html, section 2.2).
 */
async function withLog<T>(
  path: string,
  work: (log: ReadableLog) => Promise<Result<T>>,
): Promise<Result<T>> {
  const opened = storing(() => {
    const connection = connectForReading(path)
    return closedUnlessGranted(connection, () => {
      connection.exec('BEGIN')
      const desk = ownDeskOf(connection)
      return desk === undefined
        ? torn(path)
        : granted(new ReadableLog(connection, path, desk, latestFormat))
    })
  })
  if (!opened.ok) return opened
  try {
    return await work(opened.value)
  } finally {
    opened.value.close()
  }
}
