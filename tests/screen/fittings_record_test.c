#include <string.h>

#include "screen/fitting_show.h"
#include "screen/form_fields.h"
#include "support/shell.h"
#include "support/testing.h"

// The form for the coat, the first of the two pieces that are to be recorded.
static bk_terminal *at_the_coat(void)
{
    bk_terminal *terminal = bk_among_fittings(BK_TWO_CALLS, NULL);
    bk_terminal_press(terminal, "Enter");
    ck_assert(bk_terminal_shows(terminal, "1 of 2: 4A-1 Coat: first fitting"));
    ck_assert(bk_terminal_shows(terminal, "Count the pins"));
    return terminal;
}

// Narrows the Materials to the hooks: whether so many lie on the shelf. The screen is the Materials then.
static bool hooks_on_shelf(bk_terminal *terminal, const char *count)
{
    bk_terminal_press(terminal, "M");
    return bk_line_shows(terminal, "hooks", count);
}

START_TEST(a_piece_that_fits_is_done_and_the_next_piece_follows)
{
    bk_terminal *terminal = at_the_coat();
    bk_terminal_press(terminal, "f Enter");
    bk_assert_field(terminal, "held on", "2027-02-27");
    bk_terminal_press(terminal, "Enter Enter Enter");
    ck_assert(bk_terminal_shows(terminal, "Fitted: 4A-1 first fitting: fits"));
    ck_assert(bk_terminal_shows(terminal, "2 of 2: 4A-2 Skirt: toile fitting"));
    bk_terminal_press(terminal, "f Control-S");
    ck_assert(bk_terminal_shows(terminal, "0 to book now, 0 to record, 1 to come"));
    ck_assert(bk_line_shows(terminal, "Sat 27 Feb 11:00", "fits"));
    ck_assert(hooks_on_shelf(terminal, " 8"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(after_one_call_the_cursor_is_on_the_next_that_is_to_be_recorded)
{
    bk_terminal *terminal =
        bk_among_fittings("4A-1,fit,2027-02-27T11:00,,,,,\n4A-2,fit,2027-02-28T11:00,,,,,\n"
                          "5A-2,fit,2027-03-02T10:00,,,,,\n",
                          NULL);
    bk_terminal_press(terminal, "/ 27 Space Feb Enter Escape");
    ck_assert(bk_chosen_shows(terminal, "Sat 27 Feb 11:00"));
    bk_terminal_press(terminal, "Enter f Control-S");
    ck_assert(bk_chosen_shows(terminal, "Sun 28 Feb 11:00"));
    bk_terminal_press(terminal, "m Enter");
    ck_assert(bk_chosen_shows(terminal, "Tue 2 Mar 10:00"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(one_undo_takes_back_what_came_of_one_piece)
{
    bk_terminal *terminal = at_the_coat();
    bk_terminal_press(terminal, "f Control-S Escape u");
    ck_assert(bk_line_shows(terminal, "Sat 27 Feb 11:00", "not recorded"));
    ck_assert(!bk_line_shows(terminal, "Sat 27 Feb 11:00", "1 not"));
    ck_assert(hooks_on_shelf(terminal, " 10"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(another_day_can_be_said_on_which_it_was_held)
{
    bk_terminal *terminal = at_the_coat();
    bk_terminal_press(terminal, "fits Enter yesterday Control-S Escape");
    ck_assert(bk_terminal_shows(terminal, "fits on Mon 1 Mar"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_is_to_be_altered_becomes_steps_before_the_fitting_which_is_next_again_after_them)
{
    bk_terminal *terminal = at_the_coat();
    bk_terminal_press(terminal, "a Enter Enter Enter");
    bk_terminal_press(terminal, "take Space in Space the Space back Tab Tab 20 Enter");
    bk_terminal_press(terminal, "shorten Space sleeves Tab hand Enter Control-S");
    ck_assert(bk_terminal_shows(terminal, "again (2 notes, 2 steps made)"));
    bk_terminal_press(terminal, "Escape");
    ck_assert(bk_line_shows(terminal, "by Wed 10 Mar", "1 later"));
    bk_terminal_press(terminal, "R Enter");
    size_t back = bk_terminal_find(terminal, "take in the back");
    size_t sleeves = bk_terminal_find(terminal, "shorten sleeves");
    ck_assert_uint_lt(back, sleeves);
    ck_assert_uint_lt(sleeves, bk_terminal_find(terminal, "first fitting"));
    ck_assert(bk_line_shows(terminal, "take in the back", "machine"));
    ck_assert(bk_line_shows(terminal, "take in the back", "20 min"));
    ck_assert(bk_line_shows(terminal, "shorten sleeves", "hand"));
    ck_assert(bk_line_shows(terminal, "shorten sleeves", "15 min"));
    bk_terminal_press(terminal, "R x Enter x Enter F");
    ck_assert(bk_line_shows(terminal, "by Wed 10 Mar", "1 now"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_is_only_noted_makes_no_step)
{
    bk_terminal *terminal = at_the_coat();
    bk_terminal_press(terminal, "f Enter Enter Enter she Space likes Space it Tab no Enter");
    bk_terminal_press(terminal, "Enter Escape");
    ck_assert(bk_terminal_shows(terminal, "1 not recorded"));
    bk_terminal_press(terminal, "R Enter");
    ck_assert(!bk_terminal_shows(terminal, "she likes it"));
    bk_terminal_press(terminal, "N");
    ck_assert(bk_line_shows(terminal, "she likes it", "fitting"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(enter_alone_leaves_a_piece_unsaid_and_goes_on)
{
    bk_terminal *terminal = at_the_coat();
    bk_terminal_press(terminal, "Enter");
    ck_assert(bk_terminal_shows(terminal, "2 of 2: 4A-2 Skirt"));
    bk_terminal_press(terminal, "missed Enter Enter");
    ck_assert(bk_line_shows(terminal, "Sat 27 Feb 11:00", "1 not recorded"));
    bk_terminal_press(terminal, "Enter");
    ck_assert(bk_terminal_shows(terminal, "1 of 2: 4A-1 Coat"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(escape_asks_before_what_was_typed_is_thrown_away)
{
    bk_terminal *terminal = at_the_coat();
    bk_terminal_press(terminal, "a Enter Escape");
    ck_assert(bk_terminal_shows(terminal, "Leave without saving?"));
    bk_terminal_press(terminal, "Escape");
    bk_assert_field(terminal, "what came of it", "again");
    bk_terminal_press(terminal, "Escape y");
    ck_assert(bk_terminal_shows(terminal, "0 to book now, 1 to record, 1 to come"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(an_outcome_that_is_emptied_is_taken_back_with_its_materials)
{
    bk_terminal *terminal = bk_among_fittings("4A-1,fit,2027-02-27T11:00,,,,,\n", NULL);
    bk_terminal_press(terminal, "/ 4A-1 Enter End Enter f Control-S");
    ck_assert(hooks_on_shelf(terminal, " 8"));
    bk_terminal_press(terminal, "F End Enter");
    bk_assert_field(terminal, "what came of it", "fits");
    bk_terminal_press(terminal, "Control-U Enter");
    ck_assert(bk_terminal_shows(terminal, "Taken back"));
    ck_assert(bk_line_shows(terminal, "Sat 27 Feb 11:00", "not recorded"));
    ck_assert(hooks_on_shelf(terminal, " 10"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(alterations_without_an_outcome_are_refused_and_stay_in_the_form)
{
    bk_terminal *terminal = at_the_coat();
    bk_terminal_press(terminal, "a Enter Enter Enter hem Space up Up Up Up Control-U Control-S");
    ck_assert(bk_terminal_shows(terminal, "Say what came of it"));
    bk_assert_field(terminal, "to alter", "hem up");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(saving_what_stands_there_already_writes_nothing)
{
    bk_terminal *terminal = bk_among_fittings("4A-1,fit,2027-02-20T11:00,,,2027-02-20,again,collar\n", NULL);
    bk_terminal_press(terminal, "End Enter");
    bk_assert_field(terminal, "note", "collar");
    bk_terminal_press(terminal, "Control-S");
    ck_assert(bk_terminal_shows(terminal, "Nothing was changed."));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_long_step_is_cut_at_the_head_and_not_the_production)
{
    bk_terminal *terminal = bk_among_fittings(BK_TWO_CALLS, NULL);
    bk_ask("UPDATE step SET title = 'first fitting on the stand, over the petticoat and the stays' WHERE "
           "title = "
           "'first fitting'");
    bk_terminal_await(terminal, "petticoat");
    bk_terminal_press(terminal, "Enter");
    const char *head = bk_terminal_row(terminal, 0);
    ck_assert_ptr_nonnull(strstr(head, "1 of 2: 4A-1 Coat: first fitting on the stand"));
    ck_assert_ptr_nonnull(strstr(head, "…   The Ferry"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(alterations_typed_one_after_the_other_are_steps_of_the_usual_kind)
{
    bk_terminal *terminal = at_the_coat();
    bk_terminal_press(terminal, "a Enter Enter Enter take Space in Space the Space back Enter");
    bk_terminal_press(terminal, "shorten Space sleeves Enter Enter");
    ck_assert(bk_terminal_shows(terminal, "again (2 notes, 2 steps made)"));
    ck_assert_str_eq(bk_ask("SELECT title, kind, minutes FROM step WHERE title IN ('take in the back', "
                            "'shorten sleeves') ORDER BY id"),
                     "take in the back|machine|15\nshorten sleeves|machine|15");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_kind_of_alteration_that_is_none_is_refused_and_stays_in_the_form)
{
    bk_terminal *terminal = at_the_coat();
    bk_terminal_press(terminal, "a Enter Enter Enter hem Space up Tab rubbish Control-S");
    ck_assert(bk_terminal_shows(terminal, "1 of 2: 4A-1 Coat: first fitting"));
    bk_assert_at_field(terminal, "step of kind");
    bk_assert_field(terminal, "step of kind", "rubbish");
    bk_assert_field(terminal, "to alter", "hem up");
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM note"), "0");
    bk_terminal_press(terminal, "Control-U Control-S");
    ck_assert(bk_terminal_shows(terminal, "What kind of step is it?"));
    bk_assert_at_field(terminal, "step of kind");
    bk_terminal_press(terminal, "hand Control-S");
    ck_assert_str_eq(bk_ask("SELECT kind FROM step WHERE title = 'hem up'"), "hand");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(whoever_records_over_another_terminal_is_told_what_stood_there)
{
    bk_terminal *terminal = at_the_coat();
    bk_ask("UPDATE fitting SET outcome = 'again', held_on = '2027-02-27' WHERE id = (SELECT min(id) FROM "
           "fitting)");
    bk_terminal_press(terminal, "f Control-S");
    ck_assert_msg(bk_terminal_shows(terminal, "fits; another terminal meanwhile"), "%s",
                  bk_terminal_screen(terminal));
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("fittings record", a_piece_that_fits_is_done_and_the_next_piece_follows,
             after_one_call_the_cursor_is_on_the_next_that_is_to_be_recorded,
             one_undo_takes_back_what_came_of_one_piece, another_day_can_be_said_on_which_it_was_held,
             what_is_to_be_altered_becomes_steps_before_the_fitting_which_is_next_again_after_them,
             what_is_only_noted_makes_no_step, enter_alone_leaves_a_piece_unsaid_and_goes_on,
             escape_asks_before_what_was_typed_is_thrown_away,
             an_outcome_that_is_emptied_is_taken_back_with_its_materials,
             alterations_without_an_outcome_are_refused_and_stay_in_the_form,
             saving_what_stands_there_already_writes_nothing,
             a_long_step_is_cut_at_the_head_and_not_the_production,
             alterations_typed_one_after_the_other_are_steps_of_the_usual_kind,
             a_kind_of_alteration_that_is_none_is_refused_and_stays_in_the_form,
             whoever_records_over_another_terminal_is_told_what_stood_there)
