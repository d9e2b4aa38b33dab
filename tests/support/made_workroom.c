#include "support/made_workroom.h"

enum {
    STEPS = BK_MADE_STEPS / BK_MADE_COSTUMES, // of each costume
    PEOPLE = 6,
    PERFORMERS = 40,
    WAYS = 3,
    DAY = 1440,
    OPENS = 600,
    LUNCH = 780,
    BACK = 840,
    CLOSES = 1080,
    STAGES_A_DAY = 4,
    FIRST_DUE = 12,
    DUE_RANGE = 40,
    SHORTEST = 15,
    MINUTES = 90,
    FITTING = 30
};

static int32_t below(bk_chance *chance, uint32_t count)
{
    return (int32_t)bk_chance_below(chance, count);
}

// There from ten to one and from two to six on six days a week; nobody after the last day.
static bk_resource make_person(uint32_t person, uint32_t days, bk_arena *arena)
{
    bk_stage *stages = bk_arena_clear(arena, (size_t)days * STAGES_A_DAY + 1, sizeof *stages);
    size_t count = 0;
    stages[count++] = (bk_stage){0, BK_CLOSED};
    for (uint32_t day = 0; day < days; day++) {
        if ((day + person) % 7 == 6)
            continue;
        int32_t midnight = (int32_t)day * DAY;
        stages[count++] = (bk_stage){midnight + OPENS, 1};
        stages[count++] = (bk_stage){midnight + LUNCH, BK_CLOSED};
        stages[count++] = (bk_stage){midnight + BACK, 1};
        stages[count++] = (bk_stage){midnight + CLOSES, BK_CLOSED};
    }
    return (bk_resource){stages, count};
}

static bk_task make_step(uint32_t costume, uint32_t step, bk_chance *chance, bk_arena *arena)
{
    bool fitting = step % 7 == 6;
    size_t ways = WAYS + bk_chance_below(chance, 2);
    bk_mode *modes = bk_arena_clear(arena, ways, sizeof *modes);
    uint32_t first = bk_chance_below(chance, PEOPLE);
    int32_t minutes = fitting ? FITTING : SHORTEST + below(chance, MINUTES);
    for (uint32_t i = 0; i < ways; i++) {
        bk_use *uses = bk_arena_clear(arena, 2, sizeof *uses);
        uses[0] = (bk_use){(first + i) % PEOPLE, 1};
        uses[1] = (bk_use){PEOPLE + costume % PERFORMERS, 1};
        modes[i] = (bk_mode){minutes, uses, fitting ? 2 : 1};
    }
    return (bk_task){.modes = modes, .mode_count = ways, .appointment = BK_CLOCK_NONE, .whole = fitting};
}

bk_problem bk_made_workroom(uint32_t days, bk_chance *chance, bk_arena *arena)
{
    static const bk_stage always = {0, 1};
    size_t resource_count = PEOPLE + PERFORMERS, rank_count = 0;
    bk_resource *resources = bk_arena_clear(arena, resource_count, sizeof *resources);
    for (uint32_t i = 0; i < resource_count; i++)
        resources[i] = i < PEOPLE ? make_person(i, days, arena) : (bk_resource){&always, 1};
    bk_task *tasks = bk_arena_clear(arena, BK_MADE_STEPS, sizeof *tasks);
    bk_rank *ranks = bk_arena_clear(arena, BK_MADE_STEPS, sizeof *ranks);
    bk_target *targets = bk_arena_clear(arena, BK_MADE_COSTUMES, sizeof *targets);
    for (uint32_t costume = 0; costume < BK_MADE_COSTUMES; costume++) {
        uint32_t *own = bk_arena_clear(arena, STEPS, sizeof *own);
        for (uint32_t step = 0; step < STEPS; step++) {
            own[step] = costume * STEPS + step;
            tasks[own[step]] = make_step(costume, step, chance, arena);
            if (step > 0)
                ranks[rank_count++] = (bk_rank){own[step] - 1 - bk_chance_below(chance, step < 2 ? step : 2),
                                                own[step], step % 5 == 4 ? DAY / 2 : 0};
        }
        targets[costume] = (bk_target){own, STEPS, (FIRST_DUE + below(chance, DUE_RANGE)) * DAY, 1};
    }
    return (bk_problem){.tasks = tasks,
                        .task_count = BK_MADE_STEPS,
                        .resources = resources,
                        .resource_count = resource_count,
                        .ranks = ranks,
                        .rank_count = rank_count,
                        .targets = targets,
                        .target_count = BK_MADE_COSTUMES};
}
