#include "bodkin/base/number.h"

#include <string.h>

enum { TEN = 10 };

static bool is_digit(char c)
{
    return c >= '0' && c <= '9';
}

const char *bk_skip_blank(const char *text)
{
    return text + strspn(text, " \t\r\n");
}

/// Reads digits, perhaps none, and steps behind them; UINT64_MAX when the number is larger than that.
static uint64_t read_digits(const char **at)
{
    uint64_t number = 0;
    for (; is_digit(**at); (*at)++) {
        uint64_t digit = (uint64_t)(**at - '0');
        if (__builtin_mul_overflow(number, TEN, &number) || __builtin_add_overflow(number, digit, &number)) {
            number = UINT64_MAX;
            *at += strspn(*at, "0123456789");
            break;
        }
    }
    return number;
}

bk_reading bk_decimal_read(const char **text, bk_decimal *decimal)
{
    if (*text == NULL)
        return BK_READ_EMPTY;
    const char *at = bk_skip_blank(*text);
    if (*at == '\0')
        return BK_READ_EMPTY;
    decimal->negative = *at == '-';
    at += decimal->negative;
    const char *digits = at;
    decimal->whole = read_digits(&at);
    bool any = at > digits;
    decimal->fraction = at;
    decimal->decimals = 0;
    if (*at == '.' && is_digit(at[1])) {
        decimal->fraction = at + 1;
        decimal->decimals = strspn(decimal->fraction, "0123456789");
        at = decimal->fraction + decimal->decimals;
        any = true;
    }
    if (*at == ',' && is_digit(at[1]))
        return BK_READ_COMMA;
    if (!any)
        return BK_READ_NOT_NUMBER;
    *text = at;
    return BK_READ_OK;
}

bk_reading bk_decimal_scale(const bk_decimal *decimal, size_t places, int64_t most, int64_t *scaled)
{
    if (decimal->decimals > places)
        return BK_READ_DECIMALS;
    uint64_t value = decimal->whole;
    for (size_t i = 0; i < places; i++) {
        uint64_t digit = i < decimal->decimals ? (uint64_t)(decimal->fraction[i] - '0') : 0;
        if (__builtin_mul_overflow(value, TEN, &value) || __builtin_add_overflow(value, digit, &value))
            return BK_READ_TOO_LARGE;
    }
    if (value > (uint64_t)most)
        return BK_READ_TOO_LARGE;
    *scaled = decimal->negative ? -(int64_t)value : (int64_t)value;
    return BK_READ_OK;
}

char *bk_decimal_write(int64_t value, size_t places, bool trim, char out[BK_AMOUNT_ROOM])
{
    out[0] = '\0';
    if (value == BK_NO_AMOUNT)
        return out;
    uint64_t size = value < 0 ? (uint64_t)-value : (uint64_t)value;
    char reversed[BK_AMOUNT_ROOM];
    size_t length = 0;
    bool written = !trim; // zeros at the end of the decimals are passed over until a digit was written
    for (size_t place = 0; place <= places || size > 0; place++, size /= TEN) {
        int digit = (int)(size % TEN);
        if (place == places && place > 0 && written)
            reversed[length++] = '.';
        written = written || digit != 0 || place >= places;
        if (written)
            reversed[length++] = (char)('0' + digit);
    }
    size_t at = 0;
    if (value < 0)
        out[at++] = '-';
    while (length > 0)
        out[at++] = reversed[--length];
    out[at] = '\0';
    return out;
}
