#include "bodkin/base/list.h"

#include <assert.h>
#include <stdbool.h>
#include <stdint.h>

#include "bodkin/base/arena.h"

enum { FIRST_ROOM = 8, FIRST_SLOTS = 16 };

void *bk_list_grow(void *items, size_t *room, size_t count, size_t size)
{
    if (count < *room)
        return items;
    size_t grown = *room == 0 ? FIRST_ROOM : *room * 2;
    size_t bytes = 0;
    if (__builtin_mul_overflow(grown, size, &bytes))
        bytes = SIZE_MAX; // more than can be had: ends in bk_on_exhausted
    items = bk_realloc(items, bytes);
    *room = grown;
    return items;
}

// Both tables are open-addressed with linear probing, a power of two of slots, at most half of them filled.

typedef struct text_slot {
    const char *key; ///< NULL where the slot is free
    uint64_t hash;
    long long value;
} text_slot;

struct bk_index {
    text_slot *slots;
    size_t count;
    size_t room;
};

/// FNV-1a (Fowler, Noll, Vo), 64 bits; the high half folded in, because the low bits choose the slot.
static uint64_t text_hash(const char *text)
{
    uint64_t hash = UINT64_C(0xCBF29CE484222325);
    for (; *text != '\0'; text++)
        hash = (hash ^ (unsigned char)*text) * UINT64_C(0x100000001B3);
    return hash ^ (hash >> 32);
}

bk_index *bk_index_new(void)
{
    bk_index *index = bk_alloc_clear(1, sizeof *index);
    index->room = FIRST_SLOTS;
    index->slots = bk_alloc_clear(index->room, sizeof *index->slots);
    return index;
}

void bk_index_free(bk_index *index)
{
    if (index == NULL)
        return;
    free(index->slots);
    free(index);
}

/// The slot of `key`, or the free one where it would go.
static text_slot *text_slot_of(const bk_index *index, const char *key, uint64_t hash)
{
    size_t at = hash & (index->room - 1);
    while (index->slots[at].key != NULL &&
           (index->slots[at].hash != hash || strcmp(index->slots[at].key, key) != 0))
        at = (at + 1) & (index->room - 1);
    return &index->slots[at];
}

static void text_slots_double(bk_index *index)
{
    text_slot *old = index->slots;
    size_t old_room = index->room;
    index->room *= 2;
    index->slots = bk_alloc_clear(index->room, sizeof *index->slots);
    for (size_t i = 0; i < old_room; i++) {
        if (old[i].key == NULL)
            continue;
        size_t at = old[i].hash & (index->room - 1);
        while (index->slots[at].key != NULL) // the keys differ: none need be compared
            at = (at + 1) & (index->room - 1);
        index->slots[at] = old[i];
    }
    free(old);
}

long long *bk_index_put(bk_index *index, const char *key, long long value)
{
    assert(key != NULL);
    if (index->count >= index->room / 2)
        text_slots_double(index);
    uint64_t hash = text_hash(key);
    text_slot *slot = text_slot_of(index, key, hash);
    if (slot->key == NULL) {
        *slot = (text_slot){.key = key, .hash = hash, .value = value};
        index->count++;
    }
    return &slot->value;
}

const long long *bk_index_find(const bk_index *index, const char *key)
{
    if (key == NULL)
        return NULL;
    const text_slot *slot = text_slot_of(index, key, text_hash(key));
    return slot->key == NULL ? NULL : &slot->value;
}

typedef struct id_slot {
    long long key;
    long long value;
    bool taken;
} id_slot;

struct bk_id_index {
    id_slot *slots;
    size_t count;
    size_t room;
};

/// Spreads the bits of an id (the finaliser of splitmix64).
static uint64_t id_hash(long long id)
{
    uint64_t hash = (uint64_t)id;
    hash = (hash ^ (hash >> 30)) * UINT64_C(0xBF58476D1CE4E5B9);
    hash = (hash ^ (hash >> 27)) * UINT64_C(0x94D049BB133111EB);
    return hash ^ (hash >> 31);
}

bk_id_index *bk_id_index_new(void)
{
    bk_id_index *index = bk_alloc_clear(1, sizeof *index);
    index->room = FIRST_SLOTS;
    index->slots = bk_alloc_clear(index->room, sizeof *index->slots);
    return index;
}

void bk_id_index_free(bk_id_index *index)
{
    if (index == NULL)
        return;
    free(index->slots);
    free(index);
}

static id_slot *id_slot_of(const bk_id_index *index, long long key)
{
    size_t at = id_hash(key) & (index->room - 1);
    while (index->slots[at].taken && index->slots[at].key != key)
        at = (at + 1) & (index->room - 1);
    return &index->slots[at];
}

static void id_slots_double(bk_id_index *index)
{
    id_slot *old = index->slots;
    size_t old_room = index->room;
    index->room *= 2;
    index->slots = bk_alloc_clear(index->room, sizeof *index->slots);
    for (size_t i = 0; i < old_room; i++)
        if (old[i].taken)
            *id_slot_of(index, old[i].key) = old[i];
    free(old);
}

long long *bk_id_index_put(bk_id_index *index, long long key, long long value)
{
    if (index->count >= index->room / 2)
        id_slots_double(index);
    id_slot *slot = id_slot_of(index, key);
    if (!slot->taken) {
        *slot = (id_slot){.key = key, .value = value, .taken = true};
        index->count++;
    }
    return &slot->value;
}

const long long *bk_id_index_find(const bk_id_index *index, long long key)
{
    const id_slot *slot = id_slot_of(index, key);
    return slot->taken ? &slot->value : NULL;
}

bk_id_index *bk_id_index_of(const void *records, size_t count, size_t size)
{
    bk_id_index *index = bk_id_index_new();
    for (size_t i = 0; i < count; i++) {
        int64_t id;
        memcpy(&id, (const char *)records + i * size, sizeof id);
        bk_id_index_put(index, id, (long long)i);
    }
    return index;
}
