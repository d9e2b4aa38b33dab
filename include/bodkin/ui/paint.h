#ifndef BODKIN_UI_PAINT_H
#define BODKIN_UI_PAINT_H

#include <stdbool.h>
#include <stddef.h>

#include "bodkin/base/arena.h"
#include "bodkin/sheet/wait_words.h"
#include "bodkin/ui/term.h"

/// Drawing for the screens. Every text is made safe for the terminal here, so a text of the store may be handed in as it
/// is. Rows, columns and widths are cells of the terminal.

/// One picture being drawn; `arena` is forgotten when it is done.
typedef struct bk_paint {
    bk_arena *arena;
    bool ascii;
    size_t rows, columns;
} bk_paint;

/// A place in a row.
typedef struct bk_spot {
    size_t row, column, width;
} bk_spot;

/// Puts `text` at the left of the spot, cut at a word with an ellipsis where it is too long; returns the columns used. NULL
/// is drawn as nothing.
size_t bk_paint_text(const bk_paint *paint, bk_spot spot, int style, const char *text);

/// The same at the right end of the spot.
size_t bk_paint_right(const bk_paint *paint, bk_spot spot, int style, const char *text);

/// Puts a whole text into as many rows as it takes, but at most `rows`, the last one with an ellipsis where it does not
/// fit; returns the rows used.
size_t bk_paint_whole(const bk_paint *paint, bk_spot spot, size_t rows, int style, const char *text);

/// The same where the text has several paragraphs, a line end between them: each begins a row.
size_t bk_paint_paragraphs(const bk_paint *paint, bk_spot spot, size_t rows, int style, const char *text);

/// How many rows that would take, without limit; nothing is drawn.
size_t bk_paint_rows(const bk_paint *paint, size_t width, const char *text);

/// Draws a seam over the whole spot: stitches, pin and chalk dots each in their style.
void bk_paint_seam(const bk_paint *paint, bk_spot spot, bool chosen, bk_seam seam);

/// The spot of a whole row, with the margin on both sides.
bk_spot bk_paint_row(const bk_paint *paint, size_t row);

/// Makes a row the chosen one, before anything is drawn in it: a bar in reverse, a mark in the margin for terminals without
/// reverse, and the terminal's own cursor.
void bk_paint_chosen(const bk_paint *paint, size_t row);

/// The style of an urgency.
int bk_urgency_style(bk_urgency urgency);

/// A few words with a number or a key beside them: "ready 2", "m measures 3".
typedef struct bk_item {
    const char *key;  ///< drawn first, in accent; NULL: none
    const char *word; ///< drawn dim
    const char *rest; ///< drawn plain, may be NULL
    bool lit;         ///< the whole is drawn in accent
    bool spare;       ///< may be left out where room is short
} bk_item;

/// Draws the items in one row, as far apart as there is room; where it is too short spare ones go first, then the last.
void bk_paint_items(const bk_paint *paint, bk_spot spot, const bk_item *items, size_t count);

/// Whether all items that are not spare have room in so many columns.
bool bk_paint_items_fit(const bk_item *items, size_t count, size_t width);

/// Says something on the bottom line in bold, whole, with the items at its end: where it is longer than that leaves room for, it
/// stands in the rows above, over what was drawn there.
void bk_paint_notice(const bk_paint *paint, const char *text, const bk_item *items, size_t count);

/// Whether it stands on one row with the items.
bool bk_paint_notice_fits(const bk_paint *paint, const char *text, const bk_item *items, size_t count);

#endif
