#include "bodkin/ui/form_draw.h"

#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/ui/form_pick_draw.h"
#include "bodkin/ui/form_save.h"
#include "bodkin/ui/form_typed.h"

enum {
    FIRST_ROW = 2,
    LABEL_COLUMN = 2,
    LABEL_MOST = 20,
    LABEL_GAP = 2,
    ASIDE_COLUMN = 24, // behind the beginning of the text
    ASIDE_GAP = 3,
    ASIDE_LEAST = 8,
    SAYS_ROWS = 2, // kept for what is said
    SAYS_MOST = 4,
    NOTICE_MOST = 3,
    LIST_ROWS = 4,   // kept for a list to pick from, least
    WHOLE_ROWS = 3,  // least of a long text at hand
    WHOLE_MOST = 10, // and most
    TEXT_MOST = 100, // longest comfortable line
};

// Where the parts stand in one picture.
typedef struct layout {
    size_t text_column, text_width;
    size_t first_row;  ///< of the fields
    size_t fields_end; ///< row behind the last that fields may take
    size_t rows;       ///< all rows of the fields
} layout;

static const char *label_of(const bk_form *form, size_t field)
{
    return form->kind->fields[field].label;
}

static size_t label_width(const bk_form *form)
{
    size_t width = 0;
    for (size_t i = 0; i < form->kind->field_count; i++) {
        size_t wide = bk_form_asked(form, i) ? bk_text_columns(label_of(form, i)) : 0;
        width = wide > width ? wide : width;
    }
    return width < LABEL_MOST ? width : LABEL_MOST;
}

static bool has_list(const bk_form *form)
{
    return form->kind->fields[form->at].choices || bk_form_column(form, form->at)->words;
}

// ---------------------------------------------------------------------------------------------- the heights

static const char *text_of(const bk_form *form, size_t field)
{
    return bk_form_line_text(&form->values[field].line);
}

// Rows that a field takes: one, or at hand as many as its long text wants.
static size_t field_rows(const bk_form *form, const bk_paint *paint, size_t field, size_t width)
{
    if (!form->kind->fields[field].whole || field != form->at)
        return 1;
    size_t count = 0;
    bk_form_line_rows(text_of(form, field), width, paint->ascii, paint->arena, &count);
    count = count < WHOLE_ROWS ? WHOLE_ROWS : count;
    return count < WHOLE_MOST ? count : WHOLE_MOST;
}

// The first row of a field among the rows of all, and with `field` beyond the last how many there are.
static size_t first_row_of(const bk_form *form, const bk_paint *paint, size_t field, size_t width)
{
    size_t rows = 0;
    for (size_t i = 0; i < form->kind->field_count && i < field; i++)
        rows += bk_form_asked(form, i) ? field_rows(form, paint, i, width) : 0;
    return rows;
}

// What another terminal has done meanwhile; NULL: nothing.
static const char *noticed(const bk_form *form, const bk_paint *paint)
{
    if (form->gone)
        return "Taken away at another terminal meanwhile; saving asks.";
    if (!form->newer)
        return NULL;
    return bk_arena_print(paint->arena, "Changed at another terminal meanwhile: %s. Saving shows both.",
                          bk_form_changed_there(form, paint->arena));
}

static size_t draw_noticed(const bk_form *form, const bk_paint *paint)
{
    const char *sentence = noticed(form, paint);
    bk_spot spot = bk_paint_row(paint, FIRST_ROW - 1);
    return sentence ? bk_paint_whole(paint, spot, NOTICE_MOST, BK_STYLE_TIGHT, sentence) : 0;
}

static layout lay_out(bk_form *form, const bk_paint *paint, size_t noticed_rows)
{
    layout parts = {.text_column = LABEL_COLUMN + label_width(form) + LABEL_GAP};
    parts.first_row = FIRST_ROW + (noticed_rows > 0 ? noticed_rows - 1 : 0);
    parts.text_width = paint->columns - parts.text_column - 1;
    parts.text_width = parts.text_width < TEXT_MOST ? parts.text_width : TEXT_MOST;
    form->text_columns = parts.text_width;
    size_t below = 1 + SAYS_ROWS + (has_list(form) ? LIST_ROWS : 0) + 1;
    size_t room = paint->rows - parts.first_row - below;
    parts.rows = first_row_of(form, paint, SIZE_MAX, parts.text_width);
    parts.fields_end = parts.first_row + (parts.rows < room ? parts.rows : room);
    return parts;
}

// Brings the field at hand in sight, and leaves no room empty at the end.
static void scroll(bk_form *form, const bk_paint *paint, const layout *parts)
{
    size_t seen = parts->fields_end - parts->first_row;
    size_t first = first_row_of(form, paint, form->at, parts->text_width);
    size_t last = first + field_rows(form, paint, form->at, parts->text_width);
    if (form->top > first)
        form->top = first;
    if (last > form->top + seen)
        form->top = last - seen;
    if (parts->rows < form->top + seen)
        form->top = parts->rows - seen;
}

// ------------------------------------------------------------------------------------------------- the texts

static const char *safe_part(const bk_paint *paint, const char *text, size_t from, size_t length)
{
    return bk_text_safe(paint->arena, bk_arena_bytes(paint->arena, text + from, length), paint->ascii);
}

// From which byte a text is shown so that the cursor is in sight.
static size_t shown_from(const bk_paint *paint, const bk_form_line *line, size_t width)
{
    const char *text = bk_form_line_text(line);
    size_t from = 0;
    while (from < line->at &&
           bk_form_line_columns(text, from, line->at - from, paint->ascii, paint->arena) + 2 > width)
        from += bk_text_step(text + from);
    return from;
}

// A text in one row, with the cursor; cut at the ends with dots where it goes on.
static void draw_text_at_hand(const bk_paint *paint, bk_spot spot, const bk_form_line *line, int style)
{
    const char *text = bk_form_line_text(line);
    size_t from = shown_from(paint, line, spot.width);
    const char *dots = paint->ascii ? "<" : "…";
    if (from > 0)
        from += bk_text_step(text + from);
    size_t column = spot.column + (from > 0 ? 1 : 0);
    if (from > 0)
        bk_term_put(spot.row, spot.column, 1, BK_STYLE_DIM, dots);
    size_t room = spot.width - (column - spot.column);
    const char *rest = safe_part(paint, text, from, strlen(text + from));
    bk_term_put(spot.row, column, room, style, rest);
    if (bk_text_columns(rest) > room)
        bk_term_put(spot.row, column + room - 1, 1, BK_STYLE_DIM, paint->ascii ? ">" : "…");
    bk_term_cursor(spot.row,
                   column + bk_form_line_columns(text, from, line->at - from, paint->ascii, paint->arena),
                   true);
}

// A long text at hand over several rows.
static void draw_whole(const bk_form *form, const bk_paint *paint, bk_spot spot, size_t rows)
{
    const bk_form_line *line = &form->values[form->at].line;
    const char *text = bk_form_line_text(line);
    size_t count = 0;
    const bk_form_row *parts = bk_form_line_rows(text, spot.width, paint->ascii, paint->arena, &count);
    size_t at = bk_form_line_row(parts, count, line->at), top = at >= rows ? at - rows + 1 : 0;
    for (size_t i = top; i < count && i < top + rows; i++, spot.row++) {
        bk_term_put(spot.row, spot.column, spot.width, BK_STYLE_PLAIN,
                    safe_part(paint, text, parts[i].from, parts[i].length));
        if (i == at)
            bk_term_cursor(spot.row,
                           spot.column + bk_form_line_columns(text, parts[i].from, line->at - parts[i].from,
                                                              paint->ascii, paint->arena),
                           true);
    }
}

typedef struct aside {
    const char *text;
    int style;
} aside;

// What stands in place of a text that is not there: "needed, in m".
static const char *empty_words(const bk_form *form, const bk_paint *paint, size_t field)
{
    const char *needed = bk_form_column(form, field)->required ? "needed" : NULL;
    const char *unit = form->values[field].unit;
    if (!unit)
        return needed;
    return bk_arena_print(paint->arena, "%s%sin %s", needed ? needed : "", needed ? ", " : "", unit);
}

// What stands beside a field's text.
static aside aside_of(const bk_form *form, const bk_paint *paint, size_t field)
{
    const bk_form_value *value = &form->values[field];
    bool at_hand = field == form->at;
    if (value->wrong && !at_hand && value->line.text.length > 0)
        return (aside){"not understood", BK_STYLE_LATE};
    if (value->doubt && !at_hand)
        return (aside){"doubtful", BK_STYLE_TIGHT};
    if (value->line.text.length == 0)
        return (aside){empty_words(form, paint, field), BK_STYLE_DIM};
    bool suggested = !value->typed && value->begun[0] == '\0';
    const char *words = bk_form_aside(form, field, paint->arena);
    if (!words)
        words = value->unit ? value->unit : value->tells;
    if (suggested)
        words = words ? bk_arena_print(paint->arena, "%s, suggested", words) : "suggested";
    return (aside){words, BK_STYLE_DIM};
}

// The text goes before what is told of it, which is cut or left out; what is wrong is told all the same. Returns the room of the
// text, 0: all.
static size_t draw_aside(const bk_paint *paint, const layout *parts, size_t row, size_t wide, aside beside)
{
    size_t needs = bk_text_columns(beside.text), room = paint->columns - parts->text_column - 1;
    size_t behind = wide + ASIDE_GAP, at = behind > ASIDE_COLUMN ? behind : ASIDE_COLUMN;
    if (at + needs > room)
        at = behind + needs < room ? room - needs : behind;
    if (at + (needs < ASIDE_LEAST ? needs : ASIDE_LEAST) > room) {
        if (beside.style == BK_STYLE_DIM)
            return 0;
        at = room - needs;
    }
    bk_spot spot = {row, parts->text_column + at, room - at};
    bk_paint_text(paint, spot, beside.style, beside.text);
    return at - ASIDE_GAP;
}

// Whether the first letter typed takes the place of what stands there.
static bool is_picked_up(const bk_form *form)
{
    const bk_form_value *value = &form->values[form->at];
    return value->arrived && value->line.text.length > 0 && bk_form_replaces(form);
}

static void draw_field(bk_form *form, const bk_paint *paint, const layout *parts, size_t field, size_t row)
{
    bool at_hand = field == form->at;
    const bk_form_value *value = &form->values[field];
    bk_spot label = {row, LABEL_COLUMN, parts->text_column - LABEL_GAP - LABEL_COLUMN};
    bk_spot text = {row, parts->text_column, parts->text_width};
    if (at_hand)
        bk_term_put(row, 0, 1, BK_STYLE_ACCENT, ">");
    bk_paint_text(paint, label, at_hand ? BK_STYLE_ACCENT : BK_STYLE_DIM, label_of(form, field));
    aside beside = aside_of(form, paint, field);
    size_t wide = bk_text_columns(safe_part(paint, text_of(form, field), 0, value->line.text.length));
    if (beside.text) {
        size_t room = draw_aside(paint, parts, row, wide < text.width ? wide : text.width, beside);
        text.width = room && room < text.width ? room : text.width;
    }
    if (!at_hand)
        bk_paint_text(paint, text, BK_STYLE_PLAIN, text_of(form, field));
    else if (form->kind->fields[field].whole)
        draw_whole(form, paint, text, field_rows(form, paint, field, parts->text_width));
    else
        draw_text_at_hand(paint, text, &value->line, is_picked_up(form) ? BK_STYLE_CHOSEN : BK_STYLE_PLAIN);
}

static void draw_fields(bk_form *form, const bk_paint *paint, const layout *parts)
{
    size_t at = 0;
    for (size_t i = 0; i < form->kind->field_count; i++) {
        if (!bk_form_asked(form, i))
            continue;
        size_t rows = field_rows(form, paint, i, parts->text_width);
        size_t row = parts->first_row + at - form->top;
        if (at >= form->top && row + rows <= parts->fields_end)
            draw_field(form, paint, parts, i, row);
        at += rows;
    }
    bk_spot above = bk_paint_row(paint, parts->first_row - 1), below = bk_paint_row(paint, parts->fields_end);
    if (form->top > 0 && !noticed(form, paint))
        bk_paint_right(paint, above, BK_STYLE_DIM, "more above");
    if (form->top + parts->fields_end - parts->first_row < parts->rows)
        bk_paint_right(paint, below, BK_STYLE_DIM, "more below");
}

// ------------------------------------------------------------------------------------------- what is said

static const char *help_of(const bk_form *form, const bk_paint *paint)
{
    const bk_form_field *field = &form->kind->fields[form->at];
    const char *example =
        field->example ? field->example : bk_form_example(bk_form_column(form, form->at), paint->arena);
    bool shown = example && !field->choices && !bk_form_column(form, form->at)->words;
    if (!shown)
        return field->help;
    return bk_arena_print(paint->arena, "%s; for example %s", field->help, example);
}

// What was doubtful in the field that was left last.
static const char *doubt_left(const bk_form *form, const bk_paint *paint)
{
    if (form->before_at >= form->kind->field_count || form->before_at == form->at ||
        !form->values[form->before_at].doubt)
        return NULL;
    return bk_arena_print(paint->arena, "%s: %s", label_of(form, form->before_at),
                          form->values[form->before_at].doubt);
}

// What is wrong, or else the help and what is doubtful; of those two the help gives way where there is no room. Returns the
// rows used.
static size_t draw_said(const bk_form *form, const bk_paint *paint, size_t row, size_t list_column)
{
    const bk_form_value *value = &form->values[form->at];
    const char *doubt = value->doubt ? value->doubt : doubt_left(form, paint);
    const char *wrong = form->said ? form->said : value->wrong;
    const char *whole = bk_form_pick_whole(form, paint, list_column);
    const char *help = whole ? whole : help_of(form, paint);
    bk_spot spot = {row, LABEL_COLUMN, paint->columns - LABEL_COLUMN - 1};
    spot.width = spot.width < TEXT_MOST ? spot.width : TEXT_MOST;
    size_t rows = form->pick.cursor.count > 0 ? SAYS_MOST : paint->rows - 1 - row;
    if (wrong)
        return bk_paint_whole(paint, spot, rows, BK_STYLE_LATE, wrong);
    if (!doubt)
        return bk_paint_whole(paint, spot, rows, BK_STYLE_DIM, help);
    size_t doubted = bk_paint_rows(paint, spot.width, doubt), helped = bk_paint_rows(paint, spot.width, help);
    if (doubted + helped <= rows)
        spot.row += bk_paint_whole(paint, spot, helped, BK_STYLE_DIM, help);
    return spot.row - row + bk_paint_whole(paint, spot, rows - (spot.row - row), BK_STYLE_TIGHT, doubt);
}

void bk_form_draw_head(const bk_form *form, const bk_paint *paint)
{
    bk_spot head = bk_paint_row(paint, 0);
    bk_spot right = {0, head.column + head.width / 2, head.width - head.width / 2};
    size_t used = bk_paint_right(paint, right, BK_STYLE_DIM, form->wall->production);
    head.width -= used > 0 ? used + LABEL_GAP : 0;
    bk_paint_text(paint, head, BK_STYLE_BOLD, form->title);
}

void bk_form_draw(bk_form *form, const bk_paint *paint)
{
    layout parts = lay_out(form, paint, draw_noticed(form, paint));
    scroll(form, paint, &parts);
    bk_form_draw_head(form, paint);
    draw_fields(form, paint, &parts);
    size_t row = parts.fields_end + 1;
    size_t said = draw_said(form, paint, row, parts.text_column);
    row += said < SAYS_ROWS ? SAYS_ROWS : said;
    bk_form_pick_draw(form, paint, row, paint->rows - 1, parts.text_column);
}
