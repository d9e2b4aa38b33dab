-- Bench work: one step found, what it needs, and what left the shelf for it.

-- name: find_step
SELECT step.id FROM piece CROSS JOIN step ON step.piece_id = piece.id
WHERE piece.production_id = ?1 AND piece.name = ?2 AND step.key = ?3 LIMIT 1;

-- name: read_step_state
SELECT piece.name, EXISTS (SELECT 1 FROM fitting WHERE fitting.step_id = step.id AND fitting.outcome = 'fits')
FROM step CROSS JOIN piece ON piece.id = step.piece_id WHERE step.id = ?1;

-- The last column: whether anybody ever counted the material. Sums by total() never overflow, as those by sum() do.
-- name: read_step_needs
SELECT material_id, CAST(total(quantity) AS INTEGER),
    EXISTS (SELECT 1 FROM movement WHERE movement.material_id = need.material_id)
FROM need WHERE step_id = ?1 GROUP BY material_id;

-- What left the shelf for the step since something of it came back last.
-- name: read_step_uses
SELECT material_id, CAST(-total(quantity) AS INTEGER), 1
FROM movement
WHERE step_id = ?1 AND kind = 'use' AND id > coalesce(
    (SELECT max(back.id) FROM movement AS back WHERE back.step_id = ?1 AND back.kind = 'return'), 0)
GROUP BY material_id;
