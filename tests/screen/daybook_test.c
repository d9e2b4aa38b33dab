#include <stdlib.h>
#include <string.h>

#include "screen/show.h"
#include "screen/terminal.h"
#include "support/program.h"
#include "support/shell.h"
#include "support/testing.h"

// Marks the next step of the gown done: the rail narrowed to it, so that the cursor stands there.
static bk_terminal *after_a_tick(void)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "/ Coronation Enter x Enter");
    ck_assert(bk_terminal_shows(terminal, "Done: G1 Cut the gown"));
    return terminal;
}

// ------------------------------------------------------------------------------------------- undo and redo

START_TEST(what_was_done_is_seen_at_once_and_undo_is_offered)
{
    bk_terminal *terminal = after_a_tick();
    ck_assert(bk_terminal_shows(terminal, "u undo"));
    bk_terminal_press(terminal, "Enter");
    ck_assert(bk_terminal_shows(terminal, "2 of 3 steps done"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(u_takes_back_what_was_done_and_U_does_it_again)
{
    bk_terminal *terminal = after_a_tick();
    bk_terminal_press(terminal, "u");
    ck_assert(bk_terminal_shows(terminal, "Undone: Done: G1 Cut the gown."));
    ck_assert(bk_terminal_shows(terminal, "U redo"));
    bk_program_must(bodkin("untick", "G1/cut"), EXIT_FAILURE);
    bk_terminal_press(terminal, "U");
    ck_assert(bk_terminal_shows(terminal, "Redone: Done: G1 Cut the gown."));
    bk_terminal_press(terminal, "Enter");
    ck_assert(bk_terminal_shows(terminal, "2 of 3 steps done"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_others_did_is_not_undone_by_u)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "u");
    ck_assert(bk_terminal_shows(terminal, "There is nothing of yours to undo at this terminal."));
    bk_terminal_press(terminal, "U");
    ck_assert(!bk_terminal_shows(terminal, "Redone"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(u_and_U_work_from_the_costume_and_from_the_productions)
{
    bk_terminal *terminal = after_a_tick();
    bk_terminal_press(terminal, "Enter u");
    ck_assert(bk_terminal_shows(terminal, "Undone: Done: G1"));
    ck_assert(bk_terminal_shows(terminal, "1 of 3 steps done"));
    bk_terminal_press(terminal, "P U");
    ck_assert(bk_terminal_shows(terminal, "Redone: Done: G1"));
    ck_assert(bk_terminal_shows(terminal, "Productions"));
    bk_terminal_close(terminal);
}
END_TEST

// ---------------------------------------------------------------------------------------------- the screen

START_TEST(the_daybook_tells_every_change_newest_first)
{
    bk_terminal *terminal = after_a_tick();
    bk_terminal_press(terminal, "D");
    size_t tick = bk_terminal_find(terminal, "Done: G1 Cut the gown");
    ck_assert_uint_eq(bk_terminal_chosen(terminal), tick);
    ck_assert_uint_gt(bk_terminal_find(terminal, "Imported"), tick);
    bk_terminal_press(terminal, "Escape");
    ck_assert(bk_terminal_shows(terminal, "1A Salt Queen"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(an_older_change_is_chosen_asked_about_and_undone)
{
    bk_terminal *terminal = after_a_tick();
    bk_terminal_press(terminal, "Escape / Travelling Enter x Enter D Down Enter");
    ck_assert(bk_terminal_shows(terminal, "Undo what"));
    ck_assert(bk_terminal_shows(terminal, "Done: G1 Cut the gown?"));
    bk_terminal_press(terminal, "Enter");
    ck_assert(bk_terminal_shows(terminal, "Undone: Done: G1 Cut the gown."));
    ck_assert_ptr_nonnull(strstr(bk_terminal_row(terminal, bk_terminal_chosen(terminal)), "undone"));
    bk_program_must(bodkin("untick", "G1/cut"), EXIT_FAILURE);
    bk_program_must(bodkin("untick", "C1/sew"), EXIT_SUCCESS);
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_question_is_left_by_any_other_key)
{
    bk_terminal *terminal = after_a_tick();
    bk_terminal_press(terminal, "D Enter");
    ck_assert(bk_terminal_shows(terminal, "Undo what"));
    bk_terminal_press(terminal, "Escape");
    ck_assert(!bk_terminal_shows(terminal, "Undo what"));
    bk_terminal_press(terminal, "Enter u");
    ck_assert(!bk_terminal_shows(terminal, "Undo what"));
    ck_assert(!bk_terminal_shows(terminal, "Undone"));
    bk_program_must(bodkin("untick", "G1/cut"), EXIT_SUCCESS);
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_something_newer_touched_is_told_and_left)
{
    bk_terminal *terminal = after_a_tick();
    bk_program_must(bodkin("untick", "G1/cut"), EXIT_SUCCESS);
    bk_program_must(bodkin("tick", "G1/cut", "--by", "Ida"), EXIT_SUCCESS);
    bk_terminal_press(terminal, "D");
    bk_terminal_await(terminal, "Open again: G1 Cut the gown");
    bk_terminal_press(terminal, "Home Down Down Enter Enter");
    ck_assert(bk_terminal_shows(terminal, "something it touched has been"));
    ck_assert(bk_terminal_shows(terminal, "Nothing was changed."));
    bk_program_must(bodkin("untick", "G1/cut"), EXIT_SUCCESS);
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_is_undone_already_is_told_without_a_question)
{
    bk_terminal *terminal = after_a_tick();
    bk_terminal_press(terminal, "u D Down Enter");
    ck_assert(bk_terminal_shows(terminal, "That is undone already."));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(the_daybook_is_narrowed_by_what_was_done)
{
    bk_terminal *terminal = after_a_tick();
    bk_terminal_press(terminal, "D / import");
    ck_assert(bk_terminal_shows(terminal, "Imported"));
    ck_assert(!bk_terminal_shows(terminal, "Cut the gown"));
    ck_assert(bk_terminal_shows(terminal, "1 of 2"));
    bk_terminal_press(terminal, "Escape");
    ck_assert(bk_terminal_shows(terminal, "Cut the gown"));
    bk_terminal_press(terminal, "/ zzz");
    ck_assert(bk_terminal_shows(terminal, "Nothing here matches."));
    bk_terminal_press(terminal, "Enter Escape");
    ck_assert(bk_terminal_shows(terminal, "Cut the gown"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_long_daybook_is_read_as_one_scrolls)
{
    bk_show_import();
    bk_ask("WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 700) "
           "INSERT INTO daybook (made_at, made_by, sentence) "
           "SELECT '2027-03-01T10:00:00+00:00', 'Ida', 'Change number ' || i FROM n");
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "D");
    ck_assert(bk_terminal_shows(terminal, "of 200 and more"));
    ck_assert(bk_terminal_shows(terminal, "Change number 700"));
    bk_terminal_press(terminal, "Up PageDown PageDown");
    ck_assert(bk_terminal_shows(terminal, "of 200 and more"));
    bk_terminal_press(terminal, "End");
    ck_assert(bk_terminal_shows(terminal, "of 400 and more"));
    bk_terminal_press(terminal, "Down PageDown End");
    ck_assert(bk_terminal_shows(terminal, "Imported"));
    ck_assert(bk_terminal_shows(terminal, "of 701"));
    ck_assert(!bk_terminal_shows(terminal, "and more"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(the_first_line_is_shown_with_its_heading_when_one_comes_back_to_it)
{
    enum { LINES = 40 };
    bk_show_import();
    bk_ask("WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 40) "
           "INSERT INTO daybook (made_at, made_by, sentence) "
           "SELECT '2027-03-01T10:00:00+00:00', 'Ida', 'Change number ' || i FROM n");
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "D");
    for (size_t i = 0; i < LINES; i++)
        bk_terminal_press(terminal, "Down");
    ck_assert(!bk_terminal_shows(terminal, "Change number 40"));
    for (size_t i = 0; i < LINES; i++)
        bk_terminal_press(terminal, "Up");
    ck_assert_str_eq(bk_terminal_row(terminal, bk_terminal_chosen(terminal) - 1), " Mon 1 Mar, yesterday");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(narrowing_finds_what_is_far_back_in_the_daybook)
{
    bk_show_import();
    bk_ask("WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 700) "
           "INSERT INTO daybook (made_at, made_by, sentence) "
           "SELECT '2027-03-01T10:00:00+00:00', 'Ida', 'Change number ' || i FROM n");
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "D / salt");
    ck_assert(bk_terminal_shows(terminal, "Imported"));
    ck_assert(bk_terminal_shows(terminal, "1 of 701"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(the_director_is_told_that_the_daybook_is_the_makers)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(&(bk_terminal_options){.as = "director"});
    bk_terminal_press(terminal, "D");
    ck_assert(bk_terminal_shows(terminal, "That is for the maker alone"));
    ck_assert(bk_terminal_shows(terminal, "1A Salt Queen"));
    bk_terminal_press(terminal, "u");
    ck_assert(bk_terminal_shows(terminal, "Only the maker changes the workroom"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(an_empty_daybook_says_what_it_is_for)
{
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "D");
    ck_assert(bk_terminal_shows(terminal, "Nothing was changed in this workroom yet."));
    bk_terminal_press(terminal, "Enter Down Escape");
    ck_assert(bk_terminal_shows(terminal, "Productions"));
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("daybook screen", what_was_done_is_seen_at_once_and_undo_is_offered,
             u_takes_back_what_was_done_and_U_does_it_again, what_others_did_is_not_undone_by_u,
             u_and_U_work_from_the_costume_and_from_the_productions,
             the_daybook_tells_every_change_newest_first, an_older_change_is_chosen_asked_about_and_undone,
             a_question_is_left_by_any_other_key, what_something_newer_touched_is_told_and_left,
             what_is_undone_already_is_told_without_a_question, the_daybook_is_narrowed_by_what_was_done,
             a_long_daybook_is_read_as_one_scrolls,
             the_first_line_is_shown_with_its_heading_when_one_comes_back_to_it,
             narrowing_finds_what_is_far_back_in_the_daybook,
             the_director_is_told_that_the_daybook_is_the_makers, an_empty_daybook_says_what_it_is_for)
