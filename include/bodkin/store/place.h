#ifndef BODKIN_STORE_PLACE_H
#define BODKIN_STORE_PLACE_H

#include <stdbool.h>

#include "bodkin/base/error.h"

/// Where a store lies on the disk: files that only their owner may read, made before SQLite touches them.
/// None of these opens a file that is there, since closing it would end SQLite's locks on it.

typedef enum bk_place_kind { BK_PLACE_NONE, BK_PLACE_EMPTY, BK_PLACE_FILE, BK_PLACE_OTHER } bk_place_kind;

/// What is at `path`: nothing, an empty file, a file, or something else (a folder, a device).
bk_place_kind bk_place_look(const char *path);

/// Makes an empty file (0600); `*made` is false where there is one of that name already.
bk_status bk_place_make(const char *path, bool *made, bk_error *error) BK_MUST_USE;

/// Makes the folders (0700) that `path` lies in, where they are missing.
bk_status bk_place_make_folders(const char *path, bk_error *error) BK_MUST_USE;

/// Leaves a file of ours to its owner alone (0600).
bk_status bk_place_keep_private(const char *path, bk_error *error) BK_MUST_USE;

/// Makes an empty file (0600) beside `path`, named after it and `word`, with a number where that name is
/// taken; `*beside` is the caller's, freed with free().
bk_status bk_place_make_beside(const char *path, const char *word, char **beside, bk_error *error)
    BK_MUST_USE;

#endif
