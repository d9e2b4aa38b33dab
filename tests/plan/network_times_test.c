#include <stdlib.h>
#include <string.h>

#include "bodkin/plan/chance.h"
#include "bodkin/plan/network.h"
#include "support/testing.h"

enum { STEPS = 8, RANKS = 8 };

// A network with all that is to come out of it. Late finish and slack follow from the rest and are checked for all alike.
typedef struct network_row {
    const char *says;
    size_t count;
    int64_t durations[STEPS];
    int64_t releases[STEPS];
    size_t rank_count;
    bk_network_rank ranks[RANKS];
    int64_t early[STEPS];
    int64_t late[STEPS];
    int64_t length;
    size_t chain_length;
    size_t chain[STEPS];
} network_row;

static const network_row rows[] = {
    {.says = "no steps", .chain_length = 0},
    {.says = "one step",
     .count = 1,
     .durations = {5},
     .early = {0},
     .late = {0},
     .length = 5,
     .chain_length = 1,
     .chain = {0}},
    {.says = "steps without an order: the longest decides",
     .count = 3,
     .durations = {5, 9, 2},
     .early = {0, 0, 0},
     .late = {4, 0, 7},
     .length = 9,
     .chain_length = 1,
     .chain = {1}},
    {.says = "a chain written backwards",
     .count = 3,
     .durations = {1, 2, 3},
     .rank_count = 2,
     .ranks = {{2, 1, 0}, {1, 0, 0}},
     .early = {5, 3, 0},
     .late = {5, 3, 0},
     .length = 6,
     .chain_length = 3,
     .chain = {2, 1, 0}},
    {.says = "of two ways the longer one decides, the other has time to spare",
     .count = 4,
     .durations = {1, 5, 2, 1},
     .rank_count = 4,
     .ranks = {{0, 1, 0}, {0, 2, 0}, {1, 3, 0}, {2, 3, 0}},
     .early = {0, 1, 1, 6},
     .late = {0, 1, 4, 6},
     .length = 7,
     .chain_length = 3,
     .chain = {0, 1, 3}},
    {.says = "a rest puts off what comes after, and makes the shorter way the longer",
     .count = 4,
     .durations = {1, 5, 2, 1},
     .rank_count = 4,
     .ranks = {{0, 1, 0}, {0, 2, 0}, {1, 3, 0}, {2, 3, 10}},
     .early = {0, 1, 1, 13},
     .late = {0, 8, 1, 13},
     .length = 14,
     .chain_length = 3,
     .chain = {0, 2, 3}},
    {.says = "a rest counts before a last step of no duration too",
     .count = 2,
     .durations = {3, 0},
     .rank_count = 1,
     .ranks = {{0, 1, 4}},
     .early = {0, 7},
     .late = {0, 7},
     .length = 7,
     .chain_length = 2,
     .chain = {0, 1}},
    {.says = "a release puts off a step, and the chain begins with it",
     .count = 3,
     .durations = {2, 3, 4},
     .releases = {0, 10, 0},
     .rank_count = 2,
     .ranks = {{0, 1, 0}, {1, 2, 0}},
     .early = {0, 10, 13},
     .late = {8, 10, 13},
     .length = 17,
     .chain_length = 2,
     .chain = {1, 2}},
    {.says = "a release that comes before what it waits for changes nothing",
     .count = 2,
     .durations = {8, 1},
     .releases = {0, 5},
     .rank_count = 1,
     .ranks = {{0, 1, 0}},
     .early = {0, 8},
     .late = {0, 8},
     .length = 9,
     .chain_length = 2,
     .chain = {0, 1}},
    {.says = "a release before the network begins counts as none",
     .count = 1,
     .durations = {4},
     .releases = {-6},
     .early = {0},
     .late = {0},
     .length = 4,
     .chain_length = 1,
     .chain = {0}},
    {.says = "several ends: those before the last one have time to spare",
     .count = 4,
     .durations = {2, 3, 6, 1},
     .rank_count = 3,
     .ranks = {{0, 1, 0}, {0, 2, 0}, {0, 3, 0}},
     .early = {0, 2, 2, 2},
     .late = {0, 5, 2, 7},
     .length = 8,
     .chain_length = 2,
     .chain = {0, 2}},
    {.says = "several beginnings",
     .count = 3,
     .durations = {2, 3, 1},
     .rank_count = 2,
     .ranks = {{0, 2, 0}, {1, 2, 0}},
     .early = {0, 0, 3},
     .late = {1, 0, 3},
     .length = 4,
     .chain_length = 2,
     .chain = {1, 2}},
    {.says = "of several chains the one with the lowest steps is told",
     .count = 6,
     .durations = {1, 1, 2, 2, 2, 1},
     .rank_count = 6,
     .ranks = {{1, 4, 0}, {0, 4, 0}, {0, 3, 0}, {3, 5, 0}, {4, 5, 0}, {0, 5, 0}},
     .early = {0, 0, 0, 1, 1, 3},
     .late = {0, 0, 2, 1, 1, 3},
     .length = 4,
     .chain_length = 3,
     .chain = {0, 3, 5}},
    {.says = "steps of no duration stand in the chain too, to the end of the network",
     .count = 4,
     .durations = {0, 3, 0, 0},
     .rank_count = 3,
     .ranks = {{0, 1, 0}, {1, 3, 0}, {3, 2, 0}},
     .early = {0, 0, 3, 3},
     .late = {0, 0, 3, 3},
     .length = 3,
     .chain_length = 4,
     .chain = {0, 1, 3, 2}},
    {.says = "nothing to do at all",
     .count = 2,
     .rank_count = 1,
     .ranks = {{1, 0, 0}},
     .early = {0, 0},
     .late = {0, 0},
     .length = 0,
     .chain_length = 2,
     .chain = {1, 0}},
    {.says = "the same order said twice, the longer rest counts",
     .count = 2,
     .durations = {2, 2},
     .rank_count = 2,
     .ranks = {{0, 1, 7}, {0, 1, 3}},
     .early = {0, 9},
     .late = {0, 9},
     .length = 11,
     .chain_length = 2,
     .chain = {0, 1}},
    {.says = "an isolated step beside a chain",
     .count = 3,
     .durations = {4, 1, 4},
     .rank_count = 1,
     .ranks = {{0, 2, 0}},
     .early = {0, 0, 4},
     .late = {0, 7, 4},
     .length = 8,
     .chain_length = 2,
     .chain = {0, 2}},
};

static void check_row(const network_row *row, const bk_network_times *times, int64_t length)
{
    ck_assert_msg(length == row->length, "%s: length %lld", row->says, (long long)length);
    for (size_t i = 0; i < row->count; i++) {
        ck_assert_msg(times[i].early_start == row->early[i], "%s: early start of %zu is %lld", row->says, i,
                      (long long)times[i].early_start);
        ck_assert_msg(times[i].late_start == row->late[i], "%s: late start of %zu is %lld", row->says, i,
                      (long long)times[i].late_start);
        ck_assert_int_eq(times[i].early_finish, row->early[i] + row->durations[i]);
        ck_assert_int_eq(times[i].late_finish, row->late[i] + row->durations[i]);
        ck_assert_int_eq(times[i].slack, row->late[i] - row->early[i]);
    }
}

START_TEST(the_times_of_a_network)
{
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        bk_network_times times[STEPS];
        int64_t length = -1;
        bk_network_times_reckon(rows[i].count, rows[i].durations, rows[i].releases, rows[i].ranks,
                                rows[i].rank_count, times, &length);
        check_row(&rows[i], times, length);
    }
}
END_TEST

START_TEST(without_releases_all_can_begin_at_once)
{
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        static const int64_t at_once[STEPS] = {0};
        bk_network_times times[STEPS];
        int64_t length = -1;
        if (memcmp(rows[i].releases, at_once, sizeof at_once) != 0)
            continue;
        bk_network_times_reckon(rows[i].count, rows[i].durations, NULL, rows[i].ranks, rows[i].rank_count,
                                times, &length);
        check_row(&rows[i], times, length);
    }
}
END_TEST

START_TEST(the_chain_leads_from_a_beginning_to_an_end)
{
    for (size_t i = 0; i < sizeof rows / sizeof rows[0]; i++) {
        bk_arena *arena = bk_arena_new();
        const network_row *row = &rows[i];
        bk_network_times times[STEPS];
        int64_t length;
        size_t *chain;
        bk_network_times_reckon(row->count, row->durations, row->releases, row->ranks, row->rank_count, times,
                                &length);
        size_t found = bk_network_chain(row->count, times, row->ranks, row->rank_count, arena, &chain);
        ck_assert_msg(found == row->chain_length, "%s: %zu steps", row->says, found);
        for (size_t place = 0; place < found; place++)
            ck_assert_msg(chain[place] == row->chain[place], "%s: place %zu is %zu", row->says, place,
                          chain[place]);
        bk_arena_free(arena);
    }
}
END_TEST

// ---------------------------------------------------------------------------------------------------- made up by chance

enum { ROUNDS = 2000, MOST_STEPS = 12, MOST_RANKS = 30, SEED = 20270301 };

typedef struct network_trial {
    bk_chance chance;
    size_t count, rank_count;
    int64_t durations[MOST_STEPS], releases[MOST_STEPS];
    bk_network_rank ranks[MOST_RANKS];
    bk_network_times times[MOST_STEPS];
    int64_t length;
} network_trial;

static uint32_t drawn(network_trial *trial, size_t below)
{
    return bk_chance_below(&trial->chance, (uint32_t)below);
}

// Free of circles: every link leads to a step of a higher place in an order drawn first.
static void make_network(network_trial *trial)
{
    size_t order[MOST_STEPS];
    trial->count = 2 + drawn(trial, MOST_STEPS - 1);
    for (size_t i = 0; i < trial->count; i++) {
        size_t other = drawn(trial, i + 1);
        order[i] = order[other];
        order[other] = i;
        trial->durations[i] = drawn(trial, 6);
        trial->releases[i] = drawn(trial, 4) == 0 ? drawn(trial, 20) : 0;
    }
    trial->rank_count = drawn(trial, MOST_RANKS + 1);
    for (size_t i = 0; i < trial->rank_count; i++) {
        size_t later = 1 + drawn(trial, trial->count - 1);
        size_t earlier = drawn(trial, later);
        trial->ranks[i] =
            (bk_network_rank){order[earlier], order[later], drawn(trial, 3) == 0 ? drawn(trial, 5) : 0};
    }
}

// The earliest finish by asking each step again and again until nothing changes, with one step put off.
static int64_t length_with(const network_trial *trial, size_t step, int64_t put_off_to)
{
    int64_t begins[MOST_STEPS], length = 0;
    for (size_t i = 0; i < trial->count; i++)
        begins[i] = trial->releases[i];
    if (put_off_to > begins[step])
        begins[step] = put_off_to;
    for (bool changed = true; changed;) {
        changed = false;
        for (size_t i = 0; i < trial->rank_count; i++) {
            const bk_network_rank *rank = &trial->ranks[i];
            int64_t least = begins[rank->from] + trial->durations[rank->from] + rank->rest;
            changed = changed || least > begins[rank->to];
            begins[rank->to] = least > begins[rank->to] ? least : begins[rank->to];
        }
    }
    for (size_t i = 0; i < trial->count; i++)
        if (begins[i] + trial->durations[i] > length)
            length = begins[i] + trial->durations[i];
    return length;
}

// Each step of it must be held by the one before, the first by its release or the beginning, and the last decide the finish.
static void check_chain(const network_trial *trial)
{
    bk_arena *arena = bk_arena_new();
    size_t *chain;
    size_t found =
        bk_network_chain(trial->count, trial->times, trial->ranks, trial->rank_count, arena, &chain);
    ck_assert_uint_ge(found, 1);
    ck_assert_int_eq(trial->times[chain[0]].early_start, trial->releases[chain[0]]);
    ck_assert_int_eq(trial->times[chain[found - 1]].early_finish, trial->length);
    for (size_t place = 0; place < found; place++)
        ck_assert_int_eq(trial->times[chain[place]].slack, 0);
    for (size_t place = 1; place < found; place++) {
        bool bound = false;
        for (size_t i = 0; i < trial->rank_count; i++) {
            const bk_network_rank *rank = &trial->ranks[i];
            bound = bound || (rank->from == chain[place - 1] && rank->to == chain[place] &&
                              trial->times[rank->from].early_finish + rank->rest ==
                                  trial->times[rank->to].early_start);
        }
        ck_assert(bound);
    }
    bk_arena_free(arena);
}

START_TEST(a_step_put_off_by_its_spare_time_does_not_move_the_finish_and_by_more_does)
{
    static network_trial trial;
    trial.chance = bk_chance_from(SEED);
    for (int round = 0; round < ROUNDS; round++) {
        make_network(&trial);
        bk_network_times_reckon(trial.count, trial.durations, trial.releases, trial.ranks, trial.rank_count,
                                trial.times, &trial.length);
        for (size_t i = 0; i < trial.count; i++) {
            ck_assert_int_ge(trial.times[i].slack, 0);
            ck_assert_int_eq(length_with(&trial, i, trial.times[i].late_start), trial.length);
            ck_assert_int_eq(length_with(&trial, i, trial.times[i].late_start + 1), trial.length + 1);
        }
        check_chain(&trial);
    }
}
END_TEST

BK_TEST_MAIN("network_times", the_times_of_a_network, without_releases_all_can_begin_at_once,
             the_chain_leads_from_a_beginning_to_an_end,
             a_step_put_off_by_its_spare_time_does_not_move_the_finish_and_by_more_does)
