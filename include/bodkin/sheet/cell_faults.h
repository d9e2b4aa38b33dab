#ifndef BODKIN_SHEET_CELL_FAULTS_H
#define BODKIN_SHEET_CELL_FAULTS_H

#include "bodkin/sheet/cell_read.h"

/// The sentences for what can be wrong with a cell: one each, what is wrong and what would be right.

/// `"the cell" FORMAT`.
void bk_cell_fault(const bk_cell *cell, const char *format, ...) BK_PRINTF(2, 3);
/// Nothing stands where something must.
void bk_cell_fault_empty(const bk_cell *cell);
/// A name with a `;` or a `/` in it.
void bk_cell_fault_letter(const bk_cell *cell, char letter);
/// A list with the same item twice.
void bk_cell_fault_twice(const bk_cell *cell, const char *item, size_t length);
/// `word` is none of the column's words.
void bk_cell_fault_word(const bk_cell *cell, const char *word);

// `text` is the cell without spaces at its ends, `reading` why it could not be read.
void bk_cell_fault_day(const bk_cell *cell, const char *text);
void bk_cell_fault_moment(const bk_cell *cell, const char *text);
void bk_cell_fault_length(const bk_cell *cell, const char *text, bk_reading reading);
void bk_cell_fault_quantity(const bk_cell *cell, const char *text, bk_reading reading);
void bk_cell_fault_money(const bk_cell *cell, const char *text, bk_reading reading);
void bk_cell_fault_rest(const bk_cell *cell, const char *text, bk_reading reading);
void bk_cell_fault_whole(const bk_cell *cell, const char *text, bk_reading reading);

#endif
