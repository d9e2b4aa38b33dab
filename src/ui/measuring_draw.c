#include "bodkin/ui/measuring_draw.h"

#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/ui/length_words.h"
#include "bodkin/ui/measuring_asked.h"

// Rows: the title, the day and who and over what, an empty one, the heads, the list, an empty one, how the measure at hand is
// taken, what was measured last, two for what is said, the bottom line.
enum {
    TITLE_ROW,
    FIELDS_ROW,
    HEADS_ROW = 3,
    LIST_ROW,
    BELOW = 6,
    SAYS_ROWS = 2,
    TEXT_MOST = 100, // longest comfortable line
};

enum {
    MARGIN = 2,
    NAME_MOST = 24,
    GAP = 2,
    TYPED_COLUMNS = 12,
    MEANT_COLUMNS = 11,
    LAST_COLUMNS = 10,
    CHANGE_COLUMNS = 8,
};

// Where the columns of the list stand.
typedef struct layout {
    bk_spot name, typed, meant, last, change, mark;
} layout;

static layout lay_out(const bk_measuring *sheet, const bk_paint *paint)
{
    size_t name = 0;
    for (size_t i = BK_MEASURING_FIRST; i < sheet->count; i++) {
        size_t wide = sheet->lines[i].part == BK_MEASURING_GAP ? 0 : bk_text_columns(sheet->lines[i].name);
        name = wide > name ? wide : name;
    }
    name = name < NAME_MOST ? name : NAME_MOST;
    layout at = {.name = {0, MARGIN, name}};
    at.typed = (bk_spot){0, at.name.column + name + GAP, TYPED_COLUMNS};
    at.meant = (bk_spot){0, at.typed.column + TYPED_COLUMNS + 1, MEANT_COLUMNS};
    at.last = (bk_spot){0, at.meant.column + MEANT_COLUMNS, LAST_COLUMNS};
    at.change = (bk_spot){0, at.last.column + LAST_COLUMNS, CHANGE_COLUMNS};
    size_t mark = at.change.column + CHANGE_COLUMNS + GAP;
    at.mark = (bk_spot){0, mark, paint->columns - mark};
    return at;
}

static bk_spot on_row(bk_spot spot, size_t row)
{
    spot.row = row;
    return spot;
}

// ------------------------------------------------------------------------------------------ what is typed

static const char *safe_part(const bk_paint *paint, const char *text, size_t length)
{
    return bk_text_safe(paint->arena, bk_arena_bytes(paint->arena, text, length), paint->ascii);
}

// The text at hand with the cursor, from where it is in sight.
static void draw_entry(const bk_paint *paint, bk_spot spot, const bk_form_line *line)
{
    const char *text = bk_form_line_text(line);
    size_t from = 0;
    while (from < line->at && bk_text_columns(safe_part(paint, text + from, line->at - from)) >= spot.width)
        from += bk_text_step(text + from);
    bk_term_put(spot.row, spot.column, spot.width, BK_STYLE_BOLD,
                safe_part(paint, text + from, strlen(text + from)));
    size_t before = bk_text_columns(safe_part(paint, text + from, line->at - from));
    bk_term_cursor(spot.row, spot.column + before, true);
}

static void draw_typed(const bk_measuring *sheet, const bk_paint *paint, bk_spot spot, size_t index)
{
    const bk_measuring_line *line = &sheet->lines[index];
    if (index == sheet->at)
        draw_entry(paint, spot, &line->text);
    else
        bk_paint_text(paint, spot, BK_STYLE_BOLD, bk_form_line_text(&line->text));
}

static void draw_mark(size_t row)
{
    bk_term_put(row, 0, 1, BK_STYLE_ACCENT, ">");
}

// ----------------------------------------------------------------------------------------------- the head

static void draw_title(const bk_measuring *sheet, const bk_paint *paint)
{
    char words[BK_DAY_WORDS_ROOM];
    bk_spot spot = bk_paint_row(paint, TITLE_ROW);
    size_t typed = bk_measuring_typed_count(sheet), lacks = 0;
    for (size_t i = BK_MEASURING_FIRST; i < sheet->count; i++)
        lacks += bk_measuring_lacks(sheet, &sheet->lines[i]) ? 1 : 0;
    const char *day =
        sheet->day == BK_NO_DAY ? "day not known" : bk_day_words(sheet->day, sheet->wall->today, words);
    const char *count = bk_arena_print(paint->arena, "%zu measure%s typed", typed, typed == 1 ? "" : "s");
    if (lacks > 0)
        count = bk_arena_print(paint->arena, "%s, %zu asked for", count, lacks);
    spot.width -= bk_paint_right(paint, spot, BK_STYLE_DIM, count) + GAP;
    bk_paint_text(paint, spot, BK_STYLE_BOLD,
                  bk_arena_print(paint->arena, "Measuring %s, %s", sheet->history.performer.name, day));
}

// The day, who measures, and over what, side by side.
static void draw_fields(const bk_measuring *sheet, const bk_paint *paint)
{
    enum { DAY_COLUMNS = 18, MOST_COLUMNS = 36 };
    bk_spot spot = {FIELDS_ROW, MARGIN, 0};
    size_t right = paint->columns - 1, share = (right - MARGIN - DAY_COLUMNS) / BK_MEASURING_OVER;
    share = share < MOST_COLUMNS ? share : MOST_COLUMNS;
    for (size_t i = BK_MEASURING_DAY; i <= BK_MEASURING_OVER; i++) {
        size_t end =
            i == BK_MEASURING_OVER ? right : spot.column + (i == BK_MEASURING_DAY ? DAY_COLUMNS : share);
        bool at_hand = i == sheet->at && sheet->mode != BK_MEASURING_CHECKING;
        spot.width = end - spot.column;
        if (at_hand)
            draw_mark(FIELDS_ROW);
        size_t used =
            bk_paint_text(paint, spot, at_hand ? BK_STYLE_ACCENT : BK_STYLE_DIM, sheet->lines[i].name) + 1;
        draw_typed(sheet, paint, (bk_spot){FIELDS_ROW, spot.column + used, spot.width - used - GAP}, i);
        spot.column = end;
    }
}

static void draw_heads(const bk_measuring *sheet, const bk_paint *paint, const layout *at)
{
    bk_paint_text(paint, on_row(at->name, HEADS_ROW), BK_STYLE_DIM, "Measure");
    bk_paint_text(paint, on_row(at->typed, HEADS_ROW), BK_STYLE_DIM,
                  sheet->unit == BK_INCH ? "inches" : "centimetres");
    if (sheet->history.sheet_count == 0)
        return;
    bk_paint_right(paint, on_row(at->last, HEADS_ROW), BK_STYLE_DIM, "last");
    bk_paint_right(paint, on_row(at->change, HEADS_ROW), BK_STYLE_DIM, "change");
}

// ----------------------------------------------------------------------------------------------- the list

// How a value is understood, where it was typed in another way.
static const char *meant_words(const bk_measuring *sheet, const bk_measuring_line *line, bk_arena *arena)
{
    if (line->value == BK_NO_AMOUNT)
        return NULL;
    const char *number = bk_length_number(line->value, sheet->unit, arena);
    bool same = strcmp(number, bk_form_line_text(&line->text)) == 0;
    return same ? NULL : bk_arena_print(arena, "= %s", number);
}

static void draw_value(const bk_measuring *sheet, const bk_paint *paint, const layout *at,
                       const bk_measuring_line *line, size_t row)
{
    bk_arena *arena = paint->arena;
    bool changed = line->value != BK_NO_AMOUNT && line->last != BK_NO_AMOUNT;
    bk_paint_right(paint, on_row(at->last, row), BK_STYLE_DIM,
                   bk_length_number(line->last, sheet->unit, arena));
    if (changed)
        bk_paint_right(paint, on_row(at->change, row), BK_STYLE_PLAIN,
                       bk_change_number(line->value - line->last, sheet->unit, arena));
    bk_paint_text(paint, on_row(at->meant, row), BK_STYLE_DIM, meant_words(sheet, line, arena));
    if (line->doubt)
        bk_paint_text(paint, on_row(at->mark, row), BK_STYLE_TIGHT, "doubtful");
    else if (bk_measuring_lacks(sheet, line))
        bk_paint_text(paint, on_row(at->mark, row), BK_STYLE_TIGHT, "asked for");
}

static void draw_line(const bk_measuring *sheet, const bk_paint *paint, const layout *at, size_t index,
                      size_t row)
{
    const bk_measuring_line *line = &sheet->lines[index];
    bool at_hand = index == sheet->at;
    if (line->part == BK_MEASURING_GAP) {
        bk_paint_text(paint, bk_paint_row(paint, row), BK_STYLE_DIM, line->name);
        return;
    }
    if (at_hand)
        draw_mark(row);
    bk_paint_text(paint, on_row(at->name, row), at_hand ? BK_STYLE_ACCENT : BK_STYLE_PLAIN, line->name);
    bk_spot typed = on_row(at->typed, row);
    if (line->part == BK_MEASURING_OTHER)
        typed.width = paint->columns - typed.column - 1;
    draw_typed(sheet, paint, typed, index);
    if (line->wrong && line->part == BK_MEASURING_VALUE)
        bk_paint_text(paint, on_row(at->meant, row), BK_STYLE_LATE, "no length");
    if (line->part == BK_MEASURING_VALUE)
        draw_value(sheet, paint, at, line, row);
}

static void draw_list(bk_measuring *sheet, const bk_paint *paint, const layout *at)
{
    size_t rows = paint->rows - BELOW - LIST_ROW;
    bk_cursor_fit(&sheet->seen, sheet->count - BK_MEASURING_FIRST, rows);
    if (sheet->at >= BK_MEASURING_FIRST)
        bk_cursor_put(&sheet->seen, sheet->at - BK_MEASURING_FIRST);
    else
        bk_cursor_put(&sheet->seen, 0);
    for (size_t i = 0; i < rows && sheet->seen.top + i < sheet->seen.count; i++)
        draw_line(sheet, paint, at, BK_MEASURING_FIRST + sheet->seen.top + i, LIST_ROW + i);
    if (sheet->seen.top > 0)
        bk_paint_right(paint, bk_paint_row(paint, HEADS_ROW - 1), BK_STYLE_DIM, "more above");
    if (sheet->seen.top + rows < sheet->seen.count)
        bk_paint_right(paint, bk_paint_row(paint, LIST_ROW + rows), BK_STYLE_DIM, "more below");
}

// --------------------------------------------------------------------------------------- what is told below

static const char *how_of(const bk_measuring *sheet, const bk_measuring_line *line)
{
    static const char *const told[] = {
        [BK_MEASURING_DAY] = "the day the sheet was taken; for example today, -1, mon, 9 mar",
        [BK_MEASURING_BY] = "who holds the tape; empty where it is not known",
        [BK_MEASURING_OVER] = "what is worn while measured: thin shirt, corset, rehearsal shoes; or empty",
        [BK_MEASURING_VALUE] = "a measure of the workroom's own",
        [BK_MEASURING_GAP] = NULL,
        [BK_MEASURING_OTHER] =
            "the name of a measure that is not in the list; empty: the sheet is at its end",
    };
    (void)sheet;
    return line->term ? line->term->how : told[line->part];
}

// The standard's term, and what was measured last.
static const char *besides(const bk_measuring *sheet, const bk_measuring_line *line, bk_arena *arena)
{
    char day[BK_DAY_WORDS_ROOM];
    const char *iso = "", *last = "";
    if (line->term && line->term->term)
        iso = bk_arena_print(arena, "ISO 8559-1: %s%s%s%s", line->term->term, line->term->clause ? " (" : "",
                             line->term->clause ? line->term->clause : "", line->term->clause ? ")" : "");
    if (line->last != BK_NO_AMOUNT)
        last = bk_arena_print(arena, "%s%s on %s", line->last_on == sheet->day ? "stands as " : "last ",
                              bk_length_words(line->last, sheet->unit, arena),
                              bk_day_words(line->last_on, sheet->wall->today, day));
    return bk_arena_print(arena, "%s%s%s", iso, *iso && *last ? "; " : "", last);
}

// What is wrong with the line at hand, or doubtful in it or in the one left last.
static const char *said(const bk_measuring *sheet, bk_arena *arena, int *style)
{
    const bk_measuring_line *line = &sheet->lines[sheet->at];
    const bk_measuring_line *left = sheet->left < sheet->count ? &sheet->lines[sheet->left] : NULL;
    *style = line->wrong ? BK_STYLE_LATE : BK_STYLE_TIGHT;
    if (line->wrong || line->doubt)
        return line->wrong ? line->wrong : line->doubt;
    if (!left || (!left->wrong && !left->doubt))
        return NULL;
    *style = left->wrong ? BK_STYLE_LATE : BK_STYLE_TIGHT;
    return bk_arena_print(arena, "%s: %s", left->name, left->wrong ? left->wrong : left->doubt);
}

static void draw_below(const bk_measuring *sheet, const bk_paint *paint)
{
    int style = BK_STYLE_PLAIN;
    const bk_measuring_line *line = &sheet->lines[sheet->at];
    bk_spot spot = {paint->rows - BELOW + 1, MARGIN, paint->columns - MARGIN - 1};
    spot.width = spot.width < TEXT_MOST ? spot.width : TEXT_MOST;
    bk_paint_text(paint, spot, BK_STYLE_PLAIN, how_of(sheet, line));
    spot.row++;
    bk_paint_text(paint, spot, BK_STYLE_DIM, besides(sheet, line, paint->arena));
    spot.row++;
    const char *text = said(sheet, paint->arena, &style);
    if (text)
        bk_paint_whole(paint, spot, SAYS_ROWS, style, text);
}

void bk_measuring_draw(bk_measuring *sheet, const bk_paint *paint)
{
    layout at = lay_out(sheet, paint);
    draw_title(sheet, paint);
    draw_fields(sheet, paint);
    draw_heads(sheet, paint, &at);
    draw_list(sheet, paint, &at);
    draw_below(sheet, paint);
}

// --------------------------------------------------------------------------------------- before it is saved

// A finding is as high as its sentence.
static size_t draw_finding(const bk_measuring *sheet, const bk_paint *paint, size_t index, size_t row,
                           size_t rows)
{
    const bk_measuring_finding *finding = &sheet->findings[index];
    const bk_measuring_line *line = &sheet->lines[finding->line];
    bk_spot spot = {row, MARGIN, paint->columns - MARGIN - 1};
    spot.width = spot.width < TEXT_MOST ? spot.width : TEXT_MOST;
    bool chosen = index == sheet->finding.at;
    if (chosen)
        draw_mark(row);
    if (chosen)
        bk_term_cursor(row, MARGIN, true);
    bk_paint_text(paint, spot, chosen ? BK_STYLE_ACCENT : BK_STYLE_BOLD, line->name);
    spot.row++;
    return 1 + bk_paint_whole(paint, spot, rows - 1, BK_STYLE_TIGHT, finding->says);
}

void bk_measuring_draw_findings(bk_measuring *sheet, const bk_paint *paint)
{
    enum { LEAST_ROWS = 3 };
    size_t row = HEADS_ROW, end = paint->rows - 2, count = sheet->finding.count;
    draw_title(sheet, paint);
    bk_paint_text(paint, bk_paint_row(paint, FIELDS_ROW), BK_STYLE_PLAIN,
                  count == 1 ? "Look at this measure again before the sheet is saved."
                             : "Look at these measures again before the sheet is saved.");
    bk_cursor_fit(&sheet->finding, count, (end - row) / (SAYS_ROWS + 2));
    for (size_t i = sheet->finding.top; i < count && row + LEAST_ROWS <= end; i++)
        row += draw_finding(sheet, paint, i, row, end - row) + 1;
    if (sheet->finding.count > sheet->finding.seen)
        bk_paint_right(paint, bk_paint_row(paint, HEADS_ROW - 1), BK_STYLE_DIM,
                       bk_arena_print(paint->arena, "%zu of %zu", sheet->finding.at + 1, count));
}
