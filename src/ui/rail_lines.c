#include "bodkin/ui/rail_lines.h"

#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/ui/rail_head.h"

// ------------------------------------------------------------------------------------------ columns and cells

enum cell {
    NUMBER,
    ROLE,
    PERFORMER,
    TITLE,
    SHORT_SEAM,
    SEAM,
    STATE,
    WAITS,
    HELD,
    DUE,
    URGENT,
    EXPECTED,
    IN_HAND,
    CHANCE,
    HAND_WORD,
    ODDS,
    URGENCY,
    CELLS
};

static const bk_list_column shapes[CELLS] = {
    [NUMBER] = {.head = "No", .least = 2, .most = 6, .gap = 1, .right = true},
    [ROLE] = {.head = "Role", .least = 12, .most = 26, .gap = 2},
    [PERFORMER] = {.head = "Wearer", .least = 10, .most = 26, .gap = 2},
    [TITLE] = {.head = "Costume", .least = 12, .most = 40, .gap = 2},
    [SHORT_SEAM] = {.head = "Seam", .least = 8, .most = 8, .gap = 2},
    [SEAM] = {.head = "Seam", .least = 12, .most = 12, .gap = 2},
    [STATE] = {.head = "State", .least = 9, .most = 9, .gap = 2},
    [WAITS] = {.head = "Waits on", .least = 28, .most = 80, .gap = 2, .fills = true},
    [HELD] = {.head = "State, waits on", .least = 18, .most = 60, .gap = 2, .fills = true},
    [DUE] = {.head = "Due", .least = 10, .most = 15, .gap = 1, .right = true},
    [URGENT] = {.head = "", .least = 5, .most = 5},
    [EXPECTED] = {.head = "Expected", .least = 11, .most = 16, .gap = 2, .right = true},
    [IN_HAND] = {.head = "In hand", .least = 7, .most = 8, .gap = 2, .right = true},
    [CHANCE] = {.head = "Chance", .least = 9, .most = 9, .gap = 2, .right = true},
    [URGENCY] = {.head = "", .least = 7, .most = 7},
};

// The same where room is shortest.
static const bk_list_column narrow_shapes[CELLS] = {
    [NUMBER] = {.head = "No", .least = 3, .most = 6, .gap = 1, .right = true},
    [ROLE] = {.head = "Role", .least = 10, .most = 14, .gap = 1},
    [TITLE] = {.head = "Costume", .least = 11, .most = 24, .gap = 1},
    [SHORT_SEAM] = {.head = "Seam", .least = 6, .most = 6, .gap = 1},
    [HELD] = {.head = "State, waits on", .least = 18, .most = 30, .gap = 1, .fills = true},
    [EXPECTED] = {.head = "Expected", .least = 10, .most = 15, .gap = 1, .right = true},
    [HAND_WORD] = {.head = "In hand", .least = 8, .most = 8, .gap = 1, .right = true},
    [ODDS] = {.head = "Odds", .least = 5, .most = 5, .right = true},
};

enum { SIDES = 2, BRIEF_ENOUGH = 400 }; // bytes, more than a line shows

// For a screen of so many columns or more.
typedef struct arrangement {
    size_t from;
    const bk_list_column *shapes;
    size_t count;
    enum cell cells[BK_COLUMNS_MOST];
} arrangement;

// From the widest; the first for which the screen has enough columns is taken.
static const arrangement dated[] = {
    {152,
     shapes,
     12,
     {NUMBER, ROLE, PERFORMER, TITLE, SEAM, STATE, WAITS, DUE, EXPECTED, IN_HAND, CHANCE, URGENCY}},
    {128,
     shapes,
     11,
     {NUMBER, ROLE, PERFORMER, TITLE, SHORT_SEAM, HELD, DUE, EXPECTED, IN_HAND, CHANCE, URGENCY}},
    {104, shapes, 9, {NUMBER, ROLE, TITLE, SHORT_SEAM, HELD, EXPECTED, IN_HAND, CHANCE, URGENCY}},
    {0, narrow_shapes, 8, {NUMBER, ROLE, TITLE, SHORT_SEAM, HELD, EXPECTED, HAND_WORD, ODDS}},
};

// The same where no day is known of any costume.
static const arrangement dateless[] = {
    {132, shapes, 9, {NUMBER, ROLE, PERFORMER, TITLE, SEAM, STATE, WAITS, DUE, URGENCY}},
    {104, shapes, 8, {NUMBER, ROLE, PERFORMER, TITLE, SHORT_SEAM, HELD, DUE, URGENCY}},
    {0, shapes, 7, {NUMBER, ROLE, TITLE, SHORT_SEAM, HELD, DUE, URGENT}},
};

static const arrangement *arranged(const bk_rail_layout *layout, size_t columns)
{
    const arrangement *chosen = layout->dateless ? dateless : dated;
    while (columns < chosen->from)
        chosen++;
    return chosen;
}

// ---------------------------------------------------------------------------------------------------- measuring

static void want(bk_rail_layout *layout, int cell, const char *text)
{
    size_t wide = text ? bk_text_columns(text) : 0;
    if (wide > layout->wanted[cell])
        layout->wanted[cell] = wide;
}

static void want_day(bk_rail_layout *layout, int cell, bk_day day, bk_day today)
{
    char words[BK_DAY_WORDS_ROOM];
    want(layout, cell, day == BK_NO_DAY ? NULL : bk_day_words(day, today, words));
}

// Whether the day is told on which it is expected: where something of it is open and the days are known.
static bool is_dated(const bk_costume_forecast *forecast)
{
    return forecast && forecast->open && forecast->days.days_known;
}

void bk_rail_layout_measure(bk_rail_layout *layout, const bk_rail *rail, const bk_forecast *forecast,
                            bool reckons)
{
    _Static_assert((int)CELLS <= (int)BK_RAIL_CELLS_MOST, "there is no room for what the cells want");
    memset(layout->wanted, 0, sizeof layout->wanted);
    layout->dateless = forecast || !reckons;
    for (size_t i = 0; i < rail->costume_count; i++) {
        const bk_rail_costume *costume = &rail->costumes[i];
        const bk_costume_forecast *outlook = bk_forecast_costume(forecast, costume->record->id);
        want(layout, NUMBER, costume->record->number);
        want(layout, ROLE, costume->role);
        want(layout, PERFORMER, costume->performer);
        want(layout, TITLE, costume->record->title);
        want_day(layout, DUE, costume->due, rail->today);
        if (is_dated(outlook)) {
            want_day(layout, EXPECTED, outlook->days.finish, rail->today);
            layout->dateless = false;
        }
    }
}

void bk_rail_layout_fit(bk_rail_layout *layout, size_t columns)
{
    const bk_list_column *shown[BK_COLUMNS_MOST];
    size_t wanted[BK_COLUMNS_MOST];
    const arrangement *chosen = arranged(layout, columns);
    layout->shapes = chosen->shapes;
    layout->count = chosen->count;
    for (size_t i = 0; i < chosen->count; i++) {
        size_t least = chosen->shapes[chosen->cells[i]].least;
        layout->cells[i] = (int)chosen->cells[i];
        shown[i] = &chosen->shapes[chosen->cells[i]];
        wanted[i] = layout->wanted[chosen->cells[i]];
        wanted[i] = wanted[i] > least ? wanted[i] : least;
    }
    bk_columns_share(shown, wanted, layout->count, columns - SIDES, layout->widths);
}

// ----------------------------------------------------------------------------------------------------- drawing

// One line being drawn.
typedef struct drawn_line {
    const bk_paint *paint;
    const bk_rail *rail;
    const bk_rail_costume *costume;
    const bk_costume_forecast *forecast; // NULL: none yet
    bk_urgency urgency;
    bool chosen;
} drawn_line;

static int style_of(const drawn_line *line, int style)
{
    if (line->chosen)
        return BK_STYLE_CHOSEN | (style == BK_STYLE_BOLD ? BK_STYLE_BOLD : BK_STYLE_PLAIN);
    return style == BK_STYLE_PLAIN && line->costume->reckoned->state == BK_READY ? BK_STYLE_DIM : style;
}

static void draw_number(const drawn_line *line, bk_spot spot)
{
    bk_paint_right(line->paint, spot, style_of(line, BK_STYLE_PLAIN), line->costume->record->number);
}

static const char *role_of(const drawn_line *line)
{
    return line->costume->role ? line->costume->role : "no role";
}

static const char *performer_of(const drawn_line *line)
{
    return line->costume->performer ? line->costume->performer : "not cast";
}

static void draw_role(const drawn_line *line, bk_spot spot)
{
    bk_paint_text(line->paint, spot, style_of(line, BK_STYLE_PLAIN), role_of(line));
}

static void draw_performer(const drawn_line *line, bk_spot spot)
{
    bk_paint_text(line->paint, spot, style_of(line, BK_STYLE_PLAIN), performer_of(line));
}

static void draw_title(const drawn_line *line, bk_spot spot)
{
    bk_paint_text(line->paint, spot, style_of(line, BK_STYLE_PLAIN), line->costume->record->title);
}

static void draw_seam(const drawn_line *line, bk_spot spot)
{
    bk_paint_seam(line->paint, spot, line->chosen, bk_rail_seam(line->costume));
}

static void draw_state(const drawn_line *line, bk_spot spot)
{
    bk_paint_text(line->paint, spot, style_of(line, BK_STYLE_PLAIN),
                  bk_state_word(line->costume->reckoned->state));
}

static void draw_waits(const drawn_line *line, bk_spot spot)
{
    const char *waits = bk_costume_waits_brief(line->rail, line->costume, BRIEF_ENOUGH, line->paint->arena);
    bk_paint_text(line->paint, spot, style_of(line, BK_STYLE_PLAIN), waits);
}

// What it waits on, each once, where somebody must act first; returns how many.
static size_t wait_kinds(const bk_costume_waits *reckoned, bk_wait_on kinds[BK_WAITS_ON])
{
    bool told[BK_WAITS_ON] = {false};
    size_t count = 0;
    for (int turn = 1; turn >= 0; turn--)
        for (size_t i = 0; i < reckoned->wait_count; i++) {
            const bk_wait *wait = &reckoned->waits[i];
            if (told[wait->on] || wait->acts != (turn == 1))
                continue;
            told[wait->on] = true;
            kinds[count++] = wait->on;
        }
    return count;
}

// "held: materials, fitting"; where that is too long "held: materials +1", "held: materials", "held".
static const char *held_words(const drawn_line *line, size_t width)
{
    bk_arena *arena = line->paint->arena;
    bk_wait_on kinds[BK_WAITS_ON];
    size_t count = wait_kinds(line->costume->reckoned, kinds);
    bk_state state = line->costume->reckoned->state;
    const char *word = bk_state_word(state);
    if (count == 0 || state == BK_FINISHING)
        return word;
    const char *first = bk_arena_print(arena, "%s%s %s", word, state == BK_IN_WORK ? ";" : ":",
                                       bk_rail_filters[kinds[0]].word);
    const char *more = bk_arena_print(arena, "%s +%zu", first, count - 1), *all = first;
    for (size_t i = 1; i < count; i++)
        all = bk_arena_print(arena, "%s, %s", all, bk_rail_filters[kinds[i]].word);
    const char *const tried[] = {all, more, first};
    for (size_t i = 0; i < sizeof tried / sizeof tried[0]; i++)
        if (bk_text_columns(tried[i]) <= width)
            return tried[i];
    return word;
}

static void draw_held(const drawn_line *line, bk_spot spot)
{
    bk_paint_text(line->paint, spot, style_of(line, BK_STYLE_PLAIN), held_words(line, spot.width));
}

// Only what is not in time stands out.
static int day_style(const drawn_line *line)
{
    return line->urgency == BK_IN_TIME ? BK_STYLE_PLAIN : bk_urgency_style(line->urgency);
}

static void draw_due(const drawn_line *line, bk_spot spot)
{
    char day[BK_DAY_WORDS_ROOM];
    bk_day_words(line->costume->due, line->rail->today, day);
    bk_paint_right(line->paint, spot, style_of(line, day_style(line)), day);
}

static void draw_urgency(const drawn_line *line, bk_spot spot)
{
    bk_paint_text(line->paint, spot, style_of(line, bk_urgency_style(line->urgency)),
                  bk_urgency_word(line->urgency));
}

// Where room is short, what is in time needs no word.
static void draw_urgent(const drawn_line *line, bk_spot spot)
{
    if (line->urgency < BK_IN_TIME)
        draw_urgency(line, spot);
}

static void draw_expected(const drawn_line *line, bk_spot spot)
{
    char day[BK_DAY_WORDS_ROOM];
    if (!is_dated(line->forecast) || line->forecast->days.finish == BK_NO_DAY)
        return;
    bk_day_words(line->forecast->days.finish, line->rail->today, day);
    bk_paint_right(line->paint, spot, style_of(line, day_style(line)), day);
}

static void draw_in_hand(const drawn_line *line, bk_spot spot)
{
    if (is_dated(line->forecast))
        bk_paint_right(line->paint, spot, style_of(line, day_style(line)),
                       bk_days_in_hand_brief(&line->forecast->days, line->paint->arena));
}

// The days in hand and how urgent that is in one: "3 late", "1 tight", "9 days"; where no day is known, or where it is more likely late than not
// though its day is in time, the word alone.
static const char *hand_word(const drawn_line *line)
{
    const bk_outlook_days *days = line->forecast ? &line->forecast->days : NULL;
    const char *word = bk_urgency_word(line->urgency);
    if (!is_dated(line->forecast))
        return line->urgency < BK_IN_TIME ? word : "";
    if (line->urgency == BK_TIGHT)
        return bk_arena_print(line->paint->arena, "%lld %s", (long long)days->days_in_hand, word);
    bool by_odds = line->urgency == BK_LATE && days->finish != BK_NO_DAY && days->days_in_hand >= 0;
    return by_odds ? word : bk_days_in_hand_brief(days, line->paint->arena);
}

static void draw_hand_word(const drawn_line *line, bk_spot spot)
{
    bk_paint_right(line->paint, spot, style_of(line, day_style(line)), hand_word(line));
}

static void draw_chance(const drawn_line *line, bk_spot spot)
{
    if (is_dated(line->forecast))
        bk_paint_right(line->paint, spot, style_of(line, day_style(line)),
                       bk_chance_words(&line->forecast->days, line->paint->arena));
}

// "over 99 %" as ">99 %".
static const char *signed_words(const char *words, bk_arena *arena)
{
    static const char *const signs[][2] = {{"over ", ">"}, {"under ", "<"}};
    for (size_t i = 0; i < sizeof signs / sizeof signs[0]; i++) {
        size_t length = strlen(signs[i][0]);
        if (strncmp(words, signs[i][0], length) == 0)
            return bk_arena_print(arena, "%s%s", signs[i][1], words + length);
    }
    return words;
}

static void draw_odds(const drawn_line *line, bk_spot spot)
{
    bk_arena *arena = line->paint->arena;
    if (is_dated(line->forecast))
        bk_paint_right(line->paint, spot, style_of(line, day_style(line)),
                       signed_words(bk_chance_words(&line->forecast->days, arena), arena));
}

static void (*const draw_cell[CELLS])(const drawn_line *line, bk_spot spot) = {
    [NUMBER] = draw_number,   [ROLE] = draw_role,       [PERFORMER] = draw_performer,
    [TITLE] = draw_title,     [SHORT_SEAM] = draw_seam, [SEAM] = draw_seam,
    [STATE] = draw_state,     [WAITS] = draw_waits,     [HELD] = draw_held,
    [DUE] = draw_due,         [URGENT] = draw_urgent,   [EXPECTED] = draw_expected,
    [IN_HAND] = draw_in_hand, [CHANCE] = draw_chance,   [HAND_WORD] = draw_hand_word,
    [ODDS] = draw_odds,       [URGENCY] = draw_urgency,
};

void bk_rail_draw_heads(const bk_paint *paint, const bk_rail_layout *layout, size_t row)
{
    bk_spot spot = bk_paint_row(paint, row);
    for (size_t i = 0; i < layout->count; i++) {
        const bk_list_column *shape = &layout->shapes[layout->cells[i]];
        spot.width = layout->widths[i];
        if (shape->right)
            bk_paint_right(paint, spot, BK_STYLE_DIM, shape->head);
        else
            bk_paint_text(paint, spot, BK_STYLE_DIM, shape->head);
        spot.column += spot.width + shape->gap;
    }
}

void bk_rail_draw_line(const bk_paint *paint, const bk_rail_layout *layout, const bk_rail *rail,
                       const bk_forecast *forecast, const bk_rail_costume *costume, size_t row, bool chosen)
{
    const bk_costume_forecast *outlook = bk_forecast_costume(forecast, costume->record->id);
    drawn_line drawn = {paint, rail, costume, outlook, bk_urgency_of(rail, costume, outlook), chosen};
    bk_spot spot = bk_paint_row(paint, row);
    if (chosen)
        bk_paint_chosen(paint, row);
    for (size_t i = 0; i < layout->count; i++) {
        spot.width = layout->widths[i];
        draw_cell[layout->cells[i]](&drawn, spot);
        spot.column += spot.width + layout->shapes[layout->cells[i]].gap;
    }
}
