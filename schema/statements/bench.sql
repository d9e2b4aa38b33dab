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

-- The steps it comes after that are still open, in the order written.
-- name: read_step_open_before
SELECT piece.name, step.key FROM step_after
CROSS JOIN step ON step.id = step_after.after_id CROSS JOIN piece ON piece.id = step.piece_id
WHERE step_after.step_id = ?1 AND step.done_on IS NULL
    AND NOT EXISTS (SELECT 1 FROM fitting WHERE fitting.step_id = step.id AND fitting.outcome = 'fits')
ORDER BY step_after.position;

-- How much of its needs a counted shelf does not have.
-- name: read_step_lacks
SELECT material_id, CAST(min(wanted, wanted - held) AS INTEGER), 1 FROM (
    SELECT material_id, total(quantity) AS wanted,
        (SELECT total(quantity) FROM movement WHERE movement.material_id = need.material_id) AS held
    FROM need WHERE step_id = ?1 GROUP BY material_id) AS shelf
WHERE wanted > held AND EXISTS (SELECT 1 FROM movement WHERE movement.material_id = shelf.material_id);
