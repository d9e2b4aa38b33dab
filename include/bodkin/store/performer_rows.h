#ifndef BODKIN_STORE_PERFORMER_ROWS_H
#define BODKIN_STORE_PERFORMER_ROWS_H

#include "bodkin/store/store.h"

/// What is asked of the store about performers and their measure sheets, by statements of its own so that it costs the same
/// however many others were measured.

/// Whether the values of measures may be read by whom the store was opened for; they are the maker's alone.
bool bk_store_sees_measures(const bk_store *store);

/// The performer with that name; 0 where there is none.
bk_status bk_store_find_performer(bk_store *store, const char *name, int64_t *id, bk_error *error)
    BK_MUST_USE;

/// The name with that text of a measure; 0 where there is none.
bk_status bk_store_find_measure_name(bk_store *store, const char *name, int64_t *id, bk_error *error)
    BK_MUST_USE;

/// One performer's measure sheets, newest first: bk_sheet_day rows.
bk_status bk_store_performer_sheets(bk_store *store, int64_t performer, bk_arena *arena, bk_rows *sheets,
                                    bk_error *error) BK_MUST_USE;

/// All measures of one performer: bk_measure rows with names, newest sheet first, each in its own order. For the maker.
bk_status bk_store_performer_measures(bk_store *store, int64_t performer, bk_arena *arena, bk_rows *measures,
                                      bk_error *error) BK_MUST_USE;

/// A measure sheet and how many measures are on it.
typedef struct bk_counted_sheet {
    int64_t id, performer_id;
    bk_day taken_on;
    int64_t measures;
} bk_counted_sheet;

/// The measure sheets of a production's company: bk_counted_sheet rows, in the company's order, newest first.
bk_status bk_store_company_sheets(bk_store *store, int64_t production, bk_arena *arena, bk_rows *sheets,
                                  bk_error *error) BK_MUST_USE;

#endif
