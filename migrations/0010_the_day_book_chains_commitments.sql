-- The chain holds a commitment to each input, SHA-256 over salt and input, so that an input can be taken out later and the chain still
-- holds. The rows of before are chained anew by the step of this migration in db/file/migration-steps.ts, for SQL has no SHA-256; what
-- each was chained by stays beside it.
DROP TRIGGER day_book_is_never_changed;
DROP TRIGGER day_book_is_never_shortened;
DROP INDEX day_book_of;
DROP INDEX day_book_by_time;
ALTER TABLE day_book RENAME TO day_book_of_before;
CREATE TABLE day_book (
  id INTEGER PRIMARY KEY,
  at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', at) IS at),
  person_id INTEGER REFERENCES people (id),
  act TEXT NOT NULL CHECK (act GLOB '?*.?*'),
  -- which shape of the act's input it is
  version INTEGER NOT NULL DEFAULT 1 CHECK (version > 0),
  -- what the sender called this doing of the act, so that it is not done twice
  key TEXT CHECK (length(key) BETWEEN 8 AND 128),
  subject_kind TEXT NOT NULL,
  subject_id INTEGER NOT NULL,
  commitment TEXT NOT NULL CHECK (length(commitment) = 64),
  -- both are there, or both were taken out
  salt TEXT CHECK (length(salt) = 64),
  input TEXT CHECK (json_valid(input)),
  -- what was answered, kept for whoever asks again with the key
  result TEXT CHECK (json_valid(result)),
  previous_hash TEXT NOT NULL CHECK (length(previous_hash) = 64),
  hash TEXT NOT NULL UNIQUE CHECK (length(hash) = 64),
  -- what a row of before this shape was chained by
  former_hash TEXT CHECK (length(former_hash) = 64),
  CHECK ((salt IS NULL) = (input IS NULL)),
  CHECK (result IS NULL OR input IS NOT NULL)
) STRICT;
CREATE INDEX day_book_of ON day_book (subject_kind, subject_id);
CREATE INDEX day_book_by_time ON day_book (at);
CREATE UNIQUE INDEX day_book_by_key ON day_book (key) WHERE key IS NOT NULL;
CREATE INDEX day_book_redacted ON day_book (id) WHERE input IS NULL;
CREATE TRIGGER day_book_is_never_changed BEFORE UPDATE ON day_book
WHEN new.input IS NOT NULL OR new.salt IS NOT NULL OR new.result IS NOT NULL OR new.id IS NOT old.id OR new.at IS NOT old.at
  OR new.person_id IS NOT old.person_id OR new.act IS NOT old.act OR new.version IS NOT old.version OR new.key IS NOT old.key
  OR new.subject_kind IS NOT old.subject_kind OR new.subject_id IS NOT old.subject_id OR new.commitment IS NOT old.commitment
  OR new.previous_hash IS NOT old.previous_hash OR new.hash IS NOT old.hash OR new.former_hash IS NOT old.former_hash
BEGIN SELECT RAISE(ABORT, 'the day book is never changed'); END;
CREATE TRIGGER day_book_is_never_shortened BEFORE DELETE ON day_book BEGIN SELECT RAISE(ABORT, 'nothing is deleted from the day book'); END;
