#include "bodkin/ui/daybook_screen.h"

#include <string.h>

#include "bodkin/store/daybook.h"
#include "bodkin/ui/acts.h"
#include "bodkin/ui/ledger.h"

enum { FIRST_WINDOW = 200, DETAIL_ROWS = 2 };

enum cell { TIME, WHO, SENTENCE, UNDONE, CELLS };

static const bk_list_column columns[CELLS] = {
    [TIME] = {.head = "At", .least = 5, .most = 5, .gap = 2},
    [WHO] = {.head = "Who", .least = 6, .most = 20, .gap = 2},
    [SENTENCE] = {.head = "What was done", .least = 30, .most = 200, .gap = 2, .fills = true},
    [UNDONE] = {.head = "", .least = 6, .most = 6},
};

// ------------------------------------------------------------------------------------------------- its lines

// The parts of "2027-03-02T09:30:00+01:00".
enum { DAY_LENGTH = 10, TIME_AT = 11, TIME_LENGTH = 5 };

static bk_day day_of(const char *made_at)
{
    char text[DAY_LENGTH + 1] = {0};
    bk_day day = BK_NO_DAY;
    strncpy(text, made_at, DAY_LENGTH);
    return bk_day_read(text, &day) ? day : BK_NO_DAY;
}

static const char *time_of(const char *made_at, bk_arena *arena)
{
    return strlen(made_at) < TIME_AT + TIME_LENGTH ? ""
                                                   : bk_arena_bytes(arena, made_at + TIME_AT, TIME_LENGTH);
}

static const char *day_words(const bk_wall *wall, bk_day day, bk_arena *arena)
{
    char words[BK_DAY_WORDS_ROOM];
    const char *near = day == wall->today ? ", today" : day + 1 == wall->today ? ", yesterday" : "";
    return bk_arena_print(arena, "%s%s", bk_day_words(day, wall->today, words), near);
}

// What has become of it.
static const char *end_of(const bk_entry *entry)
{
    if (!entry->undone)
        return NULL;
    return entry->undoes ? "redone" : "undone";
}

static const char *detail_of(const bk_wall *wall, const bk_entry *entry, bk_arena *arena)
{
    const char *end = end_of(entry), *kept = "";
    if (entry->ended)
        kept = " It was done before the workroom was brought to a newer version and can no longer be undone.";
    return bk_arena_print(arena, "%s\n%s at %s, by %s.%s%s%s%s", entry->sentence,
                          day_words(wall, day_of(entry->made_at), arena), time_of(entry->made_at, arena),
                          entry->made_by, end ? " It was " : "", end ? end : "", end ? "." : "", kept);
}

static void add_entry(const bk_screen *screen, bk_ledger *ledger, const bk_entry *entry)
{
    const bk_ledger_line line = {
        .id = entry->id,
        .family = BK_FAMILIES,
        .cells = {[TIME] = time_of(entry->made_at, ledger->arena),
                  [WHO] = entry->made_by,
                  [SENTENCE] = entry->sentence,
                  [UNDONE] = end_of(entry)},
        .style = entry->undone ? BK_STYLE_DIM : BK_STYLE_PLAIN,
        .argument = entry->undone || entry->undoes || entry->ended,
        .detail = detail_of(screen->wall, entry, ledger->arena),
    };
    bk_ledger_add(ledger, &line);
}

static bk_status fill(bk_screen *screen, bk_ledger *ledger, bk_error *error)
{
    bk_rows rows = {0};
    bk_day day = BK_NO_DAY;
    ledger->title = "Daybook";
    bk_status status =
        bk_daybook_read(screen->wall->store, 0, (int64_t)ledger->window + 1, ledger->arena, &rows, error);
    const bk_entry *entries = rows.items;
    if (status)
        return status;
    ledger->more = rows.count > ledger->window;
    for (size_t i = 0; i < rows.count && i < ledger->window; i++) {
        bk_day made_on = day_of(entries[i].made_at);
        if (i == 0 || made_on != day) {
            const bk_ledger_line heading = {.cells = {day_words(screen->wall, made_on, ledger->arena)}};
            bk_ledger_add(ledger, &heading);
        }
        day = made_on;
        add_entry(screen, ledger, &entries[i]);
    }
    return BK_OK;
}

static const bk_ledger_kind ledger_kind = {
    .columns = columns,
    .column_count = CELLS,
    .fill = fill,
    .empty = "Nothing was changed in this workroom yet. Whatever is entered, marked done or brought in is "
             "written here, with who did it and when, and can be undone.",
    .family = BK_FAMILIES,
    .detail_rows = DETAIL_ROWS,
};

void *bk_daybook_screen_new(void)
{
    bk_ledger *ledger = bk_ledger_new(&ledger_kind, NULL);
    ledger->window = FIRST_WINDOW;
    return ledger;
}

// -------------------------------------------------------------------------------------------------- its keys

static void ask_to_undo(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    const bk_ledger_line *line = bk_ledger_chosen(screen);
    if (!line)
        return;
    if (line->argument) { // the job refuses it, and says why
        bk_act_undo(screen, line->id);
        return;
    }
    bk_arena *arena = bk_arena_new();
    bk_act_ask(screen,
               bk_arena_print(arena, "Undo what %s did at %s: %s?", line->cells[WHO], line->cells[TIME],
                              line->cells[SENTENCE]),
               bk_act_undo, line->id);
    bk_arena_free(arena);
}

static const bk_key_row rows[] = {
    {.name = BK_KEY_ENTER,
     .written = "Enter",
     .bottom = "undo this one",
     .help = "undo the change under the cursor; it asks first",
     .act = ask_to_undo,
     .matters = bk_ledger_has_line},
    BK_LEDGER_ROWS,
};

static const bk_key_table tables[] = {{.rows = rows, .count = sizeof rows / sizeof rows[0]},
                                      BK_LEDGER_TYPING_TABLE};

static const bk_meaning meanings[] = {
    {"undone", "it was taken back; what undid it stands above as an entry of its own"},
    {"redone", "an undoing that was taken back itself"},
};

const bk_screen_kind bk_daybook_screen = {
    .name = "Daybook",
    .tables = tables,
    .table_count = sizeof tables / sizeof tables[0],
    .meanings = meanings,
    .meaning_count = sizeof meanings / sizeof meanings[0],
    BK_LEDGER_OPERATIONS,
};
