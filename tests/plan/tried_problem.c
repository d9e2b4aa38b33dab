#include "tried_problem.h"

#include <math.h>

#include "bodkin/plan/generate.h"
#include "support/testing.h"

tried_problem tried;

void begin_tried(void)
{
    tried = (tried_problem){.seed = 1};
    small_begin(&tried.small);
    for (uint32_t i = 0; i < TRIED_TASKS; i++)
        tried.order[i] = tried.all[i] = i;
}

void end_tried(void)
{
    small_free(&tried.small);
}

uint32_t add_step(bk_estimate estimate, uint32_t resource)
{
    uint32_t task = small_task(&tried.small, (int32_t)estimate.usual, resource);
    tried.spreads[task] = bk_spread_new(estimate, tried.small.arena);
    return task;
}

uint32_t add_free_step(bk_estimate estimate)
{
    uint32_t task = add_step(estimate, 0);
    bk_mode *mode = bk_arena_clear(tried.small.arena, 1, sizeof *mode);
    mode->minutes = (int32_t)estimate.usual;
    tried.small.tasks[task].modes = mode;
    return task;
}

void ask(size_t first, size_t count, bk_clock_minute due)
{
    tried.groups[tried.group_count++] =
        (bk_odds_group){.tasks = tried.all + first, .task_count = count, .due = due};
}

void ask_by_every_minute(void)
{
    for (int due = 0; due < TRIED_GROUPS; due++)
        ask(0, tried.small.problem.task_count, due);
}

bk_odds_plan plan_of_tried(void)
{
    bk_generator *generator = bk_generator_new(&tried.small.problem);
    bk_generate_serial(generator, &(bk_making){.order = tried.order}, tried.plan);
    bk_generator_free(generator);
    return (bk_odds_plan){.problem = &tried.small.problem,
                          .order = tried.order,
                          .placings = tried.plan,
                          .spreads = tried.spreads,
                          .groups = tried.groups,
                          .group_count = tried.group_count,
                          .seed = tried.seed};
}

void try_all(int32_t trials)
{
    bk_odds_plan plan = plan_of_tried();
    bk_odds_try(&plan, trials, NULL, NULL, tried.odds);
}

double share_in_time(size_t group)
{
    return (double)tried.odds[group].in_time / tried.odds[group].trials;
}

void check_share(const char *says, double share, double exact, int32_t trials)
{
    const double errors_allowed = 3, table_error = 1e-4;
    double error = sqrt(exact * (1 - exact) / trials);
    ck_assert_msg(fabs(share - exact) <= errors_allowed * error + table_error,
                  "%s: %.5f, exactly %.5f, error %.5f", says, share, exact, error);
}
