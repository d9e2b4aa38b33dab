#include "bodkin/plan/planner.h"

#include <stdlib.h>

#include "bodkin/plan/planner_parts.h"

// Whether nothing ties a task to a clock.
static bool is_plain(const bk_problem *problem)
{
    for (size_t i = 0; i < problem->resource_count; i++)
        if (problem->resources[i].stage_count > 1)
            return false;
    for (size_t i = 0; i < problem->task_count; i++) {
        const bk_task *task = &problem->tasks[i];
        if (task->release > 0 || task->appointment != BK_CLOCK_NONE || task->yields)
            return false;
    }
    return problem->target_count == 0;
}

// The length of all tasks one after another, each with the rests before it.
static int64_t length_of_all(const bk_problem *problem)
{
    int64_t length = 0;
    for (size_t i = 0; i < problem->task_count; i++) {
        int32_t most = 0;
        for (size_t j = 0; j < problem->tasks[i].mode_count; j++)
            if (problem->tasks[i].modes[j].minutes > most)
                most = problem->tasks[i].modes[j].minutes;
        length += most;
    }
    for (size_t i = 0; i < problem->rank_count; i++)
        length += problem->ranks[i].rest;
    return length;
}

static void take_room(bk_planner *planner)
{
    size_t room = planner->problem->task_count + 1;
    planner->best = bk_draft_new(room);
    planner->work = bk_draft_new(room);
    planner->spare = bk_draft_new(room);
    planner->rank = bk_alloc_clear(room, sizeof *planner->rank);
    planner->ranked = bk_alloc_clear(room, sizeof *planner->ranked);
    planner->numbers = bk_alloc_clear(room, sizeof *planner->numbers);
    planner->others = bk_alloc_clear(room, sizeof *planner->others);
    planner->keys = bk_alloc_clear(room, sizeof *planner->keys);
    planner->moments = bk_alloc_clear(room, sizeof *planner->moments);
    planner->energy = bk_alloc_clear(room, sizeof *planner->energy);
    for (size_t rule = 0; rule < BK_RULES; rule++)
        planner->rules[rule] = bk_alloc_clear(room, sizeof *planner->rules[rule]);
}

bk_planner *bk_planner_new(const bk_problem *problem, uint64_t seed)
{
    bk_planner *planner = bk_alloc_clear(1, sizeof *planner);
    planner->problem = problem;
    planner->generator = bk_generator_new(problem);
    planner->chance = bk_chance_from(seed);
    planner->plain = is_plain(problem);
    take_room(planner);
    bk_planner_rules(planner);
    int64_t length = length_of_all(problem);
    planner->plain = planner->plain && planner->bound.never == 0 && length < BK_CLOCK_NEVER;
    planner->horizon = planner->plain ? (bk_clock_minute)length : 0;
    bk_links_order(problem, &planner->generator->after, planner->rules[0], planner->work.order);
    bk_planner_make(planner, &planner->work, !planner->plain);
    return planner;
}

void bk_planner_free(bk_planner *planner)
{
    if (planner == NULL)
        return;
    for (size_t i = 0; i < BK_DRAFTS_MOST; i++) {
        bk_draft_free(&planner->drafts[0][i]);
        bk_draft_free(&planner->drafts[1][i]);
    }
    bk_draft_free(&planner->best);
    bk_draft_free(&planner->work);
    bk_draft_free(&planner->spare);
    for (size_t rule = 0; rule < BK_RULES; rule++)
        free(planner->rules[rule]);
    free(planner->rank);
    free(planner->ranked);
    free(planner->numbers);
    free(planner->others);
    free(planner->keys);
    free(planner->moments);
    free(planner->energy);
    bk_generator_free(planner->generator);
    free(planner);
}

void bk_planner_run(bk_planner *planner, int64_t schedules, bk_planner_goes_on *goes_on, void *context)
{
    planner->budget = schedules;
    planner->goes_on = goes_on;
    planner->context = context;
    planner->stopped = false;
    if (planner->plain)
        bk_planner_search_sides(planner);
    else
        bk_planner_search_due(planner);
}

const bk_placing *bk_planner_best(const bk_planner *planner)
{
    return planner->best.placings;
}

bk_cost bk_planner_cost(const bk_planner *planner)
{
    return planner->best.cost;
}

int64_t bk_planner_schedules(const bk_planner *planner)
{
    return planner->schedules;
}

bool bk_planner_settled(const bk_planner *planner)
{
    return bk_cost_order(&planner->best.cost, &planner->bound) <= 0;
}

const uint32_t *bk_planner_order(const bk_planner *planner)
{
    return planner->best.order;
}
