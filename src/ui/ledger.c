#include "bodkin/ui/ledger.h"

#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "bodkin/base/list.h"
#include "bodkin/base/text.h"
#include "bodkin/ui/stack.h"

void *bk_ledger_new(const bk_ledger_kind *kind, void *own)
{
    bk_ledger *ledger = bk_alloc_clear(1, sizeof *ledger);
    ledger->kind = kind;
    ledger->own = own;
    ledger->arena = bk_arena_new();
    return ledger;
}

bk_ledger *bk_ledger_of(const bk_screen *screen)
{
    return screen->self;
}

void bk_ledger_close(bk_screen *screen)
{
    bk_ledger *ledger = bk_ledger_of(screen);
    bk_findable_free(ledger->findable);
    bk_arena_free(ledger->arena);
    free(ledger->lines);
    free(ledger->shown);
    free(ledger->own);
    free(ledger);
}

void bk_ledger_add(bk_ledger *ledger, const bk_ledger_line *line)
{
    ledger->lines = bk_list_grow(ledger->lines, &ledger->line_room, ledger->line_count, sizeof *line);
    ledger->lines[ledger->line_count++] = *line;
}

bool bk_ledger_stands(const bk_ledger *ledger, size_t at)
{
    return at < ledger->shown_count && ledger->shown[at] != BK_NO_LINE &&
           ledger->lines[ledger->shown[at]].id != 0;
}

const bk_ledger_line *bk_ledger_chosen(const bk_screen *screen)
{
    const bk_ledger *ledger = bk_ledger_of(screen);
    bool stands = bk_ledger_stands(ledger, ledger->cursor.at);
    return stands ? &ledger->lines[ledger->shown[ledger->cursor.at]] : NULL;
}

// ------------------------------------------------------------------------------------------ what is shown

// The heading that a line stands under, or NULL.
static const char *heading_of(const bk_ledger *ledger, size_t index)
{
    while (index > 0)
        if (ledger->lines[--index].id == 0)
            return ledger->lines[index].cells[0];
    return NULL;
}

static const char *line_text(const void *context, size_t index, bk_arena *arena)
{
    const bk_ledger *ledger = context;
    const bk_ledger_line *line = &ledger->lines[index];
    bk_buffer text = {0};
    for (size_t i = 0; i < ledger->kind->column_count; i++)
        bk_buffer_print(&text, "%s\n", line->cells[i] ? line->cells[i] : "");
    const char *heading = heading_of(ledger, index);
    bk_buffer_print(&text, "%s\n%s", heading ? heading : "", line->detail ? line->detail : "");
    const char *kept = bk_arena_bytes(arena, text.bytes, text.length);
    bk_buffer_free(&text);
    return kept;
}

static bool *matching(bk_ledger *ledger)
{
    bool *found = bk_alloc(ledger->line_count + 1);
    memset(found, true, ledger->line_count + 1);
    if (ledger->query.length == 0)
        return found;
    if (!ledger->findable)
        ledger->findable = bk_findable_of(ledger->line_count, line_text, ledger);
    bk_findable_match(ledger->findable, &ledger->query, found);
    return found;
}

// Shows a line, under its heading where it is the first of it that is shown.
static void show_line(bk_ledger *ledger, size_t *heading, size_t index)
{
    if (*heading != BK_NO_LINE) {
        if (ledger->shown_count > 0)
            ledger->shown[ledger->shown_count++] = BK_NO_LINE;
        ledger->shown[ledger->shown_count++] = *heading;
    }
    *heading = BK_NO_LINE;
    ledger->shown[ledger->shown_count++] = index;
}

// From a line where it cannot stand the cursor goes on in its direction, or where there is none, back.
static void settle(bk_ledger *ledger, bool forward)
{
    size_t at = ledger->cursor.at;
    while (forward && at < ledger->shown_count && !bk_ledger_stands(ledger, at))
        at++;
    if (at >= ledger->shown_count)
        at = ledger->cursor.at;
    while (at > 0 && !bk_ledger_stands(ledger, at))
        at--;
    while (at < ledger->shown_count && !bk_ledger_stands(ledger, at))
        at++;
    bk_cursor_put(&ledger->cursor, at);
}

void bk_ledger_show(bk_ledger *ledger, bk_family family, int64_t id, size_t at)
{
    enum { ROWS_OF_LINE = 3 }; // an empty one, its heading, its own
    bool *found = matching(ledger);
    size_t heading = BK_NO_LINE;
    ledger->shown =
        bk_realloc(ledger->shown, (ROWS_OF_LINE * ledger->line_count + 1) * sizeof *ledger->shown);
    ledger->shown_count = 0;
    for (size_t i = 0; i < ledger->line_count; i++) {
        const bk_ledger_line *line = &ledger->lines[i];
        if (line->id == 0) {
            heading = i;
        } else if (found[i]) {
            show_line(ledger, &heading, i);
            if (id != 0 && line->id == id && line->family == family)
                at = ledger->shown_count - 1;
        }
    }
    free(found);
    bk_cursor_fit(&ledger->cursor, ledger->shown_count, ledger->cursor.seen);
    bk_cursor_put(&ledger->cursor, at);
    settle(ledger, true);
}

void bk_ledger_find(const bk_screen *screen, bk_family family, int64_t id)
{
    bk_ledger *ledger = bk_ledger_of(screen);
    bk_ledger_show(ledger, family, id, ledger->cursor.at);
}

// ----------------------------------------------------------------------------------------------- reading

static void measure(bk_ledger *ledger, bool ascii)
{
    bk_arena *arena = bk_arena_new();
    ledger->headed = false;
    memset(ledger->wanted, 0, sizeof ledger->wanted);
    for (size_t l = 0; l < ledger->line_count; l++) {
        const bk_ledger_line *line = &ledger->lines[l];
        ledger->headed = ledger->headed || line->id == 0;
        for (size_t i = 0; line->id != 0 && i < ledger->kind->column_count; i++) {
            size_t wide = line->cells[i] ? bk_text_columns(bk_text_safe(arena, line->cells[i], ascii)) : 0;
            ledger->wanted[i] = wide > ledger->wanted[i] ? wide : ledger->wanted[i];
        }
        bk_arena_reset(arena);
    }
    bk_arena_free(arena);
}

static bool is_open(const bk_screen *screen, const bk_ledger *ledger)
{
    const bk_stack *stack = screen->stack;
    return screen < stack->screens + stack->count && screen->self == ledger;
}

static size_t line_of(const bk_ledger *ledger, bk_family family, int64_t id)
{
    for (size_t i = 0; id != 0 && i < ledger->line_count; i++)
        if (ledger->lines[i].family == family && ledger->lines[i].id == id)
            return i;
    return BK_NO_LINE;
}

// Where the cursor goes after a reading: to what was just saved, else to where it was, the first time to where it begins.
static void show_read(bk_screen *screen, bk_family family, int64_t id)
{
    bk_ledger *ledger = bk_ledger_of(screen);
    const bk_wall *wall = screen->wall;
    size_t saved = line_of(ledger, wall->saved_family, wall->saved_id);
    if (saved == BK_NO_LINE && !ledger->filled && ledger->begin < ledger->line_count)
        saved = ledger->begin;
    if (ledger->stays)
        id = 0;
    ledger->stays = false;
    if (saved != BK_NO_LINE) {
        family = ledger->lines[saved].family;
        id = ledger->lines[saved].id;
    }
    bk_ledger_show(ledger, family, id, ledger->cursor.at);
    const bk_ledger_line *chosen = bk_ledger_chosen(screen);
    if (saved != BK_NO_LINE && chosen != &ledger->lines[saved] && ledger->query.length > 0) {
        bk_query_clear(&ledger->query);
        bk_ledger_show(ledger, family, id, ledger->cursor.at);
    }
    ledger->filled = true;
}

static void put_back(bk_ledger *ledger, const bk_ledger *before)
{
    bk_arena_free(ledger->arena);
    free(ledger->lines);
    ledger->arena = before->arena;
    ledger->lines = before->lines;
    ledger->line_count = before->line_count;
    ledger->line_room = before->line_room;
    ledger->title = before->title;
    ledger->aside = before->aside;
    ledger->summary = before->summary;
}

bk_status bk_ledger_read(bk_screen *screen, bk_error *error)
{
    bk_ledger *ledger = bk_ledger_of(screen);
    if (ledger->kind->of_production && !screen->wall->rail) {
        bk_stack_pop(screen->stack);
        return BK_OK;
    }
    const bk_ledger_line *chosen = bk_ledger_chosen(screen);
    bk_family family = chosen ? chosen->family : BK_FAMILIES;
    int64_t id = chosen ? chosen->id : 0;
    const bk_ledger before = *ledger;
    ledger->arena = bk_arena_new();
    ledger->lines = NULL;
    ledger->line_count = ledger->line_room = 0;
    ledger->title = ledger->aside = ledger->summary = NULL;
    ledger->more = false;
    bk_status status = ledger->kind->fill(screen, ledger, error);
    if (status) {
        put_back(ledger, &before);
        if (!ledger->filled)
            bk_stack_pop(screen->stack);
        return status;
    }
    bk_arena_free(before.arena);
    free(before.lines);
    if (!is_open(screen, ledger))
        return BK_OK;
    bk_findable_free(ledger->findable);
    ledger->findable = NULL;
    measure(ledger, screen->wall->ascii);
    show_read(screen, family, id);
    return BK_OK;
}

// -------------------------------------------------------------------------------------------------- keys

// At the end of what was read of a longer list more of it is read, and the cursor goes on as it would.
static void read_more(bk_screen *screen, size_t at)
{
    bk_ledger *ledger = bk_ledger_of(screen);
    bk_error error;
    while (ledger->more && at >= ledger->shown_count && screen->wall->message[0] == '\0') {
        ledger->window *= 2;
        if (bk_ledger_read(screen, &error))
            bk_wall_say(screen->wall, "%s", error.text);
    }
}

size_t bk_ledger_table(const bk_screen *screen)
{
    return bk_ledger_of(screen)->typing ? 1 : 0;
}

void bk_ledger_move(bk_screen *screen, const bk_key_row *row)
{
    bk_ledger *ledger = bk_ledger_of(screen);
    size_t before = ledger->cursor.at;
    if (row->name == BK_KEY_DOWN)
        read_more(screen, before + 1);
    else if (row->name == BK_KEY_PAGE_DOWN)
        read_more(screen, before + ledger->cursor.seen);
    else if (row->name == BK_KEY_END)
        read_more(screen, ledger->shown_count);
    bk_cursor_key(&ledger->cursor, row->name);
    settle(ledger, row->name != BK_KEY_UP && row->name != BK_KEY_PAGE_UP && row->name != BK_KEY_END);
}

bool bk_ledger_has_line(const bk_screen *screen)
{
    const bk_ledger_line *chosen = bk_ledger_chosen(screen);
    return chosen && chosen->id > 0;
}
