/** What the simulated crew can see of the desk at a moment: what any of them would see on its screens. */
import type { AnimalRecord } from '../../../../shared-types/animal.ts'
import type { CoolerRecord } from '../../../../shared-types/cooler.ts'
import type { PersonRecord } from '../../../../shared-types/person.ts'
import type {
  AnimalNumber,
  BagNumber,
  KitNumber,
  PersonId,
} from '../../../../shared-types/sample-number.ts'
import type { TissueRecord } from '../../../../shared-types/tissue.ts'
import type { CommandName } from '../../../../shared-types/desk-api.ts'

export interface Seen {
  readonly nowMs: number
  /** Every animal, first come first. */
  readonly animals: readonly AnimalRecord[]
  readonly tissuesOf: (animal: AnimalNumber) => readonly TissueRecord[]
  /** The kit opened on an animal, or printed for it. */
  readonly kitOf: (animal: AnimalNumber) => { kit: KitNumber; isOpen: boolean } | null
  /** Kits printed for nobody, the oldest first. */
  readonly reserved: readonly KitNumber[]
  /** Kits in an account of the ledger. */
  readonly kitsAt: (account: string) => number
  readonly crew: readonly PersonRecord[]
  readonly bench: readonly { readonly bag: BagNumber; readonly isElk: boolean }[]
  readonly coolers: readonly CoolerRecord[]
}

/** One command that a simulated person gives. */
export interface Deed {
  readonly by: PersonId
  readonly name: CommandName
  readonly input: unknown
}
