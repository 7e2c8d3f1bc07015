-- How large and heavy a clock is, and what a place bears; null where nobody measured.
ALTER TABLE clocks ADD COLUMN height_mm INTEGER CHECK (height_mm > 0);
ALTER TABLE clocks ADD COLUMN width_mm INTEGER CHECK (width_mm > 0);
ALTER TABLE clocks ADD COLUMN depth_mm INTEGER CHECK (depth_mm > 0);
-- with its weights
ALTER TABLE clocks ADD COLUMN weight_g INTEGER CHECK (weight_g > 0);
ALTER TABLE shelf_places ADD COLUMN bears_g INTEGER CHECK (bears_g > 0);
