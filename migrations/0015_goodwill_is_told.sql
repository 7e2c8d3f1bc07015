-- Why the shop does a comeback at its own cost although the warranty does not cover it; '' where it does, or where the shop does not.
ALTER TABLE repairs ADD COLUMN goodwill TEXT NOT NULL DEFAULT '';
