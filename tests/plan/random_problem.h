#ifndef BODKIN_TESTS_PLAN_RANDOM_PROBLEM_H
#define BODKIN_TESTS_PLAN_RANDOM_PROBLEM_H

#include "bodkin/plan/chance.h"
#include "bodkin/plan/problem.h"

/// What a random problem is made of.
typedef struct random_shape {
    uint32_t tasks;     ///< at most
    uint32_t resources; ///< at most
    bool calendars;     ///< closed times, changing capacities, tasks that are whole
    bool modes;         ///< up to three ways to do a task
    bool agreed;        ///< releases, appointments, tasks that give way, targets
    bool ends;          ///< some resource may be closed for ever in the end
} random_shape;

/// Everything in `arena`. Without `ends` every task can be done some time.
bk_problem random_problem(const random_shape *shape, bk_chance *chance, bk_arena *arena);

/// A random order of its tasks, each behind those it comes after, in `arena`.
uint32_t *random_order(const bk_problem *problem, bk_chance *chance, bk_arena *arena);

#endif
