#include <stdlib.h>
#include <string.h>

#include "screen/measured.h"
#include "screen/show.h"
#include "support/program.h"
#include "support/testing.h"

// What people type for a length, and what is said of it.

#define TODAY "2027-03-02"

START_TEST(lengths_are_read_as_people_type_them)
{
    bk_terminal *terminal = bk_cast_open(NULL);
    bk_terminal_press(terminal, "s");
    TYPE_VALUES(terminal, "1m64", "22 1/2 in", "34,5", "14-1/2\"", "12½", "390mm");
    bk_must_show(terminal, "= 164");
    bk_terminal_press(terminal, "Control-S");
    if (!bk_terminal_shows(terminal, "Measured: "))
        bk_terminal_press(terminal, "Enter");
    ck_assert_int_eq(bk_stored_measure("Ana Ruíz", TODAY, "height"), 1640000);
    ck_assert_int_eq(bk_stored_measure("Ana Ruíz", TODAY, "head girth"), 571500);
    ck_assert_int_eq(bk_stored_measure("Ana Ruíz", TODAY, "neck girth"), 345000);
    ck_assert_int_eq(bk_stored_measure("Ana Ruíz", TODAY, "neck base girth"), 368300);
    ck_assert_int_eq(bk_stored_measure("Ana Ruíz", TODAY, "shoulder length"), 125000);
    ck_assert_int_eq(bk_stored_measure("Ana Ruíz", TODAY, "shoulder width"), 390000);
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_production_in_inches_reads_and_shows_inches_and_fractions)
{
    bk_show_import();
    bk_show_rewrite("measures.csv", "performer,taken_on,measure,value\nAna Ruíz,2027-01-10,height,65 in\n");
    bk_show_replace("production.csv", "production,opens,unit\nThe Salt Road,2027-03-19,in\n");
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "C Home s");
    bk_must_show(terminal, "last 65 in on Sun 10 Jan");
    TYPE_VALUES(terminal, "5' 5 3/8\"", "22-3/8", "13 1/2");
    bk_must_show(terminal, "= 65 3/8");
    bk_must_show(terminal, "+3/8");
    bk_must_show(terminal, "= 22 3/8");
    bk_terminal_press(terminal, "Control-S");
    ck_assert_int_eq(bk_stored_measure("Ana Ruíz", TODAY, "height"), 1660525);
    ck_assert_int_eq(bk_stored_measure("Ana Ruíz", TODAY, "head girth"), 568325);
    bk_terminal_press(terminal, "Enter");
    bk_must_show(terminal, "in inches");
    const char *row = bk_terminal_row(terminal, bk_terminal_find(terminal, "height"));
    ck_assert_ptr_nonnull(strstr(row, "65 3/8  +3/8"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_is_no_length_is_told_and_stays_until_a_second_enter)
{
    bk_terminal *terminal = bk_cast_open(NULL);
    bk_terminal_press(terminal, "s");
    TYPE_VALUES(terminal, "16o");
    bk_must_show(terminal, "\"16o\" is no length");
    bk_must_show(terminal, "> height");
    bk_terminal_press(terminal, "Enter");
    bk_must_show(terminal, "> head girth");
    bk_must_show(terminal, "no length");
    TYPE_VALUES(terminal, "56");
    bk_terminal_press(terminal, "Control-S");
    bk_must_show(terminal, "> height");
    ck_assert_int_eq(bk_stored_count("Ana Ruíz", TODAY), 0);
    bk_terminal_press(terminal, "Backspace 0 Control-S");
    ck_assert_int_eq(bk_stored_measure("Ana Ruíz", TODAY, "height"), 1600000);
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_value_is_doubted_in_a_sentence_when_it_is_left_and_never_refused)
{
    bk_terminal *terminal = bk_cast_open(NULL);
    bk_terminal_press(terminal, "s");
    TYPE_VALUES(terminal, "168", "56", "365");
    bk_must_show(terminal, "neck girth: 365 cm looks like a decimal point left out");
    bk_must_show(terminal, "doubtful");
    bk_must_show(terminal, "> neck base girth");
    bk_terminal_press(terminal, "Up");
    bk_must_show(terminal, "365 cm looks like a decimal point left out");
    bk_terminal_press(terminal, "Backspace . 5 Enter");
    bk_must_not_show(terminal, "looks like");
    bk_must_not_show(terminal, "doubtful");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(the_doubts_of_the_whole_sheet_are_told_before_it_is_saved)
{
    bk_terminal *terminal = bk_cast_open(NULL);
    bk_terminal_press(terminal, "s");
    TYPE_VALUES(terminal, "168", "65", "365");
    bk_terminal_press(terminal, "Control-S");
    bk_must_show(terminal, "before the sheet is saved");
    bk_must_show(terminal, "> head girth");
    bk_must_show(terminal, "65 cm looks like two digits swapped: 56 cm");
    bk_must_show(terminal, "365 cm looks like a decimal point left out");
    ck_assert_int_eq(bk_stored_count("Ana Ruíz", TODAY), 0);
    bk_terminal_press(terminal, "Down Escape");
    bk_must_show(terminal, "> neck girth");
    bk_terminal_press(terminal, "Control-S Enter");
    bk_must_show(terminal, "Measured: Ana Ruíz, 3 measures");
    ck_assert_int_eq(bk_stored_measure("Ana Ruíz", TODAY, "neck girth"), 3650000);
    bk_terminal_press(terminal, "Enter");
    bk_must_show(terminal, "365?");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_stands_on_the_sheet_of_that_day_is_told_before_it_is_corrected)
{
    bk_terminal *terminal = bk_cast_open(NULL);
    bk_terminal_press(terminal, "s");
    TYPE_VALUES(terminal, "168");
    bk_program_must(bodkin("measure", "Ana Ruíz", "height=169"), EXIT_SUCCESS);
    bk_terminal_press(terminal, "Control-S");
    bk_must_show(terminal, "It stands as 169 cm on the sheet of Tue 2 Mar; saving makes it 168 cm.");
    bk_terminal_press(terminal, "Enter");
    bk_must_show(terminal, "Corrected: height of Ana Ruíz, 2 Mar");
    ck_assert_int_eq(bk_stored_measure("Ana Ruíz", TODAY, "height"), 1680000);
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("what is typed for a measure", lengths_are_read_as_people_type_them,
             a_production_in_inches_reads_and_shows_inches_and_fractions,
             what_is_no_length_is_told_and_stays_until_a_second_enter,
             a_value_is_doubted_in_a_sentence_when_it_is_left_and_never_refused,
             the_doubts_of_the_whole_sheet_are_told_before_it_is_saved,
             what_stands_on_the_sheet_of_that_day_is_told_before_it_is_corrected)
