#ifndef BODKIN_UI_COLUMNS_H
#define BODKIN_UI_COLUMNS_H

#include <stdbool.h>
#include <stddef.h>

/// Sharing out the width of a screen over the columns of a table. Pure.

typedef struct bk_list_column {
    const char *head;
    size_t least; ///< cells it needs to be of use
    size_t most;  ///< cells it may grow to
    size_t gap;   ///< empty cells between it and the next
    bool right;   ///< its text stands at the right
    bool spare;   ///< may be left out where room is short
    bool fills;   ///< takes what is left when all others have what they want
} bk_list_column;

enum { BK_COLUMNS_MOST = 12 };

/// Shares out: each column its least, then all grow evenly to what they want (`wanted`, one for each; at most `most`), then
/// the one that fills takes the rest. Where they do not fit, each has its least.
void bk_columns_share(const bk_list_column *const *columns, const size_t *wanted, size_t count, size_t width,
                      size_t *widths);

#endif
