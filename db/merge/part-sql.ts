/** How the database itself takes in what lies in another log. */
import { entryColumnNames } from './entry-columns.ts'

/** Of two records of a key, the one that opens it; of two that do, always the same. */
export const betterKey = `ON CONFLICT (id) DO UPDATE SET under_passphrase = excluded.under_passphrase
  WHERE coalesce(excluded.under_passphrase, '') > coalesce(under_passphrase, '')`

/** What takes a part in that is attached as `part`. */
export function partSql(readTables: readonly string[]): string[] {
  return [
    `INSERT OR IGNORE INTO main.entry (${entryColumnNames}) SELECT ${entryColumnNames} FROM part.entry`,
    'INSERT OR IGNORE INTO main.contact SELECT * FROM part.contact',
    'INSERT OR IGNORE INTO main.unproved SELECT * FROM part.unproved',
    `INSERT INTO main.seal_key (id, under_passphrase)
     SELECT id, under_passphrase FROM part.seal_key WHERE true ${betterKey}`,
    ...readTables.map((name) => `INSERT INTO main."${name}" SELECT * FROM part."${name}"`),
  ]
}
