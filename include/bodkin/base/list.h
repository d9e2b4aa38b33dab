#ifndef BODKIN_BASE_LIST_H
#define BODKIN_BASE_LIST_H

#include <stddef.h>
#include <stdlib.h>
#include <string.h>

/// A growing list of T: `BK_LIST(int) days = {0};`. `items` is owned by the list and freed by bk_list_free;
/// it moves when the list grows, so keep indices, not pointers.
#define BK_LIST(T) \
    struct { \
        T *items; \
        size_t count; \
        size_t room; \
    }

/// Makes room for one item more than `count` and returns the (grown) memory, never NULL; `room` counts items
/// of `size` bytes.
void *bk_list_grow(void *items, size_t *room, size_t count, size_t size);

/// Appends `value`. `list` is a pointer, and is named more than once: no side effects in it.
#define bk_list_add(list, value) \
    ((list)->items = bk_list_grow((list)->items, &(list)->room, (list)->count, sizeof *(list)->items), \
     (list)->items[(list)->count] = (value), (list)->count += 1)

/// Appends an item of zero bytes and gives its address, good until the next append.
#define bk_list_new(list) \
    ((list)->items = bk_list_grow((list)->items, &(list)->room, (list)->count, sizeof *(list)->items), \
     memset(&(list)->items[(list)->count], 0, sizeof *(list)->items), &(list)->items[(list)->count++])

#define bk_list_free(list) (free((list)->items), (list)->items = NULL, (list)->count = 0, (list)->room = 0)

/// A table from text to a number (an index or an id). Keys are not copied: they must outlive the table.
typedef struct bk_index bk_index;
bk_index *bk_index_new(void);
void bk_index_free(bk_index *index);
/// Puts `key` with `value` unless it is there; returns where the value is kept (old or new).
long long *bk_index_put(bk_index *index, const char *key, long long value);
/// The value's place, or NULL where the key is unknown. `key` NULL is unknown.
const long long *bk_index_find(const bk_index *index, const char *key);

/// The same from a whole number (an id) to a number.
typedef struct bk_id_index bk_id_index;
bk_id_index *bk_id_index_new(void);
void bk_id_index_free(bk_id_index *index);
long long *bk_id_index_put(bk_id_index *index, long long key, long long value);
const long long *bk_id_index_find(const bk_id_index *index, long long key);
/// An index from id to place over `count` records of `size` bytes whose first member is their id, an int64_t; where an id
/// stands twice the first place counts. Freed by bk_id_index_free.
bk_id_index *bk_id_index_of(const void *records, size_t count, size_t size);

#endif
