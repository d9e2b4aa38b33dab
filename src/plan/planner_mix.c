#include <string.h>

#include "bodkin/plan/planner_parts.h"

enum {
    SWAPPED = 2,       // neighbours of an order, on average
    WINDOW_LEAST = 12, // the smallest window is a twelfth of the tasks and two
    WINDOW_MOST = 4,   // the largest a quarter and eight
    WINDOWS_TRIED = 3, // before the busiest is taken
    BEFORE = 0,
    WITHIN = 1,
    BEHIND = 2
};

static uint32_t below(bk_planner *planner, size_t count)
{
    return bk_chance_below(&planner->chance, (uint32_t)count);
}

// ------------------------------------------------------------------------------------------------------------ sampling

// Picks one of the tasks that can stand next: each with the weight of its lead over the last of them and the minutes of a usual task.
static size_t pick_next(bk_planner *planner, const int64_t *rule, const uint32_t *tasks, size_t count)
{
    int64_t worst = rule[tasks[0]];
    for (size_t i = 1; i < count; i++)
        if (rule[tasks[i]] > worst)
            worst = rule[tasks[i]];
    uint64_t sum = 0;
    for (size_t i = 0; i < count; i++)
        sum += (uint64_t)(worst - rule[tasks[i]] + planner->usual_minutes) + 1;
    uint64_t drawn = bk_chance_next(&planner->chance) % sum;
    for (size_t i = 0; i + 1 < count; i++) {
        uint64_t weight = (uint64_t)(worst - rule[tasks[i]] + planner->usual_minutes) + 1;
        if (drawn < weight)
            return i;
        drawn -= weight;
    }
    return count - 1;
}

void bk_mix_sample(bk_planner *planner, const int64_t *rule, uint32_t *order)
{
    const bk_links *before = &planner->generator->before, *after = &planner->generator->after;
    uint32_t *waits_for = planner->numbers, *next = planner->others;
    size_t count = 0;
    for (uint32_t task = 0; task < planner->problem->task_count; task++) {
        waits_for[task] = before->first[task + 1] - before->first[task];
        if (waits_for[task] == 0)
            next[count++] = task;
    }
    for (size_t place = 0; count > 0; place++) {
        size_t picked = pick_next(planner, rule, next, count);
        uint32_t task = next[picked];
        order[place] = task;
        next[picked] = next[--count];
        for (uint32_t link = after->first[task]; link < after->first[task + 1]; link++)
            if (--waits_for[after->items[link].task] == 0)
                next[count++] = after->items[link].task;
    }
}

// -------------------------------------------------------------------------------------------------------------- mixing

// How much of the capacities the tasks from `first` on take up, and in what time.
typedef struct busyness {
    int64_t energy;
    int64_t time;
} busyness;

static busyness busy(const bk_planner *planner, const bk_draft *draft, bool by_end, size_t first,
                     size_t length)
{
    const bk_placing *from = &draft->placings[draft->order[first]];
    const bk_placing *to = &draft->placings[draft->order[first + length - 1]];
    int64_t time = by_end ? (int64_t)to->end - from->end : (int64_t)to->begin - from->begin;
    busyness sum = {0, time > 0 ? time + 1 : 1};
    for (size_t i = first; i < first + length; i++)
        sum.energy += planner->energy[draft->order[i]];
    return sum;
}

// Where a window of some length stands: where the draft is busiest, out of a few.
static size_t busiest_window(bk_planner *planner, const bk_draft *draft, bool by_end, size_t length)
{
    size_t range = planner->problem->task_count - length + 1, best = below(planner, range);
    busyness most = busy(planner, draft, by_end, best, length);
    for (int i = 1; i < WINDOWS_TRIED; i++) {
        size_t first = below(planner, range);
        busyness sum = busy(planner, draft, by_end, first, length);
        if (sum.energy * most.time > most.energy * sum.time) {
            most = sum;
            best = first;
        }
    }
    return best;
}

void bk_mix_cross(bk_planner *planner, const bk_draft *mother, const bk_draft *father, bool by_end,
                  uint32_t *child)
{
    size_t count = planner->problem->task_count;
    size_t least = count / WINDOW_LEAST + 2, most = count / WINDOW_MOST + 8;
    if (most > count)
        most = count;
    if (least > most)
        least = most;
    size_t length = least + below(planner, most - least + 1);
    size_t first = busiest_window(planner, father, by_end, length), behind = first + length;
    uint32_t *part = planner->numbers;
    for (size_t i = 0; i < count; i++)
        part[father->order[i]] = i < first ? BEFORE : i < behind ? WITHIN : BEHIND;
    memcpy(child + first, father->order + first, length * sizeof *child);
    size_t at[] = {[BEFORE] = 0, [WITHIN] = first, [BEHIND] = behind};
    for (size_t i = 0; i < count; i++) {
        uint32_t task = mother->order[i];
        if (part[task] != WITHIN)
            child[at[part[task]]++] = task;
    }
}

static bool comes_after(const bk_planner *planner, uint32_t earlier, uint32_t later)
{
    const bk_links *before = &planner->generator->before;
    for (uint32_t link = before->first[later]; link < before->first[later + 1]; link++)
        if (before->items[link].task == earlier)
            return true;
    return false;
}

void bk_mix_mutate(bk_planner *planner, uint32_t *order)
{
    const bool *late_class = planner->generator->late_class;
    for (size_t i = 0; i + 1 < planner->problem->task_count; i++) {
        uint32_t task = order[i], next = order[i + 1];
        if (below(planner, planner->problem->task_count) >= SWAPPED || late_class[task] != late_class[next] ||
            comes_after(planner, task, next))
            continue;
        order[i] = next;
        order[i + 1] = task;
    }
}
