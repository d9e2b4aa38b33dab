#include "bodkin/ui/costume_lines.h"

#include <stdlib.h>
#include <string.h>

#include "bodkin/base/list.h"
#include "bodkin/base/text.h"

enum {
    STEP_COLUMN = 3,
    MARK_COLUMNS = 4, // "done", "next"
    KIND_COLUMNS = 7,
    MINUTES_COLUMNS = 8,
    DAY_COLUMNS = 10,
    FEWEST_BY_COLUMNS = 11,
    GAP = 2,
    WAIT_COLUMN = STEP_COLUMN + MARK_COLUMNS + GAP + 2,
    RIGHT_MARGIN = 1
};

// --------------------------------------------------------------------------------------------- making them

typedef BK_LIST(bk_costume_line) growing_lines;

typedef struct making {
    const bk_rail *rail;
    const bk_rail_costume *costume;
    size_t columns;
    bool ascii;
    bk_arena *arena;
    growing_lines lines;
    size_t wait; // the next one to show: waits come in the order in which pieces and steps are shown
} making;

static void add(making *made, bk_costume_line line)
{
    bk_list_add(&made->lines, line);
}

static size_t column_of(bk_costume_line_kind kind)
{
    return kind == BK_LINE_WAIT ? WAIT_COLUMN : STEP_COLUMN;
}

// A sentence on as many lines as it takes.
static void add_text(making *made, bk_costume_line line, const char *text)
{
    size_t count = 0;
    size_t width = made->columns - column_of(line.kind) - RIGHT_MARGIN;
    char **parts = bk_text_wrap(made->arena, bk_text_safe(made->arena, text, made->ascii), width, &count);
    for (size_t i = 0; i < count; i++) {
        line.text = parts[i];
        add(made, line);
    }
}

// The waits of one step of a piece; with BK_NO_INDEX those of the piece itself.
static void add_waits(making *made, size_t piece, size_t step)
{
    for (; made->wait < made->costume->reckoned->wait_count; made->wait++) {
        const bk_wait *wait = &made->costume->reckoned->waits[made->wait];
        if (wait->piece != piece || wait->step != step)
            return;
        bk_costume_line line = {.kind = BK_LINE_WAIT, .piece = piece, .step = step, .acts = wait->acts};
        add_text(made, line, bk_wait_sentence(made->rail, wait, made->arena));
    }
}

static void add_piece(making *made, size_t piece)
{
    const bk_wait_piece *row = &made->rail->rows.pieces[piece];
    if (made->lines.count > 0)
        add(made, (bk_costume_line){.kind = BK_LINE_EMPTY, .piece = piece});
    add(made, (bk_costume_line){.kind = BK_LINE_PIECE, .piece = piece});
    bk_costume_line text = {.kind = BK_LINE_TEXT, .piece = piece};
    if (made->rail->pieces[piece].note)
        add_text(made, text, made->rail->pieces[piece].note);
    add_waits(made, piece, BK_NO_INDEX);
    if (row->steps.count == 0)
        add_text(made, text, "no step is listed for it yet");
    for (size_t i = 0; i < row->steps.count; i++) {
        add(made, (bk_costume_line){.kind = BK_LINE_STEP, .piece = piece, .step = row->steps.items[i]});
        add_waits(made, piece, row->steps.items[i]);
    }
}

static size_t wider(size_t width, const char *text)
{
    size_t wide = text ? bk_text_columns(text) : 0;
    return wide > width ? wide : width;
}

// The lines of steps, and the widths of what stands in them: who did a step gets what the longest title leaves, and some
// cells in any case.
static void find_steps(const making *made, bk_costume_lines *lines)
{
    size_t others = STEP_COLUMN + MARK_COLUMNS + KIND_COLUMNS + MINUTES_COLUMNS + DAY_COLUMNS + 4 * GAP + 1 +
                    RIGHT_MARGIN;
    size_t *steps = bk_arena_take(made->arena, lines->count * sizeof *steps);
    size_t title = 0, by = FEWEST_BY_COLUMNS;
    for (size_t i = 0; i < lines->count; i++) {
        if (lines->items[i].kind != BK_LINE_STEP)
            continue;
        steps[lines->step_count++] = i;
        title = wider(title, made->rail->steps[lines->items[i].step].title);
        by = wider(by, made->rail->steps[lines->items[i].step].done_by);
    }
    size_t room = made->columns - others;
    size_t most_by = title + FEWEST_BY_COLUMNS < room ? room - title : FEWEST_BY_COLUMNS;
    lines->by_width = by < most_by ? by : most_by;
    lines->title_width = title + lines->by_width < room ? title : room - lines->by_width;
    lines->steps = steps;
}

bk_costume_lines bk_costume_lines_make(const bk_rail *rail, const bk_rail_costume *costume, size_t columns,
                                       bool ascii, bk_arena *arena)
{
    making made = {.rail = rail, .costume = costume, .columns = columns, .ascii = ascii, .arena = arena};
    const bk_indices *pieces = &rail->rows.costumes[costume->index].pieces;
    for (size_t i = 0; i < pieces->count; i++)
        add_piece(&made, pieces->items[i]);
    if (pieces->count == 0)
        add_text(&made, (bk_costume_line){.kind = BK_LINE_TEXT},
                 "No piece is listed for this costume yet: pieces.csv names the pieces, steps.csv what is to "
                 "be done on them.");
    bk_costume_lines lines = {.count = made.lines.count};
    bk_costume_line *kept = bk_arena_take(arena, lines.count * sizeof *kept);
    memcpy(kept, made.lines.items, lines.count * sizeof *kept);
    bk_list_free(&made.lines);
    lines.items = kept;
    find_steps(&made, &lines);
    return lines;
}

// ------------------------------------------------------------------------------------------- a line of a piece

static const char *const origin_phrases[BK_ORIGINS] = {
    [BK_MAKE] = "made here", [BK_ALTER] = "altered",   [BK_BUY] = "bought",
    [BK_HIRE] = "hired",     [BK_BORROW] = "borrowed", [BK_STOCK] = "from stock",
};

static const char *other_costumes(const bk_rail *rail, const bk_rail_costume *costume, size_t piece,
                                  bk_arena *arena)
{
    const bk_indices *costumes = &rail->rows.pieces[piece].costumes;
    const char *others = "";
    for (size_t i = 0; i < costumes->count; i++)
        if (costumes->items[i] != costume->index)
            others = bk_arena_print(arena, "%s%s%s", others, *others ? ", " : "",
                                    rail->rows.costumes[costumes->items[i]].number);
    return others;
}

// "made here; on the stand; also worn with 4B".
static const char *piece_facts(const bk_rail *rail, const bk_rail_costume *costume, size_t piece,
                               bk_arena *arena)
{
    const bk_piece *record = &rail->pieces[piece];
    const char *facts = record->origin == BK_NO_WORD ? "origin not known" : origin_phrases[record->origin];
    const char *others = other_costumes(rail, costume, piece, arena);
    if (record->place)
        facts = bk_arena_print(arena, "%s; %s", facts, record->place);
    if (*others)
        facts = bk_arena_print(arena, "%s; also worn with %s", facts, others);
    return facts;
}

static const char *piece_count(const bk_rail *rail, size_t piece, bk_arena *arena)
{
    const bk_indices *steps = &rail->rows.pieces[piece].steps;
    size_t done = 0;
    for (size_t i = 0; i < steps->count; i++)
        done += rail->rows.steps[steps->items[i]].done;
    return bk_arena_print(arena, "%zu of %zu done", done, steps->count);
}

static void draw_piece(const bk_paint *paint, const bk_rail *rail, const bk_rail_costume *costume,
                       size_t piece, bk_spot spot)
{
    const bk_piece *record = &rail->pieces[piece];
    if (rail->rows.pieces[piece].steps.count > 0)
        spot.width -= bk_paint_right(paint, spot, BK_STYLE_DIM, piece_count(rail, piece, paint->arena)) + GAP;
    const char *const parts[] = {record->name, record->title,
                                 piece_facts(rail, costume, piece, paint->arena)};
    static const int styles[] = {BK_STYLE_DIM, BK_STYLE_BOLD, BK_STYLE_DIM};
    for (size_t i = 0; i < sizeof parts / sizeof parts[0]; i++) {
        size_t used = bk_paint_text(paint, spot, styles[i], parts[i]) + GAP;
        spot.column += used;
        spot.width -= used < spot.width ? used : spot.width;
    }
}

// --------------------------------------------------------------------------------------------- a line of a step

static const char *mark_of(const bk_rail *rail, size_t step)
{
    if (rail->rows.steps[step].done)
        return "done";
    return bk_step_next(&rail->rows, step) ? "next" : "";
}

static void draw_done(const bk_paint *paint, const bk_rail *rail, size_t step, int style, bk_spot spot)
{
    const bk_step *record = &rail->steps[step];
    const bk_wait_step *row = &rail->rows.steps[step];
    char day[BK_DAY_WORDS_ROOM];
    if (!row->done) {
        bk_paint_text(paint, spot, style, record->can_wait == 1 ? "can wait" : "");
        return;
    }
    bk_spot left = {spot.row, spot.column, DAY_COLUMNS};
    if (record->done_on == BK_NO_DAY) {
        bk_paint_text(paint, left, style, "fits");
        return;
    }
    size_t used = bk_paint_right(paint, left, style, bk_day_words(record->done_on, rail->today, day));
    used = used > DAY_COLUMNS ? used : DAY_COLUMNS;
    bk_spot by = {spot.row, spot.column + used + 1, spot.width - used - 1};
    bk_paint_text(paint, by, style, record->done_by);
}

static void draw_step(const bk_paint *paint, const bk_rail *rail, const bk_costume_lines *lines, size_t step,
                      size_t row, bool chosen)
{
    const bk_step *record = &rail->steps[step];
    char minutes[BK_AMOUNT_ROOM];
    bool done = rail->rows.steps[step].done, next = !done && bk_step_next(&rail->rows, step);
    int style = chosen ? BK_STYLE_CHOSEN : done ? BK_STYLE_DIM : BK_STYLE_PLAIN;
    int mark_style = chosen ? BK_STYLE_CHOSEN : next ? BK_STYLE_ACCENT : style;
    bk_spot spot = {row, STEP_COLUMN, MARK_COLUMNS};
    bk_paint_text(paint, spot, mark_style, mark_of(rail, step));
    spot.column += spot.width + GAP;
    spot.width = lines->title_width;
    bk_paint_text(paint, spot, style, record->title);
    spot.column += spot.width + GAP;
    spot.width = KIND_COLUMNS;
    bk_paint_text(paint, spot, style, bk_word_text(&bk_kind_words, record->kind));
    spot.column += spot.width + GAP;
    spot.width = MINUTES_COLUMNS;
    bk_paint_right(paint, spot, style, bk_minutes_words(record->minutes, minutes));
    spot.column += spot.width + GAP;
    spot.width = DAY_COLUMNS + 1 + lines->by_width;
    draw_done(paint, rail, step, style, spot);
}

void bk_costume_line_draw(const bk_paint *paint, const bk_rail *rail, const bk_rail_costume *costume,
                          const bk_costume_lines *lines, size_t line, size_t row, bool chosen)
{
    const bk_costume_line *drawn = &lines->items[line];
    bk_spot spot = bk_paint_row(paint, row);
    if (chosen)
        bk_paint_chosen(paint, row);
    if (drawn->kind == BK_LINE_PIECE) {
        draw_piece(paint, rail, costume, drawn->piece, spot);
    } else if (drawn->kind == BK_LINE_STEP) {
        draw_step(paint, rail, lines, drawn->step, row, chosen);
    } else if (drawn->text) {
        bool wait = drawn->kind == BK_LINE_WAIT;
        spot.column = column_of(drawn->kind);
        spot.width = paint->columns - spot.column - RIGHT_MARGIN;
        bk_paint_text(paint, spot,
                      wait && drawn->acts ? BK_STYLE_TIGHT
                      : wait              ? BK_STYLE_PLAIN
                                          : BK_STYLE_DIM,
                      drawn->text);
    }
}

// ------------------------------------------------------------------------------------------- more about a step

static const char *joined(bk_arena *arena, const char *before, const char *joint, const char *more)
{
    return bk_arena_print(arena, "%s%s%s", before, *before ? joint : "", more);
}

// The titles of the steps it comes after, with the piece's name where that is another one.
static const char *after_words(const bk_rail *rail, size_t step, bk_arena *arena)
{
    const bk_wait_step *row = &rail->rows.steps[step];
    const char *words = "";
    for (size_t i = 0; i < row->after.count; i++) {
        size_t earlier = row->after.items[i];
        size_t piece = rail->rows.steps[earlier].piece;
        const char *title = rail->steps[earlier].title;
        if (piece != row->piece)
            title = bk_arena_print(arena, "%s (%s)", title, rail->pieces[piece].name);
        words = joined(arena, words, ", ", title);
    }
    return words;
}

const char *bk_step_facts(const bk_rail *rail, size_t step, bk_arena *arena)
{
    enum { HOUR_MINUTES = 60 };
    const bk_step *record = &rail->steps[step];
    const char *after = after_words(rail, step, arena);
    const char *facts = "";
    char time[BK_AMOUNT_ROOM];
    if (*after)
        facts = joined(arena, facts, "; ", bk_arena_print(arena, "comes after: %s", after));
    if (record->measures)
        facts = joined(arena, facts, "; ", bk_arena_print(arena, "measures: %s", record->measures));
    if (record->hands != BK_NOT_KNOWN && record->hands > 1)
        facts = joined(arena, facts, "; ",
                       bk_arena_print(arena, "%lld people at once", (long long)record->hands));
    if (record->rest_minutes != BK_NOT_KNOWN && record->rest_minutes > 0)
        facts = joined(arena, facts, "; ",
                       bk_arena_print(arena, "rests %s before what follows",
                                      bk_minutes_words(record->rest_minutes, time)));
    if (record->took != BK_NOT_KNOWN)
        facts = joined(arena, facts, "; ",
                       bk_arena_print(arena, "took %s", bk_minutes_words(record->took, time)));
    if (record->note)
        facts = joined(arena, facts, "; ", record->note);
    return facts;
}
