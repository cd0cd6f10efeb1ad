/** `merge --out OUT IN...`: one log out of many. The files read stay as they are. */
import { basename } from 'node:path'
import { mergeFiles, stopSign } from '../../../db/merge/merge-files.ts'
import type { FileReport, MergeProgress, MergeReport } from '../../../db/merge/report.ts'
import { countsByKind, lookThrough } from '../../desk/discrepancy-search.ts'
import { discrepancyWords, type DiscrepancyKind } from '../../../shared-types/discrepancy.ts'
import { notDone, type Outcome, told } from '../outcome.ts'

export interface MergeWish {
  readonly out: string
  readonly files: readonly string[]
  readonly progress: (step: MergeProgress) => void
}

interface InDispute {
  readonly kind: DiscrepancyKind
  readonly count: number
}

/** Merges what can be merged, and names every file and entry that could not be. */
export async function merge({ out, files, progress }: MergeWish): Promise<Outcome> {
  const order = { out, files, office: null }
  const merged = await mergeFiles(order, { progress, stop: stopSign() })
  if (!merged.ok) return notDone(merged.refusal)
  const inDispute = countsByKind(await lookThrough(out, merged.value.entries))
  const lines = [
    ...merged.value.files.flatMap(linesOfFile),
    summary(basename(out), merged.value),
    ...disputeLines(inDispute),
  ]
  return told(lines, { ...merged.value, inDispute })
}

function linesOfFile(file: FileReport): string[] {
  if (file.state === 'refused')
    return [`${file.file}: not merged. ${file.refusal.say} ${file.refusal.next}`]
  const desks = file.desks.map(({ desk, lastSeq }) => `${desk} up to ${lastSeq}`).join(', ')
  return [
    `${file.file}: ${file.added} entries new, ${file.known} known before (${desks || 'no entry'}).`,
    ...(file.state === 'damaged'
      ? [
          '  The file is damaged: it was read as far as it goes, and nothing says that this was its end.',
        ]
      : []),
    ...(file.state === 'newer-version'
      ? [
          '  A newer version of this program wrote it: what is not understood here is kept and passed on.',
        ]
      : []),
    ...(file.unreadable > 0 ? [`  ${file.unreadable} rows could not be read.`] : []),
    ...file.altered.map(
      ({ desk, seq }) =>
        `  Entry ${seq} of desk ${desk} was altered after it was written: set aside.`,
    ),
  ]
}

function summary(name: string, { entries, desks, added, known }: MergeReport): string {
  return `${name}: ${entries} entries of ${desks} ${desks === 1 ? 'desk' : 'desks'}; ${added} came in, ${known} were there already.`
}

function disputeLines(inDispute: readonly InDispute[]): string[] {
  if (inDispute.length === 0) return ['Nothing is in dispute.']
  return [
    'A person must settle:',
    ...inDispute.map(({ kind, count }) => `  ${count} x ${discrepancyWords[kind].toLowerCase()}`),
  ]
}
