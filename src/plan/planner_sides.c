#include <string.h>

#include "bodkin/plan/planner_parts.h"

enum {
    FORWARD = 0,
    BACKWARD = 1,
    TASKS_TIMES_DRAFTS =
        2000, // a population for a thousand schedules; it grows with the root of their number
    DRAFTS_LEAST = 8,
    FEW_TASKS =
        45, // up to so many a pair of drafts has two children, of whom the better stays, and there are more pairs
    RIVALS = 6,    // the father is the best of so many
    IDLE_MOST = 40 // rounds of the population without a change before it is made anew
};

static uint64_t root(uint64_t square)
{
    uint64_t low = 0, high = (uint64_t)1 << 31;
    while (high - low > 1) {
        uint64_t middle = (low + high) / 2;
        if (middle * middle <= square)
            low = middle;
        else
            high = middle;
    }
    return low;
}

static size_t population_of(const bk_planner *planner)
{
    const uint64_t most_counted = 1000000; // more schedules make no larger population
    uint64_t budget = (uint64_t)planner->budget < most_counted ? (uint64_t)planner->budget : most_counted;
    uint64_t size = TASKS_TIMES_DRAFTS * root(budget * 1000) / 1000 / planner->problem->task_count;
    if (planner->problem->task_count <= FEW_TASKS)
        size = size * 5 / 4;
    return size < DRAFTS_LEAST ? DRAFTS_LEAST : size > BK_DRAFTS_MOST ? BK_DRAFTS_MOST : (size_t)size;
}

// -------------------------------------------------------------------------------------------------------------- making

static void make_forward(bk_planner *planner, bk_draft *draft, bool parallel)
{
    bk_planner_make(planner, draft, parallel);
    bk_planner_sort(planner, draft->placings, true, draft->order);
}

// From the end of the horizon backward, and then moved to minute 0. What is the best is made forward once more, for it can only get
// better so.
static void make_backward(bk_planner *planner, bk_draft *draft)
{
    size_t count = planner->problem->task_count;
    bk_making making = {.order = draft->order};
    bk_clock_minute first = BK_CLOCK_NEVER;
    bk_generate_backward(planner->generator, &making, planner->horizon, draft->placings);
    planner->schedules++;
    for (size_t task = 0; task < count; task++)
        if (draft->placings[task].begin < first)
            first = draft->placings[task].begin;
    for (size_t task = 0; task < count; task++) {
        draft->placings[task].begin -= first;
        draft->placings[task].end -= first;
    }
    draft->cost = bk_cost_of(planner->problem, draft->placings);
    draft->mark = bk_planner_mark(planner, draft->placings);
    bk_planner_sort(planner, draft->placings, false, draft->order);
    if (bk_cost_order(&draft->cost, &planner->best.cost) >= 0)
        return;
    bk_draft_copy(&planner->best, draft, count);
    if (!bk_planner_goes(planner))
        return;
    memcpy(planner->spare.order, draft->order, count * sizeof *draft->order);
    make_forward(planner, &planner->spare, false);
}

// ---------------------------------------------------------------------------------------------------------- population

static bool is_known(const bk_planner *planner, int side, uint64_t mark)
{
    for (size_t i = 0; i < planner->draft_count; i++)
        if (planner->drafts[side][i].mark == mark)
            return true;
    return false;
}

// Puts a draft into both sides, made forward and backward; the first population has one by rule, and every second of the others is
// made forward in time.
static void add_sample(bk_planner *planner)
{
    size_t count = planner->problem->task_count, at = planner->draft_count;
    bk_draft *work = &planner->work;
    for (int side = 0; side < 2; side++)
        if (planner->drafts[side][at].order == NULL)
            planner->drafts[side][at] = bk_draft_new(count);
    if (at == 0)
        memcpy(work->order, planner->best.order, count * sizeof *work->order);
    else
        bk_mix_sample(planner, planner->rules[1], work->order);
    make_forward(planner, work, at % 2 == 1);
    bk_draft_copy(&planner->drafts[FORWARD][at], work, count);
    if (bk_planner_goes(planner))
        make_backward(planner, work);
    bk_draft_copy(&planner->drafts[BACKWARD][at], work, count);
    planner->draft_count++;
    planner->turn = 0;
    planner->side = FORWARD;
}

static size_t best_rival(bk_planner *planner, int side)
{
    size_t best = bk_chance_below(&planner->chance, (uint32_t)planner->draft_count);
    for (int i = 1; i < RIVALS; i++) {
        size_t other = bk_chance_below(&planner->chance, (uint32_t)planner->draft_count);
        if (bk_cost_order(&planner->drafts[side][other].cost, &planner->drafts[side][best].cost) < 0)
            best = other;
    }
    return best;
}

// Makes one child on `side` from two parents on the other; false where it is there already.
static bool make_child(bk_planner *planner, int side, const bk_draft *mother, const bk_draft *father,
                       bk_draft *child)
{
    bk_mix_cross(planner, mother, father, side == BACKWARD, child->order);
    bk_mix_mutate(planner, child->order);
    if (side == FORWARD)
        make_forward(planner, child, false);
    else
        make_backward(planner, child);
    return !is_known(planner, side, child->mark);
}

// The next child takes its place where it is no worse than what stands there.
static void have_child(bk_planner *planner)
{
    size_t count = planner->problem->task_count, at = planner->turn;
    int from = planner->side, side = from == FORWARD ? BACKWARD : FORWARD;
    bk_draft *here = planner->drafts[from], *place = &planner->drafts[side][at];
    size_t father = best_rival(planner, from);
    if (father == at)
        father = (at + 1) % planner->draft_count;
    planner->idle++;
    for (int child = 0; child < (count <= FEW_TASKS ? 2 : 1) && bk_planner_goes(planner); child++) {
        const bk_draft *mother = child == 0 ? &here[at] : &here[father];
        if (make_child(planner, side, mother, child == 0 ? &here[father] : &here[at], &planner->work) &&
            bk_cost_order(&planner->work.cost, &place->cost) <= 0) {
            planner->idle = 0;
            bk_draft_copy(place, &planner->work, count);
        }
    }
    if (++planner->turn == planner->draft_count) {
        planner->turn = 0;
        planner->side = side;
    }
}

void bk_planner_search_sides(bk_planner *planner)
{
    if (planner->draft_room == 0 && planner->problem->task_count > 0)
        planner->draft_room = population_of(planner);
    while (bk_planner_goes(planner)) {
        if (planner->draft_count < planner->draft_room) {
            add_sample(planner);
        } else if (planner->idle > (int64_t)(IDLE_MOST * planner->draft_count)) {
            planner->draft_count = 0;
            planner->idle = 0;
        } else {
            have_child(planner);
        }
    }
}
