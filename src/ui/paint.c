#include "bodkin/ui/paint.h"

#include <string.h>

#include "bodkin/base/text.h"

enum { MARGIN = 1 };

static const int urgency_styles[BK_URGENCIES] = {
    [BK_LATE] = BK_STYLE_LATE,
    [BK_TIGHT] = BK_STYLE_TIGHT,
    [BK_IN_TIME] = BK_STYLE_IN_TIME,
    [BK_NOT_SAID] = BK_STYLE_PLAIN,
};

int bk_urgency_style(bk_urgency urgency)
{
    return urgency_styles[urgency];
}

static const char *safe(const bk_paint *paint, const char *text)
{
    return bk_text_safe(paint->arena, text, paint->ascii);
}

static const char *fitted(const bk_paint *paint, const char *text, size_t width)
{
    return bk_text_cut(paint->arena, safe(paint, text), width, paint->ascii);
}

size_t bk_paint_text(const bk_paint *paint, bk_spot spot, int style, const char *text)
{
    if (!text || spot.width == 0)
        return 0;
    return bk_term_put(spot.row, spot.column, spot.width, style, fitted(paint, text, spot.width));
}

size_t bk_paint_right(const bk_paint *paint, bk_spot spot, int style, const char *text)
{
    if (!text || spot.width == 0)
        return 0;
    const char *shown = fitted(paint, text, spot.width);
    size_t wide = bk_text_columns(shown);
    return bk_term_put(spot.row, spot.column + spot.width - wide, wide, style, shown);
}

size_t bk_paint_rows(const bk_paint *paint, size_t width, const char *text)
{
    size_t count = 0;
    bk_text_wrap(paint->arena, safe(paint, text), width, &count);
    return count;
}

// The line that must take all the rest: it is put with what follows, so that the cut shows.
static const char *rest_of(const bk_paint *paint, char *const *lines, size_t count)
{
    const char *rest = lines[0];
    for (size_t i = 1; i < count; i++)
        rest = bk_arena_print(paint->arena, "%s %s", rest, lines[i]);
    return rest;
}

size_t bk_paint_whole(const bk_paint *paint, bk_spot spot, size_t rows, int style, const char *text)
{
    size_t count = 0;
    char **lines = bk_text_wrap(paint->arena, safe(paint, text), spot.width, &count);
    size_t used = 0;
    for (; used < count && used < rows; used++, spot.row++) {
        bool last = used + 1 == rows && used + 1 < count;
        bk_paint_text(paint, spot, style, last ? rest_of(paint, lines + used, count - used) : lines[used]);
    }
    return used;
}

size_t bk_paint_paragraphs(const bk_paint *paint, bk_spot spot, size_t rows, int style, const char *text)
{
    size_t used = 0;
    while (*text && used < rows) {
        size_t length = strcspn(text, "\n");
        const char *paragraph = bk_arena_bytes(paint->arena, text, length);
        size_t taken = bk_paint_whole(paint, spot, rows - used, style, paragraph);
        taken = taken > 0 ? taken : 1;
        used += taken;
        spot.row += taken;
        text += length + (text[length] ? 1 : 0);
    }
    return used;
}

bk_spot bk_paint_row(const bk_paint *paint, size_t row)
{
    bk_spot spot = {row, MARGIN, paint->columns > 2 * MARGIN ? paint->columns - 2 * MARGIN : 0};
    return spot;
}

void bk_paint_chosen(const bk_paint *paint, size_t row)
{
    bk_term_fill(row, 0, paint->columns, BK_STYLE_CHOSEN);
    bk_term_put(row, 0, MARGIN, BK_STYLE_CHOSEN, ">");
    bk_term_cursor(row, 0, false);
}

// --------------------------------------------------------------------------------------------- the seam

// What a seam is drawn with, in Unicode and in ASCII (bk_seam_text).
static const struct mark {
    const char *text;
    int style;
} marks[] = {
    {"━", BK_STYLE_ACCENT}, {"┃", BK_STYLE_BOLD}, {"·", BK_STYLE_DIM},
    {"-", BK_STYLE_ACCENT}, {"|", BK_STYLE_BOLD}, {".", BK_STYLE_DIM},
};

static const struct mark *mark_at(const char *text)
{
    for (size_t i = 0; i < sizeof marks / sizeof marks[0]; i++)
        if (strncmp(text, marks[i].text, strlen(marks[i].text)) == 0)
            return &marks[i];
    return NULL;
}

void bk_paint_seam(const bk_paint *paint, bk_spot spot, bool chosen, bk_seam seam)
{
    const char *text = bk_seam_text(seam, spot.width, paint->ascii, paint->arena);
    for (size_t column = 0; *text && column < spot.width; column++) {
        const struct mark *mark = mark_at(text);
        int style = chosen ? BK_STYLE_CHOSEN : mark ? mark->style : BK_STYLE_PLAIN;
        bk_term_put(spot.row, spot.column + column, 1, style, mark ? mark->text : " ");
        text += mark ? strlen(mark->text) : 1;
    }
}

// -------------------------------------------------------------------------------------------- the items

static size_t part_columns(const char *part)
{
    return part ? bk_text_columns(part) + 1 : 0;
}

static size_t item_columns(const bk_item *item)
{
    return part_columns(item->key) + part_columns(item->word) + part_columns(item->rest) - 1;
}

// Whether an item is one of the last `dropped` spare ones.
static bool is_dropped(const bk_item *items, size_t count, size_t index, size_t dropped)
{
    size_t spare_behind = 0;
    for (size_t i = index; i < count; i++)
        spare_behind += items[i].spare ? 1 : 0;
    return items[index].spare && spare_behind <= dropped;
}

static size_t items_columns(const bk_item *items, size_t count, size_t gap, size_t dropped)
{
    size_t all = 0;
    for (size_t i = 0; i < count; i++)
        if (!is_dropped(items, count, i, dropped))
            all += item_columns(&items[i]) + (all ? gap : 0);
    return all;
}

static size_t draw_part(bk_spot *spot, int style, const char *part)
{
    if (!part)
        return 0;
    size_t used = bk_term_put(spot->row, spot->column, spot->width, style, part) + 1;
    spot->column += used;
    spot->width -= used < spot->width ? used : spot->width;
    return used;
}

static void draw_item(bk_spot *spot, const bk_item *item)
{
    draw_part(spot, BK_STYLE_ACCENT, item->key);
    draw_part(spot, item->lit ? BK_STYLE_ACCENT : BK_STYLE_DIM, item->word);
    draw_part(spot, item->lit ? BK_STYLE_ACCENT : BK_STYLE_PLAIN, item->rest);
}

// How far apart, and how many of the spare ones are left out.
typedef struct spread {
    size_t gap, dropped;
} spread;

enum { WIDE_GAP = 3, CLOSE_GAP = 2, LEAST_GAP = 1 };

static spread spread_for(const bk_item *items, size_t count, size_t width)
{
    size_t spares = 0;
    for (size_t i = 0; i < count; i++)
        spares += items[i].spare ? 1 : 0;
    for (size_t dropped = 0; dropped <= spares; dropped++)
        for (size_t gap = WIDE_GAP; gap >= CLOSE_GAP; gap--)
            if (items_columns(items, count, gap, dropped) <= width)
                return (spread){gap, dropped};
    return (spread){LEAST_GAP, spares};
}

bool bk_paint_items_fit(const bk_item *items, size_t count, size_t width)
{
    return items_columns(items, count, CLOSE_GAP, count) <= width;
}

void bk_paint_items(const bk_paint *paint, bk_spot spot, const bk_item *items, size_t count)
{
    (void)paint;
    spread chosen = spread_for(items, count, spot.width);
    size_t end = spot.column + spot.width;
    for (size_t i = 0; i < count; i++) {
        if (is_dropped(items, count, i, chosen.dropped))
            continue;
        if (spot.column + item_columns(&items[i]) > end)
            break;
        draw_item(&spot, &items[i]);
        spot.column += chosen.gap - 1;
        spot.width = end > spot.column ? end - spot.column : 0;
    }
}

enum { MOST_NOTICE_ROWS = 6, NOTICE_GAP = WIDE_GAP };

static void clear_rows(const bk_paint *paint, size_t first)
{
    for (size_t row = first; row < paint->rows; row++)
        bk_term_fill(row, 0, paint->columns, BK_STYLE_PLAIN);
}

bool bk_paint_notice_fits(const bk_paint *paint, const char *text, const bk_item *items, size_t count)
{
    size_t wide = items_columns(items, count, NOTICE_GAP, 0) + NOTICE_GAP;
    return bk_text_columns(safe(paint, text)) + wide <= bk_paint_row(paint, 0).width;
}

void bk_paint_notice(const bk_paint *paint, const char *text, const bk_item *items, size_t count)
{
    bk_spot spot = bk_paint_row(paint, paint->rows - 1);
    size_t wide = count > 0 ? items_columns(items, count, NOTICE_GAP, 0) : 0;
    size_t room = wide > 0 ? spot.width - wide - NOTICE_GAP : spot.width;
    bk_spot keys = {spot.row, spot.column + spot.width - wide, wide};
    if (bk_text_columns(safe(paint, text)) > room) {
        size_t rows = bk_paint_rows(paint, spot.width, text);
        rows = rows < MOST_NOTICE_ROWS ? rows : MOST_NOTICE_ROWS;
        spot.row -= rows - (count > 0 ? 0 : 1);
        keys.column = spot.column;
    }
    clear_rows(paint, spot.row < keys.row ? spot.row - 1 : spot.row);
    bk_paint_whole(paint, spot, MOST_NOTICE_ROWS, BK_STYLE_BOLD, text);
    bk_paint_items(paint, keys, items, count);
}
