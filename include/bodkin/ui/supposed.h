#ifndef BODKIN_UI_SUPPOSED_H
#define BODKIN_UI_SUPPOSED_H

#include <stdbool.h>
#include <stddef.h>

#include "bodkin/work/suppose.h"

/// What a person supposes while the program runs: a list that is the wall's, so that it stays when its screen is left. Nothing
/// of it stands in the store.

typedef struct bk_supposed {
    bk_supposition *items; ///< with texts of their own
    size_t count, room;
    int64_t changes; ///< how often it was changed: another number means another list
} bk_supposed;

/// The index of a new one, for bk_supposed_put.
#define BK_SUPPOSED_NEW SIZE_MAX

/// Puts a supposition (copied) in place of number `at`, or behind the last. What it would contradict goes: another day of the same
/// date, another fate of the same costume. Returns its index.
size_t bk_supposed_put(bk_supposed *supposed, size_t at, const bk_supposition *supposition);

/// Takes one off; nothing happens where there is no such.
void bk_supposed_take_off(bk_supposed *supposed, size_t at);

/// Takes all off and frees what they hold.
void bk_supposed_clear(bk_supposed *supposed);

#endif
