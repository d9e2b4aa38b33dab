#ifndef BODKIN_BASE_NUMBER_H
#define BODKIN_BASE_NUMBER_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/// Decimal numbers as people write them, read and written exactly; what amounts of every kind have in common.

#define BK_NO_AMOUNT INT64_MIN ///< "not known", for lengths, quantities and money

enum { BK_AMOUNT_ROOM = 40 };

/// Why a text is not an amount; BK_READ_OK when it is.
typedef enum bk_reading {
    BK_READ_OK,
    BK_READ_EMPTY,
    BK_READ_NOT_NUMBER, ///< no number stands there
    BK_READ_COMMA,      ///< a decimal comma; a point would be right
    BK_READ_NO_UNIT,    ///< a length without its unit
    BK_READ_UNIT,       ///< an unknown unit
    BK_READ_NEGATIVE,
    BK_READ_DECIMALS, ///< more decimals than can be kept exactly
    BK_READ_TOO_LARGE,
    BK_READ_TOO_SMALL ///< a whole number below the least that is allowed, yet not below zero
} bk_reading;

/// A decimal number taken apart; `fraction` points into the text that was read.
typedef struct bk_decimal {
    bool negative;        ///< a `-` stands before it
    uint64_t whole;       ///< the digits before the point; UINT64_MAX when there are too many
    const char *fraction; ///< the digits behind the point, `decimals` of them
    size_t decimals;
} bk_decimal;

/// Reads `-`, digits, and a point with digits behind it (the sign, the digits before the point, and point and
/// decimals may each be missing, but not all digits), after spaces. `*text` is moved behind the number, and
/// stays where it is when there is none. BK_READ_EMPTY, BK_READ_NOT_NUMBER or BK_READ_COMMA otherwise; NULL
/// is empty.
bk_reading bk_decimal_read(const char **text, bk_decimal *decimal);

/// `decimal` as a whole number of 10^-places: BK_READ_DECIMALS when it has more decimals, BK_READ_TOO_LARGE
/// when its size is above `most` (at most INT64_MAX).
bk_reading bk_decimal_scale(const bk_decimal *decimal, size_t places, int64_t most, int64_t *scaled);

/// Writes `value`, a whole number of 10^-places (at most 18 places), with a point; without trailing zeros
/// when `trim`. The empty string for BK_NO_AMOUNT. Returns `out`.
char *bk_decimal_write(int64_t value, size_t places, bool trim, char out[BK_AMOUNT_ROOM]);

/// Steps over spaces and tabs.
const char *bk_skip_blank(const char *text);

#endif
