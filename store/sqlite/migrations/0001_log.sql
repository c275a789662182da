-- One row: who this server is, which book it holds, and what its log adds up to.
CREATE TABLE book (
  only        INTEGER PRIMARY KEY CHECK (only = 1),
  server      TEXT    NOT NULL,            -- this server, made once, kept by backups
  log         TEXT    NOT NULL,            -- this log, new with every restore
  book        TEXT    NOT NULL DEFAULT '', -- '' until the first push
  count       INTEGER NOT NULL DEFAULT 0,  -- stored ops
  digest      BLOB    NOT NULL,            -- XOR of the SHA-256 of their ids
  changes     INTEGER NOT NULL DEFAULT 0,  -- moves with every change: tells whether a new copy is due
  erases      INTEGER NOT NULL DEFAULT 0,  -- moves with every push that erases
  erases_done INTEGER NOT NULL DEFAULT 0,  -- the erases whose traces are gone from this file and from all copies
  stale_pages INTEGER NOT NULL DEFAULT 0   -- 1 while erased values may be left in this file or its write-ahead log
) STRICT;

-- The log. bytes comes last, so that reading the columns before it need not walk through large values.
CREATE TABLE ops (
  seq         INTEGER PRIMARY KEY,         -- order of arrival
  id          BLOB    NOT NULL UNIQUE,
  rec         BLOB    NOT NULL,
  erased      INTEGER NOT NULL,            -- 1 when only the frame of the op is left
  via         TEXT    NOT NULL,            -- the device whose session brought it
  received_at INTEGER NOT NULL,            -- ms since 1970
  bytes       BLOB    NOT NULL             -- as received
) STRICT;
CREATE INDEX ops_by_rec ON ops (rec);

-- Records whose values are gone for good, also for ops that arrive later.
CREATE TABLE erased_records (
  rec BLOB PRIMARY KEY
) STRICT, WITHOUT ROWID;

-- Files that live ops name.
CREATE TABLE named_blobs (
  hash BLOB    NOT NULL,
  seq  INTEGER NOT NULL REFERENCES ops (seq),
  PRIMARY KEY (hash, seq)
) STRICT, WITHOUT ROWID;
CREATE INDEX named_blobs_by_seq ON named_blobs (seq);

-- The SHA-256 of the hashes of files that were erased, so that a late phone cannot bring them back.
CREATE TABLE dropped_blobs (
  mark BLOB PRIMARY KEY
) STRICT, WITHOUT ROWID;

-- Files that are to be deleted next. A row goes when its file is gone.
CREATE TABLE leaving_blobs (
  hash BLOB PRIMARY KEY
) STRICT, WITHOUT ROWID;
