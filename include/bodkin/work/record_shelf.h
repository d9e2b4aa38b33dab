#ifndef BODKIN_WORK_RECORD_SHELF_H
#define BODKIN_WORK_RECORD_SHELF_H

#include "bodkin/work/record_desk.h"

/// What happens on the shelf when a record is filled in: a count, an order that
/// arrives or after all did not, and the materials of steps that become done or
/// open. All within a change.

/// Counts a material: what it says lies on the shelf becomes so. `now` is the
/// material as it stands, NULL: a new one.
bk_status bk_shelf_count(bk_desk *desk, const bk_material *now, const bk_material *material) BK_MUST_USE;

/// Brings the shelf to what an order delivers: its quantity where it has
/// arrived, nothing where it has not. What came in as arrived with sheets is on
/// the shelf already. `now` is the order as it stands, NULL: a new one; `order`
/// is written already.
bk_status bk_shelf_deliver(bk_desk *desk, const bk_order *now, const bk_order *order) BK_MUST_USE;

/// Removes a material's movements, or frees an order's from it (what arrived
/// stays on the shelf).
bk_status bk_shelf_forget_material(bk_desk *desk, int64_t material) BK_MUST_USE;
bk_status bk_shelf_forget_order(bk_desk *desk, const bk_order *order) BK_MUST_USE;

enum { BK_STEPS_WATCHED = 2 };

/// Steps whose doing may change by what is written: each is looked at before
/// and after it.
typedef struct bk_step_watch {
    int64_t steps[BK_STEPS_WATCHED];
    bool done[BK_STEPS_WATCHED];
    size_t count;
} bk_step_watch;

/// Watches a step (0 and one watched already: nothing); one that is not there
/// yet is open.
bk_status bk_shelf_watch(bk_desk *desk, bk_step_watch *watch, int64_t step) BK_MUST_USE;

/// Takes the materials of those that became done, as of `done_on`, and returns
/// those of what became open, today.
bk_status bk_shelf_settle(bk_desk *desk, const bk_step_watch *watch, bk_day done_on) BK_MUST_USE;

/// A step that is done already is said to need a material: what lies on the shelf stays as it is, and none of it comes back
/// when the step is opened again. For a material that was never counted nothing is kept.
bk_status bk_shelf_note_need(bk_desk *desk, const bk_need *need) BK_MUST_USE;

#endif
