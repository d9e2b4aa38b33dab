#include "bodkin/ui/plan_acts.h"

#include <stdlib.h>

#include "bodkin/base/text.h"
#include "bodkin/ui/costume_screen.h"
#include "bodkin/ui/stack.h"

// ------------------------------------------------------------------------------------------ what comes after

static size_t index_of(const bk_rail *rail, int64_t id)
{
    for (size_t i = 0; rail && i < rail->rows.step_count; i++)
        if (rail->steps[i].id == id)
            return i;
    return BK_NO_INDEX;
}

static bool comes_after(const bk_wait_step *step, size_t before)
{
    for (size_t i = 0; i < step->after.count; i++)
        if (step->after.items[i] == before)
            return true;
    return false;
}

const char *bk_plan_next_steps(const bk_rail *rail, int64_t step, bk_arena *arena)
{
    size_t before = index_of(rail, step);
    const char *words = NULL;
    if (before == BK_NO_INDEX)
        return NULL;
    for (size_t i = 0; i < rail->rows.step_count; i++) {
        if (!comes_after(&rail->rows.steps[i], before))
            continue;
        const char *name =
            bk_arena_print(arena, "%s/%s", rail->pieces[rail->rows.steps[i].piece].name, rail->steps[i].key);
        words = words ? bk_arena_print(arena, "%s, %s", words, name) : name;
    }
    return words;
}

// ---------------------------------------------------------------------------------------- what is said of it

const char *bk_plan_missing_words(const bk_wall *wall, bk_arena *arena)
{
    const char *trouble = wall->reckoning ? bk_reckoning_trouble(wall->reckoning) : NULL;
    return trouble ? bk_arena_print(arena, "The plan could not be made: %s", trouble)
                   : "Reckoning who does what, and when ... It will stand here in a moment.";
}

// ------------------------------------------------------------------------------------------------- its costume

static bk_status show_production_of(bk_screen *screen, const bk_planned_step *step, bk_error *error)
{
    bk_wall *wall = screen->wall;
    if (wall->rail && wall->rail->production.id == step->production_id)
        return BK_OK;
    bk_status status = bk_wall_show(wall, step->production, error);
    if (!status)
        bk_stack_stale(screen->stack);
    return status;
}

void bk_plan_open_costume(bk_screen *screen, const bk_planned_step *step)
{
    bk_error error;
    bk_wall *wall = screen->wall;
    bk_arena *arena = bk_arena_new();
    int64_t id = step->id;
    char *number = step->costume ? bk_text_copy(step->costume) : NULL;
    if (!number)
        bk_wall_say(wall, "%s is worn with no costume yet.", bk_text_safe(arena, step->piece, wall->ascii));
    else if (show_production_of(screen, step, &error))
        bk_wall_say(wall, "%s", error.text);
    else
        bk_stack_push(screen->stack, &bk_costume_screen, bk_costume_screen_at(number, BK_STEPS, id));
    free(number);
    bk_arena_free(arena);
}
