#ifndef BODKIN_PLAN_GENERATOR_H
#define BODKIN_PLAN_GENERATOR_H

#include "bodkin/plan/generate.h"
#include "bodkin/plan/links.h"
#include "bodkin/plan/places.h"
#include "bodkin/plan/timeline.h"

/// What the schemes of generate.h share: a generator from inside.

/// A resource, seen by those that wait for it to have anything free at all.
typedef struct bk_waiting_room {
    bk_places waiting;     ///< their places in the order
    bk_clock_minute calls; ///< the moment at which it will be looked at; BK_CLOCK_NEVER
    bool open;             ///< it became free now
} bk_waiting_room;

struct bk_generator {
    const bk_problem *problem;
    bk_timelines *timelines;
    bk_links before, after;
    uint32_t *appointed; ///< the tasks with an appointment, by its time
    size_t appointed_count;
    bool *kept;           ///< whether a task's appointment is reserved
    bool *late_class;     ///< whether a task gives way, and all that comes after it as well
    uint32_t *position;   ///< of each task in the order
    uint32_t *waits_for;  ///< how many tasks before it are not yet placed
    bk_work *works;       ///< of all modes, as the problem says
    uint32_t *first_mode; ///< where the modes of a task stand among all; behind the last task, their number

    // For time going forward, made when it is first asked for:
    bk_waiting_room *rooms; ///< of each resource
    uint32_t *open;         ///< the resources that became free now
    size_t open_count;
    bk_places fresh;          ///< the places of those to be looked at now
    bool *begun;              ///< whether a task is placed
    bk_clock_minute *soonest; ///< of each mode: it cannot begin before
    uint32_t *lacks;          ///< of each mode: the resource of which it was last seen to lack everything
    bk_clock_minute *called;  ///< when a task is to be looked at again
    uint64_t *queue;          ///< what is to be looked at when, as a heap
    size_t queue_count, queue_room;
};

/// Makes and frees the room that a schedule made forward in time needs.
void bk_generator_open_rooms(bk_generator *generator);
void bk_generator_free_rooms(bk_generator *generator);

/// What a task in a mode is to the timelines.
bk_work bk_making_work(const bk_generator *generator, const bk_making *making, uint32_t task, uint32_t mode);

/// The modes that come into question for a task: from `*first` until what is returned.
uint32_t bk_making_modes(const bk_problem *problem, const bk_making *making, uint32_t task, uint32_t *first);

/// Finds the place of a task at or after `ready` in the mode that ends it first, or in the one the making says. Begin and end are
/// BK_CLOCK_NEVER where there is none.
bk_placing bk_generator_find(const bk_generator *generator, const bk_making *making, uint32_t task,
                             bk_clock_minute ready);

/// Reserves all appointments that can be reserved, in the order of their times, on cleared timelines.
void bk_generator_reserve(bk_generator *generator, const bk_making *making, bk_placing *placings);

/// Whether a task that is ready at `ready` keeps its reserved appointment; where it cannot, what was reserved is given back and
/// `*ready` moved to the appointment, before which it does not begin.
bool bk_generator_keeps(bk_generator *generator, const bk_making *making, uint32_t task,
                        const bk_placing *reserved, bk_clock_minute *ready);

/// The moment at which all that a task comes after (or comes before, when time runs backwards) is done, BK_CLOCK_NEVER; `from` at least.
bk_clock_minute bk_generator_ready(const bk_links *links, uint32_t task, const bk_placing *placings,
                                   bk_clock_minute from);

#endif
