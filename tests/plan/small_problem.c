#include "small_problem.h"

#include <string.h>

void small_begin(small_problem *small)
{
    *small = (small_problem){.arena = bk_arena_new()};
    small->problem.resources = small->resources;
    small->problem.tasks = small->tasks;
    small->problem.ranks = small->ranks;
    small->problem.targets = small->targets;
}

void small_free(small_problem *small)
{
    bk_arena_free(small->arena);
}

uint32_t small_resource(small_problem *small, const bk_stage *stages)
{
    size_t count = 0;
    bk_stage *copy = bk_arena_clear(small->arena, SMALL_STAGES, sizeof *copy);
    while (stages[count].from >= 0) {
        copy[count] = stages[count];
        count++;
    }
    small->resources[small->problem.resource_count] = (bk_resource){copy, count};
    return (uint32_t)small->problem.resource_count++;
}

uint32_t small_always(small_problem *small, int32_t capacity)
{
    return small_resource(small, (bk_stage[]){{0, capacity}, {-1, 0}});
}

void small_mode(small_problem *small, uint32_t task, int32_t minutes, uint32_t resource, int32_t amount)
{
    bk_task *changed = &small->tasks[task];
    bk_mode *modes = bk_arena_clear(small->arena, changed->mode_count + 1, sizeof *modes);
    bk_use *uses = bk_arena_clear(small->arena, 4, sizeof *uses);
    if (changed->mode_count > 0)
        memcpy(modes, changed->modes, changed->mode_count * sizeof *modes);
    uses[0] = (bk_use){resource, amount};
    modes[changed->mode_count++] = (bk_mode){minutes, uses, 1};
    changed->modes = modes;
}

uint32_t small_task(small_problem *small, int32_t minutes, uint32_t resource)
{
    uint32_t task = (uint32_t)small->problem.task_count++;
    small->tasks[task] = (bk_task){.appointment = BK_CLOCK_NONE};
    small_mode(small, task, minutes, resource, 1);
    return task;
}

void small_use(small_problem *small, uint32_t task, uint32_t resource, int32_t amount)
{
    const bk_mode *mode = &small->tasks[task].modes[0];
    bk_mode *changed = bk_arena_clear(small->arena, 1, sizeof *changed);
    bk_use *uses = bk_arena_clear(small->arena, mode->use_count + 1, sizeof *uses);
    memcpy(uses, mode->uses, mode->use_count * sizeof *uses);
    uses[mode->use_count] = (bk_use){resource, amount};
    *changed = (bk_mode){mode->minutes, uses, mode->use_count + 1};
    small->tasks[task].modes = changed;
}

void small_rank(small_problem *small, uint32_t from, uint32_t to, int32_t rest)
{
    small->ranks[small->problem.rank_count++] = (bk_rank){from, to, rest};
}
