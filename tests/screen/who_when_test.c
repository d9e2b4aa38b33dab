#include "screen/plan_show.h"
#include "screen/seen.h"
#include "screen/show.h"
#include "screen/terminal.h"
#include "support/program.h"
#include "support/testing.h"

// Who and When: the days to the opening, a day of them, and the record of minutes.

static bk_terminal *among_days(void)
{
    bk_plan_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "W");
    return terminal;
}

// ---------------------------------------------------------------------------------------------------- the days

START_TEST(each_day_to_the_opening_has_what_each_person_does_and_how_much_room_there_is)
{
    bk_terminal *terminal = among_days();
    assert_shows(terminal, "Who and When");
    assert_shows(terminal, "17 days to opening");
    assert_row_has(terminal, "Day", "Ida");
    assert_row_has(terminal, "Day", "Mo");
    assert_row_has(terminal, "Tue 2 Mar", "full");
    assert_row_has(terminal, "Tue 2 Mar", "C1 line");
    assert_row_has(terminal, "Tue 2 Mar", "1 h 35");
    bk_terminal_press(terminal, "End");
    assert_row_has(terminal, "Fri 19 Mar", "opening");
    assert_row_has(terminal, "Fri 19 Mar", "3 h");
    assert_row_has(terminal, "Tue 16 Mar", "dress");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_day_on_which_nobody_has_hours_says_so)
{
    bk_terminal *terminal = among_days();
    assert_row_has(terminal, "Sat 6 Mar", "no hours");
    bk_terminal_press(terminal, "Down Down Down Down");
    assert_shows(terminal, "Nobody who is shown has hours.");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(many_days_without_hours_are_one_line)
{
    bk_terminal *terminal = among_days();
    bk_terminal_press(terminal, "p mo Enter");
    assert_row_has(terminal, "Fri 5 Mar", "to Mon 8 Mar: no hours");
    assert_hides(terminal, "Sat 6 Mar");
    assert_row_has(terminal, "Wed 3 Mar", "no hours");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(the_chosen_day_is_told_with_its_times)
{
    bk_terminal *terminal = among_days();
    assert_shows(terminal, "14:00-14:45  C1 Fell the lining");
    assert_shows(terminal, "1 h 35 free of 3 h");
    bk_terminal_press(terminal, "Down");
    assert_hides(terminal, "14:00-14:45  C1 Fell the lining");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(others_are_shown_by_right_and_left)
{
    bk_terminal *terminal = among_days();
    assert_shows(terminal, "1 to 2 of 3 people");
    assert_row_lacks(terminal, "Day", "Jo");
    bk_terminal_press(terminal, "Right");
    assert_shows(terminal, "2 to 3 of 3 people");
    assert_row_has(terminal, "Day", "Jo");
    assert_row_lacks(terminal, "Day", "Ida");
    bk_terminal_press(terminal, "Right Left Left Left");
    assert_row_has(terminal, "Day", "Ida");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_larger_terminal_shows_more_people)
{
    bk_terminal *terminal = among_days();
    bk_terminal_resize(terminal, 40, 140);
    assert_row_has(terminal, "Day", "Ida");
    assert_row_has(terminal, "Day", "Jo");
    assert_hides(terminal, "of 3 people");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(one_person_is_followed_and_all_are_shown_again)
{
    bk_terminal *terminal = among_days();
    bk_terminal_press(terminal, "p mo Enter");
    assert_shows(terminal, "Who and When: Mo");
    assert_row_lacks(terminal, "Day", "Ida");
    assert_row_has(terminal, "Tue 2 Mar", "C1 line");
    assert_row_has(terminal, "14:00-14:45  C1 Fell the lining", "1B Salt Queen");
    assert_row_has(terminal, "Wed 3 Mar", "no hours");
    bk_terminal_press(terminal, "p every Enter");
    assert_row_has(terminal, "Day", "Ida");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(without_people_it_says_where_they_are_entered)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "W");
    assert_shows(terminal, "Nobody is in this workroom yet, so no day can be told");
    assert_shows(terminal, "H shows the Hands");
    bk_terminal_close(terminal);
}
END_TEST

// ------------------------------------------------------------------------------------------------------ one day

START_TEST(enter_shows_the_whole_day_and_the_days_beside_it)
{
    bk_terminal *terminal = among_days();
    bk_terminal_press(terminal, "Enter");
    assert_shows(terminal, "Tue 2 Mar, today");
    assert_shows(terminal, "Ida: 3 h, full");
    assert_shows(terminal, "Mo: 1 h 35 free of 3 h");
    assert_row_has(terminal, "14:00-14:45", "C1 Fell the lining");
    assert_row_has(terminal, "14:00-14:45", "1B Salt Queen");
    bk_terminal_press(terminal, "Right");
    assert_shows(terminal, "Wed 3 Mar, tomorrow");
    assert_hides(terminal, "Mo:");
    bk_terminal_press(terminal, "Left Left");
    assert_shows(terminal, "Tue 2 Mar, today");
    bk_terminal_press(terminal, "Escape");
    assert_shows(terminal, "Who and When");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(enter_on_a_step_of_the_day_opens_its_costume)
{
    bk_terminal *terminal = among_days();
    bk_terminal_press(terminal, "Enter End Enter");
    assert_shows(terminal, "Linen shirt");
    assert_row_has(terminal, ">", "Hem the shirt");
    bk_terminal_press(terminal, "Escape");
    assert_shows(terminal, "Tue 2 Mar, today");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_day_without_hours_is_told_as_such)
{
    bk_terminal *terminal = among_days();
    bk_terminal_press(terminal, "Down Down Down Down Enter");
    assert_shows(terminal, "Sat 6 Mar, in 4 days");
    assert_shows(terminal, "Nobody has hours on this day.");
    bk_terminal_close(terminal);
}
END_TEST

// ----------------------------------------------------------------------------------------------- minutes taken

START_TEST(the_record_of_minutes_is_told_by_kind_and_by_person)
{
    bk_plan_show_import();
    bk_program_must(bodkin("tick", "G1/cut", "--took", "72"), 0);
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "W r");
    assert_shows(terminal, "Minutes taken");
    bk_terminal_press(terminal, "Down");
    assert_shows(terminal, "cut: 1 step, took 120 % of the guess, not yet used (8 needed)");
    assert_row_has(terminal, "cut ", "1 h 12");
    bk_terminal_press(terminal, "Escape");
    assert_shows(terminal, "Who and When");
    bk_terminal_press(terminal, "H r");
    assert_shows(terminal, "Minutes taken");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(where_no_minutes_were_kept_it_says_how_they_are)
{
    bk_terminal *terminal = among_days();
    bk_terminal_press(terminal, "r");
    assert_shows(terminal, "No minutes have been kept yet.");
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("Who and When", each_day_to_the_opening_has_what_each_person_does_and_how_much_room_there_is,
             a_day_on_which_nobody_has_hours_says_so, many_days_without_hours_are_one_line,
             the_chosen_day_is_told_with_its_times, others_are_shown_by_right_and_left,
             a_larger_terminal_shows_more_people, one_person_is_followed_and_all_are_shown_again,
             without_people_it_says_where_they_are_entered, enter_shows_the_whole_day_and_the_days_beside_it,
             enter_on_a_step_of_the_day_opens_its_costume, a_day_without_hours_is_told_as_such,
             the_record_of_minutes_is_told_by_kind_and_by_person,
             where_no_minutes_were_kept_it_says_how_they_are)
