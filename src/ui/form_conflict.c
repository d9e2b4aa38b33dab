#include "bodkin/ui/form_conflict.h"

#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/ui/form_draw.h"

enum { FIRST_ROW = 2, COLUMN = 2, GAP = 2, LABEL_MOST = 20, TEXT_ROWS = 3, ROWS_BELOW = 3 };

typedef struct columns {
    bk_spot label, mine, theirs;
} columns;

static bool differs(const bk_form *form, const bk_paint *paint, size_t field)
{
    const char *theirs = bk_form_record_text(form, field, form->newer, paint->arena);
    return strcmp(theirs, bk_form_line_text(&form->values[field].line)) != 0;
}

static columns share_out(const bk_form *form, const bk_paint *paint)
{
    size_t label = 0;
    for (size_t i = 0; i < form->kind->field_count; i++) {
        size_t wide = differs(form, paint, i) ? bk_text_columns(form->kind->fields[i].label) : 0;
        label = wide > label ? wide : label;
    }
    label = label < LABEL_MOST ? label : LABEL_MOST;
    size_t half = (paint->columns - COLUMN - label - 2 * GAP - 1) / 2;
    columns shared = {.label = {0, COLUMN, label}};
    shared.mine = (bk_spot){0, COLUMN + label + GAP, half - GAP};
    shared.theirs = (bk_spot){0, shared.mine.column + half, half};
    return shared;
}

static size_t draw_side(const bk_paint *paint, bk_spot spot, size_t row, int style, const char *text)
{
    spot.row = row;
    return bk_paint_whole(paint, spot, TEXT_ROWS, style, *text ? text : "(empty)");
}

// One field, yours and theirs; what was not typed here will be theirs anyway.
static size_t draw_field(const bk_form *form, const bk_paint *paint, const columns *at, size_t field,
                         size_t row)
{
    bool changed = bk_form_field_changed(form, field);
    bk_spot label = at->label;
    label.row = row;
    bk_paint_text(paint, label, BK_STYLE_DIM, form->kind->fields[field].label);
    size_t mine = draw_side(paint, at->mine, row, changed ? BK_STYLE_PLAIN : BK_STYLE_DIM,
                            changed ? bk_form_line_text(&form->values[field].line) : "not changed by you");
    size_t theirs = draw_side(paint, at->theirs, row, BK_STYLE_PLAIN,
                              bk_form_record_text(form, field, form->newer, paint->arena));
    return mine > theirs ? mine : theirs;
}

void bk_form_draw_conflict(const bk_form *form, const bk_paint *paint)
{
    columns at = share_out(form, paint);
    size_t row = FIRST_ROW, end = paint->rows - ROWS_BELOW;
    bk_spot line = {row, COLUMN, paint->columns - COLUMN - 1};
    bk_form_draw_head(form, paint);
    row += bk_paint_whole(
        paint, line, TEXT_ROWS, BK_STYLE_TIGHT,
        "Another terminal changed this while you were typing. Keeping yours saves what you typed; what you "
        "did not change stays as theirs.");
    at.mine.row = at.theirs.row = row + 1;
    bk_paint_text(paint, at.mine, BK_STYLE_DIM, "yours");
    bk_paint_text(paint, at.theirs, BK_STYLE_DIM, "theirs");
    row += 2;
    for (size_t i = 0; i < form->kind->field_count && row + TEXT_ROWS <= end; i++)
        if (differs(form, paint, i))
            row += draw_field(form, paint, &at, i, row);
    bk_term_cursor(0, 0, false);
}
