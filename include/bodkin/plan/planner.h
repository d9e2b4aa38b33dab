#ifndef BODKIN_PLAN_PLANNER_H
#define BODKIN_PLAN_PLANNER_H

#include "bodkin/plan/problem.h"

/// Who does what when: a search for a good schedule of a problem. A first full answer at once, then the best so far at any
/// moment. Everything follows from the problem and the seed: the same on every run, machine and compiler (whole numbers only).

typedef struct bk_planner bk_planner;

/// Makes one schedule by rules, so that there is an answer. The problem must outlive it. Never NULL; bk_planner_free.
bk_planner *bk_planner_new(const bk_problem *problem, uint64_t seed);
void bk_planner_free(bk_planner *planner);

/// Asked after every few schedules: false stops the search. May be NULL.
typedef bool bk_planner_goes_on(void *context, int64_t schedules);

/// Searches until `schedules` have been made in all (each one generated counts, forward or backward, the first one too), or it
/// is told to stop, or nothing better can exist. Can be called again with a larger number to search on.
void bk_planner_run(bk_planner *planner, int64_t schedules, bk_planner_goes_on *goes_on, void *context);

/// The best placings so far, one for each task, its cost, and how many schedules were made; the planner's until it is freed,
/// changed by the next run.
const bk_placing *bk_planner_best(const bk_planner *planner);
bk_cost bk_planner_cost(const bk_planner *planner);
int64_t bk_planner_schedules(const bk_planner *planner);

/// Whether it is known that no schedule is better.
bool bk_planner_settled(const bk_planner *planner);

/// The order of tasks behind the best schedule, for bk_making; the planner's.
const uint32_t *bk_planner_order(const bk_planner *planner);

#endif
