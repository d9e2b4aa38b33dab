-- What belongs to the workroom: each family read, added, put. Columns and parameters stand in the order of the family's
-- fields (src/store/families.c); where a list has an order, its position is the last parameter of the adding one.

-- name: read_people
SELECT id, name, skills, mon, tue, wed, thu, fri, sat, sun, from_day, until_day, note FROM person ORDER BY id;

-- name: add_person
INSERT INTO person (id, name, skills, mon, tue, wed, thu, fri, sat, sun, from_day, until_day, note)
VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13);

-- name: put_person
UPDATE person SET name = ?2, skills = ?3, mon = ?4, tue = ?5, wed = ?6, thu = ?7, fri = ?8, sat = ?9, sun = ?10,
    from_day = ?11, until_day = ?12, note = ?13
WHERE id = ?1;

-- name: read_aways
SELECT away.id, person_id, performer_id, from_day, to_day, reason,
    coalesce((SELECT name FROM person WHERE id = person_id), (SELECT name FROM performer WHERE id = performer_id))
FROM away ORDER BY away.id;

-- name: add_away
INSERT INTO away (id, person_id, performer_id, from_day, to_day, reason) VALUES (?1, ?2, ?3, ?4, ?5, ?6);

-- name: put_away
UPDATE away SET person_id = ?2, performer_id = ?3, from_day = ?4, to_day = ?5, reason = ?6 WHERE id = ?1;

-- name: read_equipment
SELECT id, name, kinds, count FROM equipment ORDER BY position, id;

-- name: add_equipment
INSERT INTO equipment (id, name, kinds, count, position) VALUES (?1, ?2, ?3, ?4, ?5);

-- name: put_equipment
UPDATE equipment SET name = ?2, kinds = ?3, count = ?4 WHERE id = ?1;

-- name: read_performers
SELECT id, name, measures_good_for, note FROM performer ORDER BY id;

-- name: add_performer
INSERT INTO performer (id, name, measures_good_for, note) VALUES (?1, ?2, ?3, ?4);

-- name: put_performer
UPDATE performer SET name = ?2, measures_good_for = ?3, note = ?4 WHERE id = ?1;

-- name: read_company_performers
SELECT performer.id, performer.name, performer.measures_good_for, performer.note
FROM company CROSS JOIN performer ON performer.id = company.performer_id
WHERE company.production_id = ?1
ORDER BY company.position, company.performer_id;

-- name: read_contacts
SELECT performer_id, contact FROM performer_contact ORDER BY performer_id;

-- name: put_contact
INSERT INTO performer_contact (performer_id, contact) VALUES (?1, ?2)
ON CONFLICT (performer_id) DO UPDATE SET contact = excluded.contact;

-- name: read_measure_names
SELECT id, name FROM measure_name ORDER BY id;

-- name: add_measure_name
INSERT INTO measure_name (id, name) VALUES (?1, ?2);

-- name: put_measure_name
UPDATE measure_name SET name = ?2 WHERE id = ?1;

-- name: read_measure_sheets
SELECT id, performer_id, taken_on FROM measure_sheet ORDER BY id;

-- name: add_measure_sheet
INSERT INTO measure_sheet (id, performer_id, taken_on) VALUES (?1, ?2, ?3);

-- name: put_measure_sheet
UPDATE measure_sheet SET performer_id = ?2, taken_on = ?3 WHERE id = ?1;

-- name: read_measures
SELECT measure.sheet_id, measure.name_id, measure.value, measure.over, measure.taken_by, measure.position,
    company.performer_id, measure_sheet.taken_on, measure_name.name
FROM company
CROSS JOIN measure_sheet ON measure_sheet.performer_id = company.performer_id
CROSS JOIN measure ON measure.sheet_id = measure_sheet.id
CROSS JOIN measure_name ON measure_name.id = measure.name_id
WHERE company.production_id = ?1
ORDER BY company.position, company.performer_id, measure_sheet.taken_on, measure_sheet.id, measure.position;

-- name: read_measures_of_sheet
SELECT measure.sheet_id, measure.name_id, measure.value, measure.over, measure.taken_by, measure.position,
    measure_sheet.performer_id, measure_sheet.taken_on, measure_name.name
FROM measure_sheet
CROSS JOIN measure ON measure.sheet_id = measure_sheet.id
CROSS JOIN measure_name ON measure_name.id = measure.name_id
WHERE measure_sheet.id = ?1
ORDER BY measure.position;

-- name: add_measure
INSERT INTO measure (sheet_id, name_id, value, over, taken_by, position) VALUES (?1, ?2, ?3, ?4, ?5, ?6);

-- Ten measures at once, as many sheets bring thousands of them.
-- name: add_measures
INSERT INTO measure (sheet_id, name_id, value, over, taken_by, position) VALUES
    (?1, ?2, ?3, ?4, ?5, ?6),
    (?7, ?8, ?9, ?10, ?11, ?12),
    (?13, ?14, ?15, ?16, ?17, ?18),
    (?19, ?20, ?21, ?22, ?23, ?24),
    (?25, ?26, ?27, ?28, ?29, ?30),
    (?31, ?32, ?33, ?34, ?35, ?36),
    (?37, ?38, ?39, ?40, ?41, ?42),
    (?43, ?44, ?45, ?46, ?47, ?48),
    (?49, ?50, ?51, ?52, ?53, ?54),
    (?55, ?56, ?57, ?58, ?59, ?60);

-- name: put_measure
UPDATE measure SET value = ?3, over = ?4, taken_by = ?5 WHERE sheet_id = ?1 AND name_id = ?2;

-- Whole numbers add up exactly in total() far beyond any shelf, and never overflow, as sum() does.
-- name: read_materials
SELECT id, name, unit, width, supplier, note,
    (SELECT CASE WHEN count(*) THEN CAST(total(quantity) AS INTEGER) END
        FROM movement WHERE material_id = material.id)
FROM material ORDER BY id;

-- name: add_material
INSERT INTO material (id, name, unit, width, supplier, note) VALUES (?1, ?2, ?3, ?4, ?5, ?6);

-- name: put_material
UPDATE material SET name = ?2, unit = ?3, width = ?4, supplier = ?5, note = ?6 WHERE id = ?1;

-- name: read_prices
SELECT material_id, price, currency FROM material_price ORDER BY material_id;

-- name: put_price
INSERT INTO material_price (material_id, price, currency) VALUES (?1, ?2, ?3)
ON CONFLICT (material_id) DO UPDATE SET price = excluded.price, currency = excluded.currency;

-- name: read_orders
SELECT id, material_id, quantity, ordered_on, due_on, arrived_on, supplier FROM purchase ORDER BY id;

-- name: add_order
INSERT INTO purchase (id, material_id, quantity, ordered_on, due_on, arrived_on, supplier)
VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7);

-- name: put_order
UPDATE purchase SET material_id = ?2, quantity = ?3, ordered_on = ?4, due_on = ?5, arrived_on = ?6, supplier = ?7
WHERE id = ?1;

-- name: read_order_costs
SELECT purchase_id, cost, currency FROM purchase_cost ORDER BY purchase_id;

-- name: put_order_cost
INSERT INTO purchase_cost (purchase_id, cost, currency) VALUES (?1, ?2, ?3)
ON CONFLICT (purchase_id) DO UPDATE SET cost = excluded.cost, currency = excluded.currency;

-- name: read_movements
SELECT id, material_id, kind, quantity, moved_on, purchase_id, step_id, note
FROM movement WHERE material_id = ?1 ORDER BY id;

-- name: add_movement
INSERT INTO movement (id, material_id, kind, quantity, moved_on, purchase_id, step_id, note)
VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8);

-- name: put_movement
UPDATE movement SET material_id = ?2, kind = ?3, quantity = ?4, moved_on = ?5, purchase_id = ?6, step_id = ?7, note = ?8
WHERE id = ?1;
