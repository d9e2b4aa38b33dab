#include <string.h>

#include "screen/seen.h"
#include "screen/show.h"
#include "screen/terminal.h"
#include "support/program.h"
#include "support/shell.h"
#include "support/testing.h"

// Marking steps done from the Rail and from a costume, and the clock of the step in hand.

static bk_terminal *open_rail(void)
{
    bk_show_import();
    return bk_terminal_start(NULL);
}

// Narrows the rail to one costume; the keys of a job are counted from there.
static void go_to(bk_terminal *terminal, const char *number)
{
    bk_terminal_press(terminal, "/");
    bk_terminal_press(terminal, number);
    bk_terminal_press(terminal, "Enter");
}

START_TEST(two_keys_mark_the_next_step_of_the_costume_under_the_cursor_done)
{
    bk_terminal *terminal = open_rail();
    go_to(terminal, "1b");
    assert_row_has(terminal, "1B Salt Queen", "in work");
    bk_terminal_press(terminal, "x Enter");
    assert_shows(terminal, "Done: C1 Sew the cloak.");
    assert_row_has(terminal, "1B Salt Queen", "ready");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(one_key_undoes_it)
{
    bk_terminal *terminal = open_rail();
    go_to(terminal, "1b");
    bk_terminal_press(terminal, "x Enter");
    bk_terminal_press(terminal, "u");
    assert_row_has(terminal, "1B Salt Queen", "in work");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(the_first_key_only_asks_and_says_which_step_it_would_be)
{
    bk_terminal *terminal = open_rail();
    go_to(terminal, "1b");
    bk_terminal_press(terminal, "x");
    assert_shows(terminal, "Done: C1/sew Sew the cloak?");
    assert_row_has(terminal, "Enter yes", "Escape no");
    bk_terminal_press(terminal, "Escape");
    assert_hides(terminal, "Done: C1/sew");
    assert_row_has(terminal, "1B Salt Queen", "in work");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(digits_are_the_minutes_it_took)
{
    bk_terminal *terminal = open_rail();
    go_to(terminal, "1b");
    bk_terminal_press(terminal, "x 0");
    assert_shows(terminal, "Done: C1/sew Sew the cloak?");
    bk_terminal_press(terminal, "956 Backspace Backspace 5");
    assert_shows(terminal, "Done: C1/sew Sew the cloak, it took 1 h 35?");
    bk_terminal_press(terminal, "Enter Enter End");
    assert_shows(terminal, "took 1 h 35");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(the_time_it_took_may_be_typed_as_hours_and_minutes)
{
    bk_terminal *terminal = open_rail();
    go_to(terminal, "1b");
    bk_terminal_press(terminal, "x 1h30");
    assert_shows(terminal, "it took 1 h 30?");
    bk_terminal_press(terminal, "Backspace Backspace Backspace h: Enter");
    assert_shows(terminal, "is no length of time");
    bk_terminal_press(terminal, "Backspace Backspace :05 Enter");
    assert_shows(terminal, "Done: C1 Sew the cloak");
    ck_assert_str_eq(bk_ask("SELECT took FROM step WHERE title = 'Sew the cloak'"), "65");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(up_and_down_choose_another_of_the_steps_that_are_next)
{
    bk_show_import();
    bk_show_rewrite("needs.csv", "piece,step,material,quantity\n");
    bk_show_replace("steps.csv",
                    "piece,step,title,kind,minutes,after\nC1,fit,Try it on,fit,30,\nC1,sew,Sew the "
                    "cloak,machine,90,\nC1,hem,Hem the cloak,hand,40,sew\nC1,clasp,Set the clasp,hand,20,\n");
    bk_terminal *terminal = bk_terminal_start(NULL);
    go_to(terminal, "1b");
    bk_terminal_press(terminal, "x");
    assert_shows(terminal, "Done: C1/sew Sew the cloak?");
    assert_hides(terminal, "Hem the cloak");
    bk_terminal_press(terminal, "Down");
    assert_shows(terminal, "Done: C1/clasp Set the clasp?");
    bk_terminal_press(terminal, "Down Up Up");
    assert_shows(terminal, "Done: C1/fit Try it on?");
    assert_shows(terminal, "under Fittings (F)");
    bk_terminal_press(terminal, "Down Down Enter");
    assert_shows(terminal, "Done: C1 Set the clasp.");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_fitting_is_asked_about_only_where_nothing_else_is_next)
{
    bk_show_import();
    bk_show_rewrite("needs.csv", "piece,step,material,quantity\nC1,sew,wool flannel,9\n");
    bk_show_replace("steps.csv", "piece,step,title,kind,minutes\nC1,fit,Try it on,fit,30\n"
                                 "C1,sew,Sew the cloak,machine,90\nO1,fit,Fit the oilskin,fit,30\n");
    bk_terminal *terminal = bk_terminal_start(NULL);
    go_to(terminal, "1b");
    bk_terminal_press(terminal, "x");
    assert_shows(terminal, "Done: C1/sew Sew the cloak?");
    bk_terminal_press(terminal, "Escape a");
    go_to(terminal, "2a");
    bk_terminal_press(terminal, "x");
    assert_shows(terminal, "Done: O1/fit Fit the oilskin?");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(where_the_rail_is_narrowed_a_step_that_waits_on_that_is_asked_about)
{
    bk_show_import();
    bk_show_rewrite("needs.csv", "piece,step,material,quantity\n");
    bk_show_replace("steps.csv", "piece,step,title,kind,minutes\nC1,sew,Sew the cloak,machine,90\n"
                                 "C1,hem,Hem the cloak,hand,40\n");
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "h x");
    assert_shows(terminal, "Done: C1/hem Hem the cloak?");
    bk_terminal_press(terminal, "Escape a x");
    assert_shows(terminal, "Done: C1/sew Sew the cloak?");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_costume_with_nothing_next_says_why)
{
    bk_terminal *terminal = open_rail();
    go_to(terminal, "2c");
    bk_terminal_press(terminal, "x");
    assert_shows(terminal, "2C has no open step: all are done.");
    bk_terminal_press(terminal, "Escape");
    go_to(terminal, "3b");
    bk_terminal_press(terminal, "x");
    assert_shows(terminal, "3B has no piece yet");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(on_a_costume_a_step_is_marked_done_and_opened_again)
{
    bk_terminal *terminal = open_rail();
    go_to(terminal, "2b");
    bk_terminal_press(terminal, "Enter x Enter");
    assert_shows(terminal, "Done: H1 Hem the shirt.");
    assert_row_has(terminal, "  Hem the shirt", "done");
    bk_terminal_press(terminal, "x");
    assert_shows(terminal, "Open again: H1/hem Hem the shirt?");
    bk_terminal_press(terminal, "Enter");
    assert_shows(terminal, "Open again: H1 Hem the shirt.");
    assert_row_has(terminal, "  Hem the shirt", "next");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_step_that_comes_after_an_open_one_says_so_before_it_is_marked)
{
    bk_terminal *terminal = open_rail();
    go_to(terminal, "1a");
    bk_terminal_press(terminal, "Enter End x");
    assert_shows(terminal, "it comes after what is still open: G1/cut");
    bk_terminal_press(terminal, "Enter");
    assert_shows(terminal, "Done: G1 Sew the gown.");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(on_the_costume_itself_the_cursor_shows_which_step_is_meant)
{
    bk_terminal *terminal = open_rail();
    go_to(terminal, "1a");
    bk_terminal_press(terminal, "Enter Home x");
    assert_shows(terminal, "Done: G1/cut Cut the gown?");
    ck_assert_ptr_nonnull(strstr(bk_terminal_row(terminal, bk_terminal_chosen(terminal)), "Cut the gown"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_step_that_another_terminal_marks_done_is_no_longer_asked_about)
{
    bk_terminal *terminal = open_rail();
    go_to(terminal, "1b");
    bk_terminal_press(terminal, "x");
    assert_shows(terminal, "Done: C1/sew Sew the cloak?");
    bk_program_must(bodkin("tick", "C1/sew", "--by", "Anna"), 0);
    bk_terminal_await(terminal, "C1/sew was done by Anna meanwhile; nothing was done here.");
    assert_hides(terminal, "Done: C1/sew");
    bk_terminal_press(terminal, "Enter");
    assert_row_has(terminal, "1B Salt Queen", "ready");
    assert_hides(terminal, "C1  Cloak");
    bk_terminal_press(terminal, "Enter");
    assert_shows(terminal, "C1  Cloak");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(the_clock_of_a_step_still_runs_after_the_program_was_left)
{
    bk_terminal *terminal = open_rail();
    go_to(terminal, "1b");
    bk_terminal_press(terminal, "t Enter");
    assert_shows(terminal, "Begun: C1 Sew the cloak.");
    bk_terminal_press(terminal, "Escape");
    ck_assert_ptr_nonnull(strstr(bk_terminal_row(terminal, 1), "clock 0 min: C1/sew"));
    ck_assert_int_eq(bk_terminal_end(terminal, "q"), 0);
    bk_terminal_close(terminal);
    terminal = bk_terminal_start(NULL);
    ck_assert_ptr_nonnull(strstr(bk_terminal_row(terminal, 1), "clock 0 min: C1/sew"));
    bk_terminal_press(terminal, "t");
    assert_shows(terminal, "Stopped: C1 Sew the cloak");
    assert_hides(terminal, "clock 0 min");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(on_a_costume_one_key_starts_and_stops_the_clock_of_a_step)
{
    bk_terminal *terminal = open_rail();
    go_to(terminal, "1a");
    bk_terminal_press(terminal, "Enter t");
    assert_row_has(terminal, "Salt Queen, played by", "clock 0 min: G1/cut");
    bk_terminal_press(terminal, "t");
    assert_shows(terminal, "Stopped: G1 Cut the gown");
    assert_hides(terminal, "clock 0 min");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(the_step_whose_clock_runs_is_the_one_that_is_asked_about)
{
    bk_show_import();
    bk_show_rewrite("needs.csv", "piece,step,material,quantity\n");
    bk_show_replace("steps.csv", "piece,step,title,kind,minutes\nC1,sew,Sew the cloak,machine,90\n"
                                 "C1,clasp,Set the clasp,craft,20\n");
    bk_terminal *terminal = bk_terminal_start(NULL);
    go_to(terminal, "1b");
    bk_terminal_press(terminal, "t Down Enter x");
    assert_shows(terminal, "Done: C1/clasp Set the clasp?");
    bk_terminal_press(terminal, "Enter");
    assert_hides(terminal, "clock 0 min");
    bk_terminal_close(terminal);
}
END_TEST

// Two steps of the cloak that are next, of which the first is asked about.
static bk_terminal *ask_of_two(const char *keys)
{
    bk_show_import();
    bk_show_rewrite("needs.csv", "piece,step,material,quantity\n");
    bk_show_replace("steps.csv", "piece,step,title,kind,minutes\nC1,sew,Sew the cloak,machine,90\n"
                                 "C1,clasp,Set the clasp,craft,20\n");
    bk_terminal *terminal = bk_terminal_start(NULL);
    go_to(terminal, "1b");
    bk_terminal_press(terminal, keys);
    assert_shows(terminal, "C1/sew Sew the cloak?");
    return terminal;
}

static const char *clasp(void)
{
    return bk_ask("SELECT coalesce(done_on, 'open'), (SELECT count(*) FROM running) FROM step WHERE key = "
                  "'clasp'");
}

START_TEST(the_next_step_is_not_marked_in_place_of_one_that_another_terminal_marked)
{
    bk_terminal *terminal = ask_of_two("x");
    bk_program_must(bodkin("tick", "C1/sew", "--by", "Anna"), 0);
    bk_terminal_await(terminal, "C1/sew was done by Anna meanwhile");
    bk_terminal_press(terminal, "Enter");
    ck_assert_str_eq(clasp(), "open|0");
    bk_terminal_press(terminal, "x");
    assert_shows(terminal, "Done: C1/clasp Set the clasp?");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(nor_is_a_step_that_was_changed_before_the_screen_has_noticed)
{
    bk_terminal *terminal = ask_of_two("x");
    bk_ask("UPDATE step SET title = 'Sew the cloak and its hood' WHERE key = 'sew'");
    bk_terminal_press(terminal, "Enter");
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM step WHERE key = 'sew' AND done_on IS NOT NULL"), "0");
    assert_hides(terminal, "Done: C1");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(the_clock_does_not_start_for_another_step_than_the_one_asked_about)
{
    bk_terminal *terminal = ask_of_two("t");
    bk_program_must(bodkin("tick", "C1/sew", "--by", "Anna"), 0);
    bk_terminal_await(terminal, "C1/sew was done by Anna meanwhile");
    bk_terminal_press(terminal, "Enter");
    ck_assert_str_eq(clasp(), "open|0");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_step_that_was_changed_or_taken_away_meanwhile_is_not_marked)
{
    bk_terminal *terminal = ask_of_two("x");
    bk_ask("UPDATE step SET title = 'Sew the cloak and its hood' WHERE key = 'sew'");
    bk_terminal_await(terminal, "C1/sew was changed meanwhile; nothing was done here.");
    bk_terminal_press(terminal, "Enter x");
    assert_shows(terminal, "Done: C1/sew Sew the cloak and its hood?");
    bk_ask("DELETE FROM step WHERE key = 'sew'");
    bk_terminal_await(terminal, "C1/sew was taken away meanwhile; nothing was done here.");
    bk_terminal_press(terminal, "Enter");
    ck_assert_str_eq(clasp(), "open|0");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_happens_to_another_step_leaves_the_question_as_it_is)
{
    bk_terminal *terminal = ask_of_two("x");
    bk_terminal_press(terminal, "Down");
    assert_shows(terminal, "Done: C1/clasp Set the clasp?");
    bk_program_must(bodkin("tick", "C1/sew"), 0);
    bk_terminal_await(terminal, "━");
    assert_shows(terminal, "Done: C1/clasp Set the clasp?");
    bk_terminal_press(terminal, "Enter");
    assert_shows(terminal, "Done: C1 Set the clasp.");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(on_a_costume_too_the_question_stays_with_its_step)
{
    bk_terminal *terminal = ask_of_two("x");
    bk_terminal_press(terminal, "Escape Enter Home x");
    assert_shows(terminal, "Done: C1/sew Sew the cloak?");
    bk_program_must(bodkin("tick", "C1/sew", "--by", "Anna"), 0);
    bk_terminal_await(terminal, "C1/sew was done by Anna meanwhile; nothing was done here.");
    bk_terminal_press(terminal, "Enter");
    ck_assert_str_eq(clasp(), "open|0");
    bk_terminal_press(terminal, "Home Down Down x");
    assert_shows(terminal, "Open again: C1/sew Sew the cloak?");
    bk_program_must(bodkin("untick", "C1/sew"), 0);
    bk_terminal_await(terminal, "C1/sew was opened again meanwhile; nothing was done here.");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_step_whose_material_the_shelf_lacks_says_so_before_and_after_it_is_marked)
{
    bk_terminal *terminal = open_rail();
    go_to(terminal, "1a");
    bk_terminal_press(terminal, "x");
    assert_shows(terminal, "Done: G1/cut Cut the gown?");
    assert_shows(terminal, "the shelf lacks 1.4 m of wool flannel");
    bk_terminal_press(terminal, "Enter");
    assert_shows(terminal, "Done: G1 Cut the gown; the shelf lacked 1.4 m of wool flannel.");
    ck_assert_str_eq(bk_ask("SELECT sum(quantity) FROM movement"), "-1400000");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_step_of_a_piece_that_is_out_says_so_before_it_is_marked)
{
    bk_terminal *terminal = open_rail();
    go_to(terminal, "2a");
    bk_terminal_press(terminal, "x");
    assert_shows(terminal, "O1 is out with Dye house, was to be back Sun 28 Feb");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_its_clock_measured_is_shown_before_a_step_is_marked_and_digits_change_it)
{
    bk_terminal *terminal = open_rail();
    go_to(terminal, "1b");
    bk_terminal_press(terminal, "t Enter");
    bk_ask("UPDATE running SET started_at = strftime('%Y-%m-%dT%H:%M:%S+00:00', 'now', '-245 seconds')");
    bk_terminal_await(terminal, "clock 4 min");
    bk_terminal_press(terminal, "x");
    assert_shows(terminal, "Done: C1/sew Sew the cloak, 4 min by the clock?");
    assert_shows(terminal, "0-9 other minutes");
    bk_terminal_press(terminal, "7");
    assert_shows(terminal, "Done: C1/sew Sew the cloak, it took 7 min?");
    bk_terminal_press(terminal, "Backspace Enter");
    ck_assert_str_eq(bk_ask("SELECT took FROM step WHERE key = 'sew' AND took IS NOT NULL"), "4");
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("marking steps", two_keys_mark_the_next_step_of_the_costume_under_the_cursor_done,
             one_key_undoes_it, the_first_key_only_asks_and_says_which_step_it_would_be,
             digits_are_the_minutes_it_took, the_time_it_took_may_be_typed_as_hours_and_minutes,
             up_and_down_choose_another_of_the_steps_that_are_next, a_costume_with_nothing_next_says_why,
             a_fitting_is_asked_about_only_where_nothing_else_is_next,
             where_the_rail_is_narrowed_a_step_that_waits_on_that_is_asked_about,
             on_a_costume_a_step_is_marked_done_and_opened_again,
             a_step_that_comes_after_an_open_one_says_so_before_it_is_marked,
             on_the_costume_itself_the_cursor_shows_which_step_is_meant,
             a_step_that_another_terminal_marks_done_is_no_longer_asked_about,
             the_clock_of_a_step_still_runs_after_the_program_was_left,
             on_a_costume_one_key_starts_and_stops_the_clock_of_a_step,
             the_step_whose_clock_runs_is_the_one_that_is_asked_about,
             the_next_step_is_not_marked_in_place_of_one_that_another_terminal_marked,
             nor_is_a_step_that_was_changed_before_the_screen_has_noticed,
             the_clock_does_not_start_for_another_step_than_the_one_asked_about,
             a_step_that_was_changed_or_taken_away_meanwhile_is_not_marked,
             what_happens_to_another_step_leaves_the_question_as_it_is,
             on_a_costume_too_the_question_stays_with_its_step,
             a_step_whose_material_the_shelf_lacks_says_so_before_and_after_it_is_marked,
             a_step_of_a_piece_that_is_out_says_so_before_it_is_marked,
             what_its_clock_measured_is_shown_before_a_step_is_marked_and_digits_change_it)
