#ifndef BODKIN_WORK_MEASURES_CHECK_H
#define BODKIN_WORK_MEASURES_CHECK_H

#include "bodkin/store/store.h"

/// Looking through all measure sheets of the workroom for what can hardly be true (see bodkin/trade/doubts.h).

typedef struct bk_measure_doubt {
    const char *performer;
    bk_day taken_on;
    const char *measure;
    const char *says; ///< one sentence; it holds values, so it is the maker's alone
} bk_measure_doubt;

typedef struct bk_measure_doubts {
    bk_measure_doubt
        *items; ///< performer by performer in natural order, the newest sheet first, in its own order
    size_t count;
} bk_measure_doubts;

/// Reads every sheet and looks at it and at the same performer's sheet before it. The doubts live in `arena`. BK_STORE
/// where the values may not be read (they are the maker's) or the store cannot.
bk_status bk_measures_check(bk_store *store, bk_arena *arena, bk_measure_doubts *doubts, bk_error *error)
    BK_MUST_USE;

#endif
