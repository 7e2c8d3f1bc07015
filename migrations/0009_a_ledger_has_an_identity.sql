-- What tells this ledger from every other, and what a log beside it belongs to. The random digits come from outside.
CREATE TABLE ledger_identity (
  id INTEGER PRIMARY KEY CHECK (id = 1),
  -- for good: photographs, papers and backups carry it
  identity TEXT NOT NULL CHECK (length(identity) = 32 AND identity NOT GLOB '*[^0-9a-f]*'),
  -- new at each opening: a log was written under this one, or is another file's
  opening TEXT NOT NULL CHECK (length(opening) = 32 AND opening NOT GLOB '*[^0-9a-f]*')
) STRICT;
INSERT INTO ledger_identity (id, identity, opening) VALUES (1, random_hex(16), random_hex(16));
CREATE TRIGGER ledger_identity_is_never_changed BEFORE UPDATE OF identity ON ledger_identity BEGIN SELECT RAISE(ABORT, 'a ledger keeps its identity'); END;
CREATE TRIGGER ledger_identity_is_never_deleted BEFORE DELETE ON ledger_identity BEGIN SELECT RAISE(ABORT, 'a ledger keeps its identity'); END;
