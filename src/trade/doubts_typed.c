#include "bodkin/trade/doubts_typed.h"

#include <stdio.h>
#include <string.h>

enum { TEN = 10, CENTS = 100 };

/// A number as its digits stand there: `digits` of `place` micrometres each, and `rest` that stays (a common fraction).
typedef struct typed {
    int64_t digits, place, rest;
} typed;

static int64_t size(int64_t number)
{
    return number < 0 ? -number : number;
}

/// Whether a change is big enough that a body could tell.
static bool tells(bk_length value, bk_length other)
{
    const int64_t fourteenth = 14;
    return size(other - value) * fourteenth > value;
}

static size_t add_meant(bk_meant *meant, size_t count, bk_slip slip, bk_length value)
{
    if (count < BK_MEANT_MOST) {
        meant[count++] = (bk_meant){slip, value};
    }
    return count;
}

/// Every swap of two neighbouring digits, also with the zero that may have stood before the first.
static size_t add_swaps(bk_meant *meant, size_t count, bk_length value, typed number)
{
    for (int64_t power = 1; power <= number.digits; power *= TEN) {
        int64_t low = number.digits / power % TEN, high = number.digits / power / TEN % TEN;
        int64_t swapped = number.digits + (low - high) * (TEN - 1) * power;
        bk_length other = swapped * number.place + number.rest;
        if (tells(value, other)) {
            count = add_meant(meant, count, BK_SLIP_SWAPPED, other);
        }
    }
    return count;
}

/// The number in decimals of the unit, as few as it needs, at least one and at most two.
static typed decimals(bk_length value, bk_unit unit)
{
    int64_t whole = unit == BK_INCH ? BK_MICROMETRES_PER_INCH : BK_MICROMETRES_PER_CM;
    int64_t place = whole / CENTS;
    int64_t digits = (value + place / 2) / place;
    return digits % TEN ? (typed){digits, place, 0} : (typed){digits / TEN, whole / TEN, 0};
}

/// Whether it is a number of sixteenths of an inch.
static bool is_fraction(bk_length value)
{
    char text[BK_AMOUNT_ROOM];
    return strstr(bk_length_write(value, BK_INCH, text), " in") != NULL;
}

size_t bk_meant_by(bk_length value, bk_unit unit, bk_meant meant[BK_MEANT_MOST])
{
    size_t count = 0;
    if (value <= 0) {
        return 0;
    }
    count = add_meant(meant, count, BK_SLIP_INCHES, value * BK_MICROMETRES_PER_INCH / BK_MICROMETRES_PER_CM);
    count =
        add_meant(meant, count, BK_SLIP_CENTIMETRES, value * BK_MICROMETRES_PER_CM / BK_MICROMETRES_PER_INCH);
    count = add_meant(meant, count, BK_SLIP_POINT_OUT, value / TEN);
    count = add_meant(meant, count, BK_SLIP_POINT_EARLY, value * TEN);
    if (unit == BK_INCH) {
        bk_length over = value % BK_MICROMETRES_PER_INCH;
        count = add_swaps(meant, count, value,
                          (typed){value / BK_MICROMETRES_PER_INCH, BK_MICROMETRES_PER_INCH, over});
    }
    typed number = decimals(value, unit);
    if (unit == BK_CM || !is_fraction(value) || number.place * TEN == BK_MICROMETRES_PER_INCH) {
        count = add_swaps(meant, count, value, number);
    }
    return count;
}

char *bk_typed_write(bk_length value, bk_unit unit, char out[BK_AMOUNT_ROOM])
{
    typed number = decimals(value, unit);
    if (unit == BK_INCH && is_fraction(value)) {
        return bk_length_write(value, unit, out);
    }
    int64_t cents = number.digits * number.place * CENTS;
    cents /= unit == BK_INCH ? BK_MICROMETRES_PER_INCH : BK_MICROMETRES_PER_CM;
    bk_decimal_write(cents, 2, true, out);
    return strcat(out, unit == BK_INCH ? " in" : " cm");
}
