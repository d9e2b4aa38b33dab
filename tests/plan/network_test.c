#include "bodkin/plan/network.h"

#include <stdlib.h>

#include "support/testing.h"

enum { LINKS = 10, MANY = 1000000 };

static const struct {
    const char *says;
    size_t count;
    size_t link_count;
    bk_network_link links[LINKS];
    size_t length; // 0: no circle
    size_t circle[LINKS];
} rows[] = {
    {"no steps make no circle", 0, 0, {{0}}, 0, {0}},
    {"steps without an order make none", 3, 0, {{0}}, 0, {0}},
    {"a chain makes none", 3, 2, {{0, 1}, {1, 2}}, 0, {0}},
    {"two ways to the same step make none", 4, 4, {{0, 1}, {0, 2}, {1, 3}, {2, 3}}, 0, {0}},
    {"the same order said twice makes none", 2, 2, {{0, 1}, {0, 1}}, 0, {0}},
    {"a chain written backwards makes none", 4, 3, {{3, 2}, {2, 1}, {1, 0}}, 0, {0}},
    {"a step after itself is a circle of one", 3, 2, {{0, 1}, {2, 2}}, 1, {2}},
    {"two steps after each other", 2, 2, {{1, 0}, {0, 1}}, 2, {0, 1}},
    {"each follows the one before it", 3, 3, {{0, 2}, {2, 1}, {1, 0}}, 3, {0, 2, 1}},
    {"it begins with its lowest index, though the way in meets it elsewhere",
     5,
     5,
     {{0, 4}, {4, 1}, {1, 3}, {3, 2}, {2, 4}},
     4,
     {1, 3, 2, 4}},
    {"what leads into it and out of it is left away",
     6,
     6,
     {{0, 1}, {1, 2}, {2, 3}, {3, 1}, {3, 4}, {4, 5}},
     3,
     {1, 2, 3}},
    {"a circle that no lower step leads to is found", 4, 3, {{0, 1}, {2, 3}, {3, 2}}, 2, {2, 3}},
    {"of two circles the one met first from the lowest step is told",
     6,
     5,
     {{4, 5}, {5, 4}, {1, 2}, {2, 1}, {0, 3}},
     2,
     {1, 2}},
    {"a circle behind a branch that leads nowhere is found",
     5,
     5,
     {{0, 1}, {1, 2}, {0, 3}, {3, 4}, {4, 0}},
     3,
     {0, 3, 4}},
};

static void check_row(size_t row, bk_arena *arena)
{
    size_t *circle = NULL, length = 0;
    bool found =
        bk_network_circle(rows[row].count, rows[row].links, rows[row].link_count, arena, &circle, &length);
    ck_assert_msg(found == (rows[row].length > 0), "%s: found %d", rows[row].says, found);
    ck_assert_msg(length == rows[row].length, "%s: length %zu", rows[row].says, length);
    for (size_t i = 0; i < length; i++)
        ck_assert_msg(circle[i] == rows[row].circle[i], "%s: place %zu is %zu", rows[row].says, i, circle[i]);
}

START_TEST(a_circle_is_told_in_order_from_its_lowest_step)
{
    bk_arena *arena = bk_arena_new();
    for (size_t row = 0; row < sizeof rows / sizeof rows[0]; row++)
        check_row(row, arena);
    bk_arena_free(arena);
}
END_TEST

// Step i comes before step i + 1; the last link leads from the last step to `to`.
static bool long_chain(size_t to, size_t links, size_t *length)
{
    bk_arena *arena = bk_arena_new();
    bk_network_link *chain = bk_alloc(MANY * sizeof *chain);
    for (size_t i = 0; i < MANY; i++)
        chain[i] = (bk_network_link){i, i + 1};
    chain[MANY - 1].to = to;
    size_t *circle;
    bool found = bk_network_circle(MANY, chain, links, arena, &circle, length);
    ck_assert(!found || circle[0] == to);
    ck_assert(!found || circle[*length - 1] == MANY - 1);
    free(chain);
    bk_arena_free(arena);
    return found;
}

START_TEST(a_chain_of_a_million_steps_is_walked_to_its_end)
{
    size_t length;
    ck_assert(!long_chain(0, MANY - 1, &length));
    ck_assert(long_chain(0, MANY, &length));
    ck_assert_uint_eq(length, MANY);
    ck_assert(long_chain(MANY / 2, MANY, &length));
    ck_assert_uint_eq(length, MANY / 2);
}
END_TEST

BK_TEST_MAIN("network", a_circle_is_told_in_order_from_its_lowest_step,
             a_chain_of_a_million_steps_is_walked_to_its_end)
