-- Erasing in bulk waits until a second phone, or the computer itself, agrees. No value of anything stands in these tables.

-- Erasures that count: one row each, kept for an hour.
CREATE TABLE recent_erasures (
  device TEXT    NOT NULL,                 -- whose session brought it; at the computer itself, who says to have written it
  at     INTEGER NOT NULL                  -- ms since 1970
) STRICT;
CREATE INDEX recent_erasures_by_device ON recent_erasures (device, at);

-- Erasures that came and wait. Their ops are not here: whoever sent them sends them again.
CREATE TABLE held_erasures (
  id     BLOB    PRIMARY KEY,              -- of the op
  rec    BLOB    NOT NULL,
  kind   TEXT    NOT NULL,                 -- of the record, as the erasure says; "" when it does not
  device TEXT    NOT NULL,                 -- as above
  since  INTEGER NOT NULL                  -- ms since 1970
) STRICT, WITHOUT ROWID;

-- Who agreed to an erasure, or stopped it. They may know of it before this server does.
CREATE TABLE erasure_votes (
  id     BLOB    NOT NULL,                 -- of the op that erases
  rec    BLOB    NOT NULL,
  device TEXT    NOT NULL,                 -- '' for the computer itself, and for what another server of this book let pass
  agrees INTEGER NOT NULL,                 -- 0: stopped
  PRIMARY KEY (id, rec, device)
) STRICT, WITHOUT ROWID;

-- By this key servers of one backup know what another of them let pass.
INSERT INTO secrets (name, made_at, value) VALUES ('erasures', 0, randomblob(32));
UPDATE secrets SET sum = row_sum(name, made_at, value) WHERE name = 'erasures';
