#include <signal.h>
#include <string.h>
#include <sys/wait.h>

#include "screen/seen.h"
#include "screen/show.h"
#include "screen/terminal.h"
#include "support/program.h"
#include "support/testing.h"

// The Rail with the days that are reckoned, and the reckoning itself, which goes on beside the keys.

// More than any of these tests waits for.
#define FOR_EVER "1000000"

static const char *const ida = "person,skills,mon,tue,wed,thu,fri\n"
                               "Ida,cut;machine;fit;hand;draft;craft,10:00-17:00,10:00-17:00,10:00-17:00,"
                               "10:00-17:00,10:00-17:00\n";

static void import_with_ida(void)
{
    bk_show_import();
    bk_show_replace("people.csv", ida);
}

static bk_terminal *open_rail(void)
{
    import_with_ida();
    return bk_terminal_start(NULL);
}

static void import_long_with_people(void)
{
    bk_long_show_import(200);
    bk_test_write_text(bk_test_path("long/people.csv"),
                       "person,skills,mon,tue,wed,thu,fri\n"
                       "Ida,machine;press,10:00-17:00,10:00-17:00,10:00-17:00,10:00-17:00,10:00-17:00\n"
                       "Bo,machine,10:00-13:00,10:00-13:00,10:00-13:00,10:00-13:00,10:00-13:00\n");
    bk_program_must(bodkin("import", bk_test_path("long"), "--replace"), 0);
}

// -------------------------------------------------------------------------------------------- what it shows

START_TEST(a_line_tells_the_day_it_is_expected_the_days_in_hand_and_the_odds)
{
    bk_terminal *terminal = open_rail();
    assert_row_has(terminal, "No Role", "Expected  In hand  Odds");
    assert_row_has(terminal, "1A Salt Queen", "waiting: materials  Tue 9 Mar   5 days");
    assert_row_has(terminal, "1B Salt Queen", "Tue 2 Mar  10 days");
    assert_row_has(terminal, "1B Salt Queen", "%");
    assert_row_has(terminal, "2A Ferryman", "Tue 2 Mar   1 late  <1 %");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_wide_terminal_tells_the_due_day_and_how_urgent_it_is_too)
{
    import_with_ida();
    bk_terminal *terminal = bk_terminal_start(&(bk_terminal_options){.rows = 40, .columns = 160});
    assert_row_has(terminal, "No Role", "Due");
    assert_row_has(terminal, "No Role", "Chance");
    assert_row_has(terminal, "2A Ferryman", "Mon 1 Mar");
    assert_row_has(terminal, "2A Ferryman", "1 late  under 1 %  late");
    assert_row_has(terminal, "1B Salt Queen", "Tue 16 Mar");
    assert_row_has(terminal, "1B Salt Queen", "in time");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_has_fewest_days_in_hand_hangs_first_and_what_is_done_last)
{
    bk_terminal *terminal = open_rail();
    size_t late = bk_terminal_find(terminal, "2A Ferryman");
    size_t near = bk_terminal_find(terminal, "1A Salt Queen");
    size_t far = bk_terminal_find(terminal, "2B Ferryman");
    size_t done = bk_terminal_find(terminal, "2C Ferryman");
    ck_assert_uint_lt(late, near);
    ck_assert_uint_lt(near, far);
    ck_assert_uint_lt(far, done);
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(the_first_line_tells_when_all_will_be_ready)
{
    bk_terminal *terminal = open_rail();
    ck_assert_ptr_nonnull(strstr(bk_terminal_row(terminal, 0), "ready by Tue 9 Mar"));
    assert_shows(terminal, "late: 2A");
    ck_assert(!bk_terminal_shows(terminal, "reckoning"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(the_costume_under_the_cursor_tells_its_day_its_odds_and_by_when_its_waits_are_wanted)
{
    bk_terminal *terminal = open_rail();
    bk_terminal_press(terminal, "Down");
    assert_shows(terminal, "1A  Coronation gown");
    assert_shows(terminal, "Expected Tue 9 Mar, 5 working days in hand");
    assert_shows(terminal, "to be");
    assert_shows(terminal, "1.4 m due Tue 9 Mar");
    assert_shows(terminal, "wanted by");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_nobody_can_do_is_a_sentence_that_says_what_to_do)
{
    import_with_ida();
    bk_show_replace("steps.csv", "piece,step,title,kind,minutes\nC1,tint,Tint the cloak,dye,60\n"
                                 "G1,cut,Cut the gown,cut,60\nW1,cut,Cut the shroud,cut,20\n");
    bk_terminal *terminal = bk_terminal_start(NULL);
    assert_chosen(terminal, "1B Salt Queen");
    assert_row_has(terminal, "1B Salt Queen", "never");
    assert_shows(terminal, "C1/tint: nobody can dye; give somebody the skill");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(where_nobody_works_no_day_is_told_and_it_says_so)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    ck_assert_ptr_nonnull(strstr(bk_terminal_row(terminal, 0), "nobody works here yet (H)"));
    assert_row_has(terminal, "No Role", "Due");
    ck_assert(!bk_terminal_shows(terminal, "Expected"));
    bk_terminal_press(terminal, "Down");
    assert_shows(terminal, "Nobody is in the workroom yet, so no day can be told");
    bk_terminal_close(terminal);
}
END_TEST

// ------------------------------------------------------------------------------------------- what decides

START_TEST(d_tells_what_decides_the_day_and_enter_opens_the_step)
{
    bk_terminal *terminal = open_rail();
    bk_terminal_press(terminal, "Down d");
    assert_shows(terminal, "1A  Coronation gown");
    assert_shows(terminal, "In the plan, one after the other");
    assert_row_has(terminal, "G1/sew", "Ida");
    assert_row_has(terminal, "G1/sew", "Tue 9 Mar");
    bk_terminal_press(terminal, "End Enter");
    assert_shows(terminal, "Salt Queen, played by Ana Ruíz");
    assert_chosen(terminal, "Sew the gown");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_costume_tells_when_each_open_step_is_planned_and_who_does_it)
{
    bk_terminal *terminal = open_rail();
    bk_terminal_press(terminal, "Down Enter");
    assert_shows(terminal, "Expected Tue 9 Mar, 5 working days in hand");
    assert_row_has(terminal, "done  Sew the lace", "Sat 27 Feb Ida");
    assert_row_has(terminal, "next  Cut the gown", "Tue 9 Mar Ida");
    assert_shows(terminal, "wanted by");
    assert_shows(terminal, "planned Tue 9 Mar 10:00 to 11:0");
    bk_terminal_press(terminal, "Home d");
    assert_shows(terminal, "what decides its day");
    bk_terminal_press(terminal, "Escape");
    assert_chosen(terminal, "1A  Coronation gown");
    bk_terminal_close(terminal);
}
END_TEST

// ------------------------------------------------------------------------------------- while it is reckoned

static bk_terminal *start_reckoning(const char *text)
{
    import_long_with_people();
    return bk_terminal_start_reckoning(&(bk_terminal_options){.tries = FOR_EVER}, text);
}

START_TEST(a_key_is_answered_while_it_reckons)
{
    bk_terminal *terminal = start_reckoning("working day");
    bk_terminal_type(terminal, "End", "192 to 200 of 200");
    assert_shows(terminal, "reckoning");
    bk_terminal_type(terminal, "Home Enter", "Enter change");
    assert_shows(terminal, "reckoning");
    bk_terminal_type(terminal, "Escape", "1 to 9 of 200");
    assert_shows(terminal, "reckoning");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_first_answer_is_there_while_it_reckons_on)
{
    bk_terminal *terminal = start_reckoning("working day");
    assert_shows(terminal, "reckoning");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(leaving_does_not_wait_for_the_reckoning)
{
    bk_terminal *terminal = start_reckoning("working day");
    ck_assert_int_eq(bk_terminal_end(terminal, "q"), 0);
    ck_assert(!bk_terminal_alternate(terminal));
    ck_assert(bk_terminal_settings_as_before(terminal));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_signal_that_ends_it_while_it_reckons_leaves_the_terminal_as_it_was)
{
    bk_terminal *terminal = start_reckoning("working day");
    int status = bk_terminal_kill(terminal, SIGTERM);
    ck_assert(WIFSIGNALED(status) && WTERMSIG(status) == SIGTERM);
    ck_assert(!bk_terminal_alternate(terminal));
    ck_assert(bk_terminal_settings_as_before(terminal));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_pause_while_it_reckons_stops_it_and_it_goes_on_afterwards)
{
    import_long_with_people();
    bk_terminal *terminal = bk_terminal_start_reckoning(
        &(bk_terminal_options){.tries = "200", .with_shell = true}, "working day");
    bk_terminal_pause(terminal);
    ck_assert(bk_terminal_settings_as_before(terminal));
    bk_terminal_resume(terminal);
    ck_assert(bk_terminal_alternate(terminal));
    bk_terminal_press(terminal, "Down");
    ck_assert(!bk_terminal_shows(terminal, "reckoning"));
    assert_shows(terminal, "% (give or take");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_another_terminal_changes_is_reckoned_anew_and_the_cursor_stays_on_its_costume)
{
    bk_terminal *terminal = open_rail();
    bk_terminal_press(terminal, "Down Down");
    assert_chosen(terminal, "1B Salt Queen");
    assert_row_has(terminal, "1B Salt Queen", "10 days");
    bk_show_replace("steps.csv", "piece,step,title,kind,minutes\nC1,sew,Sew the cloak,machine,6000\n"
                                 "G1,cut,Cut the gown,cut,60\nO1,fit,Fit the oilskin,fit,30\n"
                                 "W1,cut,Cut the shroud,cut,20\n");
    bk_terminal_await(terminal, "9 late");
    assert_chosen(terminal, "1B Salt Queen");
    size_t first = bk_terminal_find(terminal, "No Role") + 1;
    ck_assert_uint_eq(bk_terminal_chosen(terminal), first);
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(before_a_key_is_pressed_the_cursor_is_on_the_most_urgent)
{
    import_with_ida();
    bk_show_replace("steps.csv", "piece,step,title,kind,minutes\nO1,fit,Fit the oilskin,fit,30\n"
                                 "G1,cut,Cut the gown,cut,60\nW1,cut,Cut the shroud,cut,9000\n");
    bk_terminal *terminal = bk_terminal_start(NULL);
    assert_chosen(terminal, "4A Ghost");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_tick_is_reckoned_anew)
{
    bk_terminal *terminal = open_rail();
    assert_row_has(terminal, "1B Salt Queen", "10 days");
    bk_terminal_press(terminal, "Down Down x Enter");
    ck_assert(!bk_terminal_shows(terminal, "reckoning"));
    assert_row_has(terminal, "1B Salt Queen", "ready");
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("rail with days", a_line_tells_the_day_it_is_expected_the_days_in_hand_and_the_odds,
             a_wide_terminal_tells_the_due_day_and_how_urgent_it_is_too,
             what_has_fewest_days_in_hand_hangs_first_and_what_is_done_last,
             the_first_line_tells_when_all_will_be_ready,
             the_costume_under_the_cursor_tells_its_day_its_odds_and_by_when_its_waits_are_wanted,
             what_nobody_can_do_is_a_sentence_that_says_what_to_do,
             where_nobody_works_no_day_is_told_and_it_says_so,
             d_tells_what_decides_the_day_and_enter_opens_the_step,
             a_costume_tells_when_each_open_step_is_planned_and_who_does_it,
             a_key_is_answered_while_it_reckons, a_first_answer_is_there_while_it_reckons_on,
             leaving_does_not_wait_for_the_reckoning,
             a_signal_that_ends_it_while_it_reckons_leaves_the_terminal_as_it_was,
             a_pause_while_it_reckons_stops_it_and_it_goes_on_afterwards,
             what_another_terminal_changes_is_reckoned_anew_and_the_cursor_stays_on_its_costume,
             before_a_key_is_pressed_the_cursor_is_on_the_most_urgent, a_tick_is_reckoned_anew)
