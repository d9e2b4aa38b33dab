#include "bodkin/plan/trial.h"

#include "bodkin/base/list.h"
#include "bodkin/plan/trial_parts.h"

// What happens; at the same moment in this order.
typedef enum happening {
    TASK_ENDS,
    TASK_ARRIVES,     // all it comes after is done
    TASK_APPOINTED,   // the moment of its appointment
    RESOURCE_CHANGES, // it may have become free
} happening;

enum { MOMENT_SHIFT = 32, HAPPENING_SHIFT = 29 }; // of an event: moment, happening, task or resource

// -------------------------------------------------------------------------------------------------------- events

static void push(bk_trial *trial, bk_clock_minute at, happening what, uint32_t which)
{
    uint64_t event = (uint64_t)(uint32_t)at << MOMENT_SHIFT | (uint64_t)what << HAPPENING_SHIFT | which;
    trial->events =
        bk_list_grow(trial->events, &trial->event_room, trial->event_count, sizeof *trial->events);
    size_t hole = trial->event_count++;
    for (; hole > 0 && event < trial->events[(hole - 1) / 2]; hole = (hole - 1) / 2)
        trial->events[hole] = trial->events[(hole - 1) / 2];
    trial->events[hole] = event;
}

static uint64_t pop(bk_trial *trial)
{
    uint64_t *events = trial->events, first = events[0], last = events[--trial->event_count];
    size_t hole = 0;
    for (size_t child = 1; child < trial->event_count; child = hole * 2 + 1) {
        child += child + 1 < trial->event_count && events[child + 1] < events[child];
        if (events[child] >= last)
            break;
        events[hole] = events[child];
        hole = child;
    }
    events[hole] = last;
    return first;
}

static bk_clock_minute sooner(bk_clock_minute left, bk_clock_minute right)
{
    return left < right ? left : right;
}

// The next moment at which anything happens; BK_CLOCK_NEVER.
static bk_clock_minute next_moment(bk_trial *trial)
{
    bk_clock_minute next = BK_CLOCK_NEVER;
    if (trial->event_count > 0)
        next = (bk_clock_minute)(trial->events[0] >> MOMENT_SHIFT);
    if (trial->opening < trial->opening_count)
        next = sooner(next, trial->openings[trial->opening].at);
    for (size_t i = 0; i < BK_TRIAL_CLASSES; i++) {
        bk_trial_class *class = &trial->classes[i];
        while (class->due < class->end && trial->begun[trial->order[class->due]])
            class->due++;
        if (class->due < class->end)
            next = sooner(next, trial->planned[trial->order[class->due]].begin);
    }
    return next;
}

// ------------------------------------------------------------------------------------------------ waking, arriving

static void wake(bk_trial *trial, uint32_t resource)
{
    bk_trial_desk *desk = &trial->desks[resource];
    if (desk->awake || bk_forward_units(trial->forward, resource, trial->now) <= 0)
        return;
    desk->awake = true;
    trial->woken[trial->woken_count++] = resource;
}

static void wake_all_of(bk_trial *trial, uint32_t task)
{
    const bk_mode *mode = &trial->problem->tasks[task].modes[trial->placings[task].mode];
    for (size_t use = 0; use < mode->use_count; use++)
        wake(trial, mode->uses[use].resource);
}

// Lets those go back to sleep of whom nothing is free any more.
static void let_sleep(bk_trial *trial)
{
    for (size_t i = trial->woken_count; i-- > 0;) {
        uint32_t resource = trial->woken[i];
        if (bk_forward_units(trial->forward, resource, trial->now) > 0)
            continue;
        trial->desks[resource].awake = false;
        trial->woken[i] = trial->woken[--trial->woken_count];
    }
}

static void arrive(bk_trial *trial, uint32_t task)
{
    const bk_task *record = &trial->problem->tasks[task];
    bool agreed = record->appointment != BK_CLOCK_NONE;
    if (agreed && !trial->reserved[task] && record->appointment > trial->now) {
        push(trial, record->appointment, TASK_ARRIVES, task);
        return;
    }
    trial->arrived[task] = true;
    if (trial->reserved[task])
        return;
    const bk_mode *planned = &record->modes[trial->planned[task].mode];
    for (uint32_t i = trial->first_desk[task]; i < trial->first_desk[task + 1]; i++)
        bk_places_add(&trial->desks[trial->task_desks[i]].ready, trial->place[task]);
    for (size_t use = 0; use < planned->use_count; use++)
        bk_places_add(&trial->desks[planned->uses[use].resource].own, trial->place[task]);
    bk_places_add(&trial->fresh, trial->place[task]);
}

static void finish(bk_trial *trial, uint32_t task)
{
    const bk_links *after = &trial->generator->after;
    for (uint32_t i = after->first[task]; i < after->first[task + 1]; i++) {
        const bk_rank_link *link = &after->items[i];
        bk_clock_minute *ready = &trial->ready_at[link->task];
        bk_clock_minute rested =
            link->rest < BK_CLOCK_NEVER - trial->now ? trial->now + link->rest : BK_CLOCK_NEVER;
        *ready = rested > *ready ? rested : *ready;
        if (--trial->waits_for[link->task] > 0 || *ready == BK_CLOCK_NEVER)
            continue;
        if (*ready <= trial->now)
            arrive(trial, link->task);
        else
            push(trial, *ready, TASK_ARRIVES, link->task);
    }
}

// ------------------------------------------------------------------------------------------------------ beginning

static void mark_begun(bk_trial *trial, uint32_t task)
{
    trial->begun[task] = true;
    trial->left--;
    for (uint32_t i = trial->first_desk[task]; i < trial->first_desk[task + 1]; i++) {
        bk_places_drop(&trial->desks[trial->task_desks[i]].ready, trial->place[task]);
        bk_places_drop(&trial->desks[trial->task_desks[i]].own, trial->place[task]);
    }
    if (trial->placings[task].end > trial->now)
        push(trial, trial->placings[task].end, TASK_ENDS, task);
    else
        finish(trial, task);
}

// Where a task is set down because somebody is not there, its other resources may be used meanwhile.
static void call_at_pauses(bk_trial *trial, const bk_work *work)
{
    const bk_clock_minute(*stretches)[2];
    size_t count = bk_forward_stretches(trial->forward, &stretches);
    for (size_t i = 0; i + 1 < count && work->use_count > 1; i++)
        for (size_t use = 0; use < work->use_count; use++)
            push(trial, stretches[i][1], RESOURCE_CHANGES, work->uses[use].resource);
}

static void begin(bk_trial *trial, uint32_t task, const bk_placing *place)
{
    bk_work work = bk_trial_work(trial, task, place->mode);
    bk_forward_take(trial->forward, &work, task);
    trial->placings[task] = *place;
    call_at_pauses(trial, &work);
    mark_begun(trial, task);
    let_sleep(trial);
}

// The place of the next task that is planned with a resource, whose time has not come; SIZE_MAX.
static size_t next_planned(const bk_trial *trial, bk_trial_desk *desk)
{
    for (; desk->next < desk->planned_count; desk->next++) {
        uint32_t task = trial->order[desk->planned[desk->next]];
        if (!trial->begun[task] && trial->planned[task].begin > trial->now)
            return desk->planned[desk->next];
    }
    return SIZE_MAX;
}

// Whether work until `end` leaves its resources free for what is planned with them and comes before the task. If not, the resource
// looks again when the time of that has come.
static bool leaves_plan(bk_trial *trial, uint32_t task, const bk_work *work, bk_clock_minute end)
{
    for (size_t use = 0; use < work->use_count; use++) {
        uint32_t resource = work->uses[use].resource;
        bk_trial_desk *desk = &trial->desks[resource];
        size_t next = next_planned(trial, desk);
        if (next >= trial->place[task])
            continue;
        bk_clock_minute planned = trial->planned[trial->order[next]].begin;
        if (end <= planned)
            continue;
        if (desk->called != planned)
            push(trial, planned, RESOURCE_CHANGES, resource);
        desk->called = planned;
        return false;
    }
    return true;
}

// Whether a task can and may begin now in a mode; `careful`: only where that leaves the plan of its resources alone, as far as
// anybody knows, which is the minutes that were planned.
static bool can_begin(bk_trial *trial, uint32_t task, uint32_t mode, bool careful, bk_placing *place)
{
    uint32_t lead = trial->leads[trial->generator->first_mode[task] + mode];
    if (trial->minutes[task] > 0 && lead != BK_NO_LEAD && bk_forward_busy(trial->forward, lead, trial->now))
        return false;
    bk_work work = bk_trial_work(trial, task, mode), expected = work;
    expected.minutes = trial->problem->tasks[task].modes[mode].minutes;
    *place = (bk_placing){.mode = mode};
    if (careful && (expected.minutes >= BK_CLOCK_NEVER - trial->now ||
                    !leaves_plan(trial, task, &work, trial->now + expected.minutes) ||
                    !bk_forward_fits(trial->forward, &expected, trial->now, place) ||
                    !leaves_plan(trial, task, &work, place->end)))
        return false;
    return bk_forward_fits(trial->forward, &work, trial->now, place);
}

// The way in which a task can begin now: the planned one, or where its time has come the one that ends first.
static bool find_way(bk_trial *trial, uint32_t task, bk_placing *best)
{
    const bk_placing *planned = &trial->planned[task];
    bool yields = trial->place[task] >= trial->classes[1].first;
    if (can_begin(trial, task, planned->mode,
                  planned->begin > trial->now || (yields && planned->begin < trial->now), best))
        return true;
    if (planned->begin > trial->now)
        return false;
    best->end = BK_CLOCK_NEVER;
    for (uint32_t mode = 0; mode < trial->problem->tasks[task].mode_count; mode++) {
        bk_placing place;
        if (mode != planned->mode && can_begin(trial, task, mode, yields, &place) && place.end < best->end)
            *best = place;
    }
    if (best->end == BK_CLOCK_NEVER)
        return false;
    bk_work work = bk_trial_work(trial, task, best->mode);
    return bk_forward_fits(trial->forward, &work, trial->now,
                           best); // so that its stretches are the last found
}

// At its time a reserved task begins, or what was kept free for it is given back: true then.
static bool keep_or_give_up(bk_trial *trial, uint32_t task)
{
    if (trial->arrived[task]) {
        mark_begun(trial, task);
        return false;
    }
    bk_work work = bk_trial_work(trial, task, trial->placings[task].mode);
    bk_forward_give(trial->forward, &work, task);
    trial->reserved[task] = false;
    wake_all_of(trial, task);
    return true;
}

// ---------------------------------------------------------------------------------------------------- going through

// The place of the next ready task from `from` on that may be begun with a resource: any whose time has come, and of the others those
// that are planned with it.
static size_t next_at_desk(const bk_trial *trial, const bk_trial_desk *desk, size_t from)
{
    for (size_t i = 0; i < BK_TRIAL_CLASSES; i++) {
        const bk_trial_class *class = &trial->classes[i];
        if (from < class->due) {
            size_t place = bk_places_next(&desk->ready, from > class->first ? from : class->first);
            if (place < class->due)
                return place;
        }
        if (from < class->end) {
            size_t place = bk_places_next(&desk->own, from > class->due ? from : class->due);
            if (place < class->end)
                return place;
        }
    }
    return SIZE_MAX;
}

static size_t next_place(const bk_trial *trial, size_t from)
{
    size_t next = bk_places_next(&trial->fresh, from);
    for (size_t i = 0; i < trial->woken_count; i++) {
        size_t place = next_at_desk(trial, &trial->desks[trial->woken[i]], from);
        next = place < next ? place : next;
    }
    return next;
}

// Begins all that can begin now, in order.
static void begin_all(bk_trial *trial)
{
    size_t place = 0;
    while ((place = next_place(trial, place)) != SIZE_MAX) {
        uint32_t task = trial->order[place];
        bk_placing way;
        bk_places_drop(&trial->fresh, place);
        if (trial->reserved[task]) {
            place = keep_or_give_up(trial, task) ? 0 : place + 1;
            continue;
        }
        if (trial->arrived[task] && find_way(trial, task, &way))
            begin(trial, task, &way);
        place++;
    }
    while (trial->woken_count > 0)
        trial->desks[trial->woken[--trial->woken_count]].awake = false;
}

static void happen(bk_trial *trial, uint64_t event)
{
    const uint32_t which_mask = ((uint32_t)1 << HAPPENING_SHIFT) - 1;
    uint32_t which = (uint32_t)event & which_mask;
    switch ((happening)((uint32_t)event >> HAPPENING_SHIFT)) {
    case TASK_ENDS:
        wake_all_of(trial, which);
        finish(trial, which);
        break;
    case TASK_ARRIVES:
        arrive(trial, which);
        break;
    case TASK_APPOINTED:
        bk_places_add(&trial->fresh, trial->place[which]);
        break;
    case RESOURCE_CHANGES:
        wake(trial, which);
        break;
    }
}

// Tasks whose planned time has come and which are ready are looked at again.
static void look_at_due(bk_trial *trial)
{
    for (size_t i = 0; i < BK_TRIAL_CLASSES; i++) {
        bk_trial_class *class = &trial->classes[i];
        for (; class->due < class->end; class->due++) {
            uint32_t task = trial->order[class->due];
            if (trial->planned[task].begin > trial->now)
                break;
            if (trial->arrived[task] && !trial->begun[task] && !trial->reserved[task])
                bk_places_add(&trial->fresh, class->due);
        }
    }
}

static void live_moment(bk_trial *trial)
{
    while (trial->event_count > 0 && (bk_clock_minute)(trial->events[0] >> MOMENT_SHIFT) == trial->now)
        happen(trial, pop(trial));
    for (; trial->opening < trial->opening_count && trial->openings[trial->opening].at <= trial->now;
         trial->opening++)
        wake(trial, trial->openings[trial->opening].resource);
    look_at_due(trial);
    begin_all(trial);
}

// Reserves an appointment in the planned way, or in another one that is free then.
static void reserve(bk_trial *trial, uint32_t task)
{
    bk_clock_minute moment = trial->problem->tasks[task].appointment;
    uint32_t modes = (uint32_t)trial->problem->tasks[task].mode_count, first = trial->planned[task].mode;
    for (uint32_t i = 0; i < modes && moment >= 0 && !trial->reserved[task]; i++) {
        bk_placing *place = &trial->placings[task];
        *place = (bk_placing){.mode = (first + i) % modes};
        bk_work work = bk_trial_work(trial, task, place->mode);
        if (!bk_forward_fits(trial->forward, &work, moment, place))
            continue;
        bk_forward_take(trial->forward, &work, task);
        trial->reserved[task] = true;
        push(trial, moment, TASK_APPOINTED, task);
    }
}

void bk_trial_run(bk_trial *trial, const int32_t *minutes, bk_placing *placings)
{
    size_t count = trial->problem->task_count;
    trial->minutes = minutes;
    trial->placings = placings;
    bk_trial_clear(trial);
    for (size_t task = 0; task < count; task++)
        placings[task] = (bk_placing){BK_CLOCK_NEVER, BK_CLOCK_NEVER, 0};
    for (size_t i = 0; i < trial->generator->appointed_count; i++)
        reserve(trial, trial->generator->appointed[i]);
    for (uint32_t task = 0; task < count; task++)
        if (trial->waits_for[task] == 0)
            push(trial, trial->ready_at[task], TASK_ARRIVES, task);
    while (trial->left > 0 && (trial->now = next_moment(trial)) != BK_CLOCK_NEVER)
        live_moment(trial);
    for (size_t task = 0; task < count; task++)
        if (!trial->begun[task])
            placings[task] = (bk_placing){BK_CLOCK_NEVER, BK_CLOCK_NEVER, 0};
}
