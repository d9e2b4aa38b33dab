#include "screen/seen.h"

#include <string.h>

#include "support/testing.h"

void assert_shows(const bk_terminal *terminal, const char *text)
{
    if (!bk_terminal_shows(terminal, text))
        ck_abort_msg("\"%s\" is not shown:\n%s", text, bk_terminal_screen(terminal));
}

void assert_hides(const bk_terminal *terminal, const char *text)
{
    if (bk_terminal_shows(terminal, text))
        ck_abort_msg("\"%s\" is shown:\n%s", text, bk_terminal_screen(terminal));
}

void assert_row_has(const bk_terminal *terminal, const char *key, const char *text)
{
    const char *row = bk_terminal_row(terminal, bk_terminal_find(terminal, key));
    if (!strstr(row, text))
        ck_abort_msg("\"%s\" is missing in the row: %s", text, row);
}

void assert_row_lacks(const bk_terminal *terminal, const char *key, const char *text)
{
    const char *row = bk_terminal_row(terminal, bk_terminal_find(terminal, key));
    if (strstr(row, text))
        ck_abort_msg("\"%s\" is in the row: %s", text, row);
}

void assert_chosen(const bk_terminal *terminal, const char *text)
{
    const char *row = bk_terminal_row(terminal, bk_terminal_chosen(terminal));
    if (!strstr(row, text))
        ck_abort_msg("\"%s\" is not chosen, but: %s", text, row);
}
