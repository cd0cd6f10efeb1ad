/** Which animals the open rows in doubt are about. */
import type { ReadableLog } from '../../../db/connection.ts'
import { openDoubtNames } from '../../../db/read/row-doubts.ts'
import { AnimalNumber, readNumberFor } from '../../../shared-types/sample-number.ts'

/** Open rows in doubt by the animal they name, by a bag of it or by its own number. */
export function openRowsByAnimal(log: ReadableLog): ReadonlyMap<AnimalNumber, number> {
  const rows = new Map<AnimalNumber, number>()
  for (const { animal: ofBag, number } of openDoubtNames(log)) {
    const animal = ofBag ?? animalIn(number)
    if (animal !== null) rows.set(animal, (rows.get(animal) ?? 0) + 1)
  }
  return rows
}

function animalIn(number: string): AnimalNumber | null {
  const read = readNumberFor(['A'], number)
  return read.ok ? AnimalNumber.parse(read.value) : null
}
