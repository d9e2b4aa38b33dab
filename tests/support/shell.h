#ifndef BODKIN_TESTS_SUPPORT_SHELL_H
#define BODKIN_TESTS_SUPPORT_SHELL_H

/// What other programs say, run by the shell in the test's folder.

/// Runs a command; what it prints, without the last line end, until the test ends. The test fails unless it
/// ends with 0.
const char *bk_shell(const char *command);

/// What the sqlite3 command prints for statements on the store `workroom.db` of the test's folder.
const char *bk_ask(const char *sql);

/// All records of that store but the daybook, as text.
const char *bk_records(void);

#endif
