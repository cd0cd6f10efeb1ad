import { grouped } from '../../shared-types/sample-number.ts'
import type { AnimalView } from '../../shared-types/views/animal.ts'
import { sayNote } from '../scanner/strip.ts'

/** Says once, as the next animal is begun, that the last one waits without labels. */
export function noteLabelsOwed(last: AnimalView | undefined): void {
  if (last?.state !== 'waiting' || last.kit !== null) return
  sayNote(
    `${grouped(last.animal)} has no labels yet: print them on F6, or scan a numbered kit at the bench.`,
  )
}
