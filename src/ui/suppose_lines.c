#include "bodkin/ui/suppose_lines.h"

#include <stdlib.h>

#include "bodkin/sheet/forecast_words.h"
#include "bodkin/ui/cells.h"
#include "bodkin/ui/suppose_turn.h"
#include "bodkin/ui/suppose_words.h"

enum cell { NAME, WHAT, NOW, NOW_CHANCE, THEN, THEN_CHANCE };

const bk_list_column bk_suppose_columns[BK_SUPPOSE_COLUMNS] = {
    [NAME] = {.head = "", .least = 6, .most = 10, .gap = 2},
    [WHAT] = {.head = "", .least = 16, .most = 60, .gap = 2, .fills = true},
    [NOW] = {.head = "Now", .least = 7, .most = 15, .gap = 1, .right = true},
    [NOW_CHANCE] = {.head = "Chance", .least = 9, .most = 9, .gap = 3, .right = true},
    [THEN] = {.head = "Then", .least = 7, .most = 15, .gap = 1, .right = true},
    [THEN_CHANCE] = {.head = "Chance", .least = 9, .most = 11, .right = true},
};

// What a reading puts into the ledger.
typedef struct filling {
    const bk_wall *wall;
    bk_ledger *ledger;
    const bk_forecast *now, *then; // both or none
} filling;

static void add_heading(const filling *at, const char *text)
{
    const bk_ledger_line heading = {.family = BK_FAMILIES, .cells = {text}};
    bk_ledger_add(at->ledger, &heading);
}

// --------------------------------------------------------------------------------------------- what is supposed

static bk_status add_supposed(const filling *at, bk_error *error)
{
    const bk_supposed *supposed = at->wall->supposed;
    bk_status status = BK_OK;
    if (supposed->count > 0)
        add_heading(at, "Supposed");
    for (size_t i = 0; !status && i < supposed->count; i++) {
        bk_supposed_told told;
        status = bk_supposed_tell(at->wall, &supposed->items[i], at->ledger->arena, &told, error);
        if (status)
            break;
        const bk_ledger_line line = {
            .id = (int64_t)i + 1,
            .family = BK_FAMILIES,
            .cells = {[NAME] = told.sort,
                      [WHAT] = told.gone ? "no longer there" : told.what,
                      [NOW] = told.now,
                      [THEN] = told.then,
                      [THEN_CHANCE] = told.hours},
            .style = told.gone ? BK_STYLE_DIM : BK_STYLE_PLAIN,
            .name = told.words,
            .detail = told.words,
        };
        bk_ledger_add(at->ledger, &line);
    }
    return status;
}

// ----------------------------------------------------------------------------------------- what becomes of it

// What is late or tight then; the numbers say so too.
static const int *styles_of(const filling *at, const bk_outlook_days *then)
{
    static const int urgent[BK_URGENCIES] = {[BK_LATE] = BK_STYLE_LATE,
                                             [BK_TIGHT] = BK_STYLE_TIGHT,
                                             [BK_IN_TIME] = BK_STYLE_PLAIN,
                                             [BK_NOT_SAID] = BK_STYLE_PLAIN};
    int *styles = bk_arena_clear(at->ledger->arena, BK_SUPPOSE_COLUMNS, sizeof *styles);
    for (size_t i = 0; i < BK_SUPPOSE_COLUMNS; i++)
        styles[i] = i >= THEN && then ? urgent[bk_outlook_urgency(then)] : BK_STYLE_PLAIN;
    return styles;
}

static const char *late_words(const bk_production_forecast *production, bk_arena *arena)
{
    return production->late ? bk_arena_print(arena, "%lld late", (long long)production->late) : "none late";
}

// The production as a whole, before and after.
static void add_whole(const filling *at)
{
    bk_arena *arena = at->ledger->arena;
    int64_t id = at->wall->rail->production.id;
    const bk_production_forecast *now = bk_forecast_production(at->now, id);
    const bk_production_forecast *then = bk_forecast_production(at->then, id);
    if (!now || !then)
        return;
    bk_day today = at->wall->today;
    const bk_ledger_line line = {
        .id = id,
        .family = BK_PRODUCTIONS,
        .cells = {[NAME] = "all",
                  [WHAT] =
                      bk_arena_print(arena, "%s; then %s", late_words(now, arena), late_words(then, arena)),
                  [NOW] = bk_days_in_hand_brief(&now->days, arena),
                  [NOW_CHANCE] = bk_chance_words(&now->days, arena),
                  [THEN] = bk_days_in_hand_brief(&then->days, arena),
                  [THEN_CHANCE] = bk_chance_words(&then->days, arena)},
        .styles = styles_of(at, &then->days),
        .detail =
            bk_arena_print(arena, "Now: %s.\nThen: %s.", bk_production_forecast_sentence(now, today, arena),
                           bk_production_forecast_sentence(then, today, arena)),
    };
    add_heading(at, "The whole of it");
    bk_ledger_add(at->ledger, &line);
}

static const char *days_cell(const bk_costume_forecast *costume, bk_arena *arena)
{
    if (!costume)
        return "dropped";
    return costume->open ? bk_days_in_hand_brief(&costume->days, arena) : "done";
}

static const char *chance_cell(const bk_costume_forecast *costume, bk_arena *arena)
{
    return costume && costume->open ? bk_chance_words(&costume->days, arena) : "";
}

static const char *costume_detail(const filling *at, const bk_costume_forecast *now,
                                  const bk_costume_forecast *then)
{
    bk_arena *arena = at->ledger->arena;
    bk_day today = at->wall->today;
    const char *before = bk_costume_forecast_sentence(now, today, arena);
    const char *after = then ? bk_costume_forecast_sentence(then, today, arena) : "It is not made";
    return bk_arena_print(arena, "Now: %s.\nThen: %s.", before, after);
}

static void add_costume(const filling *at, const bk_costume_forecast *now, const bk_costume_forecast *then)
{
    bk_arena *arena = at->ledger->arena;
    bool own = now->production_id == at->wall->rail->production.id;
    const bk_production_forecast *other = own ? NULL : bk_forecast_production(at->now, now->production_id);
    const bk_outlook_days *days = then && then->open ? &then->days : NULL;
    const bk_ledger_line line = {
        .id = now->id,
        .family = BK_COSTUMES,
        .cells = {[NAME] = now->number,
                  [WHAT] = other ? bk_arena_print(arena, "%s: %s", other->name, now->title) : now->title,
                  [NOW] = days_cell(now, arena),
                  [NOW_CHANCE] = chance_cell(now, arena),
                  [THEN] = days_cell(then, arena),
                  [THEN_CHANCE] = chance_cell(then, arena)},
        .styles = styles_of(at, days),
        .detail = costume_detail(at, now, then),
    };
    bk_ledger_add(at->ledger, &line);
}

static int by_urgency(const void *left, const void *right)
{
    const bk_costume_forecast *const *one = left, *const *other = right;
    return bk_forecast_order(*one, *other);
}

static const char *const turn_words[BK_TURNS] = {
    [BK_TURN_RIGHT] = "Come right", [BK_TURN_WORSE] = "Get worse",     [BK_TURN_BETTER] = "Get better",
    [BK_TURN_DROPPED] = "Not made", [BK_TURN_SAME] = "Much as before",
};

// Those of other productions are told where something becomes of them.
static void add_turn(const filling *at, bk_turn turn)
{
    size_t count = 0;
    const bk_costume_forecast **turned =
        bk_arena_clear(at->ledger->arena, at->now->costume_count, sizeof *turned);
    for (size_t i = 0; i < at->now->costume_count; i++) {
        const bk_costume_forecast *now = &at->now->costumes[i];
        bool own = now->production_id == at->wall->rail->production.id;
        if ((own || turn != BK_TURN_SAME) && bk_turn_of(now, bk_forecast_costume(at->then, now->id)) == turn)
            turned[count++] = now;
    }
    qsort(turned, count, sizeof *turned, by_urgency);
    if (count > 0)
        add_heading(at, bk_arena_print(at->ledger->arena, "%s: %zu", turn_words[turn], count));
    for (size_t i = 0; i < count; i++)
        add_costume(at, turned[i], bk_forecast_costume(at->then, turned[i]->id));
}

// ------------------------------------------------------------------------------------------------ round about

static const char *summary_of(const filling *at)
{
    const bk_wall *wall = at->wall;
    bk_arena *arena = at->ledger->arena;
    const char *trouble = wall->supposing ? bk_reckoning_trouble(wall->supposing) : NULL;
    if (wall->supposed->count == 0)
        return NULL;
    if (trouble)
        return bk_arena_print(arena, "It could not be reckoned: %s", trouble);
    if (!at->then)
        return "Reckoning what comes of it; nothing is changed until you keep it.";
    return "Nothing is changed until you keep it (k).";
}

static void tell_head(const filling *at)
{
    bk_arena *arena = at->ledger->arena;
    const bk_wall *wall = at->wall;
    bool busy = wall->reckoning && bk_reckoning_busy(wall->reckoning);
    const char *state = bk_reckoning_words(busy ? wall->reckoning : wall->supposing, arena);
    at->ledger->title = bk_arena_print(arena, "Suppose: %s", wall->rail->production.name);
    at->ledger->aside = bk_cell_joined(arena, state ? state : "", "; ", bk_countdown(wall->rail, arena));
    at->ledger->summary = summary_of(at);
}

bk_status bk_suppose_fill(bk_screen *screen, bk_ledger *ledger, bk_error *error)
{
    bk_wall_suppose(screen->wall);
    filling at = {.wall = screen->wall, .ledger = ledger, .then = bk_wall_supposed_forecast(screen->wall)};
    at.now = at.then ? bk_wall_forecast(screen->wall) : NULL;
    bk_status status = add_supposed(&at, error);
    if (status)
        return status;
    tell_head(&at);
    if (!at.then)
        return BK_OK;
    add_whole(&at);
    for (int turn = 0; turn < BK_TURNS; turn++)
        add_turn(&at, (bk_turn)turn);
    return BK_OK;
}
