#include <stdlib.h>
#include <string.h>

#include "screen/show.h"
#include "screen/terminal.h"
#include "support/program.h"
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
    bk_terminal_press(terminal, "End");
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

START_TEST(where_nobody_is_yet_both_groups_can_be_filled)
{
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "H Down +");
    ck_assert(bk_terminal_shows(terminal, "New absence"));
    bk_terminal_press(terminal, "Escape Up e - +");
    ck_assert(bk_terminal_shows(terminal, "New person"));
    bk_terminal_press(terminal, "Mo Control-S");
    ck_assert(chosen_shows(terminal, "Mo"));
    ck_assert(!bk_terminal_shows(terminal, "nobody yet"));
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("hands screen", people_are_listed_with_their_hours_of_this_week,
             who_is_away_stands_below_and_what_is_over_last, the_cursor_does_not_stop_at_the_headings,
             plus_adds_to_the_group_under_the_cursor,
             an_absence_of_the_person_under_the_cursor_takes_one_key_and_its_days,
             where_nobody_is_yet_both_groups_can_be_filled)
