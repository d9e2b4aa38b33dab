// What may have been meant by a length that was typed.

#include "bodkin/trade/doubts_typed.h"

#include "support/testing.h"

#define CM(x) ((bk_length)((x)*BK_MICROMETRES_PER_CM + .5))
#define INCHES(x) ((bk_length)((x)*BK_MICROMETRES_PER_INCH + .5))

static bool meant_by(bk_length value, bk_unit unit, bk_slip slip, bk_length other)
{
    bk_meant meant[BK_MEANT_MOST];
    size_t count = bk_meant_by(value, unit, meant);
    for (size_t i = 0; i < count; i++)
        if (meant[i].slip == slip && meant[i].value == other)
            return true;
    return false;
}

static size_t swaps_of(bk_length value, bk_unit unit)
{
    bk_meant meant[BK_MEANT_MOST];
    size_t count = bk_meant_by(value, unit, meant), swaps = 0;
    for (size_t i = 0; i < count; i++)
        swaps += meant[i].slip == BK_SLIP_SWAPPED;
    return swaps;
}

// 1 in = 25.4 mm exactly (international yard and pound agreement, 1959).
START_TEST(the_other_unit_and_the_other_places_of_the_point_may_be_meant)
{
    ck_assert(meant_by(CM(36), BK_CM, BK_SLIP_INCHES, CM(91.44)));
    ck_assert(meant_by(CM(91.44), BK_CM, BK_SLIP_CENTIMETRES, CM(36)));
    ck_assert(meant_by(CM(925), BK_CM, BK_SLIP_POINT_OUT, CM(92.5)));
    ck_assert(meant_by(CM(9.25), BK_CM, BK_SLIP_POINT_EARLY, CM(92.5)));
}
END_TEST

START_TEST(each_pair_of_neighbouring_digits_may_be_swapped)
{
    ck_assert(meant_by(CM(29.5), BK_CM, BK_SLIP_SWAPPED, CM(92.5)));
    ck_assert(meant_by(CM(10.9), BK_CM, BK_SLIP_SWAPPED, CM(19)));
    ck_assert(meant_by(CM(613.4), BK_CM, BK_SLIP_SWAPPED, CM(163.4)));
    ck_assert(meant_by(INCHES(63.375), BK_INCH, BK_SLIP_SWAPPED, INCHES(36.375)));
    ck_assert(meant_by(INCHES(6.5), BK_INCH, BK_SLIP_SWAPPED, INCHES(5.6)));
    ck_assert_uint_eq(swaps_of(INCHES(41.625), BK_INCH), 2);
}
END_TEST

START_TEST(a_nought_that_came_first_is_a_digit_too)
{
    ck_assert(meant_by(CM(9), BK_CM, BK_SLIP_SWAPPED, CM(90)));
    ck_assert(meant_by(CM(14.3), BK_CM, BK_SLIP_SWAPPED, CM(104.3)));
}
END_TEST

START_TEST(a_swap_that_no_body_can_tell_is_left_out)
{
    ck_assert(!meant_by(CM(92.5), BK_CM, BK_SLIP_SWAPPED, CM(95.2)));
    ck_assert(!meant_by(CM(33.3), BK_CM, BK_SLIP_SWAPPED, CM(33.3)));
}
END_TEST

START_TEST(nothing_is_meant_by_nought)
{
    bk_meant meant[BK_MEANT_MOST];
    ck_assert_uint_eq(bk_meant_by(0, BK_CM, meant), 0);
    ck_assert_uint_eq(bk_meant_by(BK_NO_AMOUNT, BK_INCH, meant), 0);
}
END_TEST

START_TEST(lengths_are_written_as_they_were_typed)
{
    char text[BK_AMOUNT_ROOM];
    ck_assert_str_eq(bk_typed_write(CM(92.5), BK_CM, text), "92.5 cm");
    ck_assert_str_eq(bk_typed_write(CM(92), BK_CM, text), "92 cm");
    ck_assert_str_eq(bk_typed_write(INCHES(36.375), BK_INCH, text), "36 3/8 in");
    ck_assert_str_eq(bk_typed_write(INCHES(36.4), BK_INCH, text), "36.4 in");
    ck_assert_str_eq(bk_typed_write(CM(92.5), BK_INCH, text), "36.42 in");
    ck_assert_str_eq(bk_typed_write(INCHES(36.4), BK_CM, text), "92.46 cm");
}
END_TEST

BK_TEST_MAIN("doubts_typed", the_other_unit_and_the_other_places_of_the_point_may_be_meant,
             each_pair_of_neighbouring_digits_may_be_swapped, a_nought_that_came_first_is_a_digit_too,
             a_swap_that_no_body_can_tell_is_left_out, nothing_is_meant_by_nought,
             lengths_are_written_as_they_were_typed)
