#include "bodkin/base/width.h"

#include <stdlib.h>
#include <string.h>
#include <utf8proc.h>

#include "bodkin/base/glyph.h"
#include "bodkin/base/list.h"
#include "bodkin/base/utf8.h"

enum { ASCII_END = 0x80 };

static bool is_ascii(char c)
{
    return (unsigned char)c < ASCII_END;
}

size_t bk_text_columns(const char *text)
{
    size_t columns = 0;
    while (*text != '\0') {
        if (is_ascii(*text)) {
            columns++;
            text++;
            continue;
        }
        int32_t code = 0;
        text += bk_utf8_next(text, &code);
        columns += (size_t)bk_glyph_columns(code);
    }
    return columns;
}

/// Bytes of the grapheme cluster at `text`, which is not at its end, and the columns it takes.
static size_t cluster(const char *text, size_t *columns)
{
    *columns = 1;
    if (is_ascii(text[0]) && is_ascii(text[1]) && text[0] != '\r')
        return 1;
    int32_t before = 0;
    int32_t state = 0;
    size_t end = bk_utf8_next(text, &before);
    *columns = (size_t)bk_glyph_columns(before);
    while (text[end] != '\0') {
        int32_t code = 0;
        size_t step = bk_utf8_next(text + end, &code);
        if (utf8proc_grapheme_break_stateful(before, code, &state))
            break;
        *columns += (size_t)bk_glyph_columns(code);
        end += step;
        before = code;
    }
    return end;
}

size_t bk_text_step(const char *text)
{
    size_t columns = 0;
    return *text == '\0' ? 0 : cluster(text, &columns);
}

size_t bk_text_fit(const char *text, size_t columns)
{
    size_t end = 0;
    size_t used = 0;
    while (text[end] != '\0') {
        size_t wide = 0;
        size_t step = cluster(text + end, &wide);
        if (wide > columns - used)
            break;
        used += wide;
        end += step;
    }
    return end;
}

/// Whether a space that stands alone, without a mark on it, is at `text`.
static bool is_gap(const char *text)
{
    size_t columns = 0;
    return *text == ' ' && cluster(text, &columns) == 1;
}

/// Takes the spaces off the end of the first `length` bytes.
static size_t trimmed(const char *text, size_t length)
{
    while (length > 0 && text[length - 1] == ' ')
        length--;
    return length;
}

/// Where the last word ends within the first `end` bytes of `text`; 0 where there is no such place.
static size_t word_end(const char *text, size_t end)
{
    while (end > 0 && !is_gap(text + end))
        end--;
    return trimmed(text, end);
}

char *bk_text_cut(bk_arena *arena, const char *text, size_t columns, bool ascii)
{
    if (text[bk_text_fit(text, columns)] == '\0')
        return bk_arena_text(arena, text);
    const char *ellipsis = ascii ? "..." : "…";
    size_t dots = ascii ? 3 : 1;
    if (columns < dots)
        return bk_arena_bytes(arena, ellipsis, columns);
    size_t end = bk_text_fit(text, columns - dots);
    size_t word = word_end(text, end);
    size_t word_columns = bk_text_columns(bk_arena_bytes(arena, text, word));
    size_t kept = word > 0 && word_columns >= columns - columns / 3 ? word : trimmed(text, end);
    return bk_arena_print(arena, "%.*s%s", (int)kept, text, ellipsis);
}

/// Bytes of the first line of `text`, which is not empty.
static size_t line_length(const char *text, size_t columns)
{
    size_t wide = 0;
    size_t end = bk_text_fit(text, columns);
    if (end == 0)
        return cluster(text, &wide);
    if (text[end] == '\0')
        return end;
    size_t word = word_end(text, end);
    return word > 0 ? word : end;
}

typedef BK_LIST(char *) lines;

static void wrap_paragraph(bk_arena *arena, const char *text, size_t columns, lines *found)
{
    do {
        size_t length = *text == '\0' ? 0 : line_length(text, columns);
        bk_list_add(found, bk_arena_bytes(arena, text, trimmed(text, length)));
        text += length;
        while (is_gap(text))
            text++;
    } while (*text != '\0');
}

char **bk_text_wrap(bk_arena *arena, const char *text, size_t columns, size_t *count)
{
    lines found = {0};
    while (*text != '\0') {
        size_t length = strcspn(text, "\n");
        bool carriage_return = length > 0 && text[length - 1] == '\r';
        wrap_paragraph(arena, bk_arena_bytes(arena, text, length - carriage_return), columns, &found);
        text += text[length] == '\n' ? length + 1 : length;
    }
    char **kept = bk_arena_take(arena, found.count * sizeof *kept);
    if (found.count > 0)
        memcpy(kept, found.items, found.count * sizeof *kept);
    *count = found.count;
    bk_list_free(&found);
    return kept;
}
