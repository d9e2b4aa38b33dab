#include "bodkin/plan/odds.h"

#include <math.h>

#include "support/testing.h"
#include "tried_problem.h"

enum { TRIALS = 4000, MANY_TRIALS = 20000 };

// -------------------------------------------------------------------------------------------------- chance and error

START_TEST(chance_and_sampling_error_are_in_thousandths)
{
    static const struct {
        const char *says;
        int32_t trials, in_time, chance, error;
    } rows[] = {
        {"half of a thousand: sqrt(0.25/1000)", 1000, 500, 500, 16},
        {"nine tenths of a thousand: sqrt(0.09/1000)", 1000, 900, 900, 9},
        {"one fifth of a hundred: sqrt(0.16/100)", 100, 20, 200, 40},
        {"rounded half up", 2000, 1, 1, 0},
        {"none: the rule of three", 1000, 0, 0, 3},
        {"all: the rule of three", 1000, 1000, 1000, 3},
        {"the rule of three is rounded up", 400, 400, 1000, 8},
        {"two thirds", 3, 2, 667, 272},
        {"without trials nothing is known", 0, 0, 0, 1000},
    };
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        bk_group_odds odds = {.trials = rows[i].trials, .in_time = rows[i].in_time};
        ck_assert_msg(bk_odds_chance(&odds) == rows[i].chance && bk_odds_error(&odds) == rows[i].error,
                      "%s: %d +- %d", rows[i].says, bk_odds_chance(&odds), bk_odds_error(&odds));
    }
}
END_TEST

// The error told is the one there is: over many seeds the chances lie about the exact one as widely as it says.
START_TEST(the_sampling_error_told_is_the_one_seen)
{
    enum { SEEDS = 400, FEW = 250 };
    double exact = 1 - pow(0.5, 5) - 5 * pow(0.5, 5), squares = 0, told = 0; // beta(2, 4) at one half
    begin_tried();
    add_free_step((bk_estimate){0, 100000, 400000});
    ask(0, 1, 200000);
    for (uint64_t seed = 1; seed <= SEEDS; seed++) {
        tried.seed = seed;
        try_all(FEW);
        double off = share_in_time(0) - exact;
        squares += off * off;
        told += bk_odds_error(&tried.odds[0]) / 1000.0;
    }
    double seen = sqrt(squares / SEEDS);
    ck_assert_double_eq_tol(seen, sqrt(exact * (1 - exact) / FEW), 0.1 * seen);
    ck_assert_double_eq_tol(told / SEEDS, seen, 0.1 * seen);
    end_tried();
}
END_TEST

// ---------------------------------------------------------------------------------------------------------- deciders

START_TEST(of_two_branches_each_decides_as_often_as_it_is_the_later)
{
    static const bk_estimate left = {20, 50, 120}, right = {40, 60, 90};
    distribution by_left = distribution_of(left), by_right = distribution_of(right);
    double later = 0;
    for (int i = 0; i < DISTRIBUTION_LENGTH; i++)
        later += by_left.at[i] * done_by(&by_right, i); // at a tie it is the lower task
    begin_tried();
    add_free_step(left);
    add_free_step(right);
    uint32_t last = add_free_step((bk_estimate){5, 10, 20});
    small_rank(&tried.small, 0, last, 0);
    small_rank(&tried.small, 1, last, 0);
    ask(0, 3, 100);
    try_all(MANY_TRIALS);
    const bk_group_odds *odds = &tried.odds[0];
    ck_assert_uint_eq(odds->decider_count, 3);
    ck_assert_uint_eq(odds->deciders[0].task, last);
    ck_assert_int_eq(odds->deciders[0].trials, MANY_TRIALS);
    ck_assert_int_eq(odds->deciders[1].trials + odds->deciders[2].trials, MANY_TRIALS);
    ck_assert_int_ge(odds->deciders[1].trials, odds->deciders[2].trials);
    int32_t left_decided = odds->deciders[odds->deciders[1].task == 0 ? 1 : 2].trials;
    check_share("the left branch", (double)left_decided / MANY_TRIALS, later, MANY_TRIALS);
    end_tried();
}
END_TEST

START_TEST(hands_that_are_held_decide_too)
{
    begin_tried();
    uint32_t person = small_always(&tried.small, 1);
    for (int i = 0; i < 7; i++)
        add_step((bk_estimate){5, 10, 20}, person);
    ask(6, 1, 100);
    try_all(100);
    ck_assert_uint_eq(tried.odds[0].decider_count, BK_DECIDERS);
    for (uint32_t i = 0; i < BK_DECIDERS; i++) { // all seven in every trial: the lowest are told
        ck_assert_uint_eq(tried.odds[0].deciders[i].task, i);
        ck_assert_int_eq(tried.odds[0].deciders[i].trials, 100);
    }
    end_tried();
}
END_TEST

// ------------------------------------------------------------------------------------------------------------- edges

START_TEST(steps_without_spread_end_in_every_trial_as_planned)
{
    begin_tried();
    uint32_t person = small_resource(
        &tried.small, (bk_stage[]){{0, BK_CLOSED}, {60, 1}, {100, BK_CLOSED}, {160, 1}, {-1, 0}});
    add_step((bk_estimate){30, 30, 30}, person);
    add_step((bk_estimate){25, 25, 25}, person);
    tried.spreads[1] = NULL;
    ask(0, 2, 175);
    ask(0, 2, 174);
    ask(0, 1, 90);
    try_all(50);
    ck_assert_int_eq(tried.plan[1].end, 175);
    ck_assert_int_eq(tried.odds[0].in_time, 50);
    ck_assert_int_eq(tried.odds[1].in_time, 0);
    ck_assert_int_eq(tried.odds[2].in_time, 50);
    ck_assert_int_eq(tried.odds[0].even, 175);
    ck_assert_int_eq(tried.odds[0].likely, 175);
    ck_assert_int_eq(tried.odds[2].likely, 90);
    end_tried();
}
END_TEST

START_TEST(a_longer_way_scales_what_is_drawn)
{
    begin_tried();
    uint32_t quick = small_resource(&tried.small, (bk_stage[]){{0, BK_CLOSED}, {-1, 0}});
    uint32_t slow = small_always(&tried.small, 1);
    add_step((bk_estimate){50, 50, 50}, quick);
    small_mode(&tried.small, 0, 75, slow, 1);
    tried.spreads[0] = bk_spread_new((bk_estimate){61, 61, 61}, tried.small.arena);
    ask(0, 1, BK_CLOCK_NONE);
    try_all(10);
    ck_assert_int_eq(tried.odds[0].even, 92); // 61 x 75/50 = 91.5
    end_tried();
}
END_TEST

START_TEST(the_same_seed_gives_the_same_bytes_and_another_one_others)
{
    static bk_group_odds kept[TRIED_GROUPS];
    begin_tried();
    add_free_step((bk_estimate){20, 50, 120});
    add_free_step((bk_estimate){20, 40, 150});
    ask_by_every_minute();
    try_all(100);
    memcpy(kept, tried.odds, sizeof kept);
    try_all(100);
    ck_assert_mem_eq(kept, tried.odds, sizeof kept);
    tried.seed = 2;
    try_all(100);
    ck_assert_mem_ne(kept, tried.odds, sizeof kept);
    end_tried();
}
END_TEST

// Known once from one run: on every machine and compiler the same.
START_TEST(the_numbers_are_the_same_everywhere)
{
    begin_tried();
    uint32_t person = small_always(&tried.small, 1);
    for (int i = 0; i < 4; i++)
        add_step((bk_estimate){20 + i, 50, 120}, person);
    ask(0, 4, 240);
    try_all(1000);
    ck_assert_int_eq(tried.odds[0].in_time, 642);
    ck_assert_int_eq(tried.odds[0].even, 226);
    ck_assert_int_eq(tried.odds[0].likely, 276);
    end_tried();
}
END_TEST

static bool until_sixteen(void *context, int64_t trials)
{
    *(int64_t *)context = trials;
    return trials < 16;
}

START_TEST(trials_that_are_stopped_give_what_there_is)
{
    int64_t seen = -1;
    begin_tried();
    add_free_step((bk_estimate){20, 50, 120});
    ask(0, 1, 120);
    ask(0, 1, 19);
    bk_odds_plan plan = plan_of_tried();
    bk_odds_try(&plan, 1000, until_sixteen, &seen, tried.odds);
    ck_assert_int_eq(seen, 16);
    ck_assert_int_eq(tried.odds[0].trials, 16);
    ck_assert_int_eq(tried.odds[0].in_time, 16);
    ck_assert_int_eq(tried.odds[1].in_time, 0);
    ck_assert_int_ge(tried.odds[0].likely, tried.odds[0].even);
    bk_odds_try(&plan, 0, NULL, NULL, tried.odds);
    ck_assert_int_eq(tried.odds[0].trials, 0);
    ck_assert_int_eq(tried.odds[0].even, BK_CLOCK_NEVER);
    end_tried();
}
END_TEST

// There are 100 minutes of hours and no more.
START_TEST(what_may_never_be_done_counts_as_never)
{
    static const bk_estimate step = {60, 90, 150};
    distribution minutes = distribution_of(step);
    begin_tried();
    uint32_t person = small_resource(&tried.small, (bk_stage[]){{0, 1}, {100, BK_CLOSED}, {-1, 0}});
    add_step(step, person);
    ask(0, 1, 100);
    try_all(TRIALS);
    check_share("hours that end", share_in_time(0), done_by(&minutes, 100), TRIALS);
    ck_assert_int_lt(tried.odds[0].even, 101);
    ck_assert_int_eq(tried.odds[0].likely, BK_CLOCK_NEVER);
    ck_assert_int_eq(tried.odds[0].deciders[0].trials, tried.odds[0].in_time);
    end_tried();
}
END_TEST

START_TEST(a_group_with_a_step_that_nobody_can_do_is_never_done)
{
    begin_tried();
    uint32_t nobody = small_resource(&tried.small, (bk_stage[]){{0, BK_CLOSED}, {-1, 0}});
    add_free_step((bk_estimate){20, 50, 120});
    add_step((bk_estimate){20, 50, 120}, nobody);
    ask(0, 2, 1000);
    ask(0, 1, 1000);
    ask(0, 0, 1000);
    try_all(20);
    ck_assert_int_eq(tried.odds[0].in_time, 0);
    ck_assert_int_eq(tried.odds[0].even, BK_CLOCK_NEVER);
    ck_assert_uint_eq(tried.odds[0].decider_count, 0);
    ck_assert_int_eq(tried.odds[1].in_time, 20);
    ck_assert_int_eq(tried.odds[2].in_time, 20);
    ck_assert_int_eq(tried.odds[2].even, 0);
    end_tried();
}
END_TEST

START_TEST(a_group_without_a_due_minute_is_never_in_time_but_has_its_days)
{
    begin_tried();
    add_free_step((bk_estimate){20, 50, 120});
    ask(0, 1, BK_CLOCK_NONE);
    try_all(20);
    ck_assert_int_eq(tried.odds[0].in_time, 0);
    ck_assert_int_gt(tried.odds[0].even, 19);
    end_tried();
}
END_TEST

START_TEST(steps_with_due_minutes_of_their_own_must_each_be_in_time)
{
    static const bk_clock_minute dues[] = {60, 70, BK_CLOCK_NONE};
    distribution first = distribution_of((bk_estimate){20, 50, 120});
    distribution second = distribution_of((bk_estimate){30, 60, 100});
    begin_tried();
    add_free_step((bk_estimate){20, 50, 120});
    add_free_step((bk_estimate){30, 60, 100});
    add_free_step((bk_estimate){200, 250, 300});
    ask(0, 3, BK_CLOCK_NONE);
    tried.groups[0].dues = dues;
    try_all(MANY_TRIALS);
    check_share("own dues", share_in_time(0), done_by(&first, 60) * done_by(&second, 70), MANY_TRIALS);
    end_tried();
}
END_TEST

BK_TEST_MAIN("odds", chance_and_sampling_error_are_in_thousandths, the_sampling_error_told_is_the_one_seen,
             of_two_branches_each_decides_as_often_as_it_is_the_later, hands_that_are_held_decide_too,
             steps_without_spread_end_in_every_trial_as_planned, a_longer_way_scales_what_is_drawn,
             the_same_seed_gives_the_same_bytes_and_another_one_others, the_numbers_are_the_same_everywhere,
             trials_that_are_stopped_give_what_there_is, what_may_never_be_done_counts_as_never,
             a_group_with_a_step_that_nobody_can_do_is_never_done,
             a_group_without_a_due_minute_is_never_in_time_but_has_its_days,
             steps_with_due_minutes_of_their_own_must_each_be_in_time)
