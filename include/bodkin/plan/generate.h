#ifndef BODKIN_PLAN_GENERATE_H
#define BODKIN_PLAN_GENERATE_H

#include "bodkin/plan/problem.h"

/// Schedule generation: from an order of the tasks to where each of them is put. Source: Kolisch 1996 (serial and parallel
/// schedule generation schemes). A generator holds the room it works in, so that thousands of schedules of one problem cost no
/// memory; it belongs to one thread.

typedef struct bk_generator bk_generator;

/// For a problem that outlives it. Never NULL; freed by bk_generator_free.
bk_generator *bk_generator_new(const bk_problem *problem);
void bk_generator_free(bk_generator *generator);

/// How one schedule is made.
typedef struct bk_making {
    const uint32_t *order;  ///< every task once, each after those it comes after
    const int32_t *minutes; ///< minutes of work of each task in place of its modes' own; NULL: the modes' own
    const int32_t *
        modes; ///< the mode of each task, below 0: the one that ends it first (the first at a tie); NULL: all so
} bk_making;

/// Serial: each task in turn at the earliest moment that it fits. Writes one placing for each task.
void bk_generate_serial(bk_generator *generator, const bk_making *making, bk_placing *placings);

/// Parallel: goes forward in time and at each moment begins, in the order given, all that can begin then.
void bk_generate_parallel(bk_generator *generator, const bk_making *making, bk_placing *placings);

/// Backward: each task in turn (the order reversed: those that come after it are placed before) at the latest moment at which
/// it still ends by `end` and before what comes after it. `release` and appointments are passed over. A task that does not fit
/// after minute 0 is put at BK_CLOCK_NEVER, and all before it. `placings` as with the others.
void bk_generate_backward(bk_generator *generator, const bk_making *making, bk_clock_minute end,
                          bk_placing *placings);

/// The same where no task may end after its own minute in `latest`.
void bk_generate_backward_to(bk_generator *generator, const bk_making *making, bk_clock_minute end,
                             const bk_clock_minute *latest, bk_placing *placings);

#endif
