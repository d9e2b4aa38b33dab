#include "bodkin/plan/timeline.h"

#include <stdlib.h>
#include <string.h>

#include "bodkin/base/list.h"

enum {
    FEW_STAGES = 128,  // so many are searched by halves at once
    STAGES_A_TASK = 6, // a task that is put in, given back and put in again begins and ends at most so many
    OUT_OF_TIME = INT32_MIN // the capacity behind the last stage: like no other
};

// ---------------------------------------------------------------------------------------------------- making, clearing

// The most uses that a mode of the problem has, and how often each resource is used by a task.
static size_t count_uses(const bk_problem *problem, size_t *users)
{
    size_t most = 0;
    for (size_t task = 0; task < problem->task_count; task++)
        for (size_t i = 0; i < problem->tasks[task].mode_count; i++) {
            const bk_mode *mode = &problem->tasks[task].modes[i];
            if (mode->use_count > most)
                most = mode->use_count;
            for (size_t use = 0; use < mode->use_count; use++)
                users[mode->uses[use].resource]++;
        }
    return most;
}

bk_timelines *bk_timelines_new(const bk_problem *problem)
{
    bk_timelines *timelines = bk_alloc_clear(1, sizeof *timelines);
    size_t *users = bk_alloc_clear(problem->resource_count + 1, sizeof *users);
    size_t most = count_uses(problem, users);
    timelines->count = problem->resource_count;
    timelines->items = bk_alloc_clear(problem->resource_count + 1, sizeof *timelines->items);
    timelines->cursors = bk_alloc_clear(most + 1, sizeof *timelines->cursors);
    for (size_t i = 0; i < problem->resource_count; i++) {
        timelines->items[i].room = problem->resources[i].stage_count + STAGES_A_TASK * users[i] + 4;
        timelines->items[i].stages = bk_alloc(timelines->items[i].room * sizeof *timelines->items[i].stages);
    }
    free(users);
    return timelines;
}

void bk_timelines_free(bk_timelines *timelines)
{
    if (timelines == NULL)
        return;
    for (size_t i = 0; i < timelines->count; i++)
        free(timelines->items[i].stages);
    free(timelines->items);
    free(timelines->cursors);
    free(timelines->stretches);
    free(timelines);
}

static void skip_taken(bk_timeline *timeline)
{
    while (timeline->first + 1 < timeline->count && timeline->stages[timeline->first].capacity <= 0)
        timeline->first++;
}

static void close_off(bk_timeline *timeline)
{
    timeline->stages[timeline->count] = (bk_stage){BK_CLOCK_NEVER, OUT_OF_TIME};
    timeline->first = 0;
    skip_taken(timeline);
}

void bk_timelines_clear(bk_timelines *timelines, const bk_problem *problem)
{
    for (size_t i = 0; i < timelines->count; i++) {
        bk_timeline *timeline = &timelines->items[i];
        timeline->count = problem->resources[i].stage_count;
        memcpy(timeline->stages, problem->resources[i].stages, timeline->count * sizeof *timeline->stages);
        close_off(timeline);
    }
}

static void mirror(bk_timeline *timeline, const bk_resource *resource, bk_clock_minute end)
{
    timeline->count = 0;
    size_t at = resource->stage_count;
    while (at > 1 && resource->stages[at - 1].from >= end)
        at--;
    bk_clock_minute until = end;
    while (at-- > 0 && until > 0) {
        timeline->stages[timeline->count++] = (bk_stage){end - until, resource->stages[at].capacity};
        until = resource->stages[at].from;
    }
    timeline->stages[timeline->count++] = (bk_stage){end, BK_CLOSED};
    close_off(timeline);
}

void bk_timelines_mirror(bk_timelines *timelines, const bk_problem *problem, bk_clock_minute end)
{
    for (size_t i = 0; i < timelines->count; i++)
        mirror(&timelines->items[i], &problem->resources[i], end);
}

void bk_timelines_rewind(bk_timelines *timelines)
{
    for (size_t i = 0; i < timelines->count; i++) {
        timelines->items[i].first = 0;
        skip_taken(&timelines->items[i]);
    }
}

bk_clock_minute bk_timelines_pass(bk_timelines *timelines, uint32_t resource, bk_clock_minute moment)
{
    bk_timeline *timeline = &timelines->items[resource];
    while (timeline->first + 1 < timeline->count && timeline->stages[timeline->first + 1].from <= moment)
        timeline->first++;
    skip_taken(timeline);
    const bk_stage *stage = &timeline->stages[timeline->first];
    if (stage->capacity <= 0)
        return BK_CLOCK_NEVER;
    return stage->from > moment ? stage->from : moment;
}

// ------------------------------------------------------------------------------------------------------------- walking

// The index of the stage in which `moment` lies, not before `first`.
static size_t stage_at(const bk_timeline *timeline, bk_clock_minute moment, size_t first)
{
    const bk_stage *stages = timeline->stages + first;
    size_t count = timeline->count - first, near = count > FEW_STAGES ? 1 : count;
    while (near < count && stages[near].from <= moment) // most often it is one of the first
        near *= 2;
    count = near < count ? near : count;
    while (count > 1) {
        size_t half = count / 2;
        stages += stages[half].from <= moment ? half : 0;
        count -= half;
    }
    return (size_t)(stages - timeline->stages);
}

// Brings every cursor to the stage in which `moment` lies, or to the first one in which anything is free.
static void set_cursors(const bk_timelines *timelines, const bk_work *work, bk_clock_minute moment, bool free)
{
    for (size_t i = 0; i < work->use_count; i++) {
        const bk_timeline *timeline = &timelines->items[work->uses[i].resource];
        timelines->cursors[i] = timeline->stages + stage_at(timeline, moment, free ? timeline->first : 0);
    }
}

// What is so at one moment, and how long it stays so.
typedef struct outlook {
    bk_clock_minute next;   // the next change
    bk_clock_minute closed; // until when one of the resources is closed
    bk_clock_minute scarce; // until when one has too little
} outlook;

static inline outlook look_from(const bk_timelines *timelines, const bk_work *work, bk_clock_minute moment)
{
    outlook ahead = {BK_CLOCK_NEVER, moment, moment};
    for (size_t i = 0; i < work->use_count; i++) {
        const bk_stage *stage = timelines->cursors[i];
        while (stage[1].from <= moment)
            stage++;
        timelines->cursors[i] = stage;
        bk_clock_minute until = stage[1].from;
        int32_t amount = work->uses[i].amount;
        if (stage->capacity < amount) {
            bk_clock_minute *reason = stage->capacity == BK_CLOSED ? &ahead.closed : &ahead.scarce;
            while (reason == &ahead.scarce && stage[1].capacity >= 0 && stage[1].capacity < amount)
                stage++;
            if (stage[1].from > *reason)
                *reason = stage[1].from;
        }
        if (until < ahead.next)
            ahead.next = until;
    }
    return ahead;
}

// The first moment at or after `earliest` at which each of the resources may have anything free.
static bk_clock_minute first_chance(const bk_timelines *timelines, const bk_work *work,
                                    bk_clock_minute earliest)
{
    for (size_t i = 0; i < work->use_count; i++) {
        const bk_timeline *timeline = &timelines->items[work->uses[i].resource];
        if (timeline->stages[timeline->first].from > earliest)
            earliest = timeline->stages[timeline->first].from;
    }
    return earliest;
}

bool bk_timelines_find(const bk_timelines *timelines, const bk_work *work, bk_clock_minute earliest,
                       bk_clock_minute limit, bk_placing *place)
{
    if (work->minutes == 0) {
        if (earliest >= limit)
            return false;
        place->begin = place->end = earliest;
        return true;
    }
    bk_clock_minute moment = first_chance(timelines, work, earliest), begin = BK_CLOCK_NONE;
    int32_t left = work->minutes;
    set_cursors(timelines, work, moment, true);
    while (moment < limit && left < limit - moment) {
        outlook ahead = look_from(timelines, work, moment);
        if (ahead.closed > moment && (!work->whole || begin == BK_CLOCK_NONE)) {
            moment = ahead.closed;
        } else if (ahead.closed > moment || ahead.scarce > moment) {
            moment = ahead.closed > moment ? ahead.closed : ahead.scarce;
            begin = BK_CLOCK_NONE;
            left = work->minutes;
        } else {
            begin = begin == BK_CLOCK_NONE ? moment : begin;
            if (left <= ahead.next - moment) {
                place->begin = begin;
                place->end = moment + left;
                return true;
            }
            left -= ahead.next - moment;
            moment = ahead.next;
        }
    }
    return false;
}

size_t bk_timelines_stretches(bk_timelines *timelines, const bk_work *work, const bk_placing *place,
                              bk_clock_minute (**stretches)[2])
{
    size_t count = 0;
    bk_clock_minute moment = place->begin;
    set_cursors(timelines, work, moment, false);
    while (moment < place->end) {
        outlook ahead = look_from(timelines, work, moment);
        if (ahead.closed > moment) {
            moment = ahead.closed;
            continue;
        }
        bk_clock_minute until = ahead.next < place->end ? ahead.next : place->end;
        if (count > 0 && timelines->stretches[count - 1][1] == moment) {
            timelines->stretches[count - 1][1] = until;
        } else {
            timelines->stretches = bk_list_grow(timelines->stretches, &timelines->stretch_room, count,
                                                sizeof *timelines->stretches);
            timelines->stretches[count][0] = moment;
            timelines->stretches[count++][1] = until;
        }
        moment = until;
    }
    *stretches = timelines->stretches;
    return count;
}

// -------------------------------------------------------------------------------------------------------------- taking

static void insert(bk_timeline *timeline, size_t at, bk_stage stage)
{
    if (timeline->count + 2 > timeline->room) {
        timeline->room *= 2;
        timeline->stages = bk_realloc(timeline->stages, timeline->room * sizeof *timeline->stages);
    }
    memmove(timeline->stages + at + 1, timeline->stages + at, (timeline->count - at + 1) * sizeof stage);
    timeline->stages[at] = stage;
    timeline->count++;
}

// Drops the stage at an index where it says the same as the one before it.
static void join(bk_timeline *timeline, size_t at)
{
    bk_stage *stage = timeline->stages + at;
    if (at == 0 || stage->capacity != stage[-1].capacity)
        return;
    memmove(stage, stage + 1, (timeline->count - at) * sizeof *stage);
    timeline->count--;
    timeline->first -= at <= timeline->first;
}

// Takes units (below 0: gives them back) from `from` until `to`.
static void change(bk_timeline *timeline, bk_clock_minute from, bk_clock_minute to, int32_t amount)
{
    size_t at = stage_at(timeline, from, amount > 0 ? timeline->first : 0);
    if (timeline->stages[at].from < from) {
        insert(timeline, at + 1, (bk_stage){from, timeline->stages[at].capacity});
        at++;
    }
    size_t after = at;
    for (; timeline->stages[after].from < to; after++)
        timeline->stages[after].capacity -= amount;
    if (timeline->stages[after].from > to)
        insert(timeline, after, (bk_stage){to, timeline->stages[after - 1].capacity + amount});
    join(timeline, after);
    join(timeline, at);
    if (amount < 0 && at <= timeline->first)
        timeline->first = at > 0 ? at - 1 : 0;
    skip_taken(timeline);
}

static void change_all(bk_timelines *timelines, const bk_work *work, const bk_placing *place, int32_t sign)
{
    if (place->end - place->begin == work->minutes && work->minutes > 0) {
        for (size_t i = 0; i < work->use_count; i++)
            change(&timelines->items[work->uses[i].resource], place->begin, place->end,
                   sign * work->uses[i].amount);
        return;
    }
    bk_clock_minute(*stretches)[2];
    size_t count = bk_timelines_stretches(timelines, work, place, &stretches);
    for (size_t stretch = 0; stretch < count; stretch++)
        for (size_t i = 0; i < work->use_count; i++)
            change(&timelines->items[work->uses[i].resource], stretches[stretch][0], stretches[stretch][1],
                   sign * work->uses[i].amount);
}

void bk_timelines_take(bk_timelines *timelines, const bk_work *work, const bk_placing *place)
{
    change_all(timelines, work, place, 1);
}

void bk_timelines_give(bk_timelines *timelines, const bk_work *work, const bk_placing *place)
{
    change_all(timelines, work, place, -1);
}
