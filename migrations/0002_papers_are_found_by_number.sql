-- A paper is found by its number alone: a name finds the owner and the repairs, which lead to their papers. An owner's
-- papers, five and more for each visit, would otherwise crowd out both.
UPDATE find_entries SET words = (SELECT number FROM documents WHERE documents.id = find_entries.subject_id)
WHERE kind = 'paper';
