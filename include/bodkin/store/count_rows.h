#ifndef BODKIN_STORE_COUNT_ROWS_H
#define BODKIN_STORE_COUNT_ROWS_H

#include "bodkin/store/store.h"

/// How much there is of one production.
typedef struct bk_production_counts {
    int64_t performers; ///< of its company
    int64_t costumes;
    int64_t steps;
    int64_t steps_open; ///< not done, neither by a tick nor by a fitting that fits
} bk_production_counts;

/// Counts in the store, without reading the rows.
bk_status bk_store_production_counts(bk_store *store, int64_t production, bk_production_counts *counts,
                                     bk_error *error) BK_MUST_USE;

#endif
