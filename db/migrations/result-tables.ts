/** The tables of laboratory results, folded from the entries. */
export const resultTablesSql = `
CREATE TABLE result_file (
  hash TEXT PRIMARY KEY, laboratory TEXT NOT NULL, file TEXT NOT NULL, digest TEXT NOT NULL,
  reading TEXT NOT NULL, rows INTEGER NOT NULL, taken INTEGER NOT NULL, known INTEGER NOT NULL,
  skipped INTEGER NOT NULL, doubts INTEGER NOT NULL, ms INTEGER NOT NULL, "by" TEXT
) STRICT, WITHOUT ROWID;

CREATE TABLE row_doubt (
  file TEXT NOT NULL, line INTEGER NOT NULL, laboratory TEXT NOT NULL, file_name TEXT NOT NULL,
  doubt TEXT NOT NULL, bag TEXT, number TEXT NOT NULL, said TEXT NOT NULL, method TEXT NOT NULL,
  date TEXT NOT NULL, ms INTEGER NOT NULL, settlement TEXT, words TEXT NOT NULL, settled_by TEXT,
  settled_ms INTEGER, PRIMARY KEY (file, line)
) STRICT, WITHOUT ROWID;

CREATE TABLE result (
  hash TEXT PRIMARY KEY, bag TEXT NOT NULL, animal TEXT NOT NULL, word TEXT NOT NULL,
  method TEXT NOT NULL, tested TEXT, laboratory TEXT NOT NULL, file TEXT NOT NULL,
  line INTEGER NOT NULL, ms INTEGER NOT NULL, "by" TEXT
) STRICT, WITHOUT ROWID;
CREATE INDEX result_of_animal ON result (animal, ms);

CREATE TABLE sample_result (
  bag TEXT PRIMARY KEY, animal TEXT NOT NULL, site TEXT NOT NULL, word TEXT NOT NULL,
  method TEXT NOT NULL, tested TEXT, laboratory TEXT NOT NULL, hash TEXT NOT NULL,
  ms INTEGER NOT NULL
) STRICT, WITHOUT ROWID;
CREATE INDEX sample_result_of_animal ON sample_result (animal, site, word);

CREATE TABLE result_rules (one INTEGER PRIMARY KEY, rules TEXT NOT NULL) STRICT;

CREATE TABLE follow_up (
  hash TEXT PRIMARY KEY, animal TEXT NOT NULL, step TEXT NOT NULL, words TEXT NOT NULL,
  ms INTEGER NOT NULL, "by" TEXT
) STRICT, WITHOUT ROWID;
CREATE INDEX follow_up_of_animal ON follow_up (animal, ms);

CREATE TABLE hunter_told (
  hash TEXT PRIMARY KEY, animal TEXT NOT NULL, word TEXT NOT NULL, how TEXT NOT NULL,
  "on" TEXT NOT NULL, words TEXT NOT NULL, ms INTEGER NOT NULL, "by" TEXT
) STRICT, WITHOUT ROWID;
CREATE INDEX hunter_told_of_animal ON hunter_told (animal, ms);
`
