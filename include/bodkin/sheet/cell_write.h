#ifndef BODKIN_SHEET_CELL_WRITE_H
#define BODKIN_SHEET_CELL_WRITE_H

#include "bodkin/base/text.h"
#include "bodkin/sheet/columns.h"

/// How a production writes its amounts.
typedef struct bk_cell_style {
    bk_unit unit;         ///< of lengths
    const char *currency; ///< that need not be written; NULL when there is none
} bk_cell_style;

/// Appends the cell of one column to a record; a field that is not known gives an empty cell.
void bk_cell_write(bk_buffer *out, const bk_column *column, const void *record, const bk_cell_style *style,
                   bool first);

/// Appends the text of one column as it is, without a file's quotes and guards; nothing for a field that is not known. `out` is
/// a string then.
void bk_cell_text(bk_buffer *out, const bk_column *column, const void *record, const bk_cell_style *style);

#endif
