#ifndef BODKIN_PLAN_PLANNER_PARTS_H
#define BODKIN_PLAN_PLANNER_PARTS_H

#include "bodkin/plan/chance.h"
#include "bodkin/plan/generator.h"
#include "bodkin/plan/planner.h"

/// The planner from inside: what its rules, its ways of mixing orders and its searches share.

/// One schedule and an order of the tasks that goes with it.
typedef struct bk_draft {
    uint32_t *order;
    bk_placing *placings;
    bk_cost cost;
    bool parallel; ///< made forward in time, not in turn
    uint64_t mark; ///< the same for schedules that are the same
} bk_draft;

enum { BK_RULES = 3, BK_DRAFTS_MOST = 200 };

struct bk_planner {
    const bk_problem *problem;
    bk_generator *generator;
    bk_chance chance;
    int64_t schedules, budget;
    bk_planner_goes_on *goes_on;
    void *context;
    bool stopped;
    bool plain;              ///< nothing ties a task to a clock: a schedule is as good backwards as forwards
    bk_clock_minute horizon; ///< where it is plain: no schedule that begins at 0 and never idles is longer
    bk_cost bound;           ///< no schedule costs less
    bk_draft best, work, spare;
    uint32_t *rank;           ///< of each task in an order free of circles
    uint32_t *ranked;         ///< that order
    int64_t *rules[BK_RULES]; ///< keys of each task, lowest first: by due minute, by late finish, by target
    int64_t usual_minutes;    ///< of a task, on average
    int64_t *energy;          ///< how much of what is there each task takes up, for minutes times shares
    bk_draft drafts[2][BK_DRAFTS_MOST]; ///< the population; forward and backward where it is plain
    size_t draft_count, draft_room;
    size_t turn;                ///< whose turn it is in the population
    int side;                   ///< which side of it is being made
    int64_t idle;               ///< attempts since the population last changed
    uint32_t *numbers, *others; ///< room for the orders' work, of a number for each task
    int64_t *keys;
    bk_clock_minute *moments;
};

bk_draft bk_draft_new(size_t task_count);
void bk_draft_free(bk_draft *draft);
void bk_draft_copy(bk_draft *to, const bk_draft *from, size_t task_count);

/// Reckons the bound from every task put in alone, and the keys of the rules.
void bk_planner_rules(bk_planner *planner);

/// What is added to the key of a task so that what gives way stands behind what does not.
int64_t bk_planner_behind(const bk_planner *planner, size_t task);

/// Whether there is reason and leave to make another schedule.
bool bk_planner_goes(bk_planner *planner);

/// The tasks by when they begin (`by_end`: end) in the placings; at a tie those that others come after stand first. What gives
/// way stands behind what does not.
void bk_planner_sort(bk_planner *planner, const bk_placing *placings, bool by_end, uint32_t *order);

/// Makes a draft's placings from its order, in turn or (`parallel`) forward in time; counts it and remembers it where it is the best.
/// True where it is.
bool bk_planner_make(bk_planner *planner, bk_draft *draft, bool parallel);

/// A number that is the same for placings that are the same.
uint64_t bk_planner_mark(const bk_planner *planner, const bk_placing *placings);

/// An order by chance, in which those that a rule puts first are more likely to come early.
void bk_mix_sample(bk_planner *planner, const int64_t *rule, uint32_t *order);

/// A child of two orders: a window of the father's, placed where he is busiest of a few tries, and before and behind it the same tasks as
/// in his, in the order of the mother's. `by_end`: the drafts' orders are by their ends.
void bk_mix_cross(bk_planner *planner, const bk_draft *mother, const bk_draft *father, bool by_end,
                  uint32_t *child);

/// Changes neighbours that do not come after one another here and there.
void bk_mix_mutate(bk_planner *planner, uint32_t *order);

/// The search where the problem is plain: two populations, each made from the other by mixing, the one forward, the other backward
/// in time.
void bk_planner_search_sides(bk_planner *planner);

/// The search for any other problem: from the best order to better ones by moving what is late forward.
void bk_planner_search_due(bk_planner *planner);

#endif
