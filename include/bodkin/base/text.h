#ifndef BODKIN_BASE_TEXT_H
#define BODKIN_BASE_TEXT_H

#include <stdbool.h>
#include <stddef.h>

/// Everything about text; this header brings all of it.
#include "bodkin/base/arena.h"
#include "bodkin/base/buffer.h"
#include "bodkin/base/safe.h"
#include "bodkin/base/utf8.h"
#include "bodkin/base/width.h"

/// Natural order: runs of digits compare as numbers, all else byte by byte (2A before 10A); equal keys
/// compare as plain bytes, so that the order is total. NULL comes last.
int bk_natural_order(const char *left, const char *right);

/// A copy of a string in memory of its own; the caller frees it.
char *bk_text_copy(const char *text);

/// Whether two strings are the same; NULL equals only NULL.
bool bk_same_text(const char *left, const char *right);

/// The nearest of `count` words to `word`, for "did you mean"; NULL when none is near: at most two letters
/// put in, left out, changed or swapped with their neighbour, and fewer than `word` has; capitals of ASCII
/// count as small letters. Words of more than 64 bytes are near to none.
const char *bk_nearest(const char *word, const char *const *words, size_t count);

/// The full stop that a sentence still needs: "" behind . ? ! and …, else ".".
const char *bk_full_stop(const char *sentence);

/// Walks a list in a cell, its items separated by `;`, spaces round an item passed over. `*rest` is moved
/// behind the item; returns false at the end. An empty item is given as length 0; a `;` at the very end adds
/// none.
bool bk_list_item(const char **rest, const char **item, size_t *length);

#endif
