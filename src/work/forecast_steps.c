#include <stdlib.h>
#include <string.h>

#include "bodkin/work/forecast_parts.h"

/// The open steps of a forecast, when and by whom they are done, and everybody's days.

// -------------------------------------------------------------------------------------------------------- people

/// The resource of a call, or BK_NO_INDEX where the step is not done at one.
static size_t call_of(const bk_frame *frame, const bk_mode *mode)
{
    for (size_t i = 0; i < mode->use_count; i++) {
        if (frame->people[mode->uses[i].resource]) {
            return mode->uses[i].resource;
        }
    }
    return BK_NO_INDEX;
}

/// Who does it in a mode; in `arena`.
static const size_t *people_of(const bk_frame *frame, const bk_mode *mode, bk_arena *arena, size_t *count)
{
    size_t call = call_of(frame, mode);
    if (call != BK_NO_INDEX) {
        *count = frame->people_counts[call];
        size_t *kept = bk_arena_clear(arena, *count, sizeof *kept);
        memcpy(kept, frame->people[call], *count * sizeof *kept);
        return kept;
    }
    size_t *people = bk_arena_clear(arena, mode->use_count, sizeof *people);
    *count = 0;
    for (size_t i = 0; i < mode->use_count; i++) {
        if (mode->uses[i].resource < frame->prospect->person_count) {
            people[(*count)++] = mode->uses[i].resource;
        }
    }
    return people;
}

// --------------------------------------------------------------------------------------------------------- steps

/// What keeps a step from being worked on now, whatever else it waits on: its piece is away, its material is not there, its fitting is
/// to come, or none of those in the workroom has hours for it. (Measures are known to the rail alone.)
static bool held_up(const bk_frame *frame, size_t at)
{
    const bk_prospect_step *step = &frame->prospect->steps[at];
    const bk_mode *first = &frame->ways[at].plan[0];
    bool nobody = frame->prospect->person_count && first->uses[0].resource == frame->nobody;
    if (step->piece->out || step->wait->kind == BK_FIT || nobody) {
        return true;
    }
    for (size_t i = 0; i < step->wait->claim_count; i++) {
        if (step->wait->claims[i].supply != BK_SUPPLY_SHELF) {
            return true;
        }
    }
    return false;
}

/// Whether one of the costumes that wear its piece says that a step waits for measures.
static bool lacks_measures(const bk_prospect *prospect, const bk_prospect_step *step)
{
    const bk_rail *rail = prospect->productions[step->production].rail;
    for (size_t c = 0; c < step->piece->costumes.count; c++) {
        const bk_costume_waits *reckoned = &rail->reckoned[step->piece->costumes.items[c]];
        for (size_t i = 0; i < reckoned->wait_count; i++) {
            if (reckoned->waits[i].step == step->index && reckoned->waits[i].on == BK_WAIT_MEASURES) {
                return true;
            }
        }
    }
    return false;
}

static void name_materials(bk_planned_step *planned, const bk_rail *rail, const bk_wait_step *wait,
                           bk_arena *arena)
{
    const char **names = bk_arena_clear(arena, wait->claim_count, sizeof *names);
    for (size_t i = 0; i < wait->claim_count; i++) {
        names[i] = bk_arena_text(arena, rail->materials[wait->claims[i].material].name);
    }
    planned->materials = names;
    planned->material_count = wait->claim_count;
}

static void name_step(bk_planned_step *planned, const bk_prospect *prospect, const bk_prospect_step *step)
{
    bk_arena *arena = prospect->kept;
    const bk_rail *rail = prospect->productions[step->production].rail;
    planned->id = step->record->id;
    planned->production_id = rail->production.id;
    planned->piece_id = step->record->piece_id;
    planned->production = bk_arena_text(arena, rail->production.name);
    planned->piece = bk_arena_text(arena, step->piece->name);
    planned->piece_title = bk_arena_text(arena, rail->pieces[step->wait->piece].title);
    planned->key = bk_arena_text(arena, step->record->key);
    planned->title = bk_arena_text(arena, step->record->title);
    if (step->costume != BK_NO_INDEX) {
        const bk_rail_costume *costume =
            prospect->productions[step->production].costumes[prospect->costumes[step->costume].index];
        planned->costume_id = costume->record->id;
        planned->costume = bk_arena_text(arena, costume->record->number);
        planned->role = bk_arena_text(arena, costume->role);
    }
    name_materials(planned, rail, step->wait, arena);
}

static void place_step(bk_planned_step *planned, const bk_outcome_of_plan *outcome, size_t at)
{
    const bk_frame *frame = outcome->frame;
    const bk_frame_ways *ways = &frame->ways[at];
    bk_placing nowhere = {BK_CLOCK_NEVER, BK_CLOCK_NEVER, 0};
    bk_placing placing = outcome->placings ? outcome->placings[at] : nowhere;
    planned->minutes = ways->plan[placing.mode].minutes;
    planned->begin = bk_frame_moment(frame->prospect, placing.begin, false);
    planned->end = bk_frame_moment(frame->prospect, placing.end, placing.end > placing.begin);
    if (placing.begin != BK_CLOCK_NEVER) {
        planned->people =
            people_of(frame, &ways->plan[placing.mode], frame->prospect->kept, &planned->person_count);
    }
}

bk_planned_step *bk_forecast_fill_steps(bk_forecast *forecast, const bk_outcome_of_plan *outcome)
{
    const bk_frame *frame = outcome->frame;
    const bk_prospect *prospect = frame->prospect;
    bk_planned_step *planned = bk_arena_clear(forecast->arena, prospect->step_count, sizeof *planned);
    for (size_t i = 0; i < prospect->step_count; i++) {
        const bk_prospect_step *step = &prospect->steps[i];
        const bk_rail *rail = prospect->productions[step->production].rail;
        name_step(&planned[i], prospect, step);
        place_step(&planned[i], outcome, i);
        planned[i].kind = step->wait->kind;
        planned[i].level = step->record->level == BK_NOT_KNOWN ? bk_usual_level((bk_kind)step->wait->kind)
                                                               : step->record->level;
        planned[i].hands = step->hands;
        planned[i].guessed = step->record->minutes;
        planned[i].can_wait = step->wait->can_wait;
        planned[i].next = bk_step_next(&rail->rows, step->index);
        planned[i].free_now = planned[i].next && !held_up(frame, i) && !lacks_measures(prospect, step);
        planned[i].due = step->due;
        planned[i].booked = step->booked != NULL;
        planned[i].latest = (bk_moment){BK_NO_DAY, BK_NO_TIME};
    }
    forecast->steps = planned;
    forecast->step_count = prospect->step_count;
    return planned;
}

// ----------------------------------------------------------------------------------------------------- stretches

typedef BK_LIST(bk_planned_stretch) stretch_list;

/// A stretch of work, cut at midnights, for each of those who do it.
static void add_stretch(const bk_forecast *forecast, stretch_list *list, size_t step,
                        const bk_clock_minute span[2], bool again)
{
    const bk_planned_step *planned = &forecast->steps[step];
    for (bk_clock_minute from = span[0]; from < span[1];) {
        bk_clock_minute day = from / BK_DAY_MINUTES;
        bk_clock_minute midnight = (day + 1) * BK_DAY_MINUTES;
        bk_clock_minute to = span[1] < midnight ? span[1] : midnight;
        for (size_t i = 0; i < planned->person_count; i++) {
            bk_planned_stretch stretch = {forecast->today + day,
                                          planned->people[i],
                                          from - day * BK_DAY_MINUTES,
                                          to - day * BK_DAY_MINUTES,
                                          step,
                                          again};
            bk_list_add(list, stretch);
        }
        from = to;
        again = true;
    }
}

static int in_order(const void *left, const void *right)
{
    const bk_planned_stretch *a = left, *b = right;
    if (a->day != b->day) {
        return a->day < b->day ? -1 : 1;
    }
    if (a->person != b->person) {
        return a->person < b->person ? -1 : 1;
    }
    if (a->from != b->from) {
        return a->from < b->from ? -1 : 1;
    }
    return (a->step > b->step) - (a->step < b->step);
}

void bk_forecast_fill_stretches(bk_forecast *forecast, const bk_outcome_of_plan *outcome)
{
    const bk_frame *frame = outcome->frame;
    stretch_list list = {0};
    for (size_t i = 0; outcome->placings && i < forecast->step_count; i++) {
        if (outcome->placings[i].begin == BK_CLOCK_NEVER) {
            continue;
        }
        bk_clock_minute(*spans)[2];
        size_t count =
            bk_placing_stretches(&frame->problem, i, &outcome->placings[i], frame->prospect->scratch, &spans);
        for (size_t s = 0; s < count; s++) {
            add_stretch(forecast, &list, i, spans[s], s > 0);
        }
    }
    bk_planned_stretch *kept = bk_arena_clear(forecast->arena, list.count, sizeof *kept);
    if (list.count) {
        memcpy(kept, list.items, list.count * sizeof *kept);
        qsort(kept, list.count, sizeof *kept, in_order);
    }
    forecast->stretches = kept;
    forecast->stretch_count = list.count;
    bk_list_free(&list);
}
