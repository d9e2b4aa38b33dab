#include <math.h>
#include <string.h>

#include "bodkin/plan/network.h"
#include "bodkin/plan/spread.h"
#include "support/testing.h"

// Networks with figures in print. Beside each figure stands whether it was seen in the published copy, seen second-hand (in a
// restatement of it), recalled from memory, or derived here from what was. Mean, variance and z after Malcolm, Roseboom, Clark
// and Fazar 1959.

enum { STEPS = 10, RANKS = 16, QUESTIONS = 2, NOT_TOLD = -1 };

typedef struct printed_step {
    char name;
    bk_estimate estimate;
    const char *after;
    int64_t mean;
    int64_t early_start, early_finish, late_start, late_finish; // NOT_TOLD where print has none
    int64_t slack;
} printed_step;

typedef struct printed_chance {
    int64_t within;
    double chance;     // to four digits, of the z that is not rounded
    double from_table; // read from a table at a z of two decimals, as it is in print; 0: none
} printed_chance;

typedef struct printed_network {
    const char *source;
    size_t count;
    printed_step steps[STEPS];
    int64_t length;
    const char *critical;
    double variance; // of the critical steps together
    size_t chance_count;
    printed_chance chances[QUESTIONS];
} printed_network;

#define NO_TIMES NOT_TOLD, NOT_TOLD, NOT_TOLD, NOT_TOLD

static const printed_network networks[] = {
    {.source = "Heizer & Render, Operations Management, the Milwaukee Paper network",
     .count = 8,
     // Estimates from memory, recomputed; means (the durations), order and all four times seen second-hand; slack derived.
     .steps = {{'A', {1, 2, 3}, "", 2, 0, 2, 0, 2, 0},
               {'B', {2, 3, 4}, "", 3, 0, 3, 1, 4, 1},
               {'C', {1, 2, 3}, "A", 2, 2, 4, 2, 4, 0},
               {'D', {2, 4, 6}, "B", 4, 3, 7, 4, 8, 1},
               {'E', {1, 4, 7}, "C", 4, 4, 8, 4, 8, 0},
               {'F', {1, 2, 9}, "C", 3, 4, 7, 10, 13, 6},
               {'G', {3, 4, 11}, "DE", 5, 8, 13, 8, 13, 0},
               {'H', {1, 2, 3}, "FG", 2, 13, 15, 13, 15, 0}},
     .length = 15,         // seen second-hand
     .critical = "ACEGH",  // seen second-hand
     .variance = 28.0 / 9, // from memory, recomputed
     .chance_count = 1,
     .chances = {{16, 0.7146, 0.7157}}}, // recomputed; printed .7157, from memory
    {.source = "a ten-activity network",
     .count = 10,
     // Estimates, order, critical path and length seen; slack derived.
     .steps = {{'A', {5, 6, 7}, "", 6, NO_TIMES, 4},
               {'B', {1, 3, 5}, "", 3, NO_TIMES, 3},
               {'C', {1, 4, 7}, "", 4, NO_TIMES, 0},
               {'D', {1, 2, 3}, "A", 2, NO_TIMES, 4},
               {'E', {1, 2, 9}, "B", 3, NO_TIMES, 3},
               {'F', {1, 5, 9}, "C", 5, NO_TIMES, 0},
               {'G', {2, 2, 8}, "C", 3, NO_TIMES, 7},
               {'H', {4, 4, 10}, "EF", 5, NO_TIMES, 0},
               {'I', {2, 5, 8}, "D", 5, NO_TIMES, 4},
               {'J', {2, 2, 8}, "HG", 3, NO_TIMES, 0}},
     .length = 17,
     .critical = "CFHJ",
     .variance = 43.0 / 9, // derived
     .chance_count = 2,
     .chances = {{19, 0.8199, 0}, {20, 0.9150, 0}}}, // derived
    {.source = "Taylor, Introduction to Management Science: the path 1-3-5-7",
     .count = 4,
     // All seen; the variance derived.
     .steps = {{'1', {5, 8, 17}, "", 9, NO_TIMES, 0},
               {'3', {3, 5, 7}, "1", 5, NO_TIMES, 0},
               {'5', {4, 6, 8}, "3", 6, NO_TIMES, 0},
               {'7', {3, 4, 5}, "5", 4, NO_TIMES, 0}},
     .length = 24,
     .critical = "1357",
     .variance = 5,
     .chance_count = 1,
     .chances = {{28, 0.9632, 0.9633}}}, // seen: .9633, that of a z rounded to 1.79; .9632 derived
};

typedef struct reckoned_network {
    bk_network_times times[STEPS];
    int64_t length;
    size_t chain_length;
    size_t *chain;
} reckoned_network;

static size_t step_named(const printed_network *network, char name)
{
    for (size_t i = 0; i < network->count; i++)
        if (network->steps[i].name == name)
            return i;
    ck_abort_msg("%s: no step %c", network->source, name);
    return 0;
}

static void reckon(const printed_network *network, reckoned_network *reckoned, bk_arena *arena)
{
    int64_t durations[STEPS];
    bk_network_rank ranks[RANKS];
    size_t rank_count = 0;
    for (size_t i = 0; i < network->count; i++) {
        durations[i] = network->steps[i].mean;
        for (const char *name = network->steps[i].after; *name != '\0'; name++)
            ranks[rank_count++] = (bk_network_rank){step_named(network, *name), i, 0};
    }
    bk_network_times_reckon(network->count, durations, NULL, ranks, rank_count, reckoned->times,
                            &reckoned->length);
    reckoned->chain_length =
        bk_network_chain(network->count, reckoned->times, ranks, rank_count, arena, &reckoned->chain);
}

static void check_time(const printed_network *network, size_t step, const char *which, int64_t got,
                       int64_t printed)
{
    ck_assert_msg(printed == NOT_TOLD || got == printed, "%s: %s of %c is %lld, printed %lld",
                  network->source, which, network->steps[step].name, (long long)got, (long long)printed);
}

static void check_times(const printed_network *network, const bk_network_times *times)
{
    for (size_t i = 0; i < network->count; i++) {
        const printed_step *step = &network->steps[i];
        check_time(network, i, "early start", times[i].early_start, step->early_start);
        check_time(network, i, "early finish", times[i].early_finish, step->early_finish);
        check_time(network, i, "late start", times[i].late_start, step->late_start);
        check_time(network, i, "late finish", times[i].late_finish, step->late_finish);
        check_time(network, i, "slack", times[i].slack, step->slack);
    }
}

START_TEST(every_time_and_the_length_are_the_printed_ones)
{
    for (size_t i = 0; i < sizeof networks / sizeof networks[0]; i++) {
        bk_arena *arena = bk_arena_new();
        reckoned_network reckoned;
        reckon(&networks[i], &reckoned, arena);
        check_times(&networks[i], reckoned.times);
        ck_assert_msg(reckoned.length == networks[i].length, "%s: length %lld", networks[i].source,
                      (long long)reckoned.length);
        bk_arena_free(arena);
    }
}
END_TEST

START_TEST(the_chain_is_the_printed_critical_path)
{
    for (size_t i = 0; i < sizeof networks / sizeof networks[0]; i++) {
        bk_arena *arena = bk_arena_new();
        reckoned_network reckoned;
        char chain[STEPS + 1] = "";
        reckon(&networks[i], &reckoned, arena);
        for (size_t place = 0; place < reckoned.chain_length; place++)
            chain[place] = networks[i].steps[reckoned.chain[place]].name;
        ck_assert_msg(strcmp(chain, networks[i].critical) == 0, "%s: %s", networks[i].source, chain);
        bk_arena_free(arena);
    }
}
END_TEST

// ---------------------------------------------------------------------------------------------------------- chances

START_TEST(every_mean_is_the_printed_one)
{
    for (size_t i = 0; i < sizeof networks / sizeof networks[0]; i++)
        for (size_t step = 0; step < networks[i].count; step++) {
            double mean = bk_estimate_mean(networks[i].steps[step].estimate);
            ck_assert_msg(fabs(mean - (double)networks[i].steps[step].mean) < 1e-12, "%s: %c has %g",
                          networks[i].source, networks[i].steps[step].name, mean);
        }
}
END_TEST

// Of the steps of the chain, as it was found.
static double chain_variance(const printed_network *network)
{
    bk_arena *arena = bk_arena_new();
    reckoned_network reckoned;
    double variance = 0;
    reckon(network, &reckoned, arena);
    for (size_t place = 0; place < reckoned.chain_length; place++)
        variance += bk_estimate_variance(network->steps[reckoned.chain[place]].estimate);
    bk_arena_free(arena);
    return variance;
}

START_TEST(the_variance_of_the_chain_is_the_printed_one)
{
    for (size_t i = 0; i < sizeof networks / sizeof networks[0]; i++) {
        double variance = chain_variance(&networks[i]);
        ck_assert_msg(fabs(variance - networks[i].variance) < 1e-12, "%s: %.15g", networks[i].source,
                      variance);
    }
}
END_TEST

static void check_chance(const printed_network *network, const printed_chance *printed)
{
    enum { HUNDRED = 100 };
    const double half_a_digit = 0.00005;
    double z = (double)(printed->within - network->length) / sqrt(chain_variance(network));
    double chance = bk_normal_below(z);
    ck_assert_msg(fabs(chance - printed->chance) <= half_a_digit, "%s: within %lld: %.6f", network->source,
                  (long long)printed->within, chance);
    double from_table = bk_normal_below(floor(z * HUNDRED + 0.5) / HUNDRED);
    ck_assert_msg(printed->from_table == 0 || fabs(from_table - printed->from_table) <= half_a_digit,
                  "%s: within %lld from a table: %.6f", network->source, (long long)printed->within,
                  from_table);
}

START_TEST(every_chance_is_the_printed_one)
{
    for (size_t i = 0; i < sizeof networks / sizeof networks[0]; i++)
        for (size_t question = 0; question < networks[i].chance_count; question++)
            check_chance(&networks[i], &networks[i].chances[question]);
}
END_TEST

BK_TEST_MAIN("published_networks", every_time_and_the_length_are_the_printed_ones,
             the_chain_is_the_printed_critical_path, every_mean_is_the_printed_one,
             the_variance_of_the_chain_is_the_printed_one, every_chance_is_the_printed_one)
