/** What a merge says: of each file what came in, what was there already, what could not be proved. */
import type { Refusal } from '../../shared-types/result.ts'
import type { DeskId } from '../../shared-types/sample-number.ts'
import type { SourceState } from './source.ts'

/** One chain in one file. */
export interface DeskFound {
  readonly desk: DeskId
  readonly entries: number
  readonly lastSeq: number
}

export interface AlteredEntry {
  readonly desk: string
  readonly seq: number
}

/** One file as it was met. */
export type FileReport =
  | {
      readonly file: string
      readonly state: SourceState
      /** Entries that came in with this file. */
      readonly added: number
      /** Entries that an earlier file, or the log itself, held already. */
      readonly known: number
      /** Entries that do not hash to what they say: kept unproved, not taken in. */
      readonly altered: readonly AlteredEntry[]
      /** Rows that are not even of the form of an entry: counted, not taken in. */
      readonly unreadable: number
      readonly desks: readonly DeskFound[]
    }
  | { readonly file: string; readonly state: 'refused'; readonly refusal: Refusal }

export interface MergeReport {
  readonly files: readonly FileReport[]
  /** Entries in the merged log. */
  readonly entries: number
  readonly added: number
  readonly known: number
  readonly desks: number
  /** Entries of a later version: kept and passed on, but shown in no table. */
  readonly notUnderstood: number
}

/** The files with what came in with all of them. */
export function sums(files: readonly FileReport[]): Pick<MergeReport, 'files' | 'added' | 'known'> {
  const sum = (what: 'added' | 'known') =>
    files.reduce((all, file) => all + (file.state === 'refused' ? 0 : file[what]), 0)
  return { files, added: sum('added'), known: sum('known') }
}

/** How far a merge is. `done` and `total` count steps of like size. */
export interface MergeProgress {
  readonly doing: 'reading' | 'folding' | 'finishing'
  /** The file being read. */
  readonly file: string | null
  readonly done: number
  readonly total: number
}
