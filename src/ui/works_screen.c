#include "bodkin/ui/works_screen.h"

#include "bodkin/ui/cells.h"
#include "bodkin/ui/ledger.h"
#include "bodkin/ui/stack.h"
#include "bodkin/ui/work_copy_form.h"
#include "bodkin/ui/work_steps_screen.h"
#include "bodkin/work/work_list.h"

enum { DETAIL_ROWS = 3 };

enum cell { NAME, STEPS, USUAL, RANGE, HAND, OWN, CELLS };

static const bk_list_column columns[CELLS] = {
    [NAME] = {.head = "Order of work", .least = 36, .most = 64, .gap = 2},
    [STEPS] = {.head = "Steps", .least = 5, .most = 5, .gap = 2, .right = true},
    [USUAL] = {.head = "Usual", .least = 7, .most = 9, .gap = 2, .right = true},
    [RANGE] = {.head = "Quickest to longest", .least = 20, .most = 24, .gap = 2, .spare = true},
    [HAND] = {.head = "By hand", .least = 7, .most = 9, .gap = 2, .right = true},
    [OWN] = {.head = "", .least = 3, .most = 3},
};

static const char *range_words(const bk_work_sum *sum, bk_arena *arena)
{
    return bk_cell_range(sum->quickest, sum->longest, arena);
}

static const char *detail_of(const bk_work_line *work, bk_arena *arena)
{
    const char *range = range_words(&work->sum, arena), *note = work->record.note;
    return bk_arena_print(arena, "%s%s%s%s%s", work->record.name, range ? "\nFrom " : "", range ? range : "",
                          note ? "\n" : "", note ? note : "");
}

static void add_work(bk_ledger *ledger, const bk_work_line *work)
{
    bk_arena *arena = ledger->arena;
    bool empty = work->steps == 0;
    const bk_ledger_line line = {
        .id = work->record.id,
        .family = BK_WORKS,
        .cells = {[NAME] = work->record.name,
                  [STEPS] = bk_arena_print(arena, "%zu", work->steps),
                  [USUAL] = empty ? NULL : bk_cell_minutes(work->sum.usual, arena),
                  [RANGE] = empty ? NULL : range_words(&work->sum, arena),
                  [HAND] = work->sum.hand > 0 ? bk_cell_minutes(work->sum.hand, arena) : NULL,
                  [OWN] = work->record.ready == 1 ? NULL : "own"},
        .detail = detail_of(work, arena),
    };
    bk_ledger_add(ledger, &line);
}

static bk_status fill(bk_screen *screen, bk_ledger *ledger, bk_error *error)
{
    bk_work_list list = {0};
    bk_status status = bk_work_list_read(screen->wall->store, ledger->arena, &list, error);
    if (status)
        return status;
    ledger->title = "Orders of work";
    for (size_t i = 0; i < list.count; i++)
        add_work(ledger, &list.items[i]);
    return BK_OK;
}

static const bk_ledger_kind ledger_kind = {
    .columns = columns,
    .column_count = CELLS,
    .fill = fill,
    .empty =
        "No order of work is in this workroom: a list of steps for a kind of garment that can be used on "
        "any piece. + makes one.",
    .family = BK_WORKS,
    .moves = true,
    .detail_rows = DETAIL_ROWS,
};

void *bk_works_screen_new(void)
{
    return bk_ledger_new(&ledger_kind, NULL);
}

// -------------------------------------------------------------------------------------------------- its keys

static void open_steps(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    if (bk_ledger_has_line(screen))
        bk_stack_push(screen->stack, &bk_work_steps_screen,
                      bk_work_steps_screen_new(bk_ledger_chosen(screen)->id));
}

static void copy(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    const bk_ledger_line *chosen = bk_ledger_chosen(screen);
    if (chosen)
        bk_work_copy_form_open(screen, chosen->id, chosen->cells[NAME]);
}

static const bk_key_row rows[] = {
    {.name = BK_KEY_ENTER,
     .written = "Enter",
     .bottom = "steps",
     .help = "open the steps of the one under the cursor",
     .act = open_steps,
     .matters = bk_ledger_has_line},
    {.name = BK_KEY_TYPED,
     .typed = "c",
     .written = "c",
     .bottom = "copy",
     .help = "copy the one under the cursor under another name, as one of your own",
     .act = copy,
     .matters = bk_ledger_has_line},
    BK_LEDGER_EDIT_ROWS,
    BK_LEDGER_SHIFT_ROWS,
    BK_LEDGER_ROWS,
};

static const bk_key_table tables[] = {{.rows = rows, .count = sizeof rows / sizeof rows[0]},
                                      BK_LEDGER_TYPING_TABLE};

static const bk_meaning meanings[] = {
    {"own", "made or changed in this workroom; the others came with the program"},
    {"usual", "work that its steps usually take together, without rests between them"},
    {"by hand", "of that, hand sewing"},
};

const bk_screen_kind bk_works_screen = {
    .name = "Orders of work",
    .tables = tables,
    .table_count = sizeof tables / sizeof tables[0],
    .meanings = meanings,
    .meaning_count = sizeof meanings / sizeof meanings[0],
    BK_LEDGER_OPERATIONS,
};
