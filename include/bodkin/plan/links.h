#ifndef BODKIN_PLAN_LINKS_H
#define BODKIN_PLAN_LINKS_H

#include "bodkin/plan/problem.h"

/// The order of a problem's tasks, looked up from either end.

typedef struct bk_rank_link {
    uint32_t task;
    int32_t rest; ///< minutes of clock time between the two
} bk_rank_link;

/// The links of task i are items[first[i]] to items[first[i + 1] - 1], in the order of the problem's ranks.
typedef struct bk_links {
    uint32_t *first;
    bk_rank_link *items;
} bk_links;

/// What each task comes after, and what comes after each task. Freed by bk_links_free.
bk_links bk_links_before(const bk_problem *problem);
bk_links bk_links_after(const bk_problem *problem);
void bk_links_free(bk_links *links);

/// Writes every task once, each after those it comes after (`after` is bk_links_after); among those that could stand next,
/// the one with the lowest key, then the lowest index. `keys` may be NULL: all the same.
void bk_links_order(const bk_problem *problem, const bk_links *after, const int64_t *keys, uint32_t *order);

#endif
