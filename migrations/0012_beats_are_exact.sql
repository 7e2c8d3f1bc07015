-- Beats an hour as exact decimal text, or the train they follow from (84-78 / 7-7 / 30); '' where nobody has counted.
ALTER TABLE clocks ADD COLUMN beats TEXT NOT NULL DEFAULT '' CHECK (length(beats) <= 200);
UPDATE clocks SET beats = CAST(beats_per_hour AS TEXT) WHERE beats_per_hour IS NOT NULL;
ALTER TABLE clocks DROP COLUMN beats_per_hour;
