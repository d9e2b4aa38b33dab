#include "bodkin/base/proportion.h"

#include "support/testing.h"

typedef struct share {
    int64_t amount, part, whole, is;
} share;

// Worked by hand; the large ones by powers of two.
static const share shares[] = {
    {1000, 4, 10, 400},
    {100, 1, 3, 33},
    {200, 1, 3, 67},
    {1, 1, 2, 1}, // a half goes up
    {0, 7, 9, 0},
    {9, 0, 9, 0},
    {890, 2500000, 1000000, 2225},
    {INT64_C(1) << 60, INT64_C(1) << 60, INT64_C(1) << 60, INT64_C(1) << 60},
    {INT64_C(1) << 60, (INT64_C(1) << 61) + 1, INT64_C(1) << 61, (INT64_C(1) << 60) + 1},
    {INT64_MAX, INT64_MAX, INT64_MAX, INT64_MAX},
    {INT64_MAX - 1, INT64_MAX - 1, INT64_MAX, INT64_MAX - 2},
    {INT64_MAX, 2, 1, INT64_MAX},
    {INT64_C(1) << 40, INT64_C(1) << 40, 3, INT64_MAX},
};

START_TEST(a_part_of_an_amount_is_exact_and_rounded_half_up)
{
    for (size_t i = 0; i < sizeof shares / sizeof *shares; i++)
        ck_assert_int_eq(bk_in_proportion(shares[i].amount, shares[i].part, shares[i].whole), shares[i].is);
}
END_TEST

START_TEST(every_small_share_is_that_of_ordinary_arithmetic)
{
    for (int64_t amount = 0; amount < 40; amount++)
        for (int64_t part = 0; part < 40; part++)
            for (int64_t whole = 1; whole < 40; whole++)
                ck_assert_int_eq(bk_in_proportion(amount, part, whole),
                                 (2 * amount * part + whole) / (2 * whole));
}
END_TEST

BK_TEST_MAIN("proportion", a_part_of_an_amount_is_exact_and_rounded_half_up,
             every_small_share_is_that_of_ordinary_arithmetic)
