#include "bodkin/plan/planner_parts.h"

#include <stdlib.h>
#include <string.h>

enum { DIGIT_BITS = 8, DIGITS = 1 << DIGIT_BITS };

bk_draft bk_draft_new(size_t task_count)
{
    return (bk_draft){.order = bk_alloc_clear(task_count + 1, sizeof(uint32_t)),
                      .placings = bk_alloc_clear(task_count + 1, sizeof(bk_placing))};
}

void bk_draft_free(bk_draft *draft)
{
    free(draft->order);
    free(draft->placings);
    *draft = (bk_draft){0};
}

void bk_draft_copy(bk_draft *to, const bk_draft *from, size_t task_count)
{
    memcpy(to->order, from->order, task_count * sizeof *to->order);
    memcpy(to->placings, from->placings, task_count * sizeof *to->placings);
    to->cost = from->cost;
    to->parallel = from->parallel;
    to->mark = from->mark;
}

int64_t bk_planner_behind(const bk_planner *planner, size_t task)
{
    return planner->generator->late_class[task] ? (int64_t)1 << 40 : 0;
}

bool bk_planner_goes(bk_planner *planner)
{
    if (planner->stopped || planner->schedules >= planner->budget || bk_planner_settled(planner))
        return false;
    if (planner->goes_on != NULL && !planner->goes_on(planner->context, planner->schedules))
        planner->stopped = true;
    return !planner->stopped;
}

// ------------------------------------------------------------------------------------------------------------- sorting

static uint32_t moment_of(const bk_placing *placing, bool by_end)
{
    return (uint32_t)(by_end ? placing->end : placing->begin);
}

// One round of sorting, by one digit of the moment; those with the same digit stay as they stand.
static void sort_digit(const bk_placing *placings, bool by_end, int shift, size_t count, const uint32_t *from,
                       uint32_t *to)
{
    uint32_t starts[DIGITS + 1] = {0};
    for (size_t i = 0; i < count; i++)
        starts[(moment_of(&placings[from[i]], by_end) >> shift) % DIGITS + 1]++;
    for (size_t digit = 0; digit < DIGITS; digit++)
        starts[digit + 1] += starts[digit];
    for (size_t i = 0; i < count; i++)
        to[starts[(moment_of(&placings[from[i]], by_end) >> shift) % DIGITS]++] = from[i];
}

static void sort_plain(bk_planner *planner, const bk_placing *placings, bool by_end, uint32_t *order)
{
    size_t count = planner->problem->task_count;
    uint32_t most = 0;
    for (size_t task = 0; task < count; task++)
        if (moment_of(&placings[task], by_end) > most)
            most = moment_of(&placings[task], by_end);
    memcpy(order, planner->ranked, count * sizeof *order);
    for (int shift = 0; shift < 32 && most >> shift > 0; shift += DIGIT_BITS) {
        sort_digit(placings, by_end, shift, count, order, planner->numbers);
        memcpy(order, planner->numbers, count * sizeof *order);
    }
}

// What could not be put in backwards should have begun before minute 0.
static void sort_classes(bk_planner *planner, const bk_placing *placings, bool by_end, uint32_t *order)
{
    for (size_t task = 0; task < planner->problem->task_count; task++) {
        bk_clock_minute moment = by_end ? placings[task].end : placings[task].begin;
        planner->keys[task] =
            (moment == BK_CLOCK_NEVER && !by_end ? 0 : moment) + bk_planner_behind(planner, task);
    }
    bk_links_order(planner->problem, &planner->generator->after, planner->keys, order);
}

void bk_planner_sort(bk_planner *planner, const bk_placing *placings, bool by_end, uint32_t *order)
{
    if (planner->plain)
        sort_plain(planner, placings, by_end, order);
    else
        sort_classes(planner, placings, by_end, order);
}

// -------------------------------------------------------------------------------------------------------------- making

uint64_t bk_planner_mark(const bk_planner *planner, const bk_placing *placings)
{
    const uint64_t spread = 0x9E3779B97F4A7C15U; // an odd number without a pattern: the golden ratio
    uint64_t mark = 0;
    for (size_t task = 0; task < planner->problem->task_count; task++) {
        mark = (mark ^ (uint32_t)placings[task].begin ^ (uint64_t)placings[task].mode << 32) * spread;
        mark ^= mark >> 29;
    }
    return mark;
}

bool bk_planner_make(bk_planner *planner, bk_draft *draft, bool parallel)
{
    bk_making making = {.order = draft->order};
    if (parallel)
        bk_generate_parallel(planner->generator, &making, draft->placings);
    else
        bk_generate_serial(planner->generator, &making, draft->placings);
    draft->cost = bk_cost_of(planner->problem, draft->placings);
    draft->mark = bk_planner_mark(planner, draft->placings);
    planner->schedules++;
    draft->parallel = parallel;
    if (planner->schedules > 1 && bk_cost_order(&draft->cost, &planner->best.cost) >= 0)
        return false;
    bk_draft_copy(&planner->best, draft, planner->problem->task_count);
    bk_planner_sort(planner, draft->placings, false, planner->best.order);
    return true;
}
