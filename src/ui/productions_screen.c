#include "bodkin/ui/productions_screen.h"

#include "bodkin/base/text.h"
#include "bodkin/store/count_rows.h"
#include "bodkin/ui/acts.h"
#include "bodkin/ui/ledger.h"
#include "bodkin/ui/rail_screen.h"
#include "bodkin/ui/stack.h"
#include "bodkin/work/productions.h"
#include "bodkin/work/record.h"

// What the list shows beside the productions in work.
typedef struct productions_view {
    bool away_too; // also those that are put away
} productions_view;

static productions_view *view_of(const bk_screen *screen)
{
    return bk_ledger_of(screen)->own;
}

// -------------------------------------------------------------------------------------------------- its lines

enum { NAME, OPENS, TO_GO, CAST, COSTUMES, STEPS, COLUMNS };

static const bk_list_column columns[COLUMNS] = {
    [NAME] = {.head = "Production", .least = 16, .most = 60, .gap = 3, .fills = true},
    [OPENS] = {.head = "Opens", .least = 10, .most = 15, .gap = 3, .right = true},
    [TO_GO] = {.head = "", .least = 18, .most = 22, .gap = 3},
    [CAST] = {.head = "Cast", .least = 4, .most = 4, .gap = 2, .right = true, .spare = true},
    [COSTUMES] = {.head = "Costumes", .least = 8, .most = 8, .gap = 2, .right = true},
    [STEPS] = {.head = "Steps open", .least = 10, .most = 12, .right = true, .spare = true},
};

static bool is_away(const bk_production *production)
{
    return production->put_away_on != BK_NO_DAY;
}

// The words of the countdown are those of the rail, which for these two numbers needs no reading.
static const char *countdown(const bk_production *production, bk_day today, bk_arena *arena)
{
    if (is_away(production))
        return "put away";
    bk_rail rail = {
        .production = *production, .today = today, .days_left = (int64_t)production->opens - today};
    return bk_countdown(&rail, arena);
}

static const char *number(bk_arena *arena, int64_t count)
{
    return count > 0 ? bk_arena_print(arena, "%lld", (long long)count) : NULL;
}

static bk_status add_production(bk_screen *screen, bk_ledger *ledger, const bk_production *production,
                                bk_error *error)
{
    char opens[BK_DAY_WORDS_ROOM];
    bk_arena *arena = ledger->arena;
    bk_day today = screen->wall->today;
    bk_production_counts counts = {0};
    bk_status status = bk_store_production_counts(screen->wall->store, production->id, &counts, error);
    bk_ledger_line line = {
        .id = production->id,
        .family = BK_PRODUCTIONS,
        .style = is_away(production) ? BK_STYLE_DIM : BK_STYLE_PLAIN,
        .cells = {[NAME] = production->name,
                  [OPENS] = bk_arena_text(arena, bk_day_words(production->opens, today, opens)),
                  [TO_GO] = countdown(production, today, arena),
                  [CAST] = number(arena, counts.performers),
                  [COSTUMES] = number(arena, counts.costumes)},
        .argument = is_away(production),
    };
    if (counts.steps > 0)
        line.cells[STEPS] =
            bk_arena_print(arena, "%lld of %lld", (long long)counts.steps_open, (long long)counts.steps);
    bk_ledger_add(ledger, &line);
    return status;
}

static const char *summary(const bk_production_list *list, size_t away, bool shown, bk_arena *arena)
{
    if (away == 0)
        return NULL;
    if (shown)
        return bk_arena_print(arena, "%zu in work, %zu put away; a shows only those in work",
                              list->count - away, away);
    return bk_arena_print(arena, "%zu in work; %zu put away, a shows %s too", list->count - away, away,
                          away == 1 ? "it" : "them");
}

static bool is_shown(const bk_screen *screen, const bk_production *production)
{
    return !is_away(production) || view_of(screen)->away_too ||
           bk_same_text(production->name, screen->wall->production);
}

static bk_status fill(bk_screen *screen, bk_ledger *ledger, bk_error *error)
{
    bk_production_list list = {0};
    size_t away = 0;
    bk_status status = bk_productions_read(screen->wall->store, ledger->arena, &list, error);
    for (size_t i = 0; !status && i < list.count; i++) {
        const bk_production *production = &list.items[i];
        away += is_away(production) ? 1 : 0;
        if (bk_same_text(production->name, screen->wall->production))
            ledger->begin = ledger->line_count;
        if (is_shown(screen, production))
            status = add_production(screen, ledger, production, error);
    }
    ledger->title = "Productions";
    ledger->summary = summary(&list, away, view_of(screen)->away_too, ledger->arena);
    return status;
}

static const bk_ledger_kind ledger_kind = {
    .columns = columns,
    .column_count = COLUMNS,
    .fill = fill,
    .family = BK_PRODUCTIONS,
    .empty =
        "No production hangs in this workroom yet.\n\nPress + to make one: its name and the day it opens "
        "are enough to begin with, all else can wait.\n\nOr bring one in that is written down already, as "
        "a folder of CSV sheets, from a shell:\n\n    bodkin import DIR\n\nThe smallest is a folder with "
        "one file, production.csv, of two lines:\n\n    production,opens\n    The Paper "
        "Lantern,2027-03-19\n\nIt appears here by itself. \"man 5 bodkin\" tells every sheet and column.",
};

void *bk_productions_screen_new(void)
{
    return bk_ledger_new(&ledger_kind, bk_alloc_clear(1, sizeof(productions_view)));
}

// -------------------------------------------------------------------------------------------------- its keys

static void open_rail(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_error error;
    const bk_ledger_line *line = bk_ledger_chosen(screen);
    if (!line)
        return;
    if (bk_wall_show(screen->wall, line->cells[NAME], &error) == BK_OK)
        bk_stack_push(screen->stack, &bk_rail_screen, bk_rail_screen_new());
    else
        bk_wall_say(screen->wall, "%s", error.text);
}

static void put_away(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_error error;
    const char *sentence = NULL;
    const bk_ledger_line *line = bk_ledger_chosen(screen);
    if (!line)
        return;
    bk_arena *arena = bk_arena_new();
    bk_job job = bk_act_job(screen->wall, arena);
    bk_status status = bk_production_put_away(&job, line->id, !line->argument, &sentence, &error);
    bk_act_did(screen, status, sentence, &error);
    bk_arena_free(arena);
}

static void show_away(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    view_of(screen)->away_too = !view_of(screen)->away_too;
    screen->stale = true;
}

// There is no screen behind this one.
static void stay(bk_screen *screen, const bk_key_row *row)
{
    if (bk_ledger_of(screen)->query.length > 0)
        bk_ledger_back(screen, row);
    else
        bk_wall_say(screen->wall,
                    "This is the first screen: Enter opens a production, q leaves the program.");
}

static bool is_in_work(const bk_screen *screen)
{
    const bk_ledger_line *line = bk_ledger_chosen(screen);
    return line && !line->argument;
}

static bool is_put_away(const bk_screen *screen)
{
    const bk_ledger_line *line = bk_ledger_chosen(screen);
    return line && line->argument;
}

#define TYPED(c) .name = BK_KEY_TYPED, .typed = c, .written = c

static const bk_key_row rows[] = {
    {.name = BK_KEY_ENTER,
     .written = "Enter",
     .bottom = "its rail",
     .help = "open the rail of the production under the cursor",
     .act = open_rail,
     .matters = bk_ledger_has_line},
    {TYPED("+"), .bottom = "new", .help = "make a production", .act = bk_ledger_add_record},
    {TYPED("e"), .bottom = "change", .help = "change its name, its opening and what holds for all of it",
     .act = bk_ledger_change, .matters = bk_ledger_has_line},
    {TYPED("z"), .bottom = "put away",
     .help = "put it away: kept, out of sight, out of the sharing of materials; again: get it back",
     .act = put_away, .matters = is_in_work},
    {TYPED("z"), .bottom = "get back", .act = put_away, .matters = is_put_away},
    {TYPED("a"), .help = "show those that are put away as well; again: only those in work", .act = show_away},
    BK_LEDGER_MOVE_ROWS,
    {.name = BK_KEY_ESCAPE, .act = stay},
};

static const bk_key_table tables[] = {
    {.rows = rows, .count = sizeof rows / sizeof rows[0]},
    BK_LEDGER_TYPING_TABLE,
};

const bk_screen_kind bk_productions_screen = {
    .name = "Productions",
    .tables = tables,
    .table_count = sizeof tables / sizeof tables[0],
    BK_LEDGER_OPERATIONS,
};
