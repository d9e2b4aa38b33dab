#include <string.h>
#include <strings.h>

#include "bodkin/base/typed.h"

enum { TEN = 10, MINUTES_PER_HOUR = 60, THOUSAND_DIGITS = 3, HOUR_DECIMALS = 6 };

#define HOUR_PARTS INT64_C(1000000) ///< 10 to the power of HOUR_DECIMALS
#define MOST_MINUTES INT64_C(1000000)

static const char digits[] = "0123456789";

/// Whether the comma that `before` bytes stand before may part thousands.
static bool parts_thousands(const char *text, size_t before)
{
    size_t from = before;
    while (from > 0 && strchr(digits, text[from - 1]) != NULL)
        from--;
    bool lone_zero = before - from == 1 && text[from] == '0';
    return strspn(text + before + 1, digits) == THOUSAND_DIGITS && before > from && !lone_zero;
}

void bk_comma_typed(const char *text, bk_buffer *out)
{
    text = text == NULL ? "" : text;
    size_t before = strcspn(text, ",");
    const char *behind = text + before + (text[before] == ',');
    bool decimal = text[before] == ',' && *behind != '\0' && strchr(digits, *behind) != NULL &&
                   strpbrk(behind, ",") == NULL && strchr(text, '.') == NULL &&
                   !parts_thousands(text, before);
    bk_buffer_add(out, text, before);
    if (decimal)
        bk_buffer_char(out, '.');
    bk_buffer_text(out, decimal ? behind : text + before);
}

bk_reading bk_quantity_typed(const char *text, bool below_zero, bk_quantity *quantity)
{
    bk_buffer pointed = {0};
    bk_comma_typed(text, &pointed);
    bk_reading reading = bk_quantity_read(pointed.bytes, below_zero, quantity);
    bk_buffer_free(&pointed);
    return reading;
}

bk_reading bk_money_typed(const char *text, const char *fallback, bk_money *money,
                          char currency[BK_CURRENCY_ROOM])
{
    bk_buffer pointed = {0};
    bk_comma_typed(text, &pointed);
    bk_reading reading = bk_money_read(pointed.bytes, fallback, money, currency);
    bk_buffer_free(&pointed);
    return reading;
}

/// The word for a unit of time at `*at`, blanks before it passed over: how many minutes it has, 0 where none stands there,
/// -1 for another word. Steps behind it.
static int read_unit(const char **at)
{
    static const struct unit {
        const char *word;
        int minutes;
    } units[] = {{"min", 1},
                 {"m", 1},
                 {"mins", 1},
                 {"minute", 1},
                 {"minutes", 1},
                 {"h", MINUTES_PER_HOUR},
                 {"hr", MINUTES_PER_HOUR},
                 {"hrs", MINUTES_PER_HOUR},
                 {"hour", MINUTES_PER_HOUR},
                 {"hours", MINUTES_PER_HOUR}};
    const char *from = bk_skip_blank(*at);
    size_t length = strcspn(from, " \t\r\n0123456789:.,");
    for (size_t i = 0; i < sizeof units / sizeof *units; i++)
        if (strlen(units[i].word) == length && strncasecmp(units[i].word, from, length) == 0) {
            *at = from + length;
            return units[i].minutes;
        }
    return length == 0 ? 0 : -1;
}

/// Reads the minutes of an hour, at most two digits (`colon`: exactly two), which fill the rest of the text; nothing there is
/// none.
static bool read_rest(const char *at, bool colon, int64_t *minutes)
{
    at = bk_skip_blank(at);
    size_t count = strspn(at, digits);
    if (*at == '\0' && !colon)
        return true;
    if (count == 0 || count > 2 || (colon && count != 2))
        return false;
    int64_t rest = 0;
    for (size_t i = 0; i < count; i++)
        rest = rest * TEN + (at[i] - '0');
    at += count;
    *minutes += rest;
    return rest < MINUTES_PER_HOUR && (colon || read_unit(&at) <= 1) && *bk_skip_blank(at) == '\0';
}

/// Reads the whole of a text in which decimals stand behind a point.
static bool read_minutes(const char *at, int64_t *minutes)
{
    bk_decimal number = {0};
    int64_t parts = 0;
    if (bk_decimal_read(&at, &number) != BK_READ_OK || number.negative)
        return false;
    bool colon = *at == ':';
    int unit = colon ? MINUTES_PER_HOUR : read_unit(&at);
    bool hours = unit == MINUTES_PER_HOUR;
    if (unit < 0 || (number.decimals > 0 && (colon || !hours)) ||
        bk_decimal_scale(&number, HOUR_DECIMALS, MOST_MINUTES * HOUR_PARTS, &parts) != BK_READ_OK)
        return false;
    *minutes = (parts * (hours ? MINUTES_PER_HOUR : 1) + HOUR_PARTS / 2) / HOUR_PARTS;
    if (number.decimals > 0 || !hours)
        return *bk_skip_blank(at) == '\0';
    return read_rest(at + colon, colon, minutes);
}

bool bk_minutes_typed(const char *text, int64_t *minutes)
{
    bk_buffer pointed = {0};
    int64_t read = 0;
    bk_comma_typed(text, &pointed);
    bool good = read_minutes(pointed.bytes, &read) && read <= MOST_MINUTES;
    bk_buffer_free(&pointed);
    if (good)
        *minutes = read;
    return good;
}
