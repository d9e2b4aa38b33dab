#include "screen/fitting_show.h"
#include "screen/form_fields.h"
#include "support/testing.h"

// ---------------------------------------------------------------------------------------------------- booking

START_TEST(b_books_one_call_for_all_that_can_be_fitted_of_a_performer)
{
    bk_terminal *terminal = bk_among_fittings(BK_NONE_BOOKED, NULL);
    bk_terminal_press(terminal, "b");
    ck_assert(bk_terminal_shows(terminal, "Book a fitting of Ines Varga"));
    bk_assert_field(terminal, "fittings", "4A-1/fit; 4A-2/fit");
    bk_terminal_press(terminal, "fri Space 14:30 Enter Enter Enter Enter");
    ck_assert(bk_terminal_shows(terminal, "Booked: Ines Varga, Fri 5 Mar 14:30"));
    ck_assert(bk_line_shows(terminal, "Fri 5 Mar 14:30", "50 min  4A-1, 4A-2"));
    ck_assert(bk_terminal_shows(terminal, "1 to book now, 0 to record, 1 to come"));
    bk_terminal_press(terminal, "u");
    ck_assert(bk_terminal_shows(terminal, "2 to book now, 0 to record, 0 to come"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(enter_on_what_is_to_book_books_it_too)
{
    bk_terminal *terminal = bk_among_fittings(BK_NONE_BOOKED, NULL);
    bk_terminal_press(terminal, "Down Enter");
    ck_assert(bk_terminal_shows(terminal, "Book a fitting of Tomas Lind"));
    bk_assert_field(terminal, "fittings", "5A-2/fit");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(b_on_a_call_books_another_one_of_that_performer)
{
    bk_terminal *terminal = bk_among_fittings(BK_TWO_CALLS, NULL);
    bk_terminal_press(terminal, "Down b");
    ck_assert(bk_terminal_shows(terminal, "Book a fitting of Tomas Lind"));
    bk_assert_field(terminal, "fittings", "5A-1/fit");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(by_performer_b_books_the_step_under_the_cursor)
{
    bk_terminal *terminal = bk_among_fittings(BK_NONE_BOOKED, NULL);
    bk_terminal_press(terminal, "Tab Down b");
    bk_assert_field(terminal, "fittings", "4A-2/fit");
    bk_terminal_close(terminal);
}
END_TEST

// ----------------------------------------------------------------------------------------------------- moving

START_TEST(v_moves_a_call_with_all_its_pieces)
{
    bk_terminal *terminal = bk_among_fittings(BK_TWO_CALLS, NULL);
    bk_terminal_press(terminal, "v");
    ck_assert(bk_terminal_shows(terminal, "Move: Ines Varga, Sat 27 Feb 11:00"));
    bk_assert_field(terminal, "fittings", "4A-1/fit; 4A-2/fit");
    bk_terminal_press(terminal, "+2 Space 9:15 Enter Enter");
    ck_assert(bk_terminal_shows(terminal, "Moved: Ines Varga, Thu 4 Mar 09:15"));
    ck_assert(bk_chosen_shows(terminal, "Thu 4 Mar 09:15"));
    ck_assert(bk_chosen_shows(terminal, "4A-1, 4A-2"));
    ck_assert(!bk_terminal_shows(terminal, "To record"));
    bk_terminal_press(terminal, "u");
    ck_assert(bk_line_shows(terminal, "Sat 27 Feb 11:00", "4A-1, 4A-2"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_speaks_against_a_day_is_said_and_not_refused)
{
    bk_terminal *terminal = bk_among_fittings(BK_TWO_CALLS, NULL);
    bk_terminal_press(terminal, "v 8 Space mar Space 10 Enter");
    ck_assert(bk_terminal_shows(terminal, "Ines Varga is away on Mon 8 Mar: at her sister's."));
    bk_terminal_press(terminal, "Enter");
    ck_assert(bk_line_shows(terminal, "Mon 8 Mar 10:00", "Ines Varga"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_piece_taken_out_of_the_line_stays_where_it_was)
{
    bk_terminal *terminal = bk_among_fittings(BK_TWO_CALLS, NULL);
    bk_terminal_press(terminal, "v thu Space 10 Enter Control-U 4A-2 Enter");
    ck_assert(bk_line_shows(terminal, "Thu 4 Mar 10:00", "4A-2"));
    ck_assert(bk_terminal_shows(terminal, "0 to book now, 1 to record, 2 to come"));
    ck_assert(bk_line_shows(terminal, "Sat 27 Feb 11:00", "30 min  4A-1"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_is_recorded_is_not_moved)
{
    bk_terminal *terminal = bk_among_fittings("4A-1,fit,2027-02-20T11:00,,,,missed,\n", NULL);
    bk_terminal_press(terminal, "End v");
    ck_assert(bk_terminal_shows(terminal, "All of it is recorded"));
    bk_terminal_close(terminal);
}
END_TEST

// ------------------------------------------------------------------------------------------ missed, called off

START_TEST(m_asks_and_marks_a_call_missed_which_is_then_to_book_again)
{
    bk_terminal *terminal = bk_among_fittings(BK_TWO_CALLS, NULL);
    bk_terminal_press(terminal, "m");
    ck_assert(bk_terminal_shows(terminal, "Missed: Ines Varga, Sat 27 Feb 11:00, 4A-1, 4A-2?"));
    bk_terminal_press(terminal, "Escape");
    ck_assert(bk_terminal_shows(terminal, "0 to book now, 1 to record, 1 to come"));
    bk_terminal_press(terminal, "m Enter");
    ck_assert(bk_terminal_shows(terminal, "1 to book now, 0 to record, 1 to come"));
    ck_assert(bk_line_shows(terminal, "Sat 27 Feb 11:00", "missed"));
    ck_assert(bk_line_shows(terminal, "by Wed 10 Mar", "2 now"));
    bk_terminal_press(terminal, "u");
    ck_assert(bk_terminal_shows(terminal, "0 to book now, 1 to record, 1 to come"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_call_that_is_still_to_come_cannot_be_missed)
{
    bk_terminal *terminal = bk_among_fittings(BK_TWO_CALLS, NULL);
    bk_terminal_press(terminal, "Down m");
    ck_assert(bk_terminal_shows(terminal, "It is still to come"));
    ck_assert(bk_line_shows(terminal, "Fri 5 Mar 10:00", "in 3 days"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(minus_asks_and_calls_it_off)
{
    bk_terminal *terminal = bk_among_fittings(BK_TWO_CALLS, NULL);
    bk_terminal_press(terminal, "Down -");
    ck_assert(bk_terminal_shows(terminal, "Call off: Tomas Lind, Fri 5 Mar 10:00, 5A-2?"));
    bk_terminal_press(terminal, "Enter");
    ck_assert(bk_terminal_shows(terminal, "1 to book now, 1 to record, 0 to come"));
    ck_assert(bk_terminal_shows(terminal, "Called off: Tomas Lind"));
    bk_terminal_press(terminal, "u Up");
    ck_assert(bk_line_shows(terminal, "Fri 5 Mar 10:00", "Tomas Lind"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(e_changes_the_bookings_of_a_call_piece_by_piece)
{
    bk_terminal *terminal = bk_among_fittings(BK_TWO_CALLS, NULL);
    bk_terminal_press(terminal, "e");
    bk_assert_field(terminal, "piece", "4A-1");
    bk_terminal_press(terminal, "Tab Tab 40 Control-S");
    bk_assert_field(terminal, "piece", "4A-2");
    bk_terminal_press(terminal, "Control-S");
    ck_assert(bk_line_shows(terminal, "Sat 27 Feb 11:00", "1 h  4A-1, 4A-2"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(the_director_sees_the_calls_and_changes_none)
{
    bk_terminal *terminal = bk_among_fittings(BK_TWO_CALLS, "director");
    ck_assert(bk_chosen_shows(terminal, "4A-1, 4A-2"));
    bk_terminal_press(terminal, "m Enter");
    ck_assert(bk_terminal_shows(terminal, "0 to book now, 1 to record, 1 to come"));
    ck_assert(bk_terminal_shows(terminal, "Only the maker changes the workroom"));
    bk_terminal_press(terminal, "Enter fits Control-S");
    ck_assert(bk_terminal_shows(terminal, "Only the maker changes the workroom"));
    bk_assert_field(terminal, "what came of it", "fits");
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("fittings book", b_books_one_call_for_all_that_can_be_fitted_of_a_performer,
             enter_on_what_is_to_book_books_it_too, b_on_a_call_books_another_one_of_that_performer,
             by_performer_b_books_the_step_under_the_cursor, v_moves_a_call_with_all_its_pieces,
             what_speaks_against_a_day_is_said_and_not_refused,
             a_piece_taken_out_of_the_line_stays_where_it_was, what_is_recorded_is_not_moved,
             m_asks_and_marks_a_call_missed_which_is_then_to_book_again,
             a_call_that_is_still_to_come_cannot_be_missed, minus_asks_and_calls_it_off,
             e_changes_the_bookings_of_a_call_piece_by_piece, the_director_sees_the_calls_and_changes_none)
