/** The entries, whose log it is, what is kept apart from the entries, and what a merge could not take in. */
import type { Migration } from './migration.ts'

/**
 * A fork keeps both its branches, so desk and seq alone are not unique. `entry_about` finds an entry again
 * from the animal it is about or, where it names none, from the bag.
 */
const sql = `
CREATE TABLE entry (
  desk TEXT NOT NULL,
  seq INTEGER NOT NULL CHECK (seq >= 1),
  ms INTEGER NOT NULL CHECK (ms >= 0),
  n INTEGER NOT NULL CHECK (n >= 0),
  wall INTEGER NOT NULL CHECK (wall >= 0),
  "by" TEXT,
  kind TEXT NOT NULL,
  v INTEGER NOT NULL CHECK (v >= 1),
  body TEXT NOT NULL,
  prev TEXT NOT NULL,
  hash TEXT NOT NULL,
  UNIQUE (desk, seq, hash)
) STRICT;
CREATE INDEX entry_in_order ON entry (ms, n, desk, seq);
CREATE INDEX entry_about ON entry (
  CASE WHEN json_valid(body) THEN coalesce(body ->> '$.animal', body ->> '$.bag') END
);
CREATE TRIGGER entry_is_never_changed BEFORE UPDATE ON entry
BEGIN SELECT RAISE(ABORT, 'an entry is never changed'); END;
CREATE TRIGGER entry_is_never_taken_out BEFORE DELETE ON entry
BEGIN SELECT RAISE(ABORT, 'an entry is never taken out'); END;

CREATE TABLE own_desk (
  one INTEGER PRIMARY KEY CHECK (one = 1),
  desk TEXT NOT NULL,
  wall_ms INTEGER NOT NULL DEFAULT 0
) STRICT;

CREATE TABLE contact (
  digest TEXT PRIMARY KEY,
  salt TEXT NOT NULL,
  details TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE unproved (
  key TEXT PRIMARY KEY,
  what TEXT NOT NULL,
  desk TEXT,
  seq INTEGER,
  holds TEXT NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE pin (
  person TEXT PRIMARY KEY,
  record TEXT NOT NULL
) STRICT, WITHOUT ROWID;
`

export const entryLog: Migration = {
  number: 10,
  makes: 'log',
  up: (connection) => connection.exec(sql),
}
