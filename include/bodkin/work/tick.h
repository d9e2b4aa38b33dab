#ifndef BODKIN_WORK_TICK_H
#define BODKIN_WORK_TICK_H

#include "bodkin/store/store.h"

/// Bench work: a step is marked done, or open again. Its materials leave the shelf with it, and come back.
///
/// What leaves: the step's needs, one movement of kind use a material. A material whose shelf was never
/// counted (no movement of it at all) stays not known and has no movement: what was used was there, so
/// counting it from nothing would leave less than nothing, and later deliveries would seem short by it.
///
/// What comes back, one movement of kind return a material: exactly what left when the step was marked done
/// here, whatever its needs are by now. Of a material that did not leave then (the step came in done by an
/// import, or the shelf was not counted yet) its need, as the needs of done steps are already gone from what
/// was counted; nothing where the shelf was never counted.

/// The step that `name` means in a production, `PIECE/STEP`. BK_USAGE when it is not written so, BK_REFUSED
/// when there is none, with the nearest one.
bk_status bk_step_find(bk_store *store, const bk_production *production, const char *name, int64_t *step,
                       bk_error *error) BK_MUST_USE;

/// How a step was done.
typedef struct bk_tick {
    bk_day done_on;      ///< also the day on which its materials left the shelf
    const char *done_by; ///< NULL: not known
    int64_t took;        ///< minutes, or BK_NOT_KNOWN: what clocks measured, see bodkin/work/clock.h
} bk_tick;

/// Marks a step done, as one change with one entry of the daybook. `made_at` is the moment for the daybook
/// (see bk_store_change_commit); `*sentence`, "Done: 4A-2 hem of the skirt", is in `arena`. BK_REFUSED when
/// it is done already, also by a fitting that fits. Clocks that run for it stop.
bk_status bk_step_tick(bk_store *store, int64_t step, const bk_tick *tick, const char *made_at,
                       bk_arena *arena, const char **sentence, bk_error *error) BK_MUST_USE;

/// Marks a step open again, forgetting when, by whom and how fast it was done: "Open again: ...". `today` is
/// the day on which its materials come back. BK_REFUSED when it is open, and when a fitting that fits makes
/// it done.
bk_status bk_step_untick(bk_store *store, int64_t step, bk_day today, const char *made_at, bk_arena *arena,
                         const char **sentence, bk_error *error) BK_MUST_USE;

/// The part of a tick that moves materials, within a change of the caller's, for other jobs by which a step
/// becomes done or open.
bk_status bk_step_take_materials(bk_store *store, int64_t step, bk_day on, bk_error *error) BK_MUST_USE;
bk_status bk_step_return_materials(bk_store *store, int64_t step, bk_day on, bk_error *error) BK_MUST_USE;

#endif
