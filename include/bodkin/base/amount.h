#ifndef BODKIN_BASE_AMOUNT_H
#define BODKIN_BASE_AMOUNT_H

#include <stdbool.h>
#include <stdint.h>

/// Lengths, quantities and money as whole numbers, exact in and out. This header brings all three.
#include "bodkin/base/length.h"
#include "bodkin/base/money.h"
#include "bodkin/base/number.h"

typedef int64_t bk_quantity; ///< millionths of the material's unit

#define BK_QUANTITY_ONE INT64_C(1000000)

/// The largest quantity that can be written down, a thousand million units: thousands of them add up without overflow.
#define BK_QUANTITY_MOST (INT64_C(1000000000) * BK_QUANTITY_ONE)

/// How far from zero the sum of all that moved on a shelf may lie: steps that are done take what they need also where
/// nothing lies there.
#define BK_SHELF_MOST (1000 * BK_QUANTITY_MOST)

/// Reads a plain decimal number with at most six decimals, as millionths; a sign `-` is allowed when
/// `below_zero`. At most BK_QUANTITY_MOST, and not below -BK_SHELF_MOST.
bk_reading bk_quantity_read(const char *text, bool below_zero, bk_quantity *quantity);
/// Writes it without trailing zeros: `2.4`, `-0.5`, `3`; the empty string for BK_NO_AMOUNT. Returns `out`.
char *bk_quantity_write(bk_quantity quantity, char out[BK_AMOUNT_ROOM]);

/// Reads a whole number of at least `least` and at most `most`. Below `least` it is BK_READ_NEGATIVE when it
/// is below zero, else BK_READ_TOO_SMALL.
bk_reading bk_whole_read(const char *text, int64_t least, int64_t most, int64_t *number);

/// Minutes as a person reads them: `45 min`, `3 h`, `3 h 20`, `3 h 05`. Returns `out`.
char *bk_minutes_words(int64_t minutes, char out[BK_AMOUNT_ROOM]);

#endif
