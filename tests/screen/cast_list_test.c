#include <stdlib.h>
#include <string.h>

#include "screen/measured.h"
#include "screen/show.h"
#include "support/program.h"
#include "support/testing.h"

// The Cast screen: performers and roles.

static void must_be_chosen(const bk_terminal *terminal, const char *text)
{
    const char *row = bk_terminal_row(terminal, bk_terminal_chosen(terminal));
    ck_assert_msg(strstr(row, text) != NULL, "\"%s\" is not chosen: %s", text, row);
}

static void must_stand_in_row(const bk_terminal *terminal, const char *of, const char *text)
{
    const char *row = bk_terminal_row(terminal, bk_terminal_find(terminal, of));
    ck_assert_msg(strstr(row, text) != NULL, "\"%s\" is missing: %s", text, row);
}

START_TEST(performers_tell_what_they_play_and_when_they_were_measured)
{
    bk_terminal *terminal = bk_cast_open("Ana Ruíz,2027-02-02,waist girth,70 cm,,\n"
                                         "Ana Ruíz,2027-02-02,hip girth,95 cm,,\n"
                                         "Bo Lindqvist,2026-01-10,waist girth,90 cm,,\n");
    must_stand_in_row(terminal, "Ana Ruíz", "Salt Queen");
    must_stand_in_row(terminal, "Ana Ruíz", "Tue 2 Feb        2 measures");
    must_stand_in_row(terminal, "Bo Lindqvist", "Sat 10 Jan 2026");
    must_stand_in_row(terminal, "Bo Lindqvist", "old");
    must_stand_in_row(terminal, "Chidi Okoro", "never measured");
    bk_must_show(terminal, "3 performers, 1 never measured; 4 roles, 1 not cast");
    bk_must_show(terminal, "Measured Tue 2 Feb, 2 measures.");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(doubts_about_the_newest_sheet_are_told)
{
    bk_terminal *terminal = bk_cast_open("Ana Ruíz,2027-02-02,waist girth,700 cm,,\n");
    must_stand_in_row(terminal, "Ana Ruíz", "1 doubt");
    bk_must_show(terminal, "1 doubt, told under Measures (Enter)");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(roles_tell_who_plays_and_covers_them_and_how_many_costumes_they_have)
{
    bk_show_import();
    bk_show_replace("roles.csv", "role,performer,cover\nSalt Queen,Ana Ruíz,Chidi Okoro\n"
                                 "Ferryman,Bo Lindqvist,\nClerk,Chidi Okoro,\nGhost,,\n");
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "C End");
    must_be_chosen(terminal, "Ghost");
    must_be_chosen(terminal, "not cast");
    must_be_chosen(terminal, "1 costume");
    bk_must_show(terminal, "Ghost is not cast");
    must_stand_in_row(terminal, "Chidi Okoro", "Salt Queen"); // as a cover
    bk_terminal_press(terminal, "Up Up Up");
    must_be_chosen(terminal, "Salt Queen");
    bk_must_show(terminal, "Salt Queen is played by Ana Ruíz; covered by Chidi Okoro.");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_plus_adds_a_performer_or_under_the_roles_a_role)
{
    bk_terminal *terminal = bk_cast_open(NULL);
    bk_terminal_press(terminal, "+");
    bk_must_show(terminal, "New performer");
    bk_terminal_send(terminal, "Dai Rees");
    bk_terminal_press(terminal, "Control-S");
    must_be_chosen(terminal, "Dai Rees");
    must_be_chosen(terminal, "never measured");
    bk_terminal_press(terminal, "End +");
    bk_must_show(terminal, "New role");
    bk_terminal_send(terminal, "Gull");
    bk_terminal_press(terminal, "Control-S");
    must_be_chosen(terminal, "Gull");
    must_be_chosen(terminal, "not cast");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(an_empty_cast_says_so_and_how_it_is_filled)
{
    bk_show_import();
    bk_show_rewrite("performers.csv", "performer\n");
    bk_show_rewrite("measures.csv", "performer,taken_on,measure,value\n");
    bk_show_rewrite("roles.csv", "role,performer\n");
    bk_show_rewrite("costumes.csv", "costume,role,title\n");
    bk_show_rewrite("pieces.csv", "piece,costumes,title\n");
    bk_show_rewrite("needs.csv", "piece,step,material,quantity\n");
    bk_show_replace("steps.csv", "piece,step,title,kind,minutes\n");
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "C");
    bk_must_show(terminal, "Nobody performs here yet: + adds a performer");
    bk_must_show(terminal, "No performer stands here yet: + adds one.");
    bk_terminal_press(terminal, "Down");
    bk_must_show(terminal, "No role stands here yet: + adds one.");
    bk_terminal_press(terminal, "+");
    bk_must_show(terminal, "New role");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(they_are_changed_moved_and_taken_away)
{
    bk_terminal *terminal = bk_cast_open(NULL);
    bk_terminal_press(terminal, "]");
    ck_assert_uint_eq(bk_terminal_find(terminal, "Ana Ruíz"), bk_terminal_find(terminal, "Bo Lindqvist") + 1);
    must_be_chosen(terminal, "Ana Ruíz");
    bk_terminal_press(terminal, "e");
    bk_must_show(terminal, "contact");
    bk_terminal_press(terminal, "Escape End Enter");
    bk_must_show(terminal, "played by");
    bk_terminal_press(terminal, "Escape Home -");
    bk_must_show(terminal, "Take away performer Bo Lindqvist?");
    bk_terminal_press(terminal, "Enter");
    bk_must_show(terminal, "2 performers");
    bk_terminal_press(terminal, "u");
    bk_must_show(terminal, "3 performers");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(the_cursor_begins_on_who_wears_the_costume_on_the_rail)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "/ gown Enter C");
    must_be_chosen(terminal, "Ana Ruíz");
    bk_terminal_press(terminal, "R Escape / ghost Enter C");
    must_be_chosen(terminal, "Ghost");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(contacts_do_not_stand_on_the_cast)
{
    bk_show_import();
    bk_show_replace("performers.csv", "performer,contact\nAna Ruíz,ana@stage.example\nBo Lindqvist,\n"
                                      "Chidi Okoro,\n");
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "C Home");
    bk_must_not_show(terminal, "example");
    bk_terminal_press(terminal, "e");
    bk_must_show(terminal, "ana@stage.example");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(to_others_than_the_maker_the_days_are_told_and_no_values)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(&(bk_terminal_options){.as = "director"});
    bk_terminal_press(terminal, "C Home");
    must_stand_in_row(terminal, "Ana Ruíz", "Sun 10 Jan");
    bk_terminal_press(terminal, "s");
    bk_must_show(terminal, "Measures are the maker's alone.");
    bk_terminal_press(terminal, "Enter");
    bk_must_show(terminal, "The values of measures are the maker's alone.");
    bk_must_not_show(terminal, "70");
    bk_terminal_press(terminal, "+ Enter e - m Up");
    bk_must_show(terminal, "The values of measures are the maker's alone.");
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("the cast", performers_tell_what_they_play_and_when_they_were_measured,
             doubts_about_the_newest_sheet_are_told,
             roles_tell_who_plays_and_covers_them_and_how_many_costumes_they_have,
             a_plus_adds_a_performer_or_under_the_roles_a_role, an_empty_cast_says_so_and_how_it_is_filled,
             they_are_changed_moved_and_taken_away, the_cursor_begins_on_who_wears_the_costume_on_the_rail,
             contacts_do_not_stand_on_the_cast, to_others_than_the_maker_the_days_are_told_and_no_values)
