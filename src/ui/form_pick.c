#include "bodkin/ui/form_pick.h"

#include <stdlib.h>
#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/ui/form_typed.h"

enum { TELLS_GAP = 3, TEXT_MOST = 34 };

static const bk_form_field *field_at_hand(const bk_form *form)
{
    return &form->kind->fields[form->at];
}

static bool is_list(const bk_form *form)
{
    return bk_form_is_list(bk_form_column(form, form->at));
}

// ----------------------------------------------------------------------------------------------- its choices

static bk_form_choices words_as_choices(const bk_words *words, bk_arena *arena)
{
    bk_form_choice *items = bk_arena_clear(arena, words->count, sizeof *items);
    for (size_t i = 0; i < words->count; i++)
        items[i].text = words->items[i];
    return (bk_form_choices){items, words->count};
}

static void fold_all(bk_form_pick *pick)
{
    pick->folded = bk_arena_clear(pick->arena, pick->all.count, sizeof *pick->folded);
    pick->shown = bk_arena_clear(pick->arena, pick->all.count, sizeof *pick->shown);
    for (size_t i = 0; i < pick->all.count; i++) {
        const bk_form_choice *one = &pick->all.items[i];
        const char *all = bk_arena_print(pick->arena, "%s%s%s", one->text, one->tells ? " " : "",
                                         one->tells ? one->tells : "");
        pick->folded[i] = bk_text_fold(pick->arena, all);
    }
}

bk_status bk_form_pick_read(bk_form *form, bk_error *error)
{
    const bk_form_field *field = field_at_hand(form);
    const bk_column *column = bk_form_column(form, form->at);
    bk_form_pick *pick = &form->pick;
    bk_status status = BK_OK;
    bk_form_pick_free(pick);
    pick->arena = bk_arena_new();
    if (field->choices)
        status = field->choices(form, pick->arena, &pick->all, error);
    else if (column->words)
        pick->all = words_as_choices(column->words, pick->arena);
    if (status)
        pick->all.count = 0;
    fold_all(pick);
    bk_form_pick_narrow(form);
    return status;
}

static const char *chosen_text(const bk_form_pick *pick)
{
    return pick->chosen ? pick->all.items[pick->shown[pick->cursor.at]].text : NULL;
}

bk_status bk_form_pick_again(bk_form *form, bk_error *error)
{
    bk_form_pick *pick = &form->pick;
    bk_arena *arena = bk_arena_new();
    const char *before = bk_arena_text(arena, chosen_text(pick));
    bk_status status = bk_form_pick_read(form, error);
    pick->chosen = false;
    for (size_t i = 0; before && i < pick->cursor.count; i++)
        if (bk_same_text(pick->all.items[pick->shown[i]].text, before)) {
            bk_cursor_put(&pick->cursor, i);
            pick->chosen = true;
        }
    bk_arena_free(arena);
    return status;
}

void bk_form_pick_free(bk_form_pick *pick)
{
    bk_arena_free(pick->arena);
    *pick = (bk_form_pick){0};
}

void bk_form_pick_tell(bk_form *form, size_t field)
{
    bk_error error;
    bk_form_choices choices = {0};
    bk_form_value *value = &form->values[field];
    const bk_form_field *asked = &form->kind->fields[field];
    const char *tells = NULL, *text = bk_form_line_text(&value->line);
    bool one = asked->choices && *text && !bk_form_is_list(bk_form_column(form, field));
    bk_arena *arena = bk_arena_new();
    if (one && asked->choices(form, arena, &choices, &error) == BK_OK)
        for (size_t i = 0; i < choices.count; i++)
            if (bk_same_text(choices.items[i].text, text))
                tells = choices.items[i].tells;
    bk_form_keep(&value->tells, tells);
    bk_arena_free(arena);
}

// ------------------------------------------------------------------------------------------------- narrowing

// Where the item at the cursor begins in a list, and its length; the whole text where it is none.
static size_t item_at_cursor(const bk_form *form, size_t *length)
{
    const bk_form_line *line = &form->values[form->at].line;
    const char *text = bk_form_line_text(line);
    size_t from = 0;
    *length = line->text.length;
    if (!is_list(form))
        return 0;
    for (size_t i = 0; i < line->at; i++)
        if (text[i] == ';')
            from = i + 1;
    while (text[from] == ' ')
        from++;
    *length = strcspn(text + from, ";");
    return from;
}

static bool begins_word(const char *text, const char *found)
{
    return found == text || found[-1] == ' ' || found[-1] == '-' || found[-1] == '/';
}

enum nearness { SAME, BEGINS, BEGINS_A_WORD, WITHIN, NOT_FOUND };

static enum nearness nearness_of(const bk_form_pick *pick, size_t choice, const char *wanted)
{
    const char *text = pick->folded[choice];
    size_t length = strlen(wanted);
    if (bk_same_text(wanted, text) || (strncmp(text, wanted, length) == 0 && text[length] == ' ' &&
                                       strlen(pick->all.items[choice].text) == length))
        return SAME;
    if (strncmp(text, wanted, length) == 0)
        return BEGINS;
    enum nearness nearest = NOT_FOUND;
    for (const char *found = strstr(text, wanted); found && nearest != BEGINS_A_WORD;
         found = strstr(found + 1, wanted))
        nearest = begins_word(text, found) ? BEGINS_A_WORD : WITHIN;
    return nearest;
}

// Whether a list has that item already, other than at `except`.
static bool has_item(const bk_form *form, const char *item, size_t except)
{
    const char *text = bk_form_line_text(&form->values[form->at].line);
    const char *rest = text, *found = NULL;
    size_t length = 0;
    while (bk_list_item(&rest, &found, &length))
        if (found != text + except && strlen(item) == length && strncmp(found, item, length) == 0)
            return true;
    return false;
}

static void show_nearest_first(bk_form *form, const char *wanted, size_t except)
{
    bk_form_pick *pick = &form->pick;
    size_t count = 0;
    for (enum nearness nearness = SAME; nearness < NOT_FOUND; nearness++)
        for (size_t i = 0; i < pick->all.count; i++)
            if (nearness_of(pick, i, wanted) == nearness &&
                !(is_list(form) && has_item(form, pick->all.items[i].text, except)))
                pick->shown[count++] = i;
    pick->cursor.at = pick->cursor.top = 0;
    bk_cursor_fit(&pick->cursor, count, pick->cursor.seen);
}

// Whether a choice is what stands in the field.
static bool stands_there(const bk_form *form, const bk_form_choice *one)
{
    return bk_same_text(one->text, bk_form_line_text(&form->values[form->at].line));
}

static void bring_in_sight(bk_form *form)
{
    bk_form_pick *pick = &form->pick;
    for (size_t i = 0; i < pick->cursor.count; i++)
        if (stands_there(form, &pick->all.items[pick->shown[i]]))
            bk_cursor_put(&pick->cursor, i);
}

void bk_form_pick_narrow(bk_form *form)
{
    bk_form_pick *pick = &form->pick;
    const bk_form_value *value = &form->values[form->at];
    if (pick->all.count == 0)
        return;
    size_t length = 0, from = item_at_cursor(form, &length);
    bk_arena *arena = bk_arena_new();
    const char *item = bk_arena_bytes(arena, bk_form_line_text(&value->line) + from, length);
    const char *wanted = value->arrived ? "" : bk_text_fold(arena, item);
    show_nearest_first(form, wanted, value->arrived ? SIZE_MAX : from);
    pick->chosen = *wanted && bk_form_is_strict(form, form->at) && pick->cursor.count > 0;
    if (value->arrived)
        bring_in_sight(form);
    bk_arena_free(arena);
}

// ---------------------------------------------------------------------------------------------------- its keys

bool bk_form_pick_opens(const bk_form *form)
{
    const bk_form_value *value = &form->values[form->at];
    return form->pick.cursor.count > 0 && (!value->arrived || value->line.text.length == 0);
}

bool bk_form_pick_key(bk_form *form, bk_key_name name)
{
    bk_form_pick *pick = &form->pick;
    if (!pick->chosen) {
        if (name != BK_KEY_DOWN || !bk_form_pick_opens(form))
            return false;
        pick->chosen = true;
        bk_cursor_put(&pick->cursor, 0);
        return true;
    }
    if (name == BK_KEY_UP && pick->cursor.at == 0) {
        pick->chosen = false;
        return true;
    }
    return name != BK_KEY_HOME && name != BK_KEY_END && bk_cursor_key(&pick->cursor, name);
}

bool bk_form_pick_take(bk_form *form, const char *behind)
{
    bk_form_pick *pick = &form->pick;
    bk_form_value *value = &form->values[form->at];
    if (!pick->chosen)
        return false;
    size_t length = 0, from = item_at_cursor(form, &length);
    bk_arena *arena = bk_arena_new();
    const char *text = bk_arena_print(arena, "%s%s", chosen_text(pick), behind);
    bk_form_line_replace(&value->line, from, length, text);
    bk_arena_free(arena);
    value->typed = true;
    pick->chosen = false;
    return true;
}

static bool can_pick(const bk_form_pick *pick, const char *item, size_t length)
{
    for (size_t i = 0; i < pick->all.count; i++)
        if (strlen(pick->all.items[i].text) == length && strncmp(pick->all.items[i].text, item, length) == 0)
            return true;
    return false;
}

const char *bk_form_pick_unknown(const bk_form *form, bk_arena *arena)
{
    const char *rest = bk_form_line_text(&form->values[form->at].line), *item = NULL;
    size_t length = 0;
    if (!bk_form_is_strict(form, form->at) || !field_at_hand(form)->choices)
        return NULL;
    while (bk_list_item(&rest, &item, &length))
        if (length > 0 && !can_pick(&form->pick, item, length))
            return bk_arena_bytes(arena, item, length);
    return NULL;
}

// ----------------------------------------------------------------------------------------------------- drawing

static size_t texts_width(const bk_form_pick *pick, const bk_paint *paint)
{
    size_t width = 0;
    for (size_t i = 0; i < pick->all.count; i++) {
        size_t wide = bk_text_columns(bk_text_safe(paint->arena, pick->all.items[i].text, paint->ascii));
        width = wide > width ? wide : width;
    }
    return width < TEXT_MOST ? width : TEXT_MOST;
}

static void draw_choice(const bk_paint *paint, bk_spot spot, size_t width, const bk_form_choice *one,
                        int style)
{
    bool chosen = style == BK_STYLE_CHOSEN;
    bk_spot tells = {spot.row, spot.column + width + TELLS_GAP, 0};
    if (spot.width > width + TELLS_GAP)
        tells.width = spot.width - width - TELLS_GAP;
    if (chosen) {
        bk_term_fill(spot.row, spot.column - 2, spot.width + 2, BK_STYLE_CHOSEN);
        bk_term_put(spot.row, spot.column - 2, 1, BK_STYLE_CHOSEN, ">");
    }
    spot.width = one->tells ? width : spot.width;
    bk_paint_text(paint, spot, style, one->text);
    bk_paint_text(paint, tells, chosen ? style : BK_STYLE_DIM, one->tells);
}

static int choice_style(const bk_form *form, size_t shown)
{
    const bk_form_pick *pick = &form->pick;
    if (pick->chosen && shown == pick->cursor.at)
        return BK_STYLE_CHOSEN;
    return stands_there(form, &pick->all.items[pick->shown[shown]]) ? BK_STYLE_BOLD : BK_STYLE_PLAIN;
}

void bk_form_pick_draw(bk_form *form, const bk_paint *paint, size_t row, size_t end, size_t column)
{
    bk_form_pick *pick = &form->pick;
    if (row >= end)
        return;
    size_t width = texts_width(pick, paint), rows = end - row;
    bool all = pick->cursor.count <= rows;
    bk_cursor_fit(&pick->cursor, pick->cursor.count, all || rows < 2 ? rows : rows - 1);
    bk_spot spot = {row, column, paint->columns - column - 1};
    for (size_t i = pick->cursor.top; i < pick->cursor.count && i < pick->cursor.top + pick->cursor.seen;
         i++) {
        draw_choice(paint, spot, width, &pick->all.items[pick->shown[i]], choice_style(form, i));
        spot.row++;
    }
    if (!all && spot.row < end)
        bk_paint_text(paint, spot, BK_STYLE_DIM,
                      bk_arena_print(paint->arena, "%zu to %zu of %zu", pick->cursor.top + 1,
                                     pick->cursor.top + pick->cursor.seen, pick->cursor.count));
}
