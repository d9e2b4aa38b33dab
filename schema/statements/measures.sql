-- Performers and their measure sheets, one performer or one company at a time.

-- name: find_performer
SELECT id FROM performer WHERE name = ?1 ORDER BY id LIMIT 1;

-- name: find_measure_name
SELECT id FROM measure_name WHERE name = ?1 ORDER BY id LIMIT 1;

-- name: read_performer_sheets
SELECT id, performer_id, taken_on FROM measure_sheet WHERE performer_id = ?1 ORDER BY taken_on DESC, id DESC;

-- name: read_performer_measures
SELECT measure.sheet_id, measure.name_id, measure.value, measure.over, measure.taken_by, measure.position,
    measure_sheet.performer_id, measure_sheet.taken_on, measure_name.name
FROM measure_sheet
CROSS JOIN measure ON measure.sheet_id = measure_sheet.id
CROSS JOIN measure_name ON measure_name.id = measure.name_id
WHERE measure_sheet.performer_id = ?1
ORDER BY measure_sheet.taken_on DESC, measure_sheet.id DESC, measure.position;

-- name: read_company_sheets
SELECT measure_sheet.id, measure_sheet.performer_id, measure_sheet.taken_on,
    (SELECT count(*) FROM measure WHERE measure.sheet_id = measure_sheet.id)
FROM company CROSS JOIN measure_sheet ON measure_sheet.performer_id = company.performer_id
WHERE company.production_id = ?1
ORDER BY company.position, company.performer_id, measure_sheet.taken_on DESC, measure_sheet.id DESC;
