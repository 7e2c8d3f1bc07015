-- Who may do what. Everybody who was here before could do everything, and goes on doing so: as an owner.
ALTER TABLE people ADD COLUMN roles TEXT NOT NULL DEFAULT '["owner"]'
  CHECK (json_valid(roles) AND json_type(roles) = 'array' AND json_array_length(roles) BETWEEN 1 AND 3);
-- '' where those of the name are shown
ALTER TABLE people ADD COLUMN initials TEXT NOT NULL DEFAULT '' CHECK (length(initials) <= 4);
-- hours a week at the bench as decimal text; '' where nobody counted them
ALTER TABLE people ADD COLUMN bench_hours TEXT NOT NULL DEFAULT '' CHECK (length(bench_hours) <= 30);
