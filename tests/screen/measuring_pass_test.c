#include <string.h>

#include "screen/measured.h"
#include "screen/show.h"
#include "support/testing.h"

// Taking a sheet in one pass.

// Thirty measures of one body, in the order a sheet is taken.
static const char *const thirty[] = {
    "168", "56", "34", "38", "12.5", "39", "35", "33",   "92", "92",   "78",   "74",   "88",  "98",  "42",
    "29",  "26", "16", "18", "58",   "75", "41", "44.5", "27", "18.5", "20.5", "60.5", "104", "143", "105",
};

enum { THIRTY = sizeof thirty / sizeof thirty[0], MOST_BESIDE = 5 };

// Keys beside the values and their Enters.
static void press_counted(bk_terminal *terminal, const char *key, size_t *count)
{
    bk_terminal_press(terminal, key);
    *count += 1;
}

START_TEST(thirty_measures_take_their_values_and_at_most_five_keys_more)
{
    size_t beside = 0;
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "End Up Up"); // the Clerk's coat on the Rail, who is Chidi Okoro
    press_counted(terminal, "C", &beside);
    press_counted(terminal, "s", &beside);
    bk_must_show(terminal, "Measuring Chidi Okoro, Tue 2 Mar");
    bk_type_values(terminal, thirty, THIRTY);
    bk_must_show(terminal, "30 measures typed");
    press_counted(terminal, "Control-S", &beside);
    if (!bk_terminal_shows(terminal, "Measured: "))
        press_counted(terminal, "Enter", &beside);
    bk_must_show(terminal, "Measured: Chidi Okoro, 30 measures");
    ck_assert_uint_le(beside, MOST_BESIDE);
    ck_assert_int_eq(bk_stored_count("Chidi Okoro", "2027-03-02"), THIRTY);
    ck_assert_int_eq(bk_stored_measure("Chidi Okoro", "2027-03-02", "height"), 1680000);
    ck_assert_int_eq(bk_stored_measure("Chidi Okoro", "2027-03-02", "outside leg"), 1050000);
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(an_empty_enter_passes_a_measure_over_and_up_goes_back_to_mend)
{
    bk_terminal *terminal = bk_cast_open(NULL);
    bk_terminal_press(terminal, "s");
    bk_must_show(terminal, "Enter pass over");
    TYPE_VALUES(terminal, "165", "", "33");
    bk_terminal_press(terminal, "Up Backspace 4 Enter Control-S");
    bk_must_show(terminal, "Measured: Ana Ruíz, 2 measures");
    ck_assert_int_eq(bk_stored_measure("Ana Ruíz", "2027-03-02", "neck girth"), 340000);
    ck_assert_int_eq(bk_stored_measure("Ana Ruíz", "2027-03-02", "head girth"), 0);
    bk_terminal_press(terminal, "u");
    ck_assert_int_eq(bk_stored_count("Ana Ruíz", "2027-03-02"), 0);
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(how_the_measure_at_hand_is_taken_stands_below_with_the_standards_term)
{
    bk_terminal *terminal = bk_cast_open(NULL);
    bk_terminal_press(terminal, "s");
    bk_must_show(terminal, "barefoot, heels to the wall, from the crown straight down to the floor");
    bk_must_show(terminal, "ISO 8559-1: stature (5.1.1)");
    bk_terminal_press(terminal, "Enter");
    bk_must_show(terminal, "level with mid-forehead");
    bk_must_not_show(terminal, "ISO 8559-1");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(the_last_value_and_the_change_stand_beside_what_is_typed)
{
    bk_terminal *terminal =
        bk_cast_open("Ana Ruíz,2026-11-02,height,165 cm,,\nAna Ruíz,2027-01-10,height,166 cm,,\n");
    bk_terminal_press(terminal, "s");
    bk_must_show(terminal, "last 166 cm on Sun 10 Jan");
    TYPE_VALUES(terminal, "167.5");
    const char *row = bk_terminal_row(terminal, bk_terminal_find(terminal, "height"));
    ck_assert_ptr_nonnull(strstr(row, "166    +1.5"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(the_sheet_can_be_of_another_day_and_tells_who_measured_over_what)
{
    bk_terminal *terminal = bk_cast_open(NULL);
    bk_terminal_press(terminal, "s Up Control-U");
    bk_terminal_send(terminal, "thin shirt");
    bk_terminal_press(terminal, "Up Control-U I d a Up Control-U - 1 Enter");
    bk_must_show(terminal, "Measuring Ana Ruíz, Mon 1 Mar");
    bk_terminal_press(terminal, "Enter Enter 1 6 8 Control-S");
    bk_must_show(terminal, "Measured: Ana Ruíz, 1 measure");
    ck_assert_int_eq(bk_stored_measure("Ana Ruíz", "2027-03-01", "height"), 1680000);
    bk_terminal_press(terminal, "Enter");
    bk_must_show(terminal, "over thin shirt, by Ida");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_day_to_come_is_told_at_once)
{
    bk_terminal *terminal = bk_cast_open(NULL);
    bk_terminal_press(terminal, "s Up Up Up Control-U + 3 Enter");
    bk_must_show(terminal, "A sheet cannot be taken on a day to come.");
    bk_terminal_press(terminal, "Control-U w e d Enter");
    bk_must_show(terminal, "Measuring Ana Ruíz, Wed 24 Feb");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_measure_of_the_workrooms_own_is_added_at_the_end)
{
    bk_terminal *terminal = bk_cast_open(NULL);
    bk_terminal_press(terminal, "s PageDown PageDown PageDown");
    bk_must_show(terminal, "the name of a measure that is not in the list");
    bk_terminal_send(terminal, "crown of the hat");
    bk_terminal_press(terminal, "Enter");
    TYPE_VALUES(terminal, "17");
    bk_terminal_press(terminal, "Enter");
    bk_must_show(terminal, "Measured: Ana Ruíz, 1 measure");
    ck_assert_int_eq(bk_stored_measure("Ana Ruíz", "2027-03-02", "crown of the hat"), 170000);
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(the_name_of_a_measure_that_is_in_the_list_finds_it_there)
{
    bk_terminal *terminal = bk_cast_open(NULL);
    bk_terminal_press(terminal, "s PageDown PageDown PageDown");
    bk_terminal_send(terminal, "Waist Girth");
    bk_terminal_press(terminal, "Enter");
    bk_must_show(terminal, "> waist girth");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_stands_on_usual_sheets_is_asked_first)
{
    bk_terminal *terminal = bk_cast_open("Bo Lindqvist,2027-01-10,neck girth,38 cm,,\n"
                                         "Bo Lindqvist,2027-01-10,shoulder length,13 cm,,\n"
                                         "Bo Lindqvist,2027-01-10,back width,38 cm,,\n"
                                         "Bo Lindqvist,2027-01-10,chest girth,98 cm,,\n"
                                         "Bo Lindqvist,2027-01-10,waist girth,82 cm,,\n"
                                         "Bo Lindqvist,2027-01-10,hip girth,98 cm,,\n"
                                         "Bo Lindqvist,2027-01-10,wrist girth,17 cm,,\n"
                                         "Bo Lindqvist,2027-01-10,arm length,62 cm,,\n"
                                         "Bo Lindqvist,2027-01-10,nape to waist,45 cm,,\n"
                                         "Bo Lindqvist,2027-01-10,outside leg,107 cm,,\n"
                                         "Bo Lindqvist,2027-01-10,inside leg,80 cm,,\n"
                                         "Bo Lindqvist,2027-01-10,hat size,19 cm,,\n");
    bk_terminal_press(terminal, "Down Down s");
    size_t first = bk_terminal_find(terminal, "neck girth");
    ck_assert_uint_eq(bk_terminal_find(terminal, "> neck girth"), first);
    ck_assert_uint_eq(bk_terminal_find(terminal, "shoulder length"), first + 1);
    ck_assert_uint_eq(bk_terminal_find(terminal, "hat size"), first + 11);
    ck_assert_uint_eq(bk_terminal_find(terminal, "Not on the sheets so far"), first + 12);
    ck_assert_uint_eq(bk_terminal_find(terminal, "  height"), first + 13);
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_open_steps_ask_for_is_marked_until_it_is_typed)
{
    bk_show_import();
    bk_show_rewrite("needs.csv", "piece,step,material,quantity\n");
    bk_show_replace("steps.csv",
                    "piece,step,title,kind,minutes,measures\n"
                    "S1,cut,Cut the suit,cut,80,height;crown of the hat\nG1,cut,Cut,cut,60,head girth\n");
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "C Home Down Down s");
    bk_must_show(terminal, "Measuring Chidi Okoro");
    bk_must_show(terminal, "0 measures typed, 2 asked for");
    ck_assert_ptr_nonnull(
        strstr(bk_terminal_row(terminal, bk_terminal_find(terminal, "> height")), "asked for"));
    TYPE_VALUES(terminal, "168");
    bk_must_show(terminal, "1 measure typed, 1 asked for");
    ck_assert_ptr_null(strstr(bk_terminal_row(terminal, bk_terminal_find(terminal, "height")), "asked for"));
    bk_terminal_press(terminal, "PageDown PageDown PageDown");
    bk_must_show(terminal, "crown of the hat");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_measure_that_was_named_last_is_not_lost_when_the_sheet_is_saved)
{
    bk_terminal *terminal = bk_cast_open(NULL);
    bk_terminal_press(terminal, "s 1 6 8 PageDown PageDown PageDown");
    bk_terminal_send(terminal, "hat size");
    bk_terminal_press(terminal, "Control-S");
    bk_must_show(terminal, "> hat size");
    bk_must_show(terminal, "This measure has no value yet");
    ck_assert_int_eq(bk_stored_count("Ana Ruíz", "2027-03-02"), 0);
    bk_terminal_press(terminal, "1 7 Control-S");
    bk_must_show(terminal, "Measured: Ana Ruíz, 2 measures");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(escape_asks_where_something_was_typed)
{
    bk_terminal *terminal = bk_cast_open(NULL);
    bk_terminal_press(terminal, "s Escape");
    bk_must_show(terminal, "Cast of The Salt Road");
    bk_terminal_press(terminal, "s Up");
    bk_terminal_send(terminal, "corset");
    bk_terminal_press(terminal, "Escape");
    bk_must_show(terminal, "Leave without saving?   y yes   Ctrl-S save   any other key: back to the sheet");
    bk_terminal_press(terminal, "y s 1 6 8 Escape");
    bk_must_show(terminal, "Leave without saving?");
    bk_terminal_press(terminal, "Enter Enter 5 6 Escape");
    bk_must_show(terminal, "Leave without saving?");
    bk_terminal_press(terminal, "y");
    bk_must_show(terminal, "Cast of The Salt Road");
    ck_assert_int_eq(bk_stored_count("Ana Ruíz", "2027-03-02"), 0);
    bk_terminal_press(terminal, "s 1 6 8 Escape Control-S");
    bk_must_show(terminal, "Measured: Ana Ruíz, 1 measure");
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("taking a sheet", thirty_measures_take_their_values_and_at_most_five_keys_more,
             an_empty_enter_passes_a_measure_over_and_up_goes_back_to_mend,
             how_the_measure_at_hand_is_taken_stands_below_with_the_standards_term,
             the_last_value_and_the_change_stand_beside_what_is_typed,
             the_sheet_can_be_of_another_day_and_tells_who_measured_over_what, a_day_to_come_is_told_at_once,
             a_measure_of_the_workrooms_own_is_added_at_the_end,
             the_name_of_a_measure_that_is_in_the_list_finds_it_there,
             what_stands_on_usual_sheets_is_asked_first, what_open_steps_ask_for_is_marked_until_it_is_typed,
             a_measure_that_was_named_last_is_not_lost_when_the_sheet_is_saved,
             escape_asks_where_something_was_typed)
