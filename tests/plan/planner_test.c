#include "bodkin/plan/planner.h"

#include <string.h>

#include "bodkin/plan/generate.h"
#include "random_problem.h"
#include "small_problem.h"
#include "support/plan_checker.h"
#include "support/testing.h"

static const random_shape shapes[] = {
    {.tasks = 25, .resources = 4},
    {.tasks = 25, .resources = 3, .calendars = true, .modes = true},
    {.tasks = 30, .resources = 4, .calendars = true, .modes = true, .agreed = true},
    {.tasks = 20, .resources = 3, .calendars = true, .modes = true, .agreed = true, .ends = true},
};

enum { SHAPES = sizeof shapes / sizeof shapes[0], PROBLEMS = 60, SCHEDULES = 150 };

typedef void check(const bk_problem *problem, uint64_t seed);

static void over_random_problems(check *look, size_t first_shape, size_t shape_count)
{
    bk_chance chance = bk_chance_from(41);
    for (size_t i = first_shape; i < first_shape + shape_count; i++)
        for (uint64_t seed = 0; seed < PROBLEMS; seed++) {
            bk_arena *arena = bk_arena_new();
            bk_problem problem = random_problem(&shapes[i], &chance, arena);
            look(&problem, seed);
            bk_arena_free(arena);
        }
}

// ----------------------------------------------------------------------------------------------------------- soundness

static void look_at_best(const bk_problem *problem, uint64_t seed)
{
    bk_error fault = {0};
    bk_planner *planner = bk_planner_new(problem, seed);
    bk_cost first = bk_planner_cost(planner), before = first;
    for (int64_t schedules = 1; schedules <= SCHEDULES; schedules += 37) {
        bk_planner_run(planner, schedules, NULL, NULL);
        bk_cost cost = bk_planner_cost(planner), told = bk_cost_of(problem, bk_planner_best(planner));
        ck_assert_msg(bk_plan_sound(problem, NULL, bk_planner_best(planner), &fault), "%s", fault.text);
        ck_assert_int_eq(bk_cost_order(&cost, &told), 0);
        ck_assert_int_le(bk_cost_order(&cost, &before), 0);
        ck_assert_int_le(bk_planner_schedules(planner), schedules);
        before = cost;
    }
    bk_planner_free(planner);
}

START_TEST(the_best_so_far_is_sound_and_only_gets_better)
{
    over_random_problems(look_at_best, 0, SHAPES);
}
END_TEST

// Whatever makes trials of a plan starts from its order and modes.
static void look_at_order(const bk_problem *problem, uint64_t seed)
{
    bk_arena *arena = bk_arena_new();
    bk_planner *planner = bk_planner_new(problem, seed);
    bk_planner_run(planner, SCHEDULES, NULL, NULL);
    bk_placing *again = bk_arena_clear(arena, problem->task_count, sizeof *again);
    int32_t *modes = bk_arena_clear(arena, problem->task_count, sizeof *modes);
    for (size_t i = 0; i < problem->task_count; i++)
        modes[i] = (int32_t)bk_planner_best(planner)[i].mode;
    bk_generator *generator = bk_generator_new(problem);
    bk_making making = {.order = bk_planner_order(planner), .modes = modes};
    bk_generate_serial(generator, &making, again);
    for (size_t i = 0; i < problem->task_count; i++)
        ck_assert_int_le(again[i].end, bk_planner_best(planner)[i].end);
    bk_generator_free(generator);
    bk_planner_free(planner);
    bk_arena_free(arena);
}

START_TEST(the_order_of_the_plan_and_its_modes_give_the_plan_again)
{
    over_random_problems(look_at_order, 0, 2);
}
END_TEST

// --------------------------------------------------------------------------------------------------------- determinism

static void look_twice(const bk_problem *problem, uint64_t seed)
{
    bk_planner *one = bk_planner_new(problem, seed), *two = bk_planner_new(problem, seed);
    bk_planner_run(one, SCHEDULES, NULL, NULL);
    bk_planner_run(two, SCHEDULES, NULL, NULL);
    for (size_t i = 0; i < problem->task_count; i++) {
        bk_placing left = bk_planner_best(one)[i], right = bk_planner_best(two)[i];
        ck_assert(left.begin == right.begin && left.end == right.end && left.mode == right.mode);
        ck_assert_uint_eq(bk_planner_order(one)[i], bk_planner_order(two)[i]);
    }
    ck_assert_int_eq(bk_planner_schedules(one), bk_planner_schedules(two));
    bk_planner_free(one);
    bk_planner_free(two);
}

START_TEST(the_same_seed_gives_the_same_plan)
{
    over_random_problems(look_twice, 0, SHAPES);
}
END_TEST

// ------------------------------------------------------------------------------------------------------------ stopping

static bool goes_on_until(void *context, int64_t schedules)
{
    return schedules < *(const int64_t *)context;
}

// Three tasks for hands that could do two and a half of them in time, so that nothing is ever settled.
static void make_unsettled(small_problem *small)
{
    small_begin(small);
    uint32_t hands = small_always(small, 2);
    for (int i = 0; i < 3; i++)
        small_task(small, 4, hands);
    uint32_t *all = bk_arena_clear(small->arena, 3, sizeof *all);
    for (uint32_t i = 0; i < 3; i++)
        all[i] = i;
    small->targets[small->problem.target_count++] = (bk_target){all, 3, 2, 1};
}

START_TEST(it_stops_when_it_is_told_to_and_can_go_on)
{
    small_problem small;
    make_unsettled(&small);
    bk_planner *planner = bk_planner_new(&small.problem, 1);
    ck_assert_int_eq(bk_planner_schedules(planner), 1);
    int64_t enough = 20;
    bk_planner_run(planner, 1000, goes_on_until, &enough);
    ck_assert_int_ge(bk_planner_schedules(planner), 20);
    ck_assert_int_le(bk_planner_schedules(planner), 22);
    ck_assert(!bk_planner_settled(planner));
    bk_planner_run(planner, 100, NULL, NULL);
    ck_assert_int_eq(bk_planner_schedules(planner), 100);
    bk_planner_free(planner);
    small_free(&small);
}
END_TEST

START_TEST(it_is_settled_when_nothing_better_can_exist)
{
    small_problem small;
    small_begin(&small);
    uint32_t hands = small_always(&small, 1);
    for (int i = 0; i < 3; i++)
        small_task(&small, 4, hands);
    bk_planner *planner = bk_planner_new(&small.problem, 1);
    ck_assert(bk_planner_settled(planner));
    bk_planner_run(planner, 1000, NULL, NULL);
    ck_assert_int_eq(bk_planner_schedules(planner), 1);
    ck_assert_int_eq(bk_planner_cost(planner).last, 12);
    bk_planner_free(planner);
    small_free(&small);
}
END_TEST

START_TEST(a_problem_without_tasks_is_settled)
{
    small_problem small;
    small_begin(&small);
    bk_planner *planner = bk_planner_new(&small.problem, 1);
    bk_planner_run(planner, 10, NULL, NULL);
    ck_assert(bk_planner_settled(planner));
    bk_planner_free(planner);
    small_free(&small);
}
END_TEST

// ---------------------------------------------------------------------------------------------------------- what counts

static bk_cost planned(const bk_problem *problem, int64_t schedules)
{
    bk_planner *planner = bk_planner_new(problem, 3);
    bk_planner_run(planner, schedules, NULL, NULL);
    bk_cost cost = bk_planner_cost(planner);
    bk_planner_free(planner);
    return cost;
}

// The heavier of two that cannot both be in time goes first, though it is due later.
START_TEST(the_weightier_target_comes_first)
{
    small_problem small;
    small_begin(&small);
    uint32_t hands = small_always(&small, 1);
    uint32_t light = small_task(&small, 10, hands), heavy = small_task(&small, 10, hands);
    small.targets[0] = (bk_target){&light, 1, 8, 1};
    small.targets[1] = (bk_target){&heavy, 1, 10, 5};
    small.problem.target_count = 2;
    ck_assert_int_eq(planned(&small.problem, 50).late, 12);
    small_free(&small);
}
END_TEST

START_TEST(what_can_wait_gives_way_to_what_cannot)
{
    small_problem small;
    small_begin(&small);
    uint32_t hands = small_always(&small, 1);
    uint32_t waits = small_task(&small, 10, hands), firm = small_task(&small, 10, hands);
    small.tasks[waits].yields = true;
    small.targets[0] = (bk_target){&waits, 1, 5, 100};
    small.targets[1] = (bk_target){&firm, 1, 100, 1};
    small.problem.target_count = 2;
    bk_cost cost = planned(&small.problem, 200);
    ck_assert_int_eq(cost.finish, 10);
    ck_assert_int_eq(cost.late, 1500);
    small_free(&small);
}
END_TEST

START_TEST(what_never_comes_about_counts_before_all_else)
{
    bk_cost never = {.never = 1}, late = {.late = 5, .finish = 9, .last = 9},
            later = {.late = 5, .finish = 9, .last = 10};
    bk_cost longer = {.late = 5, .finish = 10, .last = 10};
    ck_assert_int_lt(bk_cost_order(&late, &never), 0);
    ck_assert_int_lt(bk_cost_order(&late, &later), 0);
    ck_assert_int_lt(bk_cost_order(&later, &longer), 0);
    ck_assert_int_eq(bk_cost_order(&late, &late), 0);
}
END_TEST

BK_TEST_MAIN("planner", the_best_so_far_is_sound_and_only_gets_better,
             the_order_of_the_plan_and_its_modes_give_the_plan_again, the_same_seed_gives_the_same_plan,
             it_stops_when_it_is_told_to_and_can_go_on, it_is_settled_when_nothing_better_can_exist,
             a_problem_without_tasks_is_settled, the_weightier_target_comes_first,
             what_can_wait_gives_way_to_what_cannot, what_never_comes_about_counts_before_all_else)
