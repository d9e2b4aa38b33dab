#include "bodkin/plan/problem.h"

#include "bodkin/base/list.h"

static int order(int64_t left, int64_t right)
{
    return (left > right) - (left < right);
}

int bk_cost_order(const bk_cost *left, const bk_cost *right)
{
    int found = order(left->never, right->never);
    if (found == 0)
        found = order(left->late, right->late);
    if (found == 0)
        found = order(left->finish, right->finish);
    return found == 0 ? order(left->last, right->last) : found;
}

static int64_t lateness(const bk_target *target, const bk_placing *placings)
{
    bk_clock_minute end = target->due;
    for (size_t i = 0; i < target->task_count; i++) {
        bk_clock_minute ends = placings[target->tasks[i]].end;
        if (ends > end && ends != BK_CLOCK_NEVER)
            end = ends;
    }
    return ((int64_t)end - target->due) * target->weight;
}

bk_cost bk_cost_of(const bk_problem *problem, const bk_placing *placings)
{
    bk_cost cost = {0};
    for (size_t task = 0; task < problem->task_count; task++) {
        bk_clock_minute end = placings[task].end;
        if (end == BK_CLOCK_NEVER) {
            cost.never++;
            continue;
        }
        if (end > cost.last)
            cost.last = end;
        if (end > cost.finish && !problem->tasks[task].yields)
            cost.finish = end;
    }
    for (size_t i = 0; i < problem->target_count; i++)
        cost.late += lateness(&problem->targets[i], placings);
    return cost;
}

// ----------------------------------------------------------------------------------------------------------- stretches

static const bk_stage *stage_at(const bk_resource *resource, bk_clock_minute moment)
{
    size_t low = 0, high = resource->stage_count;
    while (high - low > 1) {
        size_t middle = low + (high - low) / 2;
        if (resource->stages[middle].from <= moment)
            low = middle;
        else
            high = middle;
    }
    return &resource->stages[low];
}

// Whether all resources of the mode are open at a moment, and until when that stays so.
static bool open_at(const bk_problem *problem, const bk_mode *mode, bk_clock_minute moment,
                    bk_clock_minute *until)
{
    bool open = true;
    *until = BK_CLOCK_NEVER;
    for (size_t i = 0; i < mode->use_count; i++) {
        const bk_resource *resource = &problem->resources[mode->uses[i].resource];
        const bk_stage *stage = stage_at(resource, moment);
        if (stage->capacity == BK_CLOSED)
            open = false;
        if (stage + 1 < resource->stages + resource->stage_count && stage[1].from < *until)
            *until = stage[1].from;
    }
    return open;
}

size_t bk_placing_stretches(const bk_problem *problem, size_t task, const bk_placing *placing,
                            bk_arena *arena, bk_clock_minute (**stretches)[2])
{
    typedef struct stretch {
        bk_clock_minute minutes[2];
    } stretch;
    BK_LIST(stretch) found = {0};
    const bk_mode *mode = &problem->tasks[task].modes[placing->mode];
    bk_clock_minute moment = placing->begin, end = placing->end == BK_CLOCK_NEVER ? moment : placing->end;
    while (moment < end) {
        bk_clock_minute until;
        bool open = open_at(problem, mode, moment, &until);
        if (until > end)
            until = end;
        if (open && found.count > 0 && found.items[found.count - 1].minutes[1] == moment)
            found.items[found.count - 1].minutes[1] = until;
        else if (open)
            bk_list_add(&found, ((stretch){{moment, until}}));
        moment = until;
    }
    size_t count = found.count;
    *stretches = bk_arena_take(arena, count * sizeof **stretches);
    for (size_t i = 0; i < count; i++) {
        (*stretches)[i][0] = found.items[i].minutes[0];
        (*stretches)[i][1] = found.items[i].minutes[1];
    }
    bk_list_free(&found);
    return count;
}
