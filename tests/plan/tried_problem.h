#ifndef BODKIN_TESTS_PLAN_TRIED_PROBLEM_H
#define BODKIN_TESTS_PLAN_TRIED_PROBLEM_H

#include "bodkin/plan/odds.h"
#include "distribution.h"
#include "small_problem.h"

enum { TRIED_GROUPS = DISTRIBUTION_LENGTH, TRIED_TASKS = 16 };

/// A small problem with the spread of each of its tasks, and what to ask about it.
typedef struct tried_problem {
    small_problem small;
    const bk_spread *spreads[TRIED_TASKS];
    uint32_t order[TRIED_TASKS], all[TRIED_TASKS];
    bk_placing plan[TRIED_TASKS];
    bk_odds_group groups[TRIED_GROUPS];
    size_t group_count;
    bk_group_odds odds[TRIED_GROUPS];
    uint64_t seed;
} tried_problem;

/// Each test runs in a process of its own, so that one is enough; it is too large for the stack.
extern tried_problem tried;

/// Empty; freed by end_tried.
void begin_tried(void);
void end_tried(void);

/// A step that one unit of a resource is needed for; returns its index.
uint32_t add_step(bk_estimate estimate, uint32_t resource);

/// A step for which nobody is needed.
uint32_t add_free_step(bk_estimate estimate);

/// Asks about `count` tasks from `first` on.
void ask(size_t first, size_t count, bk_clock_minute due);

/// Asks whether all tasks are done by each minute: for the whole distribution.
void ask_by_every_minute(void);

/// The serial schedule in the order of the tasks, to be tried.
bk_odds_plan plan_of_tried(void);
void try_all(int32_t trials);

double share_in_time(size_t group);

/// Fails where a share of so many trials is more than three standard errors from the exact one.
void check_share(const char *says, double share, double exact, int32_t trials);

#endif
