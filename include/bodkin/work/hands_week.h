#ifndef BODKIN_WORK_HANDS_WEEK_H
#define BODKIN_WORK_HANDS_WEEK_H

#include "bodkin/store/records_bench.h"
#include "bodkin/store/store.h"

/// The people of the workroom with their hours of one week, who is away when, and the equipment they share.

typedef struct bk_hand {
    bk_person record;
    int64_t minutes;      ///< hours of the week, Monday to Sunday, absences taken off
    int64_t minutes_left; ///< those from the day at hand on
} bk_hand;

typedef struct bk_hands_week {
    const bk_hand *people; ///< in the order of people.csv
    size_t person_count;
    int64_t minutes, minutes_left; ///< of all of them
    const bk_away
        *aways; ///< those that are not over first, by their first day; then the others, newest first
    size_t away_count;
    const bk_equipment *equipment; ///< in the order of equipment.csv
    size_t equipment_count;
} bk_hands_week;

/// Reads them for the week of `today`; all of it lives in `arena`.
bk_status bk_hands_week_read(bk_store *store, bk_day today, bk_arena *arena, bk_hands_week *week,
                             bk_error *error) BK_MUST_USE;

#endif
