-- The daybook: one row a change, its changeset in parts.

-- name: add_entry
INSERT INTO daybook (made_at, made_by, terminal, sentence) VALUES (?1, ?2, ?3, ?4);

-- name: add_part
INSERT INTO daybook_changes (daybook_id, part, bytes) VALUES (?1, ?2, ?3);

-- name: read_parts
SELECT bytes FROM daybook_changes WHERE daybook_id = ?1 ORDER BY part;

-- name: read_entry_undo
SELECT undo_ended FROM daybook WHERE id = ?1;

-- name: end_undo
UPDATE daybook SET undo_ended = 1 WHERE undo_ended = 0;
