#ifndef BODKIN_UI_LENGTH_WORDS_H
#define BODKIN_UI_LENGTH_WORDS_H

#include "bodkin/base/amount.h"
#include "bodkin/base/arena.h"

/// Measures of a body for columns and sentences: in centimetres with at most two decimals, in inches as fractions down to
/// sixteenths. What is none of these is rounded (half up) to a millimetre or a sixteenth. Texts live in `arena`.

/// "74.5", "36 3/8"; "~92.4" where it was rounded; NULL for BK_NO_AMOUNT.
const char *bk_length_number(bk_length value, bk_unit unit, bk_arena *arena);

/// The same with its unit, "74.5 cm"; where it was rounded with what it was taken as, "36 3/8 in (~92.4 cm)".
const char *bk_length_words(bk_length value, bk_unit unit, bk_arena *arena);

/// A change: "+3.5", "-1/2", "0"; NULL for BK_NO_AMOUNT.
const char *bk_change_number(bk_length change, bk_unit unit, bk_arena *arena);

/// "cm", "in".
const char *bk_unit_word(bk_unit unit);

#endif
