/** Names for numbers: what people call a person or a cooler. */
import type { ReadableLog } from '../../db/connection.ts'
import { coolers } from '../../db/read/coolers.ts'
import { people } from '../../db/read/people.ts'

/** Answers with the name of a person or cooler, or the number itself if the log does not know it. */
export function namesOf(log: ReadableLog): (number: string) => string {
  const names = new Map<string, string>([
    ...people(log).map(({ person, name }) => [person, name] as const),
    ...coolers(log).map(({ cooler, name }) => [cooler, name] as const),
  ])
  return (number) => names.get(number) ?? number
}
