#include <math.h>

#include "support/testing.h"
#include "tried_problem.h"

// Odds by trial against the exact answer: never more than three standard errors from it.

enum { TRIALS = 4000, MANY_TRIALS = 20000 };

// Chances at seven shares of the exact distribution, the mean, and the days by which half and nine tenths are done.
static void check_distribution(const char *says, const distribution *exact)
{
    static const double shares[] = {0.01, 0.1, 0.25, 0.5, 0.75, 0.9, 0.99};
    const double errors_allowed = 3;
    double mean = 0, trials = tried.odds[0].trials;
    for (size_t i = 0; i < sizeof shares / sizeof shares[0]; i++) {
        int due = 0;
        while (done_by(exact, due) < shares[i])
            due++;
        check_share(says, share_in_time((size_t)due), done_by(exact, due), (int32_t)trials);
    }
    for (size_t due = 0; due < TRIED_GROUPS; due++)
        mean += 1 - share_in_time(due);
    double error = sqrt(variance_of(exact) / trials);
    ck_assert_msg(fabs(mean - mean_of(exact)) <= errors_allowed * error,
                  "%s: mean %.4f, exactly %.4f, error %.4f", says, mean, mean_of(exact), error);
    double half = errors_allowed * sqrt(0.25 / trials), tenth = errors_allowed * sqrt(0.09 / trials);
    bk_clock_minute even = tried.odds[0].even, likely = tried.odds[0].likely;
    ck_assert_double_ge(done_by(exact, even), 0.5 - half);
    ck_assert_double_le(done_by(exact, even - 1), 0.5 + half);
    ck_assert_double_ge(done_by(exact, likely), 0.9 - tenth);
    ck_assert_double_le(done_by(exact, likely - 1), 0.9 + tenth);
    end_tried();
}

// Beta(2, 4) from 0 to 400: the share below x is a binomial sum, 1 - (1 - x)^5 - 5x (1 - x)^4; whole minutes end at the half.
START_TEST(the_odds_of_one_step_are_those_of_the_binomial_sum)
{
    static const int dues[] = {20, 50, 100, 133, 200, 300};
    begin_tried();
    add_free_step((bk_estimate){0, 100, 400});
    for (size_t i = 0; i < sizeof dues / sizeof dues[0]; i++)
        ask(0, 1, dues[i]);
    try_all(MANY_TRIALS);
    for (size_t i = 0; i < sizeof dues / sizeof dues[0]; i++) {
        double x = (dues[i] + 0.5) / 400, rest = 1 - x;
        check_share("one step", share_in_time(i), 1 - pow(rest, 5) - 5 * x * pow(rest, 4), MANY_TRIALS);
    }
    end_tried();
}
END_TEST

// The product of two such sums; beta(3, 3): 10x^3 (1 - x)^2 + 5x^4 (1 - x) + x^5.
START_TEST(the_odds_of_two_steps_side_by_side_are_the_product)
{
    static const int dues[] = {100, 150, 200, 250, 300};
    begin_tried();
    add_step((bk_estimate){0, 100, 400}, small_always(&tried.small, 1));
    add_step((bk_estimate){0, 200, 400}, small_always(&tried.small, 1));
    for (size_t i = 0; i < sizeof dues / sizeof dues[0]; i++)
        ask(0, 2, dues[i]);
    try_all(MANY_TRIALS);
    for (size_t i = 0; i < sizeof dues / sizeof dues[0]; i++) {
        double x = (dues[i] + 0.5) / 400, rest = 1 - x;
        double first = 1 - pow(rest, 5) - 5 * x * pow(rest, 4);
        double second = 10 * pow(x, 3) * rest * rest + 5 * pow(x, 4) * rest + pow(x, 5);
        check_share("two steps", share_in_time(i), first * second, MANY_TRIALS);
    }
    end_tried();
}
END_TEST

START_TEST(the_odds_of_a_chain_are_the_convolution)
{
    static const bk_estimate steps[] = {{20, 40, 90}, {10, 30, 35}, {30, 60, 150}};
    distribution exact = {{1}};
    begin_tried();
    for (uint32_t i = 0; i < 3; i++) {
        distribution step = distribution_of(steps[i]);
        exact = sum_of(&exact, &step);
        add_free_step(steps[i]);
        if (i > 0)
            small_rank(&tried.small, i - 1, i, 5);
    }
    ask_by_every_minute();
    try_all(TRIALS);
    exact = moved(&exact, 10); // the rests
    check_distribution("a chain", &exact);
}
END_TEST

START_TEST(the_odds_of_two_steps_for_one_pair_of_hands_are_the_convolution)
{
    static const bk_estimate steps[] = {{20, 40, 90}, {30, 60, 150}};
    distribution first = distribution_of(steps[0]), second = distribution_of(steps[1]);
    distribution exact = sum_of(&first, &second);
    begin_tried();
    uint32_t person = small_always(&tried.small, 1);
    add_step(steps[0], person);
    add_step(steps[1], person);
    ask_by_every_minute();
    try_all(TRIALS);
    check_distribution("one pair of hands", &exact);
}
END_TEST

// From 9 to 10 and again from 11 on, in minutes from 0: what does not fit into the first hour goes on an hour later.
START_TEST(the_odds_of_a_step_set_down_are_moved_by_the_break)
{
    static const bk_estimate step = {30, 50, 110};
    distribution minutes = distribution_of(step), exact = {{0}};
    for (int i = 0; i < DISTRIBUTION_LENGTH; i++)
        if (minutes.at[i] > 0)
            exact.at[i <= 60 ? i : i + 60] += minutes.at[i];
    begin_tried();
    add_step(step, small_resource(&tried.small, (bk_stage[]){{0, 1}, {60, BK_CLOSED}, {120, 1}, {-1, 0}}));
    ask_by_every_minute();
    try_all(TRIALS);
    check_distribution("a break", &exact);
}
END_TEST

// ---------------------------------------------------------------------------------------------- published networks

enum { UNIT = 10 }; // minutes to the unit of the printed networks

typedef struct printed_step {
    int quickest, usual, longest;
    const char *after; // by letter
} printed_step;

static bk_estimate in_minutes(printed_step step)
{
    return (bk_estimate){step.quickest * UNIT, step.usual * UNIT, step.longest * UNIT};
}

// With hands enough for all.
static void add_network(const printed_step *steps, uint32_t count, distribution *each)
{
    begin_tried();
    for (uint32_t i = 0; i < count; i++) {
        each[i] = distribution_of(in_minutes(steps[i]));
        add_free_step(in_minutes(steps[i]));
        for (const char *name = steps[i].after; *name != '\0'; name++)
            small_rank(&tried.small, (uint32_t)(*name - 'A'), i, 0);
    }
    ask_by_every_minute();
    try_all(TRIALS);
}

// Heizer & Render, Operations Management, Milwaukee Paper (estimates from memory). With A and C done at z the rest falls into
// branches: max(max(z + E, B + D) + G, z + F) + H.
START_TEST(the_odds_of_the_eight_step_network_are_exact)
{
    enum { A, B, C, D, E, F, G, H, COUNT };
    static const printed_step steps[COUNT] = {{1, 2, 3, ""},    {2, 3, 4, ""},  {1, 2, 3, "A"},
                                              {2, 4, 6, "B"},   {1, 4, 7, "C"}, {1, 2, 9, "C"},
                                              {3, 4, 11, "DE"}, {1, 2, 3, "FG"}};
    static distribution each[COUNT];
    add_network(steps, COUNT, each);
    distribution shared = sum_of(&each[A], &each[C]), other = sum_of(&each[B], &each[D]), mixed = {{0}};
    for (int z = 0; z < DISTRIBUTION_LENGTH; z++) {
        if (shared.at[z] <= 0)
            continue;
        distribution by_e = moved(&each[E], z), by_f = moved(&each[F], z);
        distribution both = later_of(&by_e, &other), behind = sum_of(&both, &each[G]);
        distribution all = later_of(&behind, &by_f);
        add_share(&mixed, &all, shared.at[z]);
    }
    distribution exact = sum_of(&mixed, &each[H]);
    check_distribution("Milwaukee Paper", &exact);
}
END_TEST

// The ten-activity network. With C done at z: max(max(max(z + F, B + E) + H, z + G) + J, A + D + I).
START_TEST(the_odds_of_the_ten_step_network_are_exact)
{
    enum { A, B, C, D, E, F, G, H, I, J, COUNT };
    static const printed_step steps[COUNT] = {
        {5, 6, 7, ""},  {1, 3, 5, ""},  {1, 4, 7, ""},    {1, 2, 3, "A"}, {1, 2, 9, "B"},
        {1, 5, 9, "C"}, {2, 2, 8, "C"}, {4, 4, 10, "EF"}, {2, 5, 8, "D"}, {2, 2, 8, "HG"}};
    static distribution each[COUNT];
    add_network(steps, COUNT, each);
    distribution other = sum_of(&each[B], &each[E]), mixed = {{0}};
    for (int z = 0; z < DISTRIBUTION_LENGTH; z++) {
        if (each[C].at[z] <= 0)
            continue;
        distribution by_f = moved(&each[F], z), by_g = moved(&each[G], z);
        distribution both = later_of(&by_f, &other), behind = sum_of(&both, &each[H]);
        distribution all = later_of(&behind, &by_g);
        add_share(&mixed, &all, each[C].at[z]);
    }
    distribution main_way = sum_of(&mixed, &each[J]), side = sum_of(&each[A], &each[D]);
    side = sum_of(&side, &each[I]);
    distribution exact = later_of(&main_way, &side);
    check_distribution("ten activities", &exact);
}
END_TEST

// Taylor, Introduction to Management Science, the path 1-3-5-7: its mean is the sum of the means, 24 (printed).
START_TEST(the_odds_of_the_printed_path_are_exact)
{
    enum { COUNT = 4 };
    static const printed_step steps[COUNT] = {{5, 8, 17, ""}, {3, 5, 7, "A"}, {4, 6, 8, "B"}, {3, 4, 5, "C"}};
    static distribution each[COUNT];
    add_network(steps, COUNT, each);
    distribution exact = {{1}};
    for (int i = 0; i < COUNT; i++)
        exact = sum_of(&exact, &each[i]);
    ck_assert_double_eq_tol(mean_of(&exact), 24 * UNIT, 0.01);
    check_distribution("Taylor's path", &exact);
}
END_TEST

BK_TEST_MAIN("odds_exact", the_odds_of_one_step_are_those_of_the_binomial_sum,
             the_odds_of_two_steps_side_by_side_are_the_product, the_odds_of_a_chain_are_the_convolution,
             the_odds_of_two_steps_for_one_pair_of_hands_are_the_convolution,
             the_odds_of_a_step_set_down_are_moved_by_the_break, the_odds_of_the_eight_step_network_are_exact,
             the_odds_of_the_ten_step_network_are_exact, the_odds_of_the_printed_path_are_exact)
