-- How much there is of a production, for the list of all of them; ?1 is the production.

-- name: read_production_counts
SELECT
    (SELECT count(*) FROM company WHERE company.production_id = ?1),
    (SELECT count(*) FROM costume WHERE costume.production_id = ?1),
    (SELECT count(*) FROM step WHERE step.production_id = ?1),
    (SELECT count(*) FROM step WHERE step.production_id = ?1 AND step.done_on IS NULL
        AND NOT EXISTS (SELECT 1 FROM fitting WHERE fitting.step_id = step.id AND fitting.outcome = 'fits'));
