#include "bodkin/ui/costume_view.h"

#include <stdlib.h>
#include <string.h>

#include "bodkin/base/text.h"

// Who brings a production in again has the same records with other ids: then the number or the name counts.
const bk_rail_costume *bk_costume_shown(const bk_screen *screen)
{
    const bk_costume_view *view = screen->self;
    const bk_rail *rail = screen->wall->rail;
    for (size_t i = 0; view->id != 0 && rail && i < rail->costume_count; i++)
        if (rail->costumes[i].record->id == view->id)
            return &rail->costumes[i];
    return bk_wall_costume(screen->wall, view->number);
}

const bk_costume_stop *bk_costume_stop_chosen(const bk_screen *screen)
{
    const bk_costume_view *view = screen->self;
    return &view->lines.stops[view->place.at];
}

static const char *name_of(const bk_rail *rail, const bk_costume_stop *stop, bk_arena *arena)
{
    if (stop->piece == BK_NO_INDEX)
        return "";
    return bk_arena_print(arena, "%s/%s", rail->pieces[stop->piece].name,
                          stop->step == BK_NO_INDEX ? "" : rail->steps[stop->step].key);
}

// The record that was chosen; at first a step that is next.
static bool is_wanted(const bk_screen *screen, const bk_costume_stop *stop)
{
    const bk_costume_view *view = screen->self;
    if (view->chosen_id == 0)
        return stop->family == BK_STEPS && bk_step_next(&screen->wall->rail->rows, stop->step);
    return stop->family == view->chosen_family && stop->id == view->chosen_id;
}

static bool is_named(const bk_screen *screen, const bk_costume_stop *stop)
{
    const bk_costume_view *view = screen->self;
    bk_arena *arena = bk_arena_new();
    bool named = view->chosen_name && stop->family == view->chosen_family &&
                 bk_same_text(name_of(screen->wall->rail, stop, arena), view->chosen_name);
    bk_arena_free(arena);
    return named;
}

void bk_costume_find_chosen(const bk_screen *screen)
{
    static bool (*const tests[])(const bk_screen *screen, const bk_costume_stop *stop) = {is_wanted,
                                                                                          is_named};
    bk_costume_view *view = screen->self;
    for (size_t test = 0; test < sizeof tests / sizeof tests[0]; test++)
        for (size_t i = 0; i < view->lines.stop_count; i++)
            if (tests[test](screen, &view->lines.stops[i])) {
                view->place.at = i;
                return;
            }
    if (view->place.at >= view->lines.stop_count)
        view->place.at = view->lines.stop_count - 1;
}

void bk_costume_remember_chosen(const bk_screen *screen)
{
    bk_costume_view *view = screen->self;
    const bk_costume_stop *stop = bk_costume_stop_chosen(screen);
    bk_arena *arena = bk_arena_new();
    free(view->chosen_name);
    view->chosen_family = stop->family;
    view->chosen_id = stop->id;
    view->chosen_name = bk_text_copy(name_of(screen->wall->rail, stop, arena));
    bk_arena_free(arena);
}
