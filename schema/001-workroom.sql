-- The workroom: performers and their measures, people, materials, orders; and the productions with all that is theirs.
-- Kept so that every changeset can be turned back: no foreign-key actions, all foreign keys deferred, no triggers, no
-- UNIQUE on anything that can be renamed, reordered or renumbered. Lengths are micrometres, quantities millionths of the
-- material's unit, money minor units, days ISO 8601 text. `position` gives the order in which a list is shown.

CREATE TABLE performer (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    name TEXT NOT NULL,
    measures_good_for INTEGER,
    note TEXT
) STRICT;
CREATE INDEX performer_by_name ON performer (name);

CREATE TABLE performer_contact (
    performer_id INTEGER PRIMARY KEY REFERENCES performer (id) DEFERRABLE INITIALLY DEFERRED,
    contact TEXT NOT NULL
) STRICT;

CREATE TABLE measure_name (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    name TEXT NOT NULL
) STRICT;
CREATE INDEX measure_name_by_name ON measure_name (name);

CREATE TABLE measure_sheet (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    performer_id INTEGER NOT NULL REFERENCES performer (id) DEFERRABLE INITIALLY DEFERRED,
    taken_on TEXT NOT NULL
) STRICT;
CREATE INDEX measure_sheet_by_performer ON measure_sheet (performer_id, taken_on);

CREATE TABLE measure (
    sheet_id INTEGER NOT NULL REFERENCES measure_sheet (id) DEFERRABLE INITIALLY DEFERRED,
    name_id INTEGER NOT NULL REFERENCES measure_name (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    value INTEGER NOT NULL,
    over TEXT,
    taken_by TEXT,
    PRIMARY KEY (sheet_id, name_id)
) STRICT, WITHOUT ROWID;

CREATE TABLE person (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    name TEXT NOT NULL,
    skills TEXT,
    mon TEXT,
    tue TEXT,
    wed TEXT,
    thu TEXT,
    fri TEXT,
    sat TEXT,
    sun TEXT,
    from_day TEXT,
    until_day TEXT,
    note TEXT
) STRICT;
CREATE INDEX person_by_name ON person (name);

CREATE TABLE away (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    person_id INTEGER REFERENCES person (id) DEFERRABLE INITIALLY DEFERRED,
    performer_id INTEGER REFERENCES performer (id) DEFERRABLE INITIALLY DEFERRED,
    from_day TEXT NOT NULL,
    to_day TEXT NOT NULL,
    reason TEXT
) STRICT;
CREATE INDEX away_by_person ON away (person_id);
CREATE INDEX away_by_performer ON away (performer_id);

CREATE TABLE material (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    name TEXT NOT NULL,
    unit TEXT NOT NULL,
    width INTEGER,
    supplier TEXT,
    note TEXT
) STRICT;
CREATE INDEX material_by_name ON material (name);

CREATE TABLE material_price (
    material_id INTEGER PRIMARY KEY REFERENCES material (id) DEFERRABLE INITIALLY DEFERRED,
    price INTEGER NOT NULL,
    currency TEXT
) STRICT;

CREATE TABLE purchase (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    material_id INTEGER NOT NULL REFERENCES material (id) DEFERRABLE INITIALLY DEFERRED,
    quantity INTEGER NOT NULL,
    ordered_on TEXT NOT NULL,
    due_on TEXT,
    arrived_on TEXT,
    supplier TEXT
) STRICT;
CREATE INDEX purchase_by_material ON purchase (material_id);
CREATE INDEX purchase_open ON purchase (material_id, due_on) WHERE arrived_on IS NULL;

CREATE TABLE purchase_cost (
    purchase_id INTEGER PRIMARY KEY REFERENCES purchase (id) DEFERRABLE INITIALLY DEFERRED,
    cost INTEGER NOT NULL,
    currency TEXT
) STRICT;

-- What lies on the shelf is the sum of these. `kind` is count, delivery, use or return; step_id may name a step that is
-- gone since, so it refers to nothing.
CREATE TABLE movement (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    material_id INTEGER NOT NULL REFERENCES material (id) DEFERRABLE INITIALLY DEFERRED,
    kind TEXT NOT NULL,
    quantity INTEGER NOT NULL,
    moved_on TEXT NOT NULL,
    purchase_id INTEGER REFERENCES purchase (id) DEFERRABLE INITIALLY DEFERRED,
    step_id INTEGER,
    note TEXT
) STRICT;
CREATE INDEX movement_by_material ON movement (material_id, quantity);
CREATE INDEX movement_by_purchase ON movement (purchase_id) WHERE purchase_id IS NOT NULL;
CREATE INDEX movement_by_step ON movement (step_id, material_id) WHERE step_id IS NOT NULL;

CREATE TABLE production (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    name TEXT NOT NULL,
    opens TEXT NOT NULL,
    currency TEXT,
    unit TEXT,
    measures_good_for INTEGER,
    put_away_on TEXT
) STRICT;
CREATE INDEX production_by_name ON production (name);
CREATE INDEX production_in_work ON production (opens) WHERE put_away_on IS NULL;

CREATE TABLE company (
    production_id INTEGER NOT NULL REFERENCES production (id) DEFERRABLE INITIALLY DEFERRED,
    performer_id INTEGER NOT NULL REFERENCES performer (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    PRIMARY KEY (production_id, performer_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX company_by_production ON company (production_id, position);
CREATE INDEX company_by_performer ON company (performer_id);

CREATE TABLE show_date (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    production_id INTEGER NOT NULL REFERENCES production (id) DEFERRABLE INITIALLY DEFERRED,
    what TEXT NOT NULL,
    on_day TEXT NOT NULL,
    at_time TEXT,
    note TEXT
) STRICT;
CREATE INDEX show_date_by_production ON show_date (production_id);

CREATE TABLE role (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    production_id INTEGER NOT NULL REFERENCES production (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    name TEXT NOT NULL,
    performer_id INTEGER REFERENCES performer (id) DEFERRABLE INITIALLY DEFERRED,
    note TEXT
) STRICT;
CREATE INDEX role_by_production ON role (production_id, position);
CREATE INDEX role_by_performer ON role (performer_id);

CREATE TABLE role_cover (
    role_id INTEGER NOT NULL REFERENCES role (id) DEFERRABLE INITIALLY DEFERRED,
    performer_id INTEGER NOT NULL REFERENCES performer (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    PRIMARY KEY (role_id, performer_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX role_cover_by_performer ON role_cover (performer_id);

CREATE TABLE costume (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    production_id INTEGER NOT NULL REFERENCES production (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    number TEXT NOT NULL,
    role_id INTEGER NOT NULL REFERENCES role (id) DEFERRABLE INITIALLY DEFERRED,
    title TEXT NOT NULL,
    due TEXT,
    note TEXT
) STRICT;
CREATE INDEX costume_by_production ON costume (production_id, position);
CREATE INDEX costume_by_role ON costume (role_id);

CREATE TABLE piece (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    production_id INTEGER NOT NULL REFERENCES production (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    name TEXT NOT NULL,
    title TEXT NOT NULL,
    origin TEXT,
    place TEXT,
    out_with TEXT,
    out_since TEXT,
    back_by TEXT,
    obtained_from TEXT,
    due_back TEXT,
    returned_on TEXT,
    note TEXT
) STRICT;
CREATE INDEX piece_by_production ON piece (production_id, position);

CREATE TABLE piece_cost (
    piece_id INTEGER PRIMARY KEY REFERENCES piece (id) DEFERRABLE INITIALLY DEFERRED,
    cost INTEGER NOT NULL,
    currency TEXT
) STRICT;

CREATE TABLE piece_costume (
    piece_id INTEGER NOT NULL REFERENCES piece (id) DEFERRABLE INITIALLY DEFERRED,
    costume_id INTEGER NOT NULL REFERENCES costume (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    PRIMARY KEY (piece_id, costume_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX piece_costume_by_costume ON piece_costume (costume_id);

CREATE TABLE step (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    production_id INTEGER NOT NULL REFERENCES production (id) DEFERRABLE INITIALLY DEFERRED,
    piece_id INTEGER NOT NULL REFERENCES piece (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    key TEXT NOT NULL,
    title TEXT NOT NULL,
    kind TEXT NOT NULL,
    minutes INTEGER NOT NULL,
    quickest INTEGER,
    longest INTEGER,
    hands INTEGER,
    level INTEGER,
    rest_minutes INTEGER,
    can_wait INTEGER NOT NULL DEFAULT 0,
    measures TEXT,
    note TEXT,
    done_on TEXT,
    done_by TEXT,
    took INTEGER
) STRICT;
CREATE INDEX step_by_production ON step (production_id, position);
CREATE INDEX step_by_piece ON step (piece_id);
CREATE INDEX step_open ON step (production_id, piece_id, position, done_on) WHERE done_on IS NULL;

CREATE TABLE step_after (
    step_id INTEGER NOT NULL REFERENCES step (id) DEFERRABLE INITIALLY DEFERRED,
    after_id INTEGER NOT NULL REFERENCES step (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    PRIMARY KEY (step_id, after_id)
) STRICT, WITHOUT ROWID;
CREATE INDEX step_after_by_step ON step_after (step_id, position);
CREATE INDEX step_after_by_after ON step_after (after_id);

CREATE TABLE need (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    step_id INTEGER NOT NULL REFERENCES step (id) DEFERRABLE INITIALLY DEFERRED,
    material_id INTEGER NOT NULL REFERENCES material (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    quantity INTEGER NOT NULL
) STRICT;
CREATE INDEX need_by_step ON need (step_id, position, material_id, quantity);
CREATE INDEX need_by_material ON need (material_id);

CREATE TABLE fitting (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    production_id INTEGER NOT NULL REFERENCES production (id) DEFERRABLE INITIALLY DEFERRED,
    step_id INTEGER NOT NULL REFERENCES step (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    booked_at TEXT NOT NULL,
    performer_id INTEGER REFERENCES performer (id) DEFERRABLE INITIALLY DEFERRED,
    minutes INTEGER,
    held_on TEXT,
    outcome TEXT,
    note TEXT
) STRICT;
CREATE INDEX fitting_by_production ON fitting (production_id, position);
CREATE INDEX fitting_by_step ON fitting (step_id, outcome);
CREATE INDEX fitting_by_performer ON fitting (performer_id);

-- The daybook: one row a change, and SQLite's own changeset in parts beside it. Not itself recorded.
CREATE TABLE daybook (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    made_at TEXT NOT NULL,
    made_by TEXT NOT NULL,
    terminal TEXT,
    sentence TEXT NOT NULL,
    undone_by INTEGER REFERENCES daybook (id) DEFERRABLE INITIALLY DEFERRED,
    undoes INTEGER REFERENCES daybook (id) DEFERRABLE INITIALLY DEFERRED,
    undo_ended INTEGER NOT NULL DEFAULT 0
) STRICT;
CREATE INDEX daybook_by_undone ON daybook (undone_by) WHERE undone_by IS NOT NULL;
CREATE INDEX daybook_to_undo ON daybook (made_by, terminal, id) WHERE undone_by IS NULL AND undoes IS NULL;
CREATE INDEX daybook_to_redo ON daybook (made_by, terminal, id) WHERE undone_by IS NULL AND undoes IS NOT NULL;
CREATE INDEX daybook_by_undoes ON daybook (undoes) WHERE undoes IS NOT NULL;

CREATE TABLE daybook_changes (
    daybook_id INTEGER NOT NULL REFERENCES daybook (id) DEFERRABLE INITIALLY DEFERRED,
    part INTEGER NOT NULL,
    bytes BLOB NOT NULL,
    PRIMARY KEY (daybook_id, part)
) STRICT;

-- 1114596459 is "Bodk"; every migration ends with its own number.
PRAGMA application_id = 1114596459;
PRAGMA user_version = 1;
