import type { HarvestUnit } from '../../shared-types/station.ts'
import type { Draft } from './draft.ts'
import type { Missing } from './questions.ts'

/** What each group of questions is given. */
export interface Asking {
  readonly draft: Draft
  readonly change: (part: Partial<Draft>) => void
  readonly missing: Missing
  readonly units: readonly HarvestUnit[]
  readonly today: string
}
