#include "bodkin/plan/generate.h"

#include "small_problem.h"
#include "support/plan_checker.h"
#include "support/testing.h"

enum { MOST_TASKS = 16 };

static small_problem small;
static bk_placing placed[MOST_TASKS];

typedef void scheme(bk_generator *generator, const bk_making *making, bk_placing *placings);

static void begin(void)
{
    small_begin(&small);
}

// Generates in the order of the tasks' numbers, or in the one given.
static void place(scheme *how, const uint32_t *order, const int32_t *minutes, const int32_t *modes)
{
    static const uint32_t in_turn[MOST_TASKS] = {0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15};
    bk_generator *generator = bk_generator_new(&small.problem);
    bk_making making = {order != NULL ? order : in_turn, minutes, modes};
    how(generator, &making, placed);
    bk_generator_free(generator);
}

// The same, and the checker finds it sound.
static void generate(scheme *how, const uint32_t *order, const int32_t *minutes, const int32_t *modes)
{
    bk_error fault = {0};
    place(how, order, minutes, modes);
    ck_assert_msg(bk_plan_sound(&small.problem, minutes, placed, &fault), "%s", fault.text);
}

static void check_placed(uint32_t task, bk_clock_minute from, bk_clock_minute to)
{
    ck_assert_int_eq(placed[task].begin, from);
    ck_assert_int_eq(placed[task].end, to);
}

static void to_twenty(bk_generator *generator, const bk_making *making, bk_placing *placings)
{
    bk_generate_backward(generator, making, 20, placings);
}

// --------------------------------------------------------------------------------------------------------------- times

START_TEST(a_task_waits_for_those_it_comes_after_and_for_its_resource)
{
    begin();
    uint32_t hands = small_always(&small, 1);
    small_task(&small, 4, hands);
    small_task(&small, 3, hands);
    small_task(&small, 2, hands);
    small_rank(&small, 0, 2, 0);
    generate(bk_generate_serial, NULL, NULL, NULL);
    check_placed(0, 0, 4);
    check_placed(1, 4, 7);
    check_placed(2, 7, 9);
    generate(bk_generate_serial, (uint32_t[]){0, 2, 1}, NULL, NULL);
    check_placed(2, 4, 6);
    check_placed(1, 6, 9);
    small_free(&small);
}
END_TEST

// In turn, the third task fills the gap before the second; forward in time it begins at once, and the second waits for it.
START_TEST(a_gap_is_filled_in_turn_and_never_left_forward_in_time)
{
    begin();
    uint32_t one = small_always(&small, 1), two = small_always(&small, 2);
    small_task(&small, 3, one);
    small_task(&small, 5, two);
    small_use(&small, 1, one, 1);
    small_mode(&small, small_task(&small, 6, two), 6, two, 2);
    small.tasks[2].modes = &small.tasks[2].modes[1];
    small.tasks[2].mode_count = 1;
    generate(bk_generate_serial, NULL, NULL, NULL);
    check_placed(1, 3, 8);
    check_placed(2, 8, 14);
    generate(bk_generate_parallel, NULL, NULL, NULL);
    check_placed(2, 0, 6);
    check_placed(1, 6, 11);
    small_free(&small);
}
END_TEST

START_TEST(rest_is_clock_time_and_goes_on_while_everything_is_closed)
{
    begin();
    uint32_t hands = small_resource(&small, (bk_stage[]){{0, 1}, {4, BK_CLOSED}, {10, 1}, {-1, 0}});
    small_task(&small, 4, hands);
    small_task(&small, 2, hands);
    small_rank(&small, 0, 1, 5);
    generate(bk_generate_serial, NULL, NULL, NULL);
    check_placed(0, 0, 4);
    check_placed(1, 10, 12);
    small.ranks[0].rest = 8;
    generate(bk_generate_serial, NULL, NULL, NULL);
    check_placed(1, 12, 14);
    small_free(&small);
}
END_TEST

START_TEST(a_task_is_set_down_at_the_end_of_a_stretch_and_taken_up_at_the_next)
{
    begin();
    uint32_t hands =
        small_resource(&small, (bk_stage[]){{0, BK_CLOSED}, {2, 1}, {5, BK_CLOSED}, {9, 1}, {-1, 0}});
    small_task(&small, 5, hands);
    small_task(&small, 1, hands);
    generate(bk_generate_serial, NULL, NULL, NULL);
    check_placed(0, 2, 11);
    check_placed(1, 11, 12);
    bk_clock_minute(*stretches)[2];
    ck_assert_uint_eq(bk_placing_stretches(&small.problem, 0, &placed[0], small.arena, &stretches), 2);
    ck_assert_int_eq(stretches[0][0], 2);
    ck_assert_int_eq(stretches[0][1], 5);
    ck_assert_int_eq(stretches[1][0], 9);
    ck_assert_int_eq(stretches[1][1], 11);
    small_free(&small);
}
END_TEST

START_TEST(a_whole_task_is_not_split)
{
    begin();
    uint32_t hands = small_resource(&small, (bk_stage[]){{0, 1}, {3, BK_CLOSED}, {9, 1}, {-1, 0}});
    small.tasks[small_task(&small, 4, hands)].whole = true;
    small_task(&small, 2, hands);
    generate(bk_generate_serial, NULL, NULL, NULL);
    check_placed(0, 9, 13);
    check_placed(1, 0, 2);
    small_free(&small);
}
END_TEST

// While one of two is away the other can do something else.
START_TEST(two_hands_at_once_are_both_held_only_while_both_are_there)
{
    begin();
    uint32_t one = small_resource(&small, (bk_stage[]){{0, 1}, {2, BK_CLOSED}, {6, 1}, {-1, 0}});
    uint32_t other = small_always(&small, 1);
    small_use(&small, small_task(&small, 4, one), other, 1);
    small_task(&small, 3, other);
    generate(bk_generate_serial, NULL, NULL, NULL);
    check_placed(0, 0, 8);
    check_placed(1, 2, 5);
    small_free(&small);
}
END_TEST

// A capacity of 0 is no closed time: a task must not run across it.
START_TEST(a_task_does_not_run_across_a_time_with_too_few)
{
    begin();
    uint32_t hands = small_resource(&small, (bk_stage[]){{0, 2}, {3, 0}, {5, 1}, {8, 2}, {-1, 0}});
    small_task(&small, 4, hands);
    small_mode(&small, 0, 4, hands, 2);
    small_task(&small, 3, hands);
    generate(bk_generate_serial, NULL, NULL, (int32_t[]){1, 0});
    check_placed(0, 8, 12);
    check_placed(1, 0, 3);
    generate(bk_generate_serial, NULL, NULL, (int32_t[]){0, 0});
    check_placed(0, 5, 9);
    small_free(&small);
}
END_TEST

START_TEST(nothing_begins_before_its_release)
{
    begin();
    uint32_t hands = small_always(&small, 1);
    small.tasks[small_task(&small, 2, hands)].release = 7;
    small_task(&small, 8, hands);
    generate(bk_generate_serial, NULL, NULL, NULL);
    check_placed(0, 7, 9);
    check_placed(1, 9, 17);
    generate(bk_generate_parallel, NULL, NULL, NULL);
    check_placed(1, 0, 8);
    check_placed(0, 8, 10);
    small_free(&small);
}
END_TEST

START_TEST(a_task_without_work_takes_no_time_and_needs_nobody)
{
    begin();
    uint32_t nobody = small_resource(&small, (bk_stage[]){{0, BK_CLOSED}, {-1, 0}});
    uint32_t hands = small_always(&small, 1);
    small_task(&small, 3, hands);
    small_task(&small, 0, nobody);
    small_task(&small, 2, hands);
    small_rank(&small, 0, 1, 0);
    small_rank(&small, 1, 2, 0);
    generate(bk_generate_serial, NULL, NULL, NULL);
    check_placed(1, 3, 3);
    check_placed(2, 3, 5);
    small_free(&small);
}
END_TEST

START_TEST(minutes_can_be_given_in_place_of_the_modes)
{
    begin();
    uint32_t hands = small_always(&small, 1);
    small_task(&small, 3, hands);
    small_task(&small, 3, hands);
    generate(bk_generate_serial, NULL, (int32_t[]){5, 1}, NULL);
    check_placed(0, 0, 5);
    check_placed(1, 5, 6);
    small_free(&small);
}
END_TEST

// --------------------------------------------------------------------------------------------------------------- modes

START_TEST(the_mode_that_ends_it_first_is_taken_and_the_first_at_a_tie)
{
    begin();
    uint32_t slow = small_always(&small, 1), quick = small_always(&small, 1);
    small_task(&small, 6, slow);
    small_mode(&small, 0, 4, quick, 1);
    small_task(&small, 4, slow);
    small_mode(&small, 1, 4, quick, 1);
    small_task(&small, 5, slow);
    small_mode(&small, 2, 5, quick, 1);
    generate(bk_generate_serial, NULL, NULL, NULL);
    ck_assert_uint_eq(placed[0].mode, 1);
    ck_assert_uint_eq(placed[1].mode, 0);
    ck_assert_uint_eq(placed[2].mode, 0);
    generate(bk_generate_serial, NULL, NULL, (int32_t[]){0, -1, 1});
    ck_assert_uint_eq(placed[0].mode, 0);
    ck_assert_uint_eq(placed[1].mode, 1);
    check_placed(2, 4, 9);
    generate(bk_generate_parallel, NULL, NULL, NULL);
    ck_assert_uint_eq(placed[0].mode, 1);
    ck_assert_uint_eq(placed[1].mode, 0);
    check_placed(2, 4, 9);
    small_free(&small);
}
END_TEST

START_TEST(forward_in_time_of_the_modes_that_can_begin_the_one_that_ends_first_is_taken)
{
    begin();
    uint32_t one = small_always(&small, 1), other = small_always(&small, 1);
    small_task(&small, 4, one);
    small_mode(&small, 0, 6, other, 1);
    small_task(&small, 4, one);
    small_mode(&small, 1, 9, other, 1);
    generate(bk_generate_parallel, NULL, NULL, NULL);
    check_placed(0, 0, 4);
    check_placed(1, 0, 9);
    small_free(&small);
}
END_TEST

// -------------------------------------------------------------------------------------------------------- appointments

START_TEST(an_appointment_is_kept_free_and_kept)
{
    begin();
    uint32_t hands = small_always(&small, 1);
    small_task(&small, 8, hands);
    small.tasks[small_task(&small, 2, hands)].appointment = 5;
    small_task(&small, 3, hands);
    generate(bk_generate_serial, NULL, NULL, NULL);
    check_placed(1, 5, 7);
    check_placed(0, 7, 15);
    check_placed(2, 0, 3);
    generate(bk_generate_parallel, NULL, NULL, NULL);
    check_placed(1, 5, 7);
    small_free(&small);
}
END_TEST

START_TEST(an_appointment_that_comes_too_early_is_given_back)
{
    begin();
    uint32_t hands = small_always(&small, 1), others = small_always(&small, 1);
    small_task(&small, 6, others);
    small.tasks[small_task(&small, 2, hands)].appointment = 5;
    small_task(&small, 7, hands);
    small_rank(&small, 0, 1, 0);
    generate(bk_generate_serial, NULL, NULL, NULL);
    check_placed(1, 6, 8);
    check_placed(2, 8, 15);
    generate(bk_generate_serial, (uint32_t[]){0, 2, 1}, NULL, NULL);
    check_placed(2, 7, 14);
    generate(bk_generate_parallel, NULL, NULL, NULL);
    check_placed(2, 0, 7);
    check_placed(1, 7, 9);
    small_free(&small);
}
END_TEST

START_TEST(an_appointment_takes_the_first_mode_that_is_there_then)
{
    begin();
    uint32_t away = small_resource(&small, (bk_stage[]){{0, 1}, {4, BK_CLOSED}, {9, 1}, {-1, 0}});
    uint32_t here = small_always(&small, 1);
    small.tasks[small_task(&small, 2, away)].appointment = 5;
    generate(bk_generate_serial, NULL, NULL, NULL);
    check_placed(0, 9, 11);
    small_mode(&small, 0, 2, here, 1);
    generate(bk_generate_serial, NULL, NULL, NULL);
    check_placed(0, 5, 7);
    ck_assert_uint_eq(placed[0].mode, 1);
    small_free(&small);
}
END_TEST

// --------------------------------------------------------------------------------------------------------------- never

START_TEST(what_nobody_will_ever_do_and_what_comes_after_it_never_comes_about)
{
    begin();
    uint32_t leaves = small_resource(&small, (bk_stage[]){{0, 1}, {4, BK_CLOSED}, {-1, 0}});
    uint32_t hands = small_always(&small, 1);
    small_task(&small, 5, leaves);
    small_task(&small, 1, hands);
    small_task(&small, 4, leaves);
    small_rank(&small, 0, 1, 0);
    small.targets[0] = (bk_target){(const uint32_t[]){0, 2}, 2, 1, 2};
    small.problem.target_count = 1;
    scheme *const schemes[] = {bk_generate_serial, bk_generate_parallel};
    for (size_t i = 0; i < 2; i++) {
        generate(schemes[i], NULL, NULL, NULL);
        check_placed(0, BK_CLOCK_NEVER, BK_CLOCK_NEVER);
        check_placed(1, BK_CLOCK_NEVER, BK_CLOCK_NEVER);
        check_placed(2, 0, 4);
        bk_cost cost = bk_cost_of(&small.problem, placed);
        ck_assert_int_eq(cost.never, 2);
        ck_assert_int_eq(cost.late, 6);
        ck_assert_int_eq(cost.last, 4);
    }
    small_free(&small);
}
END_TEST

START_TEST(an_end_beyond_all_clock_time_never_comes_about)
{
    begin();
    uint32_t hands = small_always(&small, 1);
    small_task(&small, BK_CLOCK_NEVER - 1, hands);
    small_task(&small, 5, hands);
    small_task(&small, 0, hands);
    small_rank(&small, 0, 2, 7);
    place(bk_generate_serial, NULL, NULL, NULL); // the checker would walk all clock time minute by minute
    check_placed(0, 0, BK_CLOCK_NEVER - 1);
    check_placed(1, BK_CLOCK_NEVER, BK_CLOCK_NEVER);
    check_placed(2, BK_CLOCK_NEVER, BK_CLOCK_NEVER);
    small_free(&small);
}
END_TEST

// ----------------------------------------------------------------------------------------------------- backward, giving way

START_TEST(backward_everything_ends_as_late_as_it_can)
{
    begin();
    uint32_t hands = small_resource(&small, (bk_stage[]){{0, 1}, {12, BK_CLOSED}, {17, 1}, {-1, 0}});
    small_task(&small, 2, hands);
    small_task(&small, 4, hands);
    small_task(&small, 1, hands);
    small_rank(&small, 0, 1, 3);
    small_rank(&small, 1, 2, 0);
    generate(to_twenty, NULL, NULL, NULL);
    check_placed(2, 19, 20);
    check_placed(1, 10, 19);
    check_placed(0, 5, 7);
    small_free(&small);
}
END_TEST

START_TEST(backward_what_does_not_fit_after_minute_0_and_all_before_it_is_left_out)
{
    begin();
    uint32_t hands = small_always(&small, 1);
    small_task(&small, 0, hands);
    small_task(&small, 9, hands);
    small_task(&small, 12, hands);
    small_rank(&small, 0, 1, 0);
    bk_generator *generator = bk_generator_new(&small.problem);
    bk_making making = {.order = (uint32_t[]){0, 1, 2}};
    bk_generate_backward(generator, &making, 20, placed);
    check_placed(2, 8, 20);
    check_placed(1, BK_CLOCK_NEVER, BK_CLOCK_NEVER);
    check_placed(0, BK_CLOCK_NEVER, BK_CLOCK_NEVER);
    bk_generate_backward_to(generator, &making, 30, (bk_clock_minute[]){30, 15, 30}, placed);
    check_placed(2, 18, 30);
    check_placed(1, 6, 15);
    check_placed(0, 6, 6);
    bk_generator_free(generator);
    small_free(&small);
}
END_TEST

START_TEST(forward_in_time_what_gives_way_does_not_take_the_place_of_what_does_not)
{
    begin();
    uint32_t hands = small_always(&small, 1);
    small.tasks[small_task(&small, 5, hands)].yields = true;
    small.tasks[small_task(&small, 2, hands)].release = 3;
    generate(bk_generate_parallel, NULL, NULL, NULL);
    check_placed(1, 3, 5);
    check_placed(0, 5, 10);
    small_rank(&small, 0, 1, 0);
    generate(bk_generate_parallel, NULL, NULL, NULL);
    check_placed(0, 0, 5);
    check_placed(1, 5, 7);
    small_free(&small);
}
END_TEST

BK_TEST_MAIN("generate", a_task_waits_for_those_it_comes_after_and_for_its_resource,
             a_gap_is_filled_in_turn_and_never_left_forward_in_time,
             rest_is_clock_time_and_goes_on_while_everything_is_closed,
             a_task_is_set_down_at_the_end_of_a_stretch_and_taken_up_at_the_next, a_whole_task_is_not_split,
             two_hands_at_once_are_both_held_only_while_both_are_there,
             a_task_does_not_run_across_a_time_with_too_few, nothing_begins_before_its_release,
             a_task_without_work_takes_no_time_and_needs_nobody, minutes_can_be_given_in_place_of_the_modes,
             the_mode_that_ends_it_first_is_taken_and_the_first_at_a_tie,
             forward_in_time_of_the_modes_that_can_begin_the_one_that_ends_first_is_taken,
             an_appointment_is_kept_free_and_kept, an_appointment_that_comes_too_early_is_given_back,
             an_appointment_takes_the_first_mode_that_is_there_then,
             what_nobody_will_ever_do_and_what_comes_after_it_never_comes_about,
             an_end_beyond_all_clock_time_never_comes_about, backward_everything_ends_as_late_as_it_can,
             backward_what_does_not_fit_after_minute_0_and_all_before_it_is_left_out,
             forward_in_time_what_gives_way_does_not_take_the_place_of_what_does_not)
