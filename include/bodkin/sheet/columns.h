#ifndef BODKIN_SHEET_COLUMNS_H
#define BODKIN_SHEET_COLUMNS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "bodkin/trade/words.h"
#include "bodkin/work/folder.h"

/// The sheets of a production's folder and their columns, as one table that the reader and the writer walk (design,
/// section 5).

typedef enum bk_sheet_number {
    BK_SHEET_PRODUCTION,
    BK_SHEET_DATES,
    BK_SHEET_PEOPLE,
    BK_SHEET_AWAY,
    BK_SHEET_EQUIPMENT,
    BK_SHEET_PERFORMERS,
    BK_SHEET_MEASURES,
    BK_SHEET_ROLES,
    BK_SHEET_COSTUMES,
    BK_SHEET_PIECES,
    BK_SHEET_STEPS,
    BK_SHEET_MATERIALS,
    BK_SHEET_NEEDS,
    BK_SHEET_ORDERS,
    BK_SHEET_FITTINGS,
    BK_SHEET_WORKS,
    BK_SHEET_WORK_STEPS,
    BK_SHEET_NOTES,
    BK_SHEETS
} bk_sheet_number;

/// What stands in a cell, and the type of the record's field it goes to.
typedef enum bk_cell_type {
    BK_CELL_NAME, ///< a name or key, without `;` and `/` (const char *, interned: the same text is the same pointer)
    BK_CELL_TEXT,     ///< anything (const char *)
    BK_CELL_NAMES,    ///< a list of names (const char *, items joined by `;`)
    BK_CELL_AFTER,    ///< a list of steps, KEY or PIECE/KEY (const char *)
    BK_CELL_WORDS,    ///< a list of words of a set (const char *)
    BK_CELL_WORD,     ///< one word of a set (int)
    BK_CELL_HOURS,    ///< hours of a day (const char *)
    BK_CELL_CURRENCY, ///< three capital letters (const char *)
    BK_CELL_DAY,      ///< bk_day
    BK_CELL_TIME,     ///< bk_minute
    BK_CELL_MOMENT,   ///< bk_moment
    BK_CELL_LENGTH,   ///< bk_length
    BK_CELL_QUANTITY, ///< bk_quantity
    BK_CELL_MONEY,    ///< bk_money, and its currency in a second field
    BK_CELL_WHOLE,    ///< int64_t
    BK_CELL_VERSION,  ///< int64_t; written is always the version of this table
    BK_CELL_REST,     ///< decimal hours that make whole minutes (int64_t, minutes)
    BK_CELL_YES,      ///< `yes` or nothing (int64_t, 1 or 0)
    BK_CELL_TYPES
} bk_cell_type;

typedef struct bk_column {
    const char *name;
    bool required;
    bk_cell_type type;
    size_t offset;         ///< of the field in the record
    const char *example;   ///< a cell that would be right
    const bk_words *words; ///< of BK_CELL_WORD and BK_CELL_WORDS
    const char *unit;      ///< of a whole number: what it counts
    int64_t least, most;   ///< of a whole number; a quantity may be below zero where `least` is
    size_t currency;       ///< of BK_CELL_MONEY: offset of the currency's field
} bk_column;

enum { BK_SHEETS_VERSION = 1 };

typedef struct bk_sheet {
    const char *file; ///< "people.csv"
    const char *noun; ///< what the first column names: "person"
    const bk_column *columns;
    size_t column_count;
    size_t key_count;   ///< that many columns from the first on tell rows apart; 0: rows may be alike
    size_t record_size; ///< of its record
    size_t line;        ///< offset of the record's line
    size_t rows;        ///< offset of its array in bk_folder
} bk_sheet;

extern const bk_sheet bk_sheets[BK_SHEETS];

/// The number of the sheet of that file name, or BK_SHEETS.
bk_sheet_number bk_sheet_find(const char *file);

/// The number of a column, or the sheet's column_count.
size_t bk_column_find(const bk_sheet *sheet, const char *name);

/// The array of a sheet's records in a folder.
typedef struct bk_sheet_rows {
    void *items;
    size_t count;
} bk_sheet_rows;
bk_sheet_rows bk_sheet_rows_get(const bk_folder *folder, const bk_sheet *sheet);
void bk_sheet_rows_set(bk_folder *folder, const bk_sheet *sheet, bk_sheet_rows rows);

/// Record number `row` of an array.
const void *bk_sheet_row(const bk_sheet *sheet, bk_sheet_rows rows, size_t row);
/// The line of the file that a record came from.
int bk_sheet_line(const bk_sheet *sheet, const void *record);
/// The text in a field that holds one; NULL for an empty cell.
const char *bk_sheet_text(const void *record, size_t offset);

/// Makes every field "not known".
void bk_sheet_clear(const bk_sheet *sheet, void *record);
/// Makes the field of one column "not known".
void bk_column_clear(const bk_column *column, void *record);

#endif
