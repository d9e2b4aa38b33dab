#include "screen/plan_show.h"
#include "screen/seen.h"
#include "screen/show.h"
#include "screen/terminal.h"
#include "support/program.h"
#include "support/testing.h"

// The Bench: what one person can do now, and what is done from there.

static bk_terminal *at_bench(void)
{
    bk_plan_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "B");
    return terminal;
}

// ------------------------------------------------------------------------------------------------- whose it is

START_TEST(where_the_name_is_not_known_it_is_everybodys)
{
    bk_terminal *terminal = at_bench();
    assert_shows(terminal, "Bench: everybody");
    assert_shows(terminal, "4 steps can be done now");
    assert_hides(terminal, "Cut the suit");
    assert_hides(terminal, "Sew the gown");
    assert_row_has(terminal, "C1 Sew the cloak", "1B Salt Queen");
    assert_row_has(terminal, "C1 Sew the cloak", "1 h 30");
    assert_row_has(terminal, "C1 Sew the cloak", "Tue 16 Mar");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(it_begins_with_who_is_at_this_terminal)
{
    bk_plan_show_import_mine();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "B");
    assert_shows(terminal, "Bench: ");
    assert_row_has(terminal, "Bench: ", bk_plan_show_login());
    assert_shows(terminal, "here until 13:00 today");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(another_person_is_chosen_by_a_few_letters)
{
    bk_terminal *terminal = at_bench();
    bk_terminal_press(terminal, "p");
    assert_shows(terminal, "Whose bench?");
    assert_row_has(terminal, "Ida", "cut, machine, hand");
    bk_terminal_press(terminal, "mo Enter");
    assert_shows(terminal, "Bench: Mo");
    assert_shows(terminal, "here until 17:00 today");
    assert_shows(terminal, "1 step can be done now");
    assert_shows(terminal, "C1 Fell the lining");
    assert_hides(terminal, "C1 Sew the cloak");
    bk_terminal_press(terminal, "p every Enter");
    assert_shows(terminal, "Bench: everybody");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(escape_leaves_whose_bench_it_is)
{
    bk_terminal *terminal = at_bench();
    bk_terminal_press(terminal, "p mo Escape");
    assert_shows(terminal, "Bench: everybody");
    bk_terminal_press(terminal, "p nobodyatall");
    assert_shows(terminal, "Nobody is called so, or does that");
    bk_terminal_press(terminal, "Enter Escape");
    assert_shows(terminal, "Bench: everybody");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(who_has_no_skills_is_told_where_they_are_entered)
{
    bk_terminal *terminal = at_bench();
    bk_terminal_press(terminal, "p jo Enter");
    assert_shows(terminal, "no hours today");
    assert_shows(terminal, "Jo has no skills yet: H, and e");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_workroom_without_people_says_where_they_are_entered)
{
    bk_show_import();
    bk_show_rewrite("needs.csv", "piece,step,material,quantity\n");
    bk_show_replace("steps.csv", "piece,step,title,kind,minutes\n");
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "B");
    assert_shows(terminal, "Nobody is in this workroom yet");
    assert_shows(terminal, "H shows the Hands");
    bk_terminal_press(terminal, "p");
    assert_shows(terminal, "H and + enter somebody");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_waits_is_told_where_nothing_can_be_done)
{
    bk_plan_show_import();
    bk_show_rewrite("needs.csv", "piece,step,material,quantity\n");
    bk_show_replace("steps.csv", "piece,step,title,kind,minutes\nS1,cut,Cut the suit,cut,80\n");
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "B p ida Enter");
    assert_shows(terminal, "Nothing can be done now by Ida. 1 step that comes next waits:");
    assert_shows(terminal, "S1/cut: ");
    bk_terminal_close(terminal);
}
END_TEST

// --------------------------------------------------------------------------------------------- what it tells

START_TEST(the_detail_tells_why_what_is_behind_it_and_where_it_is)
{
    bk_terminal *terminal = at_bench();
    bk_terminal_press(terminal, "/ gown Enter");
    assert_chosen(terminal, "G1 Cut the gown");
    assert_shows(terminal, "G1/cut: Cut the gown (Gown)");
    assert_shows(terminal, "1A is due in 14 days, 3 h 20 behind it");
    assert_shows(terminal, "behind it: G1/sew");
    assert_shows(terminal, "needs linen");
    assert_shows(terminal, "stand 2");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_is_best_done_together_is_marked_and_told)
{
    bk_terminal *terminal = at_bench();
    bk_terminal_press(terminal, "/ gown Enter");
    assert_shows(terminal, "the same linen as H1: cut together");
    bk_terminal_press(terminal, "Escape");
    assert_row_has(terminal, "H1 Cut the shirt", " a");
    assert_row_has(terminal, "G1 Cut the gown", " a");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_fits_the_minutes_there_are_comes_first)
{
    bk_terminal *terminal = at_bench();
    bk_terminal_press(terminal, "m");
    assert_shows(terminal, "How many minutes have you?");
    bk_terminal_press(terminal, "45 Enter");
    assert_shows(terminal, "4 steps can be done now, 2 of them in 45 min");
    ck_assert_uint_lt(bk_terminal_find(terminal, "H1 Cut the shirt"),
                      bk_terminal_find(terminal, "Takes longer than 45 min"));
    ck_assert_uint_gt(bk_terminal_find(terminal, "G1 Cut the gown"),
                      bk_terminal_find(terminal, "Takes longer than 45 min"));
    bk_terminal_press(terminal, "m Enter");
    assert_hides(terminal, "Takes longer");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(minutes_are_typed_as_the_program_takes_them)
{
    bk_terminal *terminal = at_bench();
    bk_terminal_press(terminal, "m soon Enter");
    assert_shows(terminal, "soon is no length of time");
    bk_terminal_press(terminal, "Control-U 1h30 Enter");
    assert_shows(terminal, "4 steps can be done now, 4 of them in 1 h 30");
    bk_terminal_press(terminal, "m 5 Escape");
    assert_shows(terminal, "4 of them in 1 h 30");
    bk_terminal_close(terminal);
}
END_TEST

// -------------------------------------------------------------------------------------------- what is done there

START_TEST(a_step_is_marked_done_and_what_it_held_takes_its_place)
{
    bk_terminal *terminal = at_bench();
    bk_terminal_press(terminal, "/ gown Enter x");
    assert_shows(terminal, "Done: G1/cut Cut the gown?");
    bk_terminal_press(terminal, "50 Enter");
    assert_shows(terminal, "Done: G1 Cut the gown");
    bk_terminal_press(terminal, "Escape");
    assert_hides(terminal, "G1 Cut the gown");
    assert_shows(terminal, "G1 Sew the gown");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_was_just_marked_done_is_not_offered_until_it_is_reckoned_anew)
{
    const bk_terminal_options options = {.tries = "1000000"}; // more than this test waits for
    bk_plan_show_import();
    bk_terminal *terminal = bk_terminal_start_reckoning(&options, "reckoning");
    bk_terminal_type(terminal, "B", "4 steps can be done now");
    bk_terminal_type(terminal, "x", "Done: G1/cut Cut the gown?");
    bk_terminal_type(terminal, "Enter", "Done: G1 Cut the gown.");
    assert_shows(terminal, "reckoning");
    assert_shows(terminal, "3 steps can be done now");
    assert_hides(terminal, "G1 Cut the gown  ");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(the_clock_of_a_step_is_started_and_stopped)
{
    bk_terminal *terminal = at_bench();
    bk_terminal_press(terminal, "/ cloak Enter t");
    assert_shows(terminal, "Begun: C1 Sew the cloak");
    assert_row_has(terminal, "1B Salt Queen", "in hand");
    assert_shows(terminal, "runs since");
    bk_terminal_press(terminal, "Escape");
    assert_chosen(terminal, "C1 Sew the cloak");
    assert_shows(terminal, "4 steps can be done now; clock 0 min: C1/sew");
    bk_terminal_press(terminal, "t");
    assert_shows(terminal, "Stopped: C1 Sew the cloak");
    assert_hides(terminal, "runs since");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_another_terminal_ticks_goes_from_the_bench)
{
    bk_terminal *terminal = at_bench();
    bk_terminal_press(terminal, "/ gown Enter x");
    bk_program_must(bodkin("tick", "G1/cut"), 0);
    bk_terminal_await(terminal, "meanwhile");
    bk_terminal_press(terminal, "Enter Escape");
    assert_hides(terminal, "Cut the gown");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(enter_opens_the_costume_at_the_step_and_escape_comes_back)
{
    bk_terminal *terminal = at_bench();
    bk_terminal_press(terminal, "/ cloak Enter Enter");
    assert_shows(terminal, "Travelling cloak");
    assert_chosen(terminal, "Sew the cloak");
    bk_terminal_press(terminal, "Escape");
    assert_shows(terminal, "Bench: everybody");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_step_of_another_production_is_ticked_and_opened_as_well)
{
    bk_plan_show_import();
    bk_long_show_import(1);
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "B / cloak Enter");
    assert_shows(terminal, "of The Salt Road; planned");
    bk_terminal_press(terminal, "j");
    assert_shows(terminal, "It is of The Salt Road: Enter opens it there");
    bk_terminal_press(terminal, "x");
    assert_shows(terminal, "Done: C1/sew Sew the cloak?");
    bk_terminal_press(terminal, "Enter");
    assert_hides(terminal, "C1 Sew the cloak ");
    bk_terminal_press(terminal, "Escape / gown Enter Enter");
    assert_shows(terminal, "Coronation gown");
    bk_terminal_press(terminal, "R");
    assert_shows(terminal, "The Salt Road");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_note_is_jotted_about_the_step)
{
    bk_terminal *terminal = at_bench();
    bk_terminal_press(terminal, "/ cloak Enter j");
    assert_shows(terminal, "C1");
    bk_terminal_press(terminal, "Heavy Control-S");
    bk_terminal_press(terminal, "Enter");
    assert_shows(terminal, "Heavy");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(plain_ascii_is_drawn_where_nothing_else_may_be)
{
    bk_plan_show_import();
    bk_terminal *terminal = bk_terminal_start(&(bk_terminal_options){.locale = "C", .no_colour = true});
    bk_terminal_press(terminal, "B m 45 Enter p Escape W Enter");
    ck_assert(!bk_terminal_beyond_ascii(terminal));
    ck_assert(!bk_terminal_coloured(terminal));
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("Bench screen", where_the_name_is_not_known_it_is_everybodys,
             it_begins_with_who_is_at_this_terminal, another_person_is_chosen_by_a_few_letters,
             escape_leaves_whose_bench_it_is, who_has_no_skills_is_told_where_they_are_entered,
             a_workroom_without_people_says_where_they_are_entered,
             what_waits_is_told_where_nothing_can_be_done,
             the_detail_tells_why_what_is_behind_it_and_where_it_is,
             what_is_best_done_together_is_marked_and_told, what_fits_the_minutes_there_are_comes_first,
             minutes_are_typed_as_the_program_takes_them,
             a_step_is_marked_done_and_what_it_held_takes_its_place,
             what_was_just_marked_done_is_not_offered_until_it_is_reckoned_anew,
             the_clock_of_a_step_is_started_and_stopped, what_another_terminal_ticks_goes_from_the_bench,
             enter_opens_the_costume_at_the_step_and_escape_comes_back,
             a_step_of_another_production_is_ticked_and_opened_as_well, a_note_is_jotted_about_the_step,
             plain_ascii_is_drawn_where_nothing_else_may_be)
