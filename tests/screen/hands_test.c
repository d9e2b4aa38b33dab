#include <stdlib.h>
#include <string.h>

#include "screen/show.h"
#include "screen/terminal.h"
#include "support/program.h"
#include "support/shell.h"
#include "support/testing.h"

// Tuesday 2 March 2027: Ida is there three hours a day, and away from Thursday; Bo Lindqvist is a performer.
static bk_terminal *among_hands(void)
{
    bk_show_import();
    bk_show_rewrite("people.csv", "person,skills,mon,tue,wed,thu,note\n"
                                  "Ida,machine;hand,10:00-13:00,10:00-13:00,10:00-13:00,10:00-13:00,no dye\n"
                                  "Jo,hand,,,,,\n");
    bk_show_replace("away.csv", "who,from,to,reason\nBo Lindqvist,2027-02-01,2027-02-02,recording\n"
                                "Ida,2027-03-04,2027-03-09,exam\n");
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "H");
    return terminal;
}

static bool chosen_shows(const bk_terminal *terminal, const char *text)
{
    return strstr(bk_terminal_row(terminal, bk_terminal_chosen(terminal)), text) != NULL;
}

START_TEST(people_are_listed_with_their_hours_of_this_week)
{
    bk_terminal *terminal = among_hands();
    ck_assert(chosen_shows(terminal, "Ida"));
    ck_assert(chosen_shows(terminal, "machine, hand"));
    ck_assert(chosen_shows(terminal, "9 h"));
    ck_assert(bk_terminal_shows(terminal, "9 h of work this week, 6 h from today on"));
    ck_assert(bk_terminal_shows(terminal, "Mon to Thu 10:00-13:00"));
    ck_assert(bk_terminal_shows(terminal, "no dye"));
    bk_terminal_press(terminal, "Down");
    ck_assert(chosen_shows(terminal, "none"));
    ck_assert(bk_terminal_shows(terminal, "no hours yet: e enters them"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(who_is_away_stands_below_and_what_is_over_last)
{
    bk_terminal *terminal = among_hands();
    size_t coming = bk_terminal_find(terminal, "Thu 4 Mar to Tue 9 Mar");
    ck_assert_uint_gt(coming, bk_terminal_find(terminal, "Away"));
    ck_assert_uint_gt(bk_terminal_find(terminal, "Mon 1 Feb to Tue 2 Feb"), coming);
    bk_terminal_press(terminal, "End Up");
    ck_assert(chosen_shows(terminal, "Bo Lindqvist"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(the_cursor_does_not_stop_at_the_headings)
{
    bk_terminal *terminal = among_hands();
    bk_terminal_press(terminal, "Up Home");
    ck_assert(chosen_shows(terminal, "Ida"));
    ck_assert(bk_terminal_shows(terminal, "People"));
    bk_terminal_press(terminal, "Down Down");
    ck_assert(chosen_shows(terminal, "exam"));
    bk_terminal_press(terminal, "Up");
    ck_assert(chosen_shows(terminal, "Jo"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(plus_adds_to_the_group_under_the_cursor)
{
    bk_terminal *terminal = among_hands();
    bk_terminal_press(terminal, "+");
    ck_assert(bk_terminal_shows(terminal, "New person"));
    bk_terminal_press(terminal, "Escape Down Down +");
    ck_assert(bk_terminal_shows(terminal, "New absence"));
    bk_terminal_press(terminal, "Escape");
    ck_assert(chosen_shows(terminal, "exam"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(an_absence_of_the_person_under_the_cursor_takes_one_key_and_its_days)
{
    bk_terminal *terminal = among_hands();
    bk_terminal_press(terminal, "Down a 2027-03-11 Tab 2027-03-12 Control-S");
    ck_assert(chosen_shows(terminal, "Jo"));
    ck_assert(chosen_shows(terminal, "Thu 11 Mar to Fri 12 Mar"));
    ck_assert(chosen_shows(terminal, "2 days"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(where_nobody_is_yet_every_group_can_be_filled)
{
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "H Down +");
    ck_assert(bk_terminal_shows(terminal, "New absence"));
    bk_terminal_press(terminal, "Escape Up e - +");
    ck_assert(bk_terminal_shows(terminal, "New person"));
    bk_terminal_press(terminal, "Mo Control-S");
    ck_assert(chosen_shows(terminal, "Mo"));
    ck_assert(!bk_terminal_shows(terminal, "nobody yet"));
    bk_terminal_press(terminal, "End");
    ck_assert(chosen_shows(terminal, "none yet"));
    ck_assert(bk_terminal_shows(terminal, "+ enters what people here share"));
    bk_terminal_press(terminal, "+ Long Space table Tab cut Control-S");
    ck_assert(chosen_shows(terminal, "Long table"));
    ck_assert(!bk_terminal_shows(terminal, "none yet"));
    bk_terminal_close(terminal);
}
END_TEST

// ------------------------------------------------------------------------------------------------ equipment

static bk_terminal *among_equipment(void)
{
    bk_show_import();
    bk_show_rewrite("people.csv", "person,skills,mon\nIda,machine;hand,10:00-13:00\n");
    bk_show_replace("equipment.csv", "equipment,kinds,count\ncutting table,draft;cut,\ntreadle,machine,2\n");
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "H End");
    return terminal;
}

START_TEST(equipment_is_listed_with_its_kinds_and_how_many_there_are)
{
    bk_terminal *terminal = among_equipment();
    ck_assert_uint_gt(bk_terminal_find(terminal, "cutting table"), bk_terminal_find(terminal, "Equipment"));
    ck_assert_uint_gt(bk_terminal_find(terminal, "Equipment"), bk_terminal_find(terminal, "Away"));
    ck_assert(chosen_shows(terminal, "treadle"));
    ck_assert(chosen_shows(terminal, "2 of them"));
    ck_assert(bk_terminal_shows(terminal, "There are 2; a step of such a kind occupies one of them while"));
    bk_terminal_press(terminal, "Up");
    ck_assert(chosen_shows(terminal, "draft, cut"));
    ck_assert(chosen_shows(terminal, "one"));
    ck_assert(bk_terminal_shows(terminal, "There is one; a step of such a kind occupies it while"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(equipment_is_added_changed_taken_away_and_undone_by_the_keys_of_the_screen)
{
    bk_terminal *terminal = among_equipment();
    bk_terminal_press(terminal, "+");
    ck_assert(bk_terminal_shows(terminal, "New equipment"));
    bk_terminal_press(terminal, "Dye Space room Tab dye Control-S");
    ck_assert(chosen_shows(terminal, "Dye room"));
    bk_terminal_press(terminal, "e Tab Tab 3 Control-S");
    ck_assert(chosen_shows(terminal, "3 of them"));
    bk_terminal_press(terminal, "- Enter");
    ck_assert(!bk_terminal_shows(terminal, "3 of them"));
    bk_terminal_press(terminal, "u");
    ck_assert(bk_terminal_shows(terminal, "3 of them"));
    bk_terminal_press(terminal, "u u");
    ck_assert_str_eq(bk_ask("SELECT name FROM equipment ORDER BY position"), "cutting table\ntreadle");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(equipment_moves_in_its_group_and_people_stay_in_theirs)
{
    bk_terminal *terminal = among_equipment();
    bk_terminal_press(terminal, "[");
    ck_assert(chosen_shows(terminal, "2 of them"));
    ck_assert_str_eq(bk_ask("SELECT name FROM equipment ORDER BY position"), "treadle\ncutting table");
    bk_terminal_press(terminal, "]");
    ck_assert_str_eq(bk_ask("SELECT name FROM equipment ORDER BY position"), "cutting table\ntreadle");
    bk_terminal_press(terminal, "Home [");
    ck_assert(bk_terminal_shows(terminal, "These stand in an order of their own and are not moved."));
    bk_terminal_press(terminal, "+ Mo Control-S");
    ck_assert(chosen_shows(terminal, "Mo"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(equipment_is_never_offered_as_somebody_who_is_away)
{
    bk_terminal *terminal = among_equipment();
    bk_terminal_press(terminal, "a");
    ck_assert(bk_terminal_shows(terminal, "New absence"));
    ck_assert(!bk_terminal_shows(terminal, "treadle"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_kind_that_is_none_is_told_in_the_form)
{
    bk_terminal *terminal = among_equipment();
    bk_terminal_press(terminal, "+ Loom Tab weave Control-S");
    ck_assert(bk_terminal_shows(terminal, "New equipment"));
    ck_assert(bk_terminal_shows(terminal, "weave"));
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM equipment"), "2");
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("hands screen", people_are_listed_with_their_hours_of_this_week,
             who_is_away_stands_below_and_what_is_over_last, the_cursor_does_not_stop_at_the_headings,
             plus_adds_to_the_group_under_the_cursor,
             an_absence_of_the_person_under_the_cursor_takes_one_key_and_its_days,
             where_nobody_is_yet_every_group_can_be_filled,
             equipment_is_listed_with_its_kinds_and_how_many_there_are,
             equipment_is_added_changed_taken_away_and_undone_by_the_keys_of_the_screen,
             equipment_moves_in_its_group_and_people_stay_in_theirs,
             equipment_is_never_offered_as_somebody_who_is_away, a_kind_that_is_none_is_told_in_the_form)
