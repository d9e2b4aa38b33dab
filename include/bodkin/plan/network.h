#ifndef BODKIN_PLAN_NETWORK_H
#define BODKIN_PLAN_NETWORK_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "bodkin/base/arena.h"

/// The order of steps as a network: `count` steps, links "to comes after from".
typedef struct bk_network_link {
    size_t from; ///< the earlier step
    size_t to;
} bk_network_link;

/// Finds a circle: true where there is one, and then the steps of it, each after the one before it and the first after the
/// last, in `circle` (indices in `arena`), beginning with the lowest index; `*length` is their number. Time grows with
/// steps and links.
bool bk_network_circle(size_t count, const bk_network_link *links, size_t link_count, bk_arena *arena,
                       size_t **circle, size_t *length);

/// A link with a time: `to` begins no earlier than `rest` after the end of `from`.
typedef struct bk_network_rank {
    size_t from;
    size_t to;
    int64_t rest;
} bk_network_rank;

/// When a step can and must be done, in the unit of the durations, the network beginning at 0.
typedef struct bk_network_times {
    int64_t early_start, early_finish;
    int64_t late_start, late_finish; ///< so that the whole ends no later than it can
    int64_t slack;                   ///< spare time: late_start - early_start
} bk_network_times;

/// The critical path method (Kelley & Walker 1959): `durations` of `count` steps (0 or more), `releases` (NULL: all 0; below 0
/// counts as 0) before which each cannot begin. Writes times[count] and the length of the whole. The links must be free of
/// circles. Time grows with steps and links: a million steps in a second.
void bk_network_times_reckon(size_t count, const int64_t *durations, const int64_t *releases,
                             const bk_network_rank *ranks, size_t rank_count, bk_network_times *times,
                             int64_t *length);

/// The chain that decides the finish: steps without spare time, each bound by the one before it, from a beginning to an end of
/// the network; where there are several the one with the lowest indices, its first step before all. `times` are those of
/// bk_network_times_reckon for the same links. In `arena`; returns how many, 0 for a network without steps alone.
size_t bk_network_chain(size_t count, const bk_network_times *times, const bk_network_rank *ranks,
                        size_t rank_count, bk_arena *arena, size_t **chain);

#endif
