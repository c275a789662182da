-- A book as the first format left it. Never change this file: every later version must open it.
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
INSERT INTO book VALUES(1,'9f4bdbbfcb2a9acb4f1a1a2f1ba4a9b6','b2eea52be79961aff9eb8fba1bb9a9e9','0123456789abcdef0123456789abcdef',5,X'70c84a048b431f852c4d7a5e4672a364d2ae68cd770af677fc928bdeed4ce008',5,1,1,0);
CREATE TABLE ops (
  seq         INTEGER PRIMARY KEY,         -- order of arrival
  id          BLOB    NOT NULL UNIQUE,
  rec         BLOB    NOT NULL,
  erased      INTEGER NOT NULL,            -- 1 when only the frame of the op is left
  via         TEXT    NOT NULL,            -- the device whose session brought it
  received_at INTEGER NOT NULL,            -- ms since 1970
  bytes       BLOB    NOT NULL             -- as received
) STRICT;
INSERT INTO ops VALUES(1,X'10000000000000000000000000000001',X'20000000000000000000000000000001',0,'a-phone',1748779200000,CAST('{"id":"10000000000000000000000000000001","at":1748779200000,"kind":"tyre","rec":"20000000000000000000000000000001","set":{"measured_mm":41.5,"exact":9007199254740993},"author":"","device":"","schema":1,"later":[]}' AS BLOB));
INSERT INTO ops VALUES(2,X'10000000000000000000000000000002',X'20000000000000000000000000000002',0,'a-phone',1748779200000,CAST('{"id":"10000000000000000000000000000002","at":1748779200001,"kind":"photo","rec":"20000000000000000000000000000002","set":{"blob":"abababababababababababababababababababababababababababababababab"},"author":"","device":"","schema":1}' AS BLOB));
INSERT INTO ops VALUES(3,X'10000000000000000000000000000003',X'20000000000000000000000000000003',1,'a-phone',1748779200000,CAST('{"id":"10000000000000000000000000000003","at":1748779200002,"kind":"photo","rec":"20000000000000000000000000000003","set":{"blob":null},"erased":true}' AS BLOB));
INSERT INTO ops VALUES(4,X'10000000000000000000000000000004',X'20000000000000000000000000000003',0,'a-phone',1748779200000,CAST('{"id":"10000000000000000000000000000004","at":1748779200003,"kind":"erase","rec":"20000000000000000000000000000003","set":{"kind":"photo"},"author":"","device":"","schema":1}' AS BLOB));
INSERT INTO ops VALUES(5,X'10000000000000000000000000000005',X'20000000000000000000000000000001',0,'a-phone',1748779200000,CAST('{"id":"10000000000000000000000000000005","at":1748779200004,"kind":"tyre","rec":"20000000000000000000000000000001","set":{"deleted":true},"bases":{},"seen":["10000000000000000000000000000001"],"author":"","device":"","schema":1}' AS BLOB));
CREATE TABLE erased_records (
  rec BLOB PRIMARY KEY
) STRICT, WITHOUT ROWID;
INSERT INTO erased_records VALUES(X'20000000000000000000000000000003');
CREATE TABLE named_blobs (
  hash BLOB    NOT NULL,
  seq  INTEGER NOT NULL REFERENCES ops (seq),
  PRIMARY KEY (hash, seq)
) STRICT, WITHOUT ROWID;
INSERT INTO named_blobs VALUES(X'abababababababababababababababababababababababababababababababab',2);
CREATE TABLE dropped_blobs (
  mark BLOB PRIMARY KEY
) STRICT, WITHOUT ROWID;
INSERT INTO dropped_blobs VALUES(X'a57b5956dbc6e02127bbb40c87cb8244196d6d18e0e141936ffcd8cffad457ad');
CREATE TABLE leaving_blobs (
  hash BLOB PRIMARY KEY
) STRICT, WITHOUT ROWID;
CREATE INDEX ops_by_rec ON ops (rec);
CREATE INDEX named_blobs_by_seq ON named_blobs (seq);
PRAGMA user_version = 1;
PRAGMA application_id = 1382641011;
