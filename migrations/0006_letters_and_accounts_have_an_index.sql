-- What stood on an account before a day is the sum of all that came earlier: read from indexes that carry the amounts, not from
-- the papers and payments themselves.
CREATE INDEX documents_billed ON documents (issued_on, total_minor, tax_minor) WHERE kind IN ('invoice', 'credit-note');
DROP INDEX payments_by_day;
CREATE INDEX payments_by_day ON payments (on_date, repair_id, method, amount_minor);

-- The first letter typed is found as fast as the next: without a list of its own it was gathered from every word that begins with it.
DROP TABLE find_words;
CREATE VIRTUAL TABLE find_words USING fts5 (words, content = 'find_entries', content_rowid = 'id',
  tokenize = "unicode61 remove_diacritics 2", prefix = '1 2 3');
INSERT INTO find_words (find_words) VALUES ('rebuild');
