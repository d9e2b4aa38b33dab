#ifndef BODKIN_WORK_CLOCK_H
#define BODKIN_WORK_CLOCK_H

#include "bodkin/store/records_bench.h"
#include "bodkin/work/job.h"

/// A clock that runs for the step in somebody's hands, also while the program is not. One a person (the job's `who`); it runs
/// from the job's `made_at`. What it measured is kept in the step's `took`, which a tick then keeps unless told otherwise.

typedef struct bk_running_line {
    bk_running record;
    const char *piece;
    const char *step, *step_title; ///< key and title
    int64_t minutes;               ///< whole minutes it ran up to `now`
} bk_running_line;

/// The clock of `who` as it stands at `now` (ISO 8601 with UTC offset); `*runs` false where none runs.
bk_status bk_running_read(bk_store *store, const char *who, const char *now, bk_arena *arena,
                          bk_running_line *line, bool *runs, bk_error *error) BK_MUST_USE;

/// Starts it for a step, as one change; where it runs for another step it is stopped there first, and the sentence says so:
/// "Begun: 4A-2 hem of the skirt (stopped: 4A-1 cut, 25 min)". BK_REFUSED for a step that is done or for which it runs already.
bk_status bk_running_start(const bk_job *job, int64_t step, const char **sentence, bk_error *error)
    BK_MUST_USE;

/// Stops it, as one change: "Stopped: 4A-2 hem of the skirt, 25 min"; `*minutes` (may be NULL) is what it ran this time.
/// BK_REFUSED where none runs.
bk_status bk_running_stop(const bk_job *job, int64_t *minutes, const char **sentence, bk_error *error)
    BK_MUST_USE;

/// Stops all clocks of a step within a change of the caller's, who puts the step: its `took` gets what the longest of them
/// measured on top.
bk_status bk_running_end(bk_store *store, bk_step *step, const char *now, bk_error *error) BK_MUST_USE;

/// Whole minutes from one moment to another, both ISO 8601 with UTC offset; 0 where `from` is later, or one of them is no
/// moment.
int64_t bk_minutes_between(const char *from, const char *to);

#endif
