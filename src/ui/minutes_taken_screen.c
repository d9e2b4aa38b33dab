#include "bodkin/ui/minutes_taken_screen.h"

#include "bodkin/base/text.h"
#include "bodkin/ui/cells.h"
#include "bodkin/ui/ledger.h"
#include "bodkin/ui/plan_acts.h"

enum { DETAIL_ROWS = 3, THOUSANDTHS_OF_PERCENT = 10 };

enum cell { WHAT, STEPS, GUESSED, TOOK, USUAL, RANGE, USED, CELLS };

static const bk_list_column columns[CELLS] = {
    [WHAT] = {.head = "Whose, which kind", .least = 19, .most = 44, .gap = 2},
    [STEPS] = {.head = "Steps", .least = 5, .most = 6, .gap = 2, .right = true},
    [GUESSED] = {.head = "Guessed", .least = 8, .most = 9, .gap = 2, .right = true, .spare = true},
    [TOOK] = {.head = "Took", .least = 8, .most = 9, .gap = 2, .right = true, .spare = true},
    [USUAL] = {.head = "Of guess", .least = 8, .most = 8, .gap = 2, .right = true},
    [RANGE] = {.head = "From, to", .least = 14, .most = 16, .gap = 2, .spare = true},
    [USED] = {.head = "In the plan", .least = 18, .most = 28},
};

// --------------------------------------------------------------------------------------------------- its words

static int64_t percent(int64_t thousandths)
{
    return (thousandths + THOUSANDTHS_OF_PERCENT / 2) / THOUSANDTHS_OF_PERCENT;
}

// "machine", "Ida", "Ida, machine", "everybody, all kinds".
static const char *name_of(const bk_pace *pace, bk_arena *arena)
{
    const char *kind = bk_word_text(&bk_kind_words, pace->kind);
    if (kind && pace->person)
        return bk_arena_print(arena, "%s, %s", pace->person, kind);
    if (kind)
        return kind;
    return pace->person ? bk_arena_print(arena, "%s, all kinds", pace->person) : "everybody, all kinds";
}

static bool is_only_shown(const bk_pace *pace)
{
    return pace->kind == BK_NO_WORD && !pace->person;
}

static const char *used_words(const bk_pace *pace, bk_arena *arena)
{
    if (is_only_shown(pace))
        return "only shown";
    return pace->count >= BK_PACE_ENOUGH ? "used"
                                         : bk_arena_print(arena, "not yet (%d needed)", (int)BK_PACE_ENOUGH);
}

const char *bk_pace_sentence(const bk_pace *pace, bk_arena *arena)
{
    const char *used = pace->count >= BK_PACE_ENOUGH
                           ? "used in the plan"
                           : bk_arena_print(arena, "not yet used (%d needed)", (int)BK_PACE_ENOUGH);
    if (is_only_shown(pace))
        used = "only shown: the plan goes by kind and by person";
    return bk_arena_print(arena, "%s: %lld step%s, took %lld %% of the guess, %s", name_of(pace, arena),
                          (long long)pace->count, pace->count == 1 ? "" : "s",
                          (long long)percent(pace->middle), used);
}

static const char *detail_of(const bk_pace *pace, bk_arena *arena)
{
    return bk_arena_print(arena,
                          "%s\nHalf of them took less than %lld %% of what was guessed, nine in ten between "
                          "%lld %% and %lld %%; together %s guessed, %s taken",
                          bk_pace_sentence(pace, arena), (long long)percent(pace->middle),
                          (long long)percent(pace->quickest), (long long)percent(pace->longest),
                          bk_cell_minutes(pace->guessed, arena), bk_cell_minutes(pace->took, arena));
}

// ----------------------------------------------------------------------------------------------------- its lines

// Which group a line stands in.
enum group { OF_ALL, OF_KINDS, OF_PEOPLE, OF_BOTH, GROUPS };

static const char *const headings[GROUPS] = {
    [OF_ALL] = "All of it",
    [OF_KINDS] = "By kind of step",
    [OF_PEOPLE] = "By person",
    [OF_BOTH] = "By person and kind",
};

static enum group group_of(const bk_pace *pace)
{
    if (pace->person)
        return pace->kind == BK_NO_WORD ? OF_PEOPLE : OF_BOTH;
    return pace->kind == BK_NO_WORD ? OF_ALL : OF_KINDS;
}

static void add_pace(bk_ledger *ledger, const bk_pace *pace, size_t index)
{
    bk_arena *arena = ledger->arena;
    bool used = pace->count >= BK_PACE_ENOUGH && !is_only_shown(pace);
    const bk_ledger_line line = {
        .id = -(int64_t)index - 1,
        .family = BK_FAMILIES,
        .cells = {[WHAT] = bk_arena_text(arena, name_of(pace, arena)),
                  [STEPS] = bk_arena_print(arena, "%lld", (long long)pace->count),
                  [GUESSED] = bk_cell_minutes(pace->guessed, arena),
                  [TOOK] = bk_cell_minutes(pace->took, arena),
                  [USUAL] = bk_arena_print(arena, "%lld %%", (long long)percent(pace->middle)),
                  [RANGE] = bk_arena_print(arena, "%lld to %lld %%", (long long)percent(pace->quickest),
                                           (long long)percent(pace->longest)),
                  [USED] = used_words(pace, arena)},
        .style = used ? BK_STYLE_PLAIN : BK_STYLE_DIM,
        .detail = detail_of(pace, arena),
    };
    bk_ledger_add(ledger, &line);
}

static bk_status fill(bk_screen *screen, bk_ledger *ledger, bk_error *error)
{
    (void)error;
    const bk_forecast *forecast = bk_wall_forecast(screen->wall);
    ledger->title = "Minutes taken";
    ledger->aside = bk_reckoning_words(screen->wall->reckoning, ledger->arena);
    for (enum group group = OF_ALL; forecast && group < GROUPS; group++) {
        const bk_ledger_line heading = {.cells = {headings[group]}};
        bk_ledger_add(ledger, &heading);
        for (size_t i = 0; i < forecast->paces.count; i++)
            if (group_of(&forecast->paces.items[i]) == group)
                add_pace(ledger, &forecast->paces.items[i], i);
    }
    return BK_OK;
}

static const bk_ledger_kind ledger_kind = {
    .columns = columns,
    .column_count = CELLS,
    .fill = fill,
    .empty =
        "No minutes have been kept yet.\n\nWhoever marks a step done (x) may type the minutes it took; the "
        "clock (t) keeps them by itself. Once there are eight of a kind, the plan goes by them "
        "instead of the guess.",
    .family = BK_FAMILIES,
    .detail_rows = DETAIL_ROWS,
};

void *bk_minutes_taken_screen_new(void)
{
    return bk_ledger_new(&ledger_kind, NULL);
}

static const bk_key_row rows[] = {BK_LEDGER_ROWS};

static const bk_key_table tables[] = {{.rows = rows, .count = sizeof rows / sizeof rows[0]},
                                      BK_LEDGER_TYPING_TABLE};

static const bk_meaning meanings[] = {
    {"of guess", "what they took of each hundred minutes guessed: half of them less, half of them more"},
    {"from, to", "nine in ten of the steps lie between"},
    {"used",
     "there are at least eight: the plan takes a person's own of that kind, else the kind's, else the "
     "person's"},
};

const bk_screen_kind bk_minutes_taken_screen = {
    .name = "Minutes taken",
    .tables = tables,
    .table_count = sizeof tables / sizeof tables[0],
    .meanings = meanings,
    .meaning_count = sizeof meanings / sizeof meanings[0],
    BK_LEDGER_OPERATIONS,
};
