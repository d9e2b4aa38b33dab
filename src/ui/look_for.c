#include "bodkin/ui/look_for.h"

#include <stdlib.h>

#include "bodkin/base/text.h"
#include "bodkin/ui/acts.h"
#include "bodkin/ui/cast_screen.h"
#include "bodkin/ui/costume_screen.h"
#include "bodkin/ui/cursor.h"
#include "bodkin/ui/materials_screen.h"
#include "bodkin/ui/narrow.h"
#include "bodkin/ui/notes_screen.h"
#include "bodkin/ui/query_line.h"
#include "bodkin/ui/stack.h"
#include "bodkin/work/finder.h"

enum {
    MOST_SHOWN = 200, // more are counted, but not shown: typing on is quicker
    MOST_ROWS = 12,   // of what is found, above the line that is typed
    BELOW = 2,        // an empty row, and the line that is typed
    KIND_COLUMNS = 9, // "performer"
    MOST_NAME_COLUMNS = 26,
    GAP = 2
};

typedef struct look_for_screen {
    bk_finder *finder; // NULL: not read yet
    bk_query query;
    bk_found found[MOST_SHOWN];
    size_t all; // that match
    bk_cursor cursor;
} look_for_screen;

static void close_look_for(bk_screen *screen)
{
    look_for_screen *self = screen->self;
    bk_finder_free(self->finder);
    free(self);
}

static void find_typed(look_for_screen *self)
{
    self->all = bk_finder_find(self->finder, self->query.text, self->found, MOST_SHOWN);
    bk_cursor_fit(&self->cursor, self->all < MOST_SHOWN ? self->all : MOST_SHOWN, MOST_ROWS);
}

static bk_status read_look_for(bk_screen *screen, bk_error *error)
{
    look_for_screen *self = screen->self;
    bk_finder *finder = NULL;
    if (!screen->wall->rail) {
        bk_stack_pop(screen->stack);
        return BK_OK;
    }
    bk_status status = bk_finder_read(screen->wall->store, screen->wall->rail->production.id, &finder, error);
    if (status)
        return status;
    bk_finder_free(self->finder);
    self->finder = finder;
    find_typed(self);
    return BK_OK;
}

// --------------------------------------------------------------------------------------------------- drawing

// What each family is called, and where what is found of it is seen.
static const struct {
    bk_family family;
    const char *word;
    const bk_screen_kind *kind;
    void *(*open)(void);
} places[] = {
    {BK_PERFORMERS, "performer", &bk_cast_screen, bk_cast_screen_new},
    {BK_ROLES, "role", &bk_cast_screen, bk_cast_screen_new},
    {BK_COSTUMES, "costume", NULL, NULL}, // these hang on the Costume screen
    {BK_PIECES, "piece", NULL, NULL},
    {BK_STEPS, "step", NULL, NULL},
    {BK_MATERIALS, "material", &bk_materials_screen, bk_materials_screen_new},
    {BK_NOTES, "note", &bk_notes_screen, bk_notes_screen_new},
};

enum { PLACES = sizeof places / sizeof places[0] };

static size_t place_of(bk_family family)
{
    size_t place = 0;
    while (place + 1 < PLACES && places[place].family != family)
        place++;
    return place;
}

// As wide as the longest of the names in sight that have something beside them.
static size_t name_columns(const look_for_screen *self, const bk_paint *paint, size_t count)
{
    size_t wide = 0;
    for (size_t i = 0; i < count; i++) {
        const bk_found *found = &self->found[self->cursor.top + i];
        size_t columns = bk_text_columns(bk_text_safe(paint->arena, found->name, paint->ascii));
        wide = found->tells && columns > wide ? columns : wide;
    }
    return wide < MOST_NAME_COLUMNS ? wide : MOST_NAME_COLUMNS;
}

static void draw_found(const bk_paint *paint, const bk_found *found, size_t names, size_t row, bool chosen)
{
    int style = chosen ? BK_STYLE_CHOSEN : BK_STYLE_PLAIN;
    if (chosen)
        bk_paint_chosen(paint, row);
    bk_spot spot = bk_paint_row(paint, row);
    size_t end = spot.column + spot.width;
    spot.width = KIND_COLUMNS;
    bk_paint_text(paint, spot, chosen ? style : BK_STYLE_DIM, places[place_of(found->family)].word);
    spot.column += KIND_COLUMNS + GAP;
    spot.width = found->tells ? names : end - spot.column;
    bk_paint_text(paint, spot, style, found->name);
    if (!found->tells)
        return;
    spot.column += names + GAP;
    spot.width = end - spot.column;
    bk_paint_text(paint, spot, style, found->tells);
}

static const char *summary(const look_for_screen *self, const bk_paint *paint)
{
    if (self->query.length == 0)
        return "Type a few letters: a name, a number, a word of a title or a note";
    if (self->all == 0)
        return "Nothing of this production has that";
    if (self->all > self->cursor.seen)
        return bk_arena_print(paint->arena, "%zu found, %zu to %zu shown: type on to find fewer", self->all,
                              self->cursor.top + 1, self->cursor.top + self->cursor.seen);
    return bk_arena_print(paint->arena, "%zu found", self->all);
}

static void draw_look_for(bk_screen *screen, const bk_paint *paint)
{
    look_for_screen *self = screen->self;
    size_t count = self->cursor.count < MOST_ROWS ? self->cursor.count : MOST_ROWS;
    size_t first = paint->rows - BELOW - count - 1; // the row that says how many
    for (size_t row = first - 1; row < paint->rows; row++)
        bk_term_fill(row, 0, paint->columns, BK_STYLE_PLAIN);
    bk_paint_text(paint, bk_paint_row(paint, first), BK_STYLE_DIM, summary(self, paint));
    size_t names = name_columns(self, paint, count);
    for (size_t i = 0; i < count; i++) {
        size_t at = self->cursor.top + i;
        draw_found(paint, &self->found[at], names, first + 1 + i, at == self->cursor.at);
    }
}

static size_t draw_typed(bk_screen *screen, const bk_paint *paint, bk_spot spot)
{
    const look_for_screen *self = screen->self;
    return bk_query_prompt_draw(&self->query, paint, spot, "Look for");
}

// ------------------------------------------------------------------------------------------------- its keys

static bool take_typed(bk_screen *screen, const bk_key *key)
{
    look_for_screen *self = screen->self;
    bool typing = true; // Backspace on an empty line ends nothing
    if (!bk_query_line_take(&self->query, &typing, key, screen->wall))
        return false;
    find_typed(self);
    bk_cursor_put(&self->cursor, 0);
    return true;
}

static void move(bk_screen *screen, const bk_key_row *row)
{
    look_for_screen *self = screen->self;
    bk_cursor_key(&self->cursor, row->name);
}

// The screen that is gone to puts its cursor on what was saved last, or found.
static void go(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    look_for_screen *self = screen->self;
    if (self->cursor.count == 0)
        return;
    bk_wall *wall = screen->wall;
    bk_found found = self->found[self->cursor.at];
    size_t place = place_of(found.family);
    wall->saved_family = found.family;
    wall->saved_id = found.id;
    if (places[place].kind)
        bk_act_go(screen, places[place].kind, places[place].open());
    else if (found.costume)
        bk_act_go(screen, &bk_costume_screen, bk_costume_screen_at(found.costume, found.family, found.id));
    else
        bk_wall_say(wall, "That piece is worn with no costume yet.");
}

static bool has_found(const bk_screen *screen)
{
    return ((const look_for_screen *)screen->self)->cursor.count > 0;
}

static const bk_key_row rows[] = {
    {.name = BK_KEY_ENTER,
     .written = "Enter",
     .bottom = "go there",
     .help = "go to the one under the cursor",
     .act = go,
     .matters = has_found},
    {.name = BK_KEY_UP,
     .written = "Up, Down",
     .bottom = "choose",
     .help = "to the one above or below",
     .act = move,
     .matters = has_found},
    {.name = BK_KEY_DOWN, .act = move},
    {.name = BK_KEY_PAGE_UP, .act = move},
    {.name = BK_KEY_PAGE_DOWN, .act = move},
    {.name = BK_KEY_ESCAPE,
     .written = "Escape",
     .bottom = "back",
     .help = "look for nothing",
     .act = bk_screen_back},
};

static const bk_key_table tables[] = {{.rows = rows, .count = sizeof rows / sizeof rows[0], .alone = true}};

const bk_screen_kind bk_look_for_screen = {
    .name = "Look for",
    .tables = tables,
    .table_count = 1,
    .over = true,
    .close = close_look_for,
    .read = read_look_for,
    .draw = draw_look_for,
    .take = take_typed,
    .draw_bottom = draw_typed,
};

void bk_look_for_open(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    if (!screen->wall->rail) {
        bk_wall_say(screen->wall, "Open a production first: what is looked for is looked for in it.");
        return;
    }
    bk_stack_push(screen->stack, &bk_look_for_screen, bk_alloc_clear(1, sizeof(look_for_screen)));
}
