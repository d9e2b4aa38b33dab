#include "bodkin/plan/links.h"

#include <stdlib.h>

// Links by the task at one end of each rank; the other end is what they lead to.
static bk_links group(const bk_problem *problem, bool by_later)
{
    bk_links links = {.first = bk_alloc_clear(problem->task_count + 2, sizeof *links.first),
                      .items = bk_alloc((problem->rank_count + 1) * sizeof *links.items)};
    uint32_t *next =
        links.first + 1; // where the next link of a task goes, which ends as where the next task begins
    for (size_t i = 0; i < problem->rank_count; i++)
        next[(by_later ? problem->ranks[i].to : problem->ranks[i].from) + 1]++;
    for (size_t task = 0; task < problem->task_count; task++)
        next[task + 1] += next[task];
    for (size_t i = 0; i < problem->rank_count; i++) {
        const bk_rank *rank = &problem->ranks[i];
        uint32_t owner = by_later ? rank->to : rank->from;
        links.items[next[owner]++] = (bk_rank_link){by_later ? rank->from : rank->to, rank->rest};
    }
    return links;
}

bk_links bk_links_before(const bk_problem *problem)
{
    return group(problem, true);
}

bk_links bk_links_after(const bk_problem *problem)
{
    return group(problem, false);
}

void bk_links_free(bk_links *links)
{
    free(links->first);
    free(links->items);
    *links = (bk_links){0};
}

// --------------------------------------------------------------------------------------------------------------- order

// The tasks that could stand next, as a heap.
typedef struct ready_tasks {
    const int64_t *keys;
    uint32_t *tasks;
    size_t count;
} ready_tasks;

static bool stands_before(const ready_tasks *ready, uint32_t left, uint32_t right)
{
    if (ready->keys != NULL && ready->keys[left] != ready->keys[right])
        return ready->keys[left] < ready->keys[right];
    return left < right;
}

static void add(ready_tasks *ready, uint32_t task)
{
    size_t at = ready->count++;
    while (at > 0 && stands_before(ready, task, ready->tasks[(at - 1) / 2])) {
        ready->tasks[at] = ready->tasks[(at - 1) / 2];
        at = (at - 1) / 2;
    }
    ready->tasks[at] = task;
}

static uint32_t take_first(ready_tasks *ready)
{
    uint32_t taken = ready->tasks[0], last = ready->tasks[--ready->count];
    size_t at = 0;
    for (size_t child = 1; child < ready->count; child = at * 2 + 1) {
        if (child + 1 < ready->count && stands_before(ready, ready->tasks[child + 1], ready->tasks[child]))
            child++;
        if (!stands_before(ready, ready->tasks[child], last))
            break;
        ready->tasks[at] = ready->tasks[child];
        at = child;
    }
    ready->tasks[at] = last;
    return taken;
}

void bk_links_order(const bk_problem *problem, const bk_links *after, const int64_t *keys, uint32_t *order)
{
    uint32_t *waits_for = bk_alloc_clear(problem->task_count + 1, sizeof *waits_for);
    ready_tasks ready = {.keys = keys, .tasks = bk_alloc((problem->task_count + 1) * sizeof *ready.tasks)};
    for (size_t i = 0; i < problem->rank_count; i++)
        waits_for[problem->ranks[i].to]++;
    for (uint32_t task = 0; task < problem->task_count; task++)
        if (waits_for[task] == 0)
            add(&ready, task);
    for (size_t place = 0; ready.count > 0; place++) {
        order[place] = take_first(&ready);
        for (uint32_t i = after->first[order[place]]; i < after->first[order[place] + 1]; i++)
            if (--waits_for[after->items[i].task] == 0)
                add(&ready, after->items[i].task);
    }
    free(ready.tasks);
    free(waits_for);
}
