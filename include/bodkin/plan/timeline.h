#ifndef BODKIN_PLAN_TIMELINE_H
#define BODKIN_PLAN_TIMELINE_H

#include "bodkin/plan/problem.h"

/// What is free of each resource, as tasks are put in: for whoever makes schedules.

/// One resource: stages as in the problem, with what is left of their capacity; behind the last stands one from
/// BK_CLOCK_NEVER.
typedef struct bk_timeline {
    bk_stage *stages;
    size_t count; ///< without the one behind the last
    size_t room;
    size_t first; ///< nothing is free before this one, or nothing before it is asked about
} bk_timeline;

/// All resources of a problem, and the room a walk through them needs. Made by bk_timelines_new, freed by bk_timelines_free.
typedef struct bk_timelines {
    bk_timeline *items;
    size_t count;
    const bk_stage **cursors; ///< where each use of a mode stands in its resource
    bk_clock_minute (*stretches)[2];
    size_t stretch_room;
} bk_timelines;

/// What is to be put somewhere.
typedef struct bk_work {
    const bk_use *uses;
    size_t use_count;
    int32_t minutes;
    bool whole;
} bk_work;

bk_timelines *bk_timelines_new(const bk_problem *problem);
void bk_timelines_free(bk_timelines *timelines);

/// Everything free, as the problem says.
void bk_timelines_clear(bk_timelines *timelines, const bk_problem *problem);

/// The same seen backwards from `end`: minute 0 is the last before it, and before the problem's minute 0 all is closed.
void bk_timelines_mirror(bk_timelines *timelines, const bk_problem *problem, bk_clock_minute end);

/// The first moment at or after `moment` at which anything of a resource is free, BK_CLOCK_NEVER: none. Nothing is put in before
/// `moment` any more, until all is rewound or begins anew.
bk_clock_minute bk_timelines_pass(bk_timelines *timelines, uint32_t resource, bk_clock_minute moment);
void bk_timelines_rewind(bk_timelines *timelines);

/// The earliest place for the work at or after `earliest` (0 or more): where one of its resources is closed it is set down (one
/// that is `whole` begins anew), where one has too little free it begins anew. False where there is none; then, and where it
/// could not end before `limit`, nothing is written.
bool bk_timelines_find(const bk_timelines *timelines, const bk_work *work, bk_clock_minute earliest,
                       bk_clock_minute limit, bk_placing *place);

/// Takes up what the work uses between `begin` and `end`, in the stretches that it is worked on; gives it back.
void bk_timelines_take(bk_timelines *timelines, const bk_work *work, const bk_placing *place);
void bk_timelines_give(bk_timelines *timelines, const bk_work *work, const bk_placing *place);

/// The stretches in which the work is worked on between `begin` and `end`; the timelines' own, until the next call.
size_t bk_timelines_stretches(bk_timelines *timelines, const bk_work *work, const bk_placing *place,
                              bk_clock_minute (**stretches)[2]);

#endif
