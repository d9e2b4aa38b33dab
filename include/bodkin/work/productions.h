#ifndef BODKIN_WORK_PRODUCTIONS_H
#define BODKIN_WORK_PRODUCTIONS_H

#include "bodkin/store/store.h"

/// The productions of the workroom.

typedef struct bk_production_list {
    const bk_production *items; ///< in work first by opening, then those put away
    size_t count;
} bk_production_list;

/// All productions; they live in `arena`.
bk_status bk_productions_read(bk_store *store, bk_arena *arena, bk_production_list *list, bk_error *error)
    BK_MUST_USE;

/// The production called `name`; where `name` is NULL the only one that is not put away, else the next to open from
/// `today` on, else the latest. BK_REFUSED with a sentence that says what would be right when there is none.
bk_status bk_production_choose(bk_store *store, const char *name, bk_day today, bk_arena *arena,
                               bk_production *chosen, bk_error *error) BK_MUST_USE;

#endif
