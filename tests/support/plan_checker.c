#include "support/plan_checker.h"

#include <stdlib.h>

// What is looked at.
typedef struct looked_at {
    const bk_problem *problem;
    const int32_t *minutes;
    const bk_placing *placings;
    bk_error *fault;
} looked_at;

// There is so much of a resource in a minute; BK_CLOSED.
static int32_t there_is(const bk_resource *resource, bk_clock_minute minute)
{
    int32_t capacity = resource->stages[0].capacity;
    for (size_t i = 1; i < resource->stage_count && resource->stages[i].from <= minute; i++)
        capacity = resource->stages[i].capacity;
    return capacity;
}

static const bk_mode *mode_of(const looked_at *plan, size_t task)
{
    return &plan->problem->tasks[task].modes[plan->placings[task].mode];
}

static bool all_open(const bk_problem *problem, const bk_mode *mode, bk_clock_minute minute)
{
    for (size_t i = 0; i < mode->use_count; i++)
        if (there_is(&problem->resources[mode->uses[i].resource], minute) == BK_CLOSED)
            return false;
    return true;
}

static bool is_never(const looked_at *plan, size_t task)
{
    return plan->placings[task].end == BK_CLOCK_NEVER;
}

// ---------------------------------------------------------------------------------------------------------- single tasks

static bool minutes_sound(const looked_at *plan, size_t task)
{
    const bk_placing *placing = &plan->placings[task];
    const bk_mode *mode = mode_of(plan, task);
    int32_t wanted = plan->minutes != NULL ? plan->minutes[task] : mode->minutes, worked = 0;
    bool first = false, last = false;
    for (bk_clock_minute minute = placing->begin; minute < placing->end; minute++) {
        last = all_open(plan->problem, mode, minute);
        first = first || (minute == placing->begin && last);
        worked += last;
    }
    if (worked != wanted)
        bk_fail(plan->fault, BK_REFUSED, "task %zu is worked on for %d minutes, not %d.", task, worked,
                wanted);
    else if (wanted > 0 && !(first && last))
        bk_fail(plan->fault, BK_REFUSED, "task %zu begins or ends while it is closed.", task);
    else if (wanted == 0 && placing->begin != placing->end)
        bk_fail(plan->fault, BK_REFUSED, "task %zu takes time without work.", task);
    else if (plan->problem->tasks[task].whole && placing->end - placing->begin != wanted)
        bk_fail(plan->fault, BK_REFUSED, "task %zu is split.", task);
    else
        return true;
    return false;
}

static bool task_sound(const looked_at *plan, size_t task)
{
    const bk_placing *placing = &plan->placings[task];
    if ((placing->begin == BK_CLOCK_NEVER) != is_never(plan, task))
        bk_fail(plan->fault, BK_REFUSED, "task %zu begins or ends never, but not both.", task);
    else if (is_never(plan, task))
        return true;
    else if (placing->mode >= plan->problem->tasks[task].mode_count)
        bk_fail(plan->fault, BK_REFUSED, "task %zu has no mode %u.", task, placing->mode);
    else if (placing->begin < 0 || placing->begin < plan->problem->tasks[task].release)
        bk_fail(plan->fault, BK_REFUSED, "task %zu begins before its release.", task);
    else
        return minutes_sound(plan, task);
    return false;
}

static bool order_sound(const looked_at *plan)
{
    for (size_t i = 0; i < plan->problem->rank_count; i++) {
        const bk_rank *rank = &plan->problem->ranks[i];
        if (is_never(plan, rank->to))
            continue;
        if (is_never(plan, rank->from) ||
            (int64_t)plan->placings[rank->from].end + rank->rest > plan->placings[rank->to].begin) {
            bk_fail(plan->fault, BK_REFUSED, "task %u begins too early after task %u.", rank->to, rank->from);
            return false;
        }
    }
    return true;
}

// ------------------------------------------------------------------------------------------------------------ resources

// Adds what a task takes of a resource to the minutes in which it is worked on.
static void add_use(const looked_at *plan, size_t task, size_t resource, int64_t *used)
{
    const bk_placing *placing = &plan->placings[task];
    const bk_mode *mode = mode_of(plan, task);
    for (size_t i = 0; i < mode->use_count; i++) {
        if (mode->uses[i].resource != resource)
            continue;
        for (bk_clock_minute minute = placing->begin; minute < placing->end; minute++)
            if (all_open(plan->problem, mode, minute))
                used[minute] += mode->uses[i].amount;
    }
}

static bool resource_sound(const looked_at *plan, size_t resource, bk_clock_minute last)
{
    int64_t *used = bk_alloc_clear((size_t)last + 1, sizeof *used);
    for (size_t task = 0; task < plan->problem->task_count; task++)
        if (!is_never(plan, task))
            add_use(plan, task, resource, used);
    bool sound = true;
    for (bk_clock_minute minute = 0; minute < last && sound; minute++)
        if (used[minute] > 0 && used[minute] > there_is(&plan->problem->resources[resource], minute)) {
            bk_fail(plan->fault, BK_REFUSED, "more of resource %zu is used in minute %d than there is.",
                    resource, minute);
            sound = false;
        }
    free(used);
    return sound;
}

static bool resources_sound(const looked_at *plan)
{
    bk_clock_minute last = 0;
    for (size_t task = 0; task < plan->problem->task_count; task++)
        if (!is_never(plan, task) && plan->placings[task].end > last)
            last = plan->placings[task].end;
    for (size_t resource = 0; resource < plan->problem->resource_count; resource++)
        if (!resource_sound(plan, resource, last))
            return false;
    return true;
}

// --------------------------------------------------------------------------------------------------------- appointments

// Whether two tasks, in any of their modes, share a resource.
static bool share(const bk_task *left, const bk_task *right)
{
    for (size_t i = 0; i < left->mode_count; i++)
        for (size_t j = 0; j < left->modes[i].use_count; j++)
            for (size_t k = 0; k < right->mode_count; k++)
                for (size_t l = 0; l < right->modes[k].use_count; l++)
                    if (left->modes[i].uses[j].resource == right->modes[k].uses[l].resource)
                        return true;
    return false;
}

// The last minute at which anything changes in the resources of a mode.
static bk_clock_minute last_change(const bk_problem *problem, const bk_mode *mode)
{
    bk_clock_minute last = 0;
    for (size_t i = 0; i < mode->use_count; i++) {
        const bk_resource *resource = &problem->resources[mode->uses[i].resource];
        if (resource->stages[resource->stage_count - 1].from > last)
            last = resource->stages[resource->stage_count - 1].from;
    }
    return last;
}

// Whether a task could begin at its appointment in one of its modes, were it alone with what is there.
static bool could_be_kept(const looked_at *plan, size_t task)
{
    const bk_problem *problem = plan->problem;
    const bk_task *kept = &problem->tasks[task];
    for (size_t i = 0; i < kept->mode_count; i++) {
        const bk_mode *mode = &kept->modes[i];
        int32_t left = plan->minutes != NULL ? plan->minutes[task] : mode->minutes;
        bk_clock_minute minute = kept->appointment;
        bk_clock_minute end = last_change(problem, mode) + minute + left;
        for (bool fits = true; fits && left > 0 && minute < end; minute++) {
            bool open = all_open(problem, mode, minute);
            fits = open || !(kept->whole || minute == kept->appointment);
            for (size_t use = 0; open && use < mode->use_count; use++)
                fits = fits && there_is(&problem->resources[mode->uses[use].resource], minute) >=
                                   mode->uses[use].amount;
            left -= open && fits;
            if (!fits)
                break;
        }
        if (left == 0)
            return true;
    }
    return false;
}

static bool done_before(const looked_at *plan, size_t task, bk_clock_minute moment)
{
    if (plan->problem->tasks[task].release > moment)
        return false;
    for (size_t i = 0; i < plan->problem->rank_count; i++) {
        const bk_rank *rank = &plan->problem->ranks[i];
        if (rank->to == task &&
            (is_never(plan, rank->from) || (int64_t)plan->placings[rank->from].end + rank->rest > moment))
            return false;
    }
    return true;
}

static bool another_is_booked(const looked_at *plan, size_t task)
{
    const bk_task *tasks = plan->problem->tasks;
    for (size_t other = 0; other < plan->problem->task_count; other++)
        if (other != task && tasks[other].appointment != BK_CLOCK_NONE && share(&tasks[other], &tasks[task]))
            return true;
    return false;
}

static bool appointment_sound(const looked_at *plan, size_t task)
{
    bk_clock_minute appointment = plan->problem->tasks[task].appointment;
    if (appointment == BK_CLOCK_NONE || plan->placings[task].begin == appointment)
        return true;
    if (plan->placings[task].begin < appointment)
        bk_fail(plan->fault, BK_REFUSED, "task %zu begins before its appointment.", task);
    else if (done_before(plan, task, appointment) && could_be_kept(plan, task) &&
             !another_is_booked(plan, task))
        bk_fail(plan->fault, BK_REFUSED, "task %zu does not keep an appointment that it could keep.", task);
    else
        return true;
    return false;
}

bool bk_plan_sound(const bk_problem *problem, const int32_t *minutes, const bk_placing *placings,
                   bk_error *fault)
{
    looked_at plan = {problem, minutes, placings, fault};
    for (size_t task = 0; task < problem->task_count; task++)
        if (!task_sound(&plan, task) || !appointment_sound(&plan, task))
            return false;
    return order_sound(&plan) && resources_sound(&plan);
}
