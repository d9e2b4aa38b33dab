#include "bodkin/ui/bench_screen.h"

#include <stdlib.h>

#include "bodkin/base/text.h"
#include "bodkin/base/typed.h"
#include "bodkin/ui/bench_lines.h"
#include "bodkin/ui/person_pick.h"
#include "bodkin/ui/plan_acts.h"
#include "bodkin/ui/query_line.h"
#include "bodkin/ui/record_acts.h"

enum { DETAIL_ROWS = 6, TABLE_LIST = 0, TABLE_NARROWING = 1, TABLE_MINUTES = 2 };

static const bk_ledger_kind ledger_kind = {
    .columns = bk_bench_columns,
    .column_count = BK_BENCH_COLUMNS,
    .fill = bk_bench_fill,
    .family = BK_FAMILIES,
    .detail_rows = DETAIL_ROWS,
};

void *bk_bench_screen_new(void)
{
    bk_bench_view *view = bk_alloc_clear(1, sizeof *view);
    view->kind = ledger_kind;
    return bk_ledger_new(&view->kind, view);
}

static bk_bench_view *view_of(const bk_screen *screen)
{
    return bk_ledger_of(screen)->own;
}

static void close_bench(bk_screen *screen)
{
    bk_bench_view *view = view_of(screen);
    free(view->person);
    bk_tick_line_close(&view->tick);
    bk_clock_line_close(&view->clock);
    bk_ledger_close(screen);
}

static bk_status read_bench(bk_screen *screen, bk_error *error)
{
    bk_tick_line_keep(&view_of(screen)->tick, screen->wall->rail);
    return bk_ledger_read(screen, error);
}

// The step under the cursor as the plan has it; NULL: none, or the plan knows it no more.
static const bk_planned_step *chosen_step(const bk_screen *screen)
{
    const bk_ledger_line *line = bk_ledger_chosen(screen);
    return line ? bk_forecast_step(bk_wall_forecast(screen->wall), line->id) : NULL;
}

// --------------------------------------------------------------------------------------------------- drawing

static void draw_bench(bk_screen *screen, const bk_paint *paint)
{
    bk_ledger *ledger = bk_ledger_of(screen);
    bk_bench_view *view = view_of(screen);
    bool stands = bk_ledger_stands(ledger, ledger->cursor.at);
    bk_ledger_line *line = stands ? &ledger->lines[ledger->shown[ledger->cursor.at]] : NULL;
    const char *detail = line ? line->detail : NULL;
    if (line)
        line->detail = view->tick.asked ? NULL : bk_bench_detail(screen, line, paint->arena);
    bk_ledger_draw(screen, paint);
    if (line)
        line->detail = detail;
    size_t rows = bk_ledger_detail_rows(screen, paint);
    if (view->tick.asked)
        bk_tick_line_draw(paint, &view->tick, screen->wall->rail, NULL, paint->rows - 1 - rows, rows);
}

static size_t draw_bottom(bk_screen *screen, const bk_paint *paint, bk_spot spot)
{
    const bk_bench_view *view = view_of(screen);
    if (view->tick.asked)
        return bk_tick_line_draw_keys(&view->tick, paint, spot);
    if (view->typing)
        return bk_query_prompt_draw(&view->typed, paint, spot, "How many minutes have you?");
    return bk_ledger_draw_bottom(screen, paint, spot);
}

static bool moves(bk_screen *screen)
{
    bk_error error;
    if (!bk_clock_line_moves(screen->wall, &view_of(screen)->clock))
        return false;
    if (bk_ledger_read(screen, &error))
        bk_wall_say(screen->wall, "%s", error.text);
    return true;
}

// ------------------------------------------------------------------------------------------------- its keys

static size_t table_now(const bk_screen *screen)
{
    return view_of(screen)->typing ? TABLE_MINUTES : bk_ledger_table(screen);
}

static bool take(bk_screen *screen, const bk_key *key)
{
    bk_bench_view *view = view_of(screen);
    bool typing = true; // Backspace on an empty line ends nothing
    if (view->typing)
        return bk_query_line_take(&view->typed, &typing, key, screen->wall);
    return bk_ledger_take(screen, key) || bk_tick_line_take(screen, &view->tick, key);
}

static void open_costume(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    const bk_planned_step *step = chosen_step(screen);
    if (step)
        bk_plan_open_costume(screen, step);
}

static void tick(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    const bk_ledger_line *line = bk_ledger_chosen(screen);
    if (line)
        bk_tick_line_ask_one(&view_of(screen)->tick, BK_STEP_DONE, screen->wall, line->id);
}

static void start_or_stop(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    const bk_ledger_line *line = bk_ledger_chosen(screen);
    if (line)
        bk_clock_line_toggle(screen, &view_of(screen)->clock, line->id);
}

static void show_person(bk_screen *screen, const char *name)
{
    bk_bench_view *view = view_of(screen);
    free(view->person);
    view->person = name ? bk_text_copy(name) : NULL;
    view->begun = true;
    screen->stale = true;
}

static void ask_person(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_person_pick_open(screen, "Whose bench?", bk_wall_forecast(screen->wall), view_of(screen)->person,
                        show_person);
}

static void ask_minutes(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_bench_view *view = view_of(screen);
    view->typing = true;
    bk_query_clear(&view->typed);
}

static void leave_minutes(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    view_of(screen)->typing = false;
}

// Nothing typed: all steps again.
static void take_minutes(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_bench_view *view = view_of(screen);
    int64_t minutes = 0;
    if (view->typed.length > 0 && !bk_minutes_typed(view->typed.text, &minutes)) {
        bk_arena *arena = bk_arena_new();
        bk_wall_say(screen->wall, "%s is no length of time; type it such as 45 or 1h30.",
                    bk_text_safe(arena, view->typed.text, screen->wall->ascii));
        bk_arena_free(arena);
        return;
    }
    view->minutes = minutes;
    view->typing = false;
    bk_ledger_of(screen)->stays = true;
    bk_cursor_put(&bk_ledger_of(screen)->cursor, 0);
    screen->stale = true;
}

static void jot(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    const bk_planned_step *step = chosen_step(screen);
    const bk_rail *rail = screen->wall->rail;
    if (!step)
        return;
    if (rail && rail->production.id == step->production_id) {
        bk_act_add_note(screen, step->costume, step->piece, step->key);
        return;
    }
    bk_arena *arena = bk_arena_new();
    bk_wall_say(screen->wall, "It is of %s: Enter opens it there, and j notes.",
                bk_text_safe(arena, step->production, screen->wall->ascii));
    bk_arena_free(arena);
}

static const bk_key_row rows[] = {
    {.name = BK_KEY_ENTER,
     .written = "Enter",
     .bottom = "open",
     .help = "open the costume that the step under the cursor is for",
     .act = open_costume,
     .matters = bk_ledger_has_line},
    {.name = BK_KEY_TYPED,
     .typed = "t",
     .written = "t",
     .bottom = "clock",
     .help = "start the clock for the step under the cursor; where it runs, stop it",
     .act = start_or_stop,
     .matters = bk_ledger_has_line},
    {.name = BK_KEY_TYPED,
     .typed = "x",
     .written = "x",
     .bottom = "done",
     .help = "mark the step under the cursor done; it asks",
     .act = tick,
     .matters = bk_ledger_has_line},
    {.name = BK_KEY_TYPED,
     .typed = "m",
     .written = "m",
     .bottom = "minutes",
     .help = "say how many minutes there are: what fits comes first; nothing typed: all again",
     .act = ask_minutes},
    {.name = BK_KEY_TYPED,
     .typed = "p",
     .written = "p",
     .bottom = "person",
     .help = "choose whose bench is shown, or everybody's",
     .act = ask_person},
    {.name = BK_KEY_TYPED,
     .typed = "j",
     .written = "j",
     .help = "jot a note about the step under the cursor",
     .act = jot,
     .matters = bk_ledger_has_line},
    BK_LEDGER_ROWS,
};

static const bk_key_row minutes_rows[] = {
    {.name = BK_KEY_ENTER,
     .written = "Enter",
     .bottom = "show",
     .help = "what fits into that comes first: 30, 1h30; nothing typed: all again",
     .act = take_minutes},
    {.name = BK_KEY_ESCAPE,
     .written = "Escape",
     .bottom = "back",
     .help = "leave it as it was",
     .act = leave_minutes},
};

static const bk_key_table tables[] = {
    [TABLE_LIST] = {.rows = rows, .count = sizeof rows / sizeof rows[0]},
    [TABLE_NARROWING] = BK_LEDGER_TYPING_TABLE,
    [TABLE_MINUTES] = {"While minutes are asked for", minutes_rows,
                       sizeof minutes_rows / sizeof minutes_rows[0], .alone = true},
    BK_TICK_LINE_TABLE,
};

static const bk_meaning meanings[] = {
    {"in hand", "somebody's clock runs for it"},
    {"late", "its costume is expected to be finished after its due day"},
    {"tight", "little time is left before it must be begun"},
    {"today", "the plan has it today"},
    {"awaited", "somebody else can go on only when it is done"},
    {"in time", "it can be done now, and need not be yet"},
    {"can wait", "it can wait until after the opening"},
    {"with", "steps with the same letter are of one kind and one cloth: best done together"},
    {"takes", "as the plan counts it, by the workroom's own record where there is enough of it"},
};

const bk_screen_kind bk_bench_screen = {
    .name = "Bench",
    .tables = tables,
    .table_count = sizeof tables / sizeof tables[0],
    .meanings = meanings,
    .meaning_count = sizeof meanings / sizeof meanings[0],
    .close = close_bench,
    .read = read_bench,
    .draw = draw_bench,
    .moves = moves,
    .table = table_now,
    .take = take,
    .draw_bottom = draw_bottom,
};
