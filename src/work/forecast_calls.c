#include <stdlib.h>
#include <string.h>

#include "bodkin/work/forecast_parts.h"

/// Calls that are booked with a time, as the plan takes them: see bk_frame_calls.

/// A booked fitting.
typedef struct booked_step {
    size_t step;
    size_t performer; ///< BK_NO_INDEX: nobody plays it; then it is a call of its own
    bk_clock_minute at;
    bk_estimate estimate;
} booked_step;

/// What the calls so far have taken of the people, one span behind the other in order of time.
typedef struct taken_hours {
    bk_span *spans;
    size_t count;
} taken_hours;

// ------------------------------------------------------------------------------------------------------ booked

static int by_call(const void *left, const void *right)
{
    const booked_step *a = left, *b = right;
    if (a->at != b->at) {
        return a->at < b->at ? -1 : 1;
    }
    if (a->performer != b->performer) {
        return a->performer < b->performer ? -1 : 1;
    }
    return (a->step > b->step) - (a->step < b->step);
}

static size_t find_booked(const bk_frame *frame, booked_step *booked)
{
    const bk_prospect *prospect = frame->prospect;
    size_t count = 0;
    for (size_t i = 0; i < prospect->step_count; i++) {
        const bk_prospect_step *step = &prospect->steps[i];
        if (step->booked && step->booked->booked_at.time != BK_NO_TIME &&
            step->booked->booked_at.day <= frame->last) {
            booked[count++] = (booked_step){
                i, step->performer,
                bk_frame_midnight(prospect, step->booked->booked_at.day) + step->booked->booked_at.time,
                bk_frame_estimate(frame, step, BK_NO_INDEX, step->booked->minutes)};
        }
    }
    if (count) {
        qsort(booked, count, sizeof *booked, by_call);
    }
    return count;
}

static bool same_call(const booked_step *first, const booked_step *other)
{
    return first->at == other->at && first->performer == other->performer && first->performer != BK_NO_INDEX;
}

// ------------------------------------------------------------------------------------------------- who comes in

/// Minutes of a span in which a person has hours and no other call.
static int64_t minutes_free(const bk_frame *frame, size_t person, const taken_hours *taken, bk_span span)
{
    bk_moment_minute midnight = (bk_moment_minute)frame->prospect->today * BK_DAY_MINUTES;
    const bk_calendar *calendar = frame->prospect->people[person].shown.calendar;
    int64_t minutes = bk_calendar_between(calendar, midnight + span.from, midnight + span.to);
    for (size_t i = 0; i < taken->count; i++) {
        bk_clock_minute from = taken->spans[i].from > span.from ? taken->spans[i].from : span.from;
        bk_clock_minute to = taken->spans[i].to < span.to ? taken->spans[i].to : span.to;
        minutes -= from < to ? to - from : 0;
    }
    return minutes;
}

/// Puts the people who are there longest in the span first, keeping their order otherwise.
static void longest_there(const bk_frame *frame, const taken_hours *taken, bk_span span, size_t *able,
                          size_t count)
{
    for (size_t i = 1; i < count; i++) {
        size_t person = able[i];
        int64_t free = minutes_free(frame, person, &taken[person], span);
        size_t at = i;
        for (; at > 0 && minutes_free(frame, able[at - 1], &taken[able[at - 1]], span) < free; at--) {
            able[at] = able[at - 1];
        }
        able[at] = person;
    }
}

/// The call as a resource: closed before, open while it is on, then in the hours of who fits.
static bk_resource call_resource(const bk_resource *hours, bk_span on, bk_arena *arena)
{
    bk_stage *stages = bk_arena_clear(arena, hours->stage_count + 3, sizeof *stages);
    size_t made = 0;
    if (on.from > 0) {
        stages[made++] = (bk_stage){0, BK_CLOSED};
    }
    stages[made++] = (bk_stage){on.from, 1};
    int32_t then = BK_CLOSED;
    size_t next = 0;
    for (; next < hours->stage_count && hours->stages[next].from <= on.to; next++) {
        then = hours->stages[next].capacity;
    }
    stages[made++] = (bk_stage){on.to, then};
    for (; next < hours->stage_count; next++) {
        stages[made++] = hours->stages[next];
    }
    return (bk_resource){stages, made};
}

// -------------------------------------------------------------------------------------------------------- a call

/// A call in the making.
typedef struct one_call {
    bk_frame *frame;
    const booked_step *steps;
    size_t count;
    taken_hours *taken; ///< of each person
    size_t *able;       ///< room for all people
} one_call;

static int64_t call_hands(const one_call *call)
{
    int64_t hands = 1;
    for (size_t i = 0; i < call->count; i++) {
        int64_t own = call->frame->prospect->steps[call->steps[i].step].hands;
        hands = own > hands ? own : hands;
    }
    return hands;
}

/// So many minutes (0 or more) later, but no farther off than all the rest.
static bk_clock_minute later_by(bk_clock_minute minute, int64_t minutes)
{
    int64_t later = minute + minutes;
    return later < BK_FRAME_FARTHEST ? (bk_clock_minute)later : BK_FRAME_FARTHEST;
}

/// `end` is the first minute after it; it grows to a minute at least, so that a call is never empty.
static bk_span call_span(const one_call *call, bool longest)
{
    bk_span span = {call->steps[0].at, call->steps[0].at};
    for (size_t i = 0; i < call->count; i++) {
        const bk_estimate *estimate = &call->steps[i].estimate;
        span.to = later_by(span.to, longest ? estimate->longest : estimate->usual);
    }
    span.to += span.to == span.from;
    return span;
}

static void close_to_others(one_call *call, size_t hands, bk_span span)
{
    for (size_t i = 0; i < hands; i++) {
        taken_hours *taken = &call->taken[call->able[i]];
        if (!taken->count) {
            size_t room = call->frame->prospect->step_count;
            taken->spans = bk_arena_clear(call->frame->prospect->scratch, room, sizeof *taken->spans);
        }
        taken->spans[taken->count++] = span;
    }
}

/// The one way in which the steps of a call are done in the plan, one after another.
static void plan_steps(one_call *call, uint32_t resource, bk_clock_minute *appointments)
{
    bk_frame *frame = call->frame;
    bk_clock_minute at = call->steps[0].at;
    for (size_t i = 0; i < call->count; i++) {
        const booked_step *booked = &call->steps[i];
        bk_arena *arena = frame->prospect->scratch;
        bk_use *uses = bk_arena_clear(arena, 2, sizeof *uses);
        size_t used = 0;
        uses[used++] = (bk_use){resource, 1};
        if (booked->performer != BK_NO_INDEX) {
            uses[used++] = (bk_use){frame->performers[booked->performer], 1};
        }
        bk_mode *mode = bk_arena_clear(arena, 1, sizeof *mode);
        *mode = (bk_mode){(int32_t)booked->estimate.usual, uses, used};
        bk_frame_ways *ways = &frame->ways[booked->step];
        ways->plan = mode;
        ways->plan_count = 1;
        ways->estimate = booked->estimate;
        appointments[booked->step] = at;
        at = later_by(at, mode->minutes);
    }
}

static void make_call(one_call *call, bk_clock_minute *appointments)
{
    bk_frame *frame = call->frame;
    const bk_prospect *prospect = frame->prospect;
    size_t able = bk_frame_able(prospect, BK_FIT, call->able);
    int64_t needed = call_hands(call);
    if (needed > (int64_t)able) {
        return;
    }
    size_t hands = (size_t)needed;
    bk_span span = call_span(call, false);
    longest_there(frame, call->taken, span, call->able, able);
    size_t *people = bk_arena_clear(prospect->scratch, hands, sizeof *people);
    memcpy(people, call->able, hands * sizeof *people);
    bk_resource hours = bk_calendar_resource(prospect->people[people[0]].shown.calendar, 1, prospect->today,
                                             frame->last, prospect->scratch);
    size_t resource = frame->resource_count++;
    frame->resources[resource] = call_resource(&hours, call_span(call, true), prospect->scratch);
    frame->names[resource] = prospect->people[people[0]].shown.name;
    frame->people[resource] = people;
    frame->people_counts[resource] = hands;
    close_to_others(call, hands, span);
    plan_steps(call, (uint32_t)resource, appointments);
}

// ------------------------------------------------------------------------------------------------------ public

void bk_frame_calls(bk_frame *frame, bk_clock_minute *appointments)
{
    const bk_prospect *prospect = frame->prospect;
    booked_step *booked = bk_arena_clear(prospect->scratch, prospect->step_count, sizeof *booked);
    size_t count = find_booked(frame, booked);
    one_call call = {
        .frame = frame,
        .taken = bk_arena_clear(prospect->scratch, prospect->person_count, sizeof *call.taken),
        .able = bk_arena_clear(prospect->scratch, prospect->person_count, sizeof *call.able),
    };
    for (size_t first = 0; first < count; first += call.count) {
        call.steps = &booked[first];
        call.count = 1;
        while (first + call.count < count && same_call(&booked[first], &booked[first + call.count])) {
            call.count++;
        }
        make_call(&call, appointments);
    }
    for (size_t i = 0; i < prospect->person_count; i++) {
        if (call.taken[i].count) {
            frame->resources[i] = bk_resource_without(&frame->resources[i], call.taken[i].spans,
                                                      call.taken[i].count, prospect->scratch);
        }
    }
}
