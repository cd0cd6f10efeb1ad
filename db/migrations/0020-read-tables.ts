/** The tables that screens and documents read, folded from the entries. */
import type { Migration } from './migration.ts'
import { resultTablesSql } from './result-tables.ts'

const sql = `
CREATE TABLE station (
  desk TEXT PRIMARY KEY, name TEXT NOT NULL, zone TEXT NOT NULL, practice INTEGER NOT NULL,
  office INTEGER NOT NULL,  settings TEXT NOT NULL, set_up_ms INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE settlement (
  hash TEXT PRIMARY KEY, discrepancy TEXT NOT NULL, kind TEXT NOT NULL, choice TEXT NOT NULL,
  side TEXT, words TEXT NOT NULL, replaces TEXT NOT NULL, desk TEXT NOT NULL, "by" TEXT,
  ms INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE person (
  person TEXT PRIMARY KEY, name TEXT NOT NULL, role TEXT NOT NULL, training TEXT NOT NULL,
  active INTEGER NOT NULL, duty TEXT NOT NULL, duty_ms INTEGER
) STRICT, WITHOUT ROWID;

CREATE TABLE shift (
  person TEXT NOT NULL, date TEXT NOT NULL, from_time TEXT NOT NULL, to_time TEXT NOT NULL,
  PRIMARY KEY (person, date)
) STRICT, WITHOUT ROWID;

CREATE TABLE day (
  desk TEXT NOT NULL, date TEXT NOT NULL, state TEXT NOT NULL, blank_labels INTEGER NOT NULL,
  opened_ms INTEGER NOT NULL, closed_ms INTEGER, closed_by TEXT, reopened_ms INTEGER, sheet TEXT, close_hash TEXT,
  PRIMARY KEY (desk, date)
) STRICT, WITHOUT ROWID;

CREATE TABLE animal (
  animal TEXT PRIMARY KEY, desk TEXT NOT NULL, day TEXT NOT NULL, hunter TEXT NOT NULL,
  tag TEXT NOT NULL,
  species TEXT NOT NULL, sex TEXT NOT NULL, age TEXT NOT NULL, harvested TEXT NOT NULL,
  harvested_at TEXT, place TEXT NOT NULL, head TEXT NOT NULL, consent TEXT NOT NULL, programme TEXT NOT NULL,
  contact TEXT, no_sample TEXT, state TEXT NOT NULL, arrived_ms INTEGER NOT NULL,
  assigned_ms INTEGER, sampler TEXT, outcome TEXT, finished_ms INTEGER,
  duplicate_of TEXT,
  unit TEXT
) STRICT, WITHOUT ROWID;
CREATE INDEX animal_of_class ON animal (unit, species, sex, age, state, duplicate_of);
CREATE INDEX animal_again ON animal (duplicate_of) WHERE duplicate_of IS NOT NULL;
CREATE INDEX animal_by_tag ON animal (tag);
CREATE INDEX animal_by_hunter ON animal (hunter);
CREATE INDEX animal_in_line ON animal (arrived_ms) WHERE state IN ('waiting', 'with-sampler');
CREATE INDEX animal_of_day
  ON animal (day, state, outcome, arrived_ms, assigned_ms, finished_ms, sampler);

CREATE TABLE told (
  animal TEXT PRIMARY KEY, low INTEGER NOT NULL, high INTEGER NOT NULL, chance INTEGER NOT NULL,
  ms INTEGER NOT NULL, taken_ms INTEGER
) STRICT, WITHOUT ROWID;

CREATE TABLE set_aside (
  animal TEXT NOT NULL, sampler TEXT NOT NULL, ms INTEGER NOT NULL, PRIMARY KEY (animal, sampler)
) STRICT, WITHOUT ROWID;

CREATE TABLE air (desk TEXT PRIMARY KEY, celsius REAL NOT NULL, ms INTEGER NOT NULL)
STRICT, WITHOUT ROWID;

CREATE TABLE kit (
  kit TEXT PRIMARY KEY, animal TEXT, state TEXT NOT NULL, sampler TEXT,
  numbered_ms INTEGER NOT NULL, opened_ms INTEGER, opened_by TEXT
) STRICT, WITHOUT ROWID;
CREATE INDEX kit_of_animal ON kit (animal) WHERE animal IS NOT NULL;
CREATE INDEX kit_opened_for_another ON kit (opened_ms) WHERE opened_by <> sampler;
CREATE INDEX kit_reserved ON kit (numbered_ms) WHERE state = 'reserved';

CREATE TABLE kit_line (
  hash TEXT NOT NULL, line INTEGER NOT NULL, account TEXT NOT NULL, delta INTEGER NOT NULL,
  ms INTEGER NOT NULL, PRIMARY KEY (hash, line)
) STRICT, WITHOUT ROWID;
CREATE INDEX kit_line_by_account ON kit_line (account, delta);

CREATE TABLE label (
  number TEXT NOT NULL, copy INTEGER NOT NULL, kit TEXT, stock TEXT NOT NULL,
  run TEXT NOT NULL, place INTEGER NOT NULL,
  printed_ms INTEGER NOT NULL, void_reason TEXT, void_ms INTEGER, PRIMARY KEY (number, copy)
) STRICT, WITHOUT ROWID;
CREATE INDEX label_of_kit ON label (kit);
CREATE INDEX label_of_run ON label (run, place);

CREATE TABLE label_run (
  hash TEXT PRIMARY KEY, blanks INTEGER NOT NULL, by_hand INTEGER NOT NULL,
  goes_on TEXT, goes_on_from INTEGER, ms INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE stock (name TEXT PRIMARY KEY, stock TEXT NOT NULL, retired INTEGER NOT NULL)
STRICT, WITHOUT ROWID;

CREATE TABLE tissue (
  animal TEXT NOT NULL, site TEXT NOT NULL, seen TEXT, size_mm REAL, missed TEXT,
  missed_words TEXT NOT NULL, bag TEXT, PRIMARY KEY (animal, site)
) STRICT, WITHOUT ROWID;

CREATE INDEX tissue_in_bag ON tissue (bag) WHERE bag IS NOT NULL;

CREATE TABLE look (
  hash TEXT PRIMARY KEY, animal TEXT NOT NULL, site TEXT NOT NULL, seen TEXT NOT NULL,
  sampler TEXT, ms INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE bag (
  bag TEXT PRIMARY KEY, animal TEXT NOT NULL, kit TEXT NOT NULL, site TEXT NOT NULL,
  kept TEXT NOT NULL, sealed_ms INTEGER NOT NULL, place TEXT NOT NULL, cooler TEXT, handoff TEXT
) STRICT, WITHOUT ROWID;
CREATE INDEX bag_in_cooler ON bag (cooler, sealed_ms) WHERE cooler IS NOT NULL;
CREATE INDEX bag_on_bench ON bag (sealed_ms) WHERE place = 'bench';
CREATE INDEX bag_of_animal ON bag (animal);

CREATE TABLE cooler (
  cooler TEXT PRIMARY KEY, name TEXT NOT NULL, keeping TEXT NOT NULL, capacity INTEGER,
  state TEXT NOT NULL, seal TEXT, handoff TEXT
) STRICT, WITHOUT ROWID;

CREATE TABLE reading (
  hash TEXT PRIMARY KEY, cooler TEXT NOT NULL, celsius REAL NOT NULL, excursion INTEGER NOT NULL,
  ms INTEGER NOT NULL, log_ms INTEGER NOT NULL, "by" TEXT, source TEXT NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX reading_of_cooler ON reading (cooler, log_ms);

CREATE TABLE count (
  desk TEXT NOT NULL, date TEXT NOT NULL, key TEXT NOT NULL, counted INTEGER NOT NULL, bags TEXT,
  PRIMARY KEY (desk, date, key)
) STRICT, WITHOUT ROWID;

CREATE TABLE count_try (
  hash TEXT PRIMARY KEY, desk TEXT NOT NULL, date TEXT NOT NULL, key TEXT NOT NULL,
  counted INTEGER NOT NULL, "by" TEXT, ms INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX count_try_of_day ON count_try (desk, date, ms);

CREATE TABLE handover (
  desk TEXT NOT NULL, date TEXT NOT NULL, words TEXT NOT NULL, "by" TEXT, ms INTEGER NOT NULL,
  PRIMARY KEY (desk, date)
) STRICT, WITHOUT ROWID;

CREATE TABLE variance (
  desk TEXT NOT NULL, date TEXT NOT NULL, key TEXT NOT NULL, expected INTEGER NOT NULL,
  counted INTEGER NOT NULL, reason TEXT NOT NULL, words TEXT NOT NULL,
  PRIMARY KEY (desk, date, key)
) STRICT, WITHOUT ROWID;

CREATE TABLE station_variance (
  station TEXT NOT NULL, date TEXT NOT NULL, key TEXT NOT NULL, expected INTEGER NOT NULL,
  counted INTEGER NOT NULL, reason TEXT NOT NULL, words TEXT NOT NULL,
  PRIMARY KEY (station, date, key)
) STRICT, WITHOUT ROWID;

CREATE TABLE station_close (
  station TEXT NOT NULL, date TEXT NOT NULL, hash TEXT NOT NULL, ms INTEGER NOT NULL,
  sheet TEXT NOT NULL, PRIMARY KEY (station, date)
) STRICT, WITHOUT ROWID;

CREATE TABLE seal (
  seal TEXT NOT NULL, cooler TEXT NOT NULL, sealed_ms INTEGER NOT NULL, broken_ms INTEGER,
  PRIMARY KEY (seal, cooler)
) STRICT, WITHOUT ROWID;

CREATE TABLE handoff (
  handoff TEXT PRIMARY KEY, destination TEXT NOT NULL, state TEXT NOT NULL, supplements TEXT,
  classed TEXT, packed TEXT,
  begun_ms INTEGER NOT NULL, signed_ms INTEGER, manifest TEXT, lead_signature TEXT,
  courier_signature TEXT, digest TEXT
) STRICT, WITHOUT ROWID;

CREATE TABLE handoff_cooler (
  handoff TEXT NOT NULL, cooler TEXT NOT NULL, seal TEXT, celsius REAL, counted INTEGER,
  expected INTEGER, words TEXT NOT NULL, scanned_ms INTEGER, PRIMARY KEY (handoff, cooler)
) STRICT, WITHOUT ROWID;

CREATE TABLE receipt (
  hash TEXT PRIMARY KEY, handoff TEXT NOT NULL, body TEXT NOT NULL, ms INTEGER NOT NULL, "by" TEXT
) STRICT, WITHOUT ROWID;
CREATE INDEX receipt_of_handoff ON receipt (handoff, ms);

CREATE TABLE coverage_plan (desk TEXT PRIMARY KEY, plan TEXT NOT NULL, ms INTEGER NOT NULL)
STRICT, WITHOUT ROWID;

CREATE TABLE unit_outline (
  unit TEXT PRIMARY KEY, polygons TEXT NOT NULL, file TEXT NOT NULL, ms INTEGER NOT NULL
) STRICT, WITHOUT ROWID;

CREATE TABLE clock_put_back (
  hash TEXT PRIMARY KEY, wall_ms INTEGER NOT NULL, last_ms INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
`

export const readTables: Migration = {
  number: 20,
  makes: 'read-tables',
  up: (connection) => connection.exec(sql + resultTablesSql),
}
