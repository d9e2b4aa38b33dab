#include <signal.h>
#include <string.h>
#include <sys/wait.h>

#include "screen/show.h"
#include "screen/terminal.h"
#include "support/testing.h"

static const int fatal[] = {SIGTERM, SIGHUP, SIGINT, SIGQUIT, SIGSEGV, SIGBUS, SIGFPE, SIGABRT};

START_TEST(a_fatal_signal_gives_the_terminal_back_and_ends_the_program_as_it_would_have)
{
    bk_show_import();
    for (size_t i = 0; i < sizeof fatal / sizeof fatal[0]; i++) {
        bk_terminal *terminal = bk_terminal_start(NULL);
        ck_assert(bk_terminal_alternate(terminal));
        ck_assert(!bk_terminal_settings_as_before(terminal));
        int status = bk_terminal_kill(terminal, fatal[i]);
        ck_assert(WIFSIGNALED(status));
        ck_assert_int_eq(WTERMSIG(status), fatal[i]);
        ck_assert(bk_terminal_settings_as_before(terminal));
        ck_assert(!bk_terminal_alternate(terminal));
        ck_assert(bk_terminal_cursor_seen(terminal));
        bk_terminal_close(terminal);
    }
}
END_TEST

START_TEST(control_c_ends_the_program_and_gives_the_terminal_back)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    int status = bk_terminal_end(terminal, "\003");
    ck_assert(WIFSIGNALED(status));
    ck_assert_int_eq(WTERMSIG(status), SIGINT);
    ck_assert(bk_terminal_settings_as_before(terminal));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(leaving_sets_the_terminal_as_it_was_before)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    ck_assert_int_eq(bk_terminal_end(terminal, "q"), 0);
    ck_assert(bk_terminal_settings_as_before(terminal));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(control_z_pauses_with_the_terminal_given_back_and_the_screen_returns)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(&(bk_terminal_options){.with_shell = true});
    bk_terminal_press(terminal, "Down Down");
    bk_terminal_pause(terminal);
    ck_assert(bk_terminal_settings_as_before(terminal));
    ck_assert(!bk_terminal_alternate(terminal));
    bk_terminal_resume(terminal);
    ck_assert(bk_terminal_alternate(terminal));
    ck_assert(!bk_terminal_settings_as_before(terminal));
    ck_assert_ptr_nonnull(strstr(bk_terminal_row(terminal, bk_terminal_chosen(terminal)), "1B Salt Queen"));
    bk_terminal_press(terminal, "Down");
    ck_assert_ptr_nonnull(strstr(bk_terminal_row(terminal, bk_terminal_chosen(terminal)), "2B Ferryman"));
    ck_assert_int_eq(bk_terminal_end(terminal, "q"), 0);
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("signals", a_fatal_signal_gives_the_terminal_back_and_ends_the_program_as_it_would_have,
             control_c_ends_the_program_and_gives_the_terminal_back,
             leaving_sets_the_terminal_as_it_was_before,
             control_z_pauses_with_the_terminal_given_back_and_the_screen_returns)
