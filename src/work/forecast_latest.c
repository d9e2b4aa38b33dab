#include <stdlib.h>
#include <string.h>

#include "bodkin/plan/generate.h"
#include "bodkin/work/forecast_parts.h"

/// The latest that a step can begin so that its costume is still finished by its due day: the step and what comes after it of that
/// costume are put as late as they go, each with the workroom's hands.

struct bk_backward {
    const bk_frame *frame;
    bk_arena *arena;        ///< of one costume
    bk_resource *resources; ///< cut at the due minute: what is behind it does not matter
    bk_clock_minute cut_at;
    uint32_t *seen;   ///< of each step: in which round it was met
    uint32_t *needed; ///< in which round the costume needs it
    uint32_t *place;  ///< its place in the small problem
    int64_t *reach;   ///< minutes from the beginning of the first step to its own
    uint32_t round;
    uint32_t *members;
    size_t member_count;
    uint32_t *rank; ///< place of each step in the prospect's order
};

bk_backward *bk_backward_new(const bk_frame *frame)
{
    const bk_prospect *prospect = frame->prospect;
    bk_arena *arena = prospect->scratch;
    bk_backward *backward = bk_arena_clear(arena, 1, sizeof *backward);
    backward->frame = frame;
    backward->arena = bk_arena_new();
    backward->resources = bk_arena_clear(arena, frame->resource_count, sizeof *backward->resources);
    backward->cut_at = BK_CLOCK_NONE;
    backward->seen = bk_arena_clear(arena, prospect->step_count, sizeof *backward->seen);
    backward->needed = bk_arena_clear(arena, prospect->step_count, sizeof *backward->needed);
    backward->place = bk_arena_clear(arena, prospect->step_count, sizeof *backward->place);
    backward->reach = bk_arena_clear(arena, prospect->step_count, sizeof *backward->reach);
    backward->members = bk_arena_clear(arena, prospect->step_count, sizeof *backward->members);
    backward->rank = bk_arena_clear(arena, prospect->step_count, sizeof *backward->rank);
    for (size_t i = 0; i < prospect->step_count; i++) {
        backward->rank[prospect->order[i]] = (uint32_t)i;
    }
    return backward;
}

void bk_backward_free(bk_backward *backward)
{
    if (backward) {
        bk_arena_free(backward->arena);
    }
}

static void cut_resources(bk_backward *backward, bk_clock_minute end)
{
    const bk_frame *frame = backward->frame;
    if (backward->cut_at == end) {
        return;
    }
    backward->cut_at = end;
    for (size_t i = 0; i < frame->resource_count; i++) {
        const bk_resource *whole = &frame->resources[i];
        size_t low = 1, high = whole->stage_count;
        while (low < high) {
            size_t middle = low + (high - low) / 2;
            if (whole->stages[middle].from < end) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        backward->resources[i] = (bk_resource){whole->stages, low};
    }
}

// ---------------------------------------------------------------------------------------------- what belongs to it

/// Marks all that a costume needs: what cannot wait of its own, and whatever comes before that.
static void mark_needed(bk_backward *backward, const bk_prospect_costume *costume, uint32_t round)
{
    const bk_prospect *prospect = backward->frame->prospect;
    size_t count = 0;
    for (size_t i = 0; i < costume->firm_count; i++) {
        backward->needed[costume->firm[i]] = round;
        backward->members[count++] = (uint32_t)costume->firm[i];
    }
    for (size_t next = 0; next < count; next++) {
        const bk_prospect_step *step = &prospect->steps[backward->members[next]];
        for (size_t i = 0; i < step->before_count; i++) {
            if (backward->needed[step->before[i]] != round) {
                backward->needed[step->before[i]] = round;
                backward->members[count++] = step->before[i];
            }
        }
    }
}

/// Gathers the step and all needed ones that come after it, directly or not.
static void gather_members(bk_backward *backward, size_t first, uint32_t needed)
{
    const bk_prospect *prospect = backward->frame->prospect;
    uint32_t round = ++backward->round;
    backward->members[0] = (uint32_t)first;
    backward->member_count = 1;
    backward->seen[first] = round;
    backward->reach[first] = 0;
    for (size_t next = 0; next < backward->member_count; next++) {
        const bk_prospect_step *step = &prospect->steps[backward->members[next]];
        for (size_t i = 0; i < step->after_count; i++) {
            uint32_t after = step->after[i];
            if (backward->needed[after] == needed && backward->seen[after] != round) {
                backward->seen[after] = round;
                backward->reach[after] = 0;
                backward->members[backward->member_count++] = after;
            }
        }
    }
}

// --------------------------------------------------------------------------------------------- the small problem

/// Sorts the members: in the prospect's order, so that each stands after those it comes after.
static void sort_members(bk_backward *backward)
{
    for (size_t i = 1; i < backward->member_count; i++) {
        uint32_t member = backward->members[i];
        size_t at = i;
        for (; at > 0 && backward->rank[backward->members[at - 1]] > backward->rank[member]; at--) {
            backward->members[at] = backward->members[at - 1];
        }
        backward->members[at] = member;
    }
    for (size_t i = 0; i < backward->member_count; i++) {
        backward->place[backward->members[i]] = (uint32_t)i;
    }
}

static void fill_small(bk_backward *backward, bk_problem *small)
{
    const bk_frame *frame = backward->frame;
    const bk_prospect *prospect = frame->prospect;
    size_t links = 0;
    for (size_t i = 0; i < backward->member_count; i++) {
        links += prospect->steps[backward->members[i]].after_count;
    }
    bk_task *tasks = bk_arena_clear(backward->arena, backward->member_count, sizeof *tasks);
    bk_rank *ranks = bk_arena_clear(backward->arena, links, sizeof *ranks);
    for (size_t i = 0; i < backward->member_count; i++) {
        uint32_t member = backward->members[i];
        const bk_prospect_step *step = &prospect->steps[member];
        const bk_frame_ways *ways = &frame->ways[member];
        tasks[i] = (bk_task){.modes = ways->modes,
                             .mode_count = ways->mode_count,
                             .appointment = BK_CLOCK_NONE,
                             .whole = step->wait->kind == BK_FIT};
        int32_t rest = (int32_t)(step->rest < BK_FRAME_FARTHEST ? step->rest : BK_FRAME_FARTHEST);
        for (size_t a = 0; a < step->after_count; a++) {
            uint32_t after = step->after[a];
            if (backward->seen[after] != backward->round) {
                continue;
            }
            ranks[small->rank_count++] = (bk_rank){(uint32_t)i, backward->place[after], rest};
            int64_t reach = backward->reach[member] + ways->modes[0].minutes + rest;
            backward->reach[after] = reach > backward->reach[after] ? reach : backward->reach[after];
        }
    }
    small->tasks = tasks;
    small->task_count = backward->member_count;
    small->ranks = ranks;
    small->resources = backward->resources;
    small->resource_count = frame->resource_count;
}

/// The order for putting tasks in from the end: those with the most work between the first step and them go in first.
static uint32_t *small_order(bk_backward *backward)
{
    uint32_t *order = bk_arena_clear(backward->arena, backward->member_count, sizeof *order);
    for (size_t i = 0; i < backward->member_count; i++) {
        int64_t reach = backward->reach[backward->members[i]];
        size_t at = i;
        for (; at > 0 && backward->reach[backward->members[order[at - 1]]] > reach; at--) {
            order[at] = order[at - 1];
        }
        order[at] = (uint32_t)i;
    }
    return order;
}

static bk_clock_minute latest_of(bk_backward *backward, size_t step, uint32_t needed, bk_clock_minute end)
{
    gather_members(backward, step, needed);
    sort_members(backward);
    bk_problem small = {0};
    fill_small(backward, &small);
    bk_making making = {.order = small_order(backward)};
    bk_placing *placings = bk_arena_clear(backward->arena, small.task_count, sizeof *placings);
    bk_generator *generator = bk_generator_new(&small);
    bk_generate_backward(generator, &making, end, placings);
    bk_generator_free(generator);
    bk_clock_minute latest = placings[backward->place[step]].begin;
    bk_arena_reset(backward->arena);
    return latest;
}

void bk_backward_costume(bk_backward *backward, size_t costume, bk_clock_minute *latest)
{
    const bk_prospect *prospect = backward->frame->prospect;
    const bk_prospect_costume *wearer = &prospect->costumes[costume];
    bk_clock_minute end =
        wearer->due == BK_NO_DAY ? 0 : bk_frame_midnight(prospect, wearer->due) + BK_DAY_MINUTES;
    uint32_t needed = ++backward->round;
    if (end > 0) {
        cut_resources(backward, end);
        mark_needed(backward, wearer, needed);
    }
    for (size_t i = 0; i < wearer->open_count; i++) {
        latest[i] = end > 0 ? latest_of(backward, wearer->open[i], needed, end) : BK_CLOCK_NEVER;
    }
}

// -------------------------------------------------------------------------------------------------------- filling

/// Minutes of work of all that comes after each step.
static void fill_behind(const bk_frame *frame, bk_planned_step *planned)
{
    const bk_prospect *prospect = frame->prospect;
    size_t *met = bk_arena_clear(prospect->scratch, prospect->step_count, sizeof *met);
    uint32_t *queue = bk_arena_clear(prospect->scratch, prospect->step_count, sizeof *queue);
    for (size_t first = 0; first < prospect->step_count; first++) {
        size_t count = 1;
        queue[0] = (uint32_t)first;
        planned[first].behind = 0;
        for (size_t next = 0; next < count; next++) {
            const bk_prospect_step *step = &prospect->steps[queue[next]];
            for (size_t i = 0; i < step->after_count; i++) {
                uint32_t after = step->after[i];
                if (met[after] != first + 1) {
                    met[after] = first + 1;
                    queue[count++] = after;
                    planned[first].behind += planned[after].minutes;
                }
            }
        }
    }
}

/// The latest beginnings of one costume.
typedef struct costume_latest {
    const bk_frame *frame;
    const bk_prospect_costume *costume;
    const bk_clock_minute *latest; ///< of each of its open steps
} costume_latest;

static bk_day latest_day_of(const costume_latest *at, size_t step)
{
    for (size_t i = 0; i < at->costume->open_count; i++) {
        if (at->costume->open[i] == step) {
            return bk_frame_day(at->frame->prospect, at->latest[i], false);
        }
    }
    return BK_NO_DAY;
}

/// The day by which a piece that is out must be back: the earliest of the latest beginnings of those of its open steps that cannot wait;
/// where it has none the costume's due day.
static bk_day wanted_back(const costume_latest *at, size_t piece)
{
    const bk_prospect *prospect = at->frame->prospect;
    const bk_prospect_production *production = &prospect->productions[at->costume->production];
    const bk_indices *steps = &production->rail->rows.pieces[piece].steps;
    bk_day wanted = at->costume->due >= prospect->today ? at->costume->due : BK_NO_DAY;
    for (size_t i = 0; i < steps->count; i++) {
        size_t step = production->at[steps->items[i]];
        if (step != BK_NO_INDEX && !prospect->steps[step].wait->can_wait) {
            bk_day day = latest_day_of(at, step);
            wanted = day < wanted ? day : wanted;
        }
    }
    return wanted;
}

/// One for each piece and step that the costume waits on, in the order of its waits.
static void fill_wanted(const costume_latest *at, bk_costume_forecast *costume, bk_arena *arena)
{
    const bk_prospect_production *production = &at->frame->prospect->productions[at->costume->production];
    const bk_rail *rail = production->rail;
    const bk_costume_waits *reckoned = &rail->reckoned[at->costume->index];
    bk_wanted *wanted = bk_arena_clear(arena, reckoned->wait_count, sizeof *wanted);
    size_t count = 0;
    for (size_t i = 0; i < reckoned->wait_count; i++) {
        const bk_wait *wait = &reckoned->waits[i];
        int64_t step_id = wait->step == BK_NO_INDEX ? 0 : rail->steps[wait->step].id;
        int64_t piece_id = rail->pieces[wait->piece].id;
        if (count && wanted[count - 1].piece_id == piece_id && wanted[count - 1].step_id == step_id) {
            continue;
        }
        bk_day by = wait->step == BK_NO_INDEX ? wanted_back(at, wait->piece)
                                              : latest_day_of(at, production->at[wait->step]);
        wanted[count++] = (bk_wanted){piece_id, step_id, by};
    }
    costume->wanted = wanted;
    costume->wanted_count = count;
}

void bk_forecast_fill_latest(const bk_frame *frame, bk_planned_step *planned, bk_costume_forecast *costumes,
                             bk_arena *arena)
{
    const bk_prospect *prospect = frame->prospect;
    fill_behind(frame, planned);
    bk_backward *backward = bk_backward_new(frame);
    for (size_t i = 0; i < prospect->costume_count; i++) {
        const bk_prospect_costume *costume = &prospect->costumes[i];
        bk_clock_minute *latest = bk_arena_clear(prospect->scratch, costume->open_count, sizeof *latest);
        bk_backward_costume(backward, i, latest);
        for (size_t s = 0; s < costume->open_count; s++) {
            if (prospect->steps[costume->open[s]].costume == i) {
                planned[costume->open[s]].latest = bk_frame_moment(prospect, latest[s], false);
            }
        }
        fill_wanted(&(costume_latest){frame, costume, latest}, &costumes[i], arena);
    }
    bk_backward_free(backward);
}
