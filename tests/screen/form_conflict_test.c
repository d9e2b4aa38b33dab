#include <string.h>

#include "screen/form_fields.h"
#include "screen/show.h"
#include "support/testing.h"

// Two terminals at the first date of the show; each has typed a note, and at the second one it is not saved yet.
typedef struct two_terminals {
    bk_terminal *mine, *theirs;
} two_terminals;

static two_terminals both_at_the_date(void)
{
    bk_show_import();
    two_terminals both = {bk_terminal_start(NULL), bk_terminal_start(NULL)};
    bk_terminal_press(both.theirs, "T Home e");
    bk_terminal_press(both.mine, "T Home e PageDown my Space bells");
    return both;
}

static void close_both(two_terminals both)
{
    bk_terminal_close(both.mine);
    bk_terminal_close(both.theirs);
}

START_TEST(a_change_at_another_terminal_is_told_while_the_form_is_open)
{
    two_terminals both = both_at_the_date();
    bk_terminal_press(both.theirs, "PageDown their Space bells Control-S");
    bk_terminal_await(both.mine, "Changed at another terminal meanwhile: note. Saving shows both.");
    bk_assert_field(both.mine, "note", "my bells");
    bk_terminal_press(both.mine, "!");
    bk_assert_field(both.mine, "note", "my bells!");
    close_both(both);
}
END_TEST

START_TEST(what_was_changed_there_is_told_whole_however_much_it_is)
{
    bk_show_import();
    two_terminals both = {bk_terminal_start(NULL), bk_terminal_start(NULL)};
    bk_terminal_press(both.mine, "/1a Enter Enter e");
    bk_terminal_press(both.theirs, "/1a Enter Enter e Tab Tab Tab Tab Tab 10 Tab 300 Tab 3");
    bk_terminal_press(both.theirs, "Tab 2 Tab 5 Tab yes Control-S");
    bk_terminal_await(both.mine, "quickest, longest, level, hands, rest,");
    ck_assert(bk_terminal_shows(both.mine, "can wait. Saving shows both."));
    ck_assert(!bk_terminal_shows(both.mine, "…"));
    bk_assert_field(both.mine, "piece", "G1");
    close_both(both);
}
END_TEST

START_TEST(saving_over_a_newer_change_shows_both_and_asks)
{
    two_terminals both = both_at_the_date();
    bk_terminal_press(both.theirs, "PageDown their Space bells Control-S");
    bk_terminal_press(both.mine, "Control-S");
    const char *row = bk_field_row(both.mine, "note");
    ck_assert_ptr_nonnull(strstr(row, "my bells"));
    ck_assert_ptr_nonnull(strstr(row, "their bells"));
    ck_assert(bk_terminal_shows(both.mine, "m keep mine"));
    bk_terminal_send(both.mine, "\033[200~m\033[201~"); // pasted
    bk_terminal_press(both.mine, "x Enter");
    ck_assert(bk_terminal_shows(both.mine, "m keep mine"));
    bk_terminal_press(both.mine, "Escape");
    bk_assert_at_field(both.mine, "note");
    bk_assert_field(both.mine, "note", "my bells");
    close_both(both);
}
END_TEST

START_TEST(mine_is_kept_and_what_they_changed_elsewhere_stays)
{
    two_terminals both = both_at_the_date();
    bk_terminal_press(both.theirs, "Down Control-U 17 Space mar PageDown their Space bells Control-S");
    bk_terminal_press(both.mine, "Control-S");
    bk_assert_field(both.mine, "on", "not changed by you");
    bk_assert_field(both.mine, "on", "2027-03-17");
    bk_terminal_press(both.mine, "m");
    ck_assert(bk_terminal_shows(both.mine, "Wed 17 Mar"));
    ck_assert(bk_terminal_shows(both.mine, "my bells"));
    ck_assert(!bk_terminal_shows(both.mine, "their bells"));
    bk_terminal_await(both.theirs, "my bells");
    close_both(both);
}
END_TEST

START_TEST(theirs_is_taken_into_the_form)
{
    two_terminals both = both_at_the_date();
    bk_terminal_press(both.theirs, "PageDown their Space bells Control-S");
    bk_terminal_press(both.mine, "Control-S t");
    bk_assert_field(both.mine, "note", "their bells");
    ck_assert(bk_terminal_shows(both.mine, "nothing of yours was saved"));
    bk_terminal_press(both.mine, "Escape");
    ck_assert(bk_terminal_shows(both.mine, "Dates of The Salt Road"));
    ck_assert(bk_terminal_shows(both.mine, "their bells"));
    close_both(both);
}
END_TEST

START_TEST(what_was_taken_away_meanwhile_is_offered_as_a_new_one)
{
    two_terminals both = both_at_the_date();
    bk_terminal_press(both.theirs, "Escape - Enter");
    bk_terminal_await(both.mine, "Taken away at another terminal meanwhile");
    bk_assert_field(both.mine, "note", "my bells");
    bk_terminal_press(both.mine, "Control-S");
    ck_assert(bk_terminal_shows(both.mine, "Another terminal has taken it away."));
    bk_terminal_press(both.mine, "Escape");
    bk_assert_field(both.mine, "note", "my bells");
    bk_terminal_press(both.mine, "Control-S n");
    ck_assert(bk_terminal_shows(both.mine, "Dates of The Salt Road"));
    ck_assert(bk_terminal_shows(both.mine, "my bells"));
    ck_assert(bk_terminal_shows(both.mine, "Tue 16 Mar"));
    close_both(both);
}
END_TEST

START_TEST(the_same_change_made_twice_is_no_conflict)
{
    two_terminals both = both_at_the_date();
    bk_terminal_press(both.theirs, "PageDown my Space bells Control-S");
    bk_terminal_press(both.mine, "Control-S");
    ck_assert(bk_terminal_shows(both.mine, "Dates of The Salt Road"));
    ck_assert(bk_terminal_shows(both.mine, "my bells"));
    close_both(both);
}
END_TEST

BK_TEST_MAIN("forms and other terminals", a_change_at_another_terminal_is_told_while_the_form_is_open,
             what_was_changed_there_is_told_whole_however_much_it_is,
             saving_over_a_newer_change_shows_both_and_asks,
             mine_is_kept_and_what_they_changed_elsewhere_stays, theirs_is_taken_into_the_form,
             what_was_taken_away_meanwhile_is_offered_as_a_new_one, the_same_change_made_twice_is_no_conflict)
