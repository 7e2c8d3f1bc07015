-- A sum that the owner named is not passed; only on an estimate agreed as it stands the shop may pass it by its margin.
ALTER TABLE go_aheads ADD COLUMN limit_named INTEGER NOT NULL DEFAULT 0 CHECK (limit_named IN (0, 1));
