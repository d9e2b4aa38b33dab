#include "bodkin/ui/rail_view.h"

#include <stdlib.h>
#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/ui/rail_head.h"
#include "bodkin/work/rail_order.h"

// ------------------------------------------------------------------------------------- the chosen costume

const bk_rail_costume *bk_rail_chosen(const bk_screen *screen)
{
    const bk_rail_view *self = screen->self;
    return self->shown.count > 0 ? &screen->wall->rail->costumes[self->shown.items[self->cursor.at]] : NULL;
}

static void remember(bk_rail_view *self, const bk_costume *costume)
{
    self->chosen_id = costume->id;
    strncpy(self->chosen, costume->number, BK_RAIL_NUMBER_ROOM - 1);
}

void bk_rail_remember_chosen(const bk_screen *screen)
{
    if (bk_rail_chosen(screen))
        remember(screen->self, bk_rail_chosen(screen)->record);
}

// --------------------------------------------------------------------------------------- what of it is shown

bool bk_rail_narrowed(const bk_screen *screen)
{
    const bk_rail_view *self = screen->self;
    return self->only != BK_RAIL_SHOWS_ALL || self->query.length > 0;
}

static bool *matching(const bk_screen *screen)
{
    bk_rail_view *self = screen->self;
    const bk_rail *rail = screen->wall->rail;
    bool *found = bk_alloc(rail->costume_count + 1);
    memset(found, true, rail->costume_count);
    if (self->query.length == 0)
        return found;
    if (!self->findable)
        self->findable = bk_findable_new(rail, bk_wall_forecast(screen->wall));
    bk_findable_match(self->findable, &self->query, found);
    return found;
}

static bool is_shown(const bk_screen *screen, size_t costume, const bool *found)
{
    const bk_rail_view *self = screen->self;
    return found[costume] &&
           (self->only == BK_RAIL_SHOWS_ALL ||
            bk_rail_waits_on(&screen->wall->rail->costumes[costume], (bk_wait_on)self->only));
}

// The line of the costume that was chosen, else `at`.
static size_t line_of_chosen(const bk_screen *screen, size_t at)
{
    const bk_rail_view *self = screen->self;
    bool found = false;
    for (size_t i = 0; i < self->shown.count && !found; i++) {
        const bk_costume *costume = screen->wall->rail->costumes[self->shown.items[i]].record;
        found = costume->id == self->chosen_id;
        if (found || strncmp(costume->number, self->chosen, BK_RAIL_NUMBER_ROOM - 1) == 0)
            at = i;
    }
    return at;
}

void bk_rail_show_matching(bk_screen *screen, size_t at)
{
    bk_rail_view *self = screen->self;
    const bk_rail *rail = screen->wall->rail;
    bk_arena *arena = bk_arena_new();
    const bk_rail_costume *const *urgent = bk_rail_most_urgent(rail, bk_wall_forecast(screen->wall), arena);
    bool *found = matching(screen);
    self->shown.count = 0;
    for (size_t i = 0; i < rail->costume_count; i++) {
        size_t costume = (size_t)(urgent[i] - rail->costumes);
        if (is_shown(screen, costume, found))
            bk_list_add(&self->shown, costume);
    }
    free(found);
    bk_arena_free(arena);
    bk_cursor_fit(&self->cursor, self->shown.count, self->cursor.seen);
    bk_cursor_put(&self->cursor, line_of_chosen(screen, at));
}

static void find_saved(const bk_screen *screen)
{
    bk_rail_view *self = screen->self;
    const bk_rail *rail = screen->wall->rail;
    for (size_t i = 0; screen->wall->saved_family == BK_COSTUMES && i < rail->costume_count; i++)
        if (rail->costumes[i].record->id == screen->wall->saved_id) {
            remember(self, rail->costumes[i].record);
            self->touched = true;
        }
}

void bk_rail_show_read(bk_screen *screen)
{
    bk_rail_view *self = screen->self;
    find_saved(screen);
    if (!self->touched) {
        self->chosen_id = 0;
        self->chosen[0] = '\0';
        self->cursor.at = 0;
    }
    bk_rail_show_matching(screen, self->cursor.at);
}
