-- A reading tells how the hands were found and how they were left, and each thing that was heard by itself: blows at the hour, at the half hour, which quarter.
ALTER TABLE readings ADD COLUMN left_ms INTEGER;
ALTER TABLE readings ADD COLUMN event TEXT CHECK (event IN ('cased', 'moved', 'oiled', 'adjusted'));
ALTER TABLE readings ADD COLUMN hour_shown INTEGER CHECK (hour_shown BETWEEN 1 AND 12);
ALTER TABLE readings ADD COLUMN hour_counted INTEGER CHECK (hour_counted BETWEEN 0 AND 100);
ALTER TABLE readings ADD COLUMN half_counted INTEGER CHECK (half_counted BETWEEN 0 AND 100);
ALTER TABLE readings ADD COLUMN quarter INTEGER CHECK (quarter BETWEEN 1 AND 4);
ALTER TABLE readings ADD COLUMN quarter_right INTEGER CHECK (quarter_right IN (0, 1));
ALTER TABLE readings ADD COLUMN twelve_right INTEGER NOT NULL DEFAULT 0 CHECK (twelve_right IN (0, 1));
ALTER TABLE readings ADD COLUMN four_right INTEGER NOT NULL DEFAULT 0 CHECK (four_right IN (0, 1));
ALTER TABLE readings ADD COLUMN self_corrected INTEGER CHECK (self_corrected IN (0, 1));
ALTER TABLE readings ADD COLUMN silent INTEGER CHECK (silent IN (0, 1));
ALTER TABLE readings ADD COLUMN repeats INTEGER CHECK (repeats IN (0, 1));
DROP TRIGGER readings_are_never_changed;
-- Where hands were set, older logs have the error as it was left, and not as it was found.
UPDATE readings SET left_ms = error_ms, error_ms = NULL WHERE hands_set = 1;
-- Notes of the fourth quarter and blows of the hour were counted together, as by core/acts/heard.ts.
UPDATE readings SET
    hour_shown = (CAST(substr(heard_at, 1, 2) AS INTEGER) + 11) % 12 + 1,
    hour_counted = CASE WHEN blows > 16 THEN blows - 16 ELSE blows END
  WHERE blows IS NOT NULL AND heard_at LIKE '%:00';
UPDATE readings SET quarter = 1, quarter_right = blows = 4 WHERE blows IS NOT NULL AND heard_at LIKE '%:15';
UPDATE readings SET quarter = 2, quarter_right = 1 WHERE blows = 8 AND heard_at LIKE '%:30';
UPDATE readings SET half_counted = blows WHERE blows IS NOT NULL AND blows <> 8 AND heard_at LIKE '%:30';
UPDATE readings SET quarter = 3, quarter_right = blows = 12 WHERE blows IS NOT NULL AND heard_at LIKE '%:45';
ALTER TABLE readings DROP COLUMN hands_set;
ALTER TABLE readings DROP COLUMN heard_at;
ALTER TABLE readings DROP COLUMN blows;
CREATE TRIGGER readings_are_never_changed BEFORE UPDATE ON readings BEGIN SELECT RAISE(ABORT, 'a reading is corrected by a new one'); END;
-- How steady a clock has to go before it passes; NULL for runs that were begun before anybody asked.
ALTER TABLE run_in_runs ADD COLUMN steady_within TEXT;
