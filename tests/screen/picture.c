#include <stdio.h>
#include <string.h>

#include "screen/terminal_parts.h"
#include "support/testing.h"

enum { MOST_ROWS = 120, ROW_BYTES = 8192, CODE_BYTES = 4 };

// Writes a code point as UTF-8 and returns its bytes.
static size_t write_code(uint32_t code, char *out)
{
    static const struct {
        uint32_t below;
        unsigned lead;
    } lengths[CODE_BYTES] = {{0x80, 0}, {0x800, 0xC0}, {0x10000, 0xE0}, {0x110000, 0xF0}};
    enum { CONTINUED = 0x80, PART = 0x3F, PART_BITS = 6 };
    size_t length = 0;
    while (code >= lengths[length].below)
        length++;
    for (size_t i = length; i > 0; i--) {
        out[i] = (char)(CONTINUED | (code & PART));
        code >>= PART_BITS;
    }
    out[0] = (char)(lengths[length].lead | code);
    return length + 1;
}

static VTermScreenCell cell_at(const bk_terminal *terminal, size_t row, size_t column)
{
    VTermScreenCell cell;
    VTermPos place = {.row = (int)row, .col = (int)column};
    vterm_screen_get_cell(terminal->screen, place, &cell);
    return cell;
}

static size_t write_row(const bk_terminal *terminal, size_t row, char *out)
{
    size_t length = 0, end = 0;
    for (size_t column = 0; column < terminal->columns;) {
        VTermScreenCell cell = cell_at(terminal, row, column);
        if (cell.chars[0] == 0)
            out[length++] = ' ';
        for (size_t i = 0; i < VTERM_MAX_CHARS_PER_CELL && cell.chars[i] != 0; i++)
            length += write_code(cell.chars[i], out + length);
        if (cell.chars[0] != 0 && cell.chars[0] != ' ')
            end = length;
        column += cell.width > 1 ? (size_t)cell.width : 1;
    }
    out[end] = '\0';
    return end;
}

const char *bk_terminal_row(const bk_terminal *terminal, size_t row)
{
    static char text[ROW_BYTES];
    ck_assert_uint_lt(row, terminal->rows);
    write_row(terminal, row, text);
    return text;
}

const char *bk_terminal_screen(const bk_terminal *terminal)
{
    static char text[MOST_ROWS * ROW_BYTES];
    size_t length = 0;
    for (size_t row = 0; row < terminal->rows; row++) {
        length += write_row(terminal, row, text + length);
        text[length++] = '\n';
    }
    text[length] = '\0';
    return text;
}

bool bk_terminal_shows(const bk_terminal *terminal, const char *text)
{
    return strstr(bk_terminal_screen(terminal), text) != NULL;
}

size_t bk_terminal_find(const bk_terminal *terminal, const char *text)
{
    for (size_t row = 0; row < terminal->rows; row++)
        if (strstr(bk_terminal_row(terminal, row), text))
            return row;
    ck_abort_msg("\"%s\" is not on the screen:\n%s", text, bk_terminal_screen(terminal));
    return 0;
}

size_t bk_terminal_chosen(const bk_terminal *terminal)
{
    for (size_t row = 0; row < terminal->rows; row++)
        if (cell_at(terminal, row, 0).attrs.reverse)
            return row;
    ck_abort_msg("no line is chosen:\n%s", bk_terminal_screen(terminal));
    return 0;
}

bool bk_terminal_coloured(const bk_terminal *terminal)
{
    return terminal->coloured;
}

bool bk_terminal_beyond_ascii(const bk_terminal *terminal)
{
    return terminal->beyond_ascii;
}

bool bk_terminal_cursor_seen(const bk_terminal *terminal)
{
    return terminal->cursor_seen;
}

bool bk_terminal_alternate(const bk_terminal *terminal)
{
    return terminal->alternate;
}

size_t bk_terminal_sent(bk_terminal *terminal)
{
    size_t sent = terminal->sent;
    terminal->sent = 0;
    return sent;
}
