#include <inttypes.h>
#include <stdio.h>
#include <string.h>

#include "bodkin/base/typed.h"
#include "support/testing.h"

START_TEST(a_length_of_time_is_read_as_minutes)
{
    static const struct {
        const char *text;
        int64_t minutes;
    } cases[] = {
        {"45", 45},      {"1h30", 90},   {"1:30", 90},          {"1.5h", 90},         {"90 min", 90},
        {"2 h", 120},    {"0", 0},       {"1 h 30", 90},        {"1h30m", 90},        {"1 h 30 min", 90},
        {"1,5 h", 90},   {"90m", 90},    {"2H", 120},           {"2 hours", 120},     {"1 hour", 60},
        {"0:05", 5},     {"1h5", 65},    {"1h05", 65},          {" 45 ", 45},         {"0.25h", 15},
        {".5 h", 30},    {"1.33 h", 80}, {"0.333333 h", 20},    {"100 minutes", 100}, {"1000000", 1000000},
        {"3 h 20", 200}, {"0 h", 0},     {"2 hrs 5 mins", 125},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        int64_t minutes = -1;
        ck_assert_msg(bk_minutes_typed(cases[i].text, &minutes), "\"%s\" is not read", cases[i].text);
        ck_assert_msg(minutes == cases[i].minutes, "\"%s\" is read as %" PRId64, cases[i].text, minutes);
    }
}
END_TEST

START_TEST(what_is_no_length_of_time_is_not_read)
{
    static const char *const cases[] = {"",        " ",
                                        "x",       "-5",
                                        "1.5",     "1.5 min",
                                        "1:5",     "1:60",
                                        "1h60",    "1h100",
                                        "1h30h",   "1:30 h",
                                        "1:30:00", "1.5h30",
                                        "1.5:30",  "h",
                                        "1 hh",    "1 2",
                                        "1h x",    "1000001",
                                        "16667 h", "99999999999999999999",
                                        "1:",      "1.0000001 h",
                                        "1,250 h", "+5"};
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        int64_t minutes = 77;
        ck_assert_msg(!bk_minutes_typed(cases[i], &minutes), "\"%s\" is read", cases[i]);
        ck_assert_int_eq(minutes, 77);
    }
    int64_t minutes = 77;
    ck_assert(!bk_minutes_typed(NULL, &minutes));
}
END_TEST

START_TEST(minutes_as_the_screens_write_them_are_read_back)
{
    for (int64_t minutes = 0; minutes < 3000; minutes++) {
        char text[BK_AMOUNT_ROOM];
        int64_t again = -1;
        ck_assert(bk_minutes_typed(bk_minutes_words(minutes, text), &again));
        ck_assert_int_eq(again, minutes);
    }
}
END_TEST

START_TEST(a_comma_that_can_only_be_a_decimal_one_becomes_a_point)
{
    static const struct {
        const char *text, *pointed;
    } cases[] = {
        {"2,5", "2.5"},       {"12,50 EUR", "12.50 EUR"},
        {"0,125", "0.125"},   {"1,250", "1,250"},
        {"10,125", "10,125"}, {"1,2500", "1.2500"},
        {"1,2,5", "1,2,5"},   {"1.5,2", "1.5,2"},
        {"1,5.2", "1,5.2"},   {",5", ".5"},
        {",125", ".125"},     {"2,", "2,"},
        {"2, 5", "2, 5"},     {"", ""},
        {NULL, ""},           {"a,b", "a,b"},
        {"00,125", "00,125"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        bk_buffer out = {0};
        bk_comma_typed(cases[i].text, &out);
        ck_assert_str_eq(out.bytes, cases[i].pointed);
        bk_buffer_free(&out);
    }
}
END_TEST

START_TEST(quantities_take_a_decimal_comma)
{
    bk_quantity quantity = 77;
    ck_assert_int_eq(bk_quantity_typed("2,5", false, &quantity), BK_READ_OK);
    ck_assert_int_eq(quantity, 2500000);
    ck_assert_int_eq(bk_quantity_typed(" 2.5", false, &quantity), BK_READ_OK);
    ck_assert_int_eq(quantity, 2500000);
    ck_assert_int_eq(bk_quantity_typed("-0,5", true, &quantity), BK_READ_OK);
    ck_assert_int_eq(quantity, -500000);
    ck_assert_int_eq(bk_quantity_typed("-0,5", false, &quantity), BK_READ_NEGATIVE);
    ck_assert_int_eq(bk_quantity_typed("1,250", false, &quantity), BK_READ_COMMA);
    ck_assert_int_eq(bk_quantity_typed("2,5 m", false, &quantity), BK_READ_NOT_NUMBER);
    ck_assert_int_eq(bk_quantity_typed(NULL, false, &quantity), BK_READ_EMPTY);
    ck_assert_int_eq(quantity, -500000);
}
END_TEST

START_TEST(money_takes_a_decimal_comma)
{
    bk_money money = 77;
    char currency[BK_CURRENCY_ROOM] = "";
    ck_assert_int_eq(bk_money_typed("12,50", "EUR", &money, currency), BK_READ_OK);
    ck_assert_int_eq(money, 1250);
    ck_assert_str_eq(currency, "EUR");
    ck_assert_int_eq(bk_money_typed("7,5 GBP", "EUR", &money, currency), BK_READ_OK);
    ck_assert_int_eq(money, 750);
    ck_assert_str_eq(currency, "GBP");
    ck_assert_int_eq(bk_money_typed("1,250", "EUR", &money, currency), BK_READ_COMMA);
    ck_assert_int_eq(bk_money_typed("1,2555", "EUR", &money, currency), BK_READ_DECIMALS);
    ck_assert_int_eq(bk_money_typed("", "EUR", &money, currency), BK_READ_EMPTY);
    ck_assert_int_eq(money, 750);
}
END_TEST

BK_TEST_MAIN("typed_amount", a_length_of_time_is_read_as_minutes, what_is_no_length_of_time_is_not_read,
             minutes_as_the_screens_write_them_are_read_back,
             a_comma_that_can_only_be_a_decimal_one_becomes_a_point, quantities_take_a_decimal_comma,
             money_takes_a_decimal_comma)
