#include "bodkin/work/forecast.h"

#include <stdlib.h>

#include "bodkin/base/text.h"
#include "bodkin/plan/planner.h"
#include "bodkin/work/forecast_parts.h"

// -------------------------------------------------------------------------------------------------------- effort

enum {
    STEPS_SCHEDULED = 1250000, ///< steps put into schedules in all: about a second
    MOST_SCHEDULES = 5000,
    STEPS_TRIED = 2000000, ///< steps put into trials in all: about a second
    FEWEST_TRIALS = 100,
};

static int64_t between(int64_t low, int64_t value, int64_t high)
{
    return value < low ? low : value > high ? high : value;
}

bk_effort bk_effort_usual(size_t open_steps, uint64_t seed, int64_t tries)
{
    if (tries >= 0) {
        int64_t trials = tries < INT32_MAX ? tries : INT32_MAX;
        return (bk_effort){seed, tries < 1 ? 1 : tries, (int32_t)trials};
    }
    int64_t steps = open_steps ? (int64_t)open_steps : 1;
    return (bk_effort){seed, between(1, STEPS_SCHEDULED / steps, MOST_SCHEDULES),
                       (int32_t)between(FEWEST_TRIALS, STEPS_TRIED / steps, BK_USUAL_TRIALS)};
}

// -------------------------------------------------------------------------------------------------------- progress

/// How far it is, told in thousandths of the whole: the plan, the trials, then the rest.
typedef struct progress {
    bk_forecast_goes_on *goes_on;
    void *context;
    int64_t wanted; ///< schedules or trials
    int from, to;   ///< thousandths
    bool stopped;
} progress;

enum { PLANNED = 550, TRIED = 950 };

static bool go_on(void *context, int64_t made)
{
    progress *at = context;
    int done = at->from + (int)((at->to - at->from) * between(0, made, at->wanted) / at->wanted);
    at->stopped = at->stopped || (at->goes_on && !at->goes_on(at->context, done));
    return !at->stopped;
}

static void next_part(progress *at, int64_t wanted, int to)
{
    at->from = at->to;
    at->to = to;
    at->wanted = wanted > 0 ? wanted : 1;
}

// ------------------------------------------------------------------------------------------------------- reckoning

/// A forecast in the making.
typedef struct reckoning {
    bk_forecast *forecast;
    bk_frame *frame;
    bk_planner *planner; ///< NULL: nobody to plan for
    bk_outcome_of_plan outcome;
    progress progress;
} reckoning;

static void plan(reckoning *at)
{
    const bk_prospect *prospect = at->frame->prospect;
    bk_forecast *forecast = at->forecast;
    if (prospect->person_count == 0 || prospect->step_count == 0) {
        return;
    }
    at->planner = bk_planner_new(&at->frame->problem, forecast->effort.seed);
    next_part(&at->progress, forecast->effort.schedules, PLANNED);
    bk_planner_run(at->planner, forecast->effort.schedules, go_on, &at->progress);
    at->outcome.placings = bk_planner_best(at->planner);
    forecast->schedules = bk_planner_schedules(at->planner);
}

static void try_odds(reckoning *at)
{
    bk_forecast *forecast = at->forecast;
    bk_arena *scratch = at->frame->prospect->scratch;
    size_t count;
    at->outcome.groups = bk_forecast_groups(at->frame, &count);
    if (!at->planner || forecast->effort.trials <= 0 || at->progress.stopped) {
        return;
    }
    bk_group_odds *odds = bk_arena_clear(scratch, count, sizeof *odds);
    bk_frame_spreads(at->frame);
    bk_odds_plan plan = {
        .problem = &at->frame->problem,
        .order = bk_planner_order(at->planner),
        .placings = at->outcome.placings,
        .spreads = at->frame->spreads,
        .groups = at->outcome.groups,
        .group_count = count,
        .seed = forecast->effort.seed,
    };
    next_part(&at->progress, forecast->effort.trials, TRIED);
    bk_odds_try(&plan, forecast->effort.trials, go_on, &at->progress, odds);
    at->outcome.odds = odds;
    forecast->trials = forecast->effort.trials;
}

/// Tells the outcome in days and names.
static void tell(reckoning *at)
{
    bk_forecast *forecast = at->forecast;
    const bk_prospect *prospect = at->frame->prospect;
    bk_planned_person *people = bk_arena_clear(forecast->arena, prospect->person_count, sizeof *people);
    for (size_t i = 0; i < prospect->person_count; i++) {
        people[i] = prospect->people[i].shown;
    }
    forecast->people = people;
    forecast->person_count = prospect->person_count;
    forecast->paces = at->frame->paces;
    forecast->room_snag = (bk_snag){.kind = prospect->person_count ? BK_SNAGS : BK_SNAG_NOBODY,
                                    .step_kind = BK_NO_WORD,
                                    .day = BK_NO_DAY};
    if (at->outcome.placings) {
        at->outcome.tracer = bk_tracer_new(&at->frame->problem);
        bk_tracer_load(at->outcome.tracer, at->outcome.placings);
    }
    bk_planned_step *steps = bk_forecast_fill_steps(forecast, &at->outcome);
    bk_costume_forecast *costumes = bk_forecast_fill_costumes(forecast, &at->outcome);
    bk_forecast_fill_productions(forecast, &at->outcome);
    bk_forecast_fill_stretches(forecast, &at->outcome);
    bk_forecast_fill_latest(at->frame, steps, costumes, forecast->arena);
    bk_forecast_fill_snags(at->frame, steps, costumes, forecast->arena);
    forecast->step_at = bk_id_index_of(steps, forecast->step_count, sizeof *steps);
    forecast->costume_at = bk_id_index_of(costumes, forecast->costume_count, sizeof *costumes);
    forecast->production_at =
        bk_id_index_of(forecast->productions, forecast->production_count, sizeof *forecast->productions);
}

void bk_forecast_reckon(const bk_workroom *room, const bk_supposition *suppositions, size_t supposition_count,
                        bk_effort effort, bk_forecast_goes_on *goes_on, void *context, bk_forecast **forecast)
{
    bk_arena *kept = bk_arena_new();
    bk_arena *scratch = bk_arena_new();
    bk_forecast *built = bk_arena_clear(kept, 1, sizeof *built);
    built->arena = kept;
    built->today = room->today;
    built->effort = effort;
    bk_prospect *prospect = bk_prospect_new(room, suppositions, supposition_count, scratch, kept);
    reckoning at = {.forecast = built, .progress = {.goes_on = goes_on, .context = context}};
    at.frame = bk_frame_new(prospect);
    at.outcome.frame = at.frame;
    plan(&at);
    try_odds(&at);
    next_part(&at.progress, 1, TRIED);
    if (go_on(&at.progress, 1)) {
        tell(&at);
    } else {
        bk_forecast_free(built);
        built = NULL;
    }
    bk_tracer_free(at.outcome.tracer);
    bk_planner_free(at.planner);
    bk_arena_free(scratch);
    *forecast = built;
}

void bk_forecast_free(bk_forecast *forecast)
{
    if (forecast) {
        bk_id_index_free(forecast->step_at);
        bk_id_index_free(forecast->costume_at);
        bk_id_index_free(forecast->production_at);
        bk_arena_free(forecast->arena);
    }
}

bk_status bk_forecast_read(bk_store *store, bk_day today, uint64_t seed, int64_t tries,
                           bk_forecast **forecast, bk_error *error)
{
    *forecast = NULL;
    bk_workroom *room = NULL;
    bk_status status = bk_workroom_read(store, today, &room, error);
    if (status) {
        return status;
    }
    bk_forecast_reckon(room, NULL, 0, bk_effort_usual(bk_workroom_open_steps(room), seed, tries), NULL, NULL,
                       forecast);
    bk_workroom_free(room);
    return BK_OK;
}

// --------------------------------------------------------------------------------------------------------- looking

const bk_planned_step *bk_forecast_step(const bk_forecast *forecast, int64_t id)
{
    const long long *at = forecast ? bk_id_index_find(forecast->step_at, id) : NULL;
    return at ? &forecast->steps[*at] : NULL;
}

const bk_costume_forecast *bk_forecast_costume(const bk_forecast *forecast, int64_t id)
{
    const long long *at = forecast ? bk_id_index_find(forecast->costume_at, id) : NULL;
    return at ? &forecast->costumes[*at] : NULL;
}

const bk_production_forecast *bk_forecast_production(const bk_forecast *forecast, int64_t id)
{
    const long long *at = forecast ? bk_id_index_find(forecast->production_at, id) : NULL;
    return at ? &forecast->productions[*at] : NULL;
}

bk_day bk_forecast_wanted(const bk_costume_forecast *costume, int64_t piece_id, int64_t step_id)
{
    for (size_t i = 0; costume && i < costume->wanted_count; i++) {
        if (costume->wanted[i].piece_id == piece_id && costume->wanted[i].step_id == step_id) {
            return costume->wanted[i].by;
        }
    }
    return BK_NO_DAY;
}

// ----------------------------------------------------------------------------------------------------------- order

static int ordered(int64_t left, int64_t right)
{
    return (left > right) - (left < right);
}

/// Open and never done, open, open with nothing known of its days, not open.
static int standing(const bk_costume_forecast *costume)
{
    if (!costume->open) {
        return 3;
    }
    return !costume->days.days_known ? 2 : costume->days.finish != BK_NO_DAY;
}

int bk_forecast_order(const bk_costume_forecast *left, const bk_costume_forecast *right)
{
    if (!left || !right) {
        return left ? -1 : right ? 1 : 0;
    }
    const bk_outlook_days *a = &left->days, *b = &right->days;
    int order = ordered(standing(left), standing(right));
    if (!order && a->days_known && b->days_known && left->open) {
        order = ordered(a->days_in_hand, b->days_in_hand);
        order = order ? order : ordered(a->chance, b->chance);
    }
    order = order ? order : ordered(left->due, right->due);
    return order ? order : bk_natural_order(left->number, right->number);
}
