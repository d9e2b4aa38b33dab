-- What the workroom keeps beside its sheets of garments: each family read, added, put. Columns and parameters stand in the
-- order of the family's fields (src/store/families.c); where a list has an order, its position is the last parameter of the
-- adding one.

-- name: read_works
SELECT id, name, note, ready FROM work ORDER BY position, id;

-- name: add_work
INSERT INTO work (id, name, note, ready, position) VALUES (?1, ?2, ?3, ?4, ?5);

-- name: put_work
UPDATE work SET name = ?2, note = ?3, ready = ?4 WHERE id = ?1;

-- name: read_work_steps
SELECT work_step.id, work_step.work_id, work_step.key, work_step.title, work_step.kind, work_step.minutes,
    work_step.quickest, work_step.longest, work_step.after, work_step.hands, work_step.level, work_step.rest_minutes,
    work_step.can_wait, work_step.measures, work_step.note, work.name
FROM work CROSS JOIN work_step ON work_step.work_id = work.id
ORDER BY work.position, work.id, work_step.position, work_step.id;

-- name: add_work_step
INSERT INTO work_step (id, work_id, key, title, kind, minutes, quickest, longest, after, hands, level, rest_minutes,
    can_wait, measures, note, position)
VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16);

-- name: put_work_step
UPDATE work_step SET work_id = ?2, key = ?3, title = ?4, kind = ?5, minutes = ?6, quickest = ?7, longest = ?8, after = ?9,
    hands = ?10, level = ?11, rest_minutes = ?12, can_wait = ?13, measures = ?14, note = ?15
WHERE id = ?1;

-- name: read_notes
SELECT id, production_id, costume_id, piece_id, step_id, noted_on, source, who, what, done_on
FROM note WHERE production_id = ?1 ORDER BY position, id;

-- name: add_note
INSERT INTO note (id, production_id, costume_id, piece_id, step_id, noted_on, source, who, what, done_on, position)
VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11);

-- name: put_note
UPDATE note SET production_id = ?2, costume_id = ?3, piece_id = ?4, step_id = ?5, noted_on = ?6, source = ?7, who = ?8,
    what = ?9, done_on = ?10
WHERE id = ?1;

-- name: read_runnings
SELECT id, step_id, who, started_at FROM running ORDER BY id;

-- name: add_running
INSERT INTO running (id, step_id, who, started_at) VALUES (?1, ?2, ?3, ?4);

-- name: put_running
UPDATE running SET step_id = ?2, who = ?3, started_at = ?4 WHERE id = ?1;

-- name: read_settings
SELECT id, name, value FROM setting ORDER BY id;

-- name: add_setting
INSERT INTO setting (id, name, value) VALUES (?1, ?2, ?3);

-- name: put_setting
UPDATE setting SET name = ?2, value = ?3 WHERE id = ?1;
