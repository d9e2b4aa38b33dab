#ifndef BODKIN_BASE_PROPORTION_H
#define BODKIN_BASE_PROPORTION_H

#include <stdint.h>

/// `amount` times `part` divided by `whole`, exact and rounded half up; none below zero, and `whole` above it. INT64_MAX where
/// the result is larger. Time is the same for all numbers.
int64_t bk_in_proportion(int64_t amount, int64_t part, int64_t whole);

#endif
