#include "bodkin/ui/rail_head.h"

#include "bodkin/base/text.h"
#include "bodkin/ui/forecast_told.h"

enum { TITLE_ROW = 0, NARROW_ROW = 1, STATES_ROW = 2, WAITS_ROW = 3, GAP = 3, ROOM_OF_ALL = BK_STATES + 1 };

const bk_rail_filter bk_rail_filters[BK_WAITS_ON] = {
    [BK_WAIT_MEASURES] = {"m", "measures", "measures"},
    [BK_WAIT_MATERIALS] = {"c", "materials", "materials"},
    [BK_WAIT_FITTING] = {"f", "fitting", "a fitting"},
    [BK_WAIT_HAND] = {"h", "hand sewing", "hand sewing"},
    [BK_WAIT_PEOPLE] = {"n", "nobody", "somebody who can do it"},
    [BK_WAIT_OUT] = {"o", "out", "a piece that is out"},
    [BK_WAIT_ORDER] = {NULL, "another costume", "another costume's step"},
};

static const char *count_words(const bk_paint *paint, int64_t count, const char *one, const char *many)
{
    return bk_arena_print(paint->arena, "%lld %s", (long long)count, count == 1 ? one : many);
}

// "ready by Thu 18 Mar, 84 % in time", how far the reckoning is, or both: the first that has room in so many columns; NULL: none.
static const char *outlook_words(const bk_paint *paint, const bk_rail *rail, const bk_rail_shown *shown,
                                 size_t width)
{
    const bk_production_forecast *own = bk_forecast_production(shown->forecast, rail->production.id);
    const char *whole = bk_outlook_brief(own, rail->today, false, paint->arena);
    const char *brief = bk_outlook_brief(own, rail->today, true, paint->arena);
    const char *both =
        whole && shown->reckons ? bk_arena_print(paint->arena, "%s; %s", whole, shown->reckons) : NULL;
    bool nobody = own && rail->counts.costumes > 0 && shown->forecast->room_snag.kind == BK_SNAG_NOBODY;
    const char *empty_room = nobody ? "nobody works here yet (H)" : NULL;
    const char *const tried[] = {both, shown->reckons, whole, brief, empty_room};
    for (size_t i = 0; i < sizeof tried / sizeof tried[0]; i++)
        if (tried[i] && bk_text_columns(tried[i]) <= width)
            return tried[i];
    return NULL;
}

static int outlook_style(const bk_rail *rail, const bk_rail_shown *shown)
{
    const bk_production_forecast *own = bk_forecast_production(shown->forecast, rail->production.id);
    bk_urgency urgency = own && !shown->reckons ? bk_outlook_urgency(&own->days) : BK_NOT_SAID;
    return urgency == BK_NOT_SAID ? BK_STYLE_DIM : bk_urgency_style(urgency);
}

// The name at the left, the countdown at the right, and between them the outlook and how many costumes there are, as far as there is room.
// Returns whether the outlook had room.
static bool draw_title(const bk_paint *paint, const bk_rail *rail, const bk_rail_shown *shown)
{
    char opens[BK_DAY_WORDS_ROOM];
    bk_spot spot = bk_paint_row(paint, TITLE_ROW);
    const char *away = rail->production.put_away_on == BK_NO_DAY ? "" : "put away; ";
    const char *days = bk_arena_print(paint->arena, "%s%s, %s", away, bk_countdown(rail, paint->arena),
                                      bk_day_words(rail->production.opens, rail->today, opens));
    size_t right = bk_paint_right(paint, spot, BK_STYLE_PLAIN, days) + GAP;
    spot.width -= right < spot.width ? right : spot.width;
    size_t used = bk_paint_text(paint, spot, BK_STYLE_BOLD, rail->production.name) + GAP;
    if (used >= spot.width)
        return false;
    spot.column += used;
    spot.width -= used;
    const char *outlook = outlook_words(paint, rail, shown, spot.width);
    if (outlook) {
        used = bk_paint_text(paint, spot, outlook_style(rail, shown), outlook) + GAP;
        spot.column += used;
        spot.width -= used < spot.width ? used : spot.width;
    }
    const char *costumes = count_words(paint, rail->counts.costumes, "costume", "costumes");
    if (bk_text_columns(costumes) <= spot.width)
        bk_paint_text(paint, spot, BK_STYLE_DIM, costumes);
    return outlook;
}

// "Only what waits on a fitting, narrowed to "cape": 1 of 20".
static const char *narrowing_words(const bk_paint *paint, const bk_rail *rail, const bk_rail_shown *shown)
{
    const char *open = paint->ascii ? "\"" : "“", *close = paint->ascii ? "\"" : "”";
    const char *only = "", *query = "";
    if (shown->only != BK_RAIL_SHOWS_ALL)
        only = bk_arena_print(paint->arena, "Only what waits on %s", bk_rail_filters[shown->only].phrase);
    if (*shown->query)
        query = bk_arena_print(paint->arena, "%s %s%s%s", *only ? ", narrowed to" : "Narrowed to", open,
                               shown->query, close);
    return bk_arena_print(paint->arena, "%s%s: %zu of %zu", only, query, shown->shown, rail->costume_count);
}

// Whether all will be dressed: "late: none; tight: 3B", with the outlook in front where the first row has no room for it.
static const char *verdict_words(const bk_paint *paint, const bk_rail *rail, const bk_rail_shown *shown,
                                 bool outlook_told)
{
    if (rail->costume_count == 0)
        return NULL;
    const char *verdict = bk_forecast_verdict(rail, shown->forecast, paint->arena);
    const char *outlook = outlook_told ? NULL : outlook_words(paint, rail, shown, paint->columns);
    return outlook ? bk_arena_print(paint->arena, "%s; %s", outlook, verdict) : verdict;
}

// What narrows the rail, else the clock, else whether all will be dressed, at the left; at the right which part is seen, and, where both are to be told, the clock
// as far as there is room.
static void draw_narrowing(const bk_paint *paint, const bk_rail *rail, const bk_rail_shown *shown,
                           bool outlook_told)
{
    bk_spot spot = bk_paint_row(paint, NARROW_ROW);
    bool narrowed = shown->only != BK_RAIL_SHOWS_ALL || *shown->query;
    if (shown->last > 0 && shown->last - shown->first + 1 < shown->shown) {
        const char *part =
            bk_arena_print(paint->arena, "%zu to %zu of %zu", shown->first, shown->last, shown->shown);
        spot.width -= bk_paint_right(paint, spot, BK_STYLE_DIM, part) + GAP;
    }
    if (!narrowed && shown->clock) {
        bk_paint_text(paint, spot, BK_STYLE_ACCENT, shown->clock);
        return;
    }
    if (!narrowed) {
        bk_paint_text(paint, spot, BK_STYLE_PLAIN, verdict_words(paint, rail, shown, outlook_told));
        return;
    }
    size_t used = bk_paint_text(paint, spot, BK_STYLE_ACCENT, narrowing_words(paint, rail, shown)) + GAP;
    spot.column += used;
    spot.width -= used < spot.width ? used : spot.width;
    bk_paint_right(paint, spot, BK_STYLE_ACCENT, shown->clock);
}

static const char *number(const bk_paint *paint, int64_t count)
{
    return bk_arena_print(paint->arena, "%lld", (long long)count);
}

static void draw_states(const bk_paint *paint, const bk_rail *rail)
{
    bk_item items[ROOM_OF_ALL];
    size_t count = 0;
    for (int state = 0; state < BK_STATES; state++)
        items[count++] = (bk_item){.word = bk_state_word((bk_state)state),
                                   .rest = number(paint, rail->counts.states[state]),
                                   .spare = rail->counts.states[state] == 0};
    if (rail->counts.can_go_on > 0)
        items[count++] =
            (bk_item){.word = "can go on", .rest = number(paint, rail->counts.can_go_on), .spare = true};
    bk_paint_items(paint, bk_paint_row(paint, STATES_ROW), items, count);
}

static void draw_waits(const bk_paint *paint, const bk_rail *rail, int only)
{
    bk_item items[BK_WAITS_ON + 1];
    size_t count = 0;
    items[count++] = (bk_item){.word = "waiting on", .spare = true};
    for (int on = 0; on < BK_WAITS_ON; on++)
        items[count++] = (bk_item){.key = bk_rail_filters[on].key,
                                   .word = bk_rail_filters[on].word,
                                   .rest = number(paint, rail->counts.waits[on]),
                                   .lit = on == only,
                                   .spare = rail->counts.waits[on] == 0 || !bk_rail_filters[on].key};
    bk_paint_items(paint, bk_paint_row(paint, WAITS_ROW), items, count);
}

void bk_rail_draw_head(const bk_paint *paint, const bk_rail *rail, const bk_rail_shown *shown)
{
    bool outlook_told = draw_title(paint, rail, shown);
    draw_narrowing(paint, rail, shown, outlook_told);
    draw_states(paint, rail);
    draw_waits(paint, rail, shown->only);
}
