#ifndef BODKIN_SHEET_CSV_H
#define BODKIN_SHEET_CSV_H

#include <stdbool.h>
#include <stddef.h>

#include "bodkin/base/text.h"

/// Comma-separated values after RFC 4180: cells quoted where they hold a comma, a quote or a line end, quotes doubled,
/// spaces are data. Read are CRLF and LF line ends, a byte order mark, and empty lines, which are passed over; written are
/// CRLF and no byte order mark.

enum {
    BK_CSV_CELL_MOST = 65536, ///< bytes in one cell
    BK_CSV_CELLS_MOST = 1024  ///< cells of one record; more are passed over
};

typedef enum bk_csv_fault {
    BK_CSV_OK,
    BK_CSV_QUOTE_OPEN,   ///< a quote is never closed
    BK_CSV_QUOTE_AFTER,  ///< something other than a comma or a line end follows a closing quote
    BK_CSV_QUOTE_INSIDE, ///< a quote inside a cell that is not quoted
    BK_CSV_NUL,          ///< a NUL byte
    BK_CSV_UTF8,         ///< bytes that are not UTF-8
    BK_CSV_LARGE         ///< a cell of more than BK_CSV_CELL_MOST bytes
} bk_csv_fault;

typedef struct bk_csv_cell {
    const char *text; ///< NUL-terminated, in the reader's memory, good until the next record
    size_t length;
    bk_csv_fault fault; ///< of this cell; its text is then empty
    unsigned char byte; ///< the byte at fault for BK_CSV_UTF8
} bk_csv_cell;

/// One record; the cells belong to the reader and are good until the next record is read.
typedef struct bk_csv_record {
    const bk_csv_cell *cells;
    size_t count;
    int line; ///< line of the file on which it begins, from 1
} bk_csv_record;

typedef struct bk_csv_reader bk_csv_reader;

/// Reads from memory that stays the caller's and must outlive the reader.
bk_csv_reader *bk_csv_reader_new(const char *bytes, size_t length);
void bk_csv_reader_free(bk_csv_reader *reader);
/// The next record; false at the end.
bool bk_csv_next(bk_csv_reader *reader, bk_csv_record *record);
/// Bytes read so far, for progress.
size_t bk_csv_position(const bk_csv_reader *reader);

/// Appends one cell, with a comma before it unless it is the `first` of its record, quoted where needed; NULL
/// is an empty cell. Text that a spreadsheet would take for a formula gets a `'` in front when `guard`.
void bk_csv_write_cell(bk_buffer *out, const char *text, bool first, bool guard);
void bk_csv_write_end(bk_buffer *out);

/// Takes off the `'` that bk_csv_write_cell put in front: returns where the text itself begins.
const char *bk_csv_unguard(const char *text);

#endif
