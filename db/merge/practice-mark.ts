/**
 * Whether a record is practice: by the first entry of each chain, where a desk or an office sets itself
 * up. Only that one counts, so that nothing written later can turn practice into a real record.
 */
import type { Connection } from '../connection.ts'
import type { FoundRow } from './row-proof.ts'

const setUpKinds = ['station.set-up', 'office.set-up']

const setUps = `SELECT body FROM entry WHERE seq = 1 AND desk IN (SELECT DISTINCT desk FROM entry)
  AND kind IN ('${setUpKinds.join("', '")}')`

/** Real if any chain is; null where no chain has its beginning. */
export function practiceOf(connection: Connection): boolean | null {
  return practiceMark(connection.prepare<[], unknown>(setUps).pluck().all())
}

/** Whether a row is where a chain begins and says what kind of record it is. */
export function isSetUp({ seq, kind }: FoundRow): boolean {
  return seq === 1 && setUpKinds.includes(String(kind))
}

export function practiceMark(bodies: readonly unknown[]): boolean | null {
  const marks = bodies.flatMap((body) =>
    typeof body === 'string' ? (/"practice":(?:true|false)/.exec(body) ?? []) : [],
  )
  return marks.length === 0 ? null : marks.every((mark) => mark.endsWith('true'))
}
