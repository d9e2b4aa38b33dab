#include "bodkin/ui/chain_screen.h"

#include "bodkin/base/text.h"
#include "bodkin/trade/words.h"
#include "bodkin/ui/acts.h"
#include "bodkin/ui/cells.h"
#include "bodkin/ui/costume_screen.h"
#include "bodkin/ui/forecast_told.h"
#include "bodkin/ui/ledger.h"
#include "bodkin/ui/stack.h"

enum { DETAIL_ROWS = 4 };

enum cell { BEGINS, STEP, TITLE, WHO, WHY, CELLS };

static const bk_list_column columns[CELLS] = {
    [BEGINS] = {.head = "Begins", .least = 16, .most = 21, .gap = 2, .right = true},
    [STEP] = {.head = "Step", .least = 9, .most = 16, .gap = 2},
    [TITLE] = {.head = "", .least = 14, .most = 50, .gap = 2, .fills = true},
    [WHO] = {.head = "Who", .least = 8, .most = 26, .gap = 2},
    [WHY] = {.head = "Waited for", .least = 22, .most = 44},
};

static const bk_rail_costume *shown(const bk_screen *screen, int64_t id)
{
    const bk_rail *rail = screen->wall->rail;
    for (size_t i = 0; rail && i < rail->costume_count; i++)
        if (rail->costumes[i].record->id == id)
            return &rail->costumes[i];
    return NULL;
}

// ------------------------------------------------------------------------------------------------- its lines

static const char *begin_words(const bk_planned_step *step, bk_day today, bk_arena *arena)
{
    if (step->begin.day == BK_NO_DAY)
        return NULL;
    return bk_arena_print(arena, "%s %s", bk_cell_day(step->begin.day, today, arena),
                          bk_cell_time(step->begin.time, arena));
}

static const char *detail_of(const bk_forecast *forecast, const bk_planned_step *step, const char *why,
                             bk_arena *arena)
{
    const char *costume = step->costume
                              ? bk_arena_print(arena, ", for %s %s", step->costume, step->piece_title)
                              : bk_arena_print(arena, ", %s", step->piece_title);
    return bk_arena_print(arena, "%s%s\n%s, %s; %s\n%s", step->title, costume,
                          bk_word_text(&bk_kind_words, step->kind), bk_cell_minutes(step->minutes, arena),
                          bk_planned_sentence(forecast, step, arena), why);
}

// `id` is the line's: the step's, or below 0 where it is told a second time.
static void add_step(bk_ledger *ledger, const bk_forecast *forecast, size_t index, int64_t id,
                     const char *why)
{
    bk_arena *arena = ledger->arena;
    const bk_planned_step *step = &forecast->steps[index];
    const bk_ledger_line line = {
        .id = id,
        .family = BK_STEPS,
        .cells = {[BEGINS] = begin_words(step, forecast->today, arena),
                  [STEP] = bk_arena_print(arena, "%s/%s", step->piece, step->key),
                  [TITLE] = bk_arena_text(arena, step->title),
                  [WHO] = bk_planned_who(forecast, step, arena),
                  [WHY] = why},
        .detail = detail_of(forecast, step, why, arena),
        .argument = step->id,
    };
    bk_ledger_add(ledger, &line);
}

static void add_heading(bk_ledger *ledger, const char *text)
{
    const bk_ledger_line line = {.cells = {text}};
    bk_ledger_add(ledger, &line);
}

static void add_chain(bk_ledger *ledger, const bk_forecast *forecast, const bk_costume_forecast *costume)
{
    if (costume->chain_count > 0)
        add_heading(ledger, "In the plan, one after the other");
    for (size_t i = 0; i < costume->chain_count; i++) {
        size_t step = costume->chain[i].step;
        add_step(ledger, forecast, step, forecast->steps[step].id,
                 bk_arena_text(ledger->arena, bk_link_words(forecast, costume->chain, i, ledger->arena)));
    }
}

static void add_deciders(bk_ledger *ledger, const bk_forecast *forecast, const bk_costume_forecast *costume)
{
    enum { PERCENT = 100 };
    const bk_outlook_days *days = &costume->days;
    if (days->decider_count == 0 || forecast->trials == 0)
        return;
    add_heading(ledger, "In the trials, where the times of the steps vary, most often");
    for (size_t i = 0; i < days->decider_count; i++) {
        const bk_planned_decider *decider = &days->deciders[i];
        long long percent = (long long)decider->trials * PERCENT / forecast->trials;
        add_step(ledger, forecast, decider->step, -forecast->steps[decider->step].id,
                 bk_arena_print(ledger->arena, "in %lld %% of them", percent));
    }
}

static bk_status fill(bk_screen *screen, bk_ledger *ledger, bk_error *error)
{
    (void)error;
    const bk_wall *wall = screen->wall;
    const int64_t *id = ledger->own;
    const bk_rail_costume *costume = shown(screen, *id);
    const bk_forecast *forecast = bk_wall_forecast(wall);
    const bk_costume_forecast *outlook = bk_forecast_costume(forecast, *id);
    if (!costume) {
        bk_stack_pop(screen->stack);
        return BK_OK;
    }
    ledger->title = bk_arena_print(ledger->arena, "%s  %s", costume->record->number, costume->record->title);
    ledger->aside = bk_wall_busy(wall) ? "still reckoning" : "what decides its day";
    if (outlook) {
        ledger->summary = bk_costume_forecast_sentence(outlook, wall->today, ledger->arena);
        add_chain(ledger, forecast, outlook);
        add_deciders(ledger, forecast, outlook);
    }
    return BK_OK;
}

static const bk_ledger_kind ledger_kind = {
    .columns = columns,
    .column_count = CELLS,
    .fill = fill,
    .empty = "Nothing decides the day of this costume: nothing of it is open, or no day is known for it. The "
             "Rail tells why.",
    .family = BK_FAMILIES,
    .of_production = true,
    .detail_rows = DETAIL_ROWS,
};

void *bk_chain_screen_new(int64_t costume)
{
    int64_t *own = bk_alloc(sizeof *own);
    *own = costume;
    return bk_ledger_new(&ledger_kind, own);
}

// -------------------------------------------------------------------------------------------------- its keys

// The costume that the step is for, where it is one of the production shown.
static const char *costume_of(const bk_screen *screen, int64_t step)
{
    const bk_planned_step *planned = bk_forecast_step(bk_wall_forecast(screen->wall), step);
    const bk_rail_costume *costume = planned ? shown(screen, planned->costume_id) : NULL;
    return costume ? costume->record->number : NULL;
}

static void open_step(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    const bk_ledger_line *chosen = bk_ledger_chosen(screen);
    const char *number = chosen ? costume_of(screen, chosen->argument) : NULL;
    if (number)
        bk_act_go(screen, &bk_costume_screen, bk_costume_screen_at(number, BK_STEPS, chosen->argument));
    else if (chosen)
        bk_wall_say(screen->wall, "That step is of another production.");
}

static const bk_key_row rows[] = {
    {.name = BK_KEY_ENTER,
     .written = "Enter",
     .bottom = "open the step",
     .help = "open the costume at the step under the cursor",
     .act = open_step,
     .matters = bk_ledger_has_line},
    BK_LEDGER_ROWS,
};

static const bk_key_table tables[] = {{.rows = rows, .count = sizeof rows / sizeof rows[0]},
                                      BK_LEDGER_TYPING_TABLE};

static const bk_meaning meanings[] = {
    {"begins", "when the plan has it, with the hands and hours there are"},
    {"waited for", "what kept it from beginning earlier"},
    {"in the trials",
     "how often the step was in the chain that decided the day, as the times of all steps vary"},
};

const bk_screen_kind bk_chain_screen = {
    .name = "Chain",
    .tables = tables,
    .table_count = sizeof tables / sizeof tables[0],
    .meanings = meanings,
    .meaning_count = sizeof meanings / sizeof meanings[0],
    BK_LEDGER_OPERATIONS,
};
