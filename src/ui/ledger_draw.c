#include <stdint.h>

#include "bodkin/base/text.h"
#include "bodkin/ui/ledger.h"
#include "bodkin/ui/query_line.h"

// Rows: the head, the summary or what narrows, perhaps an empty one, the heads of the columns, the list, an empty one, the
// detail, an empty one, the bottom line.
enum {
    TITLE_ROW,
    SUMMARY_ROW,
    HEADS_ROW,
    GAP = 3,
    INDENT = 2,        // of lines under headings
    TEXT_COLUMNS = 76, // longest comfortable line of plain text
    DETAIL_SHARE = 5,  // of the rows one part in so many
    MOST_DETAIL_ROWS = 8
};

// Which columns are shown, and how wide each is.
typedef struct layout {
    size_t count;
    size_t cells[BK_COLUMNS_MOST];
    const bk_list_column *shapes[BK_COLUMNS_MOST];
    size_t widths[BK_COLUMNS_MOST];
    size_t indent;
} layout;

// ------------------------------------------------------------------------------------------------ columns

static size_t least_columns(const layout *shown)
{
    size_t all = 0;
    for (size_t i = 0; i < shown->count; i++)
        all += shown->shapes[i]->least + (i + 1 < shown->count ? shown->shapes[i]->gap : 0);
    return all;
}

static void leave_out(layout *shown, size_t index)
{
    shown->count--;
    for (size_t i = index; i < shown->count; i++) {
        shown->cells[i] = shown->cells[i + 1];
        shown->shapes[i] = shown->shapes[i + 1];
    }
}

// Leaves out the last of the spare columns; false where there is none.
static bool leave_one_out(layout *shown)
{
    for (size_t i = shown->count; i-- > 0;)
        if (shown->shapes[i]->spare) {
            leave_out(shown, i);
            return true;
        }
    return false;
}

static layout lay_out(const bk_ledger *ledger, size_t width)
{
    layout shown = {.indent = ledger->headed ? INDENT : 0};
    size_t wanted[BK_COLUMNS_MOST];
    for (size_t i = 0; i < ledger->kind->column_count; i++) {
        if (ledger->wanted[i] == 0)
            continue;
        shown.cells[shown.count] = i;
        shown.shapes[shown.count++] = &ledger->kind->columns[i];
    }
    while (least_columns(&shown) > width - shown.indent && leave_one_out(&shown))
        ;
    for (size_t i = 0; i < shown.count; i++) {
        size_t head = shown.shapes[i]->head ? bk_text_columns(shown.shapes[i]->head) : 0;
        size_t text = ledger->wanted[shown.cells[i]];
        wanted[i] = head > text ? head : text;
    }
    bk_columns_share(shown.shapes, wanted, shown.count, width - shown.indent, shown.widths);
    return shown;
}

static void draw_cell(const bk_paint *paint, bk_spot spot, const bk_list_column *shape, int style,
                      const char *text)
{
    if (shape->right)
        bk_paint_right(paint, spot, style, text);
    else
        bk_paint_text(paint, spot, style, text);
}

static void draw_heads(const bk_paint *paint, const layout *shown, size_t row)
{
    bk_spot spot = bk_paint_row(paint, row);
    spot.column += shown->indent;
    for (size_t i = 0; i < shown->count; i++) {
        spot.width = shown->widths[i];
        draw_cell(paint, spot, shown->shapes[i], BK_STYLE_DIM, shown->shapes[i]->head);
        spot.column += spot.width + shown->shapes[i]->gap;
    }
}

// ------------------------------------------------------------------------------------------------ the list

static int style_of(const bk_ledger_line *line, size_t cell, bool chosen)
{
    int style = line->styles ? line->styles[cell] : line->style;
    if (!chosen)
        return style;
    return BK_STYLE_CHOSEN | (style == BK_STYLE_BOLD ? BK_STYLE_BOLD : BK_STYLE_PLAIN);
}

static void draw_line(const bk_paint *paint, const layout *shown, const bk_ledger_line *line, size_t row,
                      bool chosen)
{
    bk_spot spot = bk_paint_row(paint, row);
    if (chosen)
        bk_paint_chosen(paint, row);
    spot.column += shown->indent;
    for (size_t i = 0; i < shown->count; i++) {
        spot.width = shown->widths[i];
        draw_cell(paint, spot, shown->shapes[i], style_of(line, shown->cells[i], chosen),
                  line->cells[shown->cells[i]]);
        spot.column += spot.width + shown->shapes[i]->gap;
    }
}

static void draw_row(const bk_paint *paint, const bk_ledger *ledger, const layout *shown, size_t at,
                     size_t row)
{
    if (ledger->shown[at] == BK_NO_LINE)
        return;
    const bk_ledger_line *line = &ledger->lines[ledger->shown[at]];
    if (line->id == 0)
        bk_paint_text(paint, bk_paint_row(paint, row), line->style ? line->style : BK_STYLE_BOLD,
                      line->cells[0]);
    else
        draw_line(paint, shown, line, row, at == ledger->cursor.at);
}

// The heading of the first lines is brought in sight with them.
static void show_heading_above(bk_ledger *ledger)
{
    size_t first = ledger->cursor.at;
    while (first > 0 && !bk_ledger_stands(ledger, first - 1))
        first--;
    if (first < ledger->cursor.top && ledger->cursor.at - first < ledger->cursor.seen)
        ledger->cursor.top = first;
    else if (ledger->shown_count > 0 && ledger->shown[ledger->cursor.top] == BK_NO_LINE)
        ledger->cursor.top++; // an empty row tells nothing at the top
}

// -------------------------------------------------------------------------------------------- round about

static size_t count_lines(const bk_ledger *ledger)
{
    size_t count = 0;
    for (size_t i = 0; i < ledger->line_count; i++)
        count += ledger->lines[i].id != 0 ? 1 : 0;
    return count;
}

// How many of the lines shown stand before row `end` of the list.
static size_t count_shown(const bk_ledger *ledger, size_t end)
{
    size_t count = 0;
    for (size_t i = 0; i < end && i < ledger->shown_count; i++)
        count += bk_ledger_stands(ledger, i) ? 1 : 0;
    return count;
}

static void draw_title(const bk_paint *paint, const bk_ledger *ledger)
{
    bk_spot spot = bk_paint_row(paint, TITLE_ROW);
    size_t used = bk_paint_right(paint, spot, BK_STYLE_DIM, ledger->aside);
    spot.width -= used > 0 && used + GAP < spot.width ? used + GAP : 0;
    bk_paint_text(paint, spot, BK_STYLE_BOLD, ledger->title);
}

static void draw_summary(const bk_paint *paint, const bk_ledger *ledger)
{
    bk_spot spot = bk_paint_row(paint, SUMMARY_ROW);
    size_t shown = count_shown(ledger, ledger->shown_count);
    if (ledger->shown_count > ledger->cursor.seen) {
        size_t before = count_shown(ledger, ledger->cursor.top);
        const char *part = bk_arena_print(paint->arena, "%zu to %zu of %zu%s", before + 1,
                                          count_shown(ledger, ledger->cursor.top + ledger->cursor.seen),
                                          shown, ledger->more ? " and more" : "");
        spot.width -= bk_paint_right(paint, spot, BK_STYLE_DIM, part) + GAP;
    }
    if (ledger->query.length > 0)
        bk_paint_text(paint, spot, BK_STYLE_ACCENT,
                      bk_query_words(&ledger->query, paint, shown, count_lines(ledger)));
    else
        bk_paint_text(paint, spot, BK_STYLE_PLAIN, ledger->summary);
}

static void draw_empty(const bk_paint *paint, const bk_ledger *ledger, size_t row)
{
    bk_spot spot = bk_paint_row(paint, row);
    size_t all = count_lines(ledger);
    const char *text = ledger->kind->empty;
    if (all > 0)
        text = bk_arena_print(paint->arena, "Nothing here matches. Escape shows all %zu line%s again.", all,
                              all == 1 ? "" : "s");
    spot.width = spot.width < TEXT_COLUMNS ? spot.width : TEXT_COLUMNS;
    if (text)
        bk_paint_paragraphs(paint, spot, paint->rows - 2 - row, BK_STYLE_PLAIN, text);
    bk_term_cursor(row, 0, false);
}

size_t bk_ledger_detail_rows(const bk_screen *screen, const bk_paint *paint)
{
    const bk_ledger *ledger = bk_ledger_of(screen);
    size_t rows = paint->rows / DETAIL_SHARE;
    rows = rows < MOST_DETAIL_ROWS ? rows : MOST_DETAIL_ROWS;
    if (ledger->kind->detail_rows == 0)
        return 0;
    return rows > ledger->kind->detail_rows ? rows : ledger->kind->detail_rows;
}

static void draw_detail(const bk_screen *screen, const bk_paint *paint, size_t rows)
{
    const bk_ledger_line *chosen = bk_ledger_chosen(screen);
    if (chosen && chosen->detail && rows > 0)
        bk_paint_paragraphs(paint, bk_paint_row(paint, paint->rows - 1 - rows), rows, BK_STYLE_PLAIN,
                            chosen->detail);
}

void bk_ledger_draw(bk_screen *screen, const bk_paint *paint)
{
    bk_ledger *ledger = bk_ledger_of(screen);
    layout shown = lay_out(ledger, bk_paint_row(paint, 0).width);
    size_t heads_row = ledger->summary ? HEADS_ROW + 1 : HEADS_ROW;
    size_t detail = bk_ledger_detail_rows(screen, paint);
    size_t below = 1 + (detail > 0 ? detail + 1 : 1);
    bk_cursor_fit(&ledger->cursor, ledger->shown_count, paint->rows - heads_row - 1 - below);
    show_heading_above(ledger);
    bk_term_cursor(0, 0, false);
    draw_title(paint, ledger);
    draw_summary(paint, ledger);
    if (ledger->shown_count == 0) {
        draw_empty(paint, ledger, heads_row);
        return;
    }
    draw_heads(paint, &shown, heads_row);
    for (size_t i = 0; i < ledger->cursor.seen && ledger->cursor.top + i < ledger->shown_count; i++)
        draw_row(paint, ledger, &shown, ledger->cursor.top + i, heads_row + 1 + i);
    draw_detail(screen, paint, detail);
}
