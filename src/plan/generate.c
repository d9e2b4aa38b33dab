#include "bodkin/plan/generate.h"

#include "bodkin/plan/generator.h"

static void take(bk_generator *generator, const bk_making *making, uint32_t task, const bk_placing *place)
{
    if (place->end == BK_CLOCK_NEVER)
        return;
    bk_work work = bk_making_work(generator, making, task, place->mode);
    if (work.minutes > 0)
        bk_timelines_take(generator->timelines, &work, place);
}

void bk_generate_serial(bk_generator *generator, const bk_making *making, bk_placing *placings)
{
    const bk_problem *problem = generator->problem;
    bk_timelines_clear(generator->timelines, problem);
    bk_generator_reserve(generator, making, placings);
    for (size_t place = 0; place < problem->task_count; place++) {
        uint32_t task = making->order[place];
        bk_clock_minute ready =
            bk_generator_ready(&generator->before, task, placings, problem->tasks[task].release);
        if (bk_generator_keeps(generator, making, task, &placings[task], &ready))
            continue;
        placings[task] = bk_generator_find(generator, making, task, ready);
        take(generator, making, task, &placings[task]);
    }
}

// ------------------------------------------------------------------------------------------------------------ backward

void bk_generate_backward_to(bk_generator *generator, const bk_making *making, bk_clock_minute end,
                             const bk_clock_minute *latest, bk_placing *placings)
{
    const bk_problem *problem = generator->problem;
    bk_timelines_mirror(generator->timelines, problem, end);
    for (size_t place = problem->task_count; place-- > 0;) {
        uint32_t task = making->order[place];
        bk_clock_minute from = latest != NULL && latest[task] < end ? end - latest[task] : 0;
        bk_clock_minute ready = bk_generator_ready(&generator->after, task, placings, from);
        placings[task] = bk_generator_find(generator, making, task, ready);
        if (placings[task].end > end) // no work, and before minute 0
            placings[task] = (bk_placing){BK_CLOCK_NEVER, BK_CLOCK_NEVER, 0};
        take(generator, making, task, &placings[task]);
    }
    for (size_t task = 0; task < problem->task_count; task++) {
        bk_placing mirrored = placings[task];
        if (mirrored.end != BK_CLOCK_NEVER)
            placings[task] = (bk_placing){end - mirrored.end, end - mirrored.begin, mirrored.mode};
    }
}

void bk_generate_backward(bk_generator *generator, const bk_making *making, bk_clock_minute end,
                          bk_placing *placings)
{
    bk_generate_backward_to(generator, making, end, NULL, placings);
}
