/** Reading files one after another into a target. */
import { basename } from 'node:path'
import { mixedWithPractice } from './merge-refusals.ts'
import type { FileReport, MergeProgress } from './report.ts'
import { openSource } from './source.ts'
import { takeIn } from './take-in.ts'
import type { Target } from './target.ts'

/** A file as it was met, and whether it says of itself that it is practice. */
export interface Gathered {
  readonly report: FileReport
  readonly practice: boolean | null
}

/** Takes in what each file proves. One real log among them keeps practice out. */
export function* gathered(
  target: Target,
  paths: readonly string[],
): Generator<MergeProgress, Gathered[]> {
  const isPractice = practiceOf(target, paths)
  const files: Gathered[] = []
  for (const [at, path] of paths.entries()) {
    const progress = (share: number): MergeProgress => ({
      doing: 'reading',
      file: basename(path),
      done: at + share,
      total: 2 * paths.length,
    })
    files.push(yield* read(target, path, isPractice, progress))
  }
  return files
}

function practiceOf(target: Target, paths: readonly string[]): boolean {
  // A file by itself mixes with nothing: it need not be looked at first.
  if (paths.length === 1 && target.practice === null) return true
  const marks = [target.practice, ...paths.map(practiceOfFile)]
  return marks.includes(true) && !marks.includes(false)
}

function practiceOfFile(path: string): boolean | null {
  const source = openSource(path)
  if (!source.ok) return null
  source.value.close()
  return source.value.practice
}

function* read(
  target: Target,
  path: string,
  isPractice: boolean,
  progress: (share: number) => MergeProgress,
): Generator<MergeProgress, Gathered> {
  yield progress(0)
  const file = basename(path)
  const opened = openSource(path)
  if (!opened.ok)
    return { report: { file, state: 'refused', refusal: opened.refusal }, practice: null }
  const source = opened.value
  const { practice } = source
  try {
    if (practice === true && !isPractice)
      return { report: { file, state: 'refused', refusal: mixedWithPractice(file) }, practice }
    const taking = takeIn(target, source)
    for (let step = taking.next(); ; step = taking.next()) {
      if (step.done === true) return { report: step.value, practice }
      yield progress(step.value)
    }
  } finally {
    source.close()
  }
}
