/** What reading a file in, and settling a row of it, writes into the log. */
import { draft, type EntryDraft } from '../../../shared-types/entry.ts'
import type { ResultReported, RowDoubt } from '../../../shared-types/laboratory-result.ts'
import { granted, type Result, refused } from '../../../shared-types/result.ts'
import { grouped } from '../../../shared-types/sample-number.ts'
import type { GoodRow, KnownBag, RecordSeen } from './result-check.ts'

export interface FileKnown {
  readonly laboratory: string
  readonly digest: string
}

/** Each good row as a result of its sample. */
export function resultDrafts(good: readonly GoodRow[], of: FileKnown): EntryDraft[] {
  return good.map(({ row: { bag, word, method, tested, line }, animal }) =>
    draft('result.reported', {
      bag,
      animal,
      word,
      method,
      tested,
      laboratory: of.laboratory,
      file: of.digest,
      line,
    }),
  )
}

/** Doubts in which the row itself says all that is needed: a person may take it as it stands. */
const takenAsItStands: readonly RowDoubt[] = [
  'never-sent',
  'twice',
  'contradictory',
  'changed',
  'unsuitable',
  'wrong-tissue',
]

export function canTakeAsItStands(doubt: RowDoubt): boolean {
  return takenAsItStands.includes(doubt)
}

/** What a person says of a row in doubt: it is left out, or a result in the form they settled on. */
export interface Settling {
  readonly file: string
  readonly line: number
  readonly words: string
  /** Null: it stays out. */
  readonly result: Omit<ResultReported, 'file' | 'line' | 'animal'> | null
}

/**
 * Settles a row. Refuses a bag that is not in the log, and a day of the test before the bag was sealed
 * or after today; a person may stand by anything else.
 */
export function decideSettle(
  settling: Settling,
  bag: KnownBag | null,
  { today }: Pick<RecordSeen, 'today'>,
): Result<EntryDraft[]> {
  const { file, line, words, result } = settling
  if (result === null)
    return granted([draft('results.row-settled', { file, line, settlement: 'left', words })])
  if (bag === null)
    return refused(
      'bag-not-found',
      `The log has no bag ${grouped(result.bag)}.`,
      'Ask the laboratory which number stands on the bag, or leave the row out.',
      'bag',
    )
  if (result.tested !== null && (result.tested < bag.sealed || result.tested > today))
    return refused(
      'date-impossible',
      `${result.tested} is before the bag was sealed (${bag.sealed}) or after today.`,
      'Type the day of the test as the laboratory reports it.',
      'tested',
    )
  return granted([
    draft('results.row-settled', { file, line, settlement: 'taken', words }),
    draft('result.reported', { ...result, animal: bag.animal, file, line }),
  ])
}
