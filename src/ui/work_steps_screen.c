#include "bodkin/ui/work_steps_screen.h"

#include "bodkin/sheet/columns.h"
#include "bodkin/trade/words.h"
#include "bodkin/ui/cells.h"
#include "bodkin/ui/ledger.h"
#include "bodkin/ui/stack.h"
#include "bodkin/work/work_list.h"

enum { DETAIL_ROWS = 3 };

enum cell { KEY, TITLE, KIND, USUAL, RANGE, AFTER, CELLS };

static const bk_list_column columns[CELLS] = {
    [KEY] = {.head = "Step", .least = 6, .most = 12, .gap = 2},
    [TITLE] = {.head = "What is done", .least = 28, .most = 60, .gap = 2},
    [KIND] = {.head = "Kind", .least = 7, .most = 7, .gap = 2},
    [USUAL] = {.head = "Usual", .least = 7, .most = 9, .gap = 2, .right = true},
    [RANGE] = {.head = "Quickest to longest", .least = 20, .most = 24, .gap = 2, .spare = true},
    [AFTER] = {.head = "After", .least = 10, .most = 26},
};

typedef struct own {
    int64_t work;
    const char *name; // of the order of work, in the ledger's arena
} own;

// ------------------------------------------------------------------------------------------------- its lines

static const char *range_words(const bk_work_step *step, bk_arena *arena)
{
    int64_t quickest = step->quickest == BK_NOT_KNOWN ? step->minutes : step->quickest;
    int64_t longest = step->longest == BK_NOT_KNOWN ? step->minutes : step->longest;
    return bk_cell_range(quickest, longest, arena);
}

static const char *who_can(const bk_work_step *step)
{
    static const char *const words[] = {[BK_LEVEL_ANYONE] = "anyone shown once",
                                        [BK_LEVEL_SEWER] = "who can sew",
                                        [BK_LEVEL_MAKER] = "the maker"};
    int64_t level = step->level == BK_NOT_KNOWN ? bk_usual_level((bk_kind)step->kind) : step->level;
    return level >= BK_LEVEL_ANYONE && level <= BK_LEVEL_MAKER ? words[level] : "";
}

static const char *joined(const char *words, const char *more, bk_arena *arena)
{
    return *words ? bk_arena_print(arena, "%s; %s", words, more) : more;
}

// "5 min to 20 min; for who can sew; after cut; two at once; rests 12 h; needs waist girth; can wait".
static const char *facts_of(const bk_work_step *step, bk_arena *arena)
{
    const char *range = range_words(step, arena), *after = bk_cell_list(step->after, arena);
    const char *measures = bk_cell_list(step->measures, arena), *facts = range ? range : "";
    facts = joined(facts, bk_arena_print(arena, "for %s", who_can(step)), arena);
    if (after)
        facts = joined(facts, bk_arena_print(arena, "after %s", after), arena);
    if (step->hands > 1)
        facts = joined(facts, bk_arena_print(arena, "%lld people at once", (long long)step->hands), arena);
    if (step->rest_minutes > 0)
        facts = joined(facts, bk_arena_print(arena, "rests %s", bk_cell_minutes(step->rest_minutes, arena)),
                       arena);
    if (measures)
        facts = joined(facts, bk_arena_print(arena, "needs %s", measures), arena);
    return step->can_wait == 1 ? joined(facts, "can wait until after the opening", arena) : facts;
}

static void add_step(bk_ledger *ledger, const bk_work_step *step)
{
    bk_arena *arena = ledger->arena;
    const char *facts = facts_of(step, arena);
    const bk_ledger_line line = {
        .id = step->id,
        .family = BK_WORK_STEPS,
        .cells = {[KEY] = step->key,
                  [TITLE] = step->title,
                  [KIND] = bk_word_text(&bk_kind_words, step->kind),
                  [USUAL] = bk_cell_minutes(step->minutes, arena),
                  [RANGE] = range_words(step, arena),
                  [AFTER] = bk_cell_list(step->after, arena)},
        .name = bk_arena_print(arena, "the step %s", step->title),
        .detail = bk_arena_print(arena, "%s\n%s%s%s", step->title, facts, step->note ? "\n" : "",
                                 step->note ? step->note : ""),
    };
    bk_ledger_add(ledger, &line);
}

static const char *summary_of(const bk_work_line *work, bk_arena *arena)
{
    const char *note = work->record.note;
    if (work->steps == 0)
        return note;
    return bk_arena_print(arena, "%s, %s of it by hand%s%s", bk_cell_minutes(work->sum.usual, arena),
                          work->sum.hand > 0 ? bk_cell_minutes(work->sum.hand, arena) : "nothing",
                          note ? "; " : "", note ? note : "");
}

static bk_status fill(bk_screen *screen, bk_ledger *ledger, bk_error *error)
{
    bk_work_whole whole = {0};
    bool found = false;
    own *self = ledger->own;
    bk_arena *arena = ledger->arena;
    bk_status status = bk_work_whole_read(screen->wall->store, self->work, arena, &whole, &found, error);
    if (status)
        return status;
    if (!found) {
        bk_wall_say(screen->wall, "This order of work is no longer there.");
        bk_stack_pop(screen->stack);
        return BK_OK;
    }
    self->name = whole.line.record.name;
    ledger->title = whole.line.record.name;
    ledger->summary = summary_of(&whole.line, arena);
    for (size_t i = 0; i < whole.line.steps; i++)
        add_step(ledger, &whole.steps[i]);
    return BK_OK;
}

// A new step belongs to this order of work.
static bool start(bk_screen *screen, const bk_ledger_line *chosen, bool fresh, bk_form_start *start)
{
    (void)chosen;
    bk_ledger *ledger = bk_ledger_of(screen);
    const own *self = ledger->own;
    if (!fresh)
        return true;
    bk_work_step *step = bk_arena_clear(ledger->arena, 1, sizeof *step);
    bk_sheet_clear(&bk_sheets[BK_SHEET_WORK_STEPS], step);
    step->work_id = self->work;
    step->work = self->name;
    start->record = step;
    start->first = "title";
    start->title = bk_arena_print(ledger->arena, "Step of %s", self->name);
    return true;
}

static const bk_ledger_kind ledger_kind = {
    .columns = columns,
    .column_count = CELLS,
    .fill = fill,
    .empty = "This order of work has no steps yet. + adds the first one.",
    .start = start,
    .family = BK_WORK_STEPS,
    .moves = true,
    .detail_rows = DETAIL_ROWS,
};

void *bk_work_steps_screen_new(int64_t work)
{
    own *self = bk_alloc_clear(1, sizeof *self);
    self->work = work;
    return bk_ledger_new(&ledger_kind, self);
}

// -------------------------------------------------------------------------------------------------- its keys

static const bk_key_row rows[] = {
    {.name = BK_KEY_ENTER, .act = bk_ledger_change},
    BK_LEDGER_EDIT_ROWS,
    BK_LEDGER_SHIFT_ROWS,
    BK_LEDGER_ROWS,
};

static const bk_key_table tables[] = {{.rows = rows, .count = sizeof rows / sizeof rows[0]},
                                      BK_LEDGER_TYPING_TABLE};

static const bk_meaning meanings[] = {
    {"usual", "minutes for one garment, a competent maker and a domestic machine: common practice"},
    {"after", "the steps that must be done before it"},
};

const bk_screen_kind bk_work_steps_screen = {
    .name = "Steps of an order of work",
    .tables = tables,
    .table_count = sizeof tables / sizeof tables[0],
    .meanings = meanings,
    .meaning_count = sizeof meanings / sizeof meanings[0],
    BK_LEDGER_OPERATIONS,
};
