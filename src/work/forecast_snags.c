#include "bodkin/work/forecast_parts.h"

/// What stands in the way of the forecast of a costume.

typedef BK_LIST(bk_snag) snag_list;

/// A costume that is looked at.
typedef struct snag_search {
    const bk_frame *frame;
    const bk_planned_step *planned;
    const bk_prospect_costume *costume;
    size_t *people; ///< room for all of them
    snag_list *snags;
} snag_search;

static bk_snag *add_snag(const snag_search *search, bk_snag_kind kind, const bk_prospect_step *step)
{
    bk_arena *arena = search->frame->prospect->kept;
    bk_snag *snag = bk_list_new(search->snags);
    *snag = (bk_snag){.kind = kind, .step_kind = BK_NO_WORD, .day = BK_NO_DAY};
    if (step) {
        snag->step_id = step->record->id;
        snag->piece = bk_arena_text(arena, step->piece->name);
        snag->step = bk_arena_text(arena, step->record->key);
        snag->step_kind = step->wait->kind;
        snag->hands = step->hands;
        snag->day = step->due;
    }
    return snag;
}

// -------------------------------------------------------------------------------------------------------- hands

static int64_t with_skill(const bk_prospect *prospect, int kind)
{
    int64_t count = 0;
    for (size_t i = 0; i < prospect->person_count; i++) {
        count += (prospect->people[i].shown.skills & 1U << kind) != 0;
    }
    return count;
}

static int64_t with_hours(const snag_search *search, const bk_prospect_step *step)
{
    const bk_prospect *prospect = search->frame->prospect;
    bk_moment_minute from = (bk_moment_minute)prospect->today * BK_DAY_MINUTES;
    bk_moment_minute to = ((bk_moment_minute)search->costume->due + 1) * BK_DAY_MINUTES;
    size_t able = bk_frame_able(prospect, step->wait->kind, search->people);
    int64_t count = 0;
    for (size_t i = 0; i < able; i++) {
        count += bk_calendar_between(prospect->people[search->people[i]].shown.calendar, from, to) > 0;
    }
    return count;
}

static void look_for_hands(const snag_search *search, const bk_prospect_step *step)
{
    const bk_prospect *prospect = search->frame->prospect;
    if (with_skill(prospect, step->wait->kind) < step->hands) {
        add_snag(search, BK_SNAG_NO_SKILL, step);
    } else if (!step->yields && search->costume->due >= prospect->today &&
               with_hours(search, step) < step->hands) {
        add_snag(search, BK_SNAG_NO_HOURS, step);
    }
}

/// Whether a step never comes about though all that it comes after does.
static bool stops_here(const snag_search *search, const bk_prospect_step *step)
{
    const bk_prospect *prospect = search->frame->prospect;
    if (search->planned[step - prospect->steps].begin.day != BK_NO_DAY) {
        return false;
    }
    for (size_t i = 0; i < step->before_count; i++) {
        if (search->planned[step->before[i]].begin.day == BK_NO_DAY) {
            return false;
        }
    }
    return true;
}

// ------------------------------------------------------------------------------------------------------ fittings

static void look_for_performer(const snag_search *search, const bk_prospect_step *step)
{
    const bk_prospect *prospect = search->frame->prospect;
    if (step->wait->kind != BK_FIT) {
        return;
    }
    if (step->performer == BK_NO_INDEX) {
        if (step->piece->costumes.count) {
            add_snag(search, BK_SNAG_UNCAST, step);
        }
        return;
    }
    const bk_room_performer *performer = &prospect->room->performers[step->performer];
    bk_day until;
    if (bk_performer_away(performer, prospect->today, &until) &&
        until >= prospect->productions[step->production].opens) {
        bk_snag *snag = add_snag(search, BK_SNAG_AWAY, step);
        snag->who = bk_arena_text(prospect->kept, performer->name);
        snag->day = until;
    }
}

// --------------------------------------------------------------------------------------------------------- dates

static bool no_day_for_material(const bk_prospect_step *step)
{
    for (size_t i = 0; i < step->wait->claim_count; i++) {
        bk_supply supply = step->wait->claims[i].supply;
        if (supply == BK_SUPPLY_NOT_ORDERED || supply == BK_SUPPLY_LATE || supply == BK_SUPPLY_NO_DATE) {
            return true;
        }
    }
    return false;
}

static bool waits_for_measures(const snag_search *search, const bk_prospect_step *step)
{
    const bk_rail *rail = search->frame->prospect->productions[step->production].rail;
    const bk_costume_waits *reckoned = &rail->reckoned[search->costume->index];
    for (size_t i = 0; i < reckoned->wait_count; i++) {
        if (reckoned->waits[i].step == step->index && reckoned->waits[i].on == BK_WAIT_MEASURES) {
            return true;
        }
    }
    return false;
}

/// Whether it is the first open step of a piece that is out and was promised for no day, or for one that is past.
static bool first_of_piece_out(const bk_prospect *prospect, const bk_prospect_step *step)
{
    if (!step->piece->out || step->piece->back_by >= prospect->today) {
        return false;
    }
    const size_t *at = prospect->productions[step->production].at;
    for (size_t i = 0; i < step->piece->steps.count; i++) {
        if (at[step->piece->steps.items[i]] != BK_NO_INDEX) {
            return step->piece->steps.items[i] == step->index;
        }
    }
    return false;
}

static void look_for_dates(const snag_search *search, const bk_prospect_step *step)
{
    if (step->yields) {
        return;
    }
    if (no_day_for_material(step) || waits_for_measures(search, step) ||
        first_of_piece_out(search->frame->prospect, step)) {
        add_snag(search, BK_SNAG_NO_DATE, step)->day = BK_NO_DAY;
    }
}

// -------------------------------------------------------------------------------------------------------- public

static void look_at_step(const snag_search *search, const bk_prospect_step *step)
{
    const bk_prospect *prospect = search->frame->prospect;
    size_t told = search->snags->count;
    if (prospect->person_count) {
        look_for_hands(search, step);
    }
    look_for_performer(search, step);
    if (prospect->person_count && search->snags->count == told && stops_here(search, step)) {
        // There are hands and hours, but never enough of both in one place.
        add_snag(search, step->hands > 1 ? BK_SNAG_NO_SKILL : BK_SNAG_NO_HOURS, step);
    }
    if (step->record->minutes == 0) {
        add_snag(search, BK_SNAG_NO_MINUTES, step)->day = BK_NO_DAY;
    }
    look_for_dates(search, step);
}

static void look_at_costume(const snag_search *search)
{
    const bk_prospect *prospect = search->frame->prospect;
    const bk_prospect_costume *costume = search->costume;
    if (costume->firm_count && !costume->can_wait && costume->due < prospect->today) {
        add_snag(search, BK_SNAG_PAST, NULL)->day = costume->due;
    }
    for (size_t i = 0; i < costume->open_count; i++) {
        look_at_step(search, &prospect->steps[costume->open[i]]);
    }
}

void bk_forecast_fill_snags(const bk_frame *frame, const bk_planned_step *planned,
                            bk_costume_forecast *costumes, bk_arena *arena)
{
    const bk_prospect *prospect = frame->prospect;
    size_t *people = bk_arena_clear(prospect->scratch, prospect->person_count, sizeof *people);
    for (size_t i = 0; i < prospect->costume_count; i++) {
        snag_list list = {0};
        look_at_costume(&(snag_search){frame, planned, &prospect->costumes[i], people, &list});
        bk_snag *kept = bk_arena_clear(arena, list.count, sizeof *kept);
        for (size_t s = 0; s < list.count; s++) {
            kept[s] = list.items[s];
        }
        costumes[i].snags = kept;
        costumes[i].snag_count = list.count;
        bk_list_free(&list);
    }
}
