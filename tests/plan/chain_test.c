#include "small_problem.h"

#include "bodkin/plan/odds.h"
#include "support/testing.h"

// Schedules put down by hand, and what bound each task of them. Two days of a workroom: there from minute 600 to 1080, and again
// from 2040 to 2520.

static const bk_stage two_days[] = {{0, BK_CLOSED}, {600, 1},          {1080, BK_CLOSED},
                                    {2040, 1},      {2520, BK_CLOSED}, {-1, 0}};

enum { LINKS = 6 };

typedef struct expected {
    size_t count;
    bk_chain_link links[LINKS];
} expected;

static void check_chain(small_problem *small, const bk_placing *placings, uint32_t task,
                        const expected *wanted)
{
    bk_chain_link *links;
    size_t count = bk_chain_to(&small->problem, placings, task, small->arena, &links);
    ck_assert_uint_eq(count, wanted->count);
    for (size_t i = 0; i < count; i++) {
        ck_assert_uint_eq(links[i].task, wanted->links[i].task);
        ck_assert_int_eq(links[i].bound, wanted->links[i].bound);
        ck_assert_uint_eq(links[i].resource, wanted->links[i].resource);
    }
    small_free(small);
}

START_TEST(a_task_that_begins_at_once_waited_for_nothing)
{
    small_problem small;
    small_begin(&small);
    small_task(&small, 10, small_always(&small, 1));
    check_chain(&small, (bk_placing[]){{0, 10, 0}}, 0, &(expected){1, {{0, BK_BOUND_NOTHING, 0}}});
}
END_TEST

START_TEST(the_rest_after_a_task_belongs_to_the_order)
{
    small_problem small;
    small_begin(&small);
    uint32_t first = small_always(&small, 1), second = small_always(&small, 1);
    small_task(&small, 10, first);
    small_task(&small, 5, second);
    small_rank(&small, 0, 1, 30);
    check_chain(&small, (bk_placing[]){{0, 10, 0}, {40, 45, 0}}, 1,
                &(expected){2, {{0, BK_BOUND_NOTHING, 0}, {1, BK_BOUND_ORDER, 0}}});
}
END_TEST

START_TEST(hands_that_are_held_bind_what_needs_them)
{
    small_problem small;
    small_begin(&small);
    small_always(&small, 1);
    uint32_t person = small_always(&small, 1);
    for (int i = 0; i < 3; i++)
        small_task(&small, 10, person);
    check_chain(&small, (bk_placing[]){{10, 20, 0}, {0, 10, 0}, {20, 30, 0}}, 2,
                &(expected){3, {{1, BK_BOUND_NOTHING, 0}, {0, BK_BOUND_HANDS, 1}, {2, BK_BOUND_HANDS, 1}}});
}
END_TEST

START_TEST(of_two_branches_the_later_one_binds)
{
    small_problem small;
    small_begin(&small);
    for (int i = 0; i < 3; i++)
        small_task(&small, 10, small_always(&small, 1));
    small_rank(&small, 0, 2, 0);
    small_rank(&small, 1, 2, 0);
    check_chain(&small, (bk_placing[]){{0, 10, 0}, {0, 12, 0}, {12, 22, 0}}, 2,
                &(expected){2, {{1, BK_BOUND_NOTHING, 0}, {2, BK_BOUND_ORDER, 0}}});
}
END_TEST

START_TEST(at_a_tie_the_order_comes_before_the_hands)
{
    small_problem small;
    small_begin(&small);
    uint32_t person = small_always(&small, 1), other = small_always(&small, 1);
    small_task(&small, 10, person);
    small_task(&small, 10, other);
    small_task(&small, 10, person);
    small_rank(&small, 1, 2, 0);
    check_chain(&small, (bk_placing[]){{0, 10, 0}, {0, 10, 0}, {10, 20, 0}}, 2,
                &(expected){2, {{1, BK_BOUND_NOTHING, 0}, {2, BK_BOUND_ORDER, 0}}});
}
END_TEST

START_TEST(at_a_tie_in_the_order_the_lower_task_binds)
{
    small_problem small;
    small_begin(&small);
    for (int i = 0; i < 3; i++)
        small_task(&small, 10, small_always(&small, 1));
    small_rank(&small, 1, 2, 0);
    small_rank(&small, 0, 2, 0);
    check_chain(&small, (bk_placing[]){{0, 10, 0}, {0, 10, 0}, {10, 20, 0}}, 2,
                &(expected){2, {{0, BK_BOUND_NOTHING, 0}, {2, BK_BOUND_ORDER, 0}}});
}
END_TEST

START_TEST(at_a_tie_of_hands_the_lower_task_binds)
{
    small_problem small;
    small_begin(&small);
    uint32_t person = small_always(&small, 1), table = small_always(&small, 1);
    small_task(&small, 10, table);
    small_task(&small, 10, person);
    small_task(&small, 10, person);
    small_use(&small, 2, table, 1);
    check_chain(&small, (bk_placing[]){{0, 10, 0}, {0, 10, 0}, {10, 20, 0}}, 2,
                &(expected){2, {{0, BK_BOUND_NOTHING, 0}, {2, BK_BOUND_HANDS, table}}});
}
END_TEST

START_TEST(a_release_binds_where_nothing_is_later)
{
    small_problem small;
    small_begin(&small);
    small_task(&small, 10, small_always(&small, 1));
    small.tasks[0].release = 25;
    check_chain(&small, (bk_placing[]){{25, 35, 0}}, 0, &(expected){1, {{0, BK_BOUND_RELEASE, 0}}});
}
END_TEST

START_TEST(an_appointment_that_is_kept_binds_whatever_was_done_before)
{
    small_problem small;
    small_begin(&small);
    for (int i = 0; i < 2; i++)
        small_task(&small, 10, small_always(&small, 1));
    small_rank(&small, 0, 1, 0);
    small.tasks[1].appointment = 50;
    check_chain(&small, (bk_placing[]){{0, 10, 0}, {50, 60, 0}}, 1,
                &(expected){1, {{1, BK_BOUND_RELEASE, 0}}});
}
END_TEST

START_TEST(a_missed_appointment_leaves_the_order_to_bind)
{
    small_problem small;
    small_begin(&small);
    for (int i = 0; i < 2; i++)
        small_task(&small, 60, small_always(&small, 1));
    small_rank(&small, 0, 1, 0);
    small.tasks[1].appointment = 50;
    check_chain(&small, (bk_placing[]){{0, 60, 0}, {60, 120, 0}}, 1,
                &(expected){2, {{0, BK_BOUND_NOTHING, 0}, {1, BK_BOUND_ORDER, 0}}});
}
END_TEST

START_TEST(the_first_task_of_the_morning_waited_for_the_hours)
{
    small_problem small;
    small_begin(&small);
    small_task(&small, 10, small_resource(&small, two_days));
    check_chain(&small, (bk_placing[]){{600, 610, 0}}, 0, &(expected){1, {{0, BK_BOUND_HOURS, 0}}});
}
END_TEST

START_TEST(a_night_between_two_tasks_is_looked_through)
{
    small_problem small;
    small_begin(&small);
    uint32_t person = small_resource(&small, two_days), other = small_always(&small, 1);
    small_task(&small, 480, person);
    small_task(&small, 30, other);
    small_task(&small, 10, person);
    small_rank(&small, 1, 2, 0);
    // The hands are free at 18:00, what comes before is done at 19:00: so the order bound it.
    check_chain(&small, (bk_placing[]){{600, 1080, 0}, {1110, 1140, 0}, {2040, 2050, 0}}, 2,
                &(expected){2, {{1, BK_BOUND_HOURS, 0}, {2, BK_BOUND_ORDER, 0}}});
}
END_TEST

START_TEST(hands_that_went_home_bind_what_begins_in_the_morning)
{
    small_problem small;
    small_begin(&small);
    uint32_t person = small_resource(&small, two_days);
    small_task(&small, 480, person);
    small_task(&small, 10, person);
    check_chain(&small, (bk_placing[]){{600, 1080, 0}, {2040, 2050, 0}}, 1,
                &(expected){2, {{0, BK_BOUND_HOURS, 0}, {1, BK_BOUND_HANDS, 0}}});
}
END_TEST

START_TEST(a_release_at_night_is_looked_through_to_the_morning)
{
    small_problem small;
    small_begin(&small);
    small_task(&small, 10, small_resource(&small, two_days));
    small.tasks[0].release = 1440;
    check_chain(&small, (bk_placing[]){{2040, 2050, 0}}, 0, &(expected){1, {{0, BK_BOUND_RELEASE, 0}}});
}
END_TEST

START_TEST(a_fitting_that_the_day_has_no_room_for_waited_for_the_hours)
{
    small_problem small;
    small_begin(&small);
    small_task(&small, 60, small_resource(&small, two_days));
    small.tasks[0].release = 1050;
    small.tasks[0].whole = true;
    check_chain(&small, (bk_placing[]){{2040, 2100, 0}}, 0, &(expected){1, {{0, BK_BOUND_HOURS, 0}}});
}
END_TEST

START_TEST(a_resource_that_had_room_binds_nothing)
{
    small_problem small;
    small_begin(&small);
    uint32_t person = small_resource(&small, two_days), machines = small_always(&small, 2);
    small_task(&small, 300, person);
    small_task(&small, 200, machines);
    small_task(&small, 10, person);
    small_use(&small, 2, machines, 1);
    small_rank(&small, 0, 2, 200);
    // One of two machines was in use until 1150, at night; the rest after the first task was over at 1100.
    check_chain(&small, (bk_placing[]){{600, 900, 0}, {950, 1150, 0}, {2040, 2050, 0}}, 2,
                &(expected){2, {{0, BK_BOUND_HOURS, 0}, {2, BK_BOUND_ORDER, 0}}});
}
END_TEST

START_TEST(the_last_unit_of_a_resource_to_become_free_binds)
{
    small_problem small;
    small_begin(&small);
    uint32_t machines = small_always(&small, 2);
    for (int i = 0; i < 3; i++)
        small_task(&small, 10 + 2 * i, machines);
    check_chain(&small, (bk_placing[]){{0, 10, 0}, {0, 12, 0}, {10, 24, 0}}, 2,
                &(expected){2, {{0, BK_BOUND_NOTHING, 0}, {2, BK_BOUND_HANDS, 0}}});
}
END_TEST

START_TEST(a_task_that_never_comes_about_has_no_chain)
{
    small_problem small;
    small_begin(&small);
    small_task(&small, 10, small_resource(&small, (bk_stage[]){{0, BK_CLOSED}, {-1, 0}}));
    check_chain(&small, (bk_placing[]){{BK_CLOCK_NEVER, BK_CLOCK_NEVER, 0}}, 0, &(expected){0, {{0}}});
}
END_TEST

START_TEST(a_chain_goes_through_order_and_hands_to_its_beginning)
{
    small_problem small;
    small_begin(&small);
    uint32_t ann = small_resource(&small, two_days), ben = small_resource(&small, two_days);
    small_task(&small, 100, ann);
    small_task(&small, 50, ben);
    small_task(&small, 400, ben);
    small_task(&small, 30, ann);
    small_rank(&small, 0, 2, 0);
    small_rank(&small, 2, 3, 0);
    // Ben's second task is set down over night.
    check_chain(&small, (bk_placing[]){{600, 700, 0}, {600, 650, 0}, {700, 2060, 0}, {2060, 2090, 0}}, 3,
                &(expected){3, {{0, BK_BOUND_HOURS, 0}, {2, BK_BOUND_ORDER, 0}, {3, BK_BOUND_ORDER, 0}}});
}
END_TEST

START_TEST(the_other_way_to_do_a_task_is_bound_by_its_own_hands)
{
    small_problem small;
    small_begin(&small);
    uint32_t ann = small_always(&small, 1), ben = small_always(&small, 1);
    small_task(&small, 10, ann);
    small_task(&small, 15, ben);
    small_task(&small, 10, ann);
    small_mode(&small, 2, 10, ben, 1);
    check_chain(&small, (bk_placing[]){{0, 10, 0}, {0, 15, 0}, {15, 25, 1}}, 2,
                &(expected){2, {{1, BK_BOUND_NOTHING, 0}, {2, BK_BOUND_HANDS, ben}}});
}
END_TEST

START_TEST(ends_that_lie_years_off_are_told_apart)
{
    enum {
        FIRST = 5000000,
        SECOND = 9000000,
        THIRD = 9000010
    }; // more minutes than two rounds of sorting tell apart
    small_problem small;
    small_begin(&small);
    uint32_t ann = small_always(&small, 1);
    small_task(&small, FIRST, ann);
    small_task(&small, SECOND - FIRST, ann);
    small_task(&small, THIRD - SECOND, ann);
    check_chain(
        &small, (bk_placing[]){{0, FIRST, 0}, {FIRST, SECOND, 0}, {SECOND, THIRD, 0}}, 2,
        &(expected){3, {{0, BK_BOUND_NOTHING, 0}, {1, BK_BOUND_HANDS, ann}, {2, BK_BOUND_HANDS, ann}}});
}
END_TEST

BK_TEST_MAIN(
    "chain", a_task_that_begins_at_once_waited_for_nothing, the_rest_after_a_task_belongs_to_the_order,
    hands_that_are_held_bind_what_needs_them, of_two_branches_the_later_one_binds,
    at_a_tie_the_order_comes_before_the_hands, at_a_tie_in_the_order_the_lower_task_binds,
    at_a_tie_of_hands_the_lower_task_binds, a_release_binds_where_nothing_is_later,
    an_appointment_that_is_kept_binds_whatever_was_done_before, a_missed_appointment_leaves_the_order_to_bind,
    the_first_task_of_the_morning_waited_for_the_hours, a_night_between_two_tasks_is_looked_through,
    hands_that_went_home_bind_what_begins_in_the_morning, a_release_at_night_is_looked_through_to_the_morning,
    a_fitting_that_the_day_has_no_room_for_waited_for_the_hours, a_resource_that_had_room_binds_nothing,
    the_last_unit_of_a_resource_to_become_free_binds, a_task_that_never_comes_about_has_no_chain,
    a_chain_goes_through_order_and_hands_to_its_beginning,
    the_other_way_to_do_a_task_is_bound_by_its_own_hands, ends_that_lie_years_off_are_told_apart)
