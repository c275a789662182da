-- What lets phones in. Backups hold all of it, so that a successor or a sibling is the same server to every phone.

-- Keys that never leave this file and its copies: of the cookies, of the authority.
CREATE TABLE secrets (
  name    TEXT    PRIMARY KEY,
  made_at INTEGER NOT NULL,                -- ms since 1970
  value   BLOB    NOT NULL
) STRICT, WITHOUT ROWID;

-- Codes that pair one phone each.
CREATE TABLE pair_codes (
  code       TEXT    PRIMARY KEY,          -- six digits
  expires_at INTEGER NOT NULL,             -- ms since 1970
  tries      INTEGER NOT NULL DEFAULT 0    -- wrong guesses since it was made
) STRICT, WITHOUT ROWID;

-- Phones and computers: those that were paired here, and those that the log knows of.
CREATE TABLE devices (
  device    TEXT    PRIMARY KEY,           -- its record
  label     TEXT    NOT NULL DEFAULT '',   -- as it called itself when it was paired
  paired_at INTEGER NOT NULL DEFAULT 0,    -- ms since 1970; 0 when it was never paired here
  seen_at   INTEGER NOT NULL DEFAULT 0,
  shut_out  INTEGER NOT NULL DEFAULT 0     -- 1 for ever, once any op says so
) STRICT, WITHOUT ROWID;

INSERT INTO devices (device, shut_out)
  SELECT lower(hex(rec)), max(erased OR coalesce(json_type(CAST(bytes AS TEXT), '$.set.revoked') = 'true', 0)) FROM ops
  WHERE json_extract(CAST(bytes AS TEXT), '$.kind') = 'device' GROUP BY rec;
