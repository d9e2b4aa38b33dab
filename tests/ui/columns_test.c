#include "bodkin/ui/columns.h"
#include "support/testing.h"

static const bk_list_column fixed = {.head = "No", .least = 3, .most = 3, .gap = 1};
static const bk_list_column elastic = {.head = "Title", .least = 4, .most = 9, .gap = 2};
static const bk_list_column filling = {.head = "Waits", .least = 5, .most = 20, .gap = 2, .fills = true};

static const bk_list_column *const three[] = {&fixed, &elastic, &filling};

START_TEST(columns_grow_evenly_to_what_they_want)
{
    const size_t wanted[] = {3, 7, 8};
    size_t widths[3];
    bk_columns_share(three, wanted, 3, 18, widths);
    ck_assert_uint_eq(widths[0], 3);
    ck_assert_uint_eq(widths[1], 6);
    ck_assert_uint_eq(widths[2], 6);
}
END_TEST

START_TEST(no_column_grows_beyond_its_most_but_the_one_that_fills)
{
    const size_t wanted[] = {30, 30, 6};
    size_t widths[3];
    bk_columns_share(three, wanted, 3, 80, widths);
    ck_assert_uint_eq(widths[0], 3);
    ck_assert_uint_eq(widths[1], 9);
    ck_assert_uint_eq(widths[2], 80 - 3 - 9 - 3);
}
END_TEST

START_TEST(columns_that_do_not_fit_have_their_least)
{
    const size_t wanted[] = {3, 9, 9};
    size_t widths[3];
    bk_columns_share(three, wanted, 3, 2, widths);
    ck_assert_uint_eq(widths[0] + widths[1] + widths[2], 12);
}
END_TEST

BK_TEST_MAIN("columns", columns_grow_evenly_to_what_they_want,
             no_column_grows_beyond_its_most_but_the_one_that_fills, columns_that_do_not_fit_have_their_least)
