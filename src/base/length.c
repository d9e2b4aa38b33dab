#include "bodkin/base/length.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

/// 1 km, the longest length that is read.
#define LONGEST INT64_C(1000000000)

enum { DIGIT = 10, SIXTEENTHS = 16, CM_DECIMALS = 4 };

/// The units a length is written in. 1 in = 25.4 mm exactly, 1 yd = 36 in (international yard and pound
/// agreement, 1959).
static const struct length_unit {
    const char *name;
    int64_t micrometres;
    bool fractions; ///< whether `3/8` may be written
} units[] = {
    {"mm", BK_MICROMETRES_PER_MM, false},        {"cm", BK_MICROMETRES_PER_CM, false},
    {"m", 1000 * BK_MICROMETRES_PER_MM, false},  {"in", BK_MICROMETRES_PER_INCH, true},
    {"ft", 12 * BK_MICROMETRES_PER_INCH, false}, {"yd", 36 * BK_MICROMETRES_PER_INCH, false},
};

static const uint64_t denominators[] = {2, 4, 8, 16, 32, 64};

/// A number as a tape is read: whole, decimals, or a common fraction.
typedef struct tape {
    bk_decimal number;
    uint64_t over;  ///< numerator of the fraction
    uint64_t under; ///< its denominator; 0 when there is none
} tape;

static bool is_digit(char c)
{
    return c >= '0' && c <= '9';
}

static const struct length_unit *unit_of(const char *name)
{
    size_t length = strcspn(name, " \t\r\n");
    if (*bk_skip_blank(name + length) != '\0')
        return NULL;
    for (size_t i = 0; i < sizeof units / sizeof *units; i++)
        if (strlen(units[i].name) == length && memcmp(units[i].name, name, length) == 0)
            return &units[i];
    return NULL;
}

/// Reads `/` and a denominator that tapes have.
static bool read_denominator(const char **at, uint64_t *under)
{
    if (**at != '/' || !is_digit((*at)[1]))
        return false;
    char *end = NULL;
    uint64_t number = strtoull(*at + 1, &end, DIGIT);
    *at = end;
    for (size_t i = 0; i < sizeof denominators / sizeof *denominators; i++)
        if (denominators[i] == number) {
            *under = number;
            return true;
        }
    return false;
}

/// Reads what may stand between a number and its unit: the fraction of `36 3/8`, `36-3/8` or `3/8`.
static bool read_fraction(const char **at, tape *read)
{
    if (**at == '/') {
        read->over = read->number.whole;
        read->number.whole = 0;
        return read->number.decimals == 0 && read_denominator(at, &read->under);
    }
    const char *start = **at == '-' ? *at + 1 : bk_skip_blank(*at);
    if (start == *at || !is_digit(*start))
        return true;
    char *end = NULL;
    read->over = strtoull(start, &end, DIGIT);
    *at = end;
    return read->number.decimals == 0 && read_denominator(at, &read->under) && read->over < read->under;
}

/// Micrometres, rounded half up: twice the value is rounded down, digit by digit from the last (rounding down
/// after each division by ten is exact for the whole of it), and one half added.
static bk_reading to_micrometres(const tape *read, int64_t micrometres, bk_length *length)
{
    if (read->number.whole > LONGEST || read->over > LONGEST)
        return BK_READ_TOO_LARGE;
    int64_t twice = 0;
    for (size_t i = read->number.decimals; i > 0; i--)
        twice = (2 * micrometres * (read->number.fraction[i - 1] - '0') + twice) / DIGIT;
    if (read->under != 0)
        twice = 2 * micrometres * (int64_t)read->over / (int64_t)read->under;
    twice += 2 * micrometres * (int64_t)read->number.whole;
    int64_t rounded = (twice + 1) / 2;
    if (rounded > LONGEST)
        return BK_READ_TOO_LARGE;
    *length = rounded;
    return BK_READ_OK;
}

bk_reading bk_length_read(const char *text, bk_length *length)
{
    tape read = {0};
    bk_reading reading = bk_decimal_read(&text, &read.number);
    if (reading != BK_READ_OK)
        return reading;
    if (read.number.negative)
        return BK_READ_NEGATIVE;
    if (!read_fraction(&text, &read))
        return BK_READ_NOT_NUMBER;
    text = bk_skip_blank(text);
    if (*text == '\0')
        return BK_READ_NO_UNIT;
    const struct length_unit *unit = unit_of(text);
    if (unit == NULL)
        return is_digit(*text) || strchr("./,-", *text) != NULL ? BK_READ_NOT_NUMBER : BK_READ_UNIT;
    if (read.under != 0 && !unit->fractions)
        return BK_READ_NOT_NUMBER;
    return to_micrometres(&read, unit->micrometres, length);
}

/// The length as a whole number of sixteenths of an inch; false where it is none. A sixteenth is 1587.5
/// micrometres, so an odd number of them has been rounded up by a half.
static bool to_sixteenths(int64_t size, int64_t *sixteenths)
{
    const int64_t two_sixteenths = 2 * BK_MICROMETRES_PER_INCH / SIXTEENTHS;
    *sixteenths = size / two_sixteenths * 2 + size % two_sixteenths * 2 / two_sixteenths;
    int64_t odd = *sixteenths % 2;
    return *sixteenths / 2 * two_sixteenths + odd * (two_sixteenths + 1) / 2 == size;
}

static char *write_inches(int64_t sixteenths, const char *sign, char out[BK_AMOUNT_ROOM])
{
    int64_t whole = sixteenths / SIXTEENTHS;
    unsigned char over = (unsigned char)(sixteenths % SIXTEENTHS);
    unsigned char under = SIXTEENTHS;
    while (over > 0 && over % 2 == 0) {
        over /= 2;
        under /= 2;
    }
    if (over == 0)
        snprintf(out, BK_AMOUNT_ROOM, "%s%lld in", sign, (long long)whole);
    else if (whole == 0)
        snprintf(out, BK_AMOUNT_ROOM, "%s%d/%d in", sign, over, under);
    else
        snprintf(out, BK_AMOUNT_ROOM, "%s%lld %d/%d in", sign, (long long)whole, over, under);
    return out;
}

char *bk_length_write(bk_length length, bk_unit unit, char out[BK_AMOUNT_ROOM])
{
    int64_t sixteenths = 0;
    if (unit == BK_INCH && length != BK_NO_AMOUNT &&
        to_sixteenths(length < 0 ? -length : length, &sixteenths))
        return write_inches(sixteenths, length < 0 ? "-" : "", out);
    bk_decimal_write(length, CM_DECIMALS, true, out);
    if (out[0] != '\0')
        strcat(out, " cm");
    return out;
}
