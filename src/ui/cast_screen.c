#include "bodkin/ui/cast_screen.h"

#include "bodkin/base/text.h"
#include "bodkin/ui/acts.h"
#include "bodkin/ui/cells.h"
#include "bodkin/ui/history_screen.h"
#include "bodkin/ui/ledger.h"
#include "bodkin/ui/measuring_screen.h"
#include "bodkin/ui/rail_screen.h"
#include "bodkin/ui/stack.h"
#include "bodkin/work/cast.h"

enum { DETAIL_ROWS = 4, NO_RECORD = -1 };

// A performer is cast as roles and a role with a performer; a performer covers
// roles and a role has covers.
enum cell { NAME, CAST, COVERS, MEASURED, COUNT, STANDING, CELLS };

static const bk_list_column columns[CELLS] = {
    [NAME] = {.head = "Name", .least = 16, .most = 30, .gap = 2},
    [CAST] = {.head = "Cast", .least = 15, .most = 36, .gap = 2},
    [COVERS] = {.head = "Covers", .least = 10, .most = 30, .gap = 2},
    [MEASURED] = {.head = "Measured", .least = 15, .most = 15, .gap = 2},
    [COUNT] = {.head = "", .least = 11, .most = 11, .gap = 2, .spare = true},
    [STANDING] = {.head = "", .least = 8, .most = 20, .fills = true},
};

static const char *joined(const char *const *names, size_t count, bk_arena *arena)
{
    const char *all = NULL;
    for (size_t i = 0; i < count; i++)
        all = all ? bk_arena_print(arena, "%s, %s", all, names[i]) : names[i];
    return all;
}

static const char *counted(int64_t count, const char *noun, bk_arena *arena)
{
    return bk_arena_print(arena, "%lld %s%s", (long long)count, noun, count == 1 ? "" : "s");
}

static const int *styles_of(bk_arena *arena, int name, int cast, int standing)
{
    int *styles = bk_arena_clear(arena, CELLS, sizeof *styles);
    styles[NAME] = name;
    styles[CAST] = cast;
    styles[MEASURED] = styles[STANDING] = standing;
    return styles;
}

// ---------------------------------------------------------------------------------------------- performers

static bool never_measured(const bk_cast_performer *performer)
{
    return performer->newest == BK_NO_DAY;
}

static const char *measured_words(const bk_cast_performer *performer, bk_day today, bk_arena *arena)
{
    return never_measured(performer) ? "never measured" : bk_cell_day(performer->newest, today, arena);
}

// What somebody should look at; NULL: nothing.
static const char *standing_words(const bk_cast_performer *performer, bk_arena *arena)
{
    const char *doubts = performer->doubts > 0 ? counted(performer->doubts, "doubt", arena) : NULL;
    if (performer->old)
        return doubts ? bk_arena_print(arena, "old, %s", doubts) : "old";
    return doubts;
}

static const char *parts_words(const bk_cast_performer *performer, bk_arena *arena)
{
    const char *plays = joined(performer->plays, performer->play_count, arena);
    const char *covers = joined(performer->covers, performer->cover_count, arena);
    if (plays && covers)
        return bk_arena_print(arena, "plays %s and covers %s", plays, covers);
    if (plays || covers)
        return bk_arena_print(arena, "%s %s", plays ? "plays" : "covers", plays ? plays : covers);
    return "plays nothing yet";
}

static const char *sheets_words(const bk_cast_performer *performer, bk_day today, bk_arena *arena)
{
    if (never_measured(performer))
        return "Never measured: s takes the first sheet.";
    const char *more = performer->sheet_count > 1
                           ? bk_arena_print(arena, ", the newest of %zu sheets", performer->sheet_count)
                           : "";
    const char *old = performer->old ? "; that is older than measures are good for: s takes a new sheet" : "";
    const char *doubts = performer->doubts > 0 ? bk_arena_print(arena, "; %s, told under Measures (Enter)",
                                                                counted(performer->doubts, "doubt", arena))
                                               : "";
    return bk_arena_print(arena, "Measured %s, %s%s%s%s.", measured_words(performer, today, arena),
                          counted(performer->measures, "measure", arena), more, old, doubts);
}

static const char *performer_detail(const bk_cast_performer *performer, bk_day today, bk_arena *arena)
{
    const char *note = performer->record->note;
    return bk_arena_print(arena, "%s %s.\n%s%s%s", performer->record->name, parts_words(performer, arena),
                          sheets_words(performer, today, arena), note ? "\n" : "", note ? note : "");
}

static void add_performer(bk_ledger *ledger, bk_day today, const bk_cast_performer *performer)
{
    bk_arena *arena = ledger->arena;
    bool acts = performer->play_count + performer->cover_count > 0;
    bool asks = never_measured(performer) || performer->old || performer->doubts > 0;
    const bk_ledger_line line = {
        .id = performer->record->id,
        .family = BK_PERFORMERS,
        .cells = {[NAME] = performer->record->name,
                  [CAST] = joined(performer->plays, performer->play_count, arena),
                  [COVERS] = joined(performer->covers, performer->cover_count, arena),
                  [MEASURED] = measured_words(performer, today, arena),
                  [COUNT] = never_measured(performer) ? NULL : counted(performer->measures, "measure", arena),
                  [STANDING] = standing_words(performer, arena)},
        .styles =
            styles_of(arena, BK_STYLE_PLAIN, BK_STYLE_PLAIN, asks && acts ? BK_STYLE_TIGHT : BK_STYLE_PLAIN),
        .name = bk_arena_print(arena, "performer %s", performer->record->name),
        .detail = performer_detail(performer, today, arena),
    };
    bk_ledger_add(ledger, &line);
}

// --------------------------------------------------------------------------------------------------- roles

static const char *costumes_words(const bk_cast_role *role, bk_arena *arena)
{
    return role->costume_count > 0 ? counted((int64_t)role->costume_count, "costume", arena) : "no costume";
}

static const char *role_detail(const bk_cast_role *role, bk_arena *arena)
{
    const char *covers = joined(role->covers, role->cover_count, arena), *note = role->record->note;
    const char *cast = role->performer ? bk_arena_print(arena, "played by %s", role->performer)
                       : role->costume_count > 0
                           ? "not cast: its costumes cannot be measured for; e says who plays it"
                           : "not cast; e says who plays it";
    return bk_arena_print(arena, "%s is %s%s%s.\n%s%s", role->record->name, cast,
                          covers ? "; covered by " : "", covers ? covers : "", note ? note : "",
                          note ? "\n" : "");
}

static void add_role(bk_ledger *ledger, const bk_cast_role *role)
{
    bk_arena *arena = ledger->arena;
    bool held = !role->performer && role->costume_count > 0;
    const bk_ledger_line line = {
        .id = role->record->id,
        .family = BK_ROLES,
        .cells = {[NAME] = role->record->name,
                  [CAST] = role->performer ? role->performer : "not cast",
                  [COVERS] = joined(role->covers, role->cover_count, arena),
                  [MEASURED] = costumes_words(role, arena)},
        .styles = styles_of(arena, BK_STYLE_PLAIN, held ? BK_STYLE_TIGHT : BK_STYLE_PLAIN, BK_STYLE_PLAIN),
        .name = bk_arena_print(arena, "role %s", role->record->name),
        .detail = role_detail(role, arena),
    };
    bk_ledger_add(ledger, &line);
}

// --------------------------------------------------------------------------------------------- all of it

static void add_heading(bk_ledger *ledger, const char *text)
{
    bk_ledger_add(ledger, &(bk_ledger_line){.cells = {text}});
}

// A line where there is none yet, so that the cursor finds a place to add the
// first one.
static void add_none(bk_ledger *ledger, bk_family family, const char *detail)
{
    bk_ledger_add(ledger, &(bk_ledger_line){.id = NO_RECORD,
                                            .family = family,
                                            .cells = {[NAME] = "none yet"},
                                            .style = BK_STYLE_DIM,
                                            .detail = detail});
}

static const char *summary(const bk_cast *cast, bk_arena *arena)
{
    size_t unmeasured = 0;
    for (size_t i = 0; i < cast->performer_count; i++)
        unmeasured += never_measured(&cast->performers[i]) ? 1 : 0;
    if (cast->performer_count + cast->role_count == 0)
        return "Nobody performs here yet: + adds a performer, or further down a "
               "role.";
    return bk_arena_print(arena, "%s, %zu never measured; %s, %zu not cast",
                          counted((int64_t)cast->performer_count, "performer", arena), unmeasured,
                          counted((int64_t)cast->role_count, "role", arena), cast->uncast);
}

// The costume that the Rail's cursor is on; NULL: none.
static const bk_rail_costume *costume_on_rail(const bk_screen *screen)
{
    for (size_t i = 0; i < screen->stack->count; i++)
        if (screen->stack->screens[i].kind == &bk_rail_screen)
            return bk_wall_costume(screen->wall, bk_rail_screen_number(&screen->stack->screens[i]));
    return NULL;
}

// The cursor begins on who wears the costume that was looked at, or where nobody does on its role.
static size_t begin_at(const bk_screen *screen, const bk_ledger *ledger)
{
    const bk_rail_costume *costume = costume_on_rail(screen);
    for (size_t i = 0; costume && i < ledger->line_count; i++) {
        const bk_ledger_line *line = &ledger->lines[i];
        bool performs = line->family == BK_PERFORMERS;
        const char *name = performs ? costume->performer : costume->performer ? NULL : costume->role;
        if (line->id > 0 && name && bk_same_text(line->cells[NAME], name))
            return i;
    }
    return 0;
}

static bk_status fill(bk_screen *screen, bk_ledger *ledger, bk_error *error)
{
    const bk_wall *wall = screen->wall;
    bk_cast cast = {0};
    bk_arena *arena = ledger->arena;
    bk_status status = bk_cast_read(wall->store, wall->rail->production.id, wall->today, arena, &cast, error);
    if (status)
        return status;
    ledger->title = bk_arena_print(arena, "Cast of %s", wall->rail->production.name);
    ledger->aside = bk_countdown(wall->rail, arena);
    ledger->summary = summary(&cast, arena);
    add_heading(ledger, "Performers");
    for (size_t i = 0; i < cast.performer_count; i++)
        add_performer(ledger, wall->today, &cast.performers[i]);
    if (cast.performer_count == 0)
        add_none(ledger, BK_PERFORMERS, "No performer stands here yet: + adds one.");
    add_heading(ledger, "Roles");
    for (size_t i = 0; i < cast.role_count; i++)
        add_role(ledger, &cast.roles[i]);
    if (cast.role_count == 0)
        add_none(ledger, BK_ROLES, "No role stands here yet: + adds one.");
    ledger->begin = begin_at(screen, ledger);
    return BK_OK;
}

static const bk_ledger_kind ledger_kind = {
    .columns = columns,
    .column_count = CELLS,
    .fill = fill,
    .family = BK_PERFORMERS,
    .moves = true,
    .of_production = true,
    .detail_rows = DETAIL_ROWS,
};

void *bk_cast_screen_new(void)
{
    return bk_ledger_new(&ledger_kind, NULL);
}

// ------------------------------------------------------------------------------------------------- its keys

static bool on_performer(const bk_screen *screen)
{
    const bk_ledger_line *line = bk_ledger_chosen(screen);
    return line && line->id > 0 && line->family == BK_PERFORMERS;
}

static bool on_role(const bk_screen *screen)
{
    const bk_ledger_line *line = bk_ledger_chosen(screen);
    return line && line->id > 0 && line->family == BK_ROLES;
}

static void open_line(bk_screen *screen, const bk_key_row *row)
{
    const bk_ledger_line *line = bk_ledger_chosen(screen);
    if (on_performer(screen))
        bk_stack_push(screen->stack, &bk_history_screen, bk_history_screen_new(line->id));
    else
        bk_ledger_change(screen, row);
}

static void measure(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    if (on_performer(screen))
        bk_measuring_open(screen, bk_ledger_chosen(screen)->id);
}

static void add_to_cast(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    const bk_ledger_line *line = bk_ledger_chosen(screen);
    bk_ledger_open_form(screen, line ? line->family : BK_PERFORMERS, true);
}

#define TYPED(c) .name = BK_KEY_TYPED, .typed = c, .written = c

static const bk_key_row rows[] = {
    {.name = BK_KEY_ENTER,
     .written = "Enter",
     .bottom = "measures",
     .help = "the measures of a performer; a role is changed",
     .act = open_line,
     .matters = on_performer},
    {.name = BK_KEY_ENTER, .written = "Enter", .bottom = "change", .act = open_line, .matters = on_role},
    {TYPED("s"), .bottom = "take a sheet", .help = "measure the performer: a new sheet, in one pass",
     .act = measure, .matters = on_performer},
    {TYPED("+"), .bottom = "new", .help = "add a performer, or a role where the cursor is on the roles",
     .act = add_to_cast},
    {TYPED("e"), .bottom = "change", .help = "change the performer or the role under the cursor",
     .act = bk_ledger_change, .matters = on_performer},
    {TYPED("-"), .bottom = "take away", .spare = true,
     .help = "take away the one under the cursor; it asks first", .act = bk_ledger_take_away,
     .matters = bk_ledger_has_line},
    BK_LEDGER_SHIFT_ROWS,
    BK_LEDGER_ROWS,
};

static const bk_key_table tables[] = {{.rows = rows, .count = sizeof rows / sizeof rows[0]},
                                      BK_LEDGER_TYPING_TABLE};

static const bk_meaning meanings[] = {
    {"Cast", "what a performer plays; who plays a role"},
    {"Covers", "what a performer can take over; who can take over a role"},
    {"old", "the newest sheet is older than measures are good for"},
    {"doubts", "measures that can hardly be true; the Measures screen says why"},
    {"not cast", "nobody plays it yet, so nobody can be measured for its costumes"},
};

const bk_screen_kind bk_cast_screen = {
    .name = "Cast",
    .tables = tables,
    .table_count = sizeof tables / sizeof tables[0],
    .meanings = meanings,
    .meaning_count = sizeof meanings / sizeof meanings[0],
    BK_LEDGER_OPERATIONS,
};
