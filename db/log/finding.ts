/** What a check of a log can find, each with the sentence for the person who asked. */
import type { DeskId } from '../../shared-types/sample-number.ts'

export type FindingKind =
  | 'damaged-file'
  | 'tables-changed'
  | 'gap'
  | 'altered'
  | 'broken-link'
  | 'fork'
  | 'clock-order'
  | 'read-tables-differ'

export interface Finding {
  readonly what: FindingKind
  /** The entry it is about; null where it is about the file. */
  readonly entry: { readonly desk: DeskId; readonly seq: number } | null
  /** One plain sentence. */
  readonly say: string
}

/** A finding about the file as a whole. */
export function fileFinding(what: FindingKind, say: string): Finding {
  return { what, entry: null, say }
}

/** A finding about one entry; `say` continues a sentence that begins with its number and desk. */
export function entryFinding(what: FindingKind, desk: DeskId, seq: number, say: string): Finding {
  return { what, entry: { desk, seq }, say: `Entry ${seq} of desk ${desk} ${say}` }
}
