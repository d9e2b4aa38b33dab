#include "screen/seen.h"
#include "screen/show.h"
#include "screen/terminal.h"
#include "support/program.h"
#include "support/testing.h"

// What goes on at the bench beside the steps: fittings are booked, notes jotted, pieces go out, orders of work are used.

static bk_terminal *open_rail_at(const char *number)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "/");
    bk_terminal_press(terminal, number);
    bk_terminal_press(terminal, "Enter");
    return terminal;
}

// ----------------------------------------------------------------------------------------------------- fittings

START_TEST(a_fitting_is_booked_from_the_rail_with_two_keys_and_the_moment)
{
    bk_terminal *terminal = open_rail_at("2a");
    bk_terminal_press(terminal, "b");
    assert_shows(terminal, "Book a fitting of Bo Lindqvist");
    assert_shows(terminal, "O1/fit");
    bk_terminal_press(terminal, "fri Space 14:30");
    bk_terminal_press(terminal, "Control-S");
    assert_shows(terminal, "Booked: Bo Lindqvist, Fri 5 Mar 14:30: O1 Fit the oilskin.");
    bk_terminal_press(terminal, "Enter");
    assert_shows(terminal, "the fitting is booked for Fri 5 Mar");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(enter_alone_books_it_too)
{
    bk_terminal *terminal = open_rail_at("2a");
    bk_terminal_press(terminal, "b");
    bk_terminal_press(terminal, "2027-03-05");
    bk_terminal_press(terminal, "Enter Enter Enter Enter");
    assert_shows(terminal, "Booked: Bo Lindqvist, Fri 5 Mar: O1 Fit the oilskin.");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(all_that_is_fitted_next_on_a_performer_is_one_call)
{
    bk_show_import();
    bk_show_rewrite("needs.csv", "piece,step,material,quantity\n");
    bk_show_replace("steps.csv", "piece,step,title,kind,minutes,after\nO1,fit,Fit the oilskin,fit,30,\n"
                                 "H1,fit,Fit the shirt,fit,20,\nH1,last,Last fitting,fit,15,fit\n");
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "/ 2a Enter b");
    assert_shows(terminal, "O1/fit; H1/fit");
    assert_shows(terminal, "50");
    bk_terminal_press(terminal, "Escape");
    bk_terminal_press(terminal, "Enter End b");
    assert_shows(terminal, "O1/fit");
    assert_hides(terminal, "H1/fit");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(on_a_costume_the_fitting_under_the_cursor_is_booked_also_before_it_is_next)
{
    bk_show_import();
    bk_show_rewrite("needs.csv", "piece,step,material,quantity\n");
    bk_show_replace("steps.csv", "piece,step,title,kind,minutes,after\nH1,fit,Fit the shirt,fit,20,\n"
                                 "H1,last,Last fitting,fit,15,fit\n");
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "/ 2b Enter Enter End b");
    assert_shows(terminal, "H1/last");
    assert_hides(terminal, "H1/fit");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_moment_that_is_past_is_doubted_but_taken)
{
    bk_terminal *terminal = open_rail_at("2a");
    bk_terminal_press(terminal, "b 2027-02-26 Enter Up");
    assert_shows(terminal, "is past");
    bk_terminal_press(terminal, "Control-S");
    assert_shows(terminal, "Booked: Bo Lindqvist, Fri 26 Feb");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(where_nothing_is_to_be_booked_it_says_so)
{
    bk_terminal *terminal = open_rail_at("1b");
    bk_terminal_press(terminal, "b");
    assert_shows(terminal, "Nothing of it is to be booked");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_step_that_is_no_fitting_cannot_be_booked)
{
    bk_terminal *terminal = open_rail_at("2a");
    bk_terminal_press(terminal, "b fri Enter Control-U H1/hem Control-S");
    assert_shows(terminal, "H1/hem");
    assert_hides(terminal, "Booked:");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_production_that_goes_while_a_fitting_is_booked_leaves_nothing_half_done)
{
    bk_terminal *terminal = open_rail_at("2a");
    bk_terminal_press(terminal, "b fri");
    bk_program_must(bodkin("undo"), 0);
    bk_terminal_await(terminal, "is no longer in this workroom");
    bk_terminal_press(terminal, "Enter Enter Enter Up Up Control-S");
    assert_hides(terminal, "Booked:");
    bk_terminal_press(terminal, "Escape y");
    assert_shows(terminal, "No production hangs in this workroom yet.");
    bk_terminal_close(terminal);
}
END_TEST

// -------------------------------------------------------------------------------------------------------- notes

START_TEST(a_note_on_a_costume_a_piece_and_a_step_is_told_where_it_belongs)
{
    bk_terminal *terminal = open_rail_at("1a");
    bk_terminal_press(terminal, "j Train Space catches Control-S");
    bk_terminal_press(terminal, "Enter j Mind Space the Space nap Control-S");
    assert_shows(terminal, "Tue 2 Mar: Mind the nap");
    assert_hides(terminal, "Train catches");
    bk_terminal_press(terminal, "Home");
    assert_shows(terminal, "Tue 2 Mar: Train catches");
    bk_terminal_press(terminal, "Down j Heavy Control-S");
    assert_shows(terminal, "Tue 2 Mar: Heavy");
    assert_hides(terminal, "Train catches");
    bk_terminal_press(terminal, "Home");
    assert_hides(terminal, "Heavy");
    bk_terminal_close(terminal);
}
END_TEST

// -------------------------------------------------------------------------------------------------- whereabouts

START_TEST(a_piece_goes_out_with_somebody_until_a_day_and_comes_back)
{
    bk_terminal *terminal = open_rail_at("1a");
    bk_terminal_press(terminal, "Enter w Ida Enter +3 Control-S");
    assert_shows(terminal, "is out with Ida, back Fri 5 Mar");
    bk_terminal_press(terminal, "w Control-U Control-S");
    assert_hides(terminal, "is out with Ida");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_piece_is_put_in_another_place)
{
    bk_terminal *terminal = open_rail_at("1a");
    bk_terminal_press(terminal, "Enter Home Down w Enter Control-U rail Space 7 Control-S");
    assert_shows(terminal, "made here; rail 7");
    bk_terminal_close(terminal);
}
END_TEST

// ------------------------------------------------------------------------------------------------ orders of work

START_TEST(an_order_of_work_gives_a_piece_its_steps)
{
    bk_terminal *terminal = open_rail_at("3b");
    bk_terminal_press(terminal, "Enter + Apron Control-S y");
    assert_shows(terminal, "Order of work for 3B-1 Apron");
    assert_shows(terminal, "1 h 37, 4 steps");
    bk_terminal_press(terminal, "apron Enter");
    assert_shows(terminal, "Used: Apron on 3B-1: 4 steps.");
    assert_shows(terminal, "0 of 4 done");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(the_steps_of_a_piece_are_kept_as_an_order_of_work_and_used_again)
{
    bk_terminal *terminal = open_rail_at("1a");
    bk_terminal_press(terminal, "Enter Y Gown Space of Space ours Enter Enter");
    assert_shows(terminal, "Gown of ours");
    bk_terminal_press(terminal, "Escape a / 3b Enter Enter + Robe Control-S y");
    bk_terminal_press(terminal, "ours Enter");
    assert_shows(terminal, "0 of 3 done");
    assert_shows(terminal, "Sew the lace");
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("at the bench", a_fitting_is_booked_from_the_rail_with_two_keys_and_the_moment,
             enter_alone_books_it_too, all_that_is_fitted_next_on_a_performer_is_one_call,
             on_a_costume_the_fitting_under_the_cursor_is_booked_also_before_it_is_next,
             a_moment_that_is_past_is_doubted_but_taken, where_nothing_is_to_be_booked_it_says_so,
             a_step_that_is_no_fitting_cannot_be_booked,
             a_production_that_goes_while_a_fitting_is_booked_leaves_nothing_half_done,
             a_note_on_a_costume_a_piece_and_a_step_is_told_where_it_belongs,
             a_piece_goes_out_with_somebody_until_a_day_and_comes_back, a_piece_is_put_in_another_place,
             an_order_of_work_gives_a_piece_its_steps,
             the_steps_of_a_piece_are_kept_as_an_order_of_work_and_used_again)
