#include "bodkin/ui/productions_screen.h"

#include <stdlib.h>

#include "bodkin/base/text.h"
#include "bodkin/ui/cursor.h"
#include "bodkin/ui/rail_screen.h"
#include "bodkin/ui/stack.h"
#include "bodkin/work/productions.h"

enum {
    HEAD_ROW = 2,
    FIRST_ROW = 3,
    ROWS_BELOW = 2,
    GAP = 3,
    DAY_COLUMNS = 15,       // "Fri 19 Mar 2027"
    COUNTDOWN_COLUMNS = 22, // "opened 1000 days ago", "117 days to opening"
    TEXT_COLUMNS = 72,      // longest comfortable line of plain text
    TEXT_MARGIN = 3
};

typedef struct productions_screen {
    bk_arena *arena; // of the list
    bk_production_list list;
    bk_cursor cursor;
} productions_screen;

void *bk_productions_screen_new(void)
{
    productions_screen *productions = bk_alloc_clear(1, sizeof *productions);
    productions->arena = bk_arena_new();
    return productions;
}

static void close_productions(bk_screen *screen)
{
    productions_screen *productions = screen->self;
    bk_arena_free(productions->arena);
    free(productions);
}

static void put_cursor_on(productions_screen *productions, const char *name)
{
    for (size_t i = 0; name && i < productions->list.count; i++)
        if (bk_same_text(productions->list.items[i].name, name))
            bk_cursor_put(&productions->cursor, i);
}

static const bk_production *chosen(const productions_screen *productions)
{
    return productions->list.count > 0 ? &productions->list.items[productions->cursor.at] : NULL;
}

static bk_status read_productions(bk_screen *screen, bk_error *error)
{
    productions_screen *productions = screen->self;
    bk_arena *arena = bk_arena_new();
    bk_production_list list = {0};
    bk_status status = bk_productions_read(screen->wall->store, arena, &list, error);
    if (status) {
        bk_arena_free(arena);
        return status;
    }
    const bk_production *before = chosen(productions);
    const char *name = before ? bk_arena_text(arena, before->name) : screen->wall->production;
    bk_arena_free(productions->arena);
    productions->arena = arena;
    productions->list = list;
    bk_cursor_fit(&productions->cursor, list.count, productions->cursor.seen);
    put_cursor_on(productions, name);
    return BK_OK;
}

// ----------------------------------------------------------------------------------------------- how to begin

typedef struct passage {
    int style;
    size_t indent;
    const char *text; // "": an empty line
} passage;

static const passage beginning[] = {
    {BK_STYLE_PLAIN, 0, "No production hangs in this workroom yet."},
    {BK_STYLE_PLAIN, 0, ""},
    {BK_STYLE_PLAIN, 0,
     "A production comes in as a folder of CSV sheets, which any spreadsheet can write. The smallest is a "
     "folder with one "
     "file, production.csv, of two lines:"},
    {BK_STYLE_PLAIN, 0, ""},
    {BK_STYLE_ACCENT, 4, "production,opens"},
    {BK_STYLE_ACCENT, 4, "The Paper Lantern,2027-03-19"},
    {BK_STYLE_PLAIN, 0, ""},
    {BK_STYLE_PLAIN, 0,
     "Put roles.csv, costumes.csv, pieces.csv and steps.csv beside it, as far as you have got; \"man 5 "
     "bodkin\" tells every "
     "sheet and column. Then bring the folder in, from a shell:"},
    {BK_STYLE_PLAIN, 0, ""},
    {BK_STYLE_ACCENT, 4, "bodkin import DIR"},
    {BK_STYLE_PLAIN, 0, ""},
    {BK_STYLE_PLAIN, 0,
     "If something in a sheet is wrong, it is told by file, line and column, and nothing is taken in. You "
     "may leave this "
     "screen open meanwhile: the production appears here by itself."},
};

static void draw_beginning(const bk_paint *paint)
{
    size_t width = paint->columns - 2 * TEXT_MARGIN;
    bk_spot spot = {HEAD_ROW, TEXT_MARGIN, width < TEXT_COLUMNS ? width : TEXT_COLUMNS};
    for (size_t i = 0; i < sizeof beginning / sizeof beginning[0]; i++) {
        bk_spot line = {spot.row, spot.column + beginning[i].indent, spot.width - beginning[i].indent};
        size_t left = paint->rows - 1 - spot.row;
        size_t used = bk_paint_whole(paint, line, left, beginning[i].style, beginning[i].text);
        spot.row += used > 0 ? used : 1;
    }
}

// -------------------------------------------------------------------------------------------------- the list

// The words of the countdown are those of the rail, which for these two numbers needs no reading.
static const char *countdown(const bk_production *production, bk_day today, bk_arena *arena)
{
    bk_rail rail = {
        .production = *production, .today = today, .days_left = (int64_t)production->opens - today};
    return bk_countdown(&rail, arena);
}

static size_t name_width(const productions_screen *productions, const bk_paint *paint)
{
    size_t most = paint->columns - 2 * TEXT_MARGIN - DAY_COLUMNS - COUNTDOWN_COLUMNS - 2 * GAP;
    size_t width = bk_text_columns("Production");
    for (size_t i = 0; i < productions->cursor.seen && productions->cursor.top + i < productions->list.count;
         i++) {
        const char *name = productions->list.items[productions->cursor.top + i].name;
        size_t wide = bk_text_columns(bk_text_safe(paint->arena, name, paint->ascii));
        width = wide > width ? wide : width;
    }
    return width < most ? width : most;
}

static void draw_columns(const bk_paint *paint, bk_spot name, int style, const char *const texts[3])
{
    bk_spot day = {name.row, name.column + name.width + GAP, DAY_COLUMNS};
    bk_spot left = {name.row, day.column + day.width + GAP, COUNTDOWN_COLUMNS};
    bk_paint_text(paint, name, style, texts[0]);
    bk_paint_right(paint, day, style, texts[1]);
    bk_paint_text(paint, left, style, texts[2]);
}

static void draw_production(const bk_screen *screen, const bk_paint *paint, bk_spot name, size_t index)
{
    const productions_screen *productions = screen->self;
    const bk_production *production = &productions->list.items[index];
    bk_day today = screen->wall->today;
    bool away = production->put_away_on != BK_NO_DAY;
    char opens[BK_DAY_WORDS_ROOM];
    const char *texts[] = {production->name, bk_day_words(production->opens, today, opens),
                           away ? "put away" : countdown(production, today, paint->arena)};
    int style = away ? BK_STYLE_DIM : BK_STYLE_PLAIN;
    if (index == productions->cursor.at) {
        style = BK_STYLE_CHOSEN;
        bk_paint_chosen(paint, name.row);
    }
    draw_columns(paint, name, style, texts);
}

static void draw_productions(bk_screen *screen, const bk_paint *paint)
{
    static const char *const heads[] = {"Production", "Opens", ""};
    productions_screen *productions = screen->self;
    bk_paint_text(paint, bk_paint_row(paint, 0), BK_STYLE_BOLD, "Productions");
    bk_term_cursor(0, 0, false);
    if (productions->list.count == 0) {
        draw_beginning(paint);
        return;
    }
    bk_cursor_fit(&productions->cursor, productions->list.count, paint->rows - FIRST_ROW - ROWS_BELOW);
    bk_spot name = {HEAD_ROW, TEXT_MARGIN, name_width(productions, paint)};
    draw_columns(paint, name, BK_STYLE_DIM, heads);
    for (size_t i = productions->cursor.top;
         i < productions->list.count && name.row + ROWS_BELOW + 1 < paint->rows; i++) {
        name.row++;
        draw_production(screen, paint, name, i);
    }
}

// -------------------------------------------------------------------------------------------------- its keys

static void move(bk_screen *screen, const bk_key_row *row)
{
    productions_screen *productions = screen->self;
    bk_cursor_key(&productions->cursor, row->name);
}

static void open_rail(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_error error;
    const bk_production *production = chosen(screen->self);
    if (!production)
        return;
    if (bk_wall_show(screen->wall, production->name, &error) == BK_OK)
        bk_stack_push(screen->stack, &bk_rail_screen, bk_rail_screen_new());
    else
        bk_wall_say(screen->wall, "%s", error.text);
}

static bool has_some(const bk_screen *screen)
{
    return chosen(screen->self) != NULL;
}

static const bk_key_row rows[] = {
    {.name = BK_KEY_ENTER,
     .written = "Enter",
     .bottom = "its rail",
     .help = "open the rail of the production under the cursor",
     .act = open_rail,
     .matters = has_some},
    {.name = BK_KEY_UP, .written = "Up, Down", .help = "to the production above or below", .act = move},
    {.name = BK_KEY_DOWN, .act = move},
    {.name = BK_KEY_PAGE_UP, .written = "PgUp, PgDn", .help = "a page up or down", .act = move},
    {.name = BK_KEY_PAGE_DOWN, .act = move},
    {.name = BK_KEY_HOME, .written = "Home, End", .help = "to the first or the last", .act = move},
    {.name = BK_KEY_END, .act = move},
    {.name = BK_KEY_TYPED,
     .typed = "?",
     .written = "?",
     .bottom = "keys",
     .help = "these keys",
     .act = bk_screen_help},
    {.name = BK_KEY_TYPED,
     .typed = "q",
     .written = "q",
     .bottom = "leave",
     .help = "leave the program",
     .act = bk_screen_leave},
};

static const bk_key_table tables[] = {{NULL, rows, sizeof rows / sizeof rows[0]}};

const bk_screen_kind bk_productions_screen = {
    .name = "Productions",
    .tables = tables,
    .table_count = 1,
    .close = close_productions,
    .read = read_productions,
    .draw = draw_productions,
};
