#include "bodkin/plan/spread.h"

#include <math.h>
#include <stdlib.h>

#include "support/testing.h"

// A share as bk_spread_at takes it.
static uint32_t share_of(double part)
{
    return (uint32_t)(part * 4294967296.0);
}

// ------------------------------------------------------------------------------------------------------ estimates

START_TEST(an_estimate_is_completed_and_put_in_order)
{
    static const struct {
        const char *says;
        int64_t quickest, usual, longest;
        bk_estimate made;
    } rows[] = {
        {"what is said stays", 20, 30, 50, {20, 30, 50}},
        {"the stated spread: six tenths and seven quarters", INT64_MIN, 100, INT64_MIN, {60, 100, 175}},
        {"rounded half up", INT64_MIN, 30, INT64_MIN, {18, 30, 53}},
        {"only the longest is missing", 25, 30, INT64_MIN, {25, 30, 53}},
        {"only the quickest is missing", INT64_MIN, 30, 40, {18, 30, 40}},
        {"a quickest above the usual comes down to it", 40, 30, 50, {30, 30, 50}},
        {"a longest below the usual goes up to it", 20, 30, 25, {20, 30, 30}},
        {"no minutes have no spread", INT64_MIN, 0, INT64_MIN, {0, 0, 0}},
        {"a very long one does not overflow",
         INT64_MIN,
         4000000000000000,
         INT64_MIN,
         {2400000000000000, 4000000000000000, 7000000000000000}},
    };
    for (size_t row = 0; row < sizeof rows / sizeof rows[0]; row++) {
        bk_estimate made = bk_estimate_complete(rows[row].quickest, rows[row].usual, rows[row].longest);
        ck_assert_msg(made.quickest == rows[row].made.quickest && made.usual == rows[row].made.usual &&
                          made.longest == rows[row].made.longest,
                      "%s: %lld %lld %lld", rows[row].says, (long long)made.quickest, (long long)made.usual,
                      (long long)made.longest);
    }
}
END_TEST

// Malcolm, Roseboom, Clark, Fazar 1959; the figures are those of activities of two textbook networks.
START_TEST(mean_and_variance_are_those_of_the_three_estimate_method)
{
    bk_estimate path[] = {
        {5, 8, 17}, {3, 5, 7}, {4, 6, 8}, {3, 4, 5}}; // Taylor, Introduction to Management Science
    double mean = 0, variance = 0;
    for (size_t i = 0; i < sizeof path / sizeof path[0]; i++) {
        mean += bk_estimate_mean(path[i]);
        variance += bk_estimate_variance(path[i]);
    }
    ck_assert_double_eq_tol(mean, 24, 1e-12);
    ck_assert_double_eq_tol(variance, 5, 1e-12);
    ck_assert_double_eq_tol(bk_estimate_mean((bk_estimate){3, 4, 11}), 5,
                            1e-12); // Heizer & Render, activity G
    ck_assert_double_eq_tol(bk_estimate_variance((bk_estimate){3, 4, 11}), 16.0 / 9, 1e-12);
}
END_TEST

// --------------------------------------------------------------------------------------------------------- normal

START_TEST(the_normal_distribution_is_that_of_the_printed_tables)
{
    const struct {
        double z, below, error;
    } rows[] = {
        {0, 0.5, 1e-15},
        {1, 0.8413447461, 1e-10}, // these five from memory
        {-1, 0.1586552539, 1e-10},
        {1.96, 0.9750021049, 1e-10},
        {2, 0.9772498681, 1e-10},
        {-3, 0.0013498980, 1e-10},
        {1 / sqrt(28.0 / 9), 0.7146, 5e-5}, // Heizer & Render: P(T <= 16)
        {2 / sqrt(43.0 / 9), 0.8199, 5e-5}, // the ten-activity network: P(T <= 19)
        {3 / sqrt(43.0 / 9), 0.9150, 5e-5}, // P(T <= 20)
        {1.79, 0.9633, 5e-5},               // Taylor: P(T <= 28), z = 4/sqrt(5) rounded as printed
        {40, 1, 0},
        {-40, 0, 0},
    };
    for (size_t row = 0; row < sizeof rows / sizeof rows[0]; row++)
        ck_assert_msg(fabs(bk_normal_below(rows[row].z) - rows[row].below) <= rows[row].error, "%g: %.12f",
                      rows[row].z, bk_normal_below(rows[row].z));
}
END_TEST

START_TEST(the_normal_distribution_agrees_with_the_c_library)
{
    for (int i = -9000; i <= 9000; i++) {
        double z = i / 1000.0;
        ck_assert_double_eq_tol(bk_normal_below(z), erfc(-z / sqrt(2)) / 2, 1e-12);
    }
    ck_assert(isnan(bk_normal_below(NAN)));
}
END_TEST

// --------------------------------------------------------------------------------------------------------- spread

// Whole parameters: the share below x is a sum of binomial chances, I_x(a, b) = sum over j >= a of
// C(5, j) x^j (1 - x)^(5 - j), here as fractions worked by hand.
START_TEST(the_minutes_at_a_share_are_those_of_the_binomial_sums)
{
    bk_arena *arena = bk_arena_new();
    enum { WIDTH = 1 << 20 };
    static const struct {
        const char *says;
        int usual; // quarters of the width
        double part, share;
    } rows[] = {
        {"beta(1, 5) at 1/2: 1 - (1/2)^5", 0, 0.5, 31.0 / 32},
        {"beta(1, 5) at 1/4", 0, 0.25, 781.0 / 1024},
        {"beta(2, 4) at 1/2", 1, 0.5, 26.0 / 32},
        {"beta(2, 4) at 1/4", 1, 0.25, 376.0 / 1024},
        {"beta(2, 4) at 3/4", 1, 0.75, 1008.0 / 1024},
        {"beta(3, 3) at 1/2", 2, 0.5, 16.0 / 32},
        {"beta(3, 3) at 1/4", 2, 0.25, 106.0 / 1024},
        {"beta(3, 3) at 3/4", 2, 0.75, 918.0 / 1024},
        {"beta(4, 2) at 1/4", 3, 0.25, 16.0 / 1024},
        {"beta(5, 1) at 1/2: (1/2)^5", 4, 0.5, 1.0 / 32},
        {"beta(5, 1) at 1/4", 4, 0.25, 1.0 / 1024},
        {"beta(1, 5) at 3/4", 0, 0.75, 1023.0 / 1024},
    };
    for (size_t row = 0; row < sizeof rows / sizeof rows[0]; row++) {
        bk_estimate estimate = {0, rows[row].usual * (int64_t)(WIDTH / 4), WIDTH};
        double part = (double)bk_spread_at(bk_spread_new(estimate, arena), share_of(rows[row].share)) / WIDTH;
        ck_assert_msg(fabs(part - rows[row].part) <= 2e-5, "%s: %.6f", rows[row].says, part);
    }
    bk_arena_free(arena);
}
END_TEST

// The density integrated over even steps after x = y^2 (3 - 2y), which takes the roots at the ends away; with the powers of the
// C library. Writes x and the share below it at the end of each step.
static void integrate(double alpha, int steps, double *parts, double *shares)
{
    double below = 0;
    for (int i = 0; i < steps; i++) {
        double y = (i + 0.5) / steps, x = y * y * (3 - 2 * y), next = (i + 1.0) / steps;
        below += pow(x, alpha - 1) * pow(1 - x, 5 - alpha) * 6 * y * (1 - y);
        parts[i] = next * next * (3 - 2 * next);
        shares[i] = below;
    }
    for (int i = 0; i < steps; i++)
        shares[i] /= below;
}

START_TEST(the_minutes_at_a_share_are_right_for_broken_parameters_too)
{
    static const double alphas[] = {1.1, 1.391304, 1.9, 2.5, 3.3, 4.6, 4.97};
    enum { WIDTH = 1000000, STEPS = 2000 };
    static double parts[STEPS], shares[STEPS];
    bk_arena *arena = bk_arena_new();
    for (size_t row = 0; row < sizeof alphas / sizeof alphas[0]; row++) {
        bk_estimate estimate = {0, (int64_t)((alphas[row] - 1) / 4 * WIDTH + 0.5), WIDTH};
        const bk_spread *spread = bk_spread_new(estimate, arena);
        integrate(alphas[row], STEPS, parts, shares);
        for (int i = 0; i < STEPS; i++) {
            if (shares[i] < 1e-4 || shares[i] > 1 - 1e-4)
                continue;
            double part = (double)bk_spread_at(spread, share_of(shares[i])) / WIDTH;
            ck_assert_msg(fabs(part - parts[i]) < 2e-5, "alpha %g, share %.6f: %.6f, not %.6f", alphas[row],
                          shares[i], part, parts[i]);
        }
    }
    bk_arena_free(arena);
}
END_TEST

// Beta-PERT: mean (a + 4m + b)/6, variance (mean - a)(b - mean)/7.
START_TEST(mean_and_variance_of_the_table_are_exact)
{
    bk_arena *arena = bk_arena_new();
    static const bk_estimate estimates[] = {{0, 0, 100000},          {0, 25000, 100000}, {0, 100000, 100000},
                                            {60000, 100000, 175000}, {7, 21000, 91234},  {500, 900, 90000},
                                            {80000, 199000, 200000}};
    enum { DRAWS = 1 << 20 };
    for (size_t row = 0; row < sizeof estimates / sizeof estimates[0]; row++) {
        bk_estimate estimate = estimates[row];
        const bk_spread *spread = bk_spread_new(estimate, arena);
        double sum = 0, squares = 0, expected = bk_estimate_mean(estimate);
        for (int i = 0; i < DRAWS; i++) {
            double off = bk_spread_at(spread, share_of((i + 0.5) / DRAWS)) - expected;
            sum += off;
            squares += off * off;
        }
        double width = (double)(estimate.longest - estimate.quickest);
        double variance = (expected - (double)estimate.quickest) * ((double)estimate.longest - expected) / 7;
        ck_assert_msg(fabs(sum / DRAWS) < 1e-6 * width, "row %zu: mean off by %g", row, sum / DRAWS);
        ck_assert_msg(fabs(squares / DRAWS / variance - 1) < 2e-5, "row %zu: variance %g of %g", row,
                      squares / DRAWS, variance);
    }
    bk_arena_free(arena);
}
END_TEST

START_TEST(minutes_grow_with_the_share_from_the_quickest_to_the_longest)
{
    bk_arena *arena = bk_arena_new();
    for (int usual = 10; usual <= 5010; usual += 500) {
        const bk_spread *spread = bk_spread_new((bk_estimate){10, usual, 5010}, arena);
        ck_assert_int_eq(bk_spread_at(spread, 0), 10);
        ck_assert_int_eq(bk_spread_at(spread, UINT32_MAX), 5010);
        int32_t before = 10;
        for (uint64_t share = 0; share <= UINT32_MAX; share += 65521) {
            int32_t minutes = bk_spread_at(spread, (uint32_t)share);
            ck_assert_int_ge(minutes, before);
            before = minutes;
        }
    }
    bk_arena_free(arena);
}
END_TEST

START_TEST(a_spread_and_its_mirror_image_agree)
{
    bk_arena *arena = bk_arena_new();
    const bk_spread *left = bk_spread_new((bk_estimate){0, 200, 1001}, arena);
    const bk_spread *right = bk_spread_new((bk_estimate){0, 801, 1001}, arena);
    for (uint64_t share = 0; share <= UINT32_MAX; share += 999983)
        ck_assert_int_le(
            abs(1001 - bk_spread_at(left, (uint32_t)share) - bk_spread_at(right, ~(uint32_t)share)),
            1); // halves are rounded up on both
    bk_arena_free(arena);
}
END_TEST

START_TEST(without_width_it_is_a_point)
{
    bk_arena *arena = bk_arena_new();
    const bk_spread *spread = bk_spread_new((bk_estimate){45, 45, 45}, arena);
    ck_assert_int_eq(bk_spread_at(spread, 0), 45);
    ck_assert_int_eq(bk_spread_at(spread, 1U << 31), 45);
    ck_assert_int_eq(bk_spread_at(spread, UINT32_MAX), 45);
    bk_arena_free(arena);
}
END_TEST

START_TEST(more_minutes_than_a_schedule_can_hold_are_cut_off)
{
    bk_arena *arena = bk_arena_new();
    const bk_spread *spread = bk_spread_new((bk_estimate){0, INT64_MAX / 2, INT64_MAX}, arena);
    ck_assert_int_eq(bk_spread_at(spread, UINT32_MAX), INT32_MAX);
    ck_assert_int_gt(bk_spread_at(spread, 1U << 31), INT32_MAX / 2);
    bk_arena_free(arena);
}
END_TEST

// The same digits from every compiler and C library: a plan rests on them. Fowler, Noll, Vo (FNV-1a) over many draws.
START_TEST(the_table_is_the_same_on_every_machine)
{
    bk_arena *arena = bk_arena_new();
    uint64_t hash = 0xCBF29CE484222325U;
    for (int usual = 0; usual <= 1000000; usual += 12345) {
        const bk_spread *spread = bk_spread_new((bk_estimate){0, usual, 1000000}, arena);
        for (uint64_t share = 0; share <= UINT32_MAX; share += 4999999)
            hash = (hash ^ (uint32_t)bk_spread_at(spread, (uint32_t)share)) * 0x100000001B3U;
    }
    ck_assert_uint_eq(hash, 13263119427727463629U);
    bk_arena_free(arena);
}
END_TEST

BK_TEST_MAIN("spread", an_estimate_is_completed_and_put_in_order,
             mean_and_variance_are_those_of_the_three_estimate_method,
             the_normal_distribution_is_that_of_the_printed_tables,
             the_normal_distribution_agrees_with_the_c_library,
             the_minutes_at_a_share_are_those_of_the_binomial_sums,
             the_minutes_at_a_share_are_right_for_broken_parameters_too,
             mean_and_variance_of_the_table_are_exact,
             minutes_grow_with_the_share_from_the_quickest_to_the_longest,
             a_spread_and_its_mirror_image_agree, without_width_it_is_a_point,
             more_minutes_than_a_schedule_can_hold_are_cut_off, the_table_is_the_same_on_every_machine)
