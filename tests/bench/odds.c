// How fast the odds of a workroom's plan are tried: a production of 100 costumes and 2,000 steps among 6 people with two stretches
// of work a day, each step with three or four people who could do it. A few of the trials are looked at minute by minute.
//
//     bench_odds [TRIALS [SEED]]
#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#include "bodkin/plan/odds.h"
#include "bodkin/plan/planner.h"
#include "support/made_workroom.h"

enum { DAYS = 400, DAY = 1440, SCHEDULES = 300, TRIALS = 1000, TOLD = 5 };

static double seconds_now(void)
{
    struct timespec now;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
    return (double)now.tv_sec + (double)now.tv_nsec / 1e9;
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
        const bk_group_odds *one = &odds[i * BK_MADE_COSTUMES / TOLD];
        printf("due day %2d: chance %4d/1000 +- %2d, even day %2d, likely day %2d, decided most often by %u "
               "in %d\n",
               groups[i * BK_MADE_COSTUMES / TOLD].due / DAY, bk_odds_chance(one), bk_odds_error(one),
               one->even / DAY, one->likely / DAY, one->deciders[0].task, one->deciders[0].trials);
    }
}

int main(int argc, char **argv)
{
    int32_t trials = argc > 1 ? (int32_t)strtol(argv[1], NULL, 10) : TRIALS;
    uint64_t seed = argc > 2 ? strtoull(argv[2], NULL, 10) : 1;
    bk_chance chance = bk_chance_from(seed);
    bk_arena *arena = bk_arena_new();
    bk_problem problem = bk_made_workroom(DAYS, &chance, arena);
    bk_planner *planner = bk_planner_new(&problem, seed);
    bk_planner_run(planner, SCHEDULES, NULL, NULL);
    const bk_odds_group *groups = make_groups(&problem, arena);
    bk_group_odds *odds = bk_arena_clear(arena, BK_MADE_COSTUMES, sizeof *odds);
    double begin = seconds_now();
    const bk_spread *const *spreads = make_spreads(&problem, arena);
    printf("%d spreads: %.4f s\n", BK_MADE_STEPS, seconds_now() - begin);
    bk_odds_plan plan = {.problem = &problem,
                         .order = bk_planner_order(planner),
                         .placings = bk_planner_best(planner),
                         .spreads = spreads,
                         .groups = groups,
                         .group_count = BK_MADE_COSTUMES,
                         .seed = seed};
    begin = seconds_now();
    bk_odds_try(&plan, trials, NULL, NULL, odds);
    printf("%" PRId32 " trials of %d steps: %.3f s\n", trials, BK_MADE_STEPS, seconds_now() - begin);
    tell(odds, groups);
    bk_planner_free(planner);
    bk_arena_free(arena);
    return EXIT_SUCCESS;
}
