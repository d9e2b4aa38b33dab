#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/work/forecast_parts.h"

/// The general problem of a prospect: horizon, tasks, order, targets, spreads.

enum {
    DAYS_TO_SPARE = 60, ///< behind what the work itself would take
    LATE_WEIGHT = 5,    ///< of a minute late, in minutes less of what should be in hand
    CALL_WEIGHT = 20,   ///< of a minute that a performer would wait, who does not
    WEEK = 7,
};

// ------------------------------------------------------------------------------------------------------- moments

bk_clock_minute bk_frame_midnight(const bk_prospect *prospect, bk_day day)
{
    int64_t minutes = ((int64_t)day - prospect->today) * BK_DAY_MINUTES;
    return minutes > BK_FRAME_FARTHEST    ? BK_FRAME_FARTHEST
           : minutes < -BK_FRAME_FARTHEST ? -BK_FRAME_FARTHEST
                                          : (bk_clock_minute)minutes;
}

bk_day bk_frame_day(const bk_prospect *prospect, bk_clock_minute minute, bool end)
{
    if (minute == BK_CLOCK_NEVER) {
        return BK_NO_DAY;
    }
    return prospect->today + (minute - (end && minute > 0)) / BK_DAY_MINUTES;
}

bk_moment bk_frame_moment(const bk_prospect *prospect, bk_clock_minute minute, bool end)
{
    bk_day day = bk_frame_day(prospect, minute, end);
    if (day == BK_NO_DAY) {
        return (bk_moment){BK_NO_DAY, BK_NO_TIME};
    }
    return (bk_moment){day, minute - bk_frame_midnight(prospect, day)};
}

// ------------------------------------------------------------------------------------------------------- horizon

/// The latest day that anything of the problem is tied to.
static bk_day latest_day(const bk_prospect *prospect)
{
    bk_day latest = prospect->today;
    for (size_t i = 0; i < prospect->costume_count; i++) {
        latest = prospect->costumes[i].due > latest ? prospect->costumes[i].due : latest;
    }
    for (size_t i = 0; i < prospect->step_count; i++) {
        const bk_prospect_step *step = &prospect->steps[i];
        if (step->booked && step->booked->booked_at.day > latest) {
            latest = step->booked->booked_at.day;
        }
        if (step->piece->out && step->piece->back_by > latest) {
            latest = step->piece->back_by;
        }
        for (size_t c = 0; c < step->wait->claim_count; c++) {
            const bk_claim *claim = &step->wait->claims[c];
            latest =
                claim->supply == BK_SUPPLY_DUE && claim->supply_day > latest ? claim->supply_day : latest;
        }
    }
    return latest;
}

/// The last day of the calendars: behind all that is tied to a day there are hours enough for all the work, twice.
static bk_day last_day(const bk_prospect *prospect)
{
    int64_t minutes = 0;
    for (size_t i = 0; i < prospect->step_count; i++) {
        minutes += bk_estimate_complete(0, prospect->steps[i].record->minutes, INT64_MIN).usual;
    }
    int64_t a_week = 0;
    for (size_t i = 0; i < prospect->room->person_count; i++) {
        const bk_week_hours *week = &prospect->room->people[i].hours.week;
        for (int day = 0; day < WEEK; day++) {
            for (int s = 0; s < week->counts[day]; s++) {
                a_week += week->stretches[day][s].to - week->stretches[day][s].from;
            }
        }
    }
    int64_t days = (int64_t)latest_day(prospect) - prospect->today + DAYS_TO_SPARE;
    if (a_week) {
        days += 2 * WEEK * (minutes / a_week + 1);
    }
    days = days < BK_FRAME_FEWEST_DAYS ? BK_FRAME_FEWEST_DAYS
           : days > BK_FRAME_MOST_DAYS ? BK_FRAME_MOST_DAYS
                                       : days;
    return (bk_day)(prospect->today + days);
}

// ------------------------------------------------------------------------------------------------------ releases

/// When the work of a day ended: the end of the last stretch of anybody's hours; of today what a person has done so far.
static bk_clock_minute end_of_work(const bk_prospect *prospect, const bk_step *done)
{
    bk_clock_minute midnight = bk_frame_midnight(prospect, done->done_on);
    bk_clock_minute end = midnight;
    for (size_t i = 0; i < prospect->person_count; i++) {
        const bk_prospect_person *person = &prospect->people[i];
        if (done->done_on == prospect->today && bk_same_text(person->shown.name, done->done_by)) {
            bk_moment_minute start = (bk_moment_minute)prospect->today * BK_DAY_MINUTES;
            bk_moment_minute used =
                bk_calendar_add(person->shown.calendar, start, person->used_today) - start;
            return used < BK_DAY_MINUTES ? (bk_clock_minute)used : BK_DAY_MINUTES;
        }
        bk_stretch stretches[BK_STRETCHES];
        int count = bk_calendar_day(person->shown.calendar, done->done_on, stretches);
        if (count > 0 && midnight + stretches[count - 1].to > end) {
            end = midnight + stretches[count - 1].to;
        }
    }
    return end;
}

static bk_clock_minute later(bk_clock_minute one, bk_clock_minute other)
{
    return one > other ? one : other;
}

/// What was done lately may still have to rest.
static bk_clock_minute rested(const bk_prospect *prospect, const bk_prospect_step *step)
{
    const bk_rail *rail = prospect->productions[step->production].rail;
    bk_clock_minute release = 0;
    for (size_t i = 0; i < step->wait->after.count; i++) {
        const bk_step *before = &rail->steps[step->wait->after.items[i]];
        if (before->done_on != BK_NO_DAY && before->rest_minutes > 0 &&
            before->rest_minutes < BK_FRAME_FARTHEST) {
            release = later(release, end_of_work(prospect, before) + (bk_clock_minute)before->rest_minutes);
        }
    }
    return release;
}

/// Before which a step cannot begin: material on its way, a piece that is out, a fitting booked for a day. What has no day, or one that
/// is past, is taken to come today.
static bk_clock_minute release_of(const bk_prospect *prospect, const bk_prospect_step *step)
{
    bk_clock_minute release = rested(prospect, step);
    for (size_t i = 0; i < step->wait->claim_count; i++) {
        if (step->wait->claims[i].supply == BK_SUPPLY_DUE) {
            release = later(release, bk_frame_midnight(prospect, step->wait->claims[i].supply_day));
        }
    }
    if (step->piece->out && step->piece->back_by != BK_NO_DAY) {
        release = later(release, bk_frame_midnight(prospect, step->piece->back_by));
    }
    if (step->booked) {
        release = later(release, bk_frame_midnight(prospect, step->booked->booked_at.day));
    }
    return release;
}

// --------------------------------------------------------------------------------------------------- the problem

static void fill_tasks(bk_frame *frame, const bk_clock_minute *appointments)
{
    const bk_prospect *prospect = frame->prospect;
    bk_task *tasks = bk_arena_clear(prospect->scratch, prospect->step_count, sizeof *tasks);
    for (size_t i = 0; i < prospect->step_count; i++) {
        const bk_prospect_step *step = &prospect->steps[i];
        tasks[i] = (bk_task){
            .modes = frame->ways[i].plan,
            .mode_count = frame->ways[i].plan_count,
            .release = release_of(prospect, step),
            .appointment = appointments[i],
            .whole = step->wait->kind == BK_FIT,
            .yields = step->yields,
        };
    }
    frame->problem.tasks = tasks;
    frame->problem.task_count = prospect->step_count;
}

static void fill_ranks(bk_frame *frame)
{
    const bk_prospect *prospect = frame->prospect;
    size_t count = 0;
    for (size_t i = 0; i < prospect->step_count; i++) {
        count += prospect->steps[i].before_count;
    }
    bk_rank *ranks = bk_arena_clear(prospect->scratch, count, sizeof *ranks);
    count = 0;
    for (size_t i = 0; i < prospect->step_count; i++) {
        const bk_prospect_step *step = &prospect->steps[i];
        for (size_t b = 0; b < step->before_count; b++) {
            int64_t rest = prospect->steps[step->before[b]].rest;
            ranks[count++] = (bk_rank){step->before[b], (uint32_t)i,
                                       (int32_t)(rest < BK_FRAME_FARTHEST ? rest : BK_FRAME_FARTHEST)};
        }
    }
    frame->problem.ranks = ranks;
    frame->problem.rank_count = count;
}

typedef BK_LIST(bk_target) target_list;

static void add_target(const bk_prospect *prospect, target_list *list, const size_t *steps, size_t count,
                       bk_clock_minute due, int32_t weight)
{
    uint32_t *tasks = bk_arena_clear(prospect->scratch, count, sizeof *tasks);
    for (size_t i = 0; i < count; i++) {
        tasks[i] = (uint32_t)steps[i];
    }
    bk_list_add(list, ((bk_target){tasks, count, due, weight}));
}

/// Days before its due day by which a costume had better be finished: work takes longer than was thought more often than not, and a plan
/// that is late in nothing but has nothing in hand is late in much when it is tried.
static const int days_better_in_hand[] = {2, 5};

/// Each costume with open steps that cannot wait, its due day past or not.
static void add_costume_targets(const bk_prospect *prospect, target_list *list,
                                const bk_prospect_costume *costume)
{
    if (!costume->firm_count || costume->can_wait || costume->due == BK_NO_DAY) {
        return;
    }
    bk_clock_minute due = bk_frame_midnight(prospect, costume->due) + BK_DAY_MINUTES;
    add_target(prospect, list, costume->firm, costume->firm_count, due, LATE_WEIGHT);
    for (size_t i = 0; i < sizeof days_better_in_hand / sizeof *days_better_in_hand; i++) {
        add_target(prospect, list, costume->firm, costume->firm_count,
                   due - days_better_in_hand[i] * BK_DAY_MINUTES, 1);
    }
}

/// What comes before a booked fitting is to be done and rested by then, so that the performer does not come for nothing. (For a day
/// without a time: by the end of it, with room for the fitting.)
static void add_call_targets(const bk_frame *frame, target_list *list, size_t at, bk_clock_minute appointment)
{
    const bk_prospect *prospect = frame->prospect;
    const bk_prospect_step *step = &prospect->steps[at];
    bk_clock_minute by = appointment;
    if (by == BK_CLOCK_NONE) {
        by = bk_frame_midnight(prospect, step->booked->booked_at.day) + BK_DAY_MINUTES -
             frame->ways[at].plan[0].minutes;
    }
    for (size_t i = 0; i < step->before_count; i++) {
        size_t before = step->before[i];
        int64_t rest = prospect->steps[before].rest;
        if (rest < by) {
            add_target(prospect, list, &before, 1, by - (bk_clock_minute)rest, CALL_WEIGHT);
        }
    }
}

static void fill_targets(bk_frame *frame, const bk_clock_minute *appointments)
{
    const bk_prospect *prospect = frame->prospect;
    target_list list = {0};
    for (size_t i = 0; i < prospect->costume_count; i++) {
        add_costume_targets(prospect, &list, &prospect->costumes[i]);
    }
    for (size_t i = 0; i < prospect->step_count; i++) {
        if (prospect->steps[i].booked && !prospect->steps[i].yields) {
            add_call_targets(frame, &list, i, appointments[i]);
        }
    }
    bk_target *targets = bk_arena_clear(prospect->scratch, list.count, sizeof *targets);
    if (list.count) {
        memcpy(targets, list.items, list.count * sizeof *targets);
    }
    frame->problem.targets = targets;
    frame->problem.target_count = list.count;
    bk_list_free(&list);
}

void bk_frame_spreads(bk_frame *frame)
{
    const bk_prospect *prospect = frame->prospect;
    const bk_spread **spreads = bk_arena_clear(prospect->scratch, prospect->step_count, sizeof *spreads);
    bk_index *known = bk_index_new();
    for (size_t i = 0; i < prospect->step_count; i++) {
        bk_estimate estimate = frame->ways[i].estimate;
        const char *key = bk_arena_print(prospect->scratch, "%lld/%lld/%lld", (long long)estimate.quickest,
                                         (long long)estimate.usual, (long long)estimate.longest);
        size_t first = (size_t)*bk_index_put(known, key, (long long)i);
        spreads[i] = first == i ? bk_spread_new(estimate, prospect->scratch) : spreads[first];
    }
    bk_index_free(known);
    frame->spreads = spreads;
}

// ------------------------------------------------------------------------------------------------------ public

/// The record, with names that outlive the room.
static bk_paces kept_paces(const bk_prospect *prospect)
{
    bk_paces paces = bk_paces_reckon(prospect->room->taken, prospect->room->taken_count, prospect->kept);
    bk_pace *items = bk_arena_clear(prospect->kept, paces.count, sizeof *items);
    for (size_t i = 0; i < paces.count; i++) {
        items[i] = paces.items[i];
        items[i].person = bk_arena_text(prospect->kept, items[i].person);
    }
    return (bk_paces){items, paces.count};
}

bk_frame *bk_frame_new(const bk_prospect *prospect)
{
    bk_arena *arena = prospect->scratch;
    const bk_workroom *room = prospect->room;
    bk_frame *frame = bk_arena_clear(arena, 1, sizeof *frame);
    size_t most =
        prospect->person_count + room->equipment_count + room->performer_count + prospect->step_count + 1;
    frame->prospect = prospect;
    frame->paces = kept_paces(prospect);
    frame->last = last_day(prospect);
    frame->resources = bk_arena_clear(arena, most, sizeof *frame->resources);
    frame->names = bk_arena_clear(arena, most, sizeof *frame->names);
    frame->people = bk_arena_clear(arena, most, sizeof *frame->people);
    frame->people_counts = bk_arena_clear(arena, most, sizeof *frame->people_counts);
    bk_frame_hands(frame);
    bk_frame_modes(frame);
    bk_clock_minute *appointments = bk_arena_clear(arena, prospect->step_count, sizeof *appointments);
    for (size_t i = 0; i < prospect->step_count; i++) {
        appointments[i] = BK_CLOCK_NONE;
    }
    bk_frame_calls(frame, appointments);
    fill_tasks(frame, appointments);
    fill_ranks(frame);
    fill_targets(frame, appointments);
    frame->problem.resources = frame->resources;
    frame->problem.resource_count = frame->resource_count;
    return frame;
}
