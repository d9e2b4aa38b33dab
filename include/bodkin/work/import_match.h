#ifndef BODKIN_WORK_IMPORT_MATCH_H
#define BODKIN_WORK_IMPORT_MATCH_H

#include <stddef.h>

#include "bodkin/base/arena.h"

/// Matching rows of a sheet with records that have no name of their own, orders and absences: what tells them apart is
/// written as a key, and of those with the same key each is matched once, in their order.

typedef struct bk_matches bk_matches;

enum { BK_NO_MATCH = -1 };

/// For `count` records, none of which can be matched yet. Freed by bk_matches_free.
bk_matches *bk_matches_new(size_t count);
void bk_matches_free(bk_matches *matches);

/// Lets the record at `index` be matched by `key`, which must outlive the matches. Records are put last to first.
void bk_matches_put(bk_matches *matches, const char *key, size_t index);

/// The first record of that key that was not matched yet, or BK_NO_MATCH.
long long bk_matches_take(bk_matches *matches, const char *key);

#endif
