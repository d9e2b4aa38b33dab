#ifndef BODKIN_UI_CURSOR_H
#define BODKIN_UI_CURSOR_H

#include <stdbool.h>
#include <stddef.h>

#include "bodkin/ui/keys.h"

/// A cursor in a list of which a part is seen. Pure.

typedef struct bk_cursor {
    size_t count; ///< lines of the list
    size_t at;    ///< the chosen one, below `count` unless that is 0
    size_t top;   ///< the first one seen
    size_t seen;  ///< how many are seen at once, at least 1
} bk_cursor;

/// The list has `count` lines now, `seen` of them at once: the cursor stays as near as it can, and in sight.
void bk_cursor_fit(bk_cursor *cursor, size_t count, size_t seen);

/// Puts the cursor on a line (the last one when there are fewer) and brings it in sight.
void bk_cursor_put(bk_cursor *cursor, size_t at);

/// Moves by an arrow, a page, Home or End; false for any other key.
bool bk_cursor_key(bk_cursor *cursor, bk_key_name name);

#endif
