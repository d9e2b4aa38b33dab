#ifndef BODKIN_TESTS_PLAN_SMALL_PROBLEM_H
#define BODKIN_TESTS_PLAN_SMALL_PROBLEM_H

#include "bodkin/plan/problem.h"

/// A problem put together by hand, a task at a time; all of it in the arena.
typedef struct small_problem {
    bk_arena *arena;
    bk_problem problem;
    bk_resource resources[8];
    bk_task tasks[16];
    bk_rank ranks[32];
    bk_target targets[4];
} small_problem;

enum { SMALL_STAGES = 8 };

/// Empty; freed by small_free.
void small_begin(small_problem *small);
void small_free(small_problem *small);

/// A resource with up to SMALL_STAGES stages, ended by one with `from` below 0; returns its index.
uint32_t small_resource(small_problem *small, const bk_stage *stages);

/// A resource with always so many units.
uint32_t small_always(small_problem *small, int32_t capacity);

/// A task of so many minutes that uses one unit of a resource; returns its index.
uint32_t small_task(small_problem *small, int32_t minutes, uint32_t resource);

/// Gives a task one way more to be done, with `amount` units of a resource.
void small_mode(small_problem *small, uint32_t task, int32_t minutes, uint32_t resource, int32_t amount);

/// Lets the first mode of a task use another resource as well.
void small_use(small_problem *small, uint32_t task, uint32_t resource, int32_t amount);

void small_rank(small_problem *small, uint32_t from, uint32_t to, int32_t rest);

#endif
