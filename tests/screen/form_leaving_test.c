#include "screen/form_fields.h"
#include "screen/show.h"
#include "support/testing.h"

enum { BOTTOM = 23 };

// The first date of the show, being changed.
static bk_terminal *changed_date(const char *keys)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "T Home e");
    bk_assert_field(terminal, "what", "dress");
    bk_terminal_press(terminal, keys);
    return terminal;
}

START_TEST(escape_leaves_at_once_where_nothing_was_typed)
{
    bk_terminal *terminal = changed_date("Down Down Escape");
    ck_assert(bk_terminal_shows(terminal, "Dates of The Salt Road"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_was_typed_and_taken_back_is_nothing_typed)
{
    bk_terminal *terminal = changed_date("PageDown x Backspace Escape");
    ck_assert(bk_terminal_shows(terminal, "Dates of The Salt Road"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(escape_asks_where_something_was_typed)
{
    bk_terminal *terminal = changed_date("PageDown bells Escape");
    ck_assert_str_eq(bk_terminal_row(terminal, BOTTOM),
                     " Leave without saving?   y yes   Ctrl-S save   any other key: back to the form");
    bk_terminal_press(terminal, "Escape");
    bk_assert_field(terminal, "note", "bells");
    bk_terminal_press(terminal, "Escape x");
    bk_assert_field(terminal, "note", "bells");
    ck_assert(!bk_terminal_shows(terminal, "bellsx"));
    bk_terminal_press(terminal, "Escape y");
    ck_assert(bk_terminal_shows(terminal, "Dates of The Salt Road"));
    ck_assert(!bk_terminal_shows(terminal, "bells"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(enter_which_is_the_key_after_every_field_throws_nothing_away)
{
    bk_terminal *terminal = changed_date("PageDown bells Escape Enter");
    bk_assert_field(terminal, "note", "bells");
    bk_terminal_send(terminal, "\033[200~y\033[201~"); // nor does what is pasted
    bk_assert_field(terminal, "note", "bellsy");
    bk_terminal_press(terminal, "Escape");
    bk_terminal_send(terminal, "\033[200~y\033[201~");
    bk_assert_field(terminal, "note", "bellsy");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(the_question_can_be_answered_by_saving)
{
    bk_terminal *terminal = changed_date("PageDown bells Escape Control-S");
    ck_assert(bk_terminal_shows(terminal, "Dates of The Salt Road"));
    ck_assert(bk_terminal_shows(terminal, "bells"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(saving_what_was_not_changed_writes_nothing)
{
    bk_terminal *terminal = changed_date("Control-S");
    ck_assert(bk_terminal_shows(terminal, "Nothing was changed."));
    bk_terminal_press(terminal, "D");
    ck_assert(!bk_terminal_shows(terminal, "Changed: date"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(only_what_was_changed_is_changed)
{
    bk_terminal *terminal = changed_date("Down Control-U 17 Space mar Control-S");
    ck_assert(bk_terminal_shows(terminal, "Wed 17 Mar"));
    bk_terminal_press(terminal, "u Down");
    ck_assert(bk_terminal_shows(terminal, "Tue 16 Mar"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_day_is_typed_anew_without_emptying_the_field)
{
    bk_terminal *terminal = changed_date("Down 17 Space mar");
    bk_assert_field(terminal, "on", "  17 mar ");
    bk_terminal_press(terminal, "Control-U 17 Space ma Enter");
    ck_assert(bk_terminal_shows(terminal, "is no day"));
    bk_terminal_press(terminal, "Down Up r Control-S"); // what was wrong is mended, not typed anew
    ck_assert(bk_terminal_shows(terminal, "Wed 17 Mar"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_form_stays_as_it_is_when_the_terminal_gets_another_size)
{
    bk_terminal *terminal = changed_date("PageDown bells");
    bk_terminal_resize(terminal, 10, 40);
    ck_assert(bk_terminal_shows(terminal, "needs 80 columns"));
    bk_terminal_press(terminal, "q");
    bk_terminal_resize(terminal, 48, 160);
    bk_assert_field(terminal, "note", "bells");
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("leaving forms", escape_leaves_at_once_where_nothing_was_typed,
             what_was_typed_and_taken_back_is_nothing_typed, escape_asks_where_something_was_typed,
             enter_which_is_the_key_after_every_field_throws_nothing_away,
             the_question_can_be_answered_by_saving, saving_what_was_not_changed_writes_nothing,
             only_what_was_changed_is_changed, a_day_is_typed_anew_without_emptying_the_field,
             a_form_stays_as_it_is_when_the_terminal_gets_another_size)
