#include "support/plan_checker.h"

#include <string.h>

#include "small_problem.h"
#include "support/testing.h"

// The checker is held to schedules that are wrong in one way each.
static small_problem small;
static uint32_t hands, others;

// Two tasks, one after the other with a rest, for hands that are away from 6 to 10.
static void begin(void)
{
    small_begin(&small);
    hands = small_resource(&small, (bk_stage[]){{0, 1}, {6, BK_CLOSED}, {10, 1}, {20, 0}, {25, 1}, {-1, 0}});
    others = small_always(&small, 1);
    small_task(&small, 4, hands);
    small_task(&small, 4, hands);
    small_rank(&small, 0, 1, 1);
}

static void check_fault(const bk_placing *placings, const char *part)
{
    bk_error fault = {0};
    bool sound = bk_plan_sound(&small.problem, NULL, placings, &fault);
    ck_assert_msg(!sound, "nothing was found");
    ck_assert_msg(strstr(fault.text, part) != NULL, "it said: %s", fault.text);
}

static void check_sound(const bk_placing *placings)
{
    bk_error fault = {0};
    ck_assert_msg(bk_plan_sound(&small.problem, NULL, placings, &fault), "%s", fault.text);
}

#define PLACED(...) ((const bk_placing[]){__VA_ARGS__})

START_TEST(a_right_schedule_is_sound)
{
    begin();
    check_sound(PLACED({0, 4, 0}, {5, 13, 0}));
    check_sound(PLACED({0, 4, 0}, {BK_CLOCK_NEVER, BK_CLOCK_NEVER, 0}));
    small_free(&small);
}
END_TEST

START_TEST(wrong_minutes_are_found)
{
    begin();
    check_fault(PLACED({0, 4, 0}, {5, 12, 0}), "worked on for 3 minutes, not 4");
    check_fault(PLACED({0, 4, 0}, {7, 14, 0}), "begins or ends while it is closed");
    check_fault(PLACED({2, 7, 0}, {10, 14, 0}), "begins or ends while it is closed");
    bk_error fault = {0};
    ck_assert(!bk_plan_sound(&small.problem, (int32_t[]){4, 5}, PLACED({0, 4, 0}, {5, 13, 0}), &fault));
    small_free(&small);
}
END_TEST

START_TEST(a_broken_order_is_found)
{
    begin();
    check_fault(PLACED({2, 6, 0}, {6, 14, 0}), "closed");
    check_fault(PLACED({10, 14, 0}, {14, 18, 0}), "task 1 begins too early after task 0");
    check_fault(PLACED({BK_CLOCK_NEVER, BK_CLOCK_NEVER, 0}, {0, 4, 0}),
                "task 1 begins too early after task 0");
    small_free(&small);
}
END_TEST

START_TEST(too_much_at_once_is_found)
{
    begin();
    small.problem.rank_count = 0;
    check_fault(PLACED({0, 4, 0}, {3, 11, 0}), "more of resource 0 is used in minute 3");
    check_fault(PLACED({17, 21, 0}, {0, 4, 0}), "more of resource 0 is used in minute 20");
    small_free(&small);
}
END_TEST

START_TEST(a_split_whole_task_an_early_one_and_an_unknown_mode_are_found)
{
    begin();
    small.tasks[1].whole = true;
    check_fault(PLACED({0, 4, 0}, {5, 13, 0}), "task 1 is split");
    small.tasks[1].release = 12;
    check_fault(PLACED({0, 4, 0}, {10, 14, 0}), "before its release");
    check_fault(PLACED({0, 4, 1}, {12, 16, 0}), "task 0 has no mode 1");
    check_fault(PLACED({0, BK_CLOCK_NEVER, 0}, {12, 16, 0}), "but not both");
    small_free(&small);
}
END_TEST

START_TEST(an_appointment_that_is_missed_for_nothing_is_found)
{
    begin();
    small.tasks[1].appointment = 11;
    check_sound(PLACED({0, 4, 0}, {11, 15, 0}));
    check_fault(PLACED({0, 4, 0}, {12, 16, 0}), "does not keep an appointment");
    check_fault(PLACED({0, 4, 0}, {10, 14, 0}), "before its appointment");
    check_sound(PLACED({10, 14, 0}, {15, 19, 0}));
    small.tasks[1].appointment = 18;
    check_sound(PLACED({0, 4, 0}, {25, 29, 0}));
    small_free(&small);
}
END_TEST

BK_TEST_MAIN("plan_checker", a_right_schedule_is_sound, wrong_minutes_are_found, a_broken_order_is_found,
             too_much_at_once_is_found, a_split_whole_task_an_early_one_and_an_unknown_mode_are_found,
             an_appointment_that_is_missed_for_nothing_is_found)
