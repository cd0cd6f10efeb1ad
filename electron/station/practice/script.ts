/** A practice day written out: what each person tells the desk, and when. */
import type { CountItem, VarianceReason } from '../../../shared-types/close.ts'
import type { CommandName } from '../../../shared-types/desk-api.ts'
import type { LocalDate } from '../../../shared-types/local-date.ts'
import type { DeskId, PersonId } from '../../../shared-types/sample-number.ts'

/** One command of the desk API. Numbers that the desk will give out are known: it counts from 1. */
interface Told {
  readonly is: 'told'
  readonly atMs: number
  readonly by: PersonId
  readonly name: CommandName
  readonly input: unknown
  /** The desk may refuse it for something that only the desk knows; the day goes on. */
  readonly perhaps?: true
}

/** Blank labels counted at dusk: how many a printing takes only the desk knows. */
interface BlanksCounted {
  readonly is: 'blanks-counted'
  readonly atMs: number
  readonly by: PersonId
  /** Counted, less what the desk expects. */
  readonly off: number
}

/** The lead sets aside what the desk suggests at that moment, if it suggests anything. */
interface SuggestionSetAside {
  readonly is: 'suggestion-set-aside'
  readonly atMs: number
  readonly by: PersonId
}

export type PracticeStep = Told | BlanksCounted | SuggestionSetAside

/** A count that is planted wrong, with the reason that the lead gives for it. */
export interface PlantedFault {
  readonly item: CountItem
  /** Counted, less what is expected. */
  readonly off: number
  readonly reason: VarianceReason
  readonly words: string
}

/** One desk's part of a practice day. */
export interface DeskScript {
  readonly seed: number
  readonly desk: DeskId
  readonly steps: readonly PracticeStep[]
  /** The day on which it is played, in the station's time. */
  readonly date: LocalDate
  readonly zone: string
  readonly animals: number
  readonly faults: readonly PlantedFault[]
}
