#include "bodkin/ui/history_screen.h"

#include "bodkin/base/text.h"
#include "bodkin/ui/acts.h"
#include "bodkin/ui/history_draw.h"
#include "bodkin/ui/history_forms.h"
#include "bodkin/ui/measuring_screen.h"
#include "bodkin/ui/stack.h"

void *bk_history_screen_new(int64_t performer)
{
    return bk_history_view_new(performer);
}

static void close_view(bk_screen *screen)
{
    bk_history_view_free(screen->self);
}

static bk_status read_view(bk_screen *screen, bk_error *error)
{
    bk_status status = bk_history_view_read(screen->self, screen->wall, error);
    if (status != BK_REFUSED)
        return status;
    bk_wall_say(screen->wall, "%s", error->text);
    bk_stack_pop(screen->stack);
    return BK_OK;
}

static void draw(bk_screen *screen, const bk_paint *paint)
{
    bk_history_draw(screen->self, screen->wall, paint);
}

// ----------------------------------------------------------------------------------------------- moving

static void move(bk_screen *screen, const bk_key_row *row)
{
    bk_history_view *view = screen->self;
    bool first = view->rows.at == 0;
    if (row->name == BK_KEY_UP && first)
        view->on_head = view->history.sheet_count > 0;
    else if (!view->on_head)
        bk_cursor_key(&view->rows, row->name);
    else if (row->name != BK_KEY_UP)
        view->on_head = view->history.row_count == 0;
}

static void move_sideways(bk_screen *screen, const bk_key_row *row)
{
    bk_history_view *view = screen->self;
    if (row->name == BK_KEY_LEFT && view->sheet > 0)
        view->sheet--;
    else if (row->name == BK_KEY_RIGHT && view->sheet + 1 < view->history.sheet_count)
        view->sheet++;
}

// ----------------------------------------------------------------------------------------------- changing

static void change(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    const bk_history_view *view = screen->self;
    if (view->on_head)
        bk_history_open_day(screen);
    else
        bk_history_open_value(screen);
}

static void measure(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_measuring_open(screen, ((const bk_history_view *)screen->self)->performer);
}

static void set_limit(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    if (!((const bk_history_view *)screen->self)->closed)
        bk_history_open_limit(screen);
}

static void take_value_away(bk_screen *screen, int64_t performer)
{
    bk_error error;
    const char *sentence = NULL;
    const bk_history_view *view = screen->self;
    bk_arena *arena = bk_arena_new();
    bk_job job = bk_act_job(screen->wall, arena);
    const bk_measure_correcting correcting = {
        .performer = performer,
        .on = view->correction.on,
        .today = job.today,
        .name = view->correction.name,
        .seen = view->correction.seen,
        .wanted = {.value = BK_NO_AMOUNT},
    };
    bk_status status = bk_measure_correct(job.store, &correcting, job.made_at, arena, &sentence, &error);
    bk_act_did(screen, status, sentence, &error);
    bk_arena_free(arena);
}

static void take_sheet_away(bk_screen *screen, int64_t performer)
{
    bk_error error;
    const char *sentence = NULL;
    const bk_history_view *view = screen->self;
    bk_arena *arena = bk_arena_new();
    bk_job job = bk_act_job(screen->wall, arena);
    bk_status status = bk_sheet_take_away(job.store, performer, view->correction.on, job.today, job.made_at,
                                          arena, &sentence, &error);
    bk_act_did(screen, status, sentence, &error);
    bk_arena_free(arena);
}

static void take_away(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_history_view *view = screen->self;
    const bk_history_sheet *sheet = bk_history_chosen_sheet(view);
    const bk_history_cell *cell = bk_history_chosen_cell(view);
    char day[BK_DAY_WORDS_ROOM];
    if (!sheet || (cell && cell->value == BK_NO_AMOUNT))
        return;
    bk_history_begin_correction(view);
    bk_day_words(sheet->on, screen->wall->today, day);
    const char *question =
        cell ? bk_arena_print(view->about, "Take away the %s of %s?", view->correction.name, day)
             : bk_arena_print(view->about, "Take away the sheet of %s with its %zu measure%s?", day,
                              sheet->count, sheet->count == 1 ? "" : "s");
    bk_act_ask(screen, question, cell ? take_value_away : take_sheet_away, view->performer);
}

// ------------------------------------------------------------------------------------------------ its keys

static bool sees_values(const bk_screen *screen)
{
    return !((const bk_history_view *)screen->self)->closed;
}

static bool on_value(const bk_screen *screen)
{
    return bk_history_chosen_cell(screen->self) != NULL;
}

static bool on_day(const bk_screen *screen)
{
    const bk_history_view *view = screen->self;
    return view->on_head && bk_history_chosen_sheet(view);
}

static bool has_sheets(const bk_screen *screen)
{
    return ((const bk_history_view *)screen->self)->history.sheet_count > 0;
}

static bool has_several(const bk_screen *screen)
{
    return ((const bk_history_view *)screen->self)->history.sheet_count > 1;
}

#define TYPED(c) .name = BK_KEY_TYPED, .typed = c, .written = c

static const bk_key_row rows[] = {
    {TYPED("+"), .bottom = "new sheet", .help = "take a new sheet, in one pass", .act = measure,
     .matters = sees_values},
    {.name = BK_KEY_ENTER,
     .written = "Enter, e",
     .bottom = "correct",
     .help = "correct the value under the cursor, or add it; on the days (Up from the first measure): the "
             "day of that sheet",
     .act = change,
     .matters = on_value},
    {.name = BK_KEY_ENTER, .written = "Enter, e", .bottom = "its day", .act = change, .matters = on_day},
    {.name = BK_KEY_TYPED, .typed = "e", .act = change},
    {TYPED("-"), .bottom = "take away", .spare = true,
     .help = "take the value away, on the days the whole sheet; it asks first", .act = take_away,
     .matters = has_sheets},
    {.name = BK_KEY_LEFT,
     .written = "Left, Right",
     .bottom = "sheets",
     .help = "to a newer or an older sheet",
     .act = move_sideways,
     .matters = has_several},
    {.name = BK_KEY_RIGHT, .act = move_sideways},
    {TYPED("m"), .bottom = "what is marked", .spare = true,
     .help = "say from which change on measures are marked", .act = set_limit, .matters = has_sheets},
    {.name = BK_KEY_UP, .written = "Up, Down", .help = "to the measure above or below", .act = move},
    {.name = BK_KEY_DOWN, .act = move},
    {.name = BK_KEY_PAGE_UP, .written = "PgUp, PgDn", .help = "a page up or down", .act = move},
    {.name = BK_KEY_PAGE_DOWN, .act = move},
    {.name = BK_KEY_HOME, .written = "Home, End", .help = "to the first or the last measure", .act = move},
    {.name = BK_KEY_END, .act = move},
    {.name = BK_KEY_ESCAPE, .written = "Escape", .bottom = "back", .help = "go back", .act = bk_screen_back},
};

static const bk_key_table tables[] = {{.rows = rows, .count = sizeof rows / sizeof rows[0]}};

static const bk_meaning meanings[] = {
    {"+1.5, -2", "the change since the newest earlier sheet that has the measure"},
    {"grew, shrank", "that change is large enough to be marked: what was fitted before may not fit now"},
    {"?", "the value can hardly be true; the cursor on it shows why"},
    {"~", "rounded: it was taken in another unit"},
};

const bk_screen_kind bk_history_screen = {
    .name = "Measures",
    .tables = tables,
    .table_count = sizeof tables / sizeof tables[0],
    .meanings = meanings,
    .meaning_count = sizeof meanings / sizeof meanings[0],
    .close = close_view,
    .read = read_view,
    .draw = draw,
};
