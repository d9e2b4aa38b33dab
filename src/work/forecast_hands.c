#include <stdlib.h>
#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/work/forecast_parts.h"

/// The people, equipment and performers of a prospect as resources, and the ways to do each step with them.

enum {
    WAYS = 64,             ///< the most ways that are offered for one step
    LONGEST_STEP = 1000000 ///< minutes of a step, about two years: no sum of them runs over
};

// -------------------------------------------------------------------------------------------------- resources

bk_resource bk_resource_without(const bk_resource *open, const bk_span *spans, size_t count, bk_arena *arena)
{
    bk_stage *stages = bk_arena_clear(arena, open->stage_count + 2 * count + 1, sizeof *stages);
    size_t made = 0, stage = 0, span = 0;
    for (bk_clock_minute minute = 0; minute != BK_CLOCK_NEVER;) {
        while (stage + 1 < open->stage_count && open->stages[stage + 1].from <= minute) {
            stage++;
        }
        while (span < count && spans[span].to <= minute) {
            span++;
        }
        bool closed = span < count && spans[span].from <= minute;
        int32_t capacity = closed ? BK_CLOSED : open->stages[stage].capacity;
        if (!made || stages[made - 1].capacity != capacity) {
            stages[made++] = (bk_stage){minute, capacity};
        }
        bk_clock_minute next = stage + 1 < open->stage_count ? open->stages[stage + 1].from : BK_CLOCK_NEVER;
        bk_clock_minute turn = span == count ? BK_CLOCK_NEVER : closed ? spans[span].to : spans[span].from;
        minute = next < turn ? next : turn;
    }
    return (bk_resource){stages, made};
}

static uint32_t add_resource(bk_frame *frame, bk_resource resource, const char *name)
{
    frame->resources[frame->resource_count] = resource;
    frame->names[frame->resource_count] = name;
    return (uint32_t)frame->resource_count++;
}

static bk_resource constant(bk_arena *arena, int32_t capacity)
{
    bk_stage *stage = bk_arena_clear(arena, 1, sizeof *stage);
    stage->capacity = capacity;
    return (bk_resource){stage, 1};
}

/// The hours of a person; what was done today has used up the beginning of the day's.
static void add_person(bk_frame *frame, const bk_prospect_person *person)
{
    const bk_prospect *prospect = frame->prospect;
    bk_arena *arena = prospect->scratch;
    bk_resource hours = bk_calendar_resource(person->shown.calendar, 1, prospect->today, frame->last, arena);
    if (person->used_today > 0) {
        bk_moment_minute midnight = (bk_moment_minute)prospect->today * BK_DAY_MINUTES;
        bk_moment_minute free_from = bk_calendar_add(person->shown.calendar, midnight, person->used_today);
        bool today = free_from < midnight + BK_DAY_MINUTES;
        bk_span used = {0, today ? (bk_clock_minute)(free_from - midnight) : BK_DAY_MINUTES};
        hours = bk_resource_without(&hours, &used, 1, arena);
    }
    add_resource(frame, hours, person->shown.name);
}

/// Equipment that serves the same kinds is one resource: any of it will do. A kind that stands with several sets of kinds can be done
/// with one of any: see `bk_frame_modes`.
static void add_equipment(bk_frame *frame)
{
    const bk_workroom *room = frame->prospect->room;
    bk_arena *arena = frame->prospect->scratch;
    frame->equipment = bk_arena_clear(arena, room->equipment_count, sizeof *frame->equipment);
    for (size_t i = 0; i < room->equipment_count; i++) {
        const bk_room_equipment *item = &room->equipment[i];
        bk_frame_equipment *same = NULL;
        for (size_t e = 0; e < frame->equipment_count; e++) {
            if (frame->equipment[e].kinds == item->kinds) {
                same = &frame->equipment[e];
            }
        }
        if (same) {
            const bk_stage *so_far = frame->resources[same->resource].stages;
            int32_t room_left = INT32_MAX - so_far->capacity;
            int32_t count = item->count < room_left ? item->count : room_left;
            frame->resources[same->resource] = constant(arena, so_far->capacity + count);
            frame->names[same->resource] =
                bk_arena_print(arena, "%s or %s", frame->names[same->resource], item->name);
        } else {
            uint32_t resource = add_resource(frame, constant(arena, item->count), item->name);
            frame->equipment[frame->equipment_count++] = (bk_frame_equipment){item->kinds, resource};
        }
    }
}

static int by_beginning(const void *left, const void *right)
{
    const bk_span *a = left, *b = right;
    return (a->from > b->from) - (a->from < b->from);
}

/// A performer is there at all hours but on days away; a fitting must not run across one of these.
static bk_resource presence(const bk_frame *frame, const bk_room_performer *performer)
{
    const bk_prospect *prospect = frame->prospect;
    bk_arena *arena = prospect->scratch;
    bk_span *away = bk_arena_clear(arena, performer->away_count, sizeof *away);
    size_t count = 0;
    for (size_t i = 0; i < performer->away_count; i++) {
        if (performer->away[i][1] >= prospect->today && performer->away[i][0] <= frame->last) {
            bk_day from = performer->away[i][0] < prospect->today ? prospect->today : performer->away[i][0];
            bk_day to = performer->away[i][1] > frame->last ? frame->last : performer->away[i][1];
            away[count++] = (bk_span){bk_frame_midnight(prospect, from), bk_frame_midnight(prospect, to + 1)};
        }
    }
    if (count) {
        qsort(away, count, sizeof *away, by_beginning);
    }
    bk_resource there = constant(arena, 1);
    bk_resource built = bk_resource_without(&there, away, count, arena);
    bk_stage *stages = bk_arena_clear(arena, built.stage_count, sizeof *stages);
    for (size_t i = 0; i < built.stage_count; i++) {
        stages[i] = (bk_stage){built.stages[i].from, built.stages[i].capacity == BK_CLOSED ? 0 : 1};
    }
    return (bk_resource){stages, built.stage_count};
}

void bk_frame_hands(bk_frame *frame)
{
    const bk_prospect *prospect = frame->prospect;
    const bk_workroom *room = prospect->room;
    for (size_t i = 0; i < prospect->person_count; i++) {
        add_person(frame, &prospect->people[i]);
    }
    add_equipment(frame);
    frame->performers = bk_arena_clear(prospect->scratch, room->performer_count, sizeof *frame->performers);
    bool *needed = bk_arena_clear(prospect->scratch, room->performer_count, sizeof *needed);
    for (size_t i = 0; i < prospect->step_count; i++) {
        if (prospect->steps[i].performer != BK_NO_INDEX) {
            needed[prospect->steps[i].performer] = true;
        }
    }
    for (size_t i = 0; i < room->performer_count; i++) {
        if (needed[i]) {
            const bk_room_performer *performer = &room->performers[i];
            frame->performers[i] = add_resource(frame, presence(frame, performer), performer->name);
        }
    }
    frame->nobody = add_resource(frame, constant(prospect->scratch, BK_CLOSED), NULL);
}

// ------------------------------------------------------------------------------------------------------- minutes

static int64_t within(int64_t minutes)
{
    return minutes < 0 ? 0 : minutes > LONGEST_STEP ? LONGEST_STEP : minutes;
}

static int64_t within_or_none(int64_t minutes)
{
    return minutes == BK_NOT_KNOWN ? BK_NOT_KNOWN : within(minutes);
}

bk_estimate bk_frame_estimate(const bk_frame *frame, const bk_prospect_step *step, size_t person,
                              int64_t minutes)
{
    const bk_step *record = step->record;
    int64_t quickest = within_or_none(record->quickest);
    int64_t longest = within_or_none(record->longest);
    if (minutes != BK_NOT_KNOWN) {
        return bk_estimate_complete(quickest, within(minutes), longest);
    }
    const char *name = person == BK_NO_INDEX ? NULL : frame->prospect->people[person].shown.name;
    const bk_pace *pace = bk_pace_for(&frame->paces, step->wait->kind, name);
    bk_estimate estimate = bk_pace_estimate(pace, quickest, within(record->minutes), longest);
    return (bk_estimate){within(estimate.quickest), within(estimate.usual), within(estimate.longest)};
}

// ---------------------------------------------------------------------------------------------------------- ways

size_t bk_frame_able(const bk_prospect *prospect, int kind, size_t *found)
{
    size_t count = 0;
    for (int skills = 1; skills <= BK_KINDS; skills++) {
        for (size_t i = 0; i < prospect->person_count; i++) {
            const bk_prospect_person *person = &prospect->people[i];
            if (person->works && (person->shown.skills & 1U << kind) &&
                __builtin_popcount(person->shown.skills) == skills) {
                found[count++] = i;
            }
        }
    }
    return count;
}

/// The ways to do one step in the making.
typedef struct ways_of {
    bk_frame *frame;
    const bk_prospect_step *step;
    bk_mode *modes;
    size_t count;
    bk_estimate estimate;  ///< of the first
    const uint32_t *tools; ///< resources of equipment, one of which is needed; may be none
    size_t tool_count;
} ways_of;

/// Adds the way in which these people (indices into `able`) do it, once with each tool that will do.
static void add_way(ways_of *ways, const size_t *able, const size_t *chosen, size_t hands)
{
    const bk_prospect_step *step = ways->step;
    bk_arena *arena = ways->frame->prospect->scratch;
    bk_estimate slowest = {0};
    for (size_t i = 0; i < hands; i++) {
        bk_estimate own = bk_frame_estimate(ways->frame, step, able[chosen[i]], BK_NOT_KNOWN);
        slowest = i == 0 || own.usual > slowest.usual ? own : slowest;
    }
    ways->estimate = ways->count ? ways->estimate : slowest;
    size_t tools = ways->tool_count ? ways->tool_count : 1;
    for (size_t tool = 0; tool < tools && ways->count < WAYS; tool++) {
        bk_use *uses = bk_arena_clear(arena, hands + 2, sizeof *uses);
        size_t used = 0;
        for (; used < hands; used++) {
            uses[used] = (bk_use){(uint32_t)able[chosen[used]], 1};
        }
        if (ways->tool_count) {
            uses[used++] = (bk_use){ways->tools[tool], 1};
        }
        if (step->performer != BK_NO_INDEX) {
            uses[used++] = (bk_use){ways->frame->performers[step->performer], 1};
        }
        ways->modes[ways->count++] = (bk_mode){(int32_t)slowest.usual, uses, used};
    }
}

/// Moves on to the next choice of `hands` out of `able` in order; false after the last.
static bool next_choice(size_t *chosen, size_t hands, size_t able)
{
    for (size_t i = hands; i-- > 0;) {
        if (chosen[i] < able - hands + i) {
            chosen[i]++;
            for (size_t later = i + 1; later < hands; later++) {
                chosen[later] = chosen[later - 1] + 1;
            }
            return true;
        }
    }
    return false;
}

/// A step that nobody can do.
static void add_no_way(ways_of *ways)
{
    bk_use *uses = bk_arena_clear(ways->frame->prospect->scratch, 1, sizeof *uses);
    uses[0] = (bk_use){ways->frame->nobody, 1};
    ways->estimate = bk_frame_estimate(ways->frame, ways->step, BK_NO_INDEX, BK_NOT_KNOWN);
    ways->modes[ways->count++] = (bk_mode){(int32_t)ways->estimate.usual, uses, 1};
}

static bk_frame_ways ways_for(bk_frame *frame, const bk_prospect_step *step, size_t *able, size_t *chosen)
{
    const bk_prospect *prospect = frame->prospect;
    uint32_t *tools = bk_arena_clear(prospect->scratch, frame->equipment_count, sizeof *tools);
    ways_of ways = {.frame = frame, .step = step, .tools = tools};
    ways.modes = bk_arena_clear(prospect->scratch, WAYS, sizeof *ways.modes);
    for (size_t i = 0; i < frame->equipment_count; i++) {
        if (frame->equipment[i].kinds & 1U << step->wait->kind) {
            tools[ways.tool_count++] = frame->equipment[i].resource;
        }
    }
    size_t count = bk_frame_able(prospect, step->wait->kind, able);
    if (step->hands > (int64_t)count) {
        add_no_way(&ways);
    } else {
        size_t hands = (size_t)step->hands;
        for (size_t i = 0; i < hands; i++) {
            chosen[i] = i;
        }
        do {
            add_way(&ways, able, chosen, hands);
        } while (ways.count < WAYS && next_choice(chosen, hands, count));
    }
    return (bk_frame_ways){ways.modes, ways.count, ways.modes, ways.count, ways.estimate};
}

void bk_frame_modes(bk_frame *frame)
{
    const bk_prospect *prospect = frame->prospect;
    frame->ways = bk_arena_clear(prospect->scratch, prospect->step_count, sizeof *frame->ways);
    size_t *able = bk_arena_clear(prospect->scratch, 2 * prospect->person_count, sizeof *able);
    size_t *chosen = able + prospect->person_count;
    for (size_t i = 0; i < prospect->step_count; i++) {
        frame->ways[i] = ways_for(frame, &prospect->steps[i], able, chosen);
    }
}
