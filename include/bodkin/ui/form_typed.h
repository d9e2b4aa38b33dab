#ifndef BODKIN_UI_FORM_TYPED_H
#define BODKIN_UI_FORM_TYPED_H

#include "bodkin/sheet/cell_write.h"

/// Between what people type into a field and the cells of the sheets. Pure; what is given back lives in `arena`, or is a text
/// that was handed in.

typedef struct bk_form_ways {
    bk_day today;
    bk_unit unit;         ///< of lengths with no unit
    const char *currency; ///< of money with none; NULL: none
} bk_form_ways;

/// The cell that a text means: "2027-03-12" for "fri", "90" minutes for "1h30", "hand" for "ha"; "" for nothing but blanks. NULL
/// where it is not understood.
const char *bk_form_cell(const bk_form_ways *ways, const bk_column *column, const char *text,
                         bk_arena *arena);

/// The sentence for a text that was not understood; NULL: the sheets have the right one.
const char *bk_form_not_understood(const bk_column *column, const char *text, bk_arena *arena);

/// A cell as it stands in a field: lists with a space between their items, moments with one before the time.
const char *bk_form_shown(const bk_column *column, const char *cell, bk_arena *arena);

/// What is said beside a cell: a day with its weekday, minutes as hours; NULL: nothing.
const char *bk_form_beside(const bk_form_ways *ways, const bk_column *column, const char *cell,
                           bk_arena *arena);

/// An example of what may be typed.
const char *bk_form_example(const bk_column *column, bk_arena *arena);

/// Whether a column holds a list.
bool bk_form_is_list(const bk_column *column);
/// Whether a column is a whole number of minutes.
bool bk_form_is_minutes(const bk_column *column);

#endif
