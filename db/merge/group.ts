/** Merging the files that belong together into a part of their own, to be put beside other parts. */
import { granted, type Result } from '../../shared-types/result.ts'
import type { Folding } from '../log/rebuild.ts'
import type { DeskId } from '../../shared-types/sample-number.ts'
import { type Gathered, gathered } from './gather.ts'
import type { MergeProgress } from './report.ts'
import { beginTarget, type Target } from './target.ts'
import type { Tie } from './ties.ts'

export interface GroupOrder {
  /** The part to be made; it is left with its ending `.part`. */
  readonly out: string
  readonly files: readonly string[]
}

/** A part that was made. */
export interface Group {
  readonly files: readonly Gathered[]
  readonly desks: readonly DeskId[]
  readonly ties: readonly Tie[]
  readonly entries: number
  readonly notUnderstood: number
}

/** Makes a part of files. Stopped half way, it leaves nothing behind. */
export function* groupSteps({ out, files }: GroupOrder): Generator<MergeProgress, Result<Group>> {
  const begun = beginTarget(out, null)
  if (!begun.ok) return begun
  let made = false
  try {
    const group = yield* groupIn(begun.value, files)
    begun.value.leave()
    made = true
    return granted(group)
  } finally {
    if (!made) begun.value.drop()
  }
}

function* groupIn(target: Target, paths: readonly string[]): Generator<MergeProgress, Group> {
  const files = yield* gathered(target, paths)
  const ties = target.ties()
  const witness: Folding['witness'] = (entry, writes) => ties.see(entry, writes)
  const folding = target.fold({ witness, isPart: true })
  const entries = target.entries()
  const total = 2 * paths.length
  for (let step = folding.next(); ; step = folding.next()) {
    if (step.done === true) {
      const { notUnderstood } = step.value
      return { files, desks: target.desks(), ties: ties.all, entries, notUnderstood }
    }
    if (step.value % 2000 === 0)
      yield { doing: 'folding', file: null, done: paths.length * (1 + step.value / entries), total }
  }
}
