#include "bodkin/plan/generator.h"

#include "random_problem.h"
#include "support/testing.h"

enum { PROBLEMS = 400 };

static const random_shape shapes[] = {
    {.tasks = 14, .resources = 4},
    {.tasks = 14, .resources = 3, .calendars = true},
    {.tasks = 20, .resources = 4, .calendars = true, .modes = true},
    {.tasks = 16, .resources = 3, .calendars = true, .modes = true, .ends = true},
};

// A schedule, and the timelines with all that had begun by a moment.
typedef struct schedule {
    const bk_problem *problem;
    bk_generator *generator;
    bk_making making;
    const bk_placing *placings;
} schedule;

static void take_begun(const schedule *made, bk_clock_minute moment)
{
    bk_timelines_clear(made->generator->timelines, made->problem);
    for (uint32_t task = 0; task < made->problem->task_count; task++) {
        const bk_placing *place = &made->placings[task];
        bk_work work = bk_making_work(made->generator, &made->making, task, place->mode);
        if (place->begin <= moment && work.minutes > 0)
            bk_timelines_take(made->generator->timelines, &work, place);
    }
}

static bool fits(const schedule *made, uint32_t task, bk_clock_minute moment)
{
    for (uint32_t mode = 0; mode < made->problem->tasks[task].mode_count; mode++) {
        bk_work work = bk_making_work(made->generator, &made->making, task, mode);
        bk_placing place;
        if (bk_timelines_find(made->generator->timelines, &work, moment, BK_CLOCK_NEVER, &place) &&
            place.begin == moment)
            return true;
    }
    return false;
}

static void check_none_fits(const schedule *made, bk_clock_minute moment)
{
    take_begun(made, moment);
    for (uint32_t task = 0; task < made->problem->task_count; task++) {
        bk_clock_minute ready = bk_generator_ready(&made->generator->before, task, made->placings,
                                                   made->problem->tasks[task].release);
        if (ready > moment || made->placings[task].begin <= moment)
            continue;
        ck_assert_msg(!fits(made, task, moment), "task %u could have begun at %d", task, moment);
    }
}

// At every moment at which anything ends or opens, or a task is ready.
static void check_busy(const schedule *made)
{
    const bk_problem *problem = made->problem;
    check_none_fits(made, 0);
    for (uint32_t task = 0; task < problem->task_count; task++) {
        bk_clock_minute ready =
            bk_generator_ready(&made->generator->before, task, made->placings, problem->tasks[task].release);
        if (ready != BK_CLOCK_NEVER)
            check_none_fits(made, ready);
        if (made->placings[task].end != BK_CLOCK_NEVER)
            check_none_fits(made, made->placings[task].end);
    }
    for (size_t i = 0; i < problem->resource_count; i++)
        for (size_t stage = 0; stage < problem->resources[i].stage_count; stage++)
            check_none_fits(made, problem->resources[i].stages[stage].from);
}

START_TEST(nothing_that_could_begin_is_left_waiting)
{
    for (size_t i = 0; i < sizeof shapes / sizeof shapes[0]; i++) {
        bk_chance chance = bk_chance_from(i + 1);
        for (int round = 0; round < PROBLEMS; round++) {
            bk_arena *arena = bk_arena_new();
            bk_problem problem = random_problem(&shapes[i], &chance, arena);
            bk_placing *placings = bk_arena_clear(arena, problem.task_count, sizeof *placings);
            schedule made = {.problem = &problem,
                             .generator = bk_generator_new(&problem),
                             .making = {.order = random_order(&problem, &chance, arena)},
                             .placings = placings};
            bk_generate_parallel(made.generator, &made.making, placings);
            check_busy(&made);
            bk_generator_free(made.generator);
            bk_arena_free(arena);
        }
    }
}
END_TEST

BK_TEST_MAIN("generate_parallel", nothing_that_could_begin_is_left_waiting)
