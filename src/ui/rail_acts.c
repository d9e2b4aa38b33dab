#include "bodkin/ui/rail_acts.h"

#include "bodkin/base/text.h"
#include "bodkin/ui/rail_head.h"
#include "bodkin/ui/record_acts.h"

static const char *why_none(const bk_rail *rail, const bk_rail_costume *costume)
{
    if (rail->rows.costumes[costume->index].pieces.count == 0)
        return "has no piece yet: Enter opens it, and + adds one";
    if (costume->reckoned->steps == 0)
        return "has no step yet: Enter opens it, and + adds one to a piece";
    if (costume->reckoned->steps == costume->reckoned->steps_done)
        return "has no open step: all are done";
    return "has no step that is next: each comes after one that is open";
}

static bool waits_on(const bk_rail_costume *costume, size_t step, int on)
{
    for (size_t i = 0; i < costume->reckoned->wait_count; i++)
        if (costume->reckoned->waits[i].step == step && (int)costume->reckoned->waits[i].on == on)
            return true;
    return false;
}

static size_t likely(const bk_rail *rail, const bk_rail_costume *costume, bk_indices steps,
                     const bk_clock_line *clock, int only)
{
    for (size_t i = 0; only != BK_RAIL_SHOWS_ALL && i < steps.count; i++)
        if (waits_on(costume, steps.items[i], only))
            return i;
    return bk_step_likely(rail, costume, steps, bk_clock_line_step(clock));
}

void bk_rail_ask_step(bk_screen *screen, bk_tick_line *line, const bk_clock_line *clock,
                      const bk_rail_costume *costume, bk_step_act act, int only)
{
    const bk_rail *rail = screen->wall->rail;
    bk_arena *arena = bk_arena_new();
    bk_indices steps = bk_steps_offered(rail, costume, BK_NO_INDEX, arena);
    if (steps.count > 0)
        bk_tick_line_ask(line, act, screen->wall, steps, likely(rail, costume, steps, clock, only));
    else
        bk_wall_say(screen->wall, "%s %s.", bk_text_safe(arena, costume->record->number, screen->wall->ascii),
                    why_none(rail, costume));
    bk_arena_free(arena);
}

void bk_rail_add_costume(bk_screen *screen, const bk_rail_costume *costume)
{
    bk_act_add_record(screen, BK_COSTUMES, NULL, costume ? costume->record->id : 0, NULL);
}

void bk_rail_take_costume_away(bk_screen *screen, const bk_rail_costume *costume)
{
    bk_arena *arena = bk_arena_new();
    const char *name =
        bk_arena_print(arena, "costume %s %s", costume->record->number, costume->record->title);
    bk_act_take_away_record(screen, BK_COSTUMES, costume->record->id, name, NULL);
    bk_arena_free(arena);
}
