#ifndef BODKIN_WORK_BENCH_LIST_H
#define BODKIN_WORK_BENCH_LIST_H

#include "bodkin/store/records_bench.h"
#include "bodkin/work/forecast.h"

/// The bench: what one person can do now, best first.

/// Why a step stands where it does.
typedef enum bk_bench_why {
    BK_WHY_RUNNING, ///< it is in this person's hands: the clock runs
    BK_WHY_LATE,    ///< its costume is expected late
    BK_WHY_TIGHT,   ///< little time is left before its latest beginning
    BK_WHY_PLANNED, ///< the plan has it today
    BK_WHY_OTHERS,  ///< somebody else waits for it
    BK_WHY_TIME,    ///< it is in time
    BK_WHY_CAN_WAIT ///< it can wait until after the opening
} bk_bench_why;

typedef struct bk_bench_line {
    const bk_planned_step *step;
    bk_bench_why why;
    int64_t days_left;  ///< calendar days to its due day; INT64_MIN: none
    int64_t behind;     ///< minutes of work behind it
    int64_t minutes;    ///< for this person
    bool fits;          ///< within the minutes asked for (true where none are)
    bool part;          ///< it does not fit, but can be set down and taken up again
    size_t together;    ///< group of steps best done together (same kind and same cloth), from 1; 0: none
    const char *shared; ///< the material that its group shares; NULL where `together` is 0
    int64_t ran;        ///< whole minutes its clock has run; -1: none runs
} bk_bench_line;

typedef struct bk_bench_list {
    const bk_planned_person *person; ///< NULL: nobody of the workroom: for all hands
    const bk_bench_line *lines;
    size_t count;
    size_t fitting;       ///< how many of them fit
    bk_moment free_until; ///< until when this person's hours of today last; `day` BK_NO_DAY: none today
} bk_bench_list;

/// What `person` (a name; NULL or unknown: everybody) can do now: open steps that are next, wait on nothing that another must clear,
/// and are of a kind among the person's skills; for everybody, those that somebody can do (neither BK_SNAG_NO_SKILL nor
/// BK_SNAG_NO_HOURS). `minutes` above 0: those that fit that time come first. `runnings` are the clocks that run (may be none) and
/// `now` the moment they are looked at. Best first: running, then what cannot wait, then by the latest beginning (what is late
/// first), what has most work behind it, the plan's order. All in `arena`, pointing into the forecast.
bk_bench_list bk_bench_list_make(const bk_forecast *forecast, const char *person, int64_t minutes,
                                 const bk_running *runnings, size_t running_count, const char *now,
                                 bk_arena *arena);

/// Those lines of a list that are of one production (its id), in `arena`. A group may be left with one line.
bk_bench_list bk_bench_list_of(bk_bench_list list, int64_t production, bk_arena *arena);

#endif
