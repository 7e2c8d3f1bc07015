-- Owners whose personal data were taken out, when, by whom and why. What tax law keeps, the papers issued, stays.
CREATE TABLE forgotten_owners (
  -- the owner’s
  id INTEGER PRIMARY KEY REFERENCES owners (id),
  at TEXT NOT NULL CHECK (strftime('%Y-%m-%dT%H:%M:%fZ', at) IS at),
  person_id INTEGER REFERENCES people (id),
  reason TEXT NOT NULL CHECK (trim(reason) <> '')
) STRICT;
-- Has a row only inside the transaction that forgets an owner: papers handed out to them may go then, and at no other time.
CREATE TABLE forgetting (id INTEGER PRIMARY KEY REFERENCES owners (id)) STRICT;
DROP TRIGGER handed_papers_are_never_deleted;
DROP TRIGGER kept_handed_papers_are_never_deleted;
CREATE TRIGGER handed_papers_are_never_deleted BEFORE DELETE ON handed_papers
WHEN old.owner_id NOT IN (SELECT id FROM forgetting)
BEGIN SELECT RAISE(ABORT, 'a paper once handed out is never deleted'); END;
CREATE TRIGGER kept_handed_papers_are_never_deleted BEFORE DELETE ON kept_handed_papers
WHEN NOT EXISTS (SELECT 1 FROM handed_papers h JOIN forgetting f ON f.id = h.owner_id WHERE h.id = old.id)
BEGIN SELECT RAISE(ABORT, 'a paper once drawn is never deleted'); END;
INSERT INTO settings (name, value) SELECT 'privacy', '{"keepPapersYears":10}' WHERE EXISTS (SELECT 1 FROM settings);
