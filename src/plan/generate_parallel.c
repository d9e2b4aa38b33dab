#include <stdlib.h>
#include <string.h>

#include "bodkin/base/list.h"
#include "bodkin/plan/generate.h"
#include "bodkin/plan/generator.h"

// So that nothing is looked at in vain again and again, a task that cannot begin waits, in each of its modes, either for one
// resource of which nothing is free now, or for the first moment at which the mode fits as far as is known. What was put in since
// may have made that later; earlier only where an appointment was given back, which is not looked for.

enum {
    MOMENT_SHIFT = 32, // of a call: the moment, whether for a resource, and which one or whose place
    LACKS_NOTHING = UINT32_MAX
};

static const uint32_t for_resource = (uint32_t)1 << 31;

// One class of tasks at a time: first those that do not give way.
typedef struct parallel_pass {
    bk_generator *generator;
    const bk_making *making;
    bk_placing *placings;
    bool late_class;
    bk_clock_minute now;
} parallel_pass;

// ---------------------------------------------------------------------------------------------------------------- room

void bk_generator_open_rooms(bk_generator *generator)
{
    const bk_problem *problem = generator->problem;
    size_t tasks = problem->task_count + 1, modes = generator->first_mode[problem->task_count] + (size_t)1;
    generator->rooms = bk_alloc_clear(problem->resource_count + 1, sizeof *generator->rooms);
    for (size_t i = 0; i < problem->resource_count; i++)
        generator->rooms[i].waiting = bk_places_new(problem->task_count);
    generator->fresh = bk_places_new(problem->task_count);
    generator->open = bk_alloc_clear(problem->resource_count + 1, sizeof *generator->open);
    generator->begun = bk_alloc_clear(tasks, sizeof *generator->begun);
    generator->called = bk_alloc_clear(tasks, sizeof *generator->called);
    generator->soonest = bk_alloc_clear(modes, sizeof *generator->soonest);
    generator->lacks = bk_alloc_clear(modes, sizeof *generator->lacks);
}

void bk_generator_free_rooms(bk_generator *generator)
{
    for (size_t i = 0; generator->rooms != NULL && i < generator->problem->resource_count; i++)
        bk_places_free(&generator->rooms[i].waiting);
    bk_places_free(&generator->fresh);
    free(generator->rooms);
    free(generator->open);
    free(generator->begun);
    free(generator->called);
    free(generator->soonest);
    free(generator->lacks);
    free(generator->queue);
}

// --------------------------------------------------------------------------------------------------------------- calls

static void push(bk_generator *generator, bk_clock_minute moment, uint32_t which)
{
    if (moment == BK_CLOCK_NEVER)
        return;
    uint64_t call = (uint64_t)(uint32_t)moment << MOMENT_SHIFT | which;
    generator->queue = bk_list_grow(generator->queue, &generator->queue_room, generator->queue_count,
                                    sizeof *generator->queue);
    uint64_t *queue = generator->queue;
    size_t at = generator->queue_count++;
    for (; at > 0 && call < queue[(at - 1) / 2]; at = (at - 1) / 2)
        queue[at] = queue[(at - 1) / 2];
    queue[at] = call;
}

static uint32_t pop(bk_generator *generator)
{
    uint64_t *queue = generator->queue, first = queue[0], last = queue[--generator->queue_count];
    size_t at = 0;
    for (size_t child = 1; child < generator->queue_count; child = at * 2 + 1) {
        child += child + 1 < generator->queue_count && queue[child + 1] < queue[child];
        if (queue[child] >= last)
            break;
        queue[at] = queue[child];
        at = child;
    }
    queue[at] = last;
    return (uint32_t)first;
}

static bk_clock_minute next_moment(const bk_generator *generator)
{
    return generator->queue_count > 0 ? (bk_clock_minute)(generator->queue[0] >> MOMENT_SHIFT)
                                      : BK_CLOCK_NEVER;
}

static void call_task(bk_generator *generator, uint32_t task, bk_clock_minute moment)
{
    if (moment >= generator->called[task])
        return;
    generator->called[task] = moment;
    push(generator, moment, generator->position[task]);
}

// Has a resource looked at when anything of it is free.
static void call_resource(const parallel_pass *pass, uint32_t resource)
{
    bk_waiting_room *room = &pass->generator->rooms[resource];
    bk_clock_minute moment = bk_timelines_pass(pass->generator->timelines, resource, pass->now);
    if (moment >= room->calls)
        return;
    room->calls = moment;
    push(pass->generator, moment, for_resource | resource);
}

// ------------------------------------------------------------------------------------------------------------ arriving

static bool is_free(const parallel_pass *pass, uint32_t resource)
{
    return bk_timelines_pass(pass->generator->timelines, resource, pass->now) == pass->now;
}

static void arrive(const parallel_pass *pass, uint32_t task);

// Those that come after a placed task and after nothing else that is not.
static void release_followers(const parallel_pass *pass, uint32_t task)
{
    bk_generator *generator = pass->generator;
    const bk_links *after = &generator->after;
    generator->begun[task] = true;
    for (uint32_t i = after->first[task]; i < after->first[task + 1]; i++) {
        uint32_t follower = after->items[i].task;
        if (--generator->waits_for[follower] == 0 && generator->late_class[follower] == pass->late_class)
            arrive(pass, follower);
    }
}

// What was kept free for a task's appointment is free again.
static void give_up(const parallel_pass *pass, uint32_t task)
{
    const bk_mode *mode = &pass->generator->problem->tasks[task].modes[pass->placings[task].mode];
    for (size_t use = 0; use < mode->use_count; use++)
        call_resource(pass, mode->uses[use].resource);
}

// A task that all before is placed of is looked at when that is done; one that keeps its appointment is placed already.
static void arrive(const parallel_pass *pass, uint32_t task)
{
    bk_generator *generator = pass->generator;
    bool kept = generator->kept[task];
    bk_clock_minute ready =
        bk_generator_ready(&generator->before, task, pass->placings, generator->problem->tasks[task].release);
    if (bk_generator_keeps(generator, pass->making, task, &pass->placings[task], &ready)) {
        release_followers(pass, task);
        return;
    }
    if (kept)
        give_up(pass, task);
    generator->called[task] = BK_CLOCK_NEVER;
    for (uint32_t mode = generator->first_mode[task]; mode < generator->first_mode[task + 1]; mode++) {
        generator->soonest[mode] = ready;
        generator->lacks[mode] = LACKS_NOTHING;
    }
    call_task(generator, task, ready);
}

// ------------------------------------------------------------------------------------------------------------- looking

// The first of the work's resources of which nothing is free now.
static uint32_t lacking(const parallel_pass *pass, const bk_work *work)
{
    for (size_t use = 0; use < work->use_count && work->minutes > 0; use++)
        if (!is_free(pass, work->uses[use].resource))
            return work->uses[use].resource;
    return LACKS_NOTHING;
}

// Whether there is reason to look at a mode, by its index among all: it could fit by now, and what it lacked is there.
static bool may_begin(const parallel_pass *pass, uint32_t task, uint32_t index)
{
    bk_generator *generator = pass->generator;
    uint32_t lacked = generator->lacks[index];
    if (generator->soonest[index] > pass->now)
        return false;
    if (lacked == LACKS_NOTHING)
        return true;
    if (!is_free(pass, lacked))
        return false;
    bk_places_drop(&generator->rooms[lacked].waiting, generator->position[task]);
    generator->lacks[index] = LACKS_NOTHING;
    return true;
}

// Looks whether a task can begin now in a mode, so that it ends before the best place yet; where it cannot begin, the mode waits.
static void look_at_mode(const parallel_pass *pass, uint32_t task, uint32_t mode, bk_placing *best)
{
    bk_generator *generator = pass->generator;
    uint32_t index = generator->first_mode[task] + mode;
    if (!may_begin(pass, task, index))
        return;
    bk_work work = bk_making_work(generator, pass->making, task, mode);
    uint32_t lacked = lacking(pass, &work);
    bk_placing place = {BK_CLOCK_NEVER, BK_CLOCK_NEVER, mode};
    if (lacked != LACKS_NOTHING) {
        generator->lacks[index] = lacked;
        bk_places_add(&generator->rooms[lacked].waiting, generator->position[task]);
        call_resource(pass, lacked);
        return;
    }
    bk_timelines_find(generator->timelines, &work, pass->now, BK_CLOCK_NEVER, &place);
    generator->soonest[index] = place.begin;
    if (place.begin == pass->now && place.end < best->end)
        *best = place;
}

static void stop_waiting(const parallel_pass *pass, uint32_t task)
{
    bk_generator *generator = pass->generator;
    for (uint32_t mode = generator->first_mode[task]; mode < generator->first_mode[task + 1]; mode++)
        if (generator->lacks[mode] != LACKS_NOTHING)
            bk_places_drop(&generator->rooms[generator->lacks[mode]].waiting, generator->position[task]);
}

// Looks whether a task can begin now, in the mode that ends it first: then it is placed, else it waits on.
static void look(const parallel_pass *pass, uint32_t task)
{
    bk_generator *generator = pass->generator;
    bk_placing best = {BK_CLOCK_NEVER, BK_CLOCK_NEVER, 0};
    bk_clock_minute next = BK_CLOCK_NEVER;
    uint32_t mode, end = bk_making_modes(generator->problem, pass->making, task, &mode);
    for (; mode < end; mode++) {
        look_at_mode(pass, task, mode, &best);
        bk_clock_minute soonest = generator->soonest[generator->first_mode[task] + mode];
        if (soonest > pass->now && soonest < next)
            next = soonest;
    }
    if (best.begin == BK_CLOCK_NEVER) {
        if (generator->called[task] <= pass->now)
            generator->called[task] = BK_CLOCK_NEVER;
        call_task(generator, task, next);
        return;
    }
    bk_work work = bk_making_work(generator, pass->making, task, best.mode);
    pass->placings[task] = best;
    if (work.minutes > 0)
        bk_timelines_take(generator->timelines, &work, &best);
    stop_waiting(pass, task);
    release_followers(pass, task);
}

// --------------------------------------------------------------------------------------------------------- going along

static void open(const parallel_pass *pass, uint32_t resource)
{
    bk_generator *generator = pass->generator;
    bk_waiting_room *room = &generator->rooms[resource];
    room->calls = BK_CLOCK_NEVER;
    if (room->open)
        return;
    room->open = true;
    generator->open[generator->open_count++] = resource;
}

// Takes up all calls for this moment.
static void answer_calls(const parallel_pass *pass)
{
    bk_generator *generator = pass->generator;
    while (next_moment(generator) == pass->now) {
        uint32_t which = pop(generator);
        if (which & for_resource)
            open(pass, which & ~for_resource);
        else if (!generator->begun[pass->making->order[which]])
            bk_places_add(&generator->fresh, which);
    }
}

// The first place to be looked at; SIZE_MAX.
static size_t next_place(const parallel_pass *pass)
{
    bk_generator *generator = pass->generator;
    size_t next = bk_places_next(&generator->fresh, 0);
    for (size_t i = 0; i < generator->open_count; i++) {
        uint32_t resource = generator->open[i];
        size_t place = bk_places_next(&generator->rooms[resource].waiting, 0);
        if (place < next && is_free(pass, resource))
            next = place;
    }
    return next;
}

static void close_rooms(const parallel_pass *pass)
{
    bk_generator *generator = pass->generator;
    while (generator->open_count > 0) {
        uint32_t resource = generator->open[--generator->open_count];
        generator->rooms[resource].open = false;
        if (bk_places_next(&generator->rooms[resource].waiting, 0) != SIZE_MAX)
            call_resource(pass, resource);
    }
}

static void live_moment(const parallel_pass *pass)
{
    bk_generator *generator = pass->generator;
    answer_calls(pass);
    for (size_t place = next_place(pass); place != SIZE_MAX; place = next_place(pass)) {
        bk_places_drop(&generator->fresh, place);
        look(pass, pass->making->order[place]);
        answer_calls(pass);
    }
    close_rooms(pass);
}

static void clear_rooms(bk_generator *generator)
{
    for (size_t i = 0; i < generator->problem->resource_count; i++) {
        bk_places_clear(&generator->rooms[i].waiting);
        generator->rooms[i].calls = BK_CLOCK_NEVER;
    }
    bk_timelines_rewind(generator->timelines);
}

static void run(parallel_pass *pass, bool late_class)
{
    bk_generator *generator = pass->generator;
    pass->late_class = late_class;
    pass->now = 0;
    clear_rooms(generator);
    for (size_t place = 0; place < generator->problem->task_count; place++) {
        uint32_t task = pass->making->order[place];
        if (generator->waits_for[task] == 0 && !generator->begun[task] &&
            generator->late_class[task] == late_class)
            arrive(pass, task);
    }
    while ((pass->now = next_moment(generator)) != BK_CLOCK_NEVER)
        live_moment(pass);
}

void bk_generate_parallel(bk_generator *generator, const bk_making *making, bk_placing *placings)
{
    const bk_problem *problem = generator->problem;
    parallel_pass pass = {.generator = generator, .making = making, .placings = placings};
    if (generator->rooms == NULL)
        bk_generator_open_rooms(generator);
    bk_timelines_clear(generator->timelines, problem);
    bk_generator_reserve(generator, making, placings);
    memset(generator->begun, 0, problem->task_count * sizeof *generator->begun);
    for (uint32_t place = 0; place < problem->task_count; place++) {
        uint32_t task = making->order[place];
        generator->position[task] = place;
        generator->waits_for[task] = generator->before.first[task + 1] - generator->before.first[task];
    }
    run(&pass, false);
    run(&pass, true);
    for (size_t task = 0; task < problem->task_count; task++)
        if (!generator->begun[task])
            placings[task] = (bk_placing){BK_CLOCK_NEVER, BK_CLOCK_NEVER, 0};
}
