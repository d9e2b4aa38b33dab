#include <string.h>

#include "bodkin/plan/planner_parts.h"

// The drafts of the first side: the one at hand, and behind it what was the best before.
enum { AT_HAND = 0, DRAFTS = 12 };

enum {
    SHIFTS = 7,          // a shift is between the quarter and the 256th part of the order
    IMPROVED_EVERY = 50, // tries: then comes a pass backward and forward
    OTHERWISE = 16       // of so many tries one is made in turn in place of forward in time, or the other way
};

static uint32_t below(bk_planner *planner, size_t count)
{
    return bk_chance_below(&planner->chance, (uint32_t)count);
}

// --------------------------------------------------------------------------------------------------------- what is late

// When a target is done as far as that comes about, but not before it is due.
static bk_clock_minute end_of(const bk_target *target, const bk_placing *placings)
{
    bk_clock_minute end = target->due;
    for (size_t i = 0; i < target->task_count; i++) {
        bk_clock_minute task_end = placings[target->tasks[i]].end;
        if (task_end > end && task_end != BK_CLOCK_NEVER)
            end = task_end;
    }
    return end;
}

static uint64_t lateness(const bk_target *target, const bk_placing *placings)
{
    return (uint64_t)((int64_t)end_of(target, placings) - target->due) * (uint64_t)target->weight;
}

// A target that is late, each as likely as it is late; NULL where none is.
static const bk_target *pick_late(bk_planner *planner, const bk_placing *placings)
{
    const bk_problem *problem = planner->problem;
    uint64_t sum = 0;
    for (size_t i = 0; i < problem->target_count; i++)
        sum += lateness(&problem->targets[i], placings);
    uint64_t drawn = sum > 0 ? bk_chance_next(&planner->chance) % sum : 0;
    for (size_t i = 0; i < problem->target_count && sum > 0; i++) {
        uint64_t late = lateness(&problem->targets[i], placings);
        if (drawn < late)
            return &problem->targets[i];
        drawn -= late;
    }
    return NULL;
}

// The task that decides the finish; of all where nothing that does not give way can end earlier.
static uint32_t last_task(const bk_planner *planner, const bk_draft *draft)
{
    bool all = draft->cost.finish <= planner->bound.finish;
    bk_clock_minute end = all ? draft->cost.last : draft->cost.finish;
    for (uint32_t task = 0; task < planner->problem->task_count; task++)
        if (draft->placings[task].end == end && (all || !planner->problem->tasks[task].yields))
            return task;
    return 0;
}

// -------------------------------------------------------------------------------------------------------- moving tasks

// Adds to the marked tasks all they come after (or that comes after them).
static void close_marks(const bk_planner *planner, const bk_links *links, bool forward, uint32_t *marks)
{
    size_t count = planner->problem->task_count;
    for (size_t i = 0; i < count; i++) {
        uint32_t task = planner->ranked[forward ? i : count - 1 - i];
        for (uint32_t link = links->first[task]; marks[task] && link < links->first[task + 1]; link++)
            marks[links->items[link].task] = 1;
    }
}

static void mark_target(const bk_target *target, uint32_t *marks)
{
    for (size_t i = 0; i < target->task_count; i++)
        marks[target->tasks[i]] = 1;
}

// Shifts the marked tasks by some places in the order, all by the same; the others stay in theirs.
static void shift_marked(bk_planner *planner, const uint32_t *marks, bool forward, const uint32_t *from,
                         uint32_t *to)
{
    size_t count = planner->problem->task_count;
    int64_t most = (int64_t)(count >> (1 + below(planner, SHIFTS))) + 1;
    int64_t shift = 2 * (1 + (int64_t)below(planner, (size_t)most)) + 1;
    for (size_t i = 0; i < count; i++) {
        uint32_t task = from[i];
        planner->keys[task] = 2 * (int64_t)i + bk_planner_behind(planner, task);
        if (marks[task])
            planner->keys[task] += forward ? -shift : shift;
    }
    bk_links_order(planner->problem, &planner->generator->after, planner->keys, to);
}

// Something that is late moves forward with all it comes after: a target, or one of its tasks.
static void pull(bk_planner *planner, const bk_draft *from, uint32_t *order)
{
    uint32_t *marks = planner->others;
    const bk_target *late = pick_late(planner, from->placings);
    memset(marks, 0, planner->problem->task_count * sizeof *marks);
    if (late == NULL)
        marks[last_task(planner, from)] = 1;
    else if (below(planner, 2) == 0)
        marks[late->tasks[below(planner, late->task_count)]] = 1;
    else
        mark_target(late, marks);
    close_marks(planner, &planner->generator->before, false, marks);
    shift_marked(planner, marks, true, from->order, order);
}

// A target, late or not, moves backward with all that comes after it.
static void push(bk_planner *planner, const bk_draft *from, uint32_t *order)
{
    uint32_t *marks = planner->others;
    const bk_problem *problem = planner->problem;
    memset(marks, 0, problem->task_count * sizeof *marks);
    if (problem->target_count == 0)
        marks[below(planner, problem->task_count)] = 1;
    else
        mark_target(&problem->targets[below(planner, problem->target_count)], marks);
    close_marks(planner, &planner->generator->after, true, marks);
    shift_marked(planner, marks, false, from->order, order);
}

static void mix(bk_planner *planner, const bk_draft *from, uint32_t *order)
{
    const bk_draft *other = &planner->drafts[0][below(planner, planner->draft_count)];
    bk_mix_cross(planner, below(planner, 2) == 0 ? from : other, other, false, order);
    bk_mix_mutate(planner, order);
}

// ----------------------------------------------------------------------------------------------------- there and back

// The latest end of each task that makes none of its targets later than it is due or is now.
static void write_latest(bk_planner *planner, const bk_draft *draft, bk_clock_minute *latest)
{
    const bk_problem *problem = planner->problem;
    for (size_t task = 0; task < problem->task_count; task++)
        latest[task] = draft->cost.last;
    for (size_t i = 0; i < problem->target_count; i++) {
        bk_clock_minute end = end_of(&problem->targets[i], draft->placings);
        for (size_t j = 0; j < problem->targets[i].task_count; j++)
            if (end < latest[problem->targets[i].tasks[j]])
                latest[problem->targets[i].tasks[j]] = end;
    }
}

// Everything as late as it can be without making anything late, and in that order forward again.
static void there_and_back(bk_planner *planner, const bk_draft *from, bk_draft *work)
{
    bk_clock_minute *latest = planner->moments;
    write_latest(planner, from, latest);
    bk_planner_sort(planner, from->placings, true, planner->spare.order);
    bk_making making = {.order = planner->spare.order};
    bk_generate_backward_to(planner->generator, &making, from->cost.last, latest, work->placings);
    planner->schedules++;
    bk_planner_sort(planner, work->placings, false, work->order);
}

// -------------------------------------------------------------------------------------------------------------- search

// Takes the work for the draft at hand where it is no worse; what is the best so far is kept among the drafts as well.
static void weigh(bk_planner *planner, bool best)
{
    bk_draft *at_hand = &planner->drafts[0][AT_HAND];
    size_t count = planner->problem->task_count;
    if (bk_cost_order(&planner->work.cost, &at_hand->cost) <= 0)
        bk_draft_copy(at_hand, &planner->work, count);
    if (!best)
        return;
    size_t at = planner->draft_count < DRAFTS ? planner->draft_count++ : 1 + below(planner, DRAFTS - 1);
    if (planner->drafts[0][at].order == NULL)
        planner->drafts[0][at] = bk_draft_new(count);
    bk_draft_copy(&planner->drafts[0][at], &planner->work, count);
}

// Begins with the first draft of all; then come the other rules, and the first one in turn.
static void make_by_rules(bk_planner *planner)
{
    planner->drafts[0][AT_HAND] = bk_draft_new(planner->problem->task_count);
    bk_draft_copy(&planner->drafts[0][AT_HAND], &planner->work, planner->problem->task_count);
    planner->draft_count = 1;
    for (size_t rule = BK_RULES; rule > 0 && bk_planner_goes(planner); rule--) {
        bk_links_order(planner->problem, &planner->generator->after, planner->rules[rule % BK_RULES],
                       planner->work.order);
        weigh(planner, bk_planner_make(planner, &planner->work, rule < BK_RULES));
    }
}

static void try_one(bk_planner *planner)
{
    static void (*const moves[])(bk_planner *, const bk_draft *, uint32_t *) = {pull, pull, pull, pull,
                                                                                pull, push, push, mix};
    const bk_draft *at_hand = &planner->drafts[0][AT_HAND];
    if (++planner->turn % IMPROVED_EVERY == 0)
        there_and_back(planner, at_hand, &planner->work);
    else
        moves[below(planner, sizeof moves / sizeof moves[0])](planner, at_hand, planner->work.order);
    bool otherwise = below(planner, OTHERWISE) == 0;
    if (bk_planner_goes(planner))
        weigh(planner, bk_planner_make(planner, &planner->work, at_hand->parallel != otherwise));
}

void bk_planner_search_due(bk_planner *planner)
{
    if (planner->draft_count == 0)
        make_by_rules(planner);
    while (bk_planner_goes(planner))
        try_one(planner);
}
