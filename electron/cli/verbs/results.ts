/** Results at the terminal: a laboratory's file checked, what is overdue, and a file to practise on. */
import { readFileSync } from 'node:fs'
import { basename } from 'node:path'
import { readLog } from '../../../db/log/read-log.ts'
import { doubtWords, resultWords } from '../../../shared-types/laboratory-result.ts'
import { type Result, granted, refused } from '../../../shared-types/result.ts'
import { grouped } from '../../../shared-types/sample-number.ts'
import { checkResultFile } from '../../desk/results/check-file.ts'
import { readDesk } from '../../desk/read-desk.ts'
import { withDesk } from '../documents.ts'
import { writeNew } from '../new-files.ts'
import { notDone, type Outcome, told, whenGranted } from '../outcome.ts'

type Checked = Extract<Awaited<ReturnType<typeof checkResultFile>>, { ok: true }>['value']

function bytesOf(path: string): Result<Uint8Array> {
  try {
    return granted(readFileSync(path))
  } catch {
    return refused(
      'file-not-read',
      `${basename(path)} could not be read.`,
      'Check the name, and that the file may be read.',
    )
  }
}

/** `check-results FILE LOG`: ends well only where no row is in doubt. Changes nothing. */
export async function checkResults(
  file: string,
  log: string,
  laboratory: string | null,
): Promise<Outcome> {
  const bytes = bytesOf(file)
  if (!bytes.ok) return notDone(bytes.refusal)
  const opened = readLog(log)
  if (!opened.ok) return notDone(opened.refusal)
  const given = { name: basename(file), bytes: bytes.value, laboratory }
  const rows = await checkResultFile(opened.value, given, Date.now())
  opened.value.close()
  return whenGranted(rows, (checked) => said(basename(file), checked))
}

function said(name: string, { rows, good, known, skipped, doubts }: Checked): Outcome {
  const words = Map.groupBy(good, ({ row }) => row.word)
  const counts = Object.fromEntries([...words].map(([word, of]) => [word, of.length]))
  const outcome = told(
    [
      `${name}: ${rows} rows, ${known} known already, ${skipped} passed over.`,
      ...[...words].map(([word, of]) => `${resultWords[word]}: ${of.length}`),
      ...doubts.map(({ line, doubt, number }) => `line ${line}: ${doubtWords[doubt]} (${number})`),
    ],
    { rows, good: counts, known, skipped, doubts },
  )
  if (doubts.length === 0) return outcome
  const say = `${doubts.length} rows of ${name} are in doubt.`
  const next = 'Read the file in on the results screen, where each is settled by a person.'
  return { ...outcome, refusal: { code: 'rows-in-doubt', say, next } }
}

/** `overdue LOG`: bags without a result, the oldest first; no person is in the list. */
export async function overdue(log: string, out: string | null): Promise<Outcome> {
  return withDeskOutcome(log, async (desk) => {
    const late = await desk.ask('results.overdue', {})
    if (!late.ok) return late
    const list = await desk.ask('results.overdueList', {})
    return list.ok ? granted({ ...late.value, file: list.value }) : list
  }).then((answer) =>
    whenGranted(answer, ({ all, days, bags, file }) => {
      if (out !== null)
        return whenGranted(writeNew([{ path: out, content: file.text }]), (files) =>
          told([`${all} bags without a result are in ${out}.`], { files }),
        )
      const lines = bags.map(
        ({ bag, daysOut, overdue: isLate, pending }) =>
          `${grouped(bag)}  ${daysOut} days${isLate ? ', OVERDUE' : ''}${pending ? ', being tested' : ''}`,
      )
      return told([`${all} bags without a result; overdue after ${days} days.`, ...lines], {
        all,
        days,
        bags,
      })
    }),
  )
}

function withDeskOutcome<T>(
  log: string,
  ask: Parameters<typeof withDesk<T>>[1],
): Promise<Result<T>> {
  return withDesk(readDesk(log, Date.now), ask)
}

/** `practice-results LOG`: results of a practice log's bags, with bad rows planted; says which. */
export async function practiceResults(log: string, seed: number, out: string): Promise<Outcome> {
  const made = await withDesk(readDesk(log, Date.now), (desk) =>
    desk.ask('results.practiceFile', { seed }),
  )
  return whenGranted(made, ({ file, rows, planted }) =>
    whenGranted(writeNew([{ path: out, content: file.text }]), (files) =>
      told(
        [
          `${rows} lines are in ${out}; ${planted.length} rows of them are bad:`,
          ...planted.map(({ line, doubt }) => `line ${line}: ${doubtWords[doubt]}`),
        ],
        { files, planted },
      ),
    ),
  )
}
