#ifndef BODKIN_WORK_MERGE_H
#define BODKIN_WORK_MERGE_H

#include <stdbool.h>
#include <stddef.h>

#include "bodkin/base/arena.h"
#include "bodkin/base/length.h"
#include "bodkin/base/list.h"

/// Merging a row of a sheet into the record that the workroom has already: filled cells that differ replace and are
/// noted, empty cells change nothing.

typedef enum bk_merge_type {
    BK_MERGE_TEXT,
    BK_MERGE_NUMBER,
    BK_MERGE_LENGTH, ///< a number too, told with its unit
    BK_MERGE_DAY,
    BK_MERGE_WORD
} bk_merge_type;

/// A field that can be merged, and whether its values may be told.
typedef struct bk_merge_field {
    const char *column;
    bk_merge_type type;
    size_t offset;
    bool secret; ///< told only as "replaced": contacts and measures
} bk_merge_field;

/// The notes, sentences in `arena`.
typedef struct bk_merge_notes {
    bk_arena *arena;
    bk_unit unit;                ///< in which lengths are told
    BK_LIST(const char *) items; ///< `items.items` is freed with bk_list_free
} bk_merge_notes;

/// Puts the filled fields of `row` that differ into `known`; true when any did. `what` names the record in the notes:
/// "performers.csv: Anna".
bool bk_merge(const bk_merge_field *fields, size_t count, const void *row, void *known, const char *what,
              bk_merge_notes *notes);

/// Notes one replaced value; was and is are shown unless `secret`.
void bk_merge_note(bk_merge_notes *notes, const char *what, const char *column, const char *was,
                   const char *is, bool secret);

#endif
