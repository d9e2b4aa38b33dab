#include <stdlib.h>
#include <string.h>

#include "bodkin/plan/trial_parts.h"

bk_work bk_trial_work(const bk_trial *trial, uint32_t task, uint32_t mode)
{
    const bk_work *works = trial->generator->works + trial->generator->first_mode[task];
    bk_work work = works[mode];
    int32_t here = work.minutes, planned = works[trial->planned[task].mode].minutes;
    work.minutes = trial->minutes[task];
    if (here != planned && planned > 0) {
        int64_t scaled = ((int64_t)work.minutes * here * 2 + planned) / (2 * (int64_t)planned);
        work.minutes = scaled < INT32_MAX ? (int32_t)scaled : INT32_MAX;
    }
    return work;
}

// ------------------------------------------------------------------------------------------------------- the plan

static void make_plan(bk_trial *trial, const uint32_t *order, const bk_placing *placings)
{
    size_t count = trial->problem->task_count;
    int32_t *modes = bk_alloc((count + 1) * sizeof *modes);
    for (size_t task = 0; task < count; task++)
        modes[task] = (int32_t)placings[task].mode;
    bk_generate_serial(trial->generator, &(bk_making){.order = order, .modes = modes}, trial->planned);
    for (size_t task = 0; task < count; task++)
        trial->planned[task].mode = placings[task].mode; // of those that never come about as well
    free(modes);
}

// A task with what it is sorted by.
typedef struct keyed_task {
    bool late_class;
    bk_clock_minute begin;
    uint32_t place, task;
} keyed_task;

static int compare_keyed(const void *left, const void *right)
{
    const keyed_task *a = left, *b = right;
    if (a->late_class != b->late_class)
        return a->late_class ? 1 : -1;
    if (a->begin != b->begin)
        return a->begin < b->begin ? -1 : 1;
    return (a->place > b->place) - (a->place < b->place);
}

static void make_order(bk_trial *trial, const uint32_t *order)
{
    size_t count = trial->problem->task_count, early = 0;
    keyed_task *keyed = bk_alloc((count + 1) * sizeof *keyed);
    for (uint32_t i = 0; i < count; i++) {
        uint32_t task = order[i];
        bool late_class = trial->generator->late_class[task];
        keyed[i] = (keyed_task){late_class, trial->planned[task].begin, i, task};
        early += !late_class;
    }
    qsort(keyed, count, sizeof *keyed, compare_keyed);
    for (uint32_t i = 0; i < count; i++) {
        trial->order[i] = keyed[i].task;
        trial->place[keyed[i].task] = i;
    }
    trial->classes[0] = (bk_trial_class){.first = 0, .end = early};
    trial->classes[1] = (bk_trial_class){.first = early, .end = count};
    free(keyed);
}

// ------------------------------------------------------------------------------------------------------ the desks

// The resources of all modes of each task, each once.
static void list_task_desks(bk_trial *trial)
{
    const bk_problem *problem = trial->problem;
    uint32_t count = 0, *seen = bk_alloc_clear(problem->resource_count + 1, sizeof *seen);
    size_t uses = 0;
    for (size_t task = 0; task < problem->task_count; task++)
        for (size_t mode = 0; mode < problem->tasks[task].mode_count; mode++)
            uses += problem->tasks[task].modes[mode].use_count;
    trial->task_desks = bk_alloc((uses + 1) * sizeof *trial->task_desks);
    for (uint32_t task = 0; task < problem->task_count; task++) {
        trial->first_desk[task] = count;
        for (size_t i = 0; i < problem->tasks[task].mode_count; i++) {
            const bk_mode *mode = &problem->tasks[task].modes[i];
            for (size_t use = 0; use < mode->use_count; use++) {
                uint32_t resource = mode->uses[use].resource;
                if (seen[resource] != task + 1)
                    trial->task_desks[count++] = resource;
                seen[resource] = task + 1;
            }
        }
    }
    trial->first_desk[problem->task_count] = count;
    free(seen);
}

static void list_leads(bk_trial *trial)
{
    const uint32_t *first_mode = trial->generator->first_mode;
    size_t count = first_mode[trial->problem->task_count];
    trial->leads = bk_alloc((count + 1) * sizeof *trial->leads);
    for (size_t i = 0; i < count; i++) {
        const bk_work *work = &trial->generator->works[i];
        trial->leads[i] = work->use_count > 0 ? work->uses[0].resource : BK_NO_LEAD;
    }
}

static const bk_mode *planned_mode(const bk_trial *trial, uint32_t task)
{
    return &trial->problem->tasks[task].modes[trial->planned[task].mode];
}

static void list_planned(bk_trial *trial)
{
    const bk_trial_class *class = &trial->classes[0];
    for (size_t place = class->first; place < class->end; place++) {
        const bk_mode *mode = planned_mode(trial, trial->order[place]);
        for (size_t use = 0; use < mode->use_count; use++)
            trial->desks[mode->uses[use].resource].planned_count++;
    }
    for (size_t i = 0; i < trial->problem->resource_count; i++) {
        bk_trial_desk *desk = &trial->desks[i];
        desk->planned = bk_alloc((desk->planned_count + 1) * sizeof *desk->planned);
        desk->planned_count = 0;
        desk->ready = bk_places_new(trial->problem->task_count);
        desk->own = bk_places_new(trial->problem->task_count);
    }
    for (size_t place = class->first; place < class->end; place++) {
        const bk_mode *mode = planned_mode(trial, trial->order[place]);
        for (size_t use = 0; use < mode->use_count; use++) {
            bk_trial_desk *desk = &trial->desks[mode->uses[use].resource];
            desk->planned[desk->planned_count++] = (uint32_t)place;
        }
    }
}

static int compare_openings(const void *left, const void *right)
{
    const bk_trial_opening *a = left, *b = right;
    if (a->at != b->at)
        return a->at < b->at ? -1 : 1;
    return (a->resource > b->resource) - (a->resource < b->resource);
}

static void list_openings(bk_trial *trial)
{
    const bk_problem *problem = trial->problem;
    size_t stages = 0;
    for (size_t i = 0; i < problem->resource_count; i++)
        stages += problem->resources[i].stage_count;
    trial->openings = bk_alloc((stages + 1) * sizeof *trial->openings);
    for (uint32_t i = 0; i < problem->resource_count; i++) {
        const bk_stage *items = problem->resources[i].stages;
        for (size_t stage = 1; stage < problem->resources[i].stage_count; stage++)
            if (items[stage].capacity > 0 && items[stage].capacity > items[stage - 1].capacity)
                trial->openings[trial->opening_count++] = (bk_trial_opening){items[stage].from, i};
    }
    qsort(trial->openings, trial->opening_count, sizeof *trial->openings, compare_openings);
}

// ------------------------------------------------------------------------------------------------- making, clearing

bk_trial *bk_trial_new(const bk_problem *problem, const uint32_t *order, const bk_placing *placings)
{
    bk_trial *trial = bk_alloc_clear(1, sizeof *trial);
    size_t room = problem->task_count + 1;
    trial->problem = problem;
    trial->generator = bk_generator_new(problem);
    trial->forward = bk_forward_new(problem);
    trial->planned = bk_alloc_clear(room, sizeof *trial->planned);
    trial->order = bk_alloc_clear(room, sizeof *trial->order);
    trial->place = bk_alloc_clear(room, sizeof *trial->place);
    trial->first_desk = bk_alloc_clear(room, sizeof *trial->first_desk);
    trial->desks = bk_alloc_clear(problem->resource_count + 1, sizeof *trial->desks);
    trial->woken = bk_alloc_clear(problem->resource_count + 1, sizeof *trial->woken);
    trial->waits_for = bk_alloc_clear(room, sizeof *trial->waits_for);
    trial->ready_at = bk_alloc_clear(room, sizeof *trial->ready_at);
    trial->arrived = bk_alloc_clear(room, sizeof *trial->arrived);
    trial->begun = bk_alloc_clear(room, sizeof *trial->begun);
    trial->reserved = bk_alloc_clear(room, sizeof *trial->reserved);
    trial->fresh = bk_places_new(problem->task_count);
    make_plan(trial, order, placings);
    make_order(trial, order);
    list_task_desks(trial);
    list_leads(trial);
    list_planned(trial);
    list_openings(trial);
    return trial;
}

void bk_trial_free(bk_trial *trial)
{
    if (trial == NULL)
        return;
    for (size_t i = 0; i < trial->problem->resource_count; i++) {
        bk_places_free(&trial->desks[i].ready);
        bk_places_free(&trial->desks[i].own);
        free(trial->desks[i].planned);
    }
    bk_places_free(&trial->fresh);
    bk_generator_free(trial->generator);
    bk_forward_free(trial->forward);
    void *rooms[] = {trial->planned,    trial->order,     trial->place,    trial->first_desk,
                     trial->task_desks, trial->desks,     trial->openings, trial->events,
                     trial->woken,      trial->waits_for, trial->ready_at, trial->arrived,
                     trial->begun,      trial->reserved,  trial->leads,    trial};
    for (size_t i = 0; i < sizeof rooms / sizeof rooms[0]; i++)
        free(rooms[i]);
}

static void clear_desk(bk_trial_desk *desk)
{
    bk_places_clear(&desk->ready);
    bk_places_clear(&desk->own);
    desk->next = 0;
    desk->called = BK_CLOCK_NONE;
    desk->awake = false;
}

void bk_trial_clear(bk_trial *trial)
{
    const bk_problem *problem = trial->problem;
    size_t count = problem->task_count;
    bk_forward_clear(trial->forward);
    for (size_t i = 0; i < problem->resource_count; i++)
        clear_desk(&trial->desks[i]);
    for (size_t i = 0; i < BK_TRIAL_CLASSES; i++)
        trial->classes[i].due = trial->classes[i].first;
    bk_places_clear(&trial->fresh);
    memset(trial->arrived, 0, count * sizeof *trial->arrived);
    memset(trial->begun, 0, count * sizeof *trial->begun);
    memset(trial->reserved, 0, count * sizeof *trial->reserved);
    for (size_t task = 0; task < count; task++) {
        const uint32_t *first = trial->generator->before.first + task;
        trial->waits_for[task] = first[1] - first[0];
        trial->ready_at[task] = problem->tasks[task].release > 0 ? problem->tasks[task].release : 0;
    }
    trial->event_count = trial->woken_count = trial->opening = 0;
    trial->left = count;
    trial->now = 0;
}
