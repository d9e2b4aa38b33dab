#include "bodkin/ui/form_pick_draw.h"

#include "bodkin/base/text.h"

enum {
    TELLS_GAP = 3,
    TEXT_MOST = 48,
    TELLS_MOST = 40,  // for which the list begins further to the left
    TELLS_LEAST = 30, // for which long texts are cut
    FIRST_COLUMN = 4,
    MARK_COLUMNS = 2
};

static size_t wider(const bk_paint *paint, size_t width, const char *text)
{
    size_t wide = text ? bk_text_columns(bk_text_safe(paint->arena, text, paint->ascii)) : 0;
    return wide > width ? wide : width;
}

static size_t at_most(size_t width, size_t most)
{
    return width < most ? width : most;
}

// The columns of the texts; the list begins further to the left where the whole of it has no room else.
static size_t share_out(const bk_form_pick *pick, const bk_paint *paint, bk_spot *spot)
{
    size_t texts = 0, tells = 0;
    for (size_t i = 0; i < pick->all.count; i++) {
        texts = wider(paint, texts, pick->all.items[i].text);
        tells = wider(paint, tells, pick->all.items[i].tells);
    }
    texts = at_most(texts, TEXT_MOST);
    size_t end = spot->column + spot->width, needed = texts + TELLS_GAP + at_most(tells, TELLS_MOST);
    if (needed > spot->width)
        spot->column = needed + FIRST_COLUMN < end ? end - needed : FIRST_COLUMN;
    spot->width = end - spot->column;
    size_t kept = tells > 0 ? at_most(tells, TELLS_LEAST) + TELLS_GAP : 0;
    return at_most(texts, spot->width - kept);
}

static bk_spot spot_from(const bk_paint *paint, size_t row, size_t column)
{
    return (bk_spot){row, column, paint->columns - column - 1};
}

const char *bk_form_pick_whole(const bk_form *form, const bk_paint *paint, size_t column)
{
    const bk_form_pick *pick = &form->pick;
    if (!pick->chosen || pick->cursor.at >= pick->shown_count)
        return NULL;
    const bk_form_choice *one = &pick->all.items[pick->shown[pick->cursor.at]];
    bk_spot spot = spot_from(paint, 0, column);
    size_t width = share_out(pick, paint, &spot);
    bool cut = wider(paint, width, one->text) > width ||
               wider(paint, 0, one->tells) + width + TELLS_GAP > spot.width;
    if (!cut || !one->tells)
        return cut ? one->text : NULL;
    return bk_arena_print(paint->arena, "%s: %s", one->text, one->tells);
}

static void draw_bar(bk_spot spot)
{
    bk_term_fill(spot.row, spot.column - MARK_COLUMNS, spot.width + MARK_COLUMNS, BK_STYLE_CHOSEN);
    bk_term_put(spot.row, spot.column - MARK_COLUMNS, 1, BK_STYLE_CHOSEN, ">");
}

static void draw_choice(const bk_paint *paint, bk_spot spot, size_t width, const bk_form_choice *one,
                        int style)
{
    bool chosen = style == BK_STYLE_CHOSEN;
    bk_spot tells = {spot.row, spot.column + width + TELLS_GAP, 0};
    if (spot.width > width + TELLS_GAP)
        tells.width = spot.width - width - TELLS_GAP;
    if (chosen)
        draw_bar(spot);
    spot.width = one->tells ? width : spot.width;
    bk_paint_text(paint, spot, style, one->text);
    bk_paint_text(paint, tells, chosen ? style : BK_STYLE_DIM, one->tells);
}

static int choice_style(const bk_form *form, size_t row)
{
    const bk_form_pick *pick = &form->pick;
    const char *text = pick->all.items[pick->shown[row]].text;
    if (pick->chosen && row == pick->cursor.at)
        return BK_STYLE_CHOSEN;
    if (pick->nothing)
        return BK_STYLE_DIM;
    bool stands_there = bk_same_text(text, bk_form_line_text(&form->values[form->at].line));
    return stands_there ? BK_STYLE_BOLD : BK_STYLE_PLAIN;
}

// Those shown, as many as have room; where that is not all the last row tells which.
static void draw_choices(bk_form *form, const bk_paint *paint, bk_spot spot, size_t end, size_t width)
{
    bk_form_pick *pick = &form->pick;
    size_t rows = end > spot.row ? end - spot.row : 0;
    bool all = pick->shown_count <= rows;
    size_t seen = all || rows < 2 ? rows : rows - 1;
    bk_cursor_fit(&pick->cursor, pick->cursor.count, seen);
    size_t last_top = pick->shown_count > seen ? pick->shown_count - seen : 0;
    size_t top = at_most(pick->cursor.top, last_top);
    for (size_t i = top; i < pick->shown_count && i < top + seen; i++, spot.row++)
        draw_choice(paint, spot, width, &pick->all.items[pick->shown[i]], choice_style(form, i));
    if (!all && spot.row < end)
        bk_paint_text(
            paint, spot, BK_STYLE_DIM,
            bk_arena_print(paint->arena, "%zu to %zu of %zu", top + 1, top + seen, pick->shown_count));
}

static void draw_makes(const bk_form *form, const bk_paint *paint, bk_spot spot)
{
    const bk_form_pick *pick = &form->pick;
    for (size_t i = 0; i < pick->makes; i++, spot.row++) {
        bool chosen = pick->chosen && pick->cursor.at == pick->shown_count + i;
        const char *noun = form->kind->fields[form->at].makes[i]->sheet->noun;
        if (chosen)
            draw_bar(spot);
        bk_paint_text(paint, spot, chosen ? BK_STYLE_CHOSEN : BK_STYLE_ACCENT,
                      bk_arena_print(paint->arena, "+ make the %s \"%s\"", noun, pick->name));
    }
}

// What stands above the list where it is not what was typed.
static const char *heading_of(const bk_form *form, const bk_paint *paint)
{
    const bk_form_pick *pick = &form->pick;
    const bk_form_kind *makes = form->kind->fields[form->at].makes[0];
    if (pick->nothing)
        return "nothing begins so; all there are:";
    if (pick->all.count > 0 || pick->makes > 0 || !makes)
        return NULL;
    return bk_arena_print(paint->arena, "there is no %s yet; type a name to make one", makes->sheet->noun);
}

void bk_form_pick_draw(bk_form *form, const bk_paint *paint, size_t row, size_t end, size_t column)
{
    const bk_form_pick *pick = &form->pick;
    if (row + pick->makes >= end)
        return;
    bk_spot spot = spot_from(paint, row, column);
    size_t width = share_out(pick, paint, &spot), list_end = end - pick->makes;
    const char *heading = heading_of(form, paint);
    if (heading)
        bk_paint_text(paint, spot, BK_STYLE_DIM, heading);
    spot.row += heading ? 1 : 0;
    draw_choices(form, paint, spot, list_end, width);
    size_t shown = pick->shown_count < list_end - spot.row ? pick->shown_count : list_end - spot.row;
    spot.row += shown;
    draw_makes(form, paint, spot);
}
