#include <stdio.h>

#include "screen/plan_show.h"
#include "screen/seen.h"
#include "screen/show.h"
#include "screen/terminal.h"
#include "support/program.h"
#include "support/shell.h"
#include "support/testing.h"

// Suppose: what would come of it, and the way to keep or to forget it.

enum { COMMAND_ROOM = 512 };

// Everything that stands in the store, or all of it but the daybook.
static const char *rows_of_store(bool with_daybook)
{
    char command[COMMAND_ROOM];
    snprintf(command, sizeof command, "sqlite3 -readonly '%s' .dump | grep '^INSERT' | grep -v '%s'",
             bk_program_store(), with_daybook ? "nothing of it" : "INTO daybook\\|INTO sqlite_sequence");
    return bk_shell(command);
}

static const char *ask(const char *sql)
{
    char command[COMMAND_ROOM];
    snprintf(command, sizeof command, "sqlite3 -readonly '%s' \"%s\"", bk_program_store(), sql);
    return bk_shell(command);
}

// The gown, 1A, is due today and takes 260 minutes; Ida, the only one who can, has 180 today.
static bk_terminal *supposing_on(const bk_terminal_options *options)
{
    bk_plan_show_import();
    bk_show_replace("costumes.csv", "costume,role,title,due\n1A,Salt Queen,Coronation gown,2027-03-02\n"
                                    "1B,Salt Queen,Travelling cloak,2027-03-16\n2A,Ferryman,Oilskin,\n"
                                    "2B,Ferryman,Linen shirt,\n2C,Ferryman,Boots,\n3A,Clerk,Inky suit,\n"
                                    "3B,Clerk,Sunday coat,\n4A,Ghost,Shroud,\n");
    bk_terminal *terminal = bk_terminal_start(options);
    bk_terminal_press(terminal, "S");
    return terminal;
}

static bk_terminal *supposing(void)
{
    return supposing_on(&(bk_terminal_options){.rows = 40, .columns = 100});
}

#define HELPER "+ h Nel Enter today Enter 8-19 Enter cut;machine Enter"

// ------------------------------------------------------------------------------------------ what comes of it

START_TEST(it_says_what_it_is_for_and_which_key_begins)
{
    bk_terminal *terminal = supposing();
    assert_shows(terminal, "Suppose: The Salt Road");
    assert_shows(terminal, "What if?");
    assert_shows(terminal, "Nothing is changed by it until you keep it");
    bk_terminal_press(terminal, "+");
    assert_shows(terminal, "h or Enter helper");
    assert_shows(terminal, "x drop one");
    bk_terminal_press(terminal, "Escape");
    assert_hides(terminal, "h or Enter helper");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_helper_makes_a_late_costume_come_right)
{
    bk_terminal *terminal = supposing();
    bk_terminal_press(terminal, HELPER);
    assert_row_has(terminal, "Nel: cut, machine", "Tue 2 Mar");
    assert_row_has(terminal, "Nel: cut, machine", "08:00-19:00");
    assert_shows(terminal, "Come right: 1");
    assert_row_has(terminal, "1A      Coronation gown", "1 late");
    assert_row_has(terminal, "1A      Coronation gown", "0 days");
    ck_assert_uint_gt(bk_terminal_find(terminal, "1A      Coronation gown"),
                      bk_terminal_find(terminal, "Come right: 1"));
    assert_row_has(terminal, "all ", "late; then ");
    bk_terminal_press(terminal, "Down Down");
    assert_shows(terminal, "Now: Expected Wed 3 Mar, 1 working day late");
    assert_shows(terminal, "Then: Expected today, just in time");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(an_earlier_opening_makes_what_is_due_then_worse)
{
    bk_terminal *terminal = supposing();
    bk_terminal_press(terminal, "+ d opening Enter 3 Space mar Enter");
    assert_row_has(terminal, "date ", "Fri 19 Mar");
    assert_row_has(terminal, "date ", "Wed 3 Mar");
    assert_shows(terminal, "Get worse");
    size_t worse = bk_terminal_find(terminal, "Get worse");
    ck_assert_uint_gt(bk_terminal_find(terminal, "2B      Linen shirt"), worse);
    assert_row_has(terminal, "1B      Travelling cloak", "days");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_later_due_day_makes_a_costume_come_right)
{
    bk_terminal *terminal = supposing();
    bk_terminal_press(terminal, "+ c 1A Enter fri Enter");
    assert_row_has(terminal, "due ", "1A Coronation gown");
    assert_row_has(terminal, "due ", "Fri 5 Mar");
    assert_shows(terminal, "Come right: 1");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_dropped_costume_is_not_made)
{
    bk_terminal *terminal = supposing();
    bk_terminal_press(terminal, "+ x 1A Enter");
    assert_row_has(terminal, "drop ", "1A Coronation gown");
    assert_shows(terminal, "Not made: 1");
    assert_row_has(terminal, "1A      Coronation gown", "dropped");
    assert_shows(terminal, "1 late; then none late");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(it_fits_the_smallest_terminal_without_colours)
{
    bk_terminal *terminal = supposing_on(&(bk_terminal_options){.no_colour = true});
    bk_terminal_press(terminal, HELPER);
    assert_shows(terminal, "Supposed: Nel helps Tue 2 Mar 08:00-19:00: cut, machine.");
    bk_terminal_press(terminal, "Down");
    assert_row_has(terminal, "Nel: cut, machine", "Tue 2 Mar 08:00-19:00");
    assert_row_has(terminal, "1A      Coronation gown", "1 late");
    assert_shows(terminal, "Nothing is changed until you keep it (k).");
    assert_shows(terminal, "keep all");
    assert_shows(terminal, "forget all");
    bk_terminal_press(terminal, "+");
    assert_shows(terminal, "Escape nothing");
    bk_terminal_close(terminal);
}
END_TEST

// -------------------------------------------------------------------------------------------- what is refused

START_TEST(what_cannot_be_supposed_is_said_in_the_form)
{
    bk_terminal *terminal = supposing();
    bk_terminal_press(terminal, "+ h Ida Enter today Control-S");
    assert_shows(terminal, "Ida is one of the workroom's people");
    bk_terminal_press(terminal, "Control-U Nel Enter Control-U yesterday Control-S");
    assert_shows(terminal, "That day is past");
    bk_terminal_close(terminal);
}
END_TEST

// ----------------------------------------------------------------------------------------- nothing is changed

START_TEST(nothing_of_the_store_is_changed_and_it_stays_while_the_program_runs)
{
    bk_terminal *terminal = supposing();
    const char *before = rows_of_store(true);
    bk_terminal_press(terminal, HELPER);
    bk_terminal_press(terminal, "+ d dress Enter fri Enter + x 1B Enter");
    bk_terminal_press(terminal, "Escape");
    assert_hides(terminal, "Nel");
    bk_terminal_press(terminal, "B S");
    assert_shows(terminal, "Nel: cut, machine");
    assert_row_has(terminal, "drop ", "1B Travelling cloak");
    ck_assert_str_eq(rows_of_store(true), before);
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(one_is_changed_and_one_is_taken_off)
{
    bk_terminal *terminal = supposing();
    bk_terminal_press(terminal, HELPER);
    bk_terminal_press(terminal, "+ x 1B Enter Up");
    bk_terminal_press(terminal, "e Down tomorrow Control-S");
    assert_row_has(terminal, "Nel: cut, machine", "Wed 3 Mar");
    bk_terminal_press(terminal, "-");
    assert_shows(terminal, "No longer suppose this: Nel helps Wed 3 Mar 08:00-19:00: cut, machine?");
    bk_terminal_press(terminal, "n");
    assert_shows(terminal, "Nel: cut, machine");
    bk_terminal_press(terminal, "- Enter");
    assert_hides(terminal, "Nel");
    assert_row_has(terminal, "drop ", "1B Travelling cloak");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(another_fate_of_the_same_takes_the_place_of_the_one_before)
{
    bk_terminal *terminal = supposing();
    bk_terminal_press(terminal, "+ c 1A Enter fri Enter + x 1A Enter");
    assert_shows(terminal, "drop ");
    assert_hides(terminal, "Fri 5 Mar");
    bk_terminal_press(terminal, "+ d dress Enter fri Enter + d dress Enter mon Enter");
    assert_hides(terminal, "Fri 5 Mar");
    assert_row_has(terminal, "date ", "Mon 8 Mar");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(all_is_forgotten_when_asked_and_leaving_asks_too)
{
    bk_terminal *terminal = supposing();
    bk_terminal_press(terminal, HELPER);
    bk_terminal_press(terminal, "q");
    assert_shows(terminal, "What you suppose (S) is not kept");
    bk_terminal_press(terminal, "n f");
    assert_shows(terminal, "Forget the one thing that you suppose?");
    bk_terminal_press(terminal, "n");
    assert_shows(terminal, "Nel: cut, machine");
    bk_terminal_press(terminal, "f Enter");
    assert_hides(terminal, "Nel");
    assert_shows(terminal, "What if?");
    ck_assert_int_eq(bk_terminal_end(terminal, "q"), 0);
    bk_terminal_close(terminal);
}
END_TEST

// ------------------------------------------------------------------------------------------------------ kept

START_TEST(kept_it_is_one_change_and_undo_takes_it_back)
{
    bk_terminal *terminal = supposing();
    const char *before = rows_of_store(false);
    const char *entries = ask("SELECT count(*) + 1 FROM daybook");
    bk_terminal_press(terminal, HELPER);
    bk_terminal_press(terminal, "+ d dress Enter fri Enter + x 1B Enter k");
    assert_shows(terminal, "Keep all 3 things that you suppose? It changes the workroom");
    ck_assert_str_eq(rows_of_store(false), before);
    bk_terminal_press(terminal, "Enter");
    assert_shows(terminal, "Kept what was supposed: Nel helps Tue 2 Mar 08:00 to 19:00; dress moved from");
    assert_shows(terminal, "What if?");
    ck_assert_str_eq(ask("SELECT count(*) FROM daybook"), entries);
    ck_assert_str_eq(ask("SELECT skills FROM person WHERE name = 'Nel'"), "cut;machine");
    ck_assert_str_eq(ask("SELECT count(*) FROM costume WHERE number = '1B'"), "0");
    bk_terminal_press(terminal, "u");
    assert_shows(terminal, "Undone: Kept what was supposed");
    ck_assert_str_eq(rows_of_store(false), before);
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_can_no_longer_be_is_refused_and_stays_supposed)
{
    bk_terminal *terminal = supposing();
    bk_terminal_press(terminal, HELPER);
    bk_terminal_press(terminal, "H + Nel Control-S S");
    bk_terminal_press(terminal, "k Enter");
    assert_shows(terminal, "There is a person called \"Nel\" already.");
    bk_terminal_press(terminal, "Escape S");
    assert_shows(terminal, "Nel: cut, machine");
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("suppose", it_says_what_it_is_for_and_which_key_begins, a_helper_makes_a_late_costume_come_right,
             an_earlier_opening_makes_what_is_due_then_worse, a_later_due_day_makes_a_costume_come_right,
             a_dropped_costume_is_not_made, it_fits_the_smallest_terminal_without_colours,
             what_cannot_be_supposed_is_said_in_the_form,
             nothing_of_the_store_is_changed_and_it_stays_while_the_program_runs,
             one_is_changed_and_one_is_taken_off, another_fate_of_the_same_takes_the_place_of_the_one_before,
             all_is_forgotten_when_asked_and_leaving_asks_too, kept_it_is_one_change_and_undo_takes_it_back,
             what_can_no_longer_be_is_refused_and_stays_supposed)
