#include "random_problem.h"

#include "bodkin/plan/links.h"

enum { LONGEST = 9, STAGES = 12, UNITS = 4, LAST_STAGE = 60 };

static int32_t below(bk_chance *chance, uint32_t count)
{
    return (int32_t)bk_chance_below(chance, count);
}

static bool one_in(bk_chance *chance, uint32_t count)
{
    return bk_chance_below(chance, count) == 0;
}

static bk_resource make_resource(const random_shape *shape, bk_chance *chance, bk_arena *arena)
{
    int32_t most = 1 + below(chance, UNITS);
    size_t count = shape->calendars ? 1 + bk_chance_below(chance, STAGES) : 1;
    bk_stage *stages = bk_arena_clear(arena, count + 1, sizeof *stages);
    bk_clock_minute from = 0;
    for (size_t i = 0; i < count; i++) {
        stages[i] = (bk_stage){from, one_in(chance, 3) ? BK_CLOSED : below(chance, (uint32_t)most + 1)};
        from += 1 + below(chance, LONGEST);
    }
    // At last all are there for good, or nobody.
    stages[count - 1].capacity = shape->ends && one_in(chance, 4) ? BK_CLOSED : UNITS;
    if (count == 1)
        stages[0].capacity = most;
    return (bk_resource){stages, count};
}

static bk_mode make_mode(const bk_problem *problem, bk_chance *chance, bk_arena *arena)
{
    bk_use *uses = bk_arena_clear(arena, problem->resource_count, sizeof *uses);
    bk_mode mode = {below(chance, LONGEST), uses, 0};
    for (uint32_t i = 0; i < problem->resource_count; i++) {
        const bk_resource *resource = &problem->resources[i];
        int32_t last = resource->stages[resource->stage_count - 1].capacity;
        if (one_in(chance, 2))
            uses[mode.use_count++] = (bk_use){i, 1 + below(chance, (uint32_t)(last > 1 ? last : 1))};
    }
    return mode;
}

static void make_task(const random_shape *shape, const bk_problem *problem, bk_task *task, bk_chance *chance,
                      bk_arena *arena)
{
    size_t count = shape->modes ? 1 + bk_chance_below(chance, 3) : 1;
    bk_mode *modes = bk_arena_clear(arena, count, sizeof *modes);
    for (size_t i = 0; i < count; i++)
        modes[i] = make_mode(problem, chance, arena);
    *task = (bk_task){.modes = modes, .mode_count = count, .appointment = BK_CLOCK_NONE};
    task->whole = shape->calendars && one_in(chance, 3);
    if (!shape->agreed)
        return;
    task->release = one_in(chance, 3) ? below(chance, LAST_STAGE) : 0;
    if (one_in(chance, 5))
        task->appointment = below(chance, LAST_STAGE);
    task->yields = one_in(chance, 4);
}

static void make_ranks(bk_problem *problem, bk_chance *chance, bk_arena *arena)
{
    size_t most = problem->task_count * 2;
    bk_rank *ranks = bk_arena_clear(arena, most, sizeof *ranks);
    for (size_t i = 0; i < most && problem->task_count > 1; i++) {
        uint32_t to = 1 + bk_chance_below(chance, (uint32_t)problem->task_count - 1);
        if (one_in(chance, 2))
            ranks[problem->rank_count++] =
                (bk_rank){bk_chance_below(chance, to), to, one_in(chance, 3) ? below(chance, LONGEST) : 0};
    }
    problem->ranks = ranks;
}

static void make_targets(bk_problem *problem, bk_chance *chance, bk_arena *arena)
{
    problem->target_count = bk_chance_below(chance, 4);
    bk_target *targets = bk_arena_clear(arena, problem->target_count, sizeof *targets);
    for (size_t i = 0; i < problem->target_count; i++) {
        uint32_t *tasks = bk_arena_clear(arena, problem->task_count, sizeof *tasks);
        targets[i] = (bk_target){tasks, 0, below(chance, LAST_STAGE), 1 + below(chance, 3)};
        for (uint32_t task = 0; task < problem->task_count; task++)
            if (one_in(chance, 3))
                tasks[targets[i].task_count++] = task;
    }
    problem->targets = targets;
}

bk_problem random_problem(const random_shape *shape, bk_chance *chance, bk_arena *arena)
{
    bk_problem problem = {.task_count = 1 + bk_chance_below(chance, shape->tasks),
                          .resource_count = 1 + bk_chance_below(chance, shape->resources)};
    bk_resource *resources = bk_arena_clear(arena, problem.resource_count, sizeof *resources);
    for (size_t i = 0; i < problem.resource_count; i++)
        resources[i] = make_resource(shape, chance, arena);
    problem.resources = resources;
    bk_task *tasks = bk_arena_clear(arena, problem.task_count, sizeof *tasks);
    for (size_t i = 0; i < problem.task_count; i++)
        make_task(shape, &problem, &tasks[i], chance, arena);
    problem.tasks = tasks;
    make_ranks(&problem, chance, arena);
    if (shape->agreed)
        make_targets(&problem, chance, arena);
    return problem;
}

uint32_t *random_order(const bk_problem *problem, bk_chance *chance, bk_arena *arena)
{
    uint32_t *order = bk_arena_clear(arena, problem->task_count, sizeof *order);
    int64_t *keys = bk_arena_clear(arena, problem->task_count, sizeof *keys);
    bk_links after = bk_links_after(problem);
    for (size_t i = 0; i < problem->task_count; i++)
        keys[i] = below(chance, LAST_STAGE);
    bk_links_order(problem, &after, keys, order);
    bk_links_free(&after);
    return order;
}
