#include "bodkin/base/money.h"

#include <string.h>

enum { USUAL_DECIMALS = 2 };

/// The currencies of ISO 4217 that have not two decimals (from memory).
static const struct currency {
    char code[BK_CURRENCY_ROOM];
    int decimals;
} currencies[] = {
    {"BIF", 0}, {"CLP", 0}, {"DJF", 0}, {"GNF", 0}, {"ISK", 0}, {"JPY", 0}, {"KMF", 0},
    {"KRW", 0}, {"PYG", 0}, {"RWF", 0}, {"UGX", 0}, {"UYI", 0}, {"VND", 0}, {"VUV", 0},
    {"XAF", 0}, {"XOF", 0}, {"XPF", 0}, {"BHD", 3}, {"IQD", 3}, {"JOD", 3}, {"KWD", 3},
    {"LYD", 3}, {"OMR", 3}, {"TND", 3}, {"CLF", 4}, {"UYW", 4},
};

int bk_currency_decimals(const char *code)
{
    for (size_t i = 0; code != NULL && i < sizeof currencies / sizeof *currencies; i++)
        if (strcmp(currencies[i].code, code) == 0)
            return currencies[i].decimals;
    return USUAL_DECIMALS;
}

bool bk_currency_valid(const char *code)
{
    return code != NULL && strlen(code) == BK_CURRENCY_ROOM - 1 &&
           strspn(code, "ABCDEFGHIJKLMNOPQRSTUVWXYZ") == BK_CURRENCY_ROOM - 1;
}

/// Reads the code that fills the rest of `text`, `fallback` where it is blank.
static bk_reading read_currency(const char *text, const char *fallback, char currency[BK_CURRENCY_ROOM])
{
    text = bk_skip_blank(text);
    size_t length = strcspn(text, " \t\r\n");
    if (length == 0) {
        strcpy(currency, bk_currency_valid(fallback) ? fallback : "");
        return BK_READ_OK;
    }
    if (strchr("0123456789.,-", *text) != NULL)
        return BK_READ_NOT_NUMBER;
    if (length >= BK_CURRENCY_ROOM || *bk_skip_blank(text + length) != '\0')
        return BK_READ_UNIT;
    memcpy(currency, text, length);
    currency[length] = '\0';
    return bk_currency_valid(currency) ? BK_READ_OK : BK_READ_UNIT;
}

bk_reading bk_money_read(const char *text, const char *fallback, bk_money *money,
                         char currency[BK_CURRENCY_ROOM])
{
    bk_decimal number = {0};
    char code[BK_CURRENCY_ROOM] = "";
    bk_reading reading = bk_decimal_read(&text, &number);
    if (reading == BK_READ_OK)
        reading = number.negative ? BK_READ_NEGATIVE : read_currency(text, fallback, code);
    if (reading == BK_READ_OK)
        reading = bk_decimal_scale(&number, (size_t)bk_currency_decimals(code), BK_MONEY_MOST, money);
    if (reading == BK_READ_OK)
        strcpy(currency, code);
    return reading;
}

char *bk_money_write(bk_money money, const char *currency, const char *usual, char out[BK_AMOUNT_ROOM])
{
    bk_decimal_write(money, (size_t)bk_currency_decimals(currency), false, out);
    bool told = usual == NULL || currency == NULL || strcmp(currency, usual) != 0;
    if (out[0] != '\0' && told && bk_currency_valid(currency)) {
        strcat(out, " ");
        strcat(out, currency);
    }
    return out;
}
