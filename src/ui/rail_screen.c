#include "bodkin/ui/rail_screen.h"

#include <stdlib.h>
#include <string.h>

#include "bodkin/base/list.h"
#include "bodkin/base/text.h"
#include "bodkin/ui/costume_screen.h"
#include "bodkin/ui/cursor.h"
#include "bodkin/ui/narrow.h"
#include "bodkin/ui/rail_detail.h"
#include "bodkin/ui/rail_head.h"
#include "bodkin/ui/rail_lines.h"
#include "bodkin/ui/stack.h"

// Rows: the head, the heads of the columns, the list, an empty one, the detail, an empty one where there is room, the
// bottom line.
enum {
    HEADS_ROW = BK_RAIL_HEAD_ROWS,
    FIRST_ROW = HEADS_ROW + 1,
    FEWEST_DETAIL_ROWS = 5,
    MOST_DETAIL_ROWS = 10,
    DETAIL_SHARE = 4, // of the rows one part in so many
    NUMBER_ROOM = 64
};

typedef struct rail_screen {
    bk_cursor cursor;
    BK_LIST(size_t) shown; // which costumes of the rail, in its order
    int only;              // a bk_wait_on, or BK_RAIL_SHOWS_ALL
    bk_query query;
    bool typing;           // the query, on the bottom line
    bk_findable *findable; // made when it is first needed after each reading
    bk_rail_layout layout;
    char chosen[NUMBER_ROOM]; // number of the costume under the cursor, which a reading may move
} rail_screen;

void *bk_rail_screen_new(void)
{
    rail_screen *rail = bk_alloc_clear(1, sizeof *rail);
    rail->only = BK_RAIL_SHOWS_ALL;
    return rail;
}

static void close_rail(bk_screen *screen)
{
    rail_screen *self = screen->self;
    bk_findable_free(self->findable);
    bk_list_free(&self->shown);
    free(self);
}

static const bk_rail_costume *chosen(const bk_screen *screen)
{
    const rail_screen *self = screen->self;
    return self->shown.count > 0 ? &screen->wall->rail->costumes[self->shown.items[self->cursor.at]] : NULL;
}

static void remember_chosen(const bk_screen *screen)
{
    rail_screen *self = screen->self;
    const bk_rail_costume *costume = chosen(screen);
    if (costume)
        strncpy(self->chosen, costume->record->number, NUMBER_ROOM - 1);
}

// --------------------------------------------------------------------------------------- what of it is shown

static bool narrowed(const bk_screen *screen)
{
    const rail_screen *self = screen->self;
    return self->only != BK_RAIL_SHOWS_ALL || self->query.length > 0;
}

static bool *matching(const bk_screen *screen)
{
    rail_screen *self = screen->self;
    const bk_rail *rail = screen->wall->rail;
    bool *found = bk_alloc(rail->costume_count + 1);
    memset(found, true, rail->costume_count);
    if (self->query.length == 0)
        return found;
    if (!self->findable)
        self->findable = bk_findable_new(rail);
    bk_findable_match(self->findable, &self->query, found);
    return found;
}

// Gathers the costumes that are shown now; the cursor stays on its costume where that is one of them, else it goes to
// line `at`.
static void show_matching(bk_screen *screen, size_t at)
{
    rail_screen *self = screen->self;
    const bk_rail *rail = screen->wall->rail;
    bool *found = matching(screen);
    self->shown.count = 0;
    for (size_t i = 0; i < rail->costume_count; i++) {
        if (!found[i] || (self->only != BK_RAIL_SHOWS_ALL &&
                          !bk_rail_waits_on(&rail->costumes[i], (bk_wait_on)self->only)))
            continue;
        if (strncmp(rail->costumes[i].record->number, self->chosen, NUMBER_ROOM - 1) == 0)
            at = self->shown.count;
        bk_list_add(&self->shown, i);
    }
    free(found);
    bk_cursor_fit(&self->cursor, self->shown.count, self->cursor.seen);
    bk_cursor_put(&self->cursor, at);
}

static bk_status read_rail(bk_screen *screen, bk_error *error)
{
    (void)error;
    rail_screen *self = screen->self;
    bk_findable_free(self->findable);
    self->findable = NULL;
    if (!screen->wall->rail) {
        bk_stack_pop(screen->stack);
        return BK_OK;
    }
    bk_rail_layout_measure(&self->layout, screen->wall->rail);
    show_matching(screen, self->cursor.at);
    return BK_OK;
}

// --------------------------------------------------------------------------------------------------- drawing

static void draw_nothing_shown(const bk_screen *screen, const bk_paint *paint)
{
    bk_spot spot = bk_paint_row(paint, FIRST_ROW);
    size_t all = screen->wall->rail->costume_count;
    const char *text = "No costume is listed for this production yet: name them in costumes.csv, with "
                       "roles.csv beside it, and "
                       "bring the folder in again with: bodkin import --replace DIR";
    if (all > 0)
        text =
            bk_arena_print(paint->arena, "Nothing on the rail matches. Escape shows all %zu costume%s again.",
                           all, all == 1 ? "" : "s");
    bk_paint_whole(paint, spot, FEWEST_DETAIL_ROWS, BK_STYLE_PLAIN, text);
    bk_term_cursor(FIRST_ROW, 0, false);
}

static size_t detail_rows(const bk_paint *paint)
{
    size_t rows = paint->rows / DETAIL_SHARE;
    if (rows > MOST_DETAIL_ROWS)
        return MOST_DETAIL_ROWS;
    return rows > FEWEST_DETAIL_ROWS + 2 ? rows : FEWEST_DETAIL_ROWS;
}

static void draw_list(bk_screen *screen, const bk_paint *paint)
{
    rail_screen *self = screen->self;
    bk_rail_draw_heads(paint, &self->layout, HEADS_ROW);
    for (size_t i = 0; i < self->cursor.seen && self->cursor.top + i < self->shown.count; i++) {
        size_t at = self->cursor.top + i;
        const bk_rail_costume *costume = &screen->wall->rail->costumes[self->shown.items[at]];
        bk_rail_draw_line(paint, &self->layout, screen->wall->rail, costume, FIRST_ROW + i,
                          at == self->cursor.at);
    }
}

static void draw_rail(bk_screen *screen, const bk_paint *paint)
{
    rail_screen *self = screen->self;
    size_t detail = detail_rows(paint), below = detail + 2;
    size_t detail_row = paint->rows - 1 - detail;
    bk_cursor_fit(&self->cursor, self->shown.count, paint->rows - FIRST_ROW - below);
    remember_chosen(screen);
    bk_rail_layout_fit(&self->layout, paint->columns);
    size_t last = self->cursor.top + self->cursor.seen;
    bk_rail_shown shown = {self->only, self->query.text, self->shown.count, self->cursor.top + 1,
                           last < self->shown.count ? last : self->shown.count};
    bk_rail_draw_head(paint, screen->wall->rail, &shown);
    if (self->shown.count == 0) {
        draw_nothing_shown(screen, paint);
        return;
    }
    draw_list(screen, paint);
    bk_rail_draw_detail(paint, screen->wall->rail, chosen(screen), detail_row, detail);
}

// The end of the query, as much of it as has room.
static const char *query_end(const rail_screen *self, size_t width)
{
    const char *text = self->query.text;
    while (bk_text_columns(text) > width)
        text += bk_text_fit(text, 1) > 0 ? bk_text_fit(text, 1) : bk_text_fit(text, 2);
    return text;
}

static size_t draw_query(bk_screen *screen, const bk_paint *paint, bk_spot spot)
{
    enum { QUERY_COLUMNS = 40, PROMPT_COLUMNS = 2 };
    rail_screen *self = screen->self;
    if (!self->typing)
        return 0;
    bk_paint_text(paint, spot, BK_STYLE_ACCENT, "/");
    spot.column += PROMPT_COLUMNS;
    spot.width = QUERY_COLUMNS;
    size_t used = bk_paint_text(paint, spot, BK_STYLE_PLAIN, query_end(self, QUERY_COLUMNS));
    bk_term_cursor(spot.row, spot.column + used, true);
    return PROMPT_COLUMNS + used;
}

// ------------------------------------------------------------------------------------------------- its keys

static bool take_typed(bk_screen *screen, const bk_key *key)
{
    rail_screen *self = screen->self;
    if (!self->typing)
        return false;
    if (key->name == BK_KEY_TYPED) {
        if (!bk_query_add(&self->query, key->text))
            bk_wall_say(screen->wall,
                        "That is as long as it can be: Backspace takes the last character back.");
    } else if (key->name == BK_KEY_BACKSPACE) {
        self->typing = bk_query_take_back(&self->query);
    } else {
        return false;
    }
    show_matching(screen, 0);
    return true;
}

static size_t table_now(const bk_screen *screen)
{
    return ((const rail_screen *)screen->self)->typing ? 1 : 0;
}

static void move(bk_screen *screen, const bk_key_row *row)
{
    rail_screen *self = screen->self;
    bk_cursor_key(&self->cursor, row->name);
    remember_chosen(screen);
}

static void begin_narrowing(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    ((rail_screen *)screen->self)->typing = true;
}

static void keep_narrowing(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    ((rail_screen *)screen->self)->typing = false;
}

static void end_narrowing(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    rail_screen *self = screen->self;
    self->typing = false;
    bk_query_clear(&self->query);
    show_matching(screen, 0);
}

static void show_all(bk_screen *screen, const bk_key_row *row)
{
    rail_screen *self = screen->self;
    self->only = BK_RAIL_SHOWS_ALL;
    end_narrowing(screen, row);
}

// A second press shows all again.
static void show_only(bk_screen *screen, const bk_key_row *row)
{
    rail_screen *self = screen->self;
    self->only = self->only == row->argument ? BK_RAIL_SHOWS_ALL : row->argument;
    show_matching(screen, 0);
}

static void open_costume(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    const bk_rail_costume *costume = chosen(screen);
    if (costume)
        bk_stack_push(screen->stack, &bk_costume_screen, bk_costume_screen_new(costume->record->number));
}

static void open_productions(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_stack_pop_to_lowest(screen->stack);
}

static bool has_costume(const bk_screen *screen)
{
    return chosen(screen) != NULL;
}

#define TYPED(c) .name = BK_KEY_TYPED, .typed = c, .written = c

static const bk_key_row rail_rows[] = {
    {.name = BK_KEY_ENTER,
     .written = "Enter",
     .bottom = "open",
     .help = "open the costume under the cursor",
     .act = open_costume,
     .matters = has_costume},
    {.name = BK_KEY_UP, .written = "Up, Down", .help = "to the costume above or below", .act = move},
    {.name = BK_KEY_DOWN, .act = move},
    {.name = BK_KEY_PAGE_UP, .written = "PgUp, PgDn", .help = "a page up or down", .act = move},
    {.name = BK_KEY_PAGE_DOWN, .act = move},
    {.name = BK_KEY_HOME, .written = "Home, End", .help = "to the first or the last costume", .act = move},
    {.name = BK_KEY_END, .act = move},
    {TYPED("/"), .bottom = "narrow", .help = "narrow the rail to what matches the words you type",
     .act = begin_narrowing},
    {TYPED("m"), .help = "only costumes that wait on measures; again: all", .act = show_only,
     .argument = BK_WAIT_MEASURES},
    {TYPED("c"), .help = "only those that wait on cloth and other materials", .act = show_only,
     .argument = BK_WAIT_MATERIALS},
    {TYPED("f"), .help = "only those that wait on a fitting", .act = show_only, .argument = BK_WAIT_FITTING},
    {TYPED("h"), .help = "only those that wait on hand sewing", .act = show_only, .argument = BK_WAIT_HAND},
    {TYPED("n"), .help = "only those with a step that nobody is there to do", .act = show_only,
     .argument = BK_WAIT_PEOPLE},
    {TYPED("o"), .help = "only those with a piece that is out", .act = show_only, .argument = BK_WAIT_OUT},
    {TYPED("a"), .bottom = "all again", .help = "all costumes again (so does Escape)", .act = show_all,
     .matters = narrowed},
    {.name = BK_KEY_ESCAPE, .act = show_all},
    {TYPED("p"), .bottom = "productions", .help = "to the productions of the workroom",
     .act = open_productions},
    {TYPED("?"), .bottom = "keys", .help = "these keys", .act = bk_screen_help},
    {TYPED("q"), .bottom = "leave", .help = "leave the program", .act = bk_screen_leave},
};

static const bk_key_row typing_rows[] = {
    {.name = BK_KEY_ENTER,
     .written = "Enter",
     .bottom = "keep",
     .help = "keep the rail narrowed",
     .act = keep_narrowing},
    {.name = BK_KEY_ESCAPE,
     .written = "Escape",
     .bottom = "end",
     .help = "end narrowing",
     .act = end_narrowing},
    {.name = BK_KEY_UP, .act = move},
    {.name = BK_KEY_DOWN, .act = move},
    {.name = BK_KEY_PAGE_UP, .act = move},
    {.name = BK_KEY_PAGE_DOWN, .act = move},
    {.name = BK_KEY_HOME, .act = move},
    {.name = BK_KEY_END, .act = move},
};

static const bk_key_table tables[] = {
    {NULL, rail_rows, sizeof rail_rows / sizeof rail_rows[0]},
    {"While you type after /", typing_rows, sizeof typing_rows / sizeof typing_rows[0]},
};

static const bk_meaning meanings[] = {
    {"ready", "every step is done and every piece is here"},
    {"in work", "something can be worked on now"},
    {"finishing", "only hand sewing is left to do now"},
    {"waiting", "nothing can be done now, but what is missing comes by itself"},
    {"held", "nothing can be done until somebody acts"},
    {"unlisted", "its pieces or their steps are not named yet"},
    {"can go on", "what is still open can wait until after the opening"},
    {"late", "its due day is past and it is not ready"},
    {"tight", "due within seven days, or held and due within four weeks"},
    {"seam", "stitches sewn, dots to sew; a pin where it has to wait"},
};

const bk_screen_kind bk_rail_screen = {
    .name = "Rail",
    .tables = tables,
    .table_count = sizeof tables / sizeof tables[0],
    .meanings = meanings,
    .meaning_count = sizeof meanings / sizeof meanings[0],
    .close = close_rail,
    .read = read_rail,
    .draw = draw_rail,
    .table = table_now,
    .take = take_typed,
    .draw_bottom = draw_query,
};
