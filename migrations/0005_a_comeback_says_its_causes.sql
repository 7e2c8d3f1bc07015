-- What the fault of a comeback comes from, among the things a warranty may leave out.
ALTER TABLE repairs ADD COLUMN comeback_causes TEXT NOT NULL DEFAULT '[]' CHECK (json_valid(comeback_causes));
