/** Why a file is not merged, in words for the person who chose it. */
import { basename } from 'node:path'
import type { FileReport } from './report.ts'
import { type Refusal, type Result, refused } from '../../shared-types/result.ts'

export function notAMergedLog(path: string): Result<never> {
  return refused(
    'not-a-merged-log',
    `${basename(path)} is the log of a station desk: other logs are not merged into it.`,
    'Choose another name for the merged log, and merge this file together with the others.',
    'out',
  )
}

export function alsoAnInput(path: string): Result<never> {
  return refused(
    'merged-into-itself',
    `${basename(path)} is both a file to merge and the merged log.`,
    'Take it off the list: what it holds stays in it.',
    'out',
  )
}

export function outInUse(path: string): Result<never> {
  return refused(
    'log-in-use',
    `Another program has ${basename(path)} open.`,
    'Close the other window that has this log open, then merge again.',
    'out',
  )
}

export function nothingToMerge(files: readonly FileReport[]): Result<never> {
  const said = files.flatMap((file) => (file.state === 'refused' ? [file.refusal.say] : []))
  return refused(
    'nothing-to-merge',
    `None of these files can be merged. ${said.slice(0, 5).join(' ')}`.trim(),
    'Copy the logs from the stations again, and choose files that end in .stationlog.',
  )
}

export const mixedWithPractice = (file: string): Refusal => ({
  code: 'practice-log',
  say: `${file} is a practice log, and practice never mixes with a real record.`,
  next: 'Leave it out, or merge practice logs by themselves.',
})

export function noFolder(path: string): Result<never> {
  return refused(
    'not-found',
    `The folder for ${basename(path, '.part')} is not there.`,
    'Choose a folder that exists, or plug in the disk it is on.',
    'out',
  )
}

export function stopped(): Result<never> {
  return refused('stopped', 'The merge was stopped; nothing was changed.', 'Begin it again.')
}
