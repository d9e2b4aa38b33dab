#include "bodkin/ui/rail_screen.h"

#include <stdlib.h>

#include "bodkin/base/text.h"
#include "bodkin/ui/booking.h"
#include "bodkin/ui/chain_screen.h"
#include "bodkin/ui/costume_screen.h"
#include "bodkin/ui/query_line.h"
#include "bodkin/ui/rail_acts.h"
#include "bodkin/ui/rail_detail.h"
#include "bodkin/ui/rail_head.h"
#include "bodkin/ui/rail_view.h"
#include "bodkin/ui/record_acts.h"
#include "bodkin/ui/stack.h"

// Rows: the head, the heads of the columns, the list, an empty one, the detail, an empty one where there is room, the
// bottom line.
enum {
    HEADS_ROW = BK_RAIL_HEAD_ROWS,
    FIRST_ROW = HEADS_ROW + 1,
    FEWEST_DETAIL_ROWS = 7,
    MOST_DETAIL_ROWS = 14,
    DETAIL_SHARE = 3, // of the rows one part in so many
};

void *bk_rail_screen_new(void)
{
    bk_rail_view *rail = bk_alloc_clear(1, sizeof *rail);
    rail->only = BK_RAIL_SHOWS_ALL;
    return rail;
}

static void close_rail(bk_screen *screen)
{
    bk_rail_view *self = screen->self;
    bk_findable_free(self->findable);
    bk_list_free(&self->shown);
    bk_tick_line_close(&self->tick);
    bk_clock_line_close(&self->clock);
    free(self);
}

const char *bk_rail_screen_number(const bk_screen *screen)
{
    return ((const bk_rail_view *)screen->self)->chosen;
}

// ------------------------------------------------------------------------------------------------- reading

// What is asked about a costume that is no longer shown is asked no more.
static void keep_tick(bk_screen *screen)
{
    bk_rail_view *self = screen->self;
    const bk_rail_costume *costume = bk_rail_chosen(screen);
    if (self->tick.asked && (!costume || costume->record->id != self->chosen_id))
        bk_tick_line_close(&self->tick);
}

static bk_status read_rail(bk_screen *screen, bk_error *error)
{
    bk_rail_view *self = screen->self;
    bk_findable_free(self->findable);
    self->findable = NULL;
    bk_tick_line_keep(&self->tick, screen->wall->rail);
    if (!screen->wall->rail) {
        bk_stack_pop(screen->stack);
        return BK_OK;
    }
    bk_rail_layout_measure(&self->layout, screen->wall->rail, bk_wall_forecast(screen->wall),
                           bk_wall_busy(screen->wall));
    bk_rail_show_read(screen);
    keep_tick(screen);
    return bk_clock_line_read(screen->wall, &self->clock, error);
}

// --------------------------------------------------------------------------------------------------- drawing

static void draw_nothing_shown(const bk_screen *screen, const bk_paint *paint)
{
    bk_spot spot = bk_paint_row(paint, FIRST_ROW);
    size_t all = screen->wall->rail->costume_count;
    const char *text =
        "No costume hangs on this rail yet. + hangs one; it names the role that wears it. Roles and who "
        "plays them stand under Cast, which C opens.";
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
    bk_rail_view *self = screen->self;
    const bk_forecast *forecast = bk_wall_forecast(screen->wall);
    bk_rail_draw_heads(paint, &self->layout, HEADS_ROW);
    for (size_t i = 0; i < self->cursor.seen && self->cursor.top + i < self->shown.count; i++) {
        size_t at = self->cursor.top + i;
        const bk_rail_costume *costume = &screen->wall->rail->costumes[self->shown.items[at]];
        bk_rail_draw_line(paint, &self->layout, screen->wall->rail, forecast, costume, FIRST_ROW + i,
                          at == self->cursor.at);
    }
}

static void draw_rail(bk_screen *screen, const bk_paint *paint)
{
    bk_rail_view *self = screen->self;
    size_t detail = detail_rows(paint), below = detail + 2;
    size_t detail_row = paint->rows - 1 - detail;
    bk_cursor_fit(&self->cursor, self->shown.count, paint->rows - FIRST_ROW - below);
    bk_rail_remember_chosen(screen);
    bk_rail_layout_fit(&self->layout, paint->columns);
    size_t last = self->cursor.top + self->cursor.seen;
    bk_rail_shown shown = {.only = self->only,
                           .query = self->query.text,
                           .shown = self->shown.count,
                           .first = self->cursor.top + 1,
                           .last = last < self->shown.count ? last : self->shown.count,
                           .clock = bk_clock_line_words(&self->clock, paint->arena),
                           .forecast = bk_wall_forecast(screen->wall),
                           .reckons = bk_reckoning_words(screen->wall->reckoning, paint->arena)};
    bk_rail_draw_head(paint, screen->wall->rail, &shown);
    if (self->shown.count == 0) {
        draw_nothing_shown(screen, paint);
        return;
    }
    draw_list(screen, paint);
    if (self->tick.asked)
        bk_tick_line_draw(paint, &self->tick, screen->wall->rail, bk_rail_chosen(screen), detail_row, detail);
    else
        bk_rail_draw_detail(paint, screen->wall, bk_rail_chosen(screen), detail_row, detail);
}

static size_t draw_bottom(bk_screen *screen, const bk_paint *paint, bk_spot spot)
{
    const bk_rail_view *self = screen->self;
    if (self->tick.asked)
        return bk_tick_line_draw_keys(&self->tick, paint, spot);
    return self->typing ? bk_query_line_draw(&self->query, paint, spot) : 0;
}

// ------------------------------------------------------------------------------------------------- its keys

static bool take_typed(bk_screen *screen, const bk_key *key)
{
    bk_rail_view *self = screen->self;
    self->touched = true;
    if (!self->typing)
        return bk_tick_line_take(screen, &self->tick, key);
    if (!bk_query_line_take(&self->query, &self->typing, key, screen->wall))
        return false;
    bk_rail_show_matching(screen, 0);
    return true;
}

static size_t table_now(const bk_screen *screen)
{
    return ((const bk_rail_view *)screen->self)->typing ? 1 : 0;
}

static void move(bk_screen *screen, const bk_key_row *row)
{
    bk_rail_view *self = screen->self;
    bk_cursor_key(&self->cursor, row->name);
    bk_rail_remember_chosen(screen);
}

static void begin_narrowing(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    ((bk_rail_view *)screen->self)->typing = true;
}

static void keep_narrowing(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    ((bk_rail_view *)screen->self)->typing = false;
}

static void end_narrowing(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_rail_view *self = screen->self;
    self->typing = false;
    bk_query_clear(&self->query);
    bk_rail_show_matching(screen, 0);
}

static void show_all(bk_screen *screen, const bk_key_row *row)
{
    bk_rail_view *self = screen->self;
    self->only = BK_RAIL_SHOWS_ALL;
    end_narrowing(screen, row);
}

// A second press shows all again.
static void show_only(bk_screen *screen, const bk_key_row *row)
{
    bk_rail_view *self = screen->self;
    self->only = self->only == row->argument ? BK_RAIL_SHOWS_ALL : row->argument;
    bk_rail_show_matching(screen, 0);
}

static void open_costume(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    const bk_rail_costume *costume = bk_rail_chosen(screen);
    if (costume)
        bk_stack_push(screen->stack, &bk_costume_screen, bk_costume_screen_new(costume->record->number));
}

static void ask_step(bk_screen *screen, const bk_key_row *row)
{
    const bk_rail_costume *costume = bk_rail_chosen(screen);
    bk_rail_view *self = screen->self;
    if (costume)
        bk_rail_ask_step(screen, &self->tick, &self->clock, costume, (bk_step_act)row->argument, self->only);
}

// Stops the clock wherever it runs; else asks for which step it starts.
static void start_or_stop_clock(bk_screen *screen, const bk_key_row *row)
{
    const bk_rail_view *self = screen->self;
    if (self->clock.runs)
        bk_clock_line_toggle(screen, &self->clock, bk_clock_line_step(&self->clock));
    else
        ask_step(screen, row);
}

static void add_costume(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_rail_add_costume(screen, bk_rail_chosen(screen));
}

static void change_costume(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    if (bk_rail_chosen(screen))
        bk_act_change_record(screen, BK_COSTUMES, bk_rail_chosen(screen)->record->id);
}

static void take_costume_away(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    if (bk_rail_chosen(screen))
        bk_rail_take_costume_away(screen, bk_rail_chosen(screen));
}

static void jot_note(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    if (bk_rail_chosen(screen))
        bk_act_add_note(screen, bk_rail_chosen(screen)->record->number, NULL, NULL);
}

static void book_fitting(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    if (bk_rail_chosen(screen))
        bk_booking_of(screen, bk_rail_chosen(screen), BK_NO_INDEX, BK_NO_INDEX);
}

static void show_chain(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    if (bk_rail_chosen(screen))
        bk_stack_push(screen->stack, &bk_chain_screen,
                      bk_chain_screen_new(bk_rail_chosen(screen)->record->id));
}

static bool clock_moves(bk_screen *screen)
{
    bk_rail_view *self = screen->self;
    return bk_clock_line_moves(screen->wall, &self->clock);
}

static bool has_costume(const bk_screen *screen)
{
    return bk_rail_chosen(screen) != NULL;
}

#define TYPED(c) .name = BK_KEY_TYPED, .typed = c, .written = c

static const bk_key_row rail_rows[] = {
    {.name = BK_KEY_ENTER,
     .written = "Enter",
     .bottom = "open",
     .help = "open the costume under the cursor",
     .act = open_costume,
     .matters = has_costume},
    {TYPED("x"), .bottom = "done", .help = "mark its next step done; it asks which", .act = ask_step,
     .argument = BK_STEP_DONE, .matters = has_costume},
    {TYPED("b"), .bottom = "book", .help = "book a fitting for who wears it", .act = book_fitting,
     .matters = has_costume},
    {TYPED("t"), .help = "start the clock for its next step; while it runs, stop it",
     .act = start_or_stop_clock, .argument = BK_STEP_CLOCK},
    {TYPED("d"), .bottom = "what decides", .spare = true, .help = "what decides the day it is finished",
     .act = show_chain, .matters = has_costume},
    {TYPED("j"), .bottom = "note", .help = "jot a note about it", .act = jot_note, .matters = has_costume},
    {TYPED("+"), .bottom = "new", .help = "hang a new costume", .act = add_costume},
    {TYPED("e"), .help = "change its number, role, title, due day or note", .act = change_costume},
    {TYPED("-"), .help = "take it away; it asks first", .act = take_costume_away},
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
     .matters = bk_rail_narrowed},
    {.name = BK_KEY_ESCAPE, .act = show_all},
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
    {.rows = rail_rows, .count = sizeof rail_rows / sizeof rail_rows[0]},
    {"While you type after /", typing_rows, sizeof typing_rows / sizeof typing_rows[0], .alone = true},
    BK_TICK_LINE_TABLE,
};

static const bk_meaning meanings[] = {
    {"ready", "every step is done and every piece is here"},
    {"in work", "something can be worked on now"},
    {"finishing", "only hand sewing is left to do now"},
    {"waiting", "nothing can be done now, but what is missing comes by itself"},
    {"held", "nothing can be done until somebody acts"},
    {"unlisted", "its pieces or their steps are not named yet"},
    {"can go on", "what is still open can wait until after the opening"},
    {"late",
     "expected after its due day, more likely late than not, or never done; where no day is known, its "
     "due day is past"},
    {"tight",
     "at most one day in hand, or a chance below 85 %; where no day is known, due within seven days, "
     "or held and due within four weeks"},
    {"in time", "ready, or expected with days in hand"},
    {"expected", "the day on which all is done that cannot wait, with the hands and hours there are"},
    {"in hand", "working days from then to the due day"},
    {"chance, odds", "of being done by the due day, as the times of the steps vary"},
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
    .moves = clock_moves,
    .table = table_now,
    .take = take_typed,
    .draw_bottom = draw_bottom,
};
