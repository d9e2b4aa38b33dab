#include "bodkin/plan/generator.h"

#include <stdlib.h>

static const bk_placing placed_never = {BK_CLOCK_NEVER, BK_CLOCK_NEVER, 0};

// -------------------------------------------------------------------------------------------------------------- making

// By the time of the appointment, then by index.
static void list_appointed(bk_generator *generator)
{
    const bk_task *tasks = generator->problem->tasks;
    for (uint32_t task = 0; task < generator->problem->task_count; task++) {
        if (tasks[task].appointment == BK_CLOCK_NONE)
            continue;
        size_t at = generator->appointed_count++;
        for (; at > 0 && tasks[generator->appointed[at - 1]].appointment > tasks[task].appointment; at--)
            generator->appointed[at] = generator->appointed[at - 1];
        generator->appointed[at] = task;
    }
}

static void write_works(bk_generator *generator)
{
    const bk_problem *problem = generator->problem;
    uint32_t count = 0;
    generator->first_mode = bk_alloc((problem->task_count + 1) * sizeof *generator->first_mode);
    for (size_t task = 0; task < problem->task_count; task++) {
        generator->first_mode[task] = count;
        count += (uint32_t)problem->tasks[task].mode_count;
    }
    generator->first_mode[problem->task_count] = count;
    generator->works = bk_alloc((count + 1) * sizeof *generator->works);
    for (size_t i = 0; i < problem->task_count; i++) {
        const bk_task *task = &problem->tasks[i];
        for (size_t mode = 0; mode < task->mode_count; mode++)
            generator->works[generator->first_mode[i] + mode] = (bk_work){
                task->modes[mode].uses, task->modes[mode].use_count, task->modes[mode].minutes, task->whole};
    }
}

static void tell_classes(bk_generator *generator, const uint32_t *order)
{
    const bk_links *after = &generator->after;
    for (size_t place = generator->problem->task_count; place-- > 0;) {
        uint32_t task = order[place];
        bool late = generator->problem->tasks[task].yields;
        for (uint32_t i = after->first[task]; i < after->first[task + 1]; i++)
            late = late && generator->late_class[after->items[i].task];
        generator->late_class[task] = late;
    }
}

bk_generator *bk_generator_new(const bk_problem *problem)
{
    bk_generator *generator = bk_alloc_clear(1, sizeof *generator);
    size_t room = problem->task_count + 1;
    generator->problem = problem;
    generator->timelines = bk_timelines_new(problem);
    generator->before = bk_links_before(problem);
    generator->after = bk_links_after(problem);
    generator->appointed = bk_alloc(room * sizeof *generator->appointed);
    generator->kept = bk_alloc_clear(room, sizeof *generator->kept);
    generator->late_class = bk_alloc_clear(room, sizeof *generator->late_class);
    generator->position = bk_alloc(room * sizeof *generator->position);
    generator->waits_for = bk_alloc(room * sizeof *generator->waits_for);
    list_appointed(generator);
    write_works(generator);
    bk_links_order(problem, &generator->after, NULL, generator->position);
    tell_classes(generator, generator->position);
    return generator;
}

void bk_generator_free(bk_generator *generator)
{
    if (generator == NULL)
        return;
    bk_generator_free_rooms(generator);
    bk_timelines_free(generator->timelines);
    bk_links_free(&generator->before);
    bk_links_free(&generator->after);
    free(generator->appointed);
    free(generator->kept);
    free(generator->late_class);
    free(generator->position);
    free(generator->waits_for);
    free(generator->first_mode);
    free(generator->works);
    free(generator);
}

// ------------------------------------------------------------------------------------------------------------- placing

bk_work bk_making_work(const bk_generator *generator, const bk_making *making, uint32_t task, uint32_t mode)
{
    bk_work work = generator->works[generator->first_mode[task] + mode];
    if (making->minutes != NULL)
        work.minutes = making->minutes[task];
    return work;
}

uint32_t bk_making_modes(const bk_problem *problem, const bk_making *making, uint32_t task, uint32_t *first)
{
    bool fixed = making->modes != NULL && making->modes[task] >= 0;
    *first = fixed ? (uint32_t)making->modes[task] : 0;
    return fixed ? *first + 1 : (uint32_t)problem->tasks[task].mode_count;
}

bk_placing bk_generator_find(const bk_generator *generator, const bk_making *making, uint32_t task,
                             bk_clock_minute ready)
{
    bk_placing best = placed_never;
    if (ready == BK_CLOCK_NEVER)
        return best;
    uint32_t mode, end = bk_making_modes(generator->problem, making, task, &mode);
    for (; mode < end; mode++) {
        bk_work work = bk_making_work(generator, making, task, mode);
        bk_placing place = {.mode = mode};
        if (bk_timelines_find(generator->timelines, &work, ready, best.end, &place))
            best = place;
    }
    return best;
}

bk_clock_minute bk_generator_ready(const bk_links *links, uint32_t task, const bk_placing *placings,
                                   bk_clock_minute from)
{
    bk_clock_minute ready = from > 0 ? from : 0;
    for (uint32_t i = links->first[task]; i < links->first[task + 1]; i++) {
        bk_clock_minute end = placings[links->items[i].task].end;
        int32_t rest = links->items[i].rest;
        if (end >= BK_CLOCK_NEVER - rest)
            return BK_CLOCK_NEVER;
        if (end + rest > ready)
            ready = end + rest;
    }
    return ready;
}

// -------------------------------------------------------------------------------------------------------- appointments

// Reserves a task at its appointment, in the first mode that is open and free there.
static bool reserve(bk_generator *generator, const bk_making *making, uint32_t task, bk_placing *placing)
{
    bk_clock_minute moment = generator->problem->tasks[task].appointment;
    uint32_t mode, end = bk_making_modes(generator->problem, making, task, &mode);
    if (moment < 0)
        return false;
    for (; mode < end; mode++) {
        bk_work work = bk_making_work(generator, making, task, mode);
        *placing = (bk_placing){.mode = mode};
        if (bk_timelines_find(generator->timelines, &work, moment, BK_CLOCK_NEVER, placing) &&
            placing->begin == moment) {
            bk_timelines_take(generator->timelines, &work, placing);
            return true;
        }
    }
    return false;
}

void bk_generator_reserve(bk_generator *generator, const bk_making *making, bk_placing *placings)
{
    for (size_t i = 0; i < generator->appointed_count; i++) {
        uint32_t task = generator->appointed[i];
        generator->kept[task] = reserve(generator, making, task, &placings[task]);
    }
}

bool bk_generator_keeps(bk_generator *generator, const bk_making *making, uint32_t task,
                        const bk_placing *reserved, bk_clock_minute *ready)
{
    bk_clock_minute appointment = generator->problem->tasks[task].appointment;
    if (appointment == BK_CLOCK_NONE)
        return false;
    if (generator->kept[task]) {
        if (*ready <= appointment)
            return true;
        bk_work work = bk_making_work(generator, making, task, reserved->mode);
        bk_timelines_give(generator->timelines, &work, reserved);
        generator->kept[task] = false;
    }
    if (*ready < appointment)
        *ready = appointment;
    return false;
}
