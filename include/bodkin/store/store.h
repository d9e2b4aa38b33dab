#ifndef BODKIN_STORE_STORE_H
#define BODKIN_STORE_STORE_H

#include <stdbool.h>
#include <stdint.h>

#include "bodkin/base/arena.h"
#include "bodkin/base/error.h"
#include "bodkin/store/records.h"

/// The workroom's one file, open. Not shared between threads.
typedef struct bk_store bk_store;

/// As whom the store is opened; the connection itself refuses what the rights of that person do not allow.
typedef enum bk_as { BK_AS_MAKER, BK_AS_DIRECTOR, BK_AS_VOLUNTEER } bk_as;

typedef struct bk_store_options {
    const char *path;
    bk_as as;
    const char *who;      ///< name written into the daybook
    const char *terminal; ///< which terminal, for undo; may be NULL
    bool create;          ///< make the file (0600) and its folders (0700) where they are missing
} bk_store_options;

/// Opens the store, checks that it is one of ours and not newer, brings an older one up to date (after a backup beside
/// it). `*store` is the caller's, closed with bk_store_close. Errors are BK_STORE: no such file, no store of Bodkin, a
/// newer one, a place where WAL is not granted, not readable, busy for longer than ten seconds.
bk_status bk_store_open(bk_store **store, const bk_store_options *options, bk_error *error) BK_MUST_USE;
void bk_store_close(bk_store *store);

/// A number that changes whenever another connection (also of another program) has changed the store. It says nothing beside that of
/// another connection.
bk_status bk_store_version(bk_store *store, int64_t *version, bk_error *error) BK_MUST_USE;

/// Begins reading: all reads up to bk_store_read_end see one state of the store.
bk_status bk_store_read_begin(bk_store *store, bk_error *error) BK_MUST_USE;
void bk_store_read_end(bk_store *store);

/// Begins a change: BEGIN IMMEDIATE (waits while another writes) and a recording of everything done from here on.
bk_status bk_store_change_begin(bk_store *store, bk_error *error) BK_MUST_USE;

/// Writes the daybook's entry with the changeset and commits. `made_at` is ISO 8601 with UTC offset
/// ("2027-03-02T09:30:00+01:00"), `sentence` what was done, in plain words. On failure everything is rolled back.
/// `*entry` (may be NULL) gets the entry's id.
bk_status bk_store_change_commit(bk_store *store, const char *made_at, const char *sentence, int64_t *entry,
                                 bk_error *error) BK_MUST_USE;

/// Drops the change; nothing of it stays. Harmless when none is open.
void bk_store_change_drop(bk_store *store);

/// Turns back the changeset of one daybook entry, inside a change of the caller's (begin, this, commit). A conflict is
/// BK_REFUSED and the caller drops the change.
bk_status bk_store_turn_back(bk_store *store, int64_t entry, bk_error *error) BK_MUST_USE;

/// Copies the whole store into `path` (0600), consistent while others write. Refuses a file that exists.
bk_status bk_store_backup(bk_store *store, const char *path, bk_error *error) BK_MUST_USE;

/// What is wrong with the store, a sentence each (none: sound): SQLite's own checks, foreign keys, words that are no
/// words of the trade, names used twice, circles of links.
typedef struct bk_findings {
    const char **items;
    size_t count;
} bk_findings;
bk_status bk_store_check(bk_store *store, bk_arena *arena, bk_findings *findings, bk_error *error)
    BK_MUST_USE;

/// The families of records. Each has a table of fields that add, read, change and remove walk.
typedef enum bk_family {
    BK_PRODUCTIONS,        ///< bk_production; read by: nothing (0), all of them
    BK_DATES,              ///< bk_date; by production
    BK_PEOPLE,             ///< bk_person; all
    BK_AWAYS,              ///< bk_away (with `who`); all
    BK_PERFORMERS,         ///< bk_performer without contact; all
    BK_COMPANY_PERFORMERS, ///< bk_performer without contact; by production: its company, in the company's order
    BK_COMPANY,            ///< bk_link production to performer; by production
    BK_ROLES,              ///< bk_role; by production
    BK_COVERS,             ///< bk_link role to performer; by production
    BK_COSTUMES,           ///< bk_costume; by production
    BK_PIECES,             ///< bk_piece without cost; by production
    BK_PIECE_COSTUMES,     ///< bk_link piece to costume; by production
    BK_STEPS,              ///< bk_step; by production, in the order of steps.csv
    BK_RAIL_STEPS, ///< the same with what the rail asks for and no more: id, piece_id, key, title, kind, minutes, can_wait,
                   ///< measures, done_on; by production, in the order of steps.csv; only read
    BK_STEP_AFTERS, ///< bk_link step to earlier step; by production
    BK_NEEDS,       ///< bk_need; by production, in the order of needs.csv
    BK_FITTINGS,    ///< bk_fitting; by production, in the order of fittings.csv
    BK_MATERIALS,   ///< bk_material with on_hand, without price; all
    BK_ORDERS,      ///< bk_order without cost; all, in the order of orders.csv
    BK_MOVEMENTS,   ///< bk_movement; by material
    BK_MEASURES,    ///< bk_measure with performer_id and name; by production (all sheets of its company)
    BK_MEASURES_OF_SHEET, ///< bk_measure with name; by measure sheet; only read
    BK_MEASURE_NAMES,     ///< bk_named; all
    BK_MEASURE_SHEETS,    ///< bk_sheet_day; all
    BK_CONTACTS,          ///< bk_private; all (maker only)
    BK_PRICES,            ///< bk_private of materials; all (maker only)
    BK_ORDER_COSTS,       ///< bk_private of orders; all (maker only)
    BK_PIECE_COSTS,       ///< bk_private of pieces; by production (maker only)
    BK_WORKS,             ///< bk_work; all (these and the next in bodkin/store/records_bench.h)
    BK_WORK_STEPS, ///< bk_work_step with the name of its order of work; all, in the order of the orders of work
    BK_EQUIPMENT, ///< bk_equipment; all, in the order of equipment.csv
    BK_NOTES,     ///< bk_note; by production
    BK_RUNNINGS,  ///< bk_running; all
    BK_SETTINGS,  ///< bk_setting; all
    BK_FAMILIES
} bk_family;

/// A row of a table of names.
typedef struct bk_named {
    int64_t id;
    const char *name;
} bk_named;

/// A measure sheet itself.
typedef struct bk_sheet_day {
    int64_t id, performer_id;
    bk_day taken_on;
} bk_sheet_day;

/// What stands in a private table beside its record: `id` is the record's.
typedef struct bk_private {
    int64_t id;
    const char *text; ///< contact
    bk_money amount;  ///< price or cost
    const char *currency;
} bk_private;

/// Rows of one family: `items` is an array of its struct, in the arena.
typedef struct bk_rows {
    void *items;
    size_t count;
} bk_rows;

/// Reads the rows of a family for `key` (see bk_family; 0 where all are read), in their order.
bk_status bk_store_read(bk_store *store, bk_family family, int64_t key, bk_arena *arena, bk_rows *rows,
                        bk_error *error) BK_MUST_USE;

/// Adds a record within a change. `position` is its place in its list (ignored where the family has none). `*id` (may
/// be NULL) gets the new id (for links, measures and private rows 0); where the record's own id is not 0 that id is kept. The
/// `position` of a link or a measure is set by reading only.
bk_status bk_store_add(bk_store *store, bk_family family, const void *record, int64_t position, int64_t *id,
                       bk_error *error) BK_MUST_USE;

/// Adds `count` measures within a change, many in one go; sheet_id, name_id and position are the caller's.
bk_status bk_store_add_measures(bk_store *store, const bk_measure *measures, size_t count, bk_error *error)
    BK_MUST_USE;

/// Puts all fields of the record with that id (measures: with that sheet and name; private rows: adds or changes; links
/// are not offered).
bk_status bk_store_put(bk_store *store, bk_family family, const void *record, bk_error *error) BK_MUST_USE;

/// Removes a whole production with everything that is its own (company, dates, roles, costumes, pieces, steps, needs,
/// fittings; not performers, people, equipment, materials, orders, movements), within a change.
bk_status bk_store_remove_production(bk_store *store, int64_t production, bk_error *error) BK_MUST_USE;

#endif
