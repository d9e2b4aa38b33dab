#ifndef BODKIN_WORK_TIMETABLE_H
#define BODKIN_WORK_TIMETABLE_H

#include "bodkin/store/store.h"

/// The dates of a production in the order in which they come.

typedef struct bk_timetable {
    const bk_date
        *items; ///< by day, those without a time first; its opening is in it with id 0 where no date says so
    size_t count;
} bk_timetable;

/// Reads the dates of a production; they live in `arena`.
bk_status bk_timetable_read(bk_store *store, const bk_production *production, bk_arena *arena,
                            bk_timetable *table, bk_error *error) BK_MUST_USE;

/// "today", "tomorrow", "in 17 days", "3 days ago": how far a day is; in `arena`.
const char *bk_days_away(bk_day day, bk_day today, bk_arena *arena);

#endif
