-- Which steps of a service were done, when and by whom; the day book tells of each tick and each taken back.
CREATE TABLE steps_done (
  id INTEGER PRIMARY KEY,
  repair_id INTEGER NOT NULL REFERENCES repairs (id),
  step TEXT NOT NULL CHECK (step <> ''),
  done INTEGER NOT NULL CHECK (done IN (0, 1)),
  at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', at) IS at),
  person_id INTEGER REFERENCES people (id)
) STRICT;
CREATE UNIQUE INDEX steps_done_of ON steps_done (repair_id, step);
