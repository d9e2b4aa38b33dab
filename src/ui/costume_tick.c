#include "bodkin/ui/costume_acts.h"

// What is done at once to the step where the cursor stands: it is done, open again, its clock runs.

static void ask_offered(bk_screen *screen, const bk_costume_stop *stop, bk_step_act act)
{
    bk_costume_view *view = screen->self;
    const bk_rail *rail = screen->wall->rail;
    const bk_rail_costume *costume = bk_costume_shown(screen);
    bk_arena *arena = bk_arena_new();
    bk_indices steps = bk_steps_offered(rail, costume, stop->piece, arena);
    if (steps.count > 0)
        bk_tick_line_ask(&view->tick, act, screen->wall, steps,
                         bk_step_likely(rail, costume, steps, bk_clock_line_step(&view->clock)));
    else
        bk_wall_say(screen->wall, "No step of it is next.");
    bk_arena_free(arena);
}

void bk_costume_tick(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_costume_view *view = screen->self;
    const bk_rail *rail = screen->wall->rail;
    const bk_costume_stop *stop = bk_costume_stop_chosen(screen);
    if (stop->step == BK_NO_INDEX)
        ask_offered(screen, stop, BK_STEP_DONE);
    else
        bk_tick_line_ask(&view->tick, rail->rows.steps[stop->step].done ? BK_STEP_OPEN : BK_STEP_DONE,
                         screen->wall, (bk_indices){&stop->step, 1}, 0);
}

void bk_costume_clock(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_costume_view *view = screen->self;
    const bk_costume_stop *stop = bk_costume_stop_chosen(screen);
    if (stop->step == BK_NO_INDEX)
        ask_offered(screen, stop, BK_STEP_CLOCK);
    else
        bk_clock_line_toggle(screen, &view->clock, screen->wall->rail->steps[stop->step].id);
}
