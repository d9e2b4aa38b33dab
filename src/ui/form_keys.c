#include "bodkin/ui/form_keys.h"

#include "bodkin/base/text.h"
#include "bodkin/ui/form_editor.h"
#include "bodkin/ui/form_make.h"
#include "bodkin/ui/form_pick.h"
#include "bodkin/ui/form_save.h"
#include "bodkin/ui/form_steps.h"
#include "bodkin/ui/form_typed.h"
#include "bodkin/ui/leaving.h"
#include "bodkin/ui/stack.h"

static bk_form_value *at_hand(const bk_form *form)
{
    return &form->values[form->at];
}

// Where Enter goes on to: from field to field, but over those that stand beside the one at hand. `form->at`: it saves.
static size_t next_by_enter(const bk_form *form)
{
    const bk_form_field *fields = form->kind->fields;
    size_t from = form->at, next = bk_form_next(form, from, 1);
    while (!fields[form->at].beside && fields[next].beside && next != from) {
        from = next;
        next = bk_form_next(form, from, 1);
    }
    return next == from ? form->at : next;
}

static bool is_last(const bk_form *form)
{
    return next_by_enter(form) == form->at;
}

static bool at_list(const bk_form *form)
{
    return bk_form_is_list(bk_form_column(form, form->at));
}

// ------------------------------------------------------------------------------------------------- its keys

// Goes on from a field, or stays once where something is wrong with it, with what may have been meant chosen.
static void go_on(bk_screen *screen, const bk_key_row *row)
{
    bk_form *form = screen->self;
    bk_form_value *value = at_hand(form);
    if (row->name == BK_KEY_ENTER && bk_form_make(screen))
        return;
    bool taken = bk_form_pick_take(form, "");
    size_t next = row->name == BK_KEY_ENTER ? next_by_enter(form) : bk_form_next(form, form->at, 1);
    bk_form_leave(form);
    if (value->wrong && !value->told) {
        if (taken)
            bk_form_arrive(form, form->at);
        value->told = true;
        bk_form_pick_offer(form);
    } else if (next == form->at && row->name == BK_KEY_ENTER) {
        bk_form_save(screen);
    } else {
        bk_form_arrive(form, next);
    }
}

static void go_back(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_form *form = screen->self;
    bk_form_pick_take(form, "");
    bk_form_go(form, bk_form_next(form, form->at, -1));
}

// Within a long text from row to row; false at its ends.
static bool move_within(bk_form *form, int by)
{
    if (!form->kind->fields[form->at].whole)
        return false;
    size_t count = 0;
    bk_arena *arena = bk_arena_new();
    bk_form_line *line = &at_hand(form)->line;
    const bk_form_row *rows =
        bk_form_line_rows(bk_form_line_text(line), form->text_columns, form->wall->ascii, arena, &count);
    bool moved = bk_form_line_move(line, rows, count, by);
    bk_arena_free(arena);
    return moved;
}

static void go_up_or_down(bk_screen *screen, const bk_key_row *row)
{
    bk_form *form = screen->self;
    int by = row->name == BK_KEY_UP ? -1 : 1;
    size_t next = bk_form_next(form, form->at, by);
    if (!bk_form_pick_key(form, row->name) && !move_within(form, by) && next != form->at)
        bk_form_go(form, next);
}

static void go_far(bk_screen *screen, const bk_key_row *row)
{
    bk_form *form = screen->self;
    int by = row->name == BK_KEY_PAGE_UP ? -1 : 1;
    if (form->pick.chosen && bk_form_pick_key(form, row->name))
        return;
    size_t to = form->at, next = 0;
    while ((next = bk_form_next(form, to, by)) != to)
        to = next;
    bk_form_go(form, to);
}

static void move_cursor(bk_screen *screen, const bk_key_row *row)
{
    bk_form *form = screen->self;
    bk_form_value *value = at_hand(form);
    size_t length = value->line.text.length;
    bk_form_line_key(&value->line, row->name);
    if (value->line.text.length != length)
        bk_form_typed(form);
    else if (length > 0)
        value->arrived = false;
}

static void empty(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_form *form = screen->self;
    bk_form_line_put(&at_hand(form)->line, "");
    bk_form_typed(form);
}

static void save(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_form_save(screen);
}

static void edit(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_form *form = screen->self;
    if (form->kind->fields[form->at].whole)
        bk_form_edit(form);
    else
        bk_wall_say(form->wall, "Your own editor is for long texts, such as notes.");
}

static void leave(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_form *form = screen->self;
    if (bk_form_changed(form))
        bk_leaving_ask(screen, "back to the form", bk_form_save);
    else
        bk_stack_pop(screen->stack);
}

static void leave_list(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    ((bk_form *)screen->self)->pick.chosen = false;
}

static void stay(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    ((bk_form *)screen->self)->mode = BK_FORM_FILLING;
}

static void keep_mine(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_form_keep_mine(screen);
}

static void take_theirs(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_form_take_theirs(screen);
}

static void save_as_new(bk_screen *screen, const bk_key_row *row)
{
    (void)row;
    bk_form_save_as_new(screen);
}

// -------------------------------------------------------------------------------------------- when they matter

static bool saves(const bk_screen *screen)
{
    return is_last(screen->self);
}

static bool goes_on(const bk_screen *screen)
{
    return !is_last(screen->self);
}

static bool has_open_list(const bk_screen *screen)
{
    return bk_form_pick_opens(screen->self);
}

static bool is_filled(const bk_screen *screen)
{
    return at_hand(screen->self)->line.text.length > 0;
}

static bool has_editor(const bk_screen *screen)
{
    const bk_form *form = screen->self;
    return form->kind->fields[form->at].whole;
}

static bool makes(const bk_screen *screen)
{
    return bk_form_pick_makes(screen->self) != NULL;
}

static bool takes(const bk_screen *screen)
{
    return !makes(screen);
}

static bool takes_many(const bk_screen *screen)
{
    return at_list(screen->self) && takes(screen);
}

// ------------------------------------------------------------------------------------------------- the tables

// Keys that do the same whether something of the list is chosen or not.
#define TYPING_ROWS \
    {.name = BK_KEY_TAB, \
     .written = "Tab, Shift-Tab", \
     .help = "to the next or the last field", \
     .act = go_on}, \
        {.name = BK_KEY_BACK_TAB, .act = go_back}, \
        {.name = BK_KEY_SAVE, \
         .written = "Ctrl-S", \
         .bottom = "save", \
         .help = "save what stands there", \
         .act = save}, \
        {.name = BK_KEY_EDITOR, \
         .written = "Ctrl-E", \
         .bottom = "your editor", \
         .help = "write a long text in your own editor (VISUAL or EDITOR)", \
         .act = edit, \
         .matters = has_editor}, \
        {.name = BK_KEY_EMPTY, \
         .written = "Ctrl-U", \
         .bottom = "empty", \
         .spare = true, \
         .help = "empty the field", \
         .act = empty, \
         .matters = is_filled}, \
        {.name = BK_KEY_PAGE_UP, \
         .written = "PgUp, PgDn", \
         .help = "to the first or the last field, or a page of the list", \
         .act = go_far}, \
        {.name = BK_KEY_PAGE_DOWN, .act = go_far}, {.name = BK_KEY_LEFT, .act = move_cursor}, \
        {.name = BK_KEY_RIGHT, .act = move_cursor}, {.name = BK_KEY_HOME, .act = move_cursor}, \
        {.name = BK_KEY_END, .act = move_cursor}, {.name = BK_KEY_BACKSPACE, .act = move_cursor}, \
    { \
        .name = BK_KEY_DELETE, .act = move_cursor \
    }

static const bk_key_row filling_rows[] = {
    {.name = BK_KEY_ENTER,
     .written = "Enter",
     .bottom = "next",
     .help = "to the next field; on the last one it saves",
     .act = go_on,
     .matters = goes_on},
    {.name = BK_KEY_ENTER, .written = "Enter", .bottom = "save", .act = go_on, .matters = saves},
    {.name = BK_KEY_DOWN,
     .written = "Down",
     .bottom = "pick",
     .help = "into the list; where a field is filled, to the field below",
     .act = go_up_or_down,
     .matters = has_open_list},
    {.name = BK_KEY_UP, .written = "Up", .help = "to the field above", .act = go_up_or_down},
    TYPING_ROWS,
    {.name = BK_KEY_ESCAPE,
     .written = "Escape",
     .bottom = "leave",
     .help = "leave the form; it asks where something was typed",
     .act = leave},
};

static const bk_key_row picking_rows[] = {
    {.name = BK_KEY_ENTER,
     .written = "Enter",
     .bottom = "take it",
     .help = "take what is chosen; behind a + it makes what is typed, in a form of its own",
     .act = go_on,
     .matters = takes},
    {.name = BK_KEY_ENTER, .written = "Enter", .bottom = "make it", .act = go_on, .matters = makes},
    {.name = BK_KEY_TYPED,
     .typed = ";",
     .written = ";",
     .bottom = "one more",
     .help = "in a list: take it and go on with one more",
     .matters = takes_many},
    {.name = BK_KEY_DOWN, .written = "Up, Down", .bottom = "choose", .help = "choose", .act = go_up_or_down},
    {.name = BK_KEY_UP, .act = go_up_or_down},
    TYPING_ROWS,
    {.name = BK_KEY_ESCAPE,
     .written = "Escape",
     .bottom = "as typed",
     .help = "leave the list, what was typed stays",
     .act = leave_list},
};

static const bk_key_row newer_rows[] = {
    {.name = BK_KEY_TYPED, .typed = "m", .written = "m", .bottom = "keep mine", .act = keep_mine},
    {.name = BK_KEY_TYPED, .typed = "t", .written = "t", .bottom = "take theirs", .act = take_theirs},
    {.name = BK_KEY_ESCAPE, .written = "Escape", .bottom = "back to the form", .act = stay},
};

static const bk_key_row gone_rows[] = {
    {.name = BK_KEY_TYPED, .typed = "n", .written = "n", .bottom = "save it as new", .act = save_as_new},
    {.name = BK_KEY_ESCAPE, .written = "Escape", .bottom = "back to the form", .act = stay},
};

#define TABLE(heading, all) \
    { \
        .title = heading, .rows = all, .count = sizeof(all) / sizeof *(all), .alone = true \
    }

const bk_key_table bk_form_tables[BK_FORM_TABLES] = {
    [BK_FORM_FILLING] = TABLE("In a form", filling_rows),
    [BK_FORM_NEWER] = TABLE(NULL, newer_rows),
    [BK_FORM_GONE] = TABLE(NULL, gone_rows),
    [BK_FORM_PICKING] = TABLE("While something of the list is chosen", picking_rows),
};

size_t bk_form_table(const bk_screen *screen)
{
    const bk_form *form = screen->self;
    return form->mode == BK_FORM_FILLING && form->pick.chosen ? (size_t)BK_FORM_PICKING : (size_t)form->mode;
}

// --------------------------------------------------------------------------------------------------- typing

// A letter behind the last item of a list begins another one.
static const char *between_items(const bk_form *form)
{
    const bk_form_value *value = at_hand(form);
    const char *text = bk_form_line_text(&value->line);
    size_t length = value->line.text.length;
    bool begins = at_list(form) && value->arrived && length > 0 && value->line.at == length;
    return begins && text[length - 1] != ';' && !(length > 1 && text[length - 2] == ';') ? "; " : "";
}

static void type(bk_form *form, const bk_key *key)
{
    bk_form_value *value = at_hand(form);
    if (bk_same_text(key->text, ";") && !key->pasted && at_list(form) && bk_form_pick_take(form, "; ")) {
        bk_form_typed(form);
        return;
    }
    if (value->arrived && bk_form_replaces(form))
        bk_form_line_put(&value->line, "");
    else if (key->text[0] != ';')
        bk_form_line_insert(&value->line, between_items(form));
    bk_form_line_insert(&value->line, key->text);
    bk_form_typed(form);
}

bool bk_form_take(bk_screen *screen, const bk_key *key)
{
    bk_form *form = screen->self;
    bk_form_keep(&form->said, NULL);
    form->making = NULL;
    if (form->mode == BK_FORM_FILLING && key->name == BK_KEY_TYPED) {
        type(form, key);
        return true;
    }
    const bk_key_row *row = key->pasted ? NULL : bk_key_row_find(bk_screen_table(screen), key);
    if (row && row->act)
        row->act(screen, row);
    return true;
}
