#include "screen/measured.h"

#include <stdio.h>
#include <stdlib.h>

#include "screen/show.h"
#include "support/shell.h"
#include "support/testing.h"

enum { TEXT_BYTES = 4096 };

bk_terminal *bk_cast_open(const char *measures)
{
    char text[TEXT_BYTES];
    bk_show_import();
    if (measures) {
        int length =
            snprintf(text, sizeof text, "performer,taken_on,measure,value,over,taken_by\n%s", measures);
        ck_assert_int_lt(length, TEXT_BYTES);
        bk_ask("DELETE FROM measure; DELETE FROM measure_sheet");
        bk_show_replace("measures.csv", text);
    }
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "C Home");
    return terminal;
}

void bk_type_values(bk_terminal *terminal, const char *const *values, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        if (values[i][0])
            bk_terminal_send(terminal, values[i]);
        bk_terminal_press(terminal, "Enter");
    }
}

static long ask_number(const char *what, const char *performer, const char *on, const char *measure)
{
    char sql[TEXT_BYTES];
    int length = snprintf(sql, sizeof sql,
                          "SELECT %s FROM measure JOIN measure_sheet ON measure_sheet.id = sheet_id "
                          "JOIN performer ON performer.id = performer_id "
                          "JOIN measure_name ON measure_name.id = name_id "
                          "WHERE performer.name = '%s' AND taken_on = '%s' AND measure_name.name LIKE '%s'",
                          what, performer, on, measure);
    ck_assert_int_lt(length, TEXT_BYTES);
    return strtol(bk_ask(sql), NULL, 10);
}

long bk_stored_measure(const char *performer, const char *on, const char *measure)
{
    return ask_number("coalesce(sum(value), 0)", performer, on, measure);
}

long bk_stored_count(const char *performer, const char *on)
{
    return ask_number("count(*)", performer, on, "%");
}

void bk_must_show(const bk_terminal *terminal, const char *text)
{
    if (!bk_terminal_shows(terminal, text))
        ck_abort_msg("\"%s\" is missing:\n%s", text, bk_terminal_screen(terminal));
}

void bk_must_not_show(const bk_terminal *terminal, const char *text)
{
    if (bk_terminal_shows(terminal, text))
        ck_abort_msg("\"%s\" is shown:\n%s", text, bk_terminal_screen(terminal));
}
