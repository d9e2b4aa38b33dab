#include "bodkin/plan/tracer.h"

#include <stdlib.h>
#include <string.h>

#include "bodkin/plan/links.h"

enum { DIGIT_BITS = 11, DIGITS = 1 << DIGIT_BITS, WORD_BITS = 32 };

struct bk_tracer {
    const bk_problem *problem;
    const bk_placing *placings;
    bk_links before;
    int32_t *peaks;             ///< the most that is ever there of each resource
    uint32_t *by_end, *sorting; ///< the tasks that are worked on, by their ends, then by index; their number
    size_t worked_count;        ///< how many they are
    uint32_t *first_holder; ///< of resource r: holders[first_holder[r]] to holders[first_holder[r + 1] - 1]
    uint32_t *holders;      ///< the tasks that use it, by their ends
    size_t holder_room;
    bk_traced *found; ///< what was found out already
    bool *known;
};

static int32_t *list_peaks(const bk_problem *problem)
{
    int32_t *peaks = bk_alloc_clear(problem->resource_count + 1, sizeof *peaks);
    for (size_t i = 0; i < problem->resource_count; i++)
        for (size_t stage = 0; stage < problem->resources[i].stage_count; stage++)
            if (problem->resources[i].stages[stage].capacity > peaks[i])
                peaks[i] = problem->resources[i].stages[stage].capacity;
    return peaks;
}

bk_tracer *bk_tracer_new(const bk_problem *problem)
{
    bk_tracer *tracer = bk_alloc_clear(1, sizeof *tracer);
    size_t room = problem->task_count + 1;
    tracer->problem = problem;
    tracer->before = bk_links_before(problem);
    tracer->peaks = list_peaks(problem);
    tracer->by_end = bk_alloc(room * sizeof *tracer->by_end);
    tracer->sorting = bk_alloc(room * sizeof *tracer->sorting);
    tracer->first_holder = bk_alloc((problem->resource_count + 2) * sizeof *tracer->first_holder);
    tracer->found = bk_alloc(room * sizeof *tracer->found);
    tracer->known = bk_alloc_clear(room, sizeof *tracer->known);
    return tracer;
}

void bk_tracer_free(bk_tracer *tracer)
{
    if (tracer == NULL)
        return;
    bk_links_free(&tracer->before);
    free(tracer->peaks);
    free(tracer->by_end);
    free(tracer->sorting);
    free(tracer->first_holder);
    free(tracer->holders);
    free(tracer->found);
    free(tracer->known);
    free(tracer);
}

static const bk_mode *mode_of(const bk_tracer *tracer, uint32_t task)
{
    return &tracer->problem->tasks[task].modes[tracer->placings[task].mode];
}

// -------------------------------------------------------------------------------------------------------- holders

// One round of sorting by one digit of the ends; those with the same digit stay as they stand.
static void sort_digit(bk_tracer *tracer, int shift)
{
    uint32_t starts[DIGITS + 1] = {0}, *sorted = tracer->sorting;
    for (size_t i = 0; i < tracer->worked_count; i++)
        starts[((uint32_t)tracer->placings[tracer->by_end[i]].end >> shift) % DIGITS + 1]++;
    for (size_t digit = 0; digit < DIGITS; digit++)
        starts[digit + 1] += starts[digit];
    for (size_t i = 0; i < tracer->worked_count; i++) {
        uint32_t task = tracer->by_end[i];
        sorted[starts[((uint32_t)tracer->placings[task].end >> shift) % DIGITS]++] = task;
    }
    tracer->sorting = tracer->by_end;
    tracer->by_end = sorted;
}

static void sort_by_end(bk_tracer *tracer)
{
    uint32_t last = 0;
    tracer->worked_count = 0;
    for (uint32_t task = 0; task < tracer->problem->task_count; task++) {
        const bk_placing *placing = &tracer->placings[task];
        if (placing->begin >= placing->end || placing->end == BK_CLOCK_NEVER)
            continue;
        tracer->by_end[tracer->worked_count++] = task;
        last = (uint32_t)placing->end > last ? (uint32_t)placing->end : last;
    }
    for (int shift = 0; shift < WORD_BITS && last >> shift > 0; shift += DIGIT_BITS)
        sort_digit(tracer, shift);
}

// Where the holders of each resource begin; `holders` gets room for all.
static void count_holders(bk_tracer *tracer)
{
    uint32_t *first = tracer->first_holder, count = 0;
    memset(first, 0, (tracer->problem->resource_count + 2) * sizeof *first);
    for (size_t i = 0; i < tracer->worked_count; i++) {
        const bk_mode *mode = mode_of(tracer, tracer->by_end[i]);
        for (size_t use = 0; use < mode->use_count; use++, count++)
            first[mode->uses[use].resource + 2]++;
    }
    for (size_t resource = 0; resource < tracer->problem->resource_count; resource++)
        first[resource + 2] += first[resource + 1];
    if (count > tracer->holder_room) {
        tracer->holder_room = 2 * count;
        tracer->holders = bk_realloc(tracer->holders, tracer->holder_room * sizeof *tracer->holders);
    }
}

void bk_tracer_load(bk_tracer *tracer, const bk_placing *placings)
{
    tracer->placings = placings;
    memset(tracer->known, 0, tracer->problem->task_count * sizeof *tracer->known);
    sort_by_end(tracer);
    count_holders(tracer);
    uint32_t *next =
        tracer->first_holder + 1; // where the next holder goes, which ends as where those of the next begin
    for (size_t i = 0; i < tracer->worked_count; i++) {
        const bk_mode *mode = mode_of(tracer, tracer->by_end[i]);
        for (size_t use = 0; use < mode->use_count; use++)
            tracer->holders[next[mode->uses[use].resource]++] = tracer->by_end[i];
    }
}

// ------------------------------------------------------------------------------------------------ what is there

static const bk_stage *stage_at(const bk_resource *resource, bk_clock_minute minute)
{
    size_t low = 0, high = resource->stage_count;
    while (high - low > 1) {
        size_t middle = low + (high - low) / 2;
        if (resource->stages[middle].from <= minute)
            low = middle;
        else
            high = middle;
    }
    return &resource->stages[low];
}

// Whether the first minute from `from` on at which none of the mode's resources is closed is `begin`.
static bool opens_at(const bk_problem *problem, const bk_mode *mode, bk_clock_minute from,
                     bk_clock_minute begin)
{
    bk_clock_minute minute = from;
    for (size_t use = 0; use < mode->use_count && minute < begin;) {
        const bk_resource *resource = &problem->resources[mode->uses[use].resource];
        const bk_stage *stage = stage_at(resource, minute);
        if (stage->capacity != BK_CLOSED) {
            use++;
            continue;
        }
        bool last = stage == &resource->stages[resource->stage_count - 1];
        minute = last ? begin : stage[1].from;
        use = 0;
    }
    return minute == begin;
}

static int32_t amount_of(const bk_tracer *tracer, uint32_t task, uint32_t resource)
{
    const bk_mode *mode = mode_of(tracer, task);
    for (size_t use = 0; use < mode->use_count; use++)
        if (mode->uses[use].resource == resource)
            return mode->uses[use].amount;
    return 0;
}

// Whether the tasks that hold a resource in the minute before holder `last` ends leave less than `amount` of it.
static bool is_scarce(const bk_tracer *tracer, uint32_t resource, int32_t amount, uint32_t last)
{
    bk_clock_minute end = tracer->placings[tracer->holders[last]].end;
    if (tracer->peaks[resource] - amount_of(tracer, tracer->holders[last], resource) < amount)
        return true;
    int32_t left = stage_at(&tracer->problem->resources[resource], end - 1)->capacity;
    for (uint32_t i = last + 1; i-- > tracer->first_holder[resource] && left >= amount;) {
        uint32_t holder = tracer->holders[i];
        if (tracer->placings[holder].end < end)
            break;
        left -= amount_of(tracer, holder, resource);
    }
    for (uint32_t i = last + 1; i < tracer->first_holder[resource + 1] && left >= amount; i++) {
        uint32_t holder = tracer->holders[i];
        if (tracer->placings[holder].begin < end)
            left -= amount_of(tracer, holder, resource);
    }
    return left < amount;
}

// ------------------------------------------------------------------------------------------------------ the bound

typedef struct best {
    bk_traced traced;
    bk_clock_minute at;
} best;

static void consider(best *found, bk_clock_minute at, bk_bound bound, uint32_t from, uint32_t resource)
{
    bool lower = at == found->at && bound == found->traced.bound && from < found->traced.from;
    if (at > found->at || lower) {
        found->at = at;
        found->traced = (bk_traced){bound, from, resource};
    }
}

static void consider_order(const bk_tracer *tracer, uint32_t task, best *found)
{
    for (uint32_t i = tracer->before.first[task]; i < tracer->before.first[task + 1]; i++) {
        const bk_rank_link *link = &tracer->before.items[i];
        consider(found, tracer->placings[link->task].end + link->rest, BK_BOUND_ORDER, link->task, 0);
    }
}

// The last task that ended on the resource at or before the beginning, where it left no room until then; of those that ended at once
// the lowest.
static void consider_holder(const bk_tracer *tracer, uint32_t task, const bk_use *use, best *found)
{
    const uint32_t *holders = tracer->holders;
    uint32_t first = tracer->first_holder[use->resource];
    uint32_t low = first, high = tracer->first_holder[use->resource + 1];
    bk_clock_minute begin = tracer->placings[task].begin;
    while (low < high) {
        uint32_t middle = low + (high - low) / 2;
        if (tracer->placings[holders[middle]].end <= begin)
            low = middle + 1;
        else
            high = middle;
    }
    if (low == first || tracer->placings[holders[low - 1]].end < found->at ||
        !is_scarce(tracer, use->resource, use->amount, low - 1))
        return;
    bk_clock_minute end = tracer->placings[holders[low - 1]].end;
    while (low - 1 > first && tracer->placings[holders[low - 2]].end == end)
        low--;
    consider(found, end, BK_BOUND_HANDS, holders[low - 1], use->resource);
}

static bk_traced trace(const bk_tracer *tracer, uint32_t task)
{
    const bk_task *record = &tracer->problem->tasks[task];
    const bk_mode *mode = mode_of(tracer, task);
    bk_clock_minute begin = tracer->placings[task].begin;
    best found = {{BK_BOUND_NOTHING, BK_NO_TASK, 0}, 0};
    consider_order(tracer, task, &found);
    if (record->release <= begin)
        consider(&found, record->release, BK_BOUND_RELEASE, BK_NO_TASK, 0);
    if (record->appointment <= begin && record->appointment != BK_CLOCK_NONE)
        consider(&found, record->appointment, BK_BOUND_RELEASE, BK_NO_TASK, 0);
    for (size_t use = 0; use < mode->use_count; use++)
        consider_holder(tracer, task, &mode->uses[use], &found);
    bool waits_on = found.traced.from == BK_NO_TASK && found.at < begin;
    if (waits_on &&
        (found.traced.bound == BK_BOUND_NOTHING || !opens_at(tracer->problem, mode, found.at, begin)))
        found.traced.bound = BK_BOUND_HOURS;
    return found.traced;
}

bk_traced bk_tracer_bound(bk_tracer *tracer, uint32_t task)
{
    if (!tracer->known[task]) {
        tracer->found[task] = trace(tracer, task);
        tracer->known[task] = true;
    }
    return tracer->found[task];
}

// ------------------------------------------------------------------------------------------------------ the chain

size_t bk_chain_to(const bk_problem *problem, const bk_placing *placings, uint32_t task, bk_arena *arena,
                   bk_chain_link **links)
{
    *links = NULL;
    if (placings[task].end == BK_CLOCK_NEVER)
        return 0;
    bk_tracer *tracer = bk_tracer_new(problem);
    bk_tracer_load(tracer, placings);
    size_t count = 0;
    for (uint32_t at = task; at != BK_NO_TASK && count < problem->task_count; count++)
        at = bk_tracer_bound(tracer, at).from;
    *links = bk_arena_clear(arena, count, sizeof **links);
    uint32_t at = task;
    for (size_t i = count; i-- > 0;) {
        bk_traced traced = bk_tracer_bound(tracer, at);
        (*links)[i] = (bk_chain_link){at, traced.bound, traced.resource};
        at = traced.from;
    }
    bk_tracer_free(tracer);
    return count;
}
