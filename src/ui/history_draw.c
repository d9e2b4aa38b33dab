#include "bodkin/ui/history_draw.h"

#include "bodkin/base/text.h"
#include "bodkin/ui/length_words.h"

// Rows: the title, what is marked, an empty one, the days, the measures, an empty one, the detail, an empty one, the bottom
// line.
enum {
    TITLE_ROW,
    SUMMARY_ROW,
    HEADS_ROW = 3,
    LIST_ROW,
    DETAIL_ROWS = 5,
    BELOW = DETAIL_ROWS + 3,
    TEXT_MOST = 100, // longest comfortable line
    TEXT_COLUMNS = 76,
};

enum { NAME_MOST = 24, GAP = 2, WORD_COLUMNS = 6, MARK_COLUMNS = 1 };

// How wide each part of a sheet's column is, and where the first one begins.
typedef struct layout {
    size_t name, value, change;
    size_t column; // where the first sheet begins
    size_t width;  // of a sheet, with the gap behind it
    size_t shown;  // so many sheets have room
} layout;

static size_t wider(size_t width, const char *text)
{
    size_t columns = text ? bk_text_columns(text) : 0;
    return columns > width ? columns : width;
}

// The widest day over the columns.
static size_t widest_day(const bk_history *history, bk_day today)
{
    char day[BK_DAY_WORDS_ROOM];
    size_t width = 0;
    for (size_t i = 0; i < history->sheet_count; i++)
        width = wider(width, bk_day_words(history->sheets[i].on, today, day));
    return width;
}

static layout lay_out(const bk_history_view *view, const bk_wall *wall, const bk_paint *paint)
{
    layout at = {.name = bk_text_columns("Measure")};
    const bk_history *history = &view->history;
    for (size_t i = 0; i < history->row_count; i++) {
        at.name = wider(at.name, history->rows[i].name);
        for (size_t s = 0; s < history->sheet_count; s++) {
            const bk_history_cell *cell = &history->rows[i].cells[s];
            at.value = wider(at.value, bk_length_number(cell->value, view->unit, paint->arena));
            at.change = wider(at.change, bk_change_number(cell->change, view->unit, paint->arena));
        }
    }
    at.name = at.name < NAME_MOST ? at.name : NAME_MOST;
    at.column = 1 + at.name + GAP;
    size_t cells = at.value + MARK_COLUMNS + 1 + at.change + 1 + WORD_COLUMNS;
    size_t day = widest_day(history, wall->today);
    at.width = (cells > day ? cells : day) + GAP;
    at.shown = (paint->columns - 1 - at.column + GAP) / at.width;
    at.shown = at.shown > 0 ? at.shown : 1;
    return at;
}

// Brings the sheet of the cursor in sight, and leaves no room empty at the end.
static void scroll(bk_history_view *view, const layout *at)
{
    size_t count = view->history.sheet_count;
    if (view->first > view->sheet)
        view->first = view->sheet;
    if (view->sheet >= view->first + at->shown)
        view->first = view->sheet - at->shown + 1;
    if (view->first + at->shown > count)
        view->first = count > at->shown ? count - at->shown : 0;
}

// -------------------------------------------------------------------------------------------- round about

static const char *limit_words(const bk_history_view *view, bk_arena *arena)
{
    char percent[BK_AMOUNT_ROOM];
    return bk_arena_print(arena, "marked: a change of more than %s and %s %%",
                          bk_length_words(view->history.limit.length, view->unit, arena),
                          bk_quantity_write(view->history.limit.percent, percent));
}

static void draw_title(const bk_history_view *view, const bk_paint *paint, const layout *at)
{
    size_t count = view->history.sheet_count;
    bk_spot title = bk_paint_row(paint, TITLE_ROW), summary = bk_paint_row(paint, SUMMARY_ROW);
    title.width -=
        bk_paint_right(paint, title, BK_STYLE_DIM, view->unit == BK_INCH ? "in inches" : "in centimetres") +
        GAP;
    bk_paint_text(paint, title, BK_STYLE_BOLD,
                  bk_arena_print(paint->arena, "Measures of %s", view->history.performer.name));
    if (count > at->shown) {
        const char *part = bk_arena_print(paint->arena, "sheets %zu to %zu of %zu", view->first + 1,
                                          view->first + at->shown, count);
        summary.width -= bk_paint_right(paint, summary, BK_STYLE_DIM, part) + GAP;
    }
    if (count > 0)
        bk_paint_text(paint, summary, BK_STYLE_PLAIN, limit_words(view, paint->arena));
}

static void draw_never(const bk_history_view *view, const bk_paint *paint)
{
    bk_spot spot = bk_paint_row(paint, HEADS_ROW);
    spot.width = spot.width < TEXT_COLUMNS ? spot.width : TEXT_COLUMNS;
    bk_paint_paragraphs(
        paint, spot, paint->rows - HEADS_ROW - 2, BK_STYLE_PLAIN,
        bk_arena_print(paint->arena,
                       "%s has never been measured.\n\nPress + to take the first sheet: one measure a "
                       "line, each with its landmarks told below; Enter goes on, and an empty Enter passes "
                       "a measure over.",
                       view->history.performer.name));
    bk_term_cursor(HEADS_ROW, 0, false);
}

static void draw_closed(const bk_paint *paint)
{
    bk_paint_text(paint, bk_paint_row(paint, TITLE_ROW), BK_STYLE_BOLD, "Measures");
    bk_spot spot = bk_paint_row(paint, HEADS_ROW);
    spot.width = spot.width < TEXT_COLUMNS ? spot.width : TEXT_COLUMNS;
    bk_paint_whole(
        paint, spot, paint->rows - HEADS_ROW - 2, BK_STYLE_PLAIN,
        "The values of measures are the maker's alone. The Cast screen tells on which day everybody "
        "was measured, and whether that is too long ago.");
    bk_term_cursor(HEADS_ROW, 0, false);
}

// ---------------------------------------------------------------------------------------------- the columns

static void draw_heads(const bk_history_view *view, const bk_wall *wall, const bk_paint *paint,
                       const layout *at)
{
    char day[BK_DAY_WORDS_ROOM];
    if (view->on_head)
        bk_paint_chosen(paint, HEADS_ROW);
    int rest = view->on_head ? BK_STYLE_CHOSEN : 0;
    bk_paint_text(paint, (bk_spot){HEADS_ROW, 1, at->name}, BK_STYLE_DIM | rest, "Measure");
    for (size_t i = 0; i < at->shown && view->first + i < view->history.sheet_count; i++) {
        size_t sheet = view->first + i;
        bk_spot spot = {HEADS_ROW, at->column + i * at->width, at->width - GAP};
        bool chosen = sheet == view->sheet;
        int style = chosen ? BK_STYLE_ACCENT : BK_STYLE_DIM | rest;
        if (chosen && view->on_head) {
            bk_term_fill(HEADS_ROW, spot.column - 1, spot.width + 1, BK_STYLE_BOLD);
            style = BK_STYLE_BOLD;
            bk_term_cursor(HEADS_ROW, spot.column, false);
        }
        bk_paint_text(paint, spot, style, bk_day_words(view->history.sheets[sheet].on, wall->today, day));
    }
}

// "grew", "shrank": what a change that is marked means.
static const char *change_word(const bk_history_cell *cell)
{
    return !cell->beyond ? NULL : cell->change > 0 ? "grew" : "shrank";
}

// A value, a mark where it is doubted, the change and what it means. `over` is the style of the line of the cursor.
static void draw_cell(const bk_history_view *view, const bk_paint *paint, const layout *at, bk_spot spot,
                      const bk_history_cell *cell, bool chosen, int over)
{
    int value = cell->doubt && !over ? BK_STYLE_TIGHT : BK_STYLE_PLAIN | over;
    int change = over ? over : cell->beyond ? BK_STYLE_TIGHT : BK_STYLE_DIM;
    bk_spot number = {spot.row, spot.column, at->value};
    if (chosen) {
        bk_term_fill(spot.row, spot.column - 1, at->value + MARK_COLUMNS + 1, BK_STYLE_BOLD);
        value = BK_STYLE_BOLD;
        bk_term_cursor(spot.row, spot.column + at->value, false);
    }
    bk_paint_right(paint, number, value, bk_length_number(cell->value, view->unit, paint->arena));
    if (cell->doubt)
        bk_term_put(spot.row, spot.column + at->value, MARK_COLUMNS, value, "?");
    spot.column += at->value + MARK_COLUMNS + 1;
    bk_paint_right(paint, (bk_spot){spot.row, spot.column, at->change}, change,
                   bk_change_number(cell->change, view->unit, paint->arena));
    bk_paint_text(paint, (bk_spot){spot.row, spot.column + at->change + 1, WORD_COLUMNS}, change,
                  change_word(cell));
}

static void draw_row(const bk_history_view *view, const bk_paint *paint, const layout *at, size_t index,
                     size_t row)
{
    const bk_history_row *measure = &view->history.rows[index];
    bool chosen = !view->on_head && index == view->rows.at;
    if (chosen)
        bk_paint_chosen(paint, row);
    int over = chosen ? BK_STYLE_CHOSEN : 0;
    bk_paint_text(paint, (bk_spot){row, 1, at->name}, BK_STYLE_PLAIN | over, measure->name);
    for (size_t i = 0; i < at->shown && view->first + i < view->history.sheet_count; i++) {
        size_t sheet = view->first + i;
        bk_spot spot = {row, at->column + i * at->width, at->width};
        draw_cell(view, paint, at, spot, &measure->cells[sheet], chosen && sheet == view->sheet, over);
    }
}

static void draw_list(bk_history_view *view, const bk_paint *paint, const layout *at)
{
    size_t rows = paint->rows - LIST_ROW - BELOW;
    bk_cursor_fit(&view->rows, view->history.row_count, rows);
    for (size_t i = 0; i < rows && view->rows.top + i < view->rows.count; i++)
        draw_row(view, paint, at, view->rows.top + i, LIST_ROW + i);
    if (view->rows.top > 0)
        bk_paint_right(paint, bk_paint_row(paint, HEADS_ROW - 1), BK_STYLE_DIM, "more above");
    if (view->rows.top + rows < view->rows.count)
        bk_paint_right(paint, bk_paint_row(paint, LIST_ROW + rows), BK_STYLE_DIM, "more below");
}

// --------------------------------------------------------------------------------------------- the detail

// ", over a thin shirt, by Ida".
static const char *circumstances(const char *over, const char *taken_by, bk_arena *arena)
{
    return bk_arena_print(arena, "%s%s%s%s", over ? ", over " : "", over ? over : "", taken_by ? ", by " : "",
                          taken_by ? taken_by : "");
}

static const char *counted(size_t count, const char *one, const char *many, bk_arena *arena)
{
    return bk_arena_print(arena, "%zu %s", count, count == 1 ? one : many);
}

static const char *sheet_words(const bk_history_sheet *sheet, bk_day today, bk_arena *arena)
{
    char day[BK_DAY_WORDS_ROOM];
    return bk_arena_print(arena, "Sheet of %s: %s%s; %s, %s.", bk_day_words(sheet->on, today, day),
                          counted(sheet->count, "measure", "measures", arena),
                          circumstances(sheet->over, sheet->taken_by, arena),
                          counted(sheet->beyond, "change marked", "changes marked", arena),
                          counted(sheet->doubts, "doubt", "doubts", arena));
}

// The newest earlier sheet that has the measure; NULL where there is none.
static const bk_history_sheet *compared_with(const bk_history_view *view, const bk_history_row *row)
{
    for (size_t i = view->sheet + 1; i < view->history.sheet_count; i++)
        if (row->cells[i].value != BK_NO_AMOUNT)
            return &view->history.sheets[i];
    return NULL;
}

static const char *change_words(const bk_history_view *view, const bk_history_row *row,
                                const bk_history_cell *cell, bk_day today, bk_arena *arena)
{
    char day[BK_DAY_WORDS_ROOM];
    const bk_history_sheet *before = compared_with(view, row);
    if (!before || cell->change == BK_NO_AMOUNT)
        return "";
    bk_day_words(before->on, today, day);
    if (cell->change == 0)
        return bk_arena_print(arena, ", as on %s", day);
    bk_length size = cell->change < 0 ? -cell->change : cell->change;
    return bk_arena_print(arena, ", %s %s than on %s%s%s", bk_length_words(size, view->unit, arena),
                          cell->change > 0 ? "more" : "less", day, cell->beyond ? ": " : "",
                          cell->beyond ? change_word(cell) : "");
}

static const char *value_words(const bk_history_view *view, bk_day today, bk_arena *arena)
{
    char day[BK_DAY_WORDS_ROOM];
    const bk_history_row *row = bk_history_chosen_row(view);
    const bk_history_cell *cell = bk_history_chosen_cell(view);
    bk_day_words(bk_history_chosen_sheet(view)->on, today, day);
    if (cell->value == BK_NO_AMOUNT)
        return bk_arena_print(arena, "%s: not on the sheet of %s; Enter adds it.", row->name, day);
    return bk_arena_print(
        arena, "%s, %s: %s%s%s.", row->name, day, bk_length_words(cell->value, view->unit, arena),
        change_words(view, row, cell, today, arena), circumstances(cell->over, cell->taken_by, arena));
}

static const char *standard_words(const bk_measure_term *term, bk_arena *arena)
{
    if (!term || !term->term)
        return NULL;
    return bk_arena_print(arena, "ISO 8559-1: %s%s%s%s", term->term, term->clause ? " (" : "",
                          term->clause ? term->clause : "", term->clause ? ")" : "");
}

static void draw_detail(const bk_history_view *view, const bk_wall *wall, const bk_paint *paint)
{
    enum { FIRST_ROWS = 2 };
    bk_spot spot = bk_paint_row(paint, paint->rows - 2 - DETAIL_ROWS);
    size_t end = spot.row + DETAIL_ROWS;
    const bk_history_row *row = bk_history_chosen_row(view);
    spot.width = spot.width < TEXT_MOST ? spot.width : TEXT_MOST;
    if (!row) {
        bk_paint_whole(paint, spot, DETAIL_ROWS, BK_STYLE_PLAIN,
                       sheet_words(bk_history_chosen_sheet(view), wall->today, paint->arena));
        return;
    }
    const char *doubt = bk_history_chosen_cell(view)->doubt;
    spot.row +=
        bk_paint_whole(paint, spot, FIRST_ROWS, BK_STYLE_PLAIN, value_words(view, wall->today, paint->arena));
    if (doubt)
        spot.row += bk_paint_whole(paint, spot, FIRST_ROWS, BK_STYLE_TIGHT, doubt);
    if (row->term)
        spot.row += bk_paint_whole(paint, spot, 1, BK_STYLE_DIM, row->term->how);
    if (spot.row < end)
        bk_paint_text(paint, spot, BK_STYLE_DIM, standard_words(row->term, paint->arena));
}

void bk_history_draw(bk_history_view *view, const bk_wall *wall, const bk_paint *paint)
{
    if (view->closed) {
        draw_closed(paint);
        return;
    }
    layout at = lay_out(view, wall, paint);
    scroll(view, &at);
    draw_title(view, paint, &at);
    if (view->history.sheet_count == 0) {
        draw_never(view, paint);
        return;
    }
    draw_heads(view, wall, paint, &at);
    draw_list(view, paint, &at);
    draw_detail(view, wall, paint);
}
