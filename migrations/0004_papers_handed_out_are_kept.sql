-- Working papers as they were handed to the owner: their contents frozen as they stood. of_id is the repair's, the estimate's,
-- the run's or the owner's they were drawn of, as the kind says.
CREATE TABLE handed_papers (
  id INTEGER PRIMARY KEY,
  kind TEXT NOT NULL CHECK (kind IN ('condition-report', 'go-ahead', 'run-in-certificate', 'ready-letter', 'hand-over', 'statement', 'uncollected-letter')),
  of_id INTEGER NOT NULL CHECK (of_id > 0),
  owner_id INTEGER NOT NULL REFERENCES owners (id),
  repair_id INTEGER REFERENCES repairs (id),
  handed_at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', handed_at) IS handed_at),
  handed_on TEXT NOT NULL CHECK (date(handed_on) IS handed_on),
  person_id INTEGER REFERENCES people (id),
  size TEXT NOT NULL CHECK (size <> ''),
  contents TEXT NOT NULL CHECK (json_valid(contents)),
  contents_hash TEXT NOT NULL CHECK (length(contents_hash) = 64),
  UNIQUE (id, size),
  CHECK ((kind = 'statement') = (repair_id IS NULL))
) STRICT;
CREATE INDEX handed_papers_of ON handed_papers (kind, of_id);

-- The PDF of one as it was first drawn, on the size it was handed out on; as kept_papers has those of documents.
CREATE TABLE kept_handed_papers (
  id INTEGER PRIMARY KEY,
  hash TEXT NOT NULL CHECK (length(hash) = 64),
  bytes INTEGER NOT NULL CHECK (bytes > 0),
  size TEXT NOT NULL,
  drawn_by TEXT NOT NULL CHECK (drawn_by <> ''),
  FOREIGN KEY (id, size) REFERENCES handed_papers (id, size)
) STRICT;

CREATE TRIGGER handed_papers_are_never_changed BEFORE UPDATE ON handed_papers BEGIN SELECT RAISE(ABORT, 'a paper once handed out is never changed'); END;
CREATE TRIGGER handed_papers_are_never_deleted BEFORE DELETE ON handed_papers BEGIN SELECT RAISE(ABORT, 'a paper once handed out is never deleted'); END;
CREATE TRIGGER kept_handed_papers_are_never_changed BEFORE UPDATE ON kept_handed_papers BEGIN SELECT RAISE(ABORT, 'a paper once drawn is never changed'); END;
CREATE TRIGGER kept_handed_papers_are_never_deleted BEFORE DELETE ON kept_handed_papers BEGIN SELECT RAISE(ABORT, 'a paper once drawn is never deleted'); END;
