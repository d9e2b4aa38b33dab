#include "bodkin/base/number.h"

#include <stdio.h>
#include <string.h>

#include "support/testing.h"

START_TEST(a_number_is_taken_apart)
{
    static const struct {
        const char *text;
        bk_reading reading;
        bool negative;
        uint64_t whole;
        size_t decimals;
        const char *rest;
    } cases[] = {
        {"92.5 cm", BK_READ_OK, false, 92, 1, " cm"},
        {"  007.250x", BK_READ_OK, false, 7, 3, "x"},
        {"-3", BK_READ_OK, true, 3, 0, ""},
        {".5", BK_READ_OK, false, 0, 1, ""},
        {"5.", BK_READ_OK, false, 5, 0, "."},
        {"5, 6", BK_READ_OK, false, 5, 0, ", 6"},
        {"36-3/8", BK_READ_OK, false, 36, 0, "-3/8"},
        {"18446744073709551615", BK_READ_OK, false, UINT64_MAX, 0, ""},
        {"99999999999999999999999 m", BK_READ_OK, false, UINT64_MAX, 0, " m"},
        {"", BK_READ_EMPTY, false, 0, 0, ""},
        {" \t", BK_READ_EMPTY, false, 0, 0, " \t"},
        {"-", BK_READ_NOT_NUMBER, false, 0, 0, "-"},
        {"- 5", BK_READ_NOT_NUMBER, false, 0, 0, "- 5"},
        {"+5", BK_READ_NOT_NUMBER, false, 0, 0, "+5"},
        {".", BK_READ_NOT_NUMBER, false, 0, 0, "."},
        {"x5", BK_READ_NOT_NUMBER, false, 0, 0, "x5"},
        {"92,5", BK_READ_COMMA, false, 0, 0, "92,5"},
        {",5", BK_READ_COMMA, false, 0, 0, ",5"},
        {"1.000,5", BK_READ_COMMA, false, 0, 0, "1.000,5"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        const char *text = cases[i].text;
        bk_decimal number = {0};
        ck_assert_msg(bk_decimal_read(&text, &number) == cases[i].reading, "%s", cases[i].text);
        ck_assert_str_eq(text, cases[i].rest);
        if (cases[i].reading != BK_READ_OK)
            continue;
        ck_assert_int_eq(number.negative, cases[i].negative);
        ck_assert_uint_eq(number.whole, cases[i].whole);
        ck_assert_uint_eq(number.decimals, cases[i].decimals);
    }
    const char *nothing = NULL;
    bk_decimal number = {0};
    ck_assert_int_eq(bk_decimal_read(&nothing, &number), BK_READ_EMPTY);
}
END_TEST

START_TEST(a_number_is_scaled_exactly_or_not_at_all)
{
    static const struct {
        const char *text;
        size_t places;
        int64_t most;
        bk_reading reading;
        int64_t scaled;
    } cases[] = {
        {"2.4", 6, INT64_MAX, BK_READ_OK, 2400000},
        {"-2.000001", 6, INT64_MAX, BK_READ_OK, -2000001},
        {"2.0000001", 6, INT64_MAX, BK_READ_DECIMALS, 0},
        {"7", 0, 7, BK_READ_OK, 7},
        {"8", 0, 7, BK_READ_TOO_LARGE, 0},
        {"-8", 0, 7, BK_READ_TOO_LARGE, 0},
        {"9223372036854775807", 0, INT64_MAX, BK_READ_OK, INT64_MAX},
        {"9223372036854775808", 0, INT64_MAX, BK_READ_TOO_LARGE, 0},
        {"9223372036854.775807", 6, INT64_MAX, BK_READ_OK, INT64_MAX},
        {"9223372036854.775808", 6, INT64_MAX, BK_READ_TOO_LARGE, 0},
        {"18446744073709.551616", 6, INT64_MAX, BK_READ_TOO_LARGE, 0},
        {"18446744073709551615", 1, INT64_MAX, BK_READ_TOO_LARGE, 0},
        {"1844674407370955161.6", 1, INT64_MAX, BK_READ_TOO_LARGE, 0},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        const char *text = cases[i].text;
        bk_decimal number = {0};
        int64_t scaled = 0;
        ck_assert_int_eq(bk_decimal_read(&text, &number), BK_READ_OK);
        bk_reading reading = bk_decimal_scale(&number, cases[i].places, cases[i].most, &scaled);
        ck_assert_msg(reading == cases[i].reading, "%s", cases[i].text);
        ck_assert_int_eq(scaled, cases[i].scaled);
    }
}
END_TEST

START_TEST(a_number_is_written_with_its_point)
{
    static const struct {
        int64_t value;
        size_t places;
        const char *trimmed, *whole;
    } cases[] = {
        {0, 0, "0", "0"},
        {0, 2, "0", "0.00"},
        {5, 2, "0.05", "0.05"},
        {50, 2, "0.5", "0.50"},
        {500, 2, "5", "5.00"},
        {1200, 0, "1200", "1200"},
        {-1, 3, "-0.001", "-0.001"},
        {-12340, 3, "-12.34", "-12.340"},
        {10203040, 6, "10.20304", "10.203040"},
        {INT64_MAX, 6, "9223372036854.775807", "9223372036854.775807"},
        {-INT64_MAX, 0, "-9223372036854775807", "-9223372036854775807"},
        {INT64_MAX, 18, "9.223372036854775807", "9.223372036854775807"},
        {BK_NO_AMOUNT, 2, "", ""},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        char text[BK_AMOUNT_ROOM];
        ck_assert_str_eq(bk_decimal_write(cases[i].value, cases[i].places, true, text), cases[i].trimmed);
        ck_assert_str_eq(bk_decimal_write(cases[i].value, cases[i].places, false, text), cases[i].whole);
    }
}
END_TEST

START_TEST(spaces_and_tabs_are_stepped_over)
{
    ck_assert_str_eq(bk_skip_blank(" \t\r\n x "), "x ");
    ck_assert_str_eq(bk_skip_blank(""), "");
}
END_TEST

BK_TEST_MAIN("number", a_number_is_taken_apart, a_number_is_scaled_exactly_or_not_at_all,
             a_number_is_written_with_its_point, spaces_and_tabs_are_stepped_over)
