#ifndef BODKIN_UI_TERM_H
#define BODKIN_UI_TERM_H

#include <stdbool.h>
#include <stddef.h>

#include "bodkin/base/error.h"
#include "bodkin/ui/keys.h"

/// The terminal: the only door to curses. There is one, of this process; rows and columns count from 0.

/// How text looks. Where the terminal has no colours (or NO_COLOR is set) only weight and reverse remain.
typedef enum bk_style {
    BK_STYLE_PLAIN,
    BK_STYLE_DIM,    ///< beside the point: headings of columns, what is done
    BK_STYLE_BOLD,   ///< what a screen is about
    BK_STYLE_ACCENT, ///< the one accent: keys, what is sewn, what narrows
    BK_STYLE_LATE,   ///< the three urgencies; the word always stands there too
    BK_STYLE_TIGHT,
    BK_STYLE_IN_TIME,
    BK_STYLES
} bk_style;

/// Added to a style: on the line of the cursor, which is shown in reverse.
enum { BK_STYLE_CHOSEN = 0x100 };

/// Whether there is a terminal that can be taken over; nothing is done to it. Errors: standard input or output is no
/// terminal, its type (TERM) is unknown or cannot move the cursor.
bk_status bk_term_possible(bk_error *error) BK_MUST_USE;

/// Takes the terminal over. Errors: standard input or output is no terminal, its type (TERM) is unknown or cannot move
/// the cursor. From here to bk_term_stop a fatal signal first puts the terminal right.
bk_status bk_term_start(bk_error *error) BK_MUST_USE;

/// Gives it back as it was; harmless when it was not taken over.
void bk_term_stop(void);

/// Gives it to another program (an editor) that runs in between, and takes it back from it. Signals are then as they were
/// before bk_term_start; whoever runs the program keeps the keys that interrupt it from ending this one.
void bk_term_pause(void);
void bk_term_resume(void);

/// Its size now.
size_t bk_term_rows(void);
size_t bk_term_columns(void);

/// Whether only ASCII may be drawn: the locale is not UTF-8.
bool bk_term_ascii(void);

/// Begins a new picture: everything blank. Nothing is sent before bk_term_show.
void bk_term_clear(void);

/// Puts text, already safe (bk_text_safe), at a place, and cuts it hard at `width` columns; `style` is a bk_style, perhaps
/// with BK_STYLE_CHOSEN. Returns the columns used. Outside the screen nothing happens.
size_t bk_term_put(size_t row, size_t column, size_t width, int style, const char *text);

/// Makes `width` columns blank in a style: the bar of the chosen line.
void bk_term_fill(size_t row, size_t column, size_t width, int style);

/// Where the terminal's own cursor stands, and whether it is seen (while something is typed). It stands on the chosen line
/// otherwise, so that a reader of the screen finds it.
void bk_term_cursor(size_t row, size_t column, bool seen);

/// Sends what differs from what the terminal shows.
void bk_term_show(void);

/// The next key, if one was typed; false at once when there is none.
bool bk_term_key(bk_key *key);

/// Waits until a key may be there, or something happened to the terminal, at most so long.
void bk_term_wait(int milliseconds);

#endif
