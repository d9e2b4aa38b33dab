#include "bodkin/ui/costume_lines.h"

#include <stdlib.h>
#include <string.h>

#include "bodkin/base/list.h"
#include "bodkin/base/text.h"
#include "bodkin/ui/forecast_told.h"

enum { FEWEST_BY_COLUMNS = 11, FEWEST_DAY_COLUMNS = 10 };

typedef BK_LIST(bk_costume_line) growing_lines;
typedef BK_LIST(bk_costume_stop) growing_stops;

typedef struct making {
    const bk_rail *rail;
    const bk_rail_costume *costume;
    const bk_costume_beside *beside;
    const bk_forecast *forecast;
    const bk_costume_forecast *outlook; // the costume's; NULL: none yet
    size_t columns;
    bool ascii;
    bk_arena *arena;
    growing_lines lines;
    growing_stops stops;
    size_t wait; // the next one to show: waits come in the order in which pieces and steps are shown
} making;

static void add(making *made, bk_costume_line line)
{
    bk_list_add(&made->lines, line);
}

// The line added next is one where the cursor can stand.
static void add_stop(making *made, bk_costume_stop stop)
{
    stop.line = made->lines.count;
    bk_list_add(&made->stops, stop);
}

size_t bk_costume_line_column(bk_costume_line_kind kind)
{
    return kind == BK_LINE_WAIT || kind == BK_LINE_NEED ? BK_LINE_WAIT_COLUMN : BK_LINE_STEP_COLUMN;
}

// A sentence on as many lines as it takes.
static void add_text(making *made, bk_costume_line line, const char *text)
{
    size_t count = 0;
    size_t width = made->columns - bk_costume_line_column(line.kind) - BK_LINE_MARGIN;
    char **parts = bk_text_wrap(made->arena, bk_text_safe(made->arena, text, made->ascii), width, &count);
    for (size_t i = 0; i < count; i++) {
        line.text = parts[i];
        add(made, line);
    }
}

// ---------------------------------------------------------------------------------------------- waits and needs

// The next wait, where it is one of that step of that piece; with BK_NO_INDEX of the piece itself.
static const bk_wait *wait_of(const making *made, size_t piece, size_t step)
{
    const bk_costume_waits *reckoned = made->costume->reckoned;
    if (made->wait >= reckoned->wait_count)
        return NULL;
    const bk_wait *wait = &reckoned->waits[made->wait];
    return wait->piece == piece && wait->step == step ? wait : NULL;
}

static void add_wait(making *made, const bk_wait *wait)
{
    bk_costume_line line = {
        .kind = BK_LINE_WAIT, .piece = wait->piece, .step = wait->step, .acts = wait->acts};
    const char *sentence = bk_wait_sentence(made->rail, wait, made->arena);
    add_text(made, line, bk_wait_wanted(made->rail, made->outlook, wait, sentence, made->arena));
    made->wait++;
}

// The shelf and the orders are shared out over all open steps, also those that are not next.
static const char *need_text(const making *made, size_t step, size_t need)
{
    const bk_wait_step *row = &made->rail->rows.steps[step];
    for (size_t i = 0; i < row->claim_count; i++)
        if (row->claims[i].need_position == (int64_t)need)
            return bk_claim_sentence(made->rail, &row->claims[i], made->arena);
    return bk_arena_print(made->arena, "needs %s", bk_costume_need_words(made->beside, need, made->arena));
}

static void add_need(making *made, size_t piece, size_t step, size_t need)
{
    const bk_wait *wait = wait_of(made, piece, step);
    bool waits = wait && wait->claim && wait->claim->need_position == (int64_t)need;
    bk_costume_line line = {.kind = BK_LINE_NEED, .piece = piece, .step = step, .waits = waits};
    line.acts = waits && wait->acts;
    add_stop(made, (bk_costume_stop){.family = BK_NEEDS,
                                     .id = made->beside->needs[need].id,
                                     .piece = piece,
                                     .step = step,
                                     .need = need});
    const char *text = need_text(made, step, need);
    if (waits)
        text = bk_wait_wanted(made->rail, made->outlook, wait, text, made->arena);
    add_text(made, line, text);
    made->wait += waits;
}

// What a done step took is no longer needed; it is told below.
static void add_needs(making *made, size_t piece, size_t step)
{
    if (made->rail->rows.steps[step].done)
        return;
    for (size_t i = 0; i < made->beside->need_count; i++)
        if (made->beside->needs[i].step_id == made->rail->steps[step].id)
            add_need(made, piece, step, i);
}

static void add_step(making *made, size_t piece, size_t step)
{
    add_stop(made, (bk_costume_stop){.family = BK_STEPS,
                                     .id = made->rail->steps[step].id,
                                     .piece = piece,
                                     .step = step,
                                     .need = BK_NO_INDEX});
    add(made, (bk_costume_line){.kind = BK_LINE_STEP, .piece = piece, .step = step});
    const bk_wait *wait = wait_of(made, piece, step);
    for (; wait && wait->on < BK_WAIT_MATERIALS; wait = wait_of(made, piece, step))
        add_wait(made, wait);
    add_needs(made, piece, step);
    for (wait = wait_of(made, piece, step); wait; wait = wait_of(made, piece, step))
        add_wait(made, wait);
}

// -------------------------------------------------------------------------------------------------- the pieces

static void add_piece(making *made, size_t piece)
{
    const bk_wait_piece *row = &made->rail->rows.pieces[piece];
    if (made->lines.count > 0)
        add(made, (bk_costume_line){.kind = BK_LINE_EMPTY, .piece = piece});
    add_stop(made, (bk_costume_stop){.family = BK_PIECES,
                                     .id = made->rail->pieces[piece].id,
                                     .piece = piece,
                                     .step = BK_NO_INDEX,
                                     .need = BK_NO_INDEX});
    add(made, (bk_costume_line){.kind = BK_LINE_PIECE, .piece = piece});
    bk_costume_line text = {.kind = BK_LINE_TEXT, .piece = piece};
    if (made->rail->pieces[piece].note)
        add_text(made, text, made->rail->pieces[piece].note);
    for (const bk_wait *wait = wait_of(made, piece, BK_NO_INDEX); wait;
         wait = wait_of(made, piece, BK_NO_INDEX))
        add_wait(made, wait);
    if (row->steps.count == 0)
        add_text(made, text, "no step is listed for it yet: y takes an order of work, + adds a step");
    for (size_t i = 0; i < row->steps.count; i++)
        add_step(made, piece, row->steps.items[i]);
}

static size_t wider(size_t width, const char *text)
{
    size_t wide = text ? bk_text_columns(text) : 0;
    return wide > width ? wide : width;
}

// What the lines of steps would take.
typedef struct wanted {
    size_t done_title, open_title, day, by, can_wait;
    size_t open_told; // with the title of an open step, that it can wait
    bool planned;     // some open step is
} wanted;

// A step that is done, or is planned, has a day and who does it.
static void want_day_and_who(const making *made, size_t step, wanted *all)
{
    char day[BK_DAY_WORDS_ROOM];
    const bk_step *record = &made->rail->steps[step];
    const bk_planned_step *planned = bk_forecast_step(made->forecast, record->id);
    if (record->done_on != BK_NO_DAY)
        all->day = wider(all->day, bk_day_words(record->done_on, made->rail->today, day));
    all->by = wider(all->by, record->done_by);
    if (!planned || planned->begin.day == BK_NO_DAY)
        return;
    all->planned = true;
    all->day = wider(all->day, bk_day_words(planned->begin.day, made->rail->today, day));
    all->by = wider(all->by, bk_planned_who(made->forecast, planned, made->arena));
}

static wanted wanted_widths(const making *made, const bk_costume_lines *lines)
{
    wanted all = {.day = FEWEST_DAY_COLUMNS, .by = FEWEST_BY_COLUMNS};
    for (size_t i = 0; i < lines->count; i++) {
        if (lines->items[i].kind != BK_LINE_STEP)
            continue;
        const bk_step *step = &made->rail->steps[lines->items[i].step];
        bool done = made->rail->rows.steps[lines->items[i].step].done;
        size_t *title = done ? &all.done_title : &all.open_title;
        *title = wider(*title, step->title);
        want_day_and_who(made, lines->items[i].step, &all);
        size_t can_wait = !done && step->can_wait == 1 ? BK_LINE_GAP + BK_LINE_CAN_WAIT_COLUMNS : 0;
        all.can_wait = can_wait > 0 ? can_wait : all.can_wait;
        if (!done && bk_text_columns(step->title) + can_wait > all.open_told)
            all.open_told = bk_text_columns(step->title) + can_wait;
    }
    return all;
}

static size_t least(size_t left, size_t right)
{
    return left < right ? left : right;
}

// Who did a step gets what the longest title leaves, and some cells in any case. Where an open step's title has no room as
// wide as those of done ones, its line goes on where day and name would stand.
static void share_width(const making *made, bk_costume_lines *lines)
{
    enum { BEFORE = BK_LINE_STEP_COLUMN + BK_LINE_MARK_COLUMNS + BK_LINE_GAP };
    enum { BEHIND = 2 * BK_LINE_GAP + BK_LINE_KIND_COLUMNS + BK_LINE_MINUTES_COLUMNS + BK_LINE_MARGIN };
    wanted all = wanted_widths(made, lines);
    size_t open_room = made->columns - BEFORE - BEHIND;
    size_t room = open_room - BK_LINE_GAP - all.day - 1;
    size_t open_title = all.planned ? all.open_told : all.open_title;
    size_t title = all.done_title > open_title ? all.done_title : open_title;
    size_t most_by = title + FEWEST_BY_COLUMNS < room ? room - title : FEWEST_BY_COLUMNS;
    lines->day_width = all.day;
    lines->by_width = least(all.by, most_by);
    lines->title_width = least(title, room - lines->by_width);
    lines->planned = all.planned;
    lines->wait_within = all.planned || all.open_title > open_room - all.can_wait;
    if (all.planned) {
        lines->open_width = lines->title_width;
        return;
    }
    lines->open_width = least(lines->wait_within ? all.open_told : all.open_title, open_room);
    if (lines->open_width < lines->title_width)
        lines->open_width = lines->title_width;
}

static void *kept(bk_arena *arena, const void *items, size_t size)
{
    void *copy = bk_arena_take(arena, size);
    return size > 0 ? memcpy(copy, items, size) : copy;
}

bk_costume_lines bk_costume_lines_make(const bk_rail *rail, const bk_rail_costume *costume,
                                       const bk_costume_beside *beside, const bk_forecast *forecast,
                                       size_t columns, bool ascii, bk_arena *arena)
{
    making made = {.rail = rail,
                   .costume = costume,
                   .beside = beside,
                   .forecast = forecast,
                   .outlook = bk_forecast_costume(forecast, costume->record->id),
                   .columns = columns,
                   .ascii = ascii,
                   .arena = arena};
    const bk_indices *pieces = &rail->rows.costumes[costume->index].pieces;
    bk_costume_stop itself = {.family = BK_COSTUMES,
                              .id = costume->record->id,
                              .line = BK_NO_INDEX,
                              .piece = BK_NO_INDEX,
                              .step = BK_NO_INDEX,
                              .need = BK_NO_INDEX};
    bk_list_add(&made.stops, itself);
    for (size_t i = 0; i < pieces->count; i++)
        add_piece(&made, pieces->items[i]);
    if (pieces->count == 0)
        add_text(&made, (bk_costume_line){.kind = BK_LINE_TEXT},
                 "No piece hangs under this costume yet. + adds the first: a coat, a shirt, a hat, each with "
                 "the steps that make it.");
    bk_costume_lines lines = {
        .items = kept(arena, made.lines.items, made.lines.count * sizeof *made.lines.items),
        .count = made.lines.count,
        .stops = kept(arena, made.stops.items, made.stops.count * sizeof *made.stops.items),
        .stop_count = made.stops.count};
    bk_list_free(&made.lines);
    bk_list_free(&made.stops);
    share_width(&made, &lines);
    return lines;
}
