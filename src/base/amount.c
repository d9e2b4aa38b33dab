#include "bodkin/base/amount.h"

#include <stdio.h>

enum { QUANTITY_DECIMALS = 6, MINUTES_PER_HOUR = 60 };

/// Reads a number that fills the whole of `text`.
static bk_reading read_alone(const char *text, bk_decimal *number)
{
    bk_reading reading = bk_decimal_read(&text, number);
    if (reading == BK_READ_OK && *bk_skip_blank(text) != '\0')
        return BK_READ_NOT_NUMBER;
    return reading;
}

bk_reading bk_quantity_read(const char *text, bool below_zero, bk_quantity *quantity)
{
    bk_decimal number = {0};
    bk_reading reading = read_alone(text, &number);
    if (reading != BK_READ_OK)
        return reading;
    if (number.negative && !below_zero)
        return BK_READ_NEGATIVE;
    bk_quantity most = number.negative ? BK_SHELF_MOST : BK_QUANTITY_MOST;
    return bk_decimal_scale(&number, QUANTITY_DECIMALS, most, quantity);
}

char *bk_quantity_write(bk_quantity quantity, char out[BK_AMOUNT_ROOM])
{
    return bk_decimal_write(quantity, QUANTITY_DECIMALS, true, out);
}

bk_reading bk_whole_read(const char *text, int64_t least, int64_t most, int64_t *number)
{
    bk_decimal read = {0};
    int64_t whole = 0;
    bk_reading reading = read_alone(text, &read);
    if (reading != BK_READ_OK)
        return reading;
    if (read.negative && least >= 0)
        return BK_READ_NEGATIVE;
    reading = bk_decimal_scale(&read, 0, INT64_MAX, &whole);
    if (reading != BK_READ_OK)
        return reading;
    if (whole > most)
        return BK_READ_TOO_LARGE;
    if (whole < least)
        return whole < 0 ? BK_READ_NEGATIVE : BK_READ_TOO_SMALL;
    *number = whole;
    return BK_READ_OK;
}

char *bk_minutes_words(int64_t minutes, char out[BK_AMOUNT_ROOM])
{
    const char *sign = minutes < 0 ? "-" : "";
    uint64_t size = minutes < 0 ? 0 - (uint64_t)minutes : (uint64_t)minutes;
    unsigned long long hours = size / MINUTES_PER_HOUR;
    unsigned rest = (unsigned)(size % MINUTES_PER_HOUR);
    if (hours == 0)
        snprintf(out, BK_AMOUNT_ROOM, "%s%u min", sign, rest);
    else if (rest == 0)
        snprintf(out, BK_AMOUNT_ROOM, "%s%llu h", sign, hours);
    else
        snprintf(out, BK_AMOUNT_ROOM, "%s%llu h %02u", sign, hours, rest);
    return out;
}
