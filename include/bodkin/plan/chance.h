#ifndef BODKIN_PLAN_CHANCE_H
#define BODKIN_PLAN_CHANCE_H

/// A generator of chance numbers that gives the same everywhere: xoshiro256** seeded by splitmix64 (Blackman & Vigna 2018,
/// public domain method, written anew).

#include <stdint.h>

typedef struct bk_chance {
    uint64_t words[4];
} bk_chance;

bk_chance bk_chance_from(uint64_t seed);
uint64_t bk_chance_next(bk_chance *chance);
/// Evenly from 0 to `count` - 1; `count` is at least 1.
uint32_t bk_chance_below(bk_chance *chance, uint32_t count);

#endif
