-- One record at a time. Reading one: the columns of the family's other readings; ?1 is the id.

-- name: get_production
SELECT id, name, opens, currency, unit, measures_good_for, put_away_on FROM production WHERE id = ?1;

-- name: get_date
SELECT id, production_id, what, on_day, at_time, note FROM show_date WHERE id = ?1;

-- name: get_person
SELECT id, name, skills, mon, tue, wed, thu, fri, sat, sun, from_day, until_day, note FROM person WHERE id = ?1;

-- name: get_away
SELECT away.id, person_id, performer_id, from_day, to_day, reason,
    coalesce((SELECT name FROM person WHERE id = person_id), (SELECT name FROM performer WHERE id = performer_id))
FROM away WHERE away.id = ?1;

-- name: get_performer
SELECT id, name, measures_good_for, note FROM performer WHERE id = ?1;

-- name: get_role
SELECT id, production_id, performer_id, name, note FROM role WHERE id = ?1;

-- name: get_costume
SELECT id, production_id, role_id, number, title, due, note FROM costume WHERE id = ?1;

-- name: get_piece
SELECT id, production_id, name, title, origin, place, out_with, out_since, back_by, obtained_from, due_back, returned_on,
    note
FROM piece WHERE id = ?1;

-- name: get_step
SELECT id, production_id, piece_id, key, title, kind, minutes, quickest, longest, hands, level, rest_minutes, can_wait,
    measures, note, done_on, done_by, took
FROM step WHERE id = ?1;

-- name: get_need
SELECT id, step_id, material_id, quantity FROM need WHERE id = ?1;

-- name: get_fitting
SELECT id, production_id, step_id, performer_id, booked_at, minutes, held_on, outcome, note FROM fitting WHERE id = ?1;

-- name: get_material
SELECT id, name, unit, width, supplier, note,
    (SELECT CASE WHEN count(*) THEN CAST(total(quantity) AS INTEGER) END
        FROM movement WHERE material_id = material.id)
FROM material WHERE id = ?1;

-- name: get_order
SELECT id, material_id, quantity, ordered_on, due_on, arrived_on, supplier FROM purchase WHERE id = ?1;

-- name: get_movement
SELECT id, material_id, kind, quantity, moved_on, purchase_id, step_id, note FROM movement WHERE id = ?1;

-- name: get_measure_name
SELECT id, name FROM measure_name WHERE id = ?1;

-- name: get_measure_sheet
SELECT id, performer_id, taken_on FROM measure_sheet WHERE id = ?1;

-- name: get_contact
SELECT performer_id, contact FROM performer_contact WHERE performer_id = ?1;

-- name: get_price
SELECT material_id, price, currency FROM material_price WHERE material_id = ?1;

-- name: get_order_cost
SELECT purchase_id, cost, currency FROM purchase_cost WHERE purchase_id = ?1;

-- name: get_piece_cost
SELECT piece_id, cost, currency FROM piece_cost WHERE piece_id = ?1;

-- name: get_work
SELECT id, name, note, ready FROM work WHERE id = ?1;

-- name: get_work_step
SELECT work_step.id, work_step.work_id, work_step.key, work_step.title, work_step.kind, work_step.minutes,
    work_step.quickest, work_step.longest, work_step.after, work_step.hands, work_step.level, work_step.rest_minutes,
    work_step.can_wait, work_step.measures, work_step.note, (SELECT work.name FROM work WHERE work.id = work_id)
FROM work_step WHERE work_step.id = ?1;

-- name: get_equipment
SELECT id, name, kinds, count FROM equipment WHERE id = ?1;

-- name: get_note
SELECT id, production_id, costume_id, piece_id, step_id, noted_on, source, who, what, done_on FROM note WHERE id = ?1;

-- name: get_running
SELECT id, step_id, who, started_at FROM running WHERE id = ?1;

-- name: get_setting
SELECT id, name, value FROM setting WHERE id = ?1;

-- Removing one by its id (remove_production is in removal.sql); a link by both its ends, a measure by its sheet and name.

-- name: remove_date
DELETE FROM show_date WHERE id = ?1;

-- name: remove_person
DELETE FROM person WHERE id = ?1;

-- name: remove_away
DELETE FROM away WHERE id = ?1;

-- name: remove_performer
DELETE FROM performer WHERE id = ?1;

-- name: remove_role
DELETE FROM role WHERE id = ?1;

-- name: remove_costume
DELETE FROM costume WHERE id = ?1;

-- name: remove_piece
DELETE FROM piece WHERE id = ?1;

-- name: remove_step
DELETE FROM step WHERE id = ?1;

-- name: remove_need
DELETE FROM need WHERE id = ?1;

-- name: remove_fitting
DELETE FROM fitting WHERE id = ?1;

-- name: remove_material
DELETE FROM material WHERE id = ?1;

-- name: remove_order
DELETE FROM purchase WHERE id = ?1;

-- name: remove_movement
DELETE FROM movement WHERE id = ?1;

-- name: remove_measure_sheet
DELETE FROM measure_sheet WHERE id = ?1;

-- name: remove_contact
DELETE FROM performer_contact WHERE performer_id = ?1;

-- name: remove_price
DELETE FROM material_price WHERE material_id = ?1;

-- name: remove_order_cost
DELETE FROM purchase_cost WHERE purchase_id = ?1;

-- name: remove_piece_cost
DELETE FROM piece_cost WHERE piece_id = ?1;

-- name: remove_work
DELETE FROM work WHERE id = ?1;

-- name: remove_work_step
DELETE FROM work_step WHERE id = ?1;

-- name: remove_equipment
DELETE FROM equipment WHERE id = ?1;

-- name: remove_note
DELETE FROM note WHERE id = ?1;

-- name: remove_running
DELETE FROM running WHERE id = ?1;

-- name: remove_setting
DELETE FROM setting WHERE id = ?1;

-- name: remove_measure
DELETE FROM measure WHERE sheet_id = ?1 AND name_id = ?2;

-- name: remove_one_company
DELETE FROM company WHERE production_id = ?1 AND performer_id = ?2;

-- name: remove_one_cover
DELETE FROM role_cover WHERE role_id = ?1 AND performer_id = ?2;

-- name: remove_one_piece_costume
DELETE FROM piece_costume WHERE piece_id = ?1 AND costume_id = ?2;

-- name: remove_one_step_after
DELETE FROM step_after WHERE step_id = ?1 AND after_id = ?2;

-- All links from one record.

-- name: remove_each_company
DELETE FROM company WHERE production_id = ?1;

-- name: remove_each_cover
DELETE FROM role_cover WHERE role_id = ?1;

-- name: remove_each_piece_costume
DELETE FROM piece_costume WHERE piece_id = ?1;

-- name: remove_each_step_after
DELETE FROM step_after WHERE step_id = ?1;

-- The places of a list: of a production, of a piece, of a step, of an order of work.

-- name: places_roles
SELECT id, position FROM role WHERE production_id = ?1 ORDER BY position, id;

-- name: places_costumes
SELECT id, position FROM costume WHERE production_id = ?1 ORDER BY position, id;

-- name: places_pieces
SELECT id, position FROM piece WHERE production_id = ?1 ORDER BY position, id;

-- name: places_steps
SELECT id, position FROM step WHERE piece_id = ?1 ORDER BY position, id;

-- name: places_needs
SELECT id, position FROM need WHERE step_id = ?1 ORDER BY position, id;

-- name: places_fittings
SELECT id, position FROM fitting WHERE production_id = ?1 ORDER BY position, id;

-- name: places_notes
SELECT id, position FROM note WHERE production_id = ?1 ORDER BY position, id;

-- name: places_works
SELECT id, position FROM work ORDER BY position, id;

-- name: places_work_steps
SELECT id, position FROM work_step WHERE work_id = ?1 ORDER BY position, id;

-- name: places_equipment
SELECT id, position FROM equipment ORDER BY position, id;

-- name: place_role
UPDATE role SET position = ?2 WHERE id = ?1;

-- name: place_costume
UPDATE costume SET position = ?2 WHERE id = ?1;

-- name: place_piece
UPDATE piece SET position = ?2 WHERE id = ?1;

-- name: place_step
UPDATE step SET position = ?2 WHERE id = ?1;

-- name: place_need
UPDATE need SET position = ?2 WHERE id = ?1;

-- name: place_fitting
UPDATE fitting SET position = ?2 WHERE id = ?1;

-- name: place_note
UPDATE note SET position = ?2 WHERE id = ?1;

-- name: place_work
UPDATE work SET position = ?2 WHERE id = ?1;

-- name: place_work_step
UPDATE work_step SET position = ?2 WHERE id = ?1;

-- name: place_equipment
UPDATE equipment SET position = ?2 WHERE id = ?1;

-- The position after all others of the list that adding goes to.

-- name: last_role
SELECT coalesce(max(position), 0) + 1 FROM role WHERE production_id = ?1;

-- name: last_costume
SELECT coalesce(max(position), 0) + 1 FROM costume WHERE production_id = ?1;

-- name: last_piece
SELECT coalesce(max(position), 0) + 1 FROM piece WHERE production_id = ?1;

-- name: last_step
SELECT coalesce(max(position), 0) + 1 FROM step WHERE production_id = ?1;

-- name: last_need
SELECT coalesce(max(position), 0) + 1 FROM need WHERE step_id = ?1;

-- name: last_fitting
SELECT coalesce(max(position), 0) + 1 FROM fitting WHERE production_id = ?1;

-- name: last_note
SELECT coalesce(max(position), 0) + 1 FROM note WHERE production_id = ?1;

-- name: last_work
SELECT coalesce(max(position), 0) + 1 FROM work;

-- name: last_work_step
SELECT coalesce(max(position), 0) + 1 FROM work_step WHERE work_id = ?1;

-- name: last_equipment
SELECT coalesce(max(position), 0) + 1 FROM equipment;

-- name: last_company
SELECT coalesce(max(position), 0) + 1 FROM company WHERE production_id = ?1;

-- name: last_cover
SELECT coalesce(max(position), 0) + 1 FROM role_cover WHERE role_id = ?1;

-- name: last_piece_costume
SELECT coalesce(max(position), 0) + 1 FROM piece_costume WHERE piece_id = ?1;

-- name: last_step_after
SELECT coalesce(max(position), 0) + 1 FROM step_after WHERE step_id = ?1;

-- name: last_measure
SELECT coalesce(max(position), 0) + 1 FROM measure WHERE sheet_id = ?1;
