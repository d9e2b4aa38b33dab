#ifndef BODKIN_STORE_INSIDE_H
#define BODKIN_STORE_INSIDE_H

#include "bodkin/store/db.h"
#include "bodkin/store/store.h"

/// What the files of this floor share; nothing of it is for the floors above.

struct bk_store {
    bk_db *db;
    char *path;
    char *who;
    char *terminal; ///< NULL: not known
    bk_as as;
    bool changing; ///< a change is open
};

/// Writes the daybook's entry of the open change with its changeset; what is changed after it is not recorded.
bk_status bk_store_entry_write(bk_store *store, const char *made_at, const char *sentence, int64_t *entry,
                               bk_error *error) BK_MUST_USE;

/// Commits the open change; where that fails it stays open.
bk_status bk_store_entry_commit(bk_store *store, bk_error *error) BK_MUST_USE;

/// The id that a statement gives for a name, its one parameter; 0 where it gives none.
bk_status bk_store_find_by_name(bk_store *store, bk_sql sql, const char *name, int64_t *id, bk_error *error)
    BK_MUST_USE;

/// Of what bk_store_check looks for only what rows can have against each other: names and keys given twice, records of two
/// productions, circles. The same within a change that is open.
bk_status bk_store_check_rows(bk_store *store, bk_arena *arena, bk_findings *findings, bk_error *error)
    BK_MUST_USE;

#endif
