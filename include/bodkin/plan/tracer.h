#ifndef BODKIN_PLAN_TRACER_H
#define BODKIN_PLAN_TRACER_H

#include "bodkin/plan/odds.h"

/// What each task of a schedule waited for last. A tracer holds the room for many schedules of one problem; it
/// belongs to one thread.

typedef struct bk_tracer bk_tracer;

#define BK_NO_TASK UINT32_MAX

/// What bound the beginning of a task.
typedef struct bk_traced {
    bk_bound bound;
    uint32_t from;     ///< the task that it waited for; BK_NO_TASK: none
    uint32_t resource; ///< with BK_BOUND_HANDS
} bk_traced;

/// For a problem that outlives it. Never NULL; freed by bk_tracer_free.
bk_tracer *bk_tracer_new(const bk_problem *problem);
void bk_tracer_free(bk_tracer *tracer);

/// Takes another schedule; the placings must stay as they are while it is asked.
void bk_tracer_load(bk_tracer *tracer, const bk_placing *placings);

/// What `task`, which comes about, waited for last: the latest of the end (and rest) of a task it comes after, its
/// release or appointment, and the end of a task that held one of its resources until then and left no room. Closed
/// hours between that and its beginning are looked through. At a tie the order comes before the release, that before
/// the hands; then the lower task.
bk_traced bk_tracer_bound(bk_tracer *tracer, uint32_t task);

#endif
