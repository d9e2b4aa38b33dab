#ifndef BODKIN_TRADE_DOUBTS_TYPED_H
#define BODKIN_TRADE_DOUBTS_TYPED_H

#include <stddef.h>

#include "bodkin/base/amount.h"

/// What else may have been meant by a length that was typed: the slips that hands make.
typedef enum bk_slip {
    BK_SLIP_INCHES,      ///< a number of inches taken for centimetres
    BK_SLIP_CENTIMETRES, ///< a number of centimetres taken for inches
    BK_SLIP_POINT_OUT,   ///< the decimal point left out, or a place too far right
    BK_SLIP_POINT_EARLY, ///< the decimal point a place too far left
    BK_SLIP_SWAPPED,     ///< two neighbouring digits swapped
    BK_SLIPS
} bk_slip;

typedef struct bk_meant {
    bk_slip slip;
    bk_length value;
} bk_meant;

enum { BK_MEANT_MOST = 24 };

/// All that may have been meant by `value`, typed in `unit`; returns how many, at most BK_MEANT_MOST. Swaps that change it
/// by less than a fourteenth are left out: no body can tell them apart. A value of 0 or less gives none.
size_t bk_meant_by(bk_length value, bk_unit unit, bk_meant meant[BK_MEANT_MOST]);

/// Writes the length as it was typed: in inches where the unit is inches and it is a number of sixteenths, else as a decimal
/// number of the unit with at most two decimals. Returns `out`.
char *bk_typed_write(bk_length value, bk_unit unit, char out[BK_AMOUNT_ROOM]);

#endif
