#include "bodkin/plan/places.h"

#include <stdlib.h>
#include <string.h>

#include "bodkin/base/arena.h"

enum { WORD_BITS = 64 };

bk_places bk_places_new(size_t count)
{
    bk_places places = {.word_count = count / WORD_BITS + 1};
    places.crowded_count = places.word_count / WORD_BITS + 1;
    places.words = bk_alloc_clear(places.word_count, sizeof *places.words);
    places.crowded = bk_alloc_clear(places.crowded_count, sizeof *places.crowded);
    return places;
}

void bk_places_free(bk_places *places)
{
    free(places->words);
    free(places->crowded);
    *places = (bk_places){0};
}

void bk_places_clear(bk_places *places)
{
    memset(places->words, 0, places->word_count * sizeof *places->words);
    memset(places->crowded, 0, places->crowded_count * sizeof *places->crowded);
}

void bk_places_add(bk_places *places, size_t place)
{
    size_t word = place / WORD_BITS;
    places->words[word] |= UINT64_C(1) << place % WORD_BITS;
    places->crowded[word / WORD_BITS] |= UINT64_C(1) << word % WORD_BITS;
}

void bk_places_drop(bk_places *places, size_t place)
{
    size_t word = place / WORD_BITS;
    places->words[word] &= ~(UINT64_C(1) << place % WORD_BITS);
    if (places->words[word] == 0)
        places->crowded[word / WORD_BITS] &= ~(UINT64_C(1) << word % WORD_BITS);
}

// The first bit that is set at or after `from`; SIZE_MAX: none.
static size_t next_bit(const uint64_t *words, size_t word_count, size_t from)
{
    size_t word = from / WORD_BITS;
    if (word >= word_count)
        return SIZE_MAX;
    uint64_t bits = words[word] & ~UINT64_C(0) << from % WORD_BITS;
    while (bits == 0 && ++word < word_count)
        bits = words[word];
    return bits == 0 ? SIZE_MAX : word * WORD_BITS + (size_t)__builtin_ctzll(bits);
}

size_t bk_places_next(const bk_places *places, size_t from)
{
    size_t word = from / WORD_BITS;
    if (word >= places->word_count)
        return SIZE_MAX;
    uint64_t bits = places->words[word] & ~UINT64_C(0) << from % WORD_BITS;
    if (bits == 0) {
        word = next_bit(places->crowded, places->crowded_count, word + 1);
        if (word == SIZE_MAX)
            return SIZE_MAX;
        bits = places->words[word];
    }
    return word * WORD_BITS + (size_t)__builtin_ctzll(bits);
}
