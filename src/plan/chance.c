#include "bodkin/plan/chance.h"

enum { WORD_BITS = 64, HALF_BITS = 32, WORDS = 4 };

static uint64_t turned(uint64_t word, int by)
{
    return word << by | word >> (WORD_BITS - by);
}

// splitmix64: its constants are those of the published method.
static uint64_t mixed(uint64_t *state)
{
    *state += 0x9E3779B97F4A7C15U;
    uint64_t word = *state;
    word = (word ^ word >> 30) * 0xBF58476D1CE4E5B9U;
    word = (word ^ word >> 27) * 0x94D049BB133111EBU;
    return word ^ word >> 31;
}

bk_chance bk_chance_from(uint64_t seed)
{
    bk_chance chance;
    for (int i = 0; i < WORDS; i++)
        chance.words[i] = mixed(&seed);
    return chance;
}

// xoshiro256**
uint64_t bk_chance_next(bk_chance *chance)
{
    uint64_t *words = chance->words;
    uint64_t next = turned(words[1] * 5, 7) * 9;
    uint64_t shifted = words[1] << 17;
    words[2] ^= words[0];
    words[3] ^= words[1];
    words[1] ^= words[2];
    words[0] ^= words[3];
    words[2] ^= shifted;
    words[3] = turned(words[3], 45);
    return next;
}

// The high half of a product: even to within 2^-32.
uint32_t bk_chance_below(bk_chance *chance, uint32_t count)
{
    uint64_t half = bk_chance_next(chance) >> HALF_BITS;
    return (uint32_t)(half * count >> HALF_BITS);
}
