#ifndef BODKIN_PLAN_FORWARD_H
#define BODKIN_PLAN_FORWARD_H

#include "bodkin/plan/timeline.h"

/// What is free of each resource as time goes forward: for whoever begins tasks at the moment and never before. What
/// lies behind is forgotten, so that it costs nothing.

typedef struct bk_forward bk_forward;

/// For a problem that outlives it. Never NULL; freed by bk_forward_free.
bk_forward *bk_forward_new(const bk_problem *problem);
void bk_forward_free(bk_forward *forward);

/// Everything free, and minute 0 again.
void bk_forward_clear(bk_forward *forward);

/// What is free of a resource at a moment, not before one asked about earlier: units, or BK_CLOSED.
int32_t bk_forward_units(bk_forward *forward, uint32_t resource, bk_clock_minute moment);

/// Whether not a unit of a resource is free at `moment` (as in bk_forward_fits): quick to tell.
bool bk_forward_busy(bk_forward *forward, uint32_t resource, bk_clock_minute moment);

/// Whether the work can begin at `moment` (not before the latest that bk_forward_units was asked about) and be done:
/// set down where one of its resources is closed, unless it is `whole`. Then `place` gets begin and end.
bool bk_forward_fits(bk_forward *forward, const bk_work *work, bk_clock_minute moment, bk_placing *place);

/// Takes up what the work uses where it was last found to fit, in the name of `owner`.
void bk_forward_take(bk_forward *forward, const bk_work *work, uint32_t owner);

/// Gives back what the owner took up.
void bk_forward_give(bk_forward *forward, const bk_work *work, uint32_t owner);

/// The stretches of the work that was last found to fit, each first minute and first after the last; the forward's
/// own.
size_t bk_forward_stretches(const bk_forward *forward, const bk_clock_minute (**stretches)[2]);

#endif
