#include "bodkin/plan/forward.h"

#include <stdlib.h>

#include "bodkin/base/list.h"

// One stretch in which units of a resource are taken.
typedef struct held_stretch {
    bk_clock_minute from, to;
    int32_t amount;
    uint32_t owner;
} held_stretch;

typedef struct one_hand {
    const bk_stage *first, *now, *end; // `now` is the stage at the latest moment asked about
    held_stretch *takings;             // in no order; those that are over go when they are met
    size_t count, room;
    bk_clock_minute none_from, none_until; // not a unit is free all that time
} one_hand;

struct bk_forward {
    const bk_problem *problem;
    one_hand *hands;
    const bk_stage **cursors; // where each use stands while a place is looked for
    bk_clock_minute (*stretches)[2];
    size_t stretch_count, stretch_room;
};

static size_t most_uses(const bk_problem *problem)
{
    size_t most = 0;
    for (size_t task = 0; task < problem->task_count; task++)
        for (size_t mode = 0; mode < problem->tasks[task].mode_count; mode++)
            if (problem->tasks[task].modes[mode].use_count > most)
                most = problem->tasks[task].modes[mode].use_count;
    return most;
}

bk_forward *bk_forward_new(const bk_problem *problem)
{
    bk_forward *forward = bk_alloc_clear(1, sizeof *forward);
    forward->problem = problem;
    forward->hands = bk_alloc_clear(problem->resource_count + 1, sizeof *forward->hands);
    forward->cursors = bk_alloc_clear(most_uses(problem) + 1, sizeof *forward->cursors);
    for (size_t i = 0; i < problem->resource_count; i++) {
        const bk_resource *resource = &problem->resources[i];
        forward->hands[i].first = resource->stages;
        forward->hands[i].end = resource->stages + resource->stage_count;
    }
    bk_forward_clear(forward);
    return forward;
}

void bk_forward_free(bk_forward *forward)
{
    if (forward == NULL)
        return;
    for (size_t i = 0; i < forward->problem->resource_count; i++)
        free(forward->hands[i].takings);
    free(forward->hands);
    free(forward->cursors);
    free(forward->stretches);
    free(forward);
}

void bk_forward_clear(bk_forward *forward)
{
    for (size_t i = 0; i < forward->problem->resource_count; i++) {
        forward->hands[i].now = forward->hands[i].first;
        forward->hands[i].count = 0;
        forward->hands[i].none_from = forward->hands[i].none_until = 0;
    }
    forward->stretch_count = 0;
}

// The stage at a moment that is not before the one it starts from.
static const bk_stage *stage_from(const one_hand *hand, const bk_stage *stage, bk_clock_minute moment)
{
    while (stage + 1 < hand->end && stage[1].from <= moment)
        stage++;
    return stage;
}

int32_t bk_forward_units(bk_forward *forward, uint32_t resource, bk_clock_minute moment)
{
    one_hand *hand = &forward->hands[resource];
    hand->now = stage_from(hand, hand->now, moment);
    int32_t units = hand->now->capacity;
    for (size_t i = 0; i < hand->count;) {
        const held_stretch *taking = &hand->takings[i];
        if (taking->to <= moment) {
            hand->takings[i] = hand->takings[--hand->count];
            continue;
        }
        if (taking->from <= moment && units != BK_CLOSED)
            units -= taking->amount;
        i++;
    }
    return units;
}

// ------------------------------------------------------------------------------------------------------- a place

// What is so at one moment, and how long it stays so.
typedef struct outlook {
    bk_clock_minute closed; // until when one of the resources is closed; the moment itself: none is
    bk_clock_minute next;   // the next change
    bool scarce;            // one has too little
} outlook;

static void look_at_hand(const one_hand *hand, const bk_stage *stage, int32_t amount, bk_clock_minute moment,
                         outlook *ahead)
{
    int32_t units = stage->capacity;
    bk_clock_minute until = stage + 1 < hand->end ? stage[1].from : BK_CLOCK_NEVER;
    if (units == BK_CLOSED) {
        ahead->closed = until > ahead->closed ? until : ahead->closed;
        return;
    }
    for (size_t i = 0; i < hand->count; i++) {
        const held_stretch *taking = &hand->takings[i];
        if (taking->from > moment)
            until = taking->from < until ? taking->from : until;
        else if (taking->to > moment)
            units -= taking->amount;
    }
    ahead->scarce = ahead->scarce || units < amount;
    ahead->next = until < ahead->next ? until : ahead->next;
}

// Most questions are about hands that are busy: so the answer is remembered.
bool bk_forward_busy(bk_forward *forward, uint32_t resource, bk_clock_minute moment)
{
    one_hand *hand = &forward->hands[resource];
    if (moment >= hand->none_from && moment < hand->none_until)
        return true;
    const bk_stage *stage = stage_from(hand, hand->now, moment);
    bk_clock_minute until = stage + 1 < hand->end ? stage[1].from : BK_CLOCK_NEVER;
    int32_t units = stage->capacity;
    for (size_t i = 0; i < hand->count && units > 0; i++) {
        const held_stretch *taking = &hand->takings[i];
        if (taking->from > moment || taking->to <= moment)
            continue;
        units -= taking->amount;
        until = taking->to < until ? taking->to : until;
    }
    if (units > 0)
        return false;
    hand->none_from = moment;
    hand->none_until = until;
    return true;
}

static outlook look_ahead(const bk_forward *forward, const bk_work *work, bk_clock_minute moment)
{
    outlook ahead = {.closed = moment, .next = BK_CLOCK_NEVER};
    for (size_t i = 0; i < work->use_count; i++) {
        const one_hand *hand = &forward->hands[work->uses[i].resource];
        forward->cursors[i] = stage_from(hand, forward->cursors[i], moment);
        look_at_hand(hand, forward->cursors[i], work->uses[i].amount, moment, &ahead);
    }
    return ahead;
}

static void add_stretch(bk_forward *forward, bk_clock_minute from, bk_clock_minute to)
{
    size_t count = forward->stretch_count;
    if (count > 0 && forward->stretches[count - 1][1] == from) {
        forward->stretches[count - 1][1] = to;
        return;
    }
    forward->stretches =
        bk_list_grow(forward->stretches, &forward->stretch_room, count, sizeof *forward->stretches);
    forward->stretches[count][0] = from;
    forward->stretches[count][1] = to;
    forward->stretch_count++;
}

bool bk_forward_fits(bk_forward *forward, const bk_work *work, bk_clock_minute moment, bk_placing *place)
{
    bk_clock_minute at = moment;
    int32_t left = work->minutes;
    forward->stretch_count = 0;
    for (size_t i = 0; i < work->use_count && left > 0; i++)
        if (bk_forward_busy(forward, work->uses[i].resource, moment))
            return false;
    for (size_t i = 0; i < work->use_count; i++)
        forward->cursors[i] = forward->hands[work->uses[i].resource].now;
    while (left > 0) {
        if (left >= BK_CLOCK_NEVER - at)
            return false;
        outlook ahead = look_ahead(forward, work, at);
        if (ahead.closed > at) {
            if (at == moment || work->whole)
                return false;
            at = ahead.closed;
            continue;
        }
        if (ahead.scarce)
            return false;
        bk_clock_minute until = left < ahead.next - at ? at + left : ahead.next;
        add_stretch(forward, at, until);
        left -= until - at;
        at = until;
    }
    place->begin = moment;
    place->end = at;
    return true;
}

void bk_forward_take(bk_forward *forward, const bk_work *work, uint32_t owner)
{
    for (size_t i = 0; i < work->use_count; i++) {
        one_hand *hand = &forward->hands[work->uses[i].resource];
        for (size_t stretch = 0; stretch < forward->stretch_count; stretch++) {
            hand->takings = bk_list_grow(hand->takings, &hand->room, hand->count, sizeof *hand->takings);
            hand->takings[hand->count++] = (held_stretch){
                forward->stretches[stretch][0], forward->stretches[stretch][1], work->uses[i].amount, owner};
        }
    }
}

void bk_forward_give(bk_forward *forward, const bk_work *work, uint32_t owner)
{
    for (size_t use = 0; use < work->use_count; use++) {
        one_hand *hand = &forward->hands[work->uses[use].resource];
        hand->none_until = hand->none_from;
        for (size_t i = hand->count; i-- > 0;)
            if (hand->takings[i].owner == owner)
                hand->takings[i] = hand->takings[--hand->count];
    }
}

size_t bk_forward_stretches(const bk_forward *forward, const bk_clock_minute (**stretches)[2])
{
    *stretches = (const bk_clock_minute(*)[2])forward->stretches;
    return forward->stretch_count;
}
