#ifndef BODKIN_STORE_DAYBOOK_H
#define BODKIN_STORE_DAYBOOK_H

#include "bodkin/store/store.h"

/// The record of every change, newest first, and the way to undo it.

typedef struct bk_entry {
    int64_t id;
    const char *made_at; ///< ISO 8601 with UTC offset
    const char *made_by;
    const char *sentence;
    bool undone;
    int64_t undoes; ///< the entry that it undoes (or, for an undoing one, redoes); 0: none
    bool ended;     ///< can no longer be undone: the store's form has changed since
} bk_entry;

/// Reads at most `most` entries before the entry `before` (0: from the newest on) as bk_entry rows.
bk_status bk_daybook_read(bk_store *store, int64_t before, int64_t most, bk_arena *arena, bk_rows *entries,
                          bk_error *error) BK_MUST_USE;

/// The newest entry, not undone, of the person at this terminal; 0 where there is none.
bk_status bk_daybook_to_undo(bk_store *store, int64_t *entry, bk_error *error) BK_MUST_USE;

/// Undoes an entry (0: the newest not undone of the person at this terminal) as one change with an entry of
/// its own. `*sentence` says what was undone, in `arena`. BK_REFUSED with nothing changed: there is nothing
/// to undo, it is undone already, something newer touched the same values, or it no longer fits what is newer: a name
/// that another bears by now, a circle, a count beneath a newer one.
bk_status bk_daybook_undo(bk_store *store, int64_t entry, const char *made_at, bk_arena *arena,
                          const char **sentence, bk_error *error) BK_MUST_USE;

/// Redoes what the person at this terminal undid last. BK_REFUSED where there is none, or a new change was
/// made since.
bk_status bk_daybook_redo(bk_store *store, const char *made_at, bk_arena *arena, const char **sentence,
                          bk_error *error) BK_MUST_USE;

#endif
