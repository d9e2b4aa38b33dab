#include "bodkin/ui/planned_day_screen.h"

#include "bodkin/base/text.h"
#include "bodkin/sheet/wait_words.h"
#include "bodkin/ui/cells.h"
#include "bodkin/ui/forecast_told.h"
#include "bodkin/ui/ledger.h"
#include "bodkin/ui/plan_acts.h"
#include "bodkin/ui/plan_dates.h"
#include "bodkin/work/timetable.h"

enum { DETAIL_ROWS = 3, NO_WORK = -1 };

enum cell { TIME, STEP, COSTUME, DUE, CELLS };

static const bk_list_column columns[CELLS] = {
    [TIME] = {.head = "When", .least = 11, .most = 11, .gap = 2},
    [STEP] = {.head = "What", .least = 30, .most = 90, .gap = 2, .fills = true},
    [COSTUME] = {.head = "Costume", .least = 16, .most = 34, .gap = 2},
    [DUE] = {.head = "Due", .least = 10, .most = 15, .right = true},
};

typedef struct planned_day {
    bk_ledger_kind kind;
    bk_day day;
} planned_day;

// ---------------------------------------------------------------------------------------------------- its lines

typedef struct filling {
    const bk_forecast *forecast;
    bk_ledger *ledger;
    bk_day day;
} filling;

static const char *detail_of(const filling *at, const bk_planned_stretch *stretch)
{
    bk_arena *arena = at->ledger->arena;
    const bk_planned_step *step = &at->forecast->steps[stretch->step];
    return bk_arena_print(arena, "%s/%s: %s (%s), of %s\n%s; %s", step->piece, step->key, step->title,
                          step->piece_title, step->production, bk_cell_minutes(step->minutes, arena),
                          bk_planned_sentence(at->forecast, step, arena));
}

static void add_stretch(const filling *at, const bk_planned_stretch *stretch)
{
    bk_arena *arena = at->ledger->arena;
    const bk_planned_step *step = &at->forecast->steps[stretch->step];
    const bk_ledger_line line = {
        // The second stretch of a step on one day is another line than the first.
        .id = -(step->id * BK_DAY_MINUTES + stretch->from) - 1,
        .family = BK_STEPS,
        .cells = {[TIME] = bk_arena_print(arena, "%s-%s", bk_cell_time(stretch->from, arena),
                                          bk_cell_time(stretch->to, arena)),
                  [STEP] = bk_arena_print(arena, "%s %s%s", step->piece, step->title,
                                          stretch->again ? " (taken up again)" : ""),
                  [COSTUME] = step->costume ? bk_arena_print(arena, "%s %s", step->costume,
                                                             step->role ? step->role : "")
                                            : NULL,
                  [DUE] = bk_cell_day(step->due, at->forecast->today, arena)},
        .detail = detail_of(at, stretch),
        .argument = step->id,
    };
    bk_ledger_add(at->ledger, &line);
}

static void add_person(const filling *at, size_t person)
{
    bk_arena *arena = at->ledger->arena;
    const char *name = at->forecast->people[person].name;
    bk_plan_share share = bk_plan_share_of(at->forecast, person, at->day);
    const char *load = bk_plan_load(&share, arena);
    if (!load && share.count == 0)
        return;
    const bk_ledger_line heading = {
        .cells = {bk_arena_print(arena, "%s: %s", name, load ? load : "no hours")}};
    bk_ledger_add(at->ledger, &heading);
    for (size_t i = 0; i < share.count; i++)
        add_stretch(at, &share.stretches[i]);
    const bk_ledger_line nothing = {.id = NO_WORK - (int64_t)person,
                                    .family = BK_PEOPLE,
                                    .cells = {[TIME] = "nothing yet"},
                                    .style = BK_STYLE_DIM};
    if (share.count == 0)
        bk_ledger_add(at->ledger, &nothing);
}

static bk_status fill(bk_screen *screen, bk_ledger *ledger, bk_error *error)
{
    (void)error;
    const bk_wall *wall = screen->wall;
    planned_day *view = ledger->own;
    bk_arena *arena = ledger->arena;
    const filling at = {bk_wall_forecast(wall), ledger, view->day};
    ledger->title = bk_arena_print(arena, "%s, %s", bk_cell_day(view->day, wall->today, arena),
                                   bk_days_away(view->day, wall->today, arena));
    view->kind.empty = "Nobody has hours on this day.";
    if (!at.forecast) {
        view->kind.empty = bk_plan_missing_words(wall, arena);
        return BK_OK;
    }
    ledger->aside = bk_plan_day_is(wall->rail, at.forecast, view->day, arena);
    ledger->summary = bk_reckoning_words(wall->reckoning, arena);
    for (size_t i = 0; i < at.forecast->person_count; i++)
        add_person(&at, i);
    return BK_OK;
}

void *bk_planned_day_screen_new(bk_day day)
{
    planned_day *view = bk_alloc_clear(1, sizeof *view);
    view->day = day;
    view->kind = (bk_ledger_kind){.columns = columns,
                                  .column_count = CELLS,
                                  .fill = fill,
                                  .family = BK_FAMILIES,
                                  .detail_rows = DETAIL_ROWS};
    return bk_ledger_new(&view->kind, view);
}

// -------------------------------------------------------------------------------------------------- its keys

static const bk_planned_step *chosen_step(const bk_screen *screen)
{
    const bk_ledger_line *line = bk_ledger_chosen(screen);
    return line ? bk_forecast_step(bk_wall_forecast(screen->wall), line->argument) : NULL;
}

static bool has_step(const bk_screen *screen)
{
    return chosen_step(screen) != NULL;
}

static void open_costume(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    const bk_planned_step *step = chosen_step(screen);
    if (step)
        bk_plan_open_costume(screen, step);
}

static void turn(bk_screen *screen, const bk_key_row *row)
{
    planned_day *view = bk_ledger_of(screen)->own;
    if (row->argument > 0 || view->day > screen->wall->today)
        view->day += row->argument;
    screen->stale = true;
}

static const bk_key_row rows[] = {
    {.name = BK_KEY_ENTER,
     .written = "Enter",
     .bottom = "costume",
     .help = "open the costume that the step under the cursor is for",
     .act = open_costume,
     .matters = has_step},
    {.name = BK_KEY_LEFT,
     .written = "Left, Right",
     .bottom = "day before, after",
     .help = "the day before, or the next one",
     .act = turn,
     .argument = -1},
    {.name = BK_KEY_RIGHT, .act = turn, .argument = 1},
    BK_LEDGER_ROWS,
};

static const bk_key_table tables[] = {{.rows = rows, .count = sizeof rows / sizeof rows[0]},
                                      BK_LEDGER_TYPING_TABLE};

const bk_screen_kind bk_planned_day_screen = {
    .name = "A day",
    .tables = tables,
    .table_count = sizeof tables / sizeof tables[0],
    BK_LEDGER_OPERATIONS,
};
