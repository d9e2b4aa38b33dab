#ifndef BODKIN_WORK_RECORD_FIELDS_H
#define BODKIN_WORK_RECORD_FIELDS_H

#include "bodkin/work/record_desk.h"

/// What a record is filled in with, field by field, as one table: what must be
/// there, which bounds numbers have, and which fields differ. The columns are
/// those of the sheets (design, section 5).

typedef enum bk_filled_type {
    BK_FILLED_TEXT,   ///< const char *; an empty one becomes NULL
    BK_FILLED_NAME,   ///< the same, without `;` and `/`
    BK_FILLED_LIST,   ///< the same, a list of such names
    BK_FILLED_STEPS,  ///< the same, a list of KEY or PIECE/KEY
    BK_FILLED_KINDS,  ///< the same, a list of kinds of steps
    BK_FILLED_HOURS,  ///< the same, hours of a day
    BK_FILLED_CODE,   ///< the same, a currency
    BK_FILLED_NUMBER, ///< int64_t
    BK_FILLED_DAY,    ///< bk_day
    BK_FILLED_TIME,   ///< bk_minute
    BK_FILLED_MOMENT, ///< bk_moment
    BK_FILLED_WORD    ///< int
} bk_filled_type;

/// Puts `""` as NULL and lists without spaces round their items, which are written into `arena`.
void bk_fields_tidy(bk_family family, void *record, bk_arena *arena);

/// Refuses what no sheet could hold: an empty field that must be filled, a name
/// with `;` or `/`, a number out of its bounds, a list that names something
/// twice. `noun` is what the record is: "a costume".
bk_status bk_fields_check(bk_desk *desk, bk_family family, const char *noun, const void *record) BK_MUST_USE;

/// Which fields differ: their names, in words, at most two of them (NULL behind
/// the last), and how many differ in all.
enum { BK_FIELDS_NAMED = 2 };
size_t bk_fields_differ(bk_family family, const void *left, const void *right,
                        const char *names[BK_FIELDS_NAMED]);

/// Puts the filled fields of `record` that differ into `known`; whether any
/// did.
bool bk_fields_fill(bk_family family, const void *record, void *known);

#endif
