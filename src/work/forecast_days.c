#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/work/forecast_parts.h"

/// The outlook of costumes and productions: days, days in hand, odds, and the chain to the finish.

enum { CERTAIN = 1000 }; ///< thousandths

// ------------------------------------------------------------------------------------------------------ the groups

static bk_odds_group costume_group(const bk_frame *frame, const bk_prospect_costume *costume)
{
    bk_arena *arena = frame->prospect->scratch;
    uint32_t *tasks = bk_arena_clear(arena, costume->firm_count, sizeof *tasks);
    for (size_t i = 0; i < costume->firm_count; i++) {
        tasks[i] = (uint32_t)costume->firm[i];
    }
    bool known = costume->due != BK_NO_DAY;
    bk_clock_minute due =
        known ? bk_frame_midnight(frame->prospect, costume->due) + BK_DAY_MINUTES : BK_CLOCK_NONE;
    return (bk_odds_group){.tasks = tasks, .task_count = costume->firm_count, .due = due};
}

/// All that its costumes need before they can go on, each step once and by the due day of the first of the costumes that needs it.
static bk_odds_group production_group(const bk_frame *frame, const bk_prospect_production *production,
                                      const bk_odds_group *costumes)
{
    const bk_prospect *prospect = frame->prospect;
    size_t *place = bk_arena_clear(prospect->scratch, prospect->step_count, sizeof *place);
    uint32_t *tasks = bk_arena_clear(prospect->scratch, prospect->step_count, sizeof *tasks);
    bk_clock_minute *dues = bk_arena_clear(prospect->scratch, prospect->step_count, sizeof *dues);
    bk_odds_group group = {.tasks = tasks, .due = BK_CLOCK_NONE, .dues = dues};
    for (size_t i = 0; i < production->costume_count; i++) {
        if (prospect->costumes[production->first_costume + i].can_go) {
            continue;
        }
        const bk_odds_group *costume = &costumes[production->first_costume + i];
        for (size_t t = 0; t < costume->task_count; t++) {
            size_t *at = &place[costume->tasks[t]];
            if (!*at) {
                tasks[group.task_count] = costume->tasks[t];
                dues[group.task_count] = costume->due;
                *at = ++group.task_count;
            } else if (costume->due < dues[*at - 1]) {
                dues[*at - 1] = costume->due;
            }
        }
    }
    return group;
}

const bk_odds_group *bk_forecast_groups(const bk_frame *frame, size_t *count)
{
    const bk_prospect *prospect = frame->prospect;
    *count = prospect->costume_count + prospect->production_count;
    bk_odds_group *groups = bk_arena_clear(prospect->scratch, *count, sizeof *groups);
    for (size_t i = 0; i < prospect->costume_count; i++) {
        groups[i] = costume_group(frame, &prospect->costumes[i]);
    }
    for (size_t i = 0; i < prospect->production_count; i++) {
        groups[prospect->costume_count + i] = production_group(frame, &prospect->productions[i], groups);
    }
    return groups;
}

// -------------------------------------------------------------------------------------------------------- the plan

/// The task of a group that ends last (the lowest at a tie); BK_NO_INDEX where it has none.
static size_t last_task(const bk_placing *placings, const bk_odds_group *group)
{
    size_t last = BK_NO_INDEX;
    for (size_t i = 0; i < group->task_count; i++) {
        size_t task = group->tasks[i];
        bool later = last == BK_NO_INDEX || placings[task].end > placings[last].end;
        last = later || (task < last && placings[task].end == placings[last].end) ? task : last;
    }
    return last;
}

/// The day on which it is done in the plan; BK_NO_DAY where it never is.
static bk_day planned_finish(const bk_outcome_of_plan *outcome, const bk_odds_group *group)
{
    size_t last = outcome->placings ? last_task(outcome->placings, group) : BK_NO_INDEX;
    if (last == BK_NO_INDEX) {
        return BK_NO_DAY;
    }
    const bk_placing *placing = &outcome->placings[last];
    return bk_frame_day(outcome->frame->prospect, placing->end, placing->end > placing->begin);
}

/// The chain to the end of the last task of a group: back from it, each to what it waited for last.
static size_t fill_chain(const bk_outcome_of_plan *outcome, const bk_odds_group *group,
                         const bk_planned_link **chain)
{
    const bk_frame *frame = outcome->frame;
    const bk_prospect *prospect = frame->prospect;
    size_t last = outcome->placings ? last_task(outcome->placings, group) : BK_NO_INDEX;
    if (last == BK_NO_INDEX || outcome->placings[last].end == BK_CLOCK_NEVER) {
        return 0;
    }
    uint32_t *tasks = bk_arena_clear(prospect->scratch, prospect->step_count, sizeof *tasks);
    bk_traced *traced = bk_arena_clear(prospect->scratch, prospect->step_count, sizeof *traced);
    size_t count = 0;
    for (uint32_t at = (uint32_t)last; at != BK_NO_TASK && count < prospect->step_count; count++) {
        tasks[count] = at;
        traced[count] = bk_tracer_bound(outcome->tracer, at);
        at = traced[count].from;
    }
    bk_planned_link *kept = bk_arena_clear(prospect->kept, count, sizeof *kept);
    for (size_t i = 0; i < count; i++) {
        const bk_traced *bound = &traced[count - 1 - i];
        kept[i] = (bk_planned_link){tasks[count - 1 - i], bound->bound, NULL};
        if (bound->bound == BK_BOUND_HANDS) {
            kept[i].held_by = bk_arena_text(prospect->kept, frame->names[bound->resource]);
        }
    }
    *chain = kept;
    return count;
}

// -------------------------------------------------------------------------------------------------------- the odds

static void fill_odds(bk_outlook_days *days, const bk_outcome_of_plan *outcome, size_t group)
{
    const bk_group_odds *odds = outcome->odds ? &outcome->odds[group] : NULL;
    if (!odds || odds->trials == 0 || outcome->groups[group].task_count == 0) {
        return;
    }
    const bk_prospect *prospect = outcome->frame->prospect;
    days->chance = bk_odds_chance(odds);
    days->chance_error = bk_odds_error(odds);
    days->even = bk_frame_day(prospect, odds->even, true);
    days->likely = bk_frame_day(prospect, odds->likely, true);
    bk_planned_decider *deciders = bk_arena_clear(prospect->kept, odds->decider_count, sizeof *deciders);
    for (size_t i = 0; i < odds->decider_count; i++) {
        deciders[i] = (bk_planned_decider){odds->deciders[i].task, odds->deciders[i].trials};
    }
    days->deciders = deciders;
    days->decider_count = odds->decider_count;
}

static const bk_outlook_days unknown = {
    .finish = BK_NO_DAY, .chance = -1, .even = BK_NO_DAY, .likely = BK_NO_DAY};

/// Days in hand from the finish to the due day.
static void fill_in_hand(bk_outlook_days *days, const bk_prospect *prospect, bk_day due)
{
    if (days->finish == BK_NO_DAY || due == BK_NO_DAY || prospect->person_count == 0) {
        return;
    }
    days->days_known = true;
    days->days_in_hand = days->finish <= due ? bk_prospect_workdays(prospect, days->finish, due)
                                             : -bk_prospect_workdays(prospect, due, days->finish);
}

// ------------------------------------------------------------------------------------------------------- costumes

/// What is done of a costume, and where its pieces are.
typedef struct costume_state {
    bk_day done;   ///< the latest day on which a step was done or a fitting fitted; BK_NO_DAY
    bk_day back;   ///< the latest day for which a piece that is out is promised; BK_NO_DAY: none
    bool out;      ///< some piece is out
    bool out_long; ///< overdue, or promised for no day
    bool bare;     ///< it has no piece, or one without steps
} costume_state;

static bk_day later_day(bk_day one, bk_day other)
{
    return one > other ? one : other;
}

static costume_state state_of(const bk_prospect *prospect, const bk_prospect_costume *costume)
{
    const bk_rail *rail = prospect->productions[costume->production].rail;
    const bk_indices *pieces = &rail->rows.costumes[costume->index].pieces;
    costume_state state = {.done = BK_NO_DAY, .back = BK_NO_DAY, .bare = pieces->count == 0};
    for (size_t p = 0; p < pieces->count; p++) {
        const bk_wait_piece *piece = &rail->rows.pieces[pieces->items[p]];
        state.bare = state.bare || piece->steps.count == 0;
        if (piece->out) {
            state.out = true;
            state.out_long = state.out_long || piece->back_by < prospect->today;
            state.back = later_day(state.back, piece->back_by);
        }
        for (size_t s = 0; s < piece->steps.count; s++) {
            const bk_fitting *fits = rail->fits[piece->steps.items[s]];
            state.done = later_day(state.done, rail->steps[piece->steps.items[s]].done_on);
            state.done = later_day(state.done, fits ? fits->held_on : BK_NO_DAY);
        }
    }
    return state;
}

/// A costume without open steps was finished on the day of its last step, and is there when its last piece is back.
static void finished_costume(bk_outlook_days *days, const bk_prospect *prospect, const costume_state *state,
                             bk_day due)
{
    if (state->bare || state->out_long) {
        return;
    }
    days->finish = state->out ? later_day(state->done, state->back) : state->done;
    if (days->finish != BK_NO_DAY) {
        days->chance = !state->out || days->finish <= due ? CERTAIN : 0;
        days->even = days->likely = days->finish;
    }
    fill_in_hand(days, prospect, due);
}

/// An open costume is not finished before its last piece is back.
static void wait_for_pieces(bk_outlook_days *days, const costume_state *state, bk_day due)
{
    if (!state->out || state->back == BK_NO_DAY) {
        return;
    }
    bk_day *moved[] = {&days->finish, &days->even, &days->likely};
    for (size_t i = 0; i < sizeof moved / sizeof *moved; i++) {
        if (*moved[i] != BK_NO_DAY) {
            *moved[i] = later_day(*moved[i], state->back);
        }
    }
    if (state->back > due && days->chance >= 0) {
        days->chance = days->chance_error = 0;
    }
}

/// What can wait makes nothing late: a costume that can go on as it is is in time.
static void go_as_it_is(bk_outlook_days *days)
{
    days->days_in_hand = days->days_in_hand < 0 ? 0 : days->days_in_hand;
    days->chance = days->chance < 0 ? days->chance : CERTAIN;
    days->chance_error = 0;
}

static void fill_costume(bk_costume_forecast *costume, const bk_outcome_of_plan *outcome, size_t at)
{
    const bk_prospect *prospect = outcome->frame->prospect;
    const bk_prospect_costume *known = &prospect->costumes[at];
    const bk_rail_costume *record = prospect->productions[known->production].costumes[known->index];
    costume_state state = state_of(prospect, known);
    *costume = (bk_costume_forecast){
        .id = record->record->id,
        .production_id = record->record->production_id,
        .number = bk_arena_text(prospect->kept, record->record->number),
        .title = bk_arena_text(prospect->kept, record->record->title),
        .role = bk_arena_text(prospect->kept, record->role),
        .due = known->due,
        .open = known->open_count > 0 || state.out || state.bare,
        .days = unknown,
    };
    if (known->open_count == 0) {
        finished_costume(&costume->days, prospect, &state, known->due);
        return;
    }
    costume->days.finish = planned_finish(outcome, &outcome->groups[at]);
    fill_odds(&costume->days, outcome, at);
    wait_for_pieces(&costume->days, &state, known->due);
    fill_in_hand(&costume->days, prospect, known->due);
    if (known->can_go) {
        go_as_it_is(&costume->days);
    }
    costume->days.days_known |= outcome->placings && costume->days.finish == BK_NO_DAY;
    costume->chain_count = fill_chain(outcome, &outcome->groups[at], &costume->chain);
}

bk_costume_forecast *bk_forecast_fill_costumes(bk_forecast *forecast, const bk_outcome_of_plan *outcome)
{
    const bk_prospect *prospect = outcome->frame->prospect;
    bk_costume_forecast *costumes =
        bk_arena_clear(forecast->arena, prospect->costume_count, sizeof *costumes);
    for (size_t i = 0; i < prospect->costume_count; i++) {
        fill_costume(&costumes[i], outcome, i);
    }
    forecast->costumes = costumes;
    forecast->costume_count = prospect->costume_count;
    return costumes;
}

// ----------------------------------------------------------------------------------------------------- productions

/// Whether a costume tells when its production is ready: it is open, cannot go on as it is, and its days are known.
static bool holds_up(const bk_costume_forecast *costume, const bk_prospect_costume *known)
{
    return costume->open && !known->can_go && costume->days.days_known;
}

/// A production is no likelier in time than any of its costumes, nor ready before it: the trials know nothing of pieces that are out.
static void hold_back(bk_outlook_days *days, const bk_outlook_days *own)
{
    if (own->chance >= 0 && own->chance < days->chance) {
        days->chance = own->chance;
        days->chance_error = own->chance_error;
    }
    days->even = days->even == BK_NO_DAY ? BK_NO_DAY : later_day(days->even, own->even);
    days->likely = days->likely == BK_NO_DAY ? BK_NO_DAY : later_day(days->likely, own->likely);
}

/// Adds up a production's costumes, those whose days are known: the last finish, the fewest days in hand, how many are late. What is
/// finished or can go on counts only where that is all there is. Where `tried` is false no step is open that the odds depend on.
static void add_costumes(bk_production_forecast *production, const bk_costume_forecast *costumes,
                         const bk_prospect_costume *known, size_t count, bool tried)
{
    bool open = false, never = false, any = false;
    for (size_t i = 0; i < count; i++) {
        open = open || holds_up(&costumes[i], &known[i]);
    }
    bk_outlook_days *days = &production->days;
    days->chance = tried ? days->chance : CERTAIN;
    for (size_t i = 0; i < count; i++) {
        const bk_outlook_days *own = &costumes[i].days;
        if (holds_up(&costumes[i], &known[i]) != open || !own->days_known) {
            continue;
        }
        bool late = own->finish == BK_NO_DAY || own->finish > costumes[i].due;
        production->late += open && late;
        never = never || own->finish == BK_NO_DAY;
        days->finish = later_day(days->finish, own->finish);
        hold_back(days, own);
        if (own->finish != BK_NO_DAY && (!any || own->days_in_hand < days->days_in_hand)) {
            days->days_in_hand = own->days_in_hand;
            any = true;
        }
    }
    days->days_known = never || any;
    if (never) {
        days->finish = BK_NO_DAY;
        days->days_in_hand = 0;
    }
    if (!tried) {
        days->chance = any ? days->chance : unknown.chance;
        days->even = days->likely = days->finish;
    }
}

void bk_forecast_fill_productions(bk_forecast *forecast, const bk_outcome_of_plan *outcome)
{
    const bk_prospect *prospect = outcome->frame->prospect;
    bk_production_forecast *productions =
        bk_arena_clear(forecast->arena, prospect->production_count, sizeof *productions);
    for (size_t i = 0; i < prospect->production_count; i++) {
        const bk_prospect_production *known = &prospect->productions[i];
        size_t group = prospect->costume_count + i;
        productions[i] = (bk_production_forecast){
            .id = known->rail->production.id,
            .name = bk_arena_text(forecast->arena, known->rail->production.name),
            .opens = known->opens,
            .days = unknown,
        };
        fill_odds(&productions[i].days, outcome, group);
        add_costumes(&productions[i], &forecast->costumes[known->first_costume],
                     &prospect->costumes[known->first_costume], known->costume_count,
                     outcome->groups[group].task_count > 0);
        productions[i].chain_count = fill_chain(outcome, &outcome->groups[group], &productions[i].chain);
    }
    forecast->productions = productions;
    forecast->production_count = prospect->production_count;
}
