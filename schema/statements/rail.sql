-- What the rail needs of the rest of the workroom: reading costs what the productions in work cost, however large the
-- store. A step is open when it has no done_on and no fitting of it fits.

-- name: rail_other_claims
SELECT step.production_id, step.piece_id, step.id, need.material_id, step.position, need.position, need.quantity
FROM production
CROSS JOIN step ON step.production_id = production.id
CROSS JOIN need ON need.step_id = step.id
WHERE production.put_away_on IS NULL AND production.id <> ?1 AND step.done_on IS NULL
    AND NOT EXISTS (SELECT 1 FROM fitting WHERE fitting.step_id = step.id AND fitting.outcome = 'fits');

-- name: rail_other_pieces
SELECT piece.production_id, piece.id, piece.name, costume.number, costume.due
FROM production
CROSS JOIN piece ON piece.production_id = production.id
LEFT JOIN piece_costume ON piece_costume.piece_id = piece.id
LEFT JOIN costume ON costume.id = piece_costume.costume_id
WHERE production.put_away_on IS NULL AND production.id <> ?1
    AND EXISTS (SELECT 1 FROM step CROSS JOIN need ON need.step_id = step.id
        WHERE step.production_id = piece.production_id AND step.piece_id = piece.id AND step.done_on IS NULL
            AND NOT EXISTS (SELECT 1 FROM fitting WHERE fitting.step_id = step.id AND fitting.outcome = 'fits'));

-- name: rail_usual_dues
SELECT id, name, opens, min(opens, coalesce(
    (SELECT min(on_day) FROM show_date WHERE production_id = production.id AND what IN ('parade', 'dress')), opens))
FROM production WHERE put_away_on IS NULL AND id <> ?1
UNION ALL
SELECT id, name, opens, min(opens, coalesce(
    (SELECT min(on_day) FROM show_date WHERE production_id = production.id AND what IN ('parade', 'dress')), opens))
FROM production WHERE id = ?1;

-- Whole numbers add up exactly in total() far beyond any shelf, and never overflow, as sum() does.
-- name: rail_shelf
SELECT id, name, unit, (SELECT CASE WHEN count(*) THEN CAST(total(quantity) AS INTEGER) END
        FROM movement WHERE material_id = material.id)
FROM material
WHERE id IN (SELECT need.material_id
    FROM step CROSS JOIN need ON need.step_id = step.id
    WHERE step.production_id = ?1 AND step.done_on IS NULL
        AND NOT EXISTS (SELECT 1 FROM fitting WHERE fitting.step_id = step.id AND fitting.outcome = 'fits'))
ORDER BY id;

-- name: rail_incoming
SELECT id, material_id, quantity, ordered_on, due_on, arrived_on, supplier
FROM purchase WHERE material_id = ?1 AND arrived_on IS NULL ORDER BY id;

-- name: rail_newest_sheets
SELECT company.performer_id, max(measure_sheet.taken_on)
FROM company CROSS JOIN measure_sheet ON measure_sheet.performer_id = company.performer_id
WHERE company.production_id = ?1
GROUP BY company.performer_id;

-- name: rail_newest_taking
SELECT measure_sheet.taken_on
FROM measure_sheet CROSS JOIN measure ON measure.sheet_id = measure_sheet.id
WHERE measure_sheet.performer_id = ?1 AND measure.name_id = (SELECT id FROM measure_name WHERE name = ?2)
ORDER BY measure_sheet.taken_on DESC LIMIT 1;

-- name: steps_taken
SELECT kind, done_by, minutes, took FROM step
WHERE took > 0 AND minutes > 0 AND done_on IS NOT NULL
ORDER BY kind, done_by, minutes, took;

-- name: find_production
SELECT id FROM production WHERE name = ?1 ORDER BY id LIMIT 1;
