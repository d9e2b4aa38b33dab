-- What the workroom keeps beside its sheets of garments: orders of work, notes, the running clocks and the settings.
-- Kept like everything else so that every changeset can be turned back: no foreign-key actions, all foreign keys
-- deferred, no triggers, no UNIQUE on anything that can be renamed or reordered.

-- A reusable list of steps for a kind of garment. `ready` is 1 for those that come with the program, until the workroom
-- changes them.
CREATE TABLE work (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    position INTEGER NOT NULL,
    name TEXT NOT NULL,
    note TEXT,
    ready INTEGER NOT NULL DEFAULT 0
) STRICT;
CREATE INDEX work_by_name ON work (name);

-- `after` is a list of keys of the same order of work, with `;` between them.
CREATE TABLE work_step (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    work_id INTEGER NOT NULL REFERENCES work (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    key TEXT NOT NULL,
    title TEXT NOT NULL,
    kind TEXT NOT NULL,
    minutes INTEGER NOT NULL,
    quickest INTEGER,
    longest INTEGER,
    after TEXT,
    hands INTEGER,
    level INTEGER,
    rest_minutes INTEGER,
    can_wait INTEGER NOT NULL DEFAULT 0,
    measures TEXT,
    note TEXT
) STRICT;
CREATE INDEX work_step_by_work ON work_step (work_id, position);

-- What was noted at a rehearsal, a fitting, the parade ... `step_id` is the step that the note became; where what it is
-- about is taken away, the note stays and refers to nothing.
CREATE TABLE note (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    production_id INTEGER NOT NULL REFERENCES production (id) DEFERRABLE INITIALLY DEFERRED,
    position INTEGER NOT NULL,
    noted_on TEXT NOT NULL,
    source TEXT,
    who TEXT,
    costume_id INTEGER REFERENCES costume (id) DEFERRABLE INITIALLY DEFERRED,
    piece_id INTEGER REFERENCES piece (id) DEFERRABLE INITIALLY DEFERRED,
    step_id INTEGER REFERENCES step (id) DEFERRABLE INITIALLY DEFERRED,
    what TEXT NOT NULL,
    done_on TEXT
) STRICT;
CREATE INDEX note_by_production ON note (production_id, position);
CREATE INDEX note_by_costume ON note (costume_id) WHERE costume_id IS NOT NULL;
CREATE INDEX note_by_piece ON note (piece_id) WHERE piece_id IS NOT NULL;
CREATE INDEX note_by_step ON note (step_id) WHERE step_id IS NOT NULL;

-- A clock that runs for a step in somebody's hands; `started_at` is ISO 8601 with UTC offset. One a person.
CREATE TABLE running (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    who TEXT NOT NULL,
    step_id INTEGER NOT NULL REFERENCES step (id) DEFERRABLE INITIALLY DEFERRED,
    started_at TEXT NOT NULL
) STRICT;
CREATE INDEX running_by_who ON running (who);
CREATE INDEX running_by_step ON running (step_id);

CREATE TABLE setting (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    name TEXT NOT NULL,
    value TEXT NOT NULL
) STRICT;
CREATE INDEX setting_by_name ON setting (name);

PRAGMA user_version = 2;
