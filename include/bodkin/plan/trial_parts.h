#ifndef BODKIN_PLAN_TRIAL_PARTS_H
#define BODKIN_PLAN_TRIAL_PARTS_H

#include "bodkin/plan/forward.h"
#include "bodkin/plan/generator.h"
#include "bodkin/plan/places.h"
#include "bodkin/plan/trial.h"

/// What trial.c (the going through) and trial_plan.c (the plan, and the beginning again) share.

/// A resource, seen by those who wait for it. Places are places in the order of the trial.
typedef struct bk_trial_desk {
    bk_places ready;   ///< tasks that are ready and can be done with it
    bk_places own;     ///< those of them that are planned so
    uint32_t *planned; ///< all places planned with it that do not yield, in order
    size_t planned_count;
    size_t next;            ///< of those the first whose time has not come and which has not begun
    bk_clock_minute called; ///< the moment for which it was last asked to look again; BK_CLOCK_NONE
    bool awake;             ///< it may have become free now
} bk_trial_desk;

/// Those that do not yield come first in the order, then those that do; each by their planned time.
typedef struct bk_trial_class {
    size_t first, end;
    size_t due; ///< the first whose planned time has not come
} bk_trial_class;

enum { BK_TRIAL_CLASSES = 2 };

#define BK_NO_LEAD UINT32_MAX ///< needs nobody

/// A moment at which a resource opens, or more of it is there.
typedef struct bk_trial_opening {
    bk_clock_minute at;
    uint32_t resource;
} bk_trial_opening;

struct bk_trial {
    const bk_problem *problem;
    bk_generator *generator; ///< made the plan; its links, works and appointments
    bk_forward *forward;
    bk_placing *planned;
    uint32_t *order; ///< by class and planned time
    uint32_t *place; ///< of each task in the order
    bk_trial_class classes[BK_TRIAL_CLASSES];
    bk_trial_desk *desks; ///< one for each resource
    uint32_t *first_desk; ///< of task i: task_desks[first_desk[i]] to task_desks[first_desk[i + 1] - 1]
    uint32_t *task_desks; ///< the resources of all of its modes, each once
    uint32_t *leads;      ///< of each mode (as the generator counts them) its first resource; BK_NO_LEAD
    bk_trial_opening *openings; ///< by time
    size_t opening_count;

    // While it runs:
    bk_clock_minute now;
    const int32_t *minutes;
    bk_placing *placings;
    size_t left;      ///< tasks that have not begun
    size_t opening;   ///< the next one
    uint64_t *events; ///< a heap
    size_t event_count, event_room;
    uint32_t *woken; ///< the resources that are awake
    size_t woken_count;
    bk_places fresh;     ///< places of the tasks to be looked at now
    uint32_t *waits_for; ///< of each task: how many before it are not done
    bk_clock_minute *ready_at;
    bool *arrived; ///< all it comes after is done
    bool *begun;
    bool *reserved; ///< its appointment is kept free
};

/// What a task in a mode is to its resources, with the minutes of this trial, scaled where the mode takes longer than
/// the planned one.
bk_work bk_trial_work(const bk_trial *trial, uint32_t task, uint32_t mode);

/// Puts everything back to minute 0: nothing begun, appointments not yet reserved, no events.
void bk_trial_clear(bk_trial *trial);

#endif
