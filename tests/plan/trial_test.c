#include "bodkin/plan/trial.h"

#include "bodkin/plan/generator.h"
#include "random_problem.h"
#include "small_problem.h"
#include "support/plan_checker.h"
#include "support/testing.h"

enum { PROBLEMS = 600, TRIALS = 5, MOST_TASKS = 24, FEW_TASKS = 8, KEYS = 60, CLASS_KEY = 1000 };

static const random_shape shapes[] = {
    {MOST_TASKS, 3, false, false, false, false}, {MOST_TASKS, 3, true, false, false, false},
    {MOST_TASKS, 3, true, true, false, false},   {MOST_TASKS, 3, true, true, false, true},
    {FEW_TASKS, 2, true, true, true, false},     {MOST_TASKS, 3, true, true, true, true},
};

enum { SHAPES = sizeof shapes / sizeof shapes[0] };

// A random problem with a plan of it: the serial schedule of a random order.
typedef struct planned_problem {
    bk_arena *arena;
    bk_problem problem;
    uint32_t *order;
    bk_placing *plan, *tried;
    int32_t *minutes; // those of the plan
    bk_trial *trial;
} planned_problem;

// What gives way stands last, as in the orders of a planner.
static void make_order(planned_problem *made, const bk_generator *generator, bk_chance *chance)
{
    int64_t *keys = bk_arena_clear(made->arena, made->problem.task_count, sizeof *keys);
    for (size_t i = 0; i < made->problem.task_count; i++)
        keys[i] = bk_chance_below(chance, KEYS) + (generator->late_class[i] ? CLASS_KEY : 0);
    made->order = bk_arena_clear(made->arena, made->problem.task_count, sizeof *made->order);
    bk_links_order(&made->problem, &generator->after, keys, made->order);
}

static void make_planned(planned_problem *made, const random_shape *shape, bk_chance *chance)
{
    made->arena = bk_arena_new();
    made->problem = random_problem(shape, chance, made->arena);
    size_t count = made->problem.task_count;
    made->plan = bk_arena_clear(made->arena, count, sizeof *made->plan);
    made->tried = bk_arena_clear(made->arena, count, sizeof *made->tried);
    made->minutes = bk_arena_clear(made->arena, count, sizeof *made->minutes);
    bk_generator *generator = bk_generator_new(&made->problem);
    make_order(made, generator, chance);
    bk_generate_serial(generator, &(bk_making){.order = made->order}, made->plan);
    bk_generator_free(generator);
    for (size_t i = 0; i < count; i++)
        made->minutes[i] = made->problem.tasks[i].modes[made->plan[i].mode].minutes;
    made->trial = bk_trial_new(&made->problem, made->order, made->plan);
}

static void forget_planned(planned_problem *made)
{
    bk_trial_free(made->trial);
    bk_arena_free(made->arena);
}

static bool keeps_all_appointments(const planned_problem *made)
{
    for (size_t i = 0; i < made->problem.task_count; i++) {
        bk_clock_minute agreed = made->problem.tasks[i].appointment;
        if (agreed != BK_CLOCK_NONE && made->plan[i].begin != agreed)
            return false;
    }
    return true;
}

START_TEST(with_the_minutes_of_the_plan_everything_ends_as_planned)
{
    bk_chance chance = bk_chance_from(11);
    int looked_at = 0;
    for (int i = 0; i < PROBLEMS; i++) {
        planned_problem made;
        make_planned(&made, &shapes[i % SHAPES], &chance);
        bk_trial_run(made.trial, made.minutes, made.tried);
        for (size_t task = 0; task < made.problem.task_count && keeps_all_appointments(&made); task++) {
            ck_assert_msg(made.tried[task].begin == made.plan[task].begin &&
                              made.tried[task].end == made.plan[task].end,
                          "problem %d: task %zu from %d to %d, planned from %d to %d", i, task,
                          made.tried[task].begin, made.tried[task].end, made.plan[task].begin,
                          made.plan[task].end);
            looked_at++;
        }
        forget_planned(&made);
    }
    ck_assert_int_gt(looked_at, PROBLEMS * FEW_TASKS / 2);
}
END_TEST

// The minutes that a task takes where it was done another way than planned.
static int32_t taken(const planned_problem *made, const int32_t *drawn, size_t task)
{
    const bk_mode *modes = made->problem.tasks[task].modes;
    int32_t planned = modes[made->plan[task].mode].minutes, here = modes[made->tried[task].mode].minutes;
    return here == planned || planned == 0 ? drawn[task] : (drawn[task] * here * 2 + planned) / (2 * planned);
}

START_TEST(whatever_the_minutes_a_trial_keeps_order_hands_and_hours)
{
    bk_chance chance = bk_chance_from(12);
    for (int i = 0; i < PROBLEMS; i++) {
        planned_problem made;
        bk_error fault = {0};
        make_planned(&made, &shapes[i % SHAPES], &chance);
        int32_t *drawn = bk_arena_clear(made.arena, made.problem.task_count, sizeof *drawn);
        int32_t *took = bk_arena_clear(made.arena, made.problem.task_count, sizeof *took);
        for (int j = 0; j < TRIALS; j++) {
            for (size_t task = 0; task < made.problem.task_count; task++)
                drawn[task] = (int32_t)bk_chance_below(&chance, (uint32_t)(2 * made.minutes[task]) + 2);
            bk_trial_run(made.trial, drawn, made.tried);
            for (size_t task = 0; task < made.problem.task_count; task++)
                took[task] = taken(&made, drawn, task);
            ck_assert_msg(bk_plan_sound(&made.problem, took, made.tried, &fault), "problem %d, trial %d: %s",
                          i, j, fault.text);
        }
        forget_planned(&made);
    }
}
END_TEST

START_TEST(with_nobody_to_wait_for_a_trial_is_the_critical_path)
{
    static const random_shape shape = {MOST_TASKS, 1, false, false, false, false};
    bk_chance chance = bk_chance_from(13);
    for (int i = 0; i < PROBLEMS; i++) {
        planned_problem made;
        make_planned(&made, &shape, &chance);
        bk_task *tasks = bk_arena_clear(made.arena, made.problem.task_count, sizeof *tasks);
        bk_mode *modes = bk_arena_clear(made.arena, made.problem.task_count, sizeof *modes);
        for (size_t task = 0; task < made.problem.task_count; task++) {
            modes[task] = (bk_mode){.minutes = made.minutes[task]};
            tasks[task] = (bk_task){.modes = &modes[task], .mode_count = 1, .appointment = BK_CLOCK_NONE};
        }
        made.problem.tasks = tasks;
        bk_trial *trial = bk_trial_new(&made.problem, made.order, made.plan);
        for (size_t task = 0; task < made.problem.task_count; task++)
            made.minutes[task] = (int32_t)bk_chance_below(&chance, KEYS);
        bk_trial_run(trial, made.minutes, made.tried);
        for (size_t place = 0; place < made.problem.task_count; place++) {
            uint32_t task = made.order[place];
            bk_clock_minute soonest = 0;
            for (size_t rank = 0; rank < made.problem.rank_count; rank++) {
                const bk_rank *link = &made.problem.ranks[rank];
                bk_clock_minute end = made.tried[link->from].end + link->rest;
                soonest = link->to == task && end > soonest ? end : soonest;
            }
            ck_assert_int_eq(made.tried[task].begin, soonest);
            ck_assert_int_eq(made.tried[task].end, soonest + made.minutes[task]);
        }
        bk_trial_free(trial);
        forget_planned(&made);
    }
}
END_TEST

// ------------------------------------------------------------------------------------------------- as in a workroom

// Goes through the plan of a small problem in the order of its tasks.
static void try_small(small_problem *small, const int32_t *minutes, bk_placing *tried)
{
    static const uint32_t order[] = {0, 1, 2, 3, 4, 5, 6, 7};
    bk_placing plan[8];
    bk_error fault = {0};
    bk_generator *generator = bk_generator_new(&small->problem);
    bk_generate_serial(generator, &(bk_making){.order = order}, plan);
    bk_generator_free(generator);
    bk_trial *trial = bk_trial_new(&small->problem, order, plan);
    bk_trial_run(trial, minutes, tried);
    ck_assert_msg(bk_plan_sound(&small->problem, minutes, tried, &fault), "%s", fault.text);
    bk_trial_free(trial);
    small_free(small);
}

START_TEST(whoever_waits_for_a_late_step_takes_another_that_is_ready)
{
    small_problem small;
    bk_placing tried[8];
    small_begin(&small);
    uint32_t ben = small_always(&small, 1), ann = small_always(&small, 1);
    small_task(&small, 10, ben);
    small_task(&small, 10, ann);
    small_task(&small, 30, ann);
    small_rank(&small, 0, 1, 0);
    // Planned: Ann from 10 on what Ben has done, then from 20 on the long one.
    try_small(&small, (int32_t[]){25, 10, 30}, tried);
    ck_assert_int_eq(tried[2].begin, 10);
    ck_assert_int_eq(tried[1].begin, 40);
}
END_TEST

START_TEST(nobody_begins_a_long_step_before_one_that_is_planned_and_not_late)
{
    small_problem small;
    bk_placing tried[8];
    small_begin(&small);
    uint32_t ben = small_always(&small, 1), ann = small_always(&small, 1);
    small_task(&small, 10, ben);
    small_task(&small, 10, ann);
    small_task(&small, 30, ann);
    small_rank(&small, 0, 1, 0);
    // That the long one would take no time at all this once is known to nobody before.
    try_small(&small, (int32_t[]){10, 10, 2}, tried);
    ck_assert_int_eq(tried[1].begin, 10);
    ck_assert_int_eq(tried[2].begin, 20);
}
END_TEST

START_TEST(whoever_is_done_early_goes_on_with_the_next_step)
{
    small_problem small;
    bk_placing tried[8];
    small_begin(&small);
    uint32_t ann = small_always(&small, 1);
    small_task(&small, 10, ann);
    small_task(&small, 10, ann);
    try_small(&small, (int32_t[]){4, 10}, tried);
    ck_assert_int_eq(tried[1].begin, 4);
}
END_TEST

START_TEST(another_takes_over_what_its_own_hands_are_late_for)
{
    small_problem small;
    bk_placing tried[8];
    small_begin(&small);
    uint32_t ann = small_always(&small, 1), ben = small_always(&small, 1);
    small_task(&small, 10, ann);
    small_task(&small, 12, ben);
    small_task(&small, 10, ann);
    small_mode(&small, 2, 10, ben, 1);
    // Planned: Ann from 10. She is still busy then, and Ben is free from 12.
    try_small(&small, (int32_t[]){40, 12, 10}, tried);
    ck_assert_int_eq(tried[2].begin, 12);
    ck_assert_uint_eq(tried[2].mode, 1);
}
END_TEST

START_TEST(a_step_is_left_to_its_own_hands_until_it_is_late)
{
    small_problem small;
    bk_placing tried[8];
    small_begin(&small);
    uint32_t ann = small_always(&small, 1), ben = small_always(&small, 1);
    small_task(&small, 10, ann);
    small_task(&small, 12, ben);
    small_task(&small, 10, ann);
    small_mode(&small, 2, 10, ben, 1);
    try_small(&small, (int32_t[]){10, 3, 10}, tried);
    ck_assert_int_eq(tried[2].begin, 10);
    ck_assert_uint_eq(tried[2].mode, 0);
}
END_TEST

START_TEST(an_appointment_is_kept_free_until_it_is_known_to_be_missed)
{
    small_problem small;
    bk_placing tried[8];
    small_begin(&small);
    uint32_t ann = small_always(&small, 1), ben = small_always(&small, 1);
    small_task(&small, 10, ben);
    small_task(&small, 10, ann);
    small_task(&small, 30, ann);
    small_rank(&small, 0, 1, 0);
    small.tasks[1].appointment = 20;
    try_small(&small, (int32_t[]){25, 10, 30}, tried);
    ck_assert_int_eq(tried[2].begin, 20); // free again, when it is clear that nobody comes
    ck_assert_int_eq(tried[1].begin, 50);
}
END_TEST

START_TEST(an_appointment_is_kept_where_what_comes_before_is_done_just_then)
{
    small_problem small;
    bk_placing tried[8];
    small_begin(&small);
    uint32_t ann = small_always(&small, 1), ben = small_always(&small, 1);
    small_task(&small, 10, ben);
    small_task(&small, 10, ann);
    small_rank(&small, 0, 1, 5);
    small.tasks[1].appointment = 20;
    try_small(&small, (int32_t[]){15, 10}, tried);
    ck_assert_int_eq(tried[1].begin, 20);
}
END_TEST

START_TEST(what_yields_does_not_hold_up_what_is_planned)
{
    small_problem small;
    bk_placing tried[8];
    small_begin(&small);
    uint32_t ann = small_always(&small, 1), ben = small_always(&small, 1);
    small_task(&small, 20, ben);
    small_task(&small, 10, ann);
    small_task(&small, 20, ann);
    small_rank(&small, 0, 1, 0);
    small.tasks[2].yields = true;
    small.tasks[2].release = 0;
    // Planned: what yields from 0 to 20. Ben is done sooner, but Ann has begun; then nothing is left to yield to.
    try_small(&small, (int32_t[]){5, 10, 20}, tried);
    ck_assert_int_eq(tried[2].begin, 0);
    ck_assert_int_eq(tried[1].begin, 20);
}
END_TEST

START_TEST(what_comes_after_something_that_never_comes_about_never_does)
{
    small_problem small;
    bk_placing tried[8];
    small_begin(&small);
    uint32_t ann = small_resource(&small, (bk_stage[]){{0, 1}, {20, BK_CLOSED}, {-1, 0}});
    uint32_t ben = small_always(&small, 1);
    small_task(&small, 15, ann);
    small_task(&small, 5, ben);
    small_rank(&small, 0, 1, 0);
    try_small(&small, (int32_t[]){21, 5}, tried);
    ck_assert_int_eq(tried[0].end, BK_CLOCK_NEVER);
    ck_assert_int_eq(tried[1].begin, BK_CLOCK_NEVER);
}
END_TEST

BK_TEST_MAIN("trial", with_the_minutes_of_the_plan_everything_ends_as_planned,
             whatever_the_minutes_a_trial_keeps_order_hands_and_hours,
             with_nobody_to_wait_for_a_trial_is_the_critical_path,
             whoever_waits_for_a_late_step_takes_another_that_is_ready,
             nobody_begins_a_long_step_before_one_that_is_planned_and_not_late,
             whoever_is_done_early_goes_on_with_the_next_step,
             another_takes_over_what_its_own_hands_are_late_for,
             a_step_is_left_to_its_own_hands_until_it_is_late,
             an_appointment_is_kept_free_until_it_is_known_to_be_missed,
             an_appointment_is_kept_where_what_comes_before_is_done_just_then,
             what_yields_does_not_hold_up_what_is_planned,
             what_comes_after_something_that_never_comes_about_never_does)
