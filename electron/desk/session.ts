/** Who sits at a window. A quick change of person here changes nobody at another window. */
import type { PersonId } from '../../shared-types/sample-number.ts'

export interface Session {
  readonly id: string
  person: PersonId | null
}
