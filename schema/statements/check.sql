-- What can be wrong in a store that SQLite itself lets pass: each row of these is one finding, a sentence. No measure, contact
-- or price is told.

-- name: check_integrity
PRAGMA integrity_check;

-- name: check_references
SELECT printf('%d rows of "%s" refer to a row of "%s" that is not there.', count(*), "table", parent)
FROM pragma_foreign_key_check GROUP BY "table", parent;

-- name: check_production_names
SELECT printf('%d productions are called "%s".', count(*), name) FROM production GROUP BY name HAVING count(*) > 1;

-- name: check_performer_names
SELECT printf('%d performers are called "%s".', count(*), name) FROM performer GROUP BY name HAVING count(*) > 1;

-- name: check_person_names
SELECT printf('%d people are called "%s".', count(*), name) FROM person GROUP BY name HAVING count(*) > 1;

-- name: check_equipment_names
SELECT printf('%d pieces of equipment are called "%s".', count(*), name) FROM equipment GROUP BY name HAVING count(*) > 1;

-- name: check_material_names
SELECT printf('%d materials are called "%s".', count(*), name) FROM material GROUP BY name HAVING count(*) > 1;

-- name: check_measure_names
SELECT printf('%d measures are called "%s".', count(*), name) FROM measure_name GROUP BY name HAVING count(*) > 1;

-- name: check_measure_sheets
SELECT printf('%d measure sheets of "%s" are of one day, %s.', count(*), performer.name, taken_on)
FROM measure_sheet JOIN performer ON performer.id = performer_id
GROUP BY performer_id, taken_on HAVING count(*) > 1;

-- name: check_role_names
SELECT printf('%s: %d roles are called "%s".', production.name, count(*), role.name)
FROM role JOIN production ON production.id = role.production_id
GROUP BY role.production_id, role.name HAVING count(*) > 1;

-- name: check_costume_numbers
SELECT printf('%s: %d costumes have the number %s.', production.name, count(*), number)
FROM costume JOIN production ON production.id = costume.production_id
GROUP BY costume.production_id, number HAVING count(*) > 1;

-- name: check_piece_names
SELECT printf('%s: %d pieces are called "%s".', production.name, count(*), piece.name)
FROM piece JOIN production ON production.id = piece.production_id
GROUP BY piece.production_id, piece.name HAVING count(*) > 1;

-- name: check_step_keys
SELECT printf('%s: %d steps are called "%s/%s".', production.name, count(*), piece.name, key)
FROM step JOIN piece ON piece.id = piece_id JOIN production ON production.id = step.production_id
GROUP BY piece_id, key HAVING count(*) > 1;

-- name: check_costume_roles
SELECT printf('%s: the costume %s is of a role of another production.', production.name, number)
FROM costume JOIN role ON role.id = role_id JOIN production ON production.id = costume.production_id
WHERE role.production_id <> costume.production_id;

-- name: check_piece_costumes
SELECT printf('%s: the piece "%s" is of a costume of another production.', production.name, piece.name)
FROM piece_costume JOIN piece ON piece.id = piece_id JOIN costume ON costume.id = costume_id
    JOIN production ON production.id = piece.production_id
WHERE costume.production_id <> piece.production_id;

-- name: check_step_pieces
SELECT printf('%s: the step "%s" is of a piece of another production.', production.name, key)
FROM step JOIN piece ON piece.id = piece_id JOIN production ON production.id = step.production_id
WHERE piece.production_id <> step.production_id;

-- name: check_step_afters
SELECT printf('%s: the step "%s" comes after a step of another production.', production.name, step.key)
FROM step_after JOIN step ON step.id = step_id JOIN step AS earlier ON earlier.id = after_id
    JOIN production ON production.id = step.production_id
WHERE earlier.production_id <> step.production_id;

-- name: check_fitting_steps
SELECT printf('%s: a fitting is of a step of another production, "%s".', production.name, key)
FROM fitting JOIN step ON step.id = step_id JOIN production ON production.id = fitting.production_id
WHERE step.production_id <> fitting.production_id;

-- name: check_work_names
SELECT printf('%d orders of work are called "%s".', count(*), name) FROM work GROUP BY name HAVING count(*) > 1;

-- name: check_work_step_keys
SELECT printf('%d steps of the order of work "%s" are called "%s".', count(*), work.name, key)
FROM work_step JOIN work ON work.id = work_id
GROUP BY work_id, key HAVING count(*) > 1;

-- name: check_note_costumes
SELECT printf('%s: a note is about a costume of another production, %s.', production.name, number)
FROM note JOIN costume ON costume.id = costume_id JOIN production ON production.id = note.production_id
WHERE costume.production_id <> note.production_id;

-- name: check_note_pieces
SELECT printf('%s: a note is about a piece of another production, "%s".', production.name, piece.name)
FROM note JOIN piece ON piece.id = piece_id JOIN production ON production.id = note.production_id
WHERE piece.production_id <> note.production_id;

-- name: check_note_steps
SELECT printf('%s: a note became a step of another production, "%s".', production.name, key)
FROM note JOIN step ON step.id = step_id JOIN production ON production.id = note.production_id
WHERE step.production_id <> note.production_id;

-- name: check_runnings
SELECT printf('%d clocks run for "%s" at one time.', count(*), who) FROM running GROUP BY who HAVING count(*) > 1;

-- name: check_setting_names
SELECT printf('%d settings are called "%s".', count(*), name) FROM setting GROUP BY name HAVING count(*) > 1;

-- How often each material was counted, and when last.

-- name: check_counts
SELECT material_id, max(id), count(*) FROM movement WHERE kind = 'count' GROUP BY material_id ORDER BY material_id;

-- The network of all steps, to look for a circle in it.

-- name: check_steps
SELECT id FROM step ORDER BY id;

-- name: check_links
SELECT after_id, step_id FROM step_after ORDER BY step_id, after_id;

-- name: check_step_name
SELECT printf('%s/%s', piece.name, key) FROM step JOIN piece ON piece.id = piece_id WHERE step.id = ?1;
