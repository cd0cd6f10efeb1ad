/** Which laptop goes on with the log, and the keys under which contacts are sealed. */
import type { Migration } from './migration.ts'

const sql = `
CREATE TABLE lease (
  one INTEGER PRIMARY KEY CHECK (one = 1),
  holder TEXT NOT NULL
) STRICT;

CREATE TABLE seal_key (
  id TEXT PRIMARY KEY,
  under_passphrase TEXT
) STRICT, WITHOUT ROWID;
`

export const keptSafe: Migration = {
  number: 15,
  makes: 'log',
  up: (connection) => connection.exec(sql),
}
