/** Animals that are another's record once more, as an office ruled. */
import type { AnimalNumber } from '../../shared-types/sample-number.ts'
import type { ReadableLog } from '../connection.ts'
import { prepareAll } from '../statement.ts'

const rows = prepareAll((db) =>
  db
    .selectFrom('animal')
    .select(['animal', (eb) => eb.ref('duplicate_of').$notNull().as('kept')])
    .where('duplicate_of', 'is not', null),
)

/** Each such animal with the record that counts. */
export function duplicates(log: ReadableLog): ReadonlyMap<AnimalNumber, AnimalNumber> {
  return new Map(rows(log).map(({ animal, kept }) => [animal, kept]))
}
