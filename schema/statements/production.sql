-- What belongs to a production: each family read, added, put. Columns and parameters stand in the order of the family's
-- fields (src/store/families.c); where a list has an order, its position is the last parameter of the adding one.

-- name: read_productions
SELECT id, name, opens, currency, unit, measures_good_for, put_away_on FROM production ORDER BY id;

-- name: add_production
INSERT INTO production (id, name, opens, currency, unit, measures_good_for, put_away_on)
VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7);

-- name: put_production
UPDATE production SET name = ?2, opens = ?3, currency = ?4, unit = ?5, measures_good_for = ?6, put_away_on = ?7
WHERE id = ?1;

-- name: read_dates
SELECT id, production_id, what, on_day, at_time, note FROM show_date WHERE production_id = ?1 ORDER BY id;

-- name: add_date
INSERT INTO show_date (id, production_id, what, on_day, at_time, note) VALUES (?1, ?2, ?3, ?4, ?5, ?6);

-- name: put_date
UPDATE show_date SET production_id = ?2, what = ?3, on_day = ?4, at_time = ?5, note = ?6 WHERE id = ?1;

-- name: read_company
SELECT production_id, performer_id, position FROM company WHERE production_id = ?1 ORDER BY position, performer_id;

-- name: add_company
INSERT INTO company (production_id, performer_id, position) VALUES (?1, ?2, ?3);

-- name: read_roles
SELECT id, production_id, performer_id, name, note FROM role WHERE production_id = ?1 ORDER BY position, id;

-- name: add_role
INSERT INTO role (id, production_id, performer_id, name, note, position) VALUES (?1, ?2, ?3, ?4, ?5, ?6);

-- name: put_role
UPDATE role SET production_id = ?2, performer_id = ?3, name = ?4, note = ?5 WHERE id = ?1;

-- name: read_covers
SELECT role_cover.role_id, role_cover.performer_id, role_cover.position
FROM role CROSS JOIN role_cover ON role_cover.role_id = role.id
WHERE role.production_id = ?1
ORDER BY role.position, role.id, role_cover.position;

-- name: add_cover
INSERT INTO role_cover (role_id, performer_id, position) VALUES (?1, ?2, ?3);

-- name: read_costumes
SELECT id, production_id, role_id, number, title, due, note FROM costume WHERE production_id = ?1 ORDER BY position, id;

-- name: add_costume
INSERT INTO costume (id, production_id, role_id, number, title, due, note, position)
VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8);

-- name: put_costume
UPDATE costume SET production_id = ?2, role_id = ?3, number = ?4, title = ?5, due = ?6, note = ?7 WHERE id = ?1;

-- name: read_pieces
SELECT id, production_id, name, title, origin, place, out_with, out_since, back_by, obtained_from, due_back, returned_on,
    note
FROM piece WHERE production_id = ?1 ORDER BY position, id;

-- name: add_piece
INSERT INTO piece (id, production_id, name, title, origin, place, out_with, out_since, back_by, obtained_from, due_back,
    returned_on, note, position)
VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14);

-- name: put_piece
UPDATE piece SET production_id = ?2, name = ?3, title = ?4, origin = ?5, place = ?6, out_with = ?7, out_since = ?8,
    back_by = ?9, obtained_from = ?10, due_back = ?11, returned_on = ?12, note = ?13
WHERE id = ?1;

-- name: read_piece_costs
SELECT piece_cost.piece_id, piece_cost.cost, piece_cost.currency
FROM piece CROSS JOIN piece_cost ON piece_cost.piece_id = piece.id
WHERE piece.production_id = ?1
ORDER BY piece.position, piece.id;

-- name: put_piece_cost
INSERT INTO piece_cost (piece_id, cost, currency) VALUES (?1, ?2, ?3)
ON CONFLICT (piece_id) DO UPDATE SET cost = excluded.cost, currency = excluded.currency;

-- name: read_piece_costumes
SELECT piece_costume.piece_id, piece_costume.costume_id, piece_costume.position
FROM piece CROSS JOIN piece_costume ON piece_costume.piece_id = piece.id
WHERE piece.production_id = ?1
ORDER BY piece.position, piece.id, piece_costume.position;

-- name: add_piece_costume
INSERT INTO piece_costume (piece_id, costume_id, position) VALUES (?1, ?2, ?3);

-- name: read_steps
SELECT id, production_id, piece_id, key, title, kind, minutes, quickest, longest, hands, level, rest_minutes, can_wait,
    measures, note, done_on, done_by, took
FROM step WHERE production_id = ?1 ORDER BY position, id;

-- name: read_rail_steps
SELECT id, piece_id, key, title, kind, minutes, can_wait, measures, done_on
FROM step WHERE production_id = ?1 ORDER BY position, id;

-- name: add_step
INSERT INTO step (id, production_id, piece_id, key, title, kind, minutes, quickest, longest, hands, level, rest_minutes,
    can_wait, measures, note, done_on, done_by, took, position)
VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17, ?18, ?19);

-- name: put_step
UPDATE step SET production_id = ?2, piece_id = ?3, key = ?4, title = ?5, kind = ?6, minutes = ?7, quickest = ?8,
    longest = ?9, hands = ?10, level = ?11, rest_minutes = ?12, can_wait = ?13, measures = ?14, note = ?15, done_on = ?16,
    done_by = ?17, took = ?18
WHERE id = ?1;

-- name: read_step_afters
SELECT step_after.step_id, step_after.after_id, step_after.position
FROM step CROSS JOIN step_after ON step_after.step_id = step.id
WHERE step.production_id = ?1
ORDER BY step.position, step.id, step_after.position;

-- name: add_step_after
INSERT INTO step_after (step_id, after_id, position) VALUES (?1, ?2, ?3);

-- name: read_needs
SELECT need.id, need.step_id, need.material_id, need.quantity
FROM step CROSS JOIN need ON need.step_id = step.id
WHERE step.production_id = ?1
ORDER BY need.position, need.id;

-- name: add_need
INSERT INTO need (id, step_id, material_id, quantity, position) VALUES (?1, ?2, ?3, ?4, ?5);

-- name: put_need
UPDATE need SET step_id = ?2, material_id = ?3, quantity = ?4 WHERE id = ?1;

-- name: read_fittings
SELECT id, production_id, step_id, performer_id, booked_at, minutes, held_on, outcome, note
FROM fitting WHERE production_id = ?1 ORDER BY position, id;

-- name: add_fitting
INSERT INTO fitting (id, production_id, step_id, performer_id, booked_at, minutes, held_on, outcome, note, position)
VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10);

-- name: put_fitting
UPDATE fitting SET production_id = ?2, step_id = ?3, performer_id = ?4, booked_at = ?5, minutes = ?6, held_on = ?7,
    outcome = ?8, note = ?9
WHERE id = ?1;
