#include "bodkin/base/money.h"

#include <string.h>

#include "support/testing.h"

START_TEST(currencies_have_their_own_decimals)
{
    // ISO 4217, from memory.
    static const struct {
        const char *code;
        int decimals;
    } cases[] = {{"EUR", 2}, {"GBP", 2}, {"USD", 2}, {"JPY", 0}, {"ISK", 0}, {"XPF", 0}, {"KWD", 3},
                 {"TND", 3}, {"BHD", 3}, {"CLF", 4}, {"UYW", 4}, {"XYZ", 2}, {"", 2},    {NULL, 2}};
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
        ck_assert_int_eq(bk_currency_decimals(cases[i].code), cases[i].decimals);
}
END_TEST

START_TEST(a_currency_is_three_capital_letters)
{
    ck_assert(bk_currency_valid("GBP"));
    static const char *const faulty[] = {"", "GB", "GBPS", "GBP1", "gbp", "GB1", "G P", NULL, "ÄÖ"};
    for (size_t i = 0; i < sizeof faulty / sizeof *faulty; i++)
        ck_assert(!bk_currency_valid(faulty[i]));
}
END_TEST

START_TEST(money_is_read_with_or_without_its_currency)
{
    static const struct {
        const char *text, *fallback;
        bk_money money;
        const char *currency;
    } cases[] = {
        {"12.50", "GBP", 1250, "GBP"},
        {"12.50 EUR", "GBP", 1250, "EUR"},
        {"12.5", "GBP", 1250, "GBP"},
        {"12", "GBP", 1200, "GBP"},
        {"12.50EUR", NULL, 1250, "EUR"},
        {"12.50", NULL, 1250, ""},
        {"12.50", "", 1250, ""},
        {"1200", "JPY", 1200, "JPY"},
        {"1.234 KWD", "GBP", 1234, "KWD"},
        {" 0.05  GBP ", "", 5, "GBP"},
        {"0", "GBP", 0, "GBP"},
        {"12.50", "pounds", 1250, ""},
        {"10000000000000 EUR", "", INT64_C(1000000000000000), "EUR"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        bk_money money = -1;
        char currency[BK_CURRENCY_ROOM] = "???";
        ck_assert_int_eq(bk_money_read(cases[i].text, cases[i].fallback, &money, currency), BK_READ_OK);
        ck_assert_int_eq(money, cases[i].money);
        ck_assert_str_eq(currency, cases[i].currency);
    }
}
END_TEST

START_TEST(what_is_no_money_is_told_apart)
{
    static const struct {
        const char *text;
        bk_reading reading;
    } cases[] = {
        {"", BK_READ_EMPTY},
        {NULL, BK_READ_EMPTY},
        {"free", BK_READ_NOT_NUMBER},
        {"GBP 12", BK_READ_NOT_NUMBER},
        {"12.50 3", BK_READ_NOT_NUMBER},
        {"12.", BK_READ_NOT_NUMBER},
        {"12,50", BK_READ_COMMA},
        {"1,200", BK_READ_COMMA},
        {"12.50 gbp", BK_READ_UNIT},
        {"12.50 GB", BK_READ_UNIT},
        {"12.50 GBP EUR", BK_READ_UNIT},
        {"12.50 £", BK_READ_UNIT},
        {"12.50 POUNDS", BK_READ_UNIT},
        {"-12.50", BK_READ_NEGATIVE},
        {"12.505", BK_READ_DECIMALS},
        {"12.5 JPY", BK_READ_DECIMALS},
        {"10000000000000.01", BK_READ_TOO_LARGE},
        {"99999999999999999999999", BK_READ_TOO_LARGE},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        bk_money money = 77;
        char currency[BK_CURRENCY_ROOM] = "???";
        ck_assert_msg(bk_money_read(cases[i].text, "GBP", &money, currency) == cases[i].reading, "%s",
                      cases[i].text);
        ck_assert_int_eq(money, 77);
        ck_assert_str_eq(currency, "???");
    }
}
END_TEST

START_TEST(money_names_its_currency_where_it_is_not_the_usual)
{
    static const struct {
        bk_money money;
        const char *currency, *usual, *text;
    } cases[] = {
        {1250, "GBP", NULL, "12.50 GBP"},
        {1250, "GBP", "EUR", "12.50 GBP"},
        {1250, "GBP", "GBP", "12.50"},
        {5, "GBP", "GBP", "0.05"},
        {-5, "GBP", "GBP", "-0.05"},
        {1200, "JPY", "GBP", "1200 JPY"},
        {1234, "KWD", "KWD", "1.234"},
        {1250, "", NULL, "12.50"},
        {1250, NULL, NULL, "12.50"},
        {BK_NO_AMOUNT, "GBP", NULL, ""},
        {INT64_MAX, "JPY", NULL, "9223372036854775807 JPY"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        char text[BK_AMOUNT_ROOM];
        bk_money_write(cases[i].money, cases[i].currency, cases[i].usual, text);
        ck_assert_str_eq(text, cases[i].text);
    }
}
END_TEST

BK_TEST_MAIN("money", currencies_have_their_own_decimals, a_currency_is_three_capital_letters,
             money_is_read_with_or_without_its_currency, what_is_no_money_is_told_apart,
             money_names_its_currency_where_it_is_not_the_usual)
