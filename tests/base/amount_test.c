#include "bodkin/base/amount.h"

#include <inttypes.h>
#include <string.h>

#include "support/testing.h"

#define LARGEST INT64_C(1000000000000000)

START_TEST(a_shelf_that_lacks_more_than_can_be_counted_is_read_back)
{
    bk_quantity quantity = 0;
    ck_assert_int_eq(bk_quantity_read("-2500000000", true, &quantity), BK_READ_OK);
    ck_assert_int_eq(quantity, -25 * (BK_QUANTITY_MOST / 10));
    ck_assert_int_eq(bk_quantity_read("2500000000", true, &quantity), BK_READ_TOO_LARGE);
    ck_assert_int_eq(bk_quantity_read("-1000000000001", true, &quantity), BK_READ_TOO_LARGE);
}
END_TEST

START_TEST(quantities_are_read_as_millionths)
{
    static const struct {
        const char *text;
        bk_quantity quantity;
    } cases[] = {{"2.4", 2400000}, {"0.000001", 1},       {"-0.5", -500000}, {" 3 ", 3000000},
                 {"0", 0},         {"1.100000", 1100000}, {".25", 250000},   {"1000000000", LARGEST}};
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        bk_quantity quantity = 77;
        ck_assert_int_eq(bk_quantity_read(cases[i].text, true, &quantity), BK_READ_OK);
        ck_assert_int_eq(quantity, cases[i].quantity);
    }
}
END_TEST

START_TEST(what_is_no_quantity_is_told_apart)
{
    static const struct {
        const char *text;
        bk_reading reading;
    } cases[] = {
        {"", BK_READ_EMPTY},          {NULL, BK_READ_EMPTY},
        {"some", BK_READ_NOT_NUMBER}, {"2.4 m", BK_READ_NOT_NUMBER},
        {"1e3", BK_READ_NOT_NUMBER},  {"2,4", BK_READ_COMMA},
        {"-1", BK_READ_NEGATIVE},     {"0.0000001", BK_READ_DECIMALS},
        {"nan", BK_READ_NOT_NUMBER},  {"1000000000.000001", BK_READ_TOO_LARGE},
        {"0x10", BK_READ_NOT_NUMBER}, {"99999999999999999999", BK_READ_TOO_LARGE},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        bk_quantity quantity = 77;
        ck_assert_msg(bk_quantity_read(cases[i].text, false, &quantity) == cases[i].reading, "%s",
                      cases[i].text);
        ck_assert_int_eq(quantity, 77);
    }
}
END_TEST

START_TEST(quantities_come_back_as_they_were_written)
{
    char text[BK_AMOUNT_ROOM];
    ck_assert_str_eq(bk_quantity_write(2400000, text), "2.4");
    ck_assert_str_eq(bk_quantity_write(-500000, text), "-0.5");
    ck_assert_str_eq(bk_quantity_write(3 * BK_QUANTITY_ONE, text), "3");
    ck_assert_str_eq(bk_quantity_write(BK_NO_AMOUNT, text), "");
    for (bk_quantity quantity = 1; quantity <= LARGEST / 7; quantity = quantity * 7 + 3)
        for (bk_quantity near = quantity - 20; near < quantity + 20; near++) {
            bk_quantity again = 77;
            if (bk_quantity_read(bk_quantity_write(near, text), true, &again) != BK_READ_OK || again != near)
                ck_abort_msg("%" PRId64 " is written %s", near, text);
        }
}
END_TEST

START_TEST(whole_numbers_keep_within_their_bounds)
{
    static const struct {
        const char *text;
        int64_t least, most;
        bk_reading reading;
        int64_t number;
    } cases[] = {
        {"7", 1, 7, BK_READ_OK, 7},
        {" 1 ", 1, 7, BK_READ_OK, 1},
        {"8", 1, 7, BK_READ_TOO_LARGE, 77},
        {"0", 1, 7, BK_READ_TOO_SMALL, 77},
        {"-1", 0, 7, BK_READ_NEGATIVE, 77},
        {"-1", -3, 7, BK_READ_OK, -1},
        {"-4", -3, 7, BK_READ_NEGATIVE, 77},
        {"1.0", 0, 7, BK_READ_DECIMALS, 77},
        {"1,5", 0, 7, BK_READ_COMMA, 77},
        {"one", 0, 7, BK_READ_NOT_NUMBER, 77},
        {"1 h", 0, 7, BK_READ_NOT_NUMBER, 77},
        {"", 0, 7, BK_READ_EMPTY, 77},
        {NULL, 0, 7, BK_READ_EMPTY, 77},
        {"9223372036854775807", 0, INT64_MAX, BK_READ_OK, INT64_MAX},
        {"9223372036854775808", 0, INT64_MAX, BK_READ_TOO_LARGE, 77},
        {"-9223372036854775807", INT64_MIN, 0, BK_READ_OK, -INT64_MAX},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        int64_t number = 77;
        ck_assert_msg(bk_whole_read(cases[i].text, cases[i].least, cases[i].most, &number) ==
                          cases[i].reading,
                      "%s", cases[i].text);
        ck_assert_int_eq(number, cases[i].number);
    }
}
END_TEST

START_TEST(minutes_are_told_in_words)
{
    static const struct {
        int64_t minutes;
        const char *words;
    } cases[] = {{0, "0 min"},
                 {45, "45 min"},
                 {59, "59 min"},
                 {60, "1 h"},
                 {180, "3 h"},
                 {200, "3 h 20"},
                 {185, "3 h 05"},
                 {6000, "100 h"},
                 {-45, "-45 min"},
                 {-200, "-3 h 20"},
                 {INT64_MIN, "-153722867280912930 h 08"}};
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        char text[BK_AMOUNT_ROOM];
        ck_assert_str_eq(bk_minutes_words(cases[i].minutes, text), cases[i].words);
    }
}
END_TEST

BK_TEST_MAIN("amount", a_shelf_that_lacks_more_than_can_be_counted_is_read_back,
             quantities_are_read_as_millionths, what_is_no_quantity_is_told_apart,
             quantities_come_back_as_they_were_written, whole_numbers_keep_within_their_bounds,
             minutes_are_told_in_words)
