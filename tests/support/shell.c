#include "support/shell.h"

#include <stdio.h>
#include <stdlib.h>

#include "support/testing.h"

enum { COMMAND_ROOM = 2048 };

static const char said_name[] = ".said";

const char *bk_shell(const char *command)
{
    char line[COMMAND_ROOM];
    int length = snprintf(line, sizeof line, "cd '%s' && { %s ; } >%s", bk_test_folder(), command, said_name);
    ck_assert_int_lt(length, COMMAND_ROOM);
    ck_assert_msg(system(line) == 0, "this failed: %s", command);
    size_t said = 0;
    char *text = bk_test_read(bk_test_path(said_name), &said);
    if (said > 0 && text[said - 1] == '\n')
        text[said - 1] = '\0';
    remove(bk_test_path(said_name));
    return text;
}

const char *bk_ask(const char *sql)
{
    char command[COMMAND_ROOM];
    ck_assert_int_lt(snprintf(command, sizeof command, "sqlite3 workroom.db \"%s\"", sql), COMMAND_ROOM);
    return bk_shell(command);
}

const char *bk_records(void)
{
    return bk_shell("sqlite3 workroom.db .dump | "
                    "grep -v -e '^INSERT INTO daybook' -e '^INSERT INTO sqlite_sequence'");
}
