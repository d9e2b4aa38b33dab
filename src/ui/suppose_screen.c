#include "bodkin/ui/suppose_screen.h"

#include "bodkin/base/text.h"
#include "bodkin/ui/acts.h"
#include "bodkin/ui/costume_screen.h"
#include "bodkin/ui/ledger.h"
#include "bodkin/ui/stack.h"
#include "bodkin/ui/suppose_forms.h"
#include "bodkin/ui/suppose_lines.h"

enum { DETAIL_ROWS = 5 };

typedef struct view {
    bool adding; // it asks what
} view;

static const bk_ledger_kind ledger_kind = {
    .columns = bk_suppose_columns,
    .column_count = BK_SUPPOSE_COLUMNS,
    .fill = bk_suppose_fill,
    .empty =
        "What if? Here you try it before you do it.\n\n+ supposes something: a helper comes for an evening, "
        "a "
        "date moves, a costume is due on another day, or is dropped. Below it stands what becomes of each "
        "costume then: which come right, which get worse.\n\nNothing is changed by it until you keep it; and "
        "what you suppose stays here while you look at other screens.",
    .family = BK_FAMILIES,
    .of_production = true,
    .detail_rows = DETAIL_ROWS,
};

void *bk_suppose_screen_new(void)
{
    return bk_ledger_new(&ledger_kind, bk_alloc_clear(1, sizeof(view)));
}

static view *view_of(const bk_screen *screen)
{
    return bk_ledger_of(screen)->own;
}

static const bk_supposed *supposed_of(const bk_screen *screen)
{
    return screen->wall->supposed;
}

// Which of what is supposed the cursor stands on; BK_SUPPOSED_NEW: on none.
static size_t chosen_place(const bk_screen *screen)
{
    const bk_ledger_line *line = bk_ledger_chosen(screen);
    bool is = line && line->family == BK_FAMILIES && (size_t)line->id <= supposed_of(screen)->count;
    return is ? (size_t)line->id - 1 : BK_SUPPOSED_NEW;
}

static bool has_supposed(const bk_screen *screen)
{
    return chosen_place(screen) != BK_SUPPOSED_NEW;
}

static bool has_any(const bk_screen *screen)
{
    return supposed_of(screen)->count > 0;
}

// The number of the costume under the cursor, where it is of the production shown; NULL.
static const char *chosen_number(const bk_screen *screen)
{
    const bk_ledger_line *line = bk_ledger_chosen(screen);
    const bk_rail *rail = screen->wall->rail;
    for (size_t i = 0; line && line->family == BK_COSTUMES && i < rail->costume_count; i++)
        if (rail->costumes[i].record->id == line->id)
            return rail->costumes[i].record->number;
    return NULL;
}

// -------------------------------------------------------------------------------------------------- supposing

static const struct {
    const char *letter, *what;
} sorts[BK_SUPPOSINGS] = {
    [BK_SUPPOSE_HELPER] = {"h", "helper"},
    [BK_SUPPOSE_DATE] = {"d", "date moves"},
    [BK_SUPPOSE_DUE] = {"c", "due day"},
    [BK_SUPPOSE_DROP] = {"x", "drop one"},
};

// What Enter supposes.
static bk_supposing usual_sort(const bk_screen *screen)
{
    return chosen_number(screen) ? BK_SUPPOSE_DUE : BK_SUPPOSE_HELPER;
}

static void add(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    view_of(screen)->adding = true;
}

static bool take(bk_screen *screen, const bk_key *key)
{
    view *now = view_of(screen);
    if (!now->adding)
        return bk_ledger_take(screen, key);
    now->adding = key->name == BK_KEY_TYPED; // another letter does nothing: what is asked is asked still
    for (int what = 0; what < BK_SUPPOSINGS; what++)
        if ((key->name == BK_KEY_TYPED && bk_same_text(key->text, sorts[what].letter)) ||
            (key->name == BK_KEY_ENTER && what == (int)usual_sort(screen))) {
            now->adding = false;
            bk_suppose_open_new(screen, (bk_supposing)what, chosen_number(screen));
        }
    return true;
}

static size_t draw_bottom(bk_screen *screen, const bk_paint *paint, bk_spot spot)
{
    bk_item items[BK_SUPPOSINGS + 2];
    size_t count = 0;
    if (!view_of(screen)->adding)
        return bk_ledger_draw_bottom(screen, paint, spot);
    items[count++] = (bk_item){.word = "Suppose:"};
    for (int what = 0; what < BK_SUPPOSINGS; what++) {
        const char *key = sorts[what].letter;
        if (what == (int)usual_sort(screen))
            key = bk_arena_print(paint->arena, "%s or Enter", key);
        items[count++] = (bk_item){.key = key, .word = sorts[what].what};
    }
    items[count++] = (bk_item){.key = "Escape", .word = "nothing"};
    bk_paint_items(paint, spot, items, count);
    return spot.width;
}

static void change(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    if (has_supposed(screen))
        bk_suppose_open(screen, chosen_place(screen));
}

static void open_line(bk_screen *screen, const bk_key_row *row)
{
    const bk_ledger_line *line = bk_ledger_chosen(screen);
    const char *number = chosen_number(screen);
    if (number)
        bk_stack_push(screen->stack, &bk_costume_screen, bk_costume_screen_new(number));
    else if (line && line->family == BK_COSTUMES)
        bk_wall_say(screen->wall, "It is of another production: P opens that one.");
    else
        change(screen, row);
}

// ----------------------------------------------------------------------------------- taking off and forgetting

static void take_off(bk_screen *screen, int64_t at)
{
    bk_supposed_take_off(screen->wall->supposed, (size_t)at);
    bk_stack_stale(screen->stack);
}

static void ask_to_take_off(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    const bk_ledger_line *line = bk_ledger_chosen(screen);
    if (!has_supposed(screen))
        return;
    bk_arena *arena = bk_arena_new();
    const char *words = bk_text_safe(arena, line->name, screen->wall->ascii);
    bk_act_ask(screen, bk_arena_print(arena, "No longer suppose this: %s?", words), take_off,
               (int64_t)chosen_place(screen));
    bk_arena_free(arena);
}

static void forget(bk_screen *screen, int64_t argument)
{
    (void)argument;
    bk_supposed_clear(screen->wall->supposed);
    bk_stack_stale(screen->stack);
    bk_wall_say(screen->wall, "Nothing is supposed any more; the workroom is as it was.");
}

static const char *count_words(size_t count, bk_arena *arena)
{
    return count == 1 ? "the one thing" : bk_arena_print(arena, "all %zu things", count);
}

static void ask_to_forget(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    if (!has_any(screen))
        return;
    bk_arena *arena = bk_arena_new();
    const char *all = count_words(supposed_of(screen)->count, arena);
    bk_act_ask(screen, bk_arena_print(arena, "Forget %s that you suppose?", all), forget, 0);
    bk_arena_free(arena);
}

// ---------------------------------------------------------------------------------------------------- keeping

static void keep(bk_screen *screen, int64_t argument)
{
    (void)argument;
    bk_error error;
    const char *sentence = NULL;
    bk_arena *arena = bk_arena_new();
    bk_supposed *supposed = screen->wall->supposed;
    bk_job job = bk_act_job(screen->wall, arena);
    bk_status status = bk_suppose_keep(&job, supposed->items, supposed->count, &sentence, &error);
    if (!status)
        bk_supposed_clear(supposed);
    bk_act_did(screen, status, sentence, &error);
    if (!status && !sentence)
        bk_wall_say(screen->wall, "All of it is so already: nothing was changed.");
    bk_arena_free(arena);
}

static void ask_to_keep(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    if (!has_any(screen))
        return;
    bk_arena *arena = bk_arena_new();
    const char *all = count_words(supposed_of(screen)->count, arena);
    bk_act_ask(
        screen,
        bk_arena_print(arena, "Keep %s that you suppose? It changes the workroom; u takes it back.", all),
        keep, 0);
    bk_arena_free(arena);
}

static const bk_key_row rows[] = {
    {.name = BK_KEY_TYPED,
     .typed = "+",
     .written = "+",
     .bottom = "suppose",
     .help = "suppose something: then h a helper comes, d a date moves, c a costume has another due day, x a "
             "costume is dropped",
     .act = add},
    {.name = BK_KEY_TYPED,
     .typed = "k",
     .written = "k",
     .bottom = "keep all",
     .help = "keep all that is supposed, as one change of the workroom; it asks first",
     .act = ask_to_keep,
     .matters = has_any},
    {.name = BK_KEY_TYPED,
     .typed = "f",
     .written = "f",
     .bottom = "forget all",
     .help = "forget all that is supposed; it asks first",
     .act = ask_to_forget,
     .matters = has_any},
    {.name = BK_KEY_ENTER,
     .written = "Enter",
     .bottom = "open",
     .spare = true,
     .help = "open the costume under the cursor, or change what is supposed there",
     .act = open_line,
     .matters = bk_ledger_has_line},
    {.name = BK_KEY_TYPED,
     .typed = "e",
     .written = "e",
     .help = "change what is supposed on the line under the cursor",
     .act = change,
     .matters = has_supposed},
    {.name = BK_KEY_TYPED,
     .typed = "-",
     .written = "-",
     .bottom = "take off",
     .spare = true,
     .help = "no longer suppose what stands on the line under the cursor; it asks first",
     .act = ask_to_take_off,
     .matters = has_supposed},
    BK_LEDGER_ROWS,
};

static const bk_key_table tables[] = {{.rows = rows, .count = sizeof rows / sizeof rows[0]},
                                      BK_LEDGER_TYPING_TABLE};

static const bk_meaning meanings[] = {
    {"Now", "days in hand and chance in the plan as it is"},
    {"Then", "the same with all that is supposed"},
    {"Come right", "late now, and then no longer"},
    {"Get worse", "more urgent then, later, or less likely to be in time"},
    {"Much as before", "no more urgent, no less; a day that the plan moves about means nothing there"},
};

const bk_screen_kind bk_suppose_screen = {
    .name = "Suppose",
    .tables = tables,
    .table_count = sizeof tables / sizeof tables[0],
    .meanings = meanings,
    .meaning_count = sizeof meanings / sizeof meanings[0],
    .close = bk_ledger_close,
    .read = bk_ledger_read,
    .draw = bk_ledger_draw,
    .table = bk_ledger_table,
    .take = take,
    .draw_bottom = draw_bottom,
};
