#ifndef BODKIN_TRADE_DOUBTS_H
#define BODKIN_TRADE_DOUBTS_H

#include "bodkin/base/amount.h"
#include "bodkin/base/arena.h"
#include "bodkin/base/date.h"

/// Whether measures can be true: doubts, in a sentence each, about values that look like a slip (the other unit, a decimal
/// point, swapped digits), that go with no body, or that are far from the same person's last sheet. Nothing is refused:
/// people have all shapes, and the maker knows better. Source of what goes together: the 2012 U.S. Army anthropometric
/// survey (NATICK/TR-15/007), widened for children, for the natural waist and for bodies of all shapes.

typedef struct bk_taken {
    const char
        *measure; ///< its name, as in bk_measure_terms; of other names nothing is known, they are passed over
    bk_length value; ///< micrometres; BK_NO_AMOUNT is passed over
} bk_taken;

/// A measure sheet, whole or as far as it has been taken.
typedef struct bk_taken_sheet {
    const bk_taken *items;
    size_t count;
    bk_day on;
} bk_taken_sheet;

typedef struct bk_doubt {
    size_t item;      ///< index of the measure in its sheet
    const char *says; ///< one sentence: what looks wrong, why, what may have been meant; in the sheet's unit
} bk_doubt;

typedef struct bk_doubts {
    bk_doubt *items; ///< in the order of the sheet, at most one for a measure
    size_t count;
} bk_doubts;

/// The unit that a sheet's values were typed in: centimetres where most are whole millimetres, inches where most are
/// sixteenths or tenths of an inch, else `usual`.
bk_unit bk_unit_typed(const bk_taken_sheet *sheet, bk_unit usual);

/// All doubts about a sheet. `before` is the same person's last sheet, or NULL; `unit` is the one that the values were
/// typed in and are told in. The doubts live in `arena`.
bk_doubts bk_doubts_of_sheet(const bk_taken_sheet *sheet, const bk_taken_sheet *before, bk_unit unit,
                             bk_arena *arena);

/// The doubt about one value, by what is on the sheet so far; NULL when there is none. Lives in `arena`.
const char *bk_doubt_of_value(const bk_taken_sheet *sheet, size_t item, const bk_taken_sheet *before,
                              bk_unit unit, bk_arena *arena);

#endif
