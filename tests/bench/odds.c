// How fast the odds of a workroom's plan are tried: a production of 100 costumes and 2,000 steps among 6 people with two stretches
// of work a day, each step with three or four people who could do it. A few of the trials are looked at minute by minute.
//
//     bench_odds [TRIALS [SEED]]
#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#include "bodkin/base/arena.h"
#include "bodkin/plan/chance.h"
#include "bodkin/plan/odds.h"
#include "bodkin/plan/planner.h"

enum {
    COSTUMES = 100,
    STEPS = 20,
    TASKS = COSTUMES * STEPS,
    PEOPLE = 6,
    PERFORMERS = 40,
    WAYS = 3,
    DAYS = 400,
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
    FITTING = 30,
    SCHEDULES = 300,
    TRIALS = 1000,
    TOLD = 5
};

static double seconds_now(void)
{
    struct timespec now;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
    return (double)now.tv_sec + (double)now.tv_nsec / 1e9;
}

static int32_t below(bk_chance *chance, uint32_t count)
{
    return (int32_t)bk_chance_below(chance, count);
}

// There from ten to one and from two to six on six days a week; nobody after the last day.
static bk_resource make_person(uint32_t person, bk_arena *arena)
{
    bk_stage *stages = bk_arena_clear(arena, (size_t)DAYS * STAGES_A_DAY + 1, sizeof *stages);
    size_t count = 0;
    stages[count++] = (bk_stage){0, BK_CLOSED};
    for (uint32_t day = 0; day < DAYS; day++) {
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

static bk_problem make_workroom(bk_chance *chance, bk_arena *arena)
{
    static const bk_stage always = {0, 1};
    size_t resource_count = PEOPLE + PERFORMERS, rank_count = 0;
    bk_resource *resources = bk_arena_clear(arena, resource_count, sizeof *resources);
    for (uint32_t i = 0; i < resource_count; i++)
        resources[i] = i < PEOPLE ? make_person(i, arena) : (bk_resource){&always, 1};
    bk_task *tasks = bk_arena_clear(arena, TASKS, sizeof *tasks);
    bk_rank *ranks = bk_arena_clear(arena, TASKS, sizeof *ranks);
    bk_target *targets = bk_arena_clear(arena, COSTUMES, sizeof *targets);
    for (uint32_t costume = 0; costume < COSTUMES; costume++) {
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
                        .task_count = TASKS,
                        .resources = resources,
                        .resource_count = resource_count,
                        .ranks = ranks,
                        .rank_count = rank_count,
                        .targets = targets,
                        .target_count = COSTUMES};
}

static const bk_odds_group *make_groups(const bk_problem *problem, bk_arena *arena)
{
    bk_odds_group *groups = bk_arena_clear(arena, problem->target_count, sizeof *groups);
    for (size_t i = 0; i < problem->target_count; i++)
        groups[i] = (bk_odds_group){.tasks = problem->targets[i].tasks,
                                    .task_count = problem->targets[i].task_count,
                                    .due = problem->targets[i].due};
    return groups;
}

static const bk_spread *const *make_spreads(const bk_problem *problem, bk_arena *arena)
{
    const bk_spread **spreads = bk_arena_clear(arena, problem->task_count, sizeof *spreads);
    for (size_t i = 0; i < problem->task_count; i++)
        spreads[i] = bk_spread_new(
            bk_estimate_complete(INT64_MIN, problem->tasks[i].modes[0].minutes, INT64_MIN), arena);
    return spreads;
}

static void tell(const bk_group_odds *odds, const bk_odds_group *groups)
{
    for (size_t i = 0; i < TOLD; i++) {
        const bk_group_odds *one = &odds[i * COSTUMES / TOLD];
        printf("due day %2d: chance %4d/1000 +- %2d, even day %2d, likely day %2d, decided most often by %u "
               "in %d\n",
               groups[i * COSTUMES / TOLD].due / DAY, bk_odds_chance(one), bk_odds_error(one),
               one->even / DAY, one->likely / DAY, one->deciders[0].task, one->deciders[0].trials);
    }
}

int main(int argc, char **argv)
{
    int32_t trials = argc > 1 ? (int32_t)strtol(argv[1], NULL, 10) : TRIALS;
    uint64_t seed = argc > 2 ? strtoull(argv[2], NULL, 10) : 1;
    bk_chance chance = bk_chance_from(seed);
    bk_arena *arena = bk_arena_new();
    bk_problem problem = make_workroom(&chance, arena);
    bk_planner *planner = bk_planner_new(&problem, seed);
    bk_planner_run(planner, SCHEDULES, NULL, NULL);
    const bk_odds_group *groups = make_groups(&problem, arena);
    bk_group_odds *odds = bk_arena_clear(arena, COSTUMES, sizeof *odds);
    double begin = seconds_now();
    const bk_spread *const *spreads = make_spreads(&problem, arena);
    printf("%d spreads: %.4f s\n", TASKS, seconds_now() - begin);
    bk_odds_plan plan = {.problem = &problem,
                         .order = bk_planner_order(planner),
                         .placings = bk_planner_best(planner),
                         .spreads = spreads,
                         .groups = groups,
                         .group_count = COSTUMES,
                         .seed = seed};
    begin = seconds_now();
    bk_odds_try(&plan, trials, NULL, NULL, odds);
    printf("%" PRId32 " trials of %d steps: %.3f s\n", trials, TASKS, seconds_now() - begin);
    tell(odds, groups);
    bk_planner_free(planner);
    bk_arena_free(arena);
    return EXIT_SUCCESS;
}
