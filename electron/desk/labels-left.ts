/** Labels by what became of them, the blank ones as they were last counted. */
import type { ReadableLog } from '../../db/connection.ts'
import { understood } from '../../db/fold/fold.ts'
import { entriesOfKind } from '../../db/log/read-entries.ts'
import { type LabelTally, labelTally } from '../../db/read/labels.ts'
import { blanksOff } from '../station/ledger/label-book.ts'

export function labelsLeft(log: ReadableLog): LabelTally {
  const tally = labelTally(log)
  // What any signed close found over or short is settled there, also where its day was opened again.
  let { blanks } = tally
  for (const stored of entriesOfKind(log, 'day.closed')) {
    const entry = understood(stored)
    if (entry?.kind === 'day.closed') blanks += blanksOff(entry.body)
  }
  return { ...tally, blanks }
}
