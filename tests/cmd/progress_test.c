// The line that says how far long work is, and what stops it.

#include "bodkin/cmd/progress.h"

#include <signal.h>
#include <stdio.h>
#include <string.h>
#include <unistd.h>

#include "bodkin/base/date.h"
#include "cmd/sheets.h"

START_TEST(a_stop_that_is_asked_for_after_the_last_row_is_still_heard_before_the_commit)
{
    bk_progress_line line = bk_progress_line_begin();
    ck_assert(bk_progress_line_show(&line, "fittings.csv", 9, 10));
    ck_assert(bk_progress_line_last(&line));
    ck_assert_int_eq(raise(SIGTERM), 0);
    ck_assert(!bk_progress_line_last(&line));
    ck_assert(!bk_progress_line_show(&line, "fittings.csv", 10, 10));
}
END_TEST

START_TEST(what_cannot_be_stopped_any_more_does_not_say_that_it_can)
{
    bk_progress_line line = bk_progress_line_begin();
    line.on_terminal = true;
    line.begun.tv_sec -= 1;
    FILE *caught = freopen(bk_test_path("line"), "w", stderr);
    ck_assert_ptr_nonnull(caught);
    ck_assert(bk_progress_line_show(&line, "fittings.csv", 9, 10));
    expect_words(bk_test_read(bk_test_path("line"), NULL), "fittings.csv          90 %   Ctrl-C stops");
    ck_assert(bk_progress_line_last(&line));
    const char *said = bk_test_read(bk_test_path("line"), NULL);
    const char *last = strrchr(said, '\r');
    ck_assert_str_eq(last, "\rwriting ...");
    ck_assert_int_eq(last[-1], '\r');
    ck_assert_int_eq(last[-2], ' ');
}
END_TEST

static void put_many_measures(const char *folder)
{
    enum { DAYS = 500, EACH = 40, LINE_ROOM = 96, FIRST_DAY = 6000 };
    static char text[DAYS * EACH * LINE_ROOM];
    size_t length = (size_t)sprintf(text, "performer,taken_on,measure,value\n");
    for (int i = 0; i < DAYS * EACH; i++) {
        char day[BK_DAY_ROOM];
        bk_day_write(FIRST_DAY + i / EACH, day);
        length += (size_t)sprintf(text + length, "Ines Varga,%s,round %d,71.3 cm\n", day, i % EACH);
    }
    sheet_write_bytes(folder, "measures.csv", text, length);
}

START_TEST(a_killed_export_leaves_no_hidden_sheet_with_measures_and_contacts)
{
    static const int signals[] = {SIGINT, SIGTERM, SIGHUP};
    sheets_put("show");
    put_many_measures("show");
    bk_program_must(bodkin("import", bk_test_path("show")), 0);
    for (size_t i = 0; i < sizeof signals / sizeof *signals; i++) {
        pid_t program = bk_program_start(OPTIONS(.store = NULL), ARGUMENTS("export", bk_test_path("out")));
        bk_program_await_handler(program, signals[i]);
        ck_assert_int_eq(kill(program, signals[i]), 0);
        bk_program_end end = bk_program_must(bk_program_wait(program), 1);
        expect_words(end.trouble, "The export was stopped; nothing was changed.");
        ck_assert_str_eq(end.output, "");
        ck_assert_str_eq(bk_shell("ls"), "show\nworkroom.db");
    }
    bk_program_must(bodkin("export", bk_test_path("out")), 0);
}
END_TEST

BK_TEST_MAIN("progress", a_stop_that_is_asked_for_after_the_last_row_is_still_heard_before_the_commit,
             what_cannot_be_stopped_any_more_does_not_say_that_it_can,
             a_killed_export_leaves_no_hidden_sheet_with_measures_and_contacts)
