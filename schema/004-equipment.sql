-- What the workroom shares: the cutting table, the machines, the dye room. `kinds` is a list of the kinds of step that occupy
-- one of it while they are worked on, with `;` between them; `count` is how many there are, empty: one.
CREATE TABLE equipment (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    position INTEGER NOT NULL,
    name TEXT NOT NULL,
    kinds TEXT NOT NULL,
    count INTEGER
) STRICT;
CREATE INDEX equipment_by_name ON equipment (name);

PRAGMA user_version = 4;
