#ifndef BODKIN_SHEET_NAMES_H
#define BODKIN_SHEET_NAMES_H

#include <stddef.h>

#include "bodkin/base/arena.h"

/// Texts of a folder, each kept once: equal texts are the same pointer, so that names are compared as whole numbers and a
/// name that stands in a hundred thousand rows takes no more memory than one.
typedef struct bk_names bk_names;

/// The texts live in `arena`, which outlives the names.
bk_names *bk_names_new(bk_arena *arena);
void bk_names_free(bk_names *names);

/// The one copy of the first `length` bytes of `text`.
const char *bk_names_keep(bk_names *names, const char *text, size_t length);
/// The same, or NULL where this text was never kept.
const char *bk_names_find(bk_names *names, const char *text, size_t length);

#endif
