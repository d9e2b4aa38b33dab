#include "bodkin/ui/dates_screen.h"

#include "bodkin/sheet/wait_words.h"
#include "bodkin/trade/words.h"
#include "bodkin/ui/acts.h"
#include "bodkin/ui/cells.h"
#include "bodkin/ui/ledger.h"
#include "bodkin/work/timetable.h"

enum { DETAIL_ROWS = 2 };

enum cell { DAY, TIME, WHAT, AWAY, NOTE, CELLS };

static const bk_list_column columns[CELLS] = {
    [DAY] = {.head = "Day", .least = 10, .most = 15, .gap = 2, .right = true},
    [TIME] = {.head = "At", .least = 5, .most = 5, .gap = 2},
    [WHAT] = {.head = "What", .least = 11, .most = 20, .gap = 2},
    [AWAY] = {.head = "", .least = 12, .most = 14, .gap = 2, .right = true},
    [NOTE] = {.head = "Note", .least = 20, .most = 200, .fills = true},
};

// The opening that no date tells of is changed where it stands: with the production.
static void add_date(const bk_wall *wall, bk_ledger *ledger, const bk_date *date)
{
    bool own = date->id != 0;
    const char *what = bk_word_text(&bk_occasion_words, date->what);
    const char *day = bk_cell_day(date->on, wall->today, ledger->arena);
    const bk_ledger_line line = {
        .id = own ? date->id : date->production_id,
        .family = own ? BK_DATES : BK_PRODUCTIONS,
        .cells = {[DAY] = day,
                  [TIME] = bk_cell_time(date->at, ledger->arena),
                  [WHAT] = what,
                  [AWAY] = bk_days_away(date->on, wall->today, ledger->arena),
                  [NOTE] = date->note},
        .style = date->on < wall->today        ? BK_STYLE_DIM
                 : date->what == BK_ON_OPENING ? BK_STYLE_BOLD
                                               : BK_STYLE_PLAIN,
        .name = own ? bk_arena_print(ledger->arena, "%s on %s", what, day) : "the opening",
        .detail = date->note,
    };
    bk_ledger_add(ledger, &line);
}

static bk_status fill(bk_screen *screen, bk_ledger *ledger, bk_error *error)
{
    const bk_wall *wall = screen->wall;
    bk_timetable table = {0};
    bk_status status = bk_timetable_read(wall->store, &wall->rail->production, ledger->arena, &table, error);
    if (status)
        return status;
    ledger->title = bk_arena_print(ledger->arena, "Dates of %s", wall->rail->production.name);
    ledger->aside = bk_countdown(wall->rail, ledger->arena);
    ledger->begin = table.count - 1; // all is past
    for (size_t i = 0; i < table.count; i++) {
        if (table.items[i].on >= wall->today && i < ledger->begin)
            ledger->begin = i;
        add_date(wall, ledger, &table.items[i]);
    }
    return BK_OK;
}

static const bk_ledger_kind ledger_kind = {
    .columns = columns,
    .column_count = CELLS,
    .fill = fill,
    .family = BK_DATES,
    .of_production = true,
    .detail_rows = DETAIL_ROWS,
};

void *bk_dates_screen_new(void)
{
    return bk_ledger_new(&ledger_kind, NULL);
}

static const bk_key_row rows[] = {
    BK_LEDGER_EDIT_ROWS,
    BK_LEDGER_ROWS,
};

static const bk_key_table tables[] = {{.rows = rows, .count = sizeof rows / sizeof rows[0]},
                                      BK_LEDGER_TYPING_TABLE};

static const bk_meaning meanings[] = {
    {"opening", "stands with the production where no date of its own tells of it: e changes it there"},
    {"parade, dress",
     "a costume is due at the first of these or at the opening, unless it has a day of its own"},
};

const bk_screen_kind bk_dates_screen = {
    .name = "Dates",
    .tables = tables,
    .table_count = sizeof tables / sizeof tables[0],
    .meanings = meanings,
    .meaning_count = sizeof meanings / sizeof meanings[0],
    BK_LEDGER_OPERATIONS,
};
