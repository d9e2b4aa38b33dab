#include "screen/form_fields.h"
#include "screen/show.h"
#include "support/testing.h"

// What a terminal sends round what is pasted, which it was asked for.
#define PASTED(text) "\033[200~" text "\033[201~"

START_TEST(what_is_pasted_into_a_form_stands_there_with_its_line_ends_as_spaces)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "N +");
    bk_terminal_send(terminal, PASTED("hats and bells\rand\tboots, \303\251lan\r"));
    bk_assert_at_field(terminal, "what");
    bk_assert_field(terminal, "what", "hats and bells and boots, \303\251lan");
    bk_terminal_press(terminal, "! Control-S");
    ck_assert(bk_terminal_shows(terminal, "hats and bells and boots, \303\251lan !"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_is_pasted_on_a_screen_does_nothing_and_is_told)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    size_t row = bk_terminal_chosen(terminal);
    bk_terminal_send(terminal, PASTED("x\rq\033[B"));
    ck_assert(bk_terminal_shows(terminal, "What you pasted has no place here"));
    ck_assert_uint_eq(bk_terminal_chosen(terminal), row);
    bk_terminal_press(terminal, "Down");
    ck_assert_uint_eq(bk_terminal_chosen(terminal), row + 1);
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_is_pasted_answers_no_question_of_a_form)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "N + hats Escape");
    ck_assert(bk_terminal_shows(terminal, "Leave without saving?"));
    bk_terminal_send(terminal, PASTED("\r"));
    bk_assert_field(terminal, "what", "hats");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(escape_ends_a_paste_that_the_terminal_did_not_end)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_send(terminal, "\033[200~abc");
    bk_terminal_press(terminal, "Escape Down");
    ck_assert(!bk_terminal_shows(terminal, "What you pasted"));
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("pasting", what_is_pasted_into_a_form_stands_there_with_its_line_ends_as_spaces,
             what_is_pasted_on_a_screen_does_nothing_and_is_told,
             what_is_pasted_answers_no_question_of_a_form, escape_ends_a_paste_that_the_terminal_did_not_end)
