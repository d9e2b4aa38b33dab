#ifndef BODKIN_SHEET_CELL_READ_H
#define BODKIN_SHEET_CELL_READ_H

#include "bodkin/sheet/columns.h"
#include "bodkin/sheet/faults.h"
#include "bodkin/sheet/names.h"

/// Reading one cell into its field of a record, with a sentence for whatever is wrong with it.

typedef struct bk_cell {
    bk_sheet_number sheet;
    const bk_column *column;
    int line;           ///< of the file, on which its record begins
    const char *text;   ///< as it was typed, without the guard against formulas
    void *record;       ///< where it goes
    const void *before; ///< the record read before this one, or NULL: its names are likely to be the same
    // the folder's
    bk_arena *arena;
    bk_names *names;
    bk_faults *faults;
    const char *currency; ///< the production's, NULL while not known
} bk_cell;

enum { BK_CELL_ITEMS_MOST = 1000 }; ///< items of one list

/// Reads the cell; a faulty or empty one leaves its field as it is, except that a name that is readable in spite of its
/// fault is kept, so that what refers to it is not told as well.
void bk_cell_read(const bk_cell *cell);

/// Whether nothing, or nothing but spaces, stands there.
bool bk_cell_blank(const char *text);

#endif
