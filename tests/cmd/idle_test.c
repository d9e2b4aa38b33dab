// The descriptor that is told when a screen is painted is never a file.

#include <stdio.h>

#include "cmd/sheets.h"

enum { COMMAND_ROOM = 1024, NUMBER_ROOM = 12, MOST_DESCRIPTORS = 8 };

// Runs the screens on a pseudo-terminal, waits until the bottom line is painted, and leaves.
static const char *const leave_when_painted =
    "import os, pty, sys\n"
    "child, terminal = pty.fork()\n"
    "if child == 0:\n"
    "    os.execvp(sys.argv[1], sys.argv[1:])\n"
    "seen = b''\n"
    "while b'leave' not in seen:\n"
    "    seen += os.read(terminal, 4096)\n"
    "os.write(terminal, b'q')\n"
    "try:\n"
    "    while os.read(terminal, 4096):\n"
    "        pass\n"
    "except OSError:\n"
    "    pass\n"
    "sys.exit(os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]))\n";

static void run_screens(const char *number, const char *redirection)
{
    char command[COMMAND_ROOM];
    bk_test_write_text(bk_test_path("leave.py"), leave_when_painted);
    snprintf(command, sizeof command,
             "BODKIN_IDLE_FD=%s TERM=xterm LC_ALL=C.UTF-8 python3 leave.py '%s' --store workroom.db %s",
             number, BK_TEST_PROGRAM, redirection);
    bk_shell(command);
}

START_TEST(a_stray_number_of_a_descriptor_never_writes_into_the_store)
{
    show_import();
    for (int number = 3; number < MOST_DESCRIPTORS; number++) {
        char text[NUMBER_ROOM];
        snprintf(text, sizeof text, "%d", number);
        run_screens(text, "");
    }
    expect_words(bk_program_must(bodkin("check"), 0).output, "is sound");
    ck_assert_str_eq(bk_shell("head -c 15 workroom.db"), "SQLite format 3");
}
END_TEST

START_TEST(a_file_that_came_with_the_program_is_not_written_to)
{
    show_import();
    bk_test_write_text(bk_test_path("mine"), "as it was");
    run_screens("7", "7<>mine");
    ck_assert_str_eq(bk_shell("cat mine"), "as it was");
}
END_TEST

START_TEST(screens_that_cannot_be_shown_make_no_store)
{
    bk_shell("TERM=dumb script -qec '" BK_TEST_PROGRAM
             " --store new.db || true' /dev/null </dev/null >shown");
    bk_shell("TERM=xterm script -qec '" BK_TEST_PROGRAM
             " --store new.db --production Nope || true' /dev/null </dev/null >shown");
    ck_assert_str_eq(bk_shell("ls"), "shown");
}
END_TEST

BK_TEST_MAIN("idle", a_stray_number_of_a_descriptor_never_writes_into_the_store,
             a_file_that_came_with_the_program_is_not_written_to, screens_that_cannot_be_shown_make_no_store)
