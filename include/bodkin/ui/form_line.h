#ifndef BODKIN_UI_FORM_LINE_H
#define BODKIN_UI_FORM_LINE_H

#include <stdbool.h>
#include <stddef.h>

#include "bodkin/base/text.h"
#include "bodkin/ui/keys.h"

/// A text being typed, and the cursor in it. Pure; the cursor never stands within a character (a grapheme cluster).

typedef struct bk_form_line {
    bk_buffer text;
    size_t at; ///< bytes before the cursor
} bk_form_line;

void bk_form_line_free(bk_form_line *line);
/// The text, "" where there is none; good until the next change.
const char *bk_form_line_text(const bk_form_line *line);
/// Puts a whole text there, with the cursor behind it. `text` may be the line's own.
void bk_form_line_put(bk_form_line *line, const char *text);
/// Puts `text` at the cursor, which goes behind it.
void bk_form_line_insert(bk_form_line *line, const char *text);
/// Takes `length` bytes at `from` out and puts `text`, which is not the line's own, there; the cursor goes behind it.
void bk_form_line_replace(bk_form_line *line, size_t from, size_t length, const char *text);
/// Moves or deletes: left, right, home, end, backspace, delete; false for any other key.
bool bk_form_line_key(bk_form_line *line, bk_key_name name);

/// A part of a text that is shown in one row, in bytes; what is between two rows is a space or a line end.
typedef struct bk_form_row {
    size_t from, length;
} bk_form_row;

/// Breaks a text at words into rows of at most `columns`, at least one row; they live in `arena`. `ascii` as it will be drawn.
bk_form_row *bk_form_line_rows(const char *text, size_t columns, bool ascii, bk_arena *arena, size_t *count);
/// The row that byte `at` of the text is shown in.
size_t bk_form_line_row(const bk_form_row *rows, size_t count, size_t at);
/// Moves the cursor a row up or down (`by` -1 or 1) in those rows, near the same column; false where there is none.
bool bk_form_line_move(bk_form_line *line, const bk_form_row *rows, size_t count, int by);
/// Columns that a part of a text takes when drawn.
size_t bk_form_line_columns(const char *text, size_t from, size_t length, bool ascii, bk_arena *arena);

#endif
