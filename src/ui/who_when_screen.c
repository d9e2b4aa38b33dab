#include "bodkin/ui/who_when_screen.h"

#include <stdlib.h>

#include "bodkin/base/text.h"
#include "bodkin/sheet/wait_words.h"
#include "bodkin/ui/cells.h"
#include "bodkin/ui/ledger.h"
#include "bodkin/ui/minutes_taken_screen.h"
#include "bodkin/ui/person_pick.h"
#include "bodkin/ui/plan_acts.h"
#include "bodkin/ui/plan_dates.h"
#include "bodkin/ui/planned_day_screen.h"
#include "bodkin/ui/stack.h"
#include "bodkin/ui/who_when_day.h"

// Columns: the day, what it is, then two for each person: the steps, and how much room there is.
enum { DAY, WHAT, FIRST_PERSON, EACH = 2, CELLS = FIRST_PERSON + EACH * BK_PLAN_MOST_PEOPLE };
enum { DETAIL_ROWS = 7, DAY_COLUMNS = 10, WHAT_LEAST = 8, WHAT_MOST = 14, GAP = 2 };

// In a column that would be left out were all of it empty.
#define EMPTY " "

typedef struct who_when {
    bk_ledger_kind kind; // its columns change with the people and the size of the terminal
    bk_list_column columns[CELLS];
    char *only;      // owned: the one who is followed; NULL: everybody
    size_t first;    // of the people beside each other, an index into the forecast's
    size_t shown;    // so many of them
    size_t people;   // there are
    size_t terminal; // columns of the terminal that it was laid out for
} who_when;

static who_when *view_of(const bk_screen *screen)
{
    return bk_ledger_of(screen)->own;
}

// -------------------------------------------------------------------------------------------------- the columns

typedef struct filling {
    const bk_wall *wall;
    const bk_forecast *forecast;
    bk_ledger *ledger;
    who_when *view;
    const bk_plan_date *dates;
    size_t date_count;
    size_t only; // index of the one followed, or BK_PLAN_ALL
    bk_plan_columns columns;
} filling;

static size_t widest_what(const filling *at)
{
    size_t wide = WHAT_LEAST;
    for (size_t i = 0; i < at->date_count; i++) {
        const char *words = bk_plan_date_words(at->dates, at->date_count, at->dates[i].on, at->ledger->arena);
        size_t columns = words ? bk_text_columns(words) : 0;
        wide = columns > wide ? columns : wide;
    }
    return wide < WHAT_MOST ? wide : WHAT_MOST;
}

static bk_list_column column_of(const char *head, size_t width, size_t gap, bool right)
{
    return (bk_list_column){.head = head, .least = width, .most = width, .gap = gap, .right = right};
}

static void lay_out(filling *at)
{
    who_when *view = at->view;
    const bk_paint paint = {.columns = view->terminal};
    size_t what = widest_what(at), width = bk_paint_row(&paint, 0).width;
    size_t people = at->only == BK_PLAN_ALL ? at->forecast->person_count : 1;
    at->columns = bk_plan_columns_of(width - DAY_COLUMNS - GAP - what - GAP, people);
    view->people = people;
    view->shown = at->columns.people < people ? at->columns.people : people;
    if (at->only != BK_PLAN_ALL)
        view->first = at->only;
    else if (view->first + view->shown > people)
        view->first = people - view->shown;
    view->columns[DAY] = column_of("Day", DAY_COLUMNS, GAP, true);
    view->columns[WHAT] = column_of("", what, GAP, false);
    for (size_t i = 0; i < view->shown; i++) {
        const char *name = at->forecast->people[view->first + i].name;
        bk_list_column *pair = &view->columns[FIRST_PERSON + EACH * i];
        pair[0] = column_of(bk_text_safe(at->ledger->arena, name, at->wall->ascii), at->columns.steps,
                            BK_PLAN_INNER_GAP, false);
        pair[1] = column_of("free", BK_PLAN_FREE_COLUMNS, BK_PLAN_GAP, true);
    }
    view->kind.column_count = FIRST_PERSON + EACH * view->shown;
}

// ---------------------------------------------------------------------------------------------------- the lines

// What narrowing looks through: everything that the day holds. The picture has it in columns.
static const char *findable_of(const filling *at, const bk_plan_day *day)
{
    bk_arena *arena = at->ledger->arena;
    const char *is = bk_plan_day_is(at->wall->rail, at->forecast, day->from, arena);
    bk_buffer words = {0};
    bk_buffer_print(&words, "%s", is ? is : "");
    for (size_t i = 0; i < at->forecast->person_count; i++) {
        bk_plan_share share = bk_plan_share_of(at->forecast, i, day->from);
        for (size_t s = 0; (at->only == BK_PLAN_ALL || at->only == i) && s < share.count; s++) {
            const bk_planned_step *step = &at->forecast->steps[share.stretches[s].step];
            bk_buffer_print(&words, "\n%s %s/%s %s %s %s", at->forecast->people[i].name, step->piece,
                            step->key, step->title, step->costume ? step->costume : "",
                            step->role ? step->role : "");
        }
    }
    const char *kept = bk_arena_bytes(arena, words.bytes, words.length);
    bk_buffer_free(&words);
    return kept;
}

static void add_day(const filling *at, const bk_plan_day *day)
{
    bk_arena *arena = at->ledger->arena;
    bk_ledger_line line = {
        .id = day->from,
        .family = BK_FAMILIES,
        .cells = {[DAY] = bk_cell_day(day->from, at->wall->today, arena),
                  [WHAT] = bk_plan_date_words(at->dates, at->date_count, day->from, arena)},
        .style = day->works ? BK_STYLE_PLAIN : BK_STYLE_DIM,
        .detail = findable_of(at, day),
        .argument = day->works,
    };
    for (size_t i = 0; i < at->view->shown; i++) {
        bk_plan_share share = bk_plan_share_of(at->forecast, at->view->first + i, day->from);
        const char **cells = &line.cells[FIRST_PERSON + EACH * i];
        const char *steps = bk_plan_steps(at->forecast, &share, at->columns.steps, arena);
        const char *room = bk_plan_free(&share, arena);
        cells[0] = steps ? steps : EMPTY;
        cells[1] = room ? room : EMPTY;
    }
    if (!day->works)
        line.cells[FIRST_PERSON] =
            day->to == day->from
                ? "no hours"
                : bk_arena_print(arena, "to %s: no hours", bk_cell_day(day->to, at->wall->today, arena));
    bk_ledger_add(at->ledger, &line);
}

// ------------------------------------------------------------------------------------------------ round about

static void tell_head(const filling *at)
{
    bk_arena *arena = at->ledger->arena;
    const who_when *view = at->view;
    const char *state = bk_reckoning_words(at->wall->reckoning, arena);
    const char *countdown = at->wall->rail ? bk_countdown(at->wall->rail, arena) : "";
    at->ledger->title = at->only == BK_PLAN_ALL
                            ? "Who and When"
                            : bk_arena_print(arena, "Who and When: %s", at->forecast->people[at->only].name);
    at->ledger->aside = bk_cell_joined(arena, state ? state : "", "; ", countdown);
    if (view->shown < view->people)
        at->ledger->summary =
            bk_arena_print(arena, "%zu to %zu of %zu people: Left and Right show the others", view->first + 1,
                           view->first + view->shown, view->people);
}

static size_t followed(const who_when *view, const bk_forecast *forecast)
{
    for (size_t i = 0; view->only && i < forecast->person_count; i++)
        if (bk_same_text(forecast->people[i].name, view->only))
            return i;
    return BK_PLAN_ALL;
}

static bk_status fill(bk_screen *screen, bk_ledger *ledger, bk_error *error)
{
    (void)error;
    bk_wall *wall = screen->wall;
    who_when *view = ledger->own;
    const bk_plan_day *days = NULL;
    filling at = {.wall = wall, .forecast = bk_wall_forecast(wall), .ledger = ledger, .view = view};
    ledger->title = "Who and When";
    view->terminal = bk_term_columns();
    view->kind.column_count = FIRST_PERSON;
    view->people = view->shown = 0;
    if (!at.forecast) {
        view->kind.empty = bk_plan_missing_words(wall, ledger->arena);
        return BK_OK;
    }
    view->kind.empty = "Nobody is in this workroom yet, so no day can be told.\n\nH shows the Hands: + there "
                       "enters who makes costumes here, yourself first, with all you can do and your hours.";
    if (at.forecast->person_count == 0)
        return BK_OK;
    at.only = followed(view, at.forecast);
    at.date_count = bk_plan_dates(wall->rail, at.forecast, ledger->arena, &at.dates);
    lay_out(&at);
    size_t count = bk_plan_days(at.forecast, at.only, at.dates, at.date_count, ledger->arena, &days);
    for (size_t i = 0; i < count; i++)
        add_day(&at, &days[i]);
    tell_head(&at);
    return BK_OK;
}

static const bk_ledger_kind ledger_kind = {
    .fill = fill,
    .family = BK_FAMILIES,
    .detail_rows = DETAIL_ROWS,
};

void *bk_who_when_screen_new(void)
{
    who_when *view = bk_alloc_clear(1, sizeof *view);
    view->kind = ledger_kind;
    view->kind.columns = view->columns;
    return bk_ledger_new(&view->kind, view);
}

static void close_who_when(bk_screen *screen)
{
    free(view_of(screen)->only);
    bk_ledger_close(screen);
}

static void draw_day(const bk_screen *screen, const bk_paint *paint, const bk_ledger_line *line)
{
    const who_when *view = view_of(screen);
    const bk_forecast *forecast = bk_wall_forecast(screen->wall);
    size_t people[BK_PLAN_MOST_PEOPLE], rows = bk_ledger_detail_rows(screen, paint);
    const bk_plan_day day = {(bk_day)line->id, (bk_day)line->id, line->argument != 0};
    for (size_t i = 0; i < view->shown; i++)
        people[i] = view->first + i;
    const bk_day_beneath beneath = {
        .forecast = forecast,
        .day = &day,
        .is = bk_plan_day_is(screen->wall->rail, forecast, day.from, paint->arena),
        .people = people,
        .count = view->shown,
    };
    bk_day_beneath_draw(paint, &beneath, paint->rows - 1 - rows, rows);
}

// A terminal of another width has room for other people.
static void draw_who_when(bk_screen *screen, const bk_paint *paint)
{
    bk_error error;
    bk_ledger *ledger = bk_ledger_of(screen);
    if (view_of(screen)->terminal != paint->columns && bk_ledger_read(screen, &error))
        bk_wall_say(screen->wall, "%s", error.text);
    bool stands = bk_ledger_stands(ledger, ledger->cursor.at);
    bk_ledger_line *line = stands ? &ledger->lines[ledger->shown[ledger->cursor.at]] : NULL;
    const char *detail = line ? line->detail : NULL;
    if (line)
        line->detail = NULL;
    bk_ledger_draw(screen, paint);
    if (!line)
        return;
    line->detail = detail;
    draw_day(screen, paint, line);
}

// -------------------------------------------------------------------------------------------------- its keys

static void open_day(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    const bk_ledger_line *line = bk_ledger_chosen(screen);
    if (line)
        bk_stack_push(screen->stack, &bk_planned_day_screen, bk_planned_day_screen_new((bk_day)line->id));
}

static void turn_people(bk_screen *screen, const bk_key_row *row)
{
    who_when *view = view_of(screen);
    size_t last = view->people - view->shown;
    if (row->argument < 0 && view->first > 0)
        view->first--;
    else if (row->argument > 0 && view->first < last)
        view->first++;
    screen->stale = true;
}

static bool has_others(const bk_screen *screen)
{
    const who_when *view = view_of(screen);
    return view->shown < view->people;
}

static void follow(bk_screen *screen, const char *name)
{
    who_when *view = view_of(screen);
    free(view->only);
    view->only = name ? bk_text_copy(name) : NULL;
    view->first = 0;
    screen->stale = true;
}

static void ask_person(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_person_pick_open(screen, "Whose days?", bk_wall_forecast(screen->wall), view_of(screen)->only, follow);
}

static void show_taken(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_stack_push(screen->stack, &bk_minutes_taken_screen, bk_minutes_taken_screen_new());
}

static const bk_key_row rows[] = {
    {.name = BK_KEY_ENTER,
     .written = "Enter",
     .bottom = "the day",
     .help = "all that is done on the day under the cursor",
     .act = open_day,
     .matters = bk_ledger_has_line},
    {.name = BK_KEY_LEFT,
     .written = "Left, Right",
     .bottom = "others",
     .help = "show the people before or after those beside each other",
     .act = turn_people,
     .argument = -1,
     .matters = has_others},
    {.name = BK_KEY_RIGHT, .act = turn_people, .argument = 1},
    {.name = BK_KEY_TYPED,
     .typed = "p",
     .written = "p",
     .bottom = "person",
     .help = "follow one person, or show everybody",
     .act = ask_person},
    {.name = BK_KEY_TYPED,
     .typed = "r",
     .written = "r",
     .bottom = "minutes taken",
     .help = "the workroom's record: minutes taken against minutes guessed",
     .act = show_taken},
    BK_LEDGER_ROWS,
};

static const bk_key_table tables[] = {{.rows = rows, .count = sizeof rows / sizeof rows[0]},
                                      BK_LEDGER_TYPING_TABLE};

static const bk_meaning meanings[] = {
    {"free", "hours of that day that the plan leaves empty; full: it leaves none; nothing: no hours"},
    {"+2", "two steps more than there is room for; the detail below names them"},
    {"no hours", "nobody who is shown has hours then"},
};

const bk_screen_kind bk_who_when_screen = {
    .name = "Who and When",
    .tables = tables,
    .table_count = sizeof tables / sizeof tables[0],
    .meanings = meanings,
    .meaning_count = sizeof meanings / sizeof meanings[0],
    .close = close_who_when,
    .read = bk_ledger_read,
    .draw = draw_who_when,
    .table = bk_ledger_table,
    .take = bk_ledger_take,
    .draw_bottom = bk_ledger_draw_bottom,
};
