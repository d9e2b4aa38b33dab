#include "bodkin/sheet/keys.h"

#include <stdlib.h>
#include <string.h>

struct bk_keys {
    const bk_sheet *sheet;
    bk_sheet_rows rows;
    size_t *slots; ///< row number and one; 0 where the slot is free
    size_t mask;   ///< slots less one, a power of two less one
};

enum { FIRST_SLOTS = 16 };

bk_keys *bk_keys_new(const bk_sheet *sheet, bk_sheet_rows rows)
{
    bk_keys *keys = bk_alloc(sizeof *keys);
    size_t room = FIRST_SLOTS;
    while (room / 2 < rows.count)
        room *= 2;
    *keys = (bk_keys){.sheet = sheet, .rows = rows, .mask = room - 1};
    keys->slots = bk_alloc_clear(room, sizeof *keys->slots);
    return keys;
}

void bk_keys_free(bk_keys *keys)
{
    if (keys == NULL)
        return;
    free(keys->slots);
    free(keys);
}

/// The value of one column of a key as a whole number; 0 where it is not known.
static uint64_t part_of(const bk_column *column, const void *record)
{
    if (column->type == BK_CELL_DAY) {
        bk_day day = BK_NO_DAY;
        memcpy(&day, (const char *)record + column->offset, sizeof day);
        return (uint64_t)((int64_t)day - BK_NO_DAY);
    }
    return (uint64_t)(uintptr_t)bk_sheet_text(record, column->offset);
}

/// The key of a row; false where a part of it is not known.
static bool key_of(const bk_keys *keys, size_t row, bk_key *key)
{
    const void *record = bk_sheet_row(keys->sheet, keys->rows, row);
    *key = (bk_key){{0}};
    for (size_t i = 0; i < keys->sheet->key_count; i++) {
        key->parts[i] = part_of(&keys->sheet->columns[i], record);
        if (key->parts[i] == 0)
            return false;
    }
    return true;
}

/// Spreads the bits of a key: multiplied by 2^64 divided by the golden ratio (Knuth, The Art of Computer Programming,
/// volume 3, section 6.4; from memory), the high half folded in because the low bits choose the slot.
static uint64_t spread(const bk_key *key)
{
    uint64_t hash = 0;
    for (size_t i = 0; i < BK_KEY_PARTS; i++) {
        hash = (hash ^ key->parts[i]) * UINT64_C(0x9E3779B97F4A7C15);
        hash ^= hash >> 32;
    }
    return hash;
}

/// The slot of the row with that key, or the free one where it would go.
static size_t *slot_of(const bk_keys *keys, const bk_key *key)
{
    size_t at = spread(key) & keys->mask;
    while (keys->slots[at] != 0) {
        bk_key other;
        key_of(keys, keys->slots[at] - 1, &other);
        if (memcmp(&other, key, sizeof other) == 0)
            break;
        at = (at + 1) & keys->mask;
    }
    return &keys->slots[at];
}

size_t bk_keys_put(bk_keys *keys, size_t row)
{
    bk_key key;
    if (!key_of(keys, row, &key))
        return row;
    size_t *slot = slot_of(keys, &key);
    if (*slot == 0)
        *slot = row + 1;
    return *slot - 1;
}

bool bk_keys_find(const bk_keys *keys, const char *first, const char *second, size_t *row)
{
    bk_key key = {{(uint64_t)(uintptr_t)first, (uint64_t)(uintptr_t)second, 0}};
    size_t slot = *slot_of(keys, &key);
    if (slot == 0)
        return false;
    *row = slot - 1;
    return true;
}
