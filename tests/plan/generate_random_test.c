#include "bodkin/plan/generate.h"

#include <stdlib.h>

#include "random_problem.h"
#include "support/plan_checker.h"
#include "support/testing.h"

enum { PROBLEMS = 1500, FAR = 3000 };

typedef void scheme(bk_generator *generator, const bk_making *making, bk_placing *placings);

static void check_sound(const bk_problem *problem, const bk_placing *placings, int round)
{
    bk_error fault = {0};
    bool sound = bk_plan_sound(problem, NULL, placings, &fault);
    ck_assert_msg(sound, "problem %d: %s", round, fault.text);
}

static void check_scheme(scheme *generate, const random_shape *shape, uint64_t seed)
{
    bk_chance chance = bk_chance_from(seed);
    for (int round = 0; round < PROBLEMS; round++) {
        bk_arena *arena = bk_arena_new();
        bk_problem problem = random_problem(shape, &chance, arena);
        bk_generator *generator = bk_generator_new(&problem);
        bk_placing *placings = bk_arena_clear(arena, problem.task_count, sizeof *placings);
        for (int again = 0; again < 3; again++) {
            bk_making making = {.order = random_order(&problem, &chance, arena)};
            generate(generator, &making, placings);
            check_sound(&problem, placings, round);
            if (!shape->ends)
                ck_assert_int_eq(bk_cost_of(&problem, placings).never, 0);
        }
        bk_generator_free(generator);
        bk_arena_free(arena);
    }
}

static const random_shape shapes[] = {
    {.tasks = 12, .resources = 4},
    {.tasks = 12, .resources = 3, .calendars = true},
    {.tasks = 12, .resources = 3, .calendars = true, .modes = true},
    {.tasks = 16, .resources = 4, .calendars = true, .modes = true, .agreed = true},
    {.tasks = 16, .resources = 3, .calendars = true, .modes = true, .agreed = true, .ends = true},
};

START_TEST(what_is_generated_in_turn_is_sound)
{
    for (size_t i = 0; i < sizeof shapes / sizeof shapes[0]; i++)
        check_scheme(bk_generate_serial, &shapes[i], i + 1);
}
END_TEST

START_TEST(what_is_generated_forward_in_time_is_sound)
{
    for (size_t i = 0; i < sizeof shapes / sizeof shapes[0]; i++)
        check_scheme(bk_generate_parallel, &shapes[i], i + 1);
}
END_TEST

static void backward_from_far(bk_generator *generator, const bk_making *making, bk_placing *placings)
{
    bk_generate_backward(generator, making, FAR, placings);
}

START_TEST(what_is_generated_backward_is_sound)
{
    for (size_t i = 0; i < 3; i++)
        check_scheme(backward_from_far, &shapes[i], i + 1);
}
END_TEST

BK_TEST_MAIN("generate_random", what_is_generated_in_turn_is_sound,
             what_is_generated_forward_in_time_is_sound, what_is_generated_backward_is_sound)
