#include "bodkin/ui/costume_screen.h"

#include <stdlib.h>
#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/ui/costume_acts.h"
#include "bodkin/ui/costume_draw.h"
#include "bodkin/ui/costume_head.h"
#include "bodkin/ui/stack.h"

// Rows: the head with an empty one, the lines, an empty one, the detail, the bottom line.
enum { DETAIL_SHARE = 6, FEWEST_DETAIL_ROWS = 4, MOST_DETAIL_ROWS = 8 };

void *bk_costume_screen_at(const char *number, bk_family family, int64_t id)
{
    bk_costume_view *view = bk_alloc_clear(1, sizeof *view);
    view->number = bk_text_copy(number);
    view->arena = bk_arena_new();
    view->beside_arena = bk_arena_new();
    view->chosen_family = family;
    view->chosen_id = id;
    return view;
}

void *bk_costume_screen_new(const char *number)
{
    return bk_costume_screen_at(number, BK_FAMILIES, 0);
}

static void close_costume(bk_screen *screen)
{
    bk_costume_view *view = screen->self;
    bk_tick_line_close(&view->tick);
    bk_clock_line_close(&view->clock);
    bk_arena_free(view->arena);
    bk_arena_free(view->beside_arena);
    free(view->number);
    free(view->chosen_name);
    free(view);
}

// ------------------------------------------------------------------------------------------------- reading

static void make_lines(bk_screen *screen, const bk_rail_costume *costume, size_t columns)
{
    bk_costume_view *view = screen->self;
    bk_arena_reset(view->arena);
    view->columns = columns;
    view->lines =
        bk_costume_lines_make(screen->wall->rail, costume, &view->beside, bk_wall_forecast(screen->wall),
                              columns, screen->wall->ascii, view->arena);
    bk_costume_find_chosen(screen);
}

static void find_saved(const bk_screen *screen)
{
    bk_costume_view *view = screen->self;
    bk_family family = screen->wall->saved_family;
    if (screen->wall->saved_id == 0 || (family != BK_PIECES && family != BK_STEPS && family != BK_NEEDS))
        return;
    view->chosen_family = family;
    view->chosen_id = screen->wall->saved_id;
}

static void keep_number(bk_costume_view *view, const bk_costume *costume)
{
    free(view->number);
    view->number = bk_text_copy(costume->number);
    view->id = costume->id;
}

// Where it cannot be read, nothing is shown beside: what was read before may be of steps that are gone.
static bk_status read_beside(bk_screen *screen, bk_error *error)
{
    bk_costume_view *view = screen->self;
    bk_arena_reset(view->beside_arena);
    bk_status status = bk_costume_beside_read(screen->wall->store, screen->wall->rail->production.id,
                                              view->beside_arena, &view->beside, error);
    if (status)
        view->beside = (bk_costume_beside){0};
    return status ? status : bk_clock_line_read(screen->wall, &view->clock, error);
}

// Whoever has just taken it away is told that already.
static void take_off(bk_screen *screen)
{
    const bk_costume_view *view = screen->self;
    if (screen->wall->rail && screen->wall->message[0] == '\0') {
        bk_arena *arena = bk_arena_new();
        bk_wall_say(screen->wall, "%s no longer hangs on the rail.",
                    bk_text_safe(arena, view->number, screen->wall->ascii));
        bk_arena_free(arena);
    }
    bk_stack_pop(screen->stack);
}

static bk_status read_costume(bk_screen *screen, bk_error *error)
{
    bk_costume_view *view = screen->self;
    const bk_rail_costume *costume = bk_costume_shown(screen);
    if (!costume) {
        take_off(screen);
        return BK_OK;
    }
    keep_number(view, costume->record);
    bk_status status = read_beside(screen, error);
    bk_tick_line_keep(&view->tick, screen->wall->rail);
    find_saved(screen);
    make_lines(screen, costume, view->columns > 0 ? view->columns : bk_term_columns());
    return status;
}

// --------------------------------------------------------------------------------------------------- drawing

static size_t detail_rows(const bk_paint *paint)
{
    size_t rows = paint->rows / DETAIL_SHARE;
    return rows < FEWEST_DETAIL_ROWS ? FEWEST_DETAIL_ROWS : rows > MOST_DETAIL_ROWS ? MOST_DETAIL_ROWS : rows;
}

// While a step is asked about, the cursor stands on it.
static void follow_tick(const bk_screen *screen)
{
    bk_costume_view *view = screen->self;
    size_t step = bk_tick_line_step(&view->tick, screen->wall->rail);
    if (step == BK_NO_INDEX)
        return;
    view->chosen_family = BK_STEPS;
    view->chosen_id = screen->wall->rail->steps[step].id;
    bk_costume_find_chosen(screen);
}

static void place_cursor(const bk_screen *screen, const bk_paint *paint, size_t head_rows)
{
    bk_costume_view *view = screen->self;
    bool begins = view->place.seen == 0;
    view->place.seen = paint->rows - 1 - detail_rows(paint) - 1 - head_rows;
    if (begins)
        bk_costume_place_begin(&view->place, &view->lines);
    bk_costume_place_fit(&view->place, &view->lines);
    bk_costume_remember_chosen(screen);
}

static void draw_lines(const bk_screen *screen, const bk_paint *paint, const bk_costume_sight *sight,
                       size_t row)
{
    const bk_costume_view *view = screen->self;
    size_t chosen = bk_costume_stop_chosen(screen)->line;
    size_t end = view->place.top + view->place.seen;
    for (size_t i = view->place.top; i < view->lines.count && i < end; i++, row++)
        bk_costume_line_draw(paint, sight, &view->lines, i, row, i == chosen);
}

static void draw_costume(bk_screen *screen, const bk_paint *paint)
{
    bk_costume_view *view = screen->self;
    const bk_rail *rail = screen->wall->rail;
    const bk_rail_costume *costume = bk_costume_shown(screen);
    const bk_costume_sight sight = {rail, costume, &view->beside, bk_wall_forecast(screen->wall)};
    if (view->columns != paint->columns)
        make_lines(screen, costume, paint->columns);
    follow_tick(screen);
    bk_term_cursor(0, 0, false);
    bk_costume_head head = {view->place.at == 0, bk_clock_line_words(&view->clock, paint->arena),
                            bk_forecast_costume(sight.forecast, costume->record->id),
                            bk_reckoning_words(screen->wall->reckoning, paint->arena)};
    size_t row = bk_costume_head_draw(paint, rail, costume, head);
    place_cursor(screen, paint, row);
    draw_lines(screen, paint, &sight, row);
    size_t below = detail_rows(paint), below_row = paint->rows - 1 - below;
    if (view->tick.asked)
        bk_tick_line_draw(paint, &view->tick, rail, NULL, below_row, below);
    else
        bk_costume_stop_draw(paint, &sight, bk_costume_stop_chosen(screen), below_row, below);
}

static size_t draw_bottom(bk_screen *screen, const bk_paint *paint, bk_spot spot)
{
    const bk_costume_view *view = screen->self;
    if (view->tick.asked)
        return bk_tick_line_draw_keys(&view->tick, paint, spot);
    return view->adding ? bk_costume_add_draw(screen, paint, spot) : 0;
}

// ------------------------------------------------------------------------------------------------- its keys

static bool take_asked(bk_screen *screen, const bk_key *key)
{
    bk_costume_view *view = screen->self;
    return bk_tick_line_take(screen, &view->tick, key) || bk_costume_add_take(screen, key);
}

static void move(bk_screen *screen, const bk_key_row *row)
{
    bk_costume_view *view = screen->self;
    bk_costume_place_key(&view->place, &view->lines, row->name);
    bk_costume_remember_chosen(screen);
}

static bool clock_moves(bk_screen *screen)
{
    bk_costume_view *view = screen->self;
    return bk_clock_line_moves(screen->wall, &view->clock);
}

static bool stands_on(const bk_screen *screen, bk_family family)
{
    return bk_costume_stop_chosen(screen)->family == family;
}

static bool on_costume(const bk_screen *screen)
{
    return stands_on(screen, BK_COSTUMES);
}

static bool on_step(const bk_screen *screen)
{
    return stands_on(screen, BK_STEPS);
}

static bool on_need(const bk_screen *screen)
{
    return stands_on(screen, BK_NEEDS);
}

static bool on_open_step(const bk_screen *screen)
{
    return on_step(screen) && !screen->wall->rail->rows.steps[bk_costume_stop_chosen(screen)->step].done;
}

static bool on_done_step(const bk_screen *screen)
{
    return on_step(screen) && !on_open_step(screen);
}

static bool on_bare_piece(const bk_screen *screen)
{
    const bk_costume_stop *stop = bk_costume_stop_chosen(screen);
    return stop->family == BK_PIECES && screen->wall->rail->rows.pieces[stop->piece].steps.count == 0;
}

static bool on_piece(const bk_screen *screen)
{
    return stands_on(screen, BK_PIECES) && !on_bare_piece(screen);
}

static bool noted(const bk_screen *screen)
{
    return !on_need(screen) && !on_bare_piece(screen);
}

#define TYPED(c) .name = BK_KEY_TYPED, .typed = c, .written = c

static const bk_key_row rows[] = {
    {.name = BK_KEY_ENTER,
     .written = "Enter",
     .bottom = "change",
     .help = "change what is under the cursor: the costume, a piece, a step, what a step needs (so does e)",
     .act = bk_costume_change},
    {TYPED("e"), .act = bk_costume_change},
    {TYPED("x"), .bottom = "done", .help = "mark the step done, or open a done one again; it asks first",
     .act = bk_costume_tick, .matters = on_open_step},
    {TYPED("x"), .bottom = "open again", .act = bk_costume_tick, .matters = on_done_step},
    {TYPED("+"), .bottom = "add", .help = "add a piece, a step behind this one, or what the step needs",
     .act = bk_costume_add},
    {TYPED("y"), .bottom = "order of work", .help = "use an order of work on the piece: its steps are added",
     .act = bk_costume_use_work, .matters = on_bare_piece},
    {TYPED("Y"), .help = "keep the steps of the piece as an order of work, for other pieces",
     .act = bk_costume_keep_work},
    {TYPED("w"), .bottom = "where", .help = "where the piece is, or whom it is out with and until when",
     .act = bk_costume_where, .matters = on_piece},
    {TYPED("t"), .bottom = "clock", .help = "start the clock for the step, or stop it",
     .act = bk_costume_clock, .matters = on_open_step},
    {TYPED("b"), .bottom = "book", .help = "book a fitting", .act = bk_costume_book, .matters = on_costume},
    {TYPED("j"), .bottom = "note", .help = "jot a note about the step, the piece or the costume",
     .act = bk_costume_note, .matters = noted},
    {TYPED("d"), .bottom = "what decides", .spare = true, .help = "what decides the day it is finished",
     .act = bk_costume_chain, .matters = on_costume},
    {TYPED("-"), .bottom = "take away", .help = "take away what is under the cursor; it asks first",
     .act = bk_costume_take_away, .matters = on_need},
    {.name = BK_KEY_TYPED,
     .typed = "[",
     .written = "[ ]",
     .help = "move what is under the cursor earlier or later in its list",
     .act = bk_costume_move,
     .argument = -1},
    {.name = BK_KEY_TYPED, .typed = "]", .act = bk_costume_move, .argument = 1},
    {.name = BK_KEY_UP,
     .written = "Up, Down",
     .help = "to the line above or below; the top one is the costume",
     .act = move},
    {.name = BK_KEY_DOWN, .act = move},
    {.name = BK_KEY_PAGE_UP, .written = "PgUp, PgDn", .help = "a page up or down", .act = move},
    {.name = BK_KEY_PAGE_DOWN, .act = move},
    {.name = BK_KEY_HOME,
     .written = "Home, End",
     .help = "to the costume itself, or to the last line",
     .act = move},
    {.name = BK_KEY_END, .act = move},
    {.name = BK_KEY_ESCAPE,
     .written = "Escape",
     .bottom = "back",
     .help = "back to the rail, at the same place",
     .act = bk_screen_back},
};

static const bk_key_table tables[] = {
    {.rows = rows, .count = sizeof rows / sizeof rows[0]},
    BK_TICK_LINE_TABLE,
};

static const bk_meaning meanings[] = {
    {"day and name",
     "of a done step when it was done and by whom, of an open one when it is planned and who does it"},
    {"done", "the step is done, or a fitting of it fits"},
    {"next", "every step it comes after is done: it can be begun unless it waits"},
    {"fits", "done because its fitting fits"},
    {"can wait", "it can be done after the opening"},
};

const bk_screen_kind bk_costume_screen = {
    .name = "Costume",
    .tables = tables,
    .table_count = sizeof tables / sizeof tables[0],
    .meanings = meanings,
    .meaning_count = sizeof meanings / sizeof meanings[0],
    .close = close_costume,
    .read = read_costume,
    .draw = draw_costume,
    .moves = clock_moves,
    .take = take_asked,
    .draw_bottom = draw_bottom,
};
