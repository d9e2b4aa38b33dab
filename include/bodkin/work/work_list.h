#ifndef BODKIN_WORK_WORK_LIST_H
#define BODKIN_WORK_WORK_LIST_H

#include "bodkin/store/records_bench.h"
#include "bodkin/store/store.h"

/// The orders of work of the workroom, and what each comes to.

/// Minutes of work, as they add up over steps; a step that says no quickest or longest counts with its usual ones.
typedef struct bk_work_sum {
    int64_t quickest, usual, longest;
    int64_t hand; ///< the usual ones of hand sewing
} bk_work_sum;

typedef struct bk_work_line {
    bk_work record;
    size_t steps;
    bk_work_sum sum;
} bk_work_line;

typedef struct bk_work_list {
    const bk_work_line *items; ///< in the order of works.csv
    size_t count;
} bk_work_list;

/// Reads all of them; they live in `arena`.
bk_status bk_work_list_read(bk_store *store, bk_arena *arena, bk_work_list *list, bk_error *error)
    BK_MUST_USE;

/// One of them with its steps.
typedef struct bk_work_whole {
    bk_work_line line;
    const bk_work_step *steps; ///< in their order, `line.steps` of them
} bk_work_whole;

/// Reads one; `*found` false where it is no longer there.
bk_status bk_work_whole_read(bk_store *store, int64_t work, bk_arena *arena, bk_work_whole *whole,
                             bool *found, bk_error *error) BK_MUST_USE;

#endif
