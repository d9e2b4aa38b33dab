#include "bodkin/plan/odds.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "bodkin/plan/chance.h"
#include "bodkin/plan/tracer.h"
#include "bodkin/plan/trial.h"

enum { THOUSAND = 1000, SHARE_BITS = 32, TRIALS_A_LOOK = 8, RULE_OF_THREE = 3 };

typedef struct trials {
    const bk_odds_plan *plan;
    bk_trial *trial;
    bk_tracer *tracer;
    bk_chance chance;
    bk_placing *placings;
    int32_t *minutes;
    bk_clock_minute *ends; // of group g in trial t: ends[g * room + t]
    int32_t *decided;      // of group g, task i: decided[g * tasks + i]
    size_t room;           // trials
} trials;

// --------------------------------------------------------------------------------------------- chance and error

int32_t bk_odds_chance(const bk_group_odds *odds)
{
    if (odds->trials == 0)
        return 0;
    return (int32_t)(((int64_t)odds->in_time * 2 * THOUSAND + odds->trials) / (2 * (int64_t)odds->trials));
}

int32_t bk_odds_error(const bk_group_odds *odds)
{
    if (odds->trials == 0)
        return THOUSAND;
    if (odds->in_time == 0 || odds->in_time == odds->trials)
        return (RULE_OF_THREE * THOUSAND + odds->trials - 1) / odds->trials;
    double share = (double)odds->in_time / odds->trials;
    return (int32_t)(THOUSAND * sqrt(share * (1 - share) / odds->trials) + 0.5);
}

// ------------------------------------------------------------------------------------------------------ one trial

// The minutes of a task: drawn, and scaled where the plan's mode takes longer or shorter than its first.
static int32_t drawn(trials *at, uint32_t task)
{
    const bk_odds_plan *plan = at->plan;
    const bk_task *record = &plan->problem->tasks[task];
    int32_t planned = record->modes[plan->placings[task].mode].minutes;
    uint32_t share = (uint32_t)(bk_chance_next(&at->chance) >> SHARE_BITS);
    if (!plan->spreads[task])
        return planned;
    int64_t minutes = bk_spread_at(plan->spreads[task], share);
    int64_t first = record->modes[0].minutes;
    if (first == planned || first == 0)
        return (int32_t)minutes;
    int64_t scaled = (minutes * planned * 2 + first) / (2 * first);
    return scaled < INT32_MAX ? (int32_t)scaled : INT32_MAX;
}

static bool group_in_time(const trials *at, const bk_odds_group *group)
{
    if (!group->dues && group->due == BK_CLOCK_NONE)
        return false;
    for (size_t i = 0; i < group->task_count; i++) {
        bk_clock_minute due = group->dues ? group->dues[i] : group->due;
        if (due != BK_CLOCK_NONE && at->placings[group->tasks[i]].end > due)
            return false;
    }
    return true;
}

// The task of the group that ends last, the lowest at a tie; BK_NO_TASK where it has none.
static uint32_t last_of(const trials *at, const bk_odds_group *group)
{
    uint32_t last = BK_NO_TASK;
    for (size_t i = 0; i < group->task_count; i++) {
        uint32_t task = group->tasks[i];
        bk_clock_minute end = at->placings[task].end;
        if (last == BK_NO_TASK || end > at->placings[last].end ||
            (end == at->placings[last].end && task < last))
            last = task;
    }
    return last;
}

static void count_deciders(trials *at, uint32_t last, int32_t *decided)
{
    size_t steps = 0;
    for (uint32_t task = last; task != BK_NO_TASK && steps < at->plan->problem->task_count; steps++) {
        decided[task]++;
        task = bk_tracer_bound(at->tracer, task).from;
    }
}

static void one_trial(trials *at, size_t trial, bk_group_odds *results)
{
    const bk_odds_plan *plan = at->plan;
    size_t count = plan->problem->task_count;
    for (uint32_t task = 0; task < count; task++)
        at->minutes[task] = drawn(at, task);
    bk_trial_run(at->trial, at->minutes, at->placings);
    bk_tracer_load(at->tracer, at->placings);
    for (size_t i = 0; i < plan->group_count; i++) {
        const bk_odds_group *group = &plan->groups[i];
        uint32_t last = last_of(at, group);
        bk_clock_minute end = last == BK_NO_TASK ? 0 : at->placings[last].end;
        at->ends[i * at->room + trial] = end;
        results[i].trials++;
        results[i].in_time += group_in_time(at, group);
        if (last != BK_NO_TASK && end != BK_CLOCK_NEVER)
            count_deciders(at, last, at->decided + i * count);
    }
}

// ------------------------------------------------------------------------------------------------------ all of them

static int earlier(const void *left, const void *right)
{
    bk_clock_minute a = *(const bk_clock_minute *)left, b = *(const bk_clock_minute *)right;
    return (a > b) - (a < b);
}

// By when so many of a hundred trials are done.
static bk_clock_minute done_by(const bk_clock_minute *sorted, int32_t count, int32_t percent)
{
    int64_t place = ((int64_t)count * percent + 99) / 100;
    return count == 0 ? BK_CLOCK_NEVER : sorted[place - 1];
}

static void keep_deciders(const int32_t *decided, size_t count, bk_group_odds *result)
{
    for (uint32_t task = 0; task < count; task++) {
        if (decided[task] == 0)
            continue;
        size_t at = result->decider_count;
        while (at > 0 && result->deciders[at - 1].trials < decided[task])
            at--;
        if (at == BK_DECIDERS)
            continue;
        if (result->decider_count < BK_DECIDERS)
            result->decider_count++;
        memmove(&result->deciders[at + 1], &result->deciders[at],
                (result->decider_count - at - 1) * sizeof *result->deciders);
        result->deciders[at] = (bk_decider){task, decided[task]};
    }
}

static void sum_up(const trials *at, bk_group_odds *results)
{
    size_t count = at->plan->problem->task_count;
    for (size_t i = 0; i < at->plan->group_count; i++) {
        bk_clock_minute *ends = at->ends + i * at->room;
        qsort(ends, (size_t)results[i].trials, sizeof *ends, earlier);
        results[i].even = done_by(ends, results[i].trials, 50);
        results[i].likely = done_by(ends, results[i].trials, 90);
        keep_deciders(at->decided + i * count, count, &results[i]);
    }
}

static trials trials_new(const bk_odds_plan *plan, size_t room)
{
    size_t count = plan->problem->task_count;
    trials at = {.plan = plan,
                 .trial = bk_trial_new(plan->problem, plan->order, plan->placings),
                 .tracer = bk_tracer_new(plan->problem),
                 .chance = bk_chance_from(plan->seed),
                 .placings = bk_alloc_clear(count, sizeof *at.placings),
                 .minutes = bk_alloc_clear(count, sizeof *at.minutes),
                 .ends = bk_alloc_clear(plan->group_count * room, sizeof *at.ends),
                 .decided = bk_alloc_clear(plan->group_count * count, sizeof *at.decided),
                 .room = room};
    return at;
}

static void trials_free(trials *at)
{
    bk_trial_free(at->trial);
    bk_tracer_free(at->tracer);
    free(at->placings);
    free(at->minutes);
    free(at->ends);
    free(at->decided);
}

void bk_odds_try(const bk_odds_plan *plan, int32_t count, bk_odds_goes_on *goes_on, void *context,
                 bk_group_odds *results)
{
    memset(results, 0, plan->group_count * sizeof *results);
    trials at = trials_new(plan, count > 0 ? (size_t)count : 0);
    for (int32_t trial = 0; trial < count; trial++) {
        if (goes_on && trial % TRIALS_A_LOOK == 0 && !goes_on(context, trial))
            break;
        one_trial(&at, (size_t)trial, results);
    }
    sum_up(&at, results);
    trials_free(&at);
}
