/** A practice day written out: what each person tells the desk, and when. */
import type { CommandName } from '../../../shared-types/desk-api.ts'
import type { LocalDate } from '../../../shared-types/local-date.ts'
import type { DeskId, PersonId, SampleNumber } from '../../../shared-types/sample-number.ts'
import type { CauseCode } from '../../../shared-types/views/cause.ts'

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

/** Everything is counted, and the lead looks at what differs before settling it. */
interface LookedOver {
  readonly is: 'looked-over'
  readonly atMs: number
  readonly by: PersonId
}

/** The lead sets aside what the desk suggests at that moment, if it suggests anything. */
interface SuggestionSetAside {
  readonly is: 'suggestion-set-aside'
  readonly atMs: number
  readonly by: PersonId
}

export type PracticeStep = Told | BlanksCounted | LookedOver | SuggestionSetAside

/** What went wrong on the day without the desk being told, for the close to find. */
export interface PlantedFault {
  readonly code: CauseCode
  /** The kit, label, bag, animal or person that it is about. */
  readonly about: SampleNumber
  /** How far it puts counts off, by item key: counted, less what is expected. */
  readonly off: Readonly<Record<string, number>>
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
