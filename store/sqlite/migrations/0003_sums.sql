-- A flipped bit is noticed: every op has the SHA-256 of its bytes, every row a sum of its other columns. sha256() and
-- row_sum() are functions of the program, see sums_row.go; reading this file needs neither.
ALTER TABLE ops ADD COLUMN sha256 BLOB;    -- of bytes; a new one when they are erased
ALTER TABLE ops ADD COLUMN sum    INTEGER; -- of the columns before bytes
UPDATE ops SET sha256 = sha256(bytes), sum = row_sum(id, rec, erased, via, received_at);

ALTER TABLE devices RENAME COLUMN shut_out TO revoked;
ALTER TABLE devices       ADD COLUMN sum INTEGER;
ALTER TABLE secrets       ADD COLUMN sum INTEGER;
ALTER TABLE dropped_blobs ADD COLUMN sum INTEGER;
ALTER TABLE book          ADD COLUMN sum INTEGER;
UPDATE devices       SET sum = row_sum(device, label, paired_at, seen_at, revoked);
UPDATE secrets       SET sum = row_sum(name, made_at, value);
UPDATE dropped_blobs SET sum = row_sum(mark);

-- Ops that were found damaged and taken out of the log. One leaves when a phone brings the bytes that its sha256 says.
CREATE TABLE damaged_ops (
  id       BLOB    PRIMARY KEY,
  rec      BLOB    NOT NULL,
  sha256   BLOB    NOT NULL,               -- of the bytes that came
  found_at INTEGER NOT NULL,               -- ms since 1970
  bytes    BLOB    NOT NULL                -- as they are now
) STRICT, WITHOUT ROWID;

-- How far the slow check of everything has come. Nothing else depends on it.
CREATE TABLE scrub (
  only       INTEGER PRIMARY KEY CHECK (only = 1),
  seq        INTEGER NOT NULL DEFAULT 0,   -- the op checked last
  photo      TEXT    NOT NULL DEFAULT '',  -- the photo checked last
  checked_at INTEGER NOT NULL DEFAULT 0    -- when everything had been checked once more, ms since 1970
) STRICT;
INSERT INTO scrub (only) VALUES (1);

UPDATE book SET sum = row_sum(server, log, book, count, digest, changes, erases, erases_done, stale_pages);
