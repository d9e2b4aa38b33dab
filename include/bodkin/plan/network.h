#ifndef BODKIN_PLAN_NETWORK_H
#define BODKIN_PLAN_NETWORK_H

#include <stdbool.h>
#include <stddef.h>

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

#endif
