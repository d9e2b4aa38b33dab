-- The daybook: one row a change, its changeset in parts.

-- The moment was taken before the store was waited for: where another's entry is later by less than half a minute, this
-- one, which comes after it, bears that entry's.
-- name: add_entry
INSERT INTO daybook (made_at, made_by, terminal, sentence) VALUES (
    coalesce((SELECT newest.made_at FROM daybook AS newest
        WHERE newest.id = (SELECT max(id) FROM daybook)
            AND julianday(newest.made_at) - julianday(?1) BETWEEN 0 AND 30.0 / 86400), ?1),
    ?2, ?3, ?4);

-- name: add_part
INSERT INTO daybook_changes (daybook_id, part, bytes) VALUES (?1, ?2, ?3);

-- name: read_parts
SELECT bytes FROM daybook_changes WHERE daybook_id = ?1 ORDER BY part;

-- name: read_entry_undo
SELECT undo_ended FROM daybook WHERE id = ?1;

-- name: end_undo
UPDATE daybook SET undo_ended = 1 WHERE undo_ended = 0;
