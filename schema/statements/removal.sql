-- Removing a production with everything that is its own; ?1 is the production. Its company goes by
-- remove_each_company.

-- name: remove_notes
DELETE FROM note WHERE production_id = ?1;

-- name: remove_runnings
DELETE FROM running WHERE step_id IN (SELECT id FROM step WHERE production_id = ?1);

-- name: remove_fittings
DELETE FROM fitting WHERE production_id = ?1;

-- name: remove_needs
DELETE FROM need WHERE step_id IN (SELECT id FROM step WHERE production_id = ?1);

-- name: remove_step_afters
DELETE FROM step_after WHERE step_id IN (SELECT id FROM step WHERE production_id = ?1);

-- name: remove_steps
DELETE FROM step WHERE production_id = ?1;

-- name: remove_piece_costumes
DELETE FROM piece_costume WHERE piece_id IN (SELECT id FROM piece WHERE production_id = ?1);

-- name: remove_piece_costs
DELETE FROM piece_cost WHERE piece_id IN (SELECT id FROM piece WHERE production_id = ?1);

-- name: remove_pieces
DELETE FROM piece WHERE production_id = ?1;

-- name: remove_costumes
DELETE FROM costume WHERE production_id = ?1;

-- name: remove_covers
DELETE FROM role_cover WHERE role_id IN (SELECT id FROM role WHERE production_id = ?1);

-- name: remove_roles
DELETE FROM role WHERE production_id = ?1;

-- name: remove_dates
DELETE FROM show_date WHERE production_id = ?1;

-- name: remove_production
DELETE FROM production WHERE id = ?1;
