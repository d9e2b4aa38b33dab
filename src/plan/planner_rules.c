#include <stdlib.h>
#include <string.h>

#include "bodkin/plan/planner_parts.h"

enum {
    SHARE = 1000,            // of a capacity
    MOST_CLOCK = 100 * SHARE // of clock time for a minute of work
};

static const int64_t earliest_key = -((int64_t)1 << 38); // no key is lower

// -------------------------------------------------------------------------------------------------------------- bounds

// Every task where it could be put if it were alone: no schedule ends anything earlier.
static void place_alone(const bk_planner *planner, bk_placing *alone)
{
    static const bk_making every_mode = {0};
    const bk_problem *problem = planner->problem;
    bk_timelines_clear(planner->generator->timelines, problem);
    for (size_t i = 0; i < problem->task_count; i++) {
        uint32_t task = planner->ranked[i];
        bk_clock_minute ready =
            bk_generator_ready(&planner->generator->before, task, alone, problem->tasks[task].release);
        if (problem->tasks[task].appointment > ready)
            ready = problem->tasks[task].appointment;
        alone[task] = bk_generator_find(planner->generator, &every_mode, task, ready);
    }
}

static int32_t least_minutes(const bk_task *task)
{
    int32_t least = task->modes[0].minutes;
    for (size_t i = 1; i < task->mode_count; i++)
        if (task->modes[i].minutes < least)
            least = task->modes[i].minutes;
    return least;
}

// The shares of all resources that a task takes up in its first mode, times its minutes; so that no sum of them gets too large,
// a task counts at most for what is evenly spread over all.
static int64_t energy_of(const bk_problem *problem, const bk_task *task)
{
    const bk_mode *mode = &task->modes[0];
    int64_t energy = 0, most = UINT32_MAX / (int64_t)problem->task_count;
    for (size_t i = 0; i < mode->use_count; i++) {
        int32_t capacity = problem->resources[mode->uses[i].resource].stages[0].capacity;
        int32_t amount = mode->uses[i].amount;
        int64_t share = amount < capacity ? (int64_t)amount * SHARE / capacity : SHARE;
        energy += mode->minutes * share;
    }
    return energy < most ? energy : most;
}

// The work of all tasks on one resource, where none has another way: no plain schedule is shorter than it takes.
static bk_clock_minute least_length(const bk_problem *problem, size_t resource)
{
    int64_t work = 0;
    int32_t capacity = problem->resources[resource].stages[0].capacity;
    for (size_t i = 0; i < problem->task_count; i++) {
        const bk_mode *mode = &problem->tasks[i].modes[0];
        for (size_t use = 0; problem->tasks[i].mode_count == 1 && use < mode->use_count; use++)
            if (mode->uses[use].resource == resource && work <= INT64_MAX / 2)
                work += (int64_t)mode->minutes * mode->uses[use].amount;
    }
    int64_t length = capacity > 0 ? work / capacity + (work % capacity > 0) : 0;
    return length < BK_CLOCK_NEVER ? (bk_clock_minute)length : 0;
}

static void bound_by_resources(bk_planner *planner)
{
    for (size_t i = 0; i < planner->problem->resource_count; i++) {
        bk_clock_minute length = least_length(planner->problem, i);
        if (length > planner->bound.last)
            planner->bound.last = planner->bound.finish = length;
    }
}

// --------------------------------------------------------------------------------------------------------------- rules

// The due minute of each task: the first of its targets'.
static void write_due(const bk_problem *problem, int64_t *keys)
{
    for (size_t task = 0; task < problem->task_count; task++)
        keys[task] = BK_CLOCK_NEVER;
    for (size_t i = 0; i < problem->target_count; i++)
        for (size_t j = 0; j < problem->targets[i].task_count; j++)
            if (problem->targets[i].due < keys[problem->targets[i].tasks[j]])
                keys[problem->targets[i].tasks[j]] = problem->targets[i].due;
}

// From what comes after to what comes before: a task must be done by the time that leaves `clock` thousandths of clock time for every
// minute of the work behind it.
static void spread_back(const bk_planner *planner, int64_t clock, int64_t *keys)
{
    const bk_links *after = &planner->generator->after;
    for (size_t i = planner->problem->task_count; i-- > 0;) {
        uint32_t task = planner->ranked[i];
        for (uint32_t link = after->first[task]; link < after->first[task + 1]; link++) {
            uint32_t follower = after->items[link].task;
            int64_t minutes = clock > 0 ? least_minutes(&planner->problem->tasks[follower]) : 0;
            int64_t latest = keys[follower] - minutes * clock / SHARE - after->items[link].rest;
            if (latest < keys[task])
                keys[task] = latest > earliest_key ? latest : earliest_key;
        }
    }
}

// How much clock time passes for a minute in which a resource is open, in thousandths, on average until `last`.
static int64_t clock_of_work(const bk_problem *problem, bk_clock_minute last)
{
    int64_t open = 0, all = 0;
    for (size_t i = 0; i < problem->resource_count; i++) {
        const bk_resource *resource = &problem->resources[i];
        for (size_t j = 0; j < resource->stage_count && resource->stages[j].from < last; j++) {
            bk_clock_minute until = j + 1 < resource->stage_count ? resource->stages[j + 1].from : last;
            int64_t length = (until < last ? until : last) - resource->stages[j].from;
            all += length;
            open += resource->stages[j].capacity > 0 ? length : 0;
        }
    }
    int64_t clock = open > 0 ? all * SHARE / open : SHARE;
    return clock < MOST_CLOCK ? clock : MOST_CLOCK;
}

void bk_planner_rules(bk_planner *planner)
{
    const bk_problem *problem = planner->problem;
    bk_placing *alone = bk_alloc((problem->task_count + 1) * sizeof *alone);
    bk_links_order(problem, &planner->generator->after, NULL, planner->ranked);
    for (uint32_t i = 0; i < problem->task_count; i++)
        planner->rank[planner->ranked[i]] = i;
    place_alone(planner, alone);
    planner->bound = bk_cost_of(problem, alone);
    if (planner->plain)
        bound_by_resources(planner);
    int64_t minutes = 0;
    for (size_t task = 0; task < problem->task_count; task++) {
        planner->energy[task] = energy_of(problem, &problem->tasks[task]);
        minutes += least_minutes(&problem->tasks[task]);
    }
    planner->usual_minutes = minutes / (int64_t)(problem->task_count + 1);
    int64_t clock = clock_of_work(problem, planner->bound.last);
    write_due(problem, planner->rules[0]);
    memcpy(planner->rules[2], planner->rules[0], problem->task_count * sizeof *planner->rules[2]);
    spread_back(planner, clock, planner->rules[0]);
    spread_back(planner, clock, planner->rules[1]);
    spread_back(planner, 0, planner->rules[2]);
    for (size_t rule = 0; rule < BK_RULES; rule++)
        for (size_t task = 0; task < problem->task_count; task++)
            planner->rules[rule][task] += bk_planner_behind(planner, task);
    free(alone);
}
