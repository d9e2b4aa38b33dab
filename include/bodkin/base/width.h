#ifndef BODKIN_BASE_WIDTH_H
#define BODKIN_BASE_WIDTH_H

#include <stdbool.h>
#include <stddef.h>

#include "bodkin/base/arena.h"

/// Columns that the text takes on a terminal (wide characters two, combining none); well-formed UTF-8
/// expected, other bytes count one column each.
size_t bk_text_columns(const char *text);

/// How far into `text` (bytes) one can go without passing `columns`, never splitting a grapheme cluster.
size_t bk_text_fit(const char *text, size_t columns);

/// Bytes of the grapheme cluster at `text`; 0 at its end.
size_t bk_text_step(const char *text);

/// `text` cut to `columns`: at a word where one ends in the last third, with an ellipsis ("…", or "..." when
/// `ascii`); unchanged where it fits.
char *bk_text_cut(bk_arena *arena, const char *text, size_t columns, bool ascii);

/// Lines of `text` broken at words to at most `columns` each (a longer word is broken; a character wider than
/// `columns` has a line of its own); explicit line ends are kept, one at the very end adds no line, empty
/// text has none. The strings and the array live in `arena`; `*count` is set.
char **bk_text_wrap(bk_arena *arena, const char *text, size_t columns, size_t *count);

#endif
