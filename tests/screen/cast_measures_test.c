#include <stdlib.h>
#include <string.h>

#include "screen/measured.h"
#include "screen/show.h"
#include "support/program.h"
#include "support/testing.h"

// The Measures screen: the history of one performer.

#define THREE_SHEETS \
    "Ana Ruíz,2026-06-01,waist girth,68 cm,,\n" \
    "Ana Ruíz,2026-06-01,hip girth,95 cm,,\n" \
    "Ana Ruíz,2026-11-02,waist girth,69 cm,,\n" \
    "Ana Ruíz,2027-02-02,waist girth,72.5 cm,thin shirt,Ida\n" \
    "Ana Ruíz,2027-02-02,hip girth,94.5 cm,,Ida\n"

static bk_terminal *open_measures(const char *measures)
{
    bk_terminal *terminal = bk_cast_open(measures);
    bk_terminal_press(terminal, "Enter");
    bk_must_show(terminal, "Measures of Ana Ruíz");
    return terminal;
}

static void must_stand_in_row(const bk_terminal *terminal, const char *of, const char *text)
{
    const char *row = bk_terminal_row(terminal, bk_terminal_find(terminal, of));
    ck_assert_msg(strstr(row, text) != NULL, "\"%s\" is missing: %s", text, row);
}

START_TEST(each_sheet_is_a_column_the_newest_first_with_the_change_beside_each_value)
{
    bk_terminal *terminal = open_measures(THREE_SHEETS);
    must_stand_in_row(terminal, "Measure  ", "Tue 2 Feb");
    must_stand_in_row(terminal, "Tue 2 Feb", "Mon 2 Nov 2026");
    must_stand_in_row(terminal, "waist girth ", "72.5  +3.5 grew");
    must_stand_in_row(terminal, "waist girth ", "69    +1");
    must_stand_in_row(terminal, "waist girth ", "68");
    must_stand_in_row(terminal, "hip girth ", "94.5  -0.5");
    bk_must_show(terminal, "marked: a change of more than 2 cm and 3 %");
    bk_must_show(terminal, "waist girth, Tue 2 Feb: 72.5 cm, 3.5 cm more than on Mon 2 Nov 2026: grew");
    bk_must_show(terminal, "over thin shirt, by Ida");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(older_sheets_than_there_is_room_for_come_with_right)
{
    bk_terminal *terminal = open_measures(
        "Ana Ruíz,2026-02-01,neck to waist front,41 cm,,\nAna Ruíz,2026-03-01,neck to waist front,42 cm,,\n"
        "Ana Ruíz,2026-04-01,neck to waist front,43 cm,,\nAna Ruíz,2026-05-01,neck to waist front,44 cm,,\n");
    bk_must_show(terminal, "sheets 1 to 3 of 4");
    bk_must_not_show(terminal, "Sun 1 Feb 2026");
    bk_terminal_press(terminal, "Right Right Right Right");
    bk_must_show(terminal, "sheets 2 to 4 of 4");
    bk_must_show(terminal, "neck to waist front, Sun 1 Feb 2026: 41 cm.");
    bk_terminal_press(terminal, "Left Left Left");
    bk_must_show(terminal, "sheets 1 to 3 of 4");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_doubt_is_marked_and_told_whole_under_the_cursor)
{
    bk_terminal *terminal = open_measures("Ana Ruíz,2027-02-02,waist girth,725 cm,,\n");
    must_stand_in_row(terminal, "waist girth ", "725?");
    bk_must_show(terminal, "725 cm looks like a decimal point left out");
    bk_must_show(terminal, "ISO 8559-1: waist girth (5.3.10)");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(enter_corrects_a_value_typed_as_people_type)
{
    bk_terminal *terminal = open_measures(THREE_SHEETS);
    bk_terminal_press(terminal, "Enter Control-U");
    bk_terminal_send(terminal, "28 in");
    bk_terminal_press(terminal, "Control-S");
    bk_must_show(terminal, "Corrected: waist girth of Ana Ruíz, 2 Feb.");
    ck_assert_int_eq(bk_stored_measure("Ana Ruíz", "2027-02-02", "waist girth"), 711200);
    bk_terminal_press(terminal, "u");
    ck_assert_int_eq(bk_stored_measure("Ana Ruíz", "2027-02-02", "waist girth"), 725000);
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_correction_is_doubted_in_its_form)
{
    bk_terminal *terminal = open_measures(THREE_SHEETS);
    bk_terminal_press(terminal, "e Control-U 7 2 5 Tab");
    bk_must_show(terminal, "725 cm looks like a decimal point left out");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_value_that_is_missing_on_a_sheet_is_added_there)
{
    bk_terminal *terminal = open_measures(THREE_SHEETS);
    bk_terminal_press(terminal, "Down Right");
    bk_must_show(terminal, "hip girth: not on the sheet of Mon 2 Nov 2026; Enter adds it.");
    bk_terminal_press(terminal, "Enter 9 5 Control-S");
    bk_must_show(terminal, "Added: hip girth of Ana Ruíz, 2 Nov 2026.");
    ck_assert_int_eq(bk_stored_measure("Ana Ruíz", "2026-11-02", "hip girth"), 950000);
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_newer_change_of_another_terminal_is_told_beside_ones_own)
{
    bk_terminal *terminal = open_measures(THREE_SHEETS);
    bk_terminal_press(terminal, "Enter Control-U 7 4");
    bk_program_must(bodkin("measure", "Ana Ruíz", "waist girth=73", "--on", "2027-02-02"), EXIT_SUCCESS);
    bk_terminal_press(terminal, "Control-S");
    bk_must_show(terminal, "Another terminal has made it 73 cm");
    bk_must_show(terminal, "is 74 cm over thin shirt by Ida");
    ck_assert_int_eq(bk_stored_measure("Ana Ruíz", "2027-02-02", "waist girth"), 730000);
    bk_terminal_press(terminal, "Control-S");
    bk_must_show(terminal, "Corrected: waist girth of Ana Ruíz");
    ck_assert_int_eq(bk_stored_measure("Ana Ruíz", "2027-02-02", "waist girth"), 740000);
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_value_and_a_sheet_are_taken_away_after_asking)
{
    bk_terminal *terminal = open_measures(THREE_SHEETS);
    bk_terminal_press(terminal, "-");
    bk_must_show(terminal, "Take away the waist girth of Tue 2 Feb?");
    bk_terminal_press(terminal, "x");
    ck_assert_int_eq(bk_stored_count("Ana Ruíz", "2027-02-02"), 2);
    bk_terminal_press(terminal, "- Enter");
    bk_must_show(terminal, "Taken away: waist girth of Ana Ruíz, 2 Feb.");
    ck_assert_int_eq(bk_stored_count("Ana Ruíz", "2027-02-02"), 1);
    bk_terminal_press(terminal, "Up -");
    bk_must_show(terminal, "Take away the sheet of Tue 2 Feb with its 1 measure?");
    bk_terminal_press(terminal, "Enter");
    bk_must_show(terminal, "Taken away: the sheet of Ana Ruíz, 2 Feb.");
    ck_assert_int_eq(bk_stored_count("Ana Ruíz", "2027-02-02"), 0);
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_sheet_gets_another_day_on_the_row_of_days)
{
    bk_terminal *terminal = open_measures(THREE_SHEETS);
    bk_terminal_press(terminal, "Up");
    bk_must_show(terminal, "Sheet of Tue 2 Feb: 2 measures, by Ida; 1 change marked, 0 doubts.");
    bk_terminal_press(terminal, "e Control-U");
    bk_terminal_send(terminal, "2027-02-01");
    bk_terminal_press(terminal, "Control-S");
    bk_must_show(terminal, "Changed: the sheet of Ana Ruíz, 2 Feb, is of 1 Feb.");
    must_stand_in_row(terminal, "Measure  ", "Mon 1 Feb");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(from_which_change_on_measures_are_marked_is_a_setting)
{
    bk_terminal *terminal = open_measures(THREE_SHEETS);
    bk_terminal_press(terminal, "m Control-U 4 Control-S");
    bk_must_show(terminal, "Set: measures are marked that change by more than 4 cm and 3 %.");
    bk_must_show(terminal, "marked: a change of more than 4 cm and 3 %");
    bk_must_not_show(terminal, "grew");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(who_was_never_measured_is_told_with_the_key_that_begins)
{
    bk_terminal *terminal = bk_cast_open(NULL);
    bk_terminal_press(terminal, "Down Down Enter");
    bk_must_show(terminal, "Chidi Okoro has never been measured.");
    bk_must_show(terminal, "Press + to take the first sheet");
    bk_terminal_press(terminal, "+");
    bk_must_show(terminal, "Measuring Chidi Okoro, Tue 2 Mar");
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("measures of a performer",
             each_sheet_is_a_column_the_newest_first_with_the_change_beside_each_value,
             older_sheets_than_there_is_room_for_come_with_right,
             a_doubt_is_marked_and_told_whole_under_the_cursor, enter_corrects_a_value_typed_as_people_type,
             a_correction_is_doubted_in_its_form, a_value_that_is_missing_on_a_sheet_is_added_there,
             a_newer_change_of_another_terminal_is_told_beside_ones_own,
             a_value_and_a_sheet_are_taken_away_after_asking, a_sheet_gets_another_day_on_the_row_of_days,
             from_which_change_on_measures_are_marked_is_a_setting,
             who_was_never_measured_is_told_with_the_key_that_begins)
