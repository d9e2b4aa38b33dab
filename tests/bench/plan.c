// How fast schedules are made, and how a workroom's plan gets better: a network of 120 tasks on 4 resources, and a production of 100
// costumes and 2,000 steps among 6 people with calendars.
#include <inttypes.h>
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#include "bodkin/plan/planner.h"
#include "support/made_workroom.h"
#include "support/plan_checker.h"

enum {
    NETWORK_TASKS = 120,
    NETWORK_RESOURCES = 4,
    NETWORK_CAPACITY = 20,
    NETWORK_SCHEDULES = 5000,
    DAYS = 150 // of hours of the workroom
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

static bk_problem make_network(bk_chance *chance, bk_arena *arena)
{
    bk_resource *resources = bk_arena_clear(arena, NETWORK_RESOURCES, sizeof *resources);
    for (size_t i = 0; i < NETWORK_RESOURCES; i++) {
        bk_stage *stage = bk_arena_clear(arena, 1, sizeof *stage);
        stage->capacity = NETWORK_CAPACITY;
        resources[i] = (bk_resource){stage, 1};
    }
    bk_task *tasks = bk_arena_clear(arena, NETWORK_TASKS, sizeof *tasks);
    bk_rank *ranks = bk_arena_clear(arena, (size_t)NETWORK_TASKS * 2, sizeof *ranks);
    size_t rank_count = 0;
    for (uint32_t i = 0; i < NETWORK_TASKS; i++) {
        bk_mode *mode = bk_arena_clear(arena, 1, sizeof *mode);
        bk_use *uses = bk_arena_clear(arena, NETWORK_RESOURCES, sizeof *uses);
        for (uint32_t j = 0; j < NETWORK_RESOURCES; j++)
            uses[j] = (bk_use){j, 1 + below(chance, 10)};
        *mode = (bk_mode){1 + below(chance, 10), uses, NETWORK_RESOURCES};
        tasks[i] = (bk_task){.modes = mode, .mode_count = 1, .appointment = BK_CLOCK_NONE};
        for (int j = 0; j < 2 && i > 4; j++)
            ranks[rank_count++] = (bk_rank){bk_chance_below(chance, i), i, 0};
    }
    return (bk_problem){.tasks = tasks,
                        .task_count = NETWORK_TASKS,
                        .resources = resources,
                        .resource_count = NETWORK_RESOURCES,
                        .ranks = ranks,
                        .rank_count = rank_count};
}

// ------------------------------------------------------------------------------------------------------------ workroom

static void tell(const bk_planner *planner, double seconds)
{
    bk_cost cost = bk_planner_cost(planner);
    printf("%8" PRId64 " schedules %8.3f s: %" PRId64 " never, %" PRId64
           " minutes late, finish %d, last %d\n",
           bk_planner_schedules(planner), seconds, cost.never, cost.late, cost.finish, cost.last);
}

// Plans one problem with ever more schedules; false where a plan is faulty.
static bool measure(const bk_problem *problem, const int64_t *budgets, size_t budget_count, uint64_t seed)
{
    bk_error fault = {0};
    double begin = seconds_now();
    bk_planner *planner = bk_planner_new(problem, seed);
    tell(planner, seconds_now() - begin);
    for (size_t i = 0; i < budget_count; i++) {
        bk_planner_run(planner, budgets[i], NULL, NULL);
        tell(planner, seconds_now() - begin);
    }
    bool sound = bk_plan_sound(problem, NULL, bk_planner_best(planner), &fault);
    if (!sound)
        printf("the plan is faulty: %s\n", fault.text);
    bk_planner_free(planner);
    return sound;
}

int main(int argc, char **argv)
{
    static const int64_t network_budgets[] = {NETWORK_SCHEDULES}, workroom_budgets[] = {10, 100, 300, 1000};
    uint64_t seed = argc > 1 ? strtoull(argv[1], NULL, 10) : 1;
    bk_chance chance = bk_chance_from(seed);
    bk_arena *arena = bk_arena_new();
    bk_problem network = make_network(&chance, arena), workroom = bk_made_workroom(DAYS, &chance, arena);
    printf("120 tasks on 4 resources\n");
    bool sound = measure(&network, network_budgets, 1, seed);
    printf("2,000 steps of 100 costumes among 6 people\n");
    sound = measure(&workroom, workroom_budgets, 4, seed) && sound;
    bk_arena_free(arena);
    return sound ? EXIT_SUCCESS : EXIT_FAILURE;
}
