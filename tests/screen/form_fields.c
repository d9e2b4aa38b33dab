#include "screen/form_fields.h"

#include <stdbool.h>
#include <string.h>

#include "support/testing.h"

enum { FIRST_ROW = 2, LAST_ROW = 22, LABEL_COLUMN = 2 };

static bool begins(const char *text, const char *word)
{
    return strncmp(text, word, strlen(word)) == 0;
}

const char *bk_field_row(const bk_terminal *terminal, const char *label)
{
    for (size_t row = FIRST_ROW; row <= LAST_ROW; row++) {
        const char *text = bk_terminal_row(terminal, row);
        if (strlen(text) > LABEL_COLUMN && begins(text + LABEL_COLUMN, label))
            return text;
    }
    ck_abort_msg("there is no field %s:\n%s", label, bk_terminal_screen(terminal));
    return NULL;
}

void bk_assert_field(const bk_terminal *terminal, const char *label, const char *text)
{
    const char *row = bk_field_row(terminal, label);
    ck_assert_msg(strstr(row, text) != NULL, "\"%s\" is not in: %s", text, row);
}

void bk_assert_at_field(const bk_terminal *terminal, const char *label)
{
    const char *row = bk_field_row(terminal, label);
    ck_assert_msg(row[0] == '>', "the cursor is not in: %s", row);
}
