#ifndef BODKIN_PLAN_ODDS_H
#define BODKIN_PLAN_ODDS_H

#include "bodkin/plan/problem.h"
#include "bodkin/plan/spread.h"

/// The odds: many trials of a plan, each with minutes drawn for every task, through the same hands, calendars,
/// releases and appointments. In each trial the order of the plan is the rule of who goes first; see
/// bodkin/plan/trial.h.

typedef struct bk_odds_group {
    const uint32_t *tasks; ///< a costume's tasks, or those of all
    size_t task_count;
    bk_clock_minute due; ///< BK_CLOCK_NONE: it has none
    const bk_clock_minute *
        dues; ///< of each of its tasks its own due minute: it is in time when each ends by its own; NULL: `due`
              ///< holds for all of them
} bk_odds_group;

/// How often a task was in the chain that decided when a group was done.
typedef struct bk_decider {
    uint32_t task;
    int32_t trials;
} bk_decider;

enum { BK_DECIDERS = 5 };

typedef struct bk_group_odds {
    int32_t trials;         ///< how many were made
    int32_t in_time;        ///< in how many of them it was done by its due minute (0 where it has none)
    bk_clock_minute even;   ///< half of the trials are done by then; BK_CLOCK_NEVER
    bk_clock_minute likely; ///< nine tenths of them; BK_CLOCK_NEVER
    bk_decider deciders[BK_DECIDERS]; ///< most often first (the lower task at a tie)
    size_t decider_count;
} bk_group_odds;

/// The chance in thousandths (rounded half up) and its sampling error in thousandths: one standard error, sqrt(p (1 -
/// p)/n), rounded half up; where p is 0 or 1 a bound in its place, rounded up: 3/n, the rule of three (Hanley &
/// Lippman-Hand 1983, from memory). Without trials 0 and 1000.
int32_t bk_odds_chance(const bk_group_odds *odds);
int32_t bk_odds_error(const bk_group_odds *odds);

/// Asked after every few trials: false stops them. May be NULL.
typedef bool bk_odds_goes_on(void *context, int64_t trials);

/// What is tried.
typedef struct bk_odds_plan {
    const bk_problem *problem;
    const uint32_t *order;           ///< as bk_making's: the plan's
    const bk_placing *placings;      ///< of the plan: which mode each task has
    const bk_spread *const *spreads; ///< of each task; NULL for one that takes what its mode says
    const bk_odds_group *groups;
    size_t group_count;
    uint64_t seed;
} bk_odds_plan;

/// Makes up to `count` trials (plain draws, one for each task in each trial, in the order of their indices) and
/// writes one result for each group. A mode whose minutes differ from its task's first mode's scales what is drawn.
/// Everything follows from the plan and the seed, and what is told of a group does not hang on what else is asked.
void bk_odds_try(const bk_odds_plan *plan, int32_t count, bk_odds_goes_on *goes_on, void *context,
                 bk_group_odds *results);

/// Why a task begins when it does.
typedef enum bk_bound {
    BK_BOUND_NOTHING, ///< it could begin at once
    BK_BOUND_ORDER,   ///< the end of a task it comes after (and its rest)
    BK_BOUND_HANDS,   ///< a resource that another task held until then
    BK_BOUND_RELEASE, ///< its release (or its appointment)
    BK_BOUND_HOURS    ///< its resources are not open before
} bk_bound;

typedef struct bk_chain_link {
    uint32_t task;
    bk_bound bound;    ///< what this task waited for last
    uint32_t resource; ///< with BK_BOUND_HANDS: the one that was held
} bk_chain_link;

/// The chain of a schedule that decides when `task` ends: from the task that waited for nothing before it to `task`,
/// each bound by the one before. In `arena`; returns how many (0 where the task never comes about).
size_t bk_chain_to(const bk_problem *problem, const bk_placing *placings, uint32_t task, bk_arena *arena,
                   bk_chain_link **links);

#endif
