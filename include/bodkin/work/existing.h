#ifndef BODKIN_WORK_EXISTING_H
#define BODKIN_WORK_EXISTING_H

#include "bodkin/store/store.h"

/// What exists already, by name, for whoever is about to name it.

typedef enum bk_existing_kind {
    BK_EXISTING_PERFORMERS, ///< of the workroom, those of the production's company first
    BK_EXISTING_PEOPLE,
    BK_EXISTING_EVERYBODY, ///< people, then performers
    BK_EXISTING_ROLES,
    BK_EXISTING_COSTUMES,  ///< their numbers
    BK_EXISTING_PIECES,    ///< their keys
    BK_EXISTING_STEPS,     ///< keys of the steps of the piece named in `of`
    BK_EXISTING_FIT_STEPS, ///< those of kind fit
    BK_EXISTING_EARLIER,   ///< keys of the steps of the piece named in `of`, then PIECE/KEY of all others
    BK_EXISTING_MATERIALS,
    BK_EXISTING_WORKS,      ///< orders of work
    BK_EXISTING_WORK_STEPS, ///< keys of the steps of the order of work named in `of`
    BK_EXISTING_MEASURES,
    BK_EXISTING_PLACES,    ///< where pieces are kept
    BK_EXISTING_SUPPLIERS, ///< whom materials and pieces come from
    BK_EXISTING_KINDS
} bk_existing_kind;

typedef struct bk_existing {
    const char *name;
    const char *tells; ///< what it is, in a few words; NULL: nothing more
} bk_existing;

typedef struct bk_existing_list {
    const bk_existing *items;
    size_t count;
} bk_existing_list;

/// Reads what is known of a kind in a production (its id; 0: none). `of` see above, else NULL. All of it lives in `arena`, names
/// once each, in their order, the texts of places and suppliers in natural order.
bk_status bk_existing_read(bk_store *store, int64_t production, bk_existing_kind kind, const char *of,
                           bk_arena *arena, bk_existing_list *list, bk_error *error) BK_MUST_USE;

#endif
