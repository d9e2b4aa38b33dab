#include "bodkin/ui/form_line.h"

#include <string.h>

#include "bodkin/base/list.h"

void bk_form_line_free(bk_form_line *line)
{
    bk_buffer_free(&line->text);
    line->at = 0;
}

const char *bk_form_line_text(const bk_form_line *line)
{
    return line->text.bytes ? line->text.bytes : "";
}

void bk_form_line_put(bk_form_line *line, const char *text)
{
    bk_buffer whole = {0};
    bk_buffer_text(&whole, text);
    bk_buffer_free(&line->text);
    line->text = whole;
    line->at = whole.length;
}

void bk_form_line_replace(bk_form_line *line, size_t from, size_t length, const char *text)
{
    size_t before = line->text.length, added = strlen(text);
    bk_buffer_add(&line->text, text, added); // makes the room
    char *bytes = line->text.bytes;
    memmove(bytes + from + added, bytes + from + length, before - from - length);
    memcpy(bytes + from, text, added);
    line->text.length = before - length + added;
    bytes[line->text.length] = '\0';
    line->at = from + added;
}

void bk_form_line_insert(bk_form_line *line, const char *text)
{
    bk_form_line_replace(line, line->at, 0, text);
}

// ------------------------------------------------------------------------------------------------- the cursor

// Where the character before the cursor begins.
static size_t character_before(const bk_form_line *line)
{
    const char *text = bk_form_line_text(line);
    size_t before = 0, step = 0;
    while (before < line->at && (step = bk_text_step(text + before)) > 0 && before + step < line->at)
        before += step;
    return before;
}

static void delete_between(bk_form_line *line, size_t from, size_t to)
{
    bk_form_line_replace(line, from, to - from, "");
}

bool bk_form_line_key(bk_form_line *line, bk_key_name name)
{
    switch (name) {
    case BK_KEY_LEFT:
        line->at = character_before(line);
        return true;
    case BK_KEY_RIGHT:
        line->at += bk_text_step(bk_form_line_text(line) + line->at);
        return true;
    case BK_KEY_HOME:
        line->at = 0;
        return true;
    case BK_KEY_END:
        line->at = line->text.length;
        return true;
    case BK_KEY_BACKSPACE:
        delete_between(line, character_before(line), line->at);
        return true;
    case BK_KEY_DELETE:
        delete_between(line, line->at, line->at + bk_text_step(bk_form_line_text(line) + line->at));
        return true;
    default:
        return false;
    }
}

// --------------------------------------------------------------------------------------------------- the rows

size_t bk_form_line_columns(const char *text, size_t from, size_t length, bool ascii, bk_arena *arena)
{
    return bk_text_columns(bk_text_safe(arena, bk_arena_bytes(arena, text + from, length), ascii));
}

// Bytes of the row that begins at `from`, and in `*next` where the next one begins.
static size_t row_length(const char *text, size_t from, size_t columns, bool ascii, size_t *next)
{
    size_t used = 0, end = from, gap = from, step = 0;
    bk_arena *arena = bk_arena_new();
    for (; (step = bk_text_step(text + end)) > 0 && text[end] != '\n'; end += step) {
        used += bk_form_line_columns(text, end, step, ascii, arena);
        if (used > columns && (end > from || text[end] == ' '))
            break;
        if (text[end] == ' ')
            gap = end;
    }
    bk_arena_free(arena);
    bool broken = step > 0 && text[end] != '\n';
    if (broken && text[end] == ' ')
        gap = end;
    if (broken && gap > from)
        end = gap;
    *next = end + (text[end] == ' ' || text[end] == '\n');
    return end - from;
}

bk_form_row *bk_form_line_rows(const char *text, size_t columns, bool ascii, bk_arena *arena, size_t *count)
{
    BK_LIST(bk_form_row) rows = {0};
    size_t from = 0, length = strlen(text), next = 0;
    bool more = true;
    for (; more; from = next) {
        bk_form_row row = {from, row_length(text, from, columns, ascii, &next)};
        bk_list_add(&rows, row);
        more = next < length || next > from + row.length;
    }
    bk_form_row *kept = bk_arena_take(arena, rows.count * sizeof *kept);
    memcpy(kept, rows.items, rows.count * sizeof *kept);
    *count = rows.count;
    bk_list_free(&rows);
    return kept;
}

size_t bk_form_line_row(const bk_form_row *rows, size_t count, size_t at)
{
    size_t row = 0;
    while (row + 1 < count && rows[row + 1].from <= at)
        row++;
    return row;
}

bool bk_form_line_move(bk_form_line *line, const bk_form_row *rows, size_t count, int by)
{
    const char *text = bk_form_line_text(line);
    size_t row = bk_form_line_row(rows, count, line->at);
    if (by < 0 ? row == 0 : row + 1 >= count)
        return false;
    bk_arena *arena = bk_arena_new();
    size_t column = bk_form_line_columns(text, rows[row].from, line->at - rows[row].from, false, arena);
    const bk_form_row *to = &rows[by < 0 ? row - 1 : row + 1];
    line->at = to->from + bk_text_fit(bk_arena_bytes(arena, text + to->from, to->length), column);
    bk_arena_free(arena);
    return true;
}
