-- Undo and redo: an entry that undoes another names it in `undoes`, and the other names it in `undone_by`. An entry that
-- redoes undoes the undoing one, and the first is free to be undone again.

-- name: read_entries
SELECT id, made_at, made_by, sentence, undone_by IS NOT NULL, undoes, undo_ended
FROM daybook WHERE id < ?1 ORDER BY id DESC LIMIT ?2;

-- name: read_entry
SELECT id, made_at, made_by, sentence, undone_by IS NOT NULL, undoes, undo_ended FROM daybook WHERE id = ?1;

-- name: find_to_undo
SELECT max(id) FROM daybook
WHERE made_by = ?1 AND terminal IS ?2 AND undone_by IS NULL AND undoes IS NULL AND id > ?3;

-- name: find_to_redo
SELECT daybook.id FROM daybook CROSS JOIN daybook AS undone ON undone.id = daybook.undoes
WHERE daybook.made_by = ?1 AND daybook.terminal IS ?2 AND daybook.undone_by IS NULL AND daybook.undoes IS NOT NULL
    AND undone.undoes IS NULL AND daybook.id > ?3
ORDER BY daybook.id DESC LIMIT 1;

-- A change made since, also one that is undone by now.
-- name: find_newer_change
SELECT id FROM daybook WHERE id > ?3 AND made_by = ?1 AND terminal IS ?2 AND undoes IS NULL LIMIT 1;

-- Whether a change after ?1 still holds: it is not undone, or it undoes what was made before.
-- name: find_holding_since
SELECT id FROM daybook WHERE id > ?1 AND undone_by IS NULL AND (undoes IS NULL OR undoes < ?1) LIMIT 1;

-- name: put_undoes
UPDATE daybook SET undoes = ?2 WHERE id = ?1;

-- name: put_undone_by
UPDATE daybook SET undone_by = ?2 WHERE id = ?1;
