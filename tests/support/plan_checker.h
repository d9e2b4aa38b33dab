#ifndef BODKIN_TESTS_SUPPORT_PLAN_CHECKER_H
#define BODKIN_TESTS_SUPPORT_PLAN_CHECKER_H

#include "bodkin/plan/problem.h"

/// Looks at a schedule minute by minute, with nothing of what made it: the minutes worked and their number, the order with its rests,
/// releases, tasks that must not be split, closed times, what is there of each resource in each minute, appointments kept
/// where what comes before was done, and that what comes after a task that never comes about never does either.
/// `minutes` of work of each task in place of its modes' own; NULL: those. False where there is a fault, which is then told.
bool bk_plan_sound(const bk_problem *problem, const int32_t *minutes, const bk_placing *placings,
                   bk_error *fault) BK_MUST_USE;

#endif
