#include "bodkin/ui/form_pick.h"

#include <stdlib.h>
#include <string.h>

#include "bodkin/base/text.h"
#include "bodkin/ui/form_typed.h"

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

static bool at_making(const bk_form_pick *pick)
{
    return pick->chosen && pick->cursor.at >= pick->shown_count;
}

static const char *chosen_text(const bk_form_pick *pick)
{
    return pick->chosen && !at_making(pick) ? pick->all.items[pick->shown[pick->cursor.at]].text : NULL;
}

static void choose(bk_form_pick *pick, size_t row)
{
    bk_cursor_put(&pick->cursor, row);
    pick->chosen = true;
}

// The row of a choice among those shown, or `shown_count`.
static size_t row_of(const bk_form_pick *pick, const char *text)
{
    size_t row = 0;
    while (row < pick->shown_count && !bk_same_text(pick->all.items[pick->shown[row]].text, text))
        row++;
    return row;
}

bk_status bk_form_pick_again(bk_form *form, bk_error *error)
{
    bk_form_pick *pick = &form->pick;
    bk_arena *arena = bk_arena_new();
    bool making = at_making(pick);
    size_t make = pick->cursor.at - pick->shown_count;
    const char *before = bk_arena_text(arena, chosen_text(pick));
    bk_status status = bk_form_pick_read(form, error);
    size_t row = making ? pick->shown_count + make : row_of(pick, before);
    pick->chosen = false;
    if (row < pick->shown_count + (making ? pick->makes : 0))
        choose(pick, row);
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
        if ((size_t)(found - text) != except && strlen(item) == length && strncmp(found, item, length) == 0)
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
    pick->shown_count = count;
}

static bool can_pick(const bk_form_pick *pick, const char *item, size_t length)
{
    for (size_t i = 0; i < pick->all.count; i++)
        if (strlen(pick->all.items[i].text) == length && strncmp(pick->all.items[i].text, item, length) == 0)
            return true;
    return false;
}

// Whether something is called so already, whatever its capitals.
static bool is_there(const bk_form_pick *pick, const char *wanted)
{
    for (size_t i = 0; i < pick->all.count; i++)
        if (nearness_of(pick, i, wanted) == SAME)
            return true;
    return false;
}

static void offer_to_make(bk_form *form, const char *item, const char *wanted)
{
    bk_form_pick *pick = &form->pick;
    const bk_form_field *field = field_at_hand(form);
    pick->makes = 0;
    if (!*wanted || !bk_form_is_strict(form, form->at) || is_there(pick, wanted))
        return;
    pick->name = bk_arena_text(pick->arena, item);
    while (pick->makes < BK_FORM_MAKES && field->makes[pick->makes])
        pick->makes++;
}

// The item that is being typed, without blanks round it.
static const char *item_typed(const bk_form *form, size_t from, size_t length, bk_arena *arena)
{
    const char *text = bk_form_line_text(&form->values[form->at].line) + from;
    for (; length > 0 && *text == ' '; length--)
        text++;
    while (length > 0 && text[length - 1] == ' ')
        length--;
    return bk_arena_bytes(arena, text, length);
}

static void show(bk_form *form, const char *item, size_t from, bk_arena *arena)
{
    bk_form_pick *pick = &form->pick;
    bool arrived = form->values[form->at].arrived, strict = bk_form_is_strict(form, form->at);
    bool stands = arrived && (!strict || can_pick(pick, item, strlen(item)));
    const char *wanted = stands ? "" : bk_text_fold(arena, item);
    show_nearest_first(form, wanted, arrived ? SIZE_MAX : from);
    pick->nothing = strict && *wanted && pick->shown_count == 0 && pick->all.count > 0;
    if (pick->nothing)
        show_nearest_first(form, "", SIZE_MAX);
    offer_to_make(form, item, wanted);
    pick->cursor.at = pick->cursor.top = 0;
    bk_cursor_fit(&pick->cursor, pick->shown_count + pick->makes, pick->cursor.seen);
    pick->chosen = strict && !arrived && *wanted && !pick->nothing && pick->shown_count > 0;
}

// The row of what is spelled nearly as the item at the cursor, or `shown_count`.
static size_t nearest_row(const bk_form *form)
{
    size_t length = 0, from = item_at_cursor(form, &length);
    bk_arena *arena = bk_arena_new();
    size_t row = row_of(&form->pick, bk_form_pick_nearest(form, item_typed(form, from, length, arena)));
    bk_arena_free(arena);
    return row;
}

// Brings the choice that stands in the field, or is the nearest to what does, in sight.
static void bring_in_sight(bk_form *form)
{
    bk_form_pick *pick = &form->pick;
    const char *text = bk_form_line_text(&form->values[form->at].line);
    size_t row = pick->nothing ? nearest_row(form) : row_of(pick, text);
    if (row < pick->shown_count)
        bk_cursor_put(&pick->cursor, row);
}

void bk_form_pick_narrow(bk_form *form)
{
    size_t length = 0, from = item_at_cursor(form, &length);
    bk_arena *arena = bk_arena_new();
    show(form, item_typed(form, from, length, arena), from, arena);
    if (form->values[form->at].arrived || form->pick.nothing)
        bring_in_sight(form);
    bk_arena_free(arena);
}

const char *bk_form_pick_nearest(const bk_form *form, const char *name)
{
    const bk_form_pick *pick = &form->pick;
    bk_arena *arena = bk_arena_new();
    const char **texts = bk_arena_clear(arena, pick->all.count, sizeof *texts);
    for (size_t i = 0; i < pick->all.count; i++)
        texts[i] = pick->all.items[i].text;
    const char *nearest = bk_nearest(name, texts, pick->all.count);
    bk_arena_free(arena);
    return nearest;
}

// ---------------------------------------------------------------------------------------------------- its keys

bool bk_form_pick_opens(const bk_form *form)
{
    const bk_form_value *value = &form->values[form->at];
    const bk_form_pick *pick = &form->pick;
    bool typing = !value->arrived || value->line.text.length == 0 || pick->nothing || pick->makes > 0;
    return pick->cursor.count > 0 && typing;
}

// Where the list is begun: what is nearest to what matches nothing, or makes it; else the first.
static size_t first_row(const bk_form *form)
{
    const bk_form_pick *pick = &form->pick;
    if (!pick->nothing)
        return 0;
    size_t nearest = nearest_row(form);
    return nearest == pick->shown_count && pick->makes == 0 ? 0 : nearest;
}

// In a list the cursor goes behind the first item that is none.
static void go_to_unknown(bk_form *form)
{
    bk_form_line *line = &form->values[form->at].line;
    const char *text = bk_form_line_text(line), *rest = text, *item = NULL;
    size_t length = 0;
    while (bk_list_item(&rest, &item, &length))
        if (length > 0 && !can_pick(&form->pick, item, length)) {
            line->at = (size_t)(item - text) + length;
            bk_form_pick_narrow(form);
            return;
        }
}

void bk_form_pick_offer(bk_form *form)
{
    bk_form_pick *pick = &form->pick;
    if (is_list(form) && bk_form_is_strict(form, form->at))
        go_to_unknown(form);
    if (pick->makes > 0 || (pick->nothing && nearest_row(form) < pick->shown_count))
        choose(pick, first_row(form));
}

bool bk_form_pick_key(bk_form *form, bk_key_name name)
{
    bk_form_pick *pick = &form->pick;
    if (!pick->chosen) {
        if (name != BK_KEY_DOWN || !bk_form_pick_opens(form))
            return false;
        choose(pick, first_row(form));
        return true;
    }
    if (name == BK_KEY_UP && pick->cursor.at == 0) {
        pick->chosen = false;
        return true;
    }
    return name != BK_KEY_HOME && name != BK_KEY_END && bk_cursor_key(&pick->cursor, name);
}

const bk_form_kind *bk_form_pick_makes(const bk_form *form)
{
    const bk_form_pick *pick = &form->pick;
    return at_making(pick) ? field_at_hand(form)->makes[pick->cursor.at - pick->shown_count] : NULL;
}

void bk_form_pick_put(bk_form *form, const char *text)
{
    bk_form_value *value = &form->values[form->at];
    size_t length = 0, from = item_at_cursor(form, &length);
    bk_form_line_replace(&value->line, from, length, text);
    value->typed = true;
}

bool bk_form_pick_take(bk_form *form, const char *behind)
{
    bk_form_pick *pick = &form->pick;
    const char *text = chosen_text(pick);
    pick->chosen = false;
    if (!text)
        return false;
    bk_arena *arena = bk_arena_new();
    bk_form_pick_put(form, bk_arena_print(arena, "%s%s", text, behind));
    bk_arena_free(arena);
    return true;
}

const char *bk_form_pick_unknown(const bk_form *form, bk_arena *arena)
{
    const char *rest = bk_form_understood(form, form->at, arena), *item = NULL;
    size_t length = 0;
    if (!bk_form_is_strict(form, form->at) || !field_at_hand(form)->choices)
        return NULL;
    while (bk_list_item(&rest, &item, &length))
        if (length > 0 && !can_pick(&form->pick, item, length))
            return bk_arena_bytes(arena, item, length);
    return NULL;
}
