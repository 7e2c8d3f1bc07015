-- Every word of the find index, to look for those one slip away from what was typed.
CREATE VIRTUAL TABLE find_vocabulary USING fts5vocab (find_words, row);
