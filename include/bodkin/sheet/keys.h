#ifndef BODKIN_SHEET_KEYS_H
#define BODKIN_SHEET_KEYS_H

#include "bodkin/sheet/columns.h"

/// Rows of a sheet found by their key: the first columns of the sheet, names (by their one copy) and days.

enum { BK_KEY_PARTS = 3 };

/// The values of the key's columns; the parts that a sheet has not are 0.
typedef struct bk_key {
    uint64_t parts[BK_KEY_PARTS];
} bk_key;

typedef struct bk_keys bk_keys;

/// No row is in it yet. The rows must stay where they are as long as the keys are used.
bk_keys *bk_keys_new(const bk_sheet *sheet, bk_sheet_rows rows);
void bk_keys_free(bk_keys *keys);

/// Puts a row in, unless one with the same key is there: returns the number of the row that has the key now. A row whose
/// key is not wholly known is passed over and returned itself.
size_t bk_keys_put(bk_keys *keys, size_t row);
/// The row with these names as its key, `second` NULL where the key is a single one; false where there is none.
bool bk_keys_find(const bk_keys *keys, const char *first, const char *second, size_t *row);

#endif
