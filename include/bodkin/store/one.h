#ifndef BODKIN_STORE_ONE_H
#define BODKIN_STORE_ONE_H

#include "bodkin/store/store.h"

/// One record at a time: reading, removing and placing it. Families with ids of their own: BK_PRODUCTIONS, BK_DATES,
/// BK_PEOPLE, BK_AWAYS, BK_PERFORMERS, BK_ROLES, BK_COSTUMES, BK_PIECES, BK_STEPS, BK_NEEDS, BK_FITTINGS, BK_MATERIALS,
/// BK_ORDERS, BK_MOVEMENTS, BK_MEASURE_SHEETS, BK_WORKS, BK_WORK_STEPS, BK_EQUIPMENT, BK_NOTES, BK_RUNNINGS, BK_SETTINGS; and
/// the private families, whose rows bear the id of their record.

/// Reads the record with that id into `record`, a struct of its family; texts live in `arena`. `*found` false where there
/// is none, and `record` is then left as it is.
bk_status bk_store_get(bk_store *store, bk_family family, int64_t id, bk_arena *arena, void *record,
                       bool *found, bk_error *error) BK_MUST_USE;

/// Removes the row with that id, within a change; what refers to it is the caller's care. No row: nothing happens.
bk_status bk_store_remove(bk_store *store, bk_family family, int64_t id, bk_error *error) BK_MUST_USE;

/// Removes a link (BK_COMPANY, BK_COVERS, BK_PIECE_COSTUMES, BK_STEP_AFTERS), within a change.
bk_status bk_store_remove_link(bk_store *store, bk_family family, int64_t from, int64_t to, bk_error *error)
    BK_MUST_USE;

/// Removes all links of that family from `from`, within a change.
bk_status bk_store_remove_links(bk_store *store, bk_family family, int64_t from, bk_error *error) BK_MUST_USE;

/// Removes one measure of a sheet, within a change.
bk_status bk_store_remove_measure(bk_store *store, int64_t sheet, int64_t name, bk_error *error) BK_MUST_USE;

/// A record and its place in its list.
typedef struct bk_place {
    int64_t id;
    int64_t position;
} bk_place;

/// The places of one list, in its order, as bk_place rows: BK_ROLES, BK_COSTUMES, BK_PIECES, BK_FITTINGS, BK_NOTES by
/// production, BK_STEPS by piece, BK_NEEDS by step, BK_WORKS and BK_EQUIPMENT all (key 0), BK_WORK_STEPS by order
/// of work.
bk_status bk_store_places(bk_store *store, bk_family family, int64_t key, bk_arena *arena, bk_rows *places,
                          bk_error *error) BK_MUST_USE;

/// Puts a record at a position, within a change. The same families.
bk_status bk_store_place(bk_store *store, bk_family family, int64_t id, int64_t position, bk_error *error)
    BK_MUST_USE;

/// A position after all others of the list that adding to that family goes to: roles, costumes, pieces, steps, fittings and
/// notes by production, needs by step, works and equipment all, steps of an order of work by it; of links by what they are from, of
/// measures by their sheet. An empty list begins at 1.
bk_status bk_store_last_place(bk_store *store, bk_family family, int64_t key, int64_t *position,
                              bk_error *error) BK_MUST_USE;

#endif
