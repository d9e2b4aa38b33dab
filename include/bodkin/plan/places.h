#ifndef BODKIN_PLAN_PLACES_H
#define BODKIN_PLAN_PLACES_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/// A set of places in an order, from 0 to `count` - 1, that tells at once which of its members comes next.
typedef struct bk_places {
    uint64_t *words;   ///< a bit for each place
    uint64_t *crowded; ///< a bit for each word that has any
    size_t word_count, crowded_count;
} bk_places;

/// Empty, for so many places; freed by bk_places_free.
bk_places bk_places_new(size_t count);
void bk_places_free(bk_places *places);
void bk_places_clear(bk_places *places);

void bk_places_add(bk_places *places, size_t place);
/// Nothing happens where it is not in it.
void bk_places_drop(bk_places *places, size_t place);

/// The first member at or after `from`; SIZE_MAX where there is none.
size_t bk_places_next(const bk_places *places, size_t from);

#endif
