/** Labels by what became of them, the blank ones as they were last counted. */
import type { ReadableLog } from '../../db/connection.ts'
import { type LabelTally, labelTally } from '../../db/read/labels.ts'
import { closeSheetOf, daysOf } from '../../db/read/station.ts'
import type { DayRecord } from '../../shared-types/station.ts'

/** What a signed close found over or short of blank labels: settled there, and not asked again. */
function blanksSettled(log: ReadableLog, { date }: DayRecord): number {
  const counted = closeSheetOf(log, date)?.items.find(({ item }) => item.of === 'blank-labels')
  return counted ? counted.counted - counted.expected : 0
}

export function labelsLeft(log: ReadableLog): LabelTally {
  const tally = labelTally(log)
  const closed = daysOf(log).filter(({ state }) => state === 'closed')
  return {
    ...tally,
    blanks: closed.reduce((blanks, day) => blanks + blanksSettled(log, day), tally.blanks),
  }
}
