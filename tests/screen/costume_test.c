#include <stdio.h>
#include <string.h>

#include "screen/show.h"
#include "screen/terminal.h"
#include "support/shell.h"
#include "support/testing.h"

static bk_terminal *open_costume(const char *keys)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, keys);
    return terminal;
}

static void assert_row_has(const bk_terminal *terminal, const char *key, const char *text)
{
    const char *row = bk_terminal_row(terminal, bk_terminal_find(terminal, key));
    if (!strstr(row, text))
        ck_abort_msg("\"%s\" is missing in the row: %s", text, row);
}

START_TEST(enter_opens_the_costume_with_its_pieces_and_their_steps_in_order)
{
    bk_terminal *terminal = open_costume("Down Enter");
    assert_row_has(terminal, "1A  Coronation gown", "due Tue 16 Mar");
    ck_assert(bk_terminal_shows(terminal, "Salt Queen, played by Ana Ruíz"));
    ck_assert(bk_terminal_shows(terminal, "waiting; 1 of 3 steps done, 4 h 20 left"));
    ck_assert(bk_terminal_shows(terminal, "She kneels in it"));
    assert_row_has(terminal, "G1  Gown", "made here; stand 2");
    assert_row_has(terminal, "G1  Gown", "1 of 3 done");
    assert_row_has(terminal, "done  Sew the lace", "hand");
    assert_row_has(terminal, "done  Sew the lace", "45 min  Sat 27 Feb Ida");
    assert_row_has(terminal, "next  Cut the gown", "1 h");
    size_t lace = bk_terminal_find(terminal, "Sew the lace"),
           cut = bk_terminal_find(terminal, "Cut the gown");
    ck_assert_uint_lt(lace, cut);
    ck_assert_uint_lt(cut, bk_terminal_find(terminal, "Sew the gown"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_wait_is_a_sentence_beneath_its_step)
{
    bk_terminal *terminal = open_costume("Down Enter");
    size_t step = bk_terminal_find(terminal, "next  Cut the gown");
    ck_assert_str_eq(bk_terminal_row(terminal, step + 1),
                     "           needs 2.4 m of wool flannel: 1 m on the shelf, 1.4 m due Tue 9 Mar");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_piece_that_is_out_says_so_beneath_the_piece)
{
    bk_terminal *terminal = open_costume("Enter");
    size_t piece = bk_terminal_find(terminal, "O1  Oilskin coat");
    ck_assert_ptr_nonnull(
        strstr(bk_terminal_row(terminal, piece + 1), "is out with Dye house, was to be back Sun 28 Feb"));
    ck_assert_ptr_nonnull(strstr(bk_terminal_row(terminal, piece + 2), "next  Fit the oilskin"));
    ck_assert_ptr_nonnull(strstr(bk_terminal_row(terminal, piece + 3), "the fitting is not booked"));
    bk_terminal_close(terminal);
}
END_TEST

static void assert_chosen(const bk_terminal *terminal, const char *text)
{
    const char *row = bk_terminal_row(terminal, bk_terminal_chosen(terminal));
    if (!strstr(row, text))
        ck_abort_msg("\"%s\" is not chosen: %s", text, row);
}

START_TEST(the_cursor_moves_over_the_costume_its_pieces_steps_and_needs)
{
    bk_terminal *terminal = open_costume("Down Enter");
    assert_chosen(terminal, "Cut the gown");
    bk_terminal_press(terminal, "Down");
    assert_chosen(terminal, "needs 2.4 m of wool flannel");
    bk_terminal_press(terminal, "Down");
    assert_chosen(terminal, "Sew the gown");
    bk_terminal_press(terminal, "Home Up");
    assert_chosen(terminal, "1A  Coronation gown");
    bk_terminal_press(terminal, "Down");
    assert_chosen(terminal, "G1  Gown");
    bk_terminal_press(terminal, "End Down PageDown");
    assert_chosen(terminal, "Sew the gown");
    bk_terminal_press(terminal, "PageUp");
    assert_chosen(terminal, "1A  Coronation gown");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_is_under_the_cursor_is_told_below)
{
    bk_terminal *terminal = open_costume("Down Enter End");
    ck_assert(bk_terminal_shows(terminal, "comes after: Cut the gown"));
    assert_row_has(terminal, "G1/sew", "Sew the gown");
    bk_terminal_press(terminal, "Home Down");
    ck_assert(bk_terminal_shows(terminal, " made here; stand 2"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(brought_in_again_with_one_step_more_the_cursor_stays_on_its_step)
{
    bk_terminal *terminal = open_costume("Down Enter");
    assert_chosen(terminal, "Cut the gown");
    bk_show_rewrite("needs.csv", "piece,step,material,quantity\n");
    bk_show_replace("steps.csv", "piece,step,title,kind,minutes\nG1,find,Find the lace,source,10\n"
                                 "G1,lace,Sew the lace,hand,45\nG1,cut,Cut the gown,cut,60\n");
    bk_terminal_await(terminal, "Find the lace");
    assert_chosen(terminal, "Cut the gown");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(escape_goes_back_to_the_rail_at_the_same_place)
{
    bk_long_show_import(60);
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "PageDown PageDown Down");
    size_t row = bk_terminal_chosen(terminal);
    ck_assert(bk_terminal_shows(terminal, "17 to 25 of 60"));
    bk_terminal_press(terminal, "Enter");
    ck_assert(bk_terminal_shows(terminal, "P18  Coat"));
    bk_terminal_press(terminal, "Escape");
    ck_assert(bk_terminal_shows(terminal, "17 to 25 of 60"));
    ck_assert_uint_eq(bk_terminal_chosen(terminal), row);
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_costume_longer_than_the_screen_scrolls_with_the_cursor)
{
    bk_show_import();
    enum { STEPS_ROOM = 8192, MANY = 60 };
    char steps[STEPS_ROOM] = "piece,step,title,kind,minutes,after\n";
    size_t length = strlen(steps);
    for (int i = 1; i <= MANY; i++)
        length += (size_t)snprintf(steps + length, sizeof steps - length,
                                   "G1,s%d,Stitch number %d,machine,10,\n", i, i);
    bk_show_rewrite("needs.csv", "piece,step,material,quantity\n");
    bk_show_replace("steps.csv", steps);
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "/ 1a Enter Enter");
    ck_assert(bk_terminal_shows(terminal, "Stitch number 1 "));
    ck_assert(!bk_terminal_shows(terminal, "Stitch number 60"));
    bk_terminal_press(terminal, "End");
    ck_assert_ptr_nonnull(
        strstr(bk_terminal_row(terminal, bk_terminal_chosen(terminal)), "Stitch number 60"));
    bk_terminal_press(terminal, "PageUp PageUp PageUp PageUp PageUp PageUp");
    ck_assert_ptr_nonnull(
        strstr(bk_terminal_row(terminal, bk_terminal_chosen(terminal)), "1A  Coronation gown"));
    ck_assert(bk_terminal_shows(terminal, "G1  Gown"));
    ck_assert(bk_terminal_shows(terminal, "Stitch number 1 "));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_costume_without_a_piece_says_which_key_adds_the_first)
{
    bk_terminal *terminal = open_costume("/ 3b Enter Enter");
    ck_assert(bk_terminal_shows(terminal, "3B  Sunday coat"));
    ck_assert(bk_terminal_shows(terminal, "No piece hangs under this costume yet. + adds the first"));
    bk_terminal_press(terminal, "Down Up PageDown End Home");
    ck_assert(bk_terminal_shows(terminal, "No piece hangs under this costume yet. + adds the first"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_step_that_can_wait_until_after_the_opening_says_so)
{
    bk_terminal *terminal = open_costume("/ 2b Enter Enter");
    assert_row_has(terminal, "next  Hem the shirt", "can wait");
    ck_assert(bk_terminal_shows(terminal, "40 min left; can go on"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_was_noted_of_a_piece_begins_a_line_of_its_own)
{
    bk_terminal *terminal = open_costume("/ 2a Enter Enter Home Down");
    bk_ask("INSERT INTO note (production_id, position, noted_on, piece_id, what) "
           "SELECT production_id, 1, '2027-03-01', id, 'The hood is stiff' FROM piece WHERE name = 'O1'");
    bk_terminal_await(terminal, "The hood is stiff");
    size_t note = bk_terminal_find(terminal, "Mon 1 Mar: The hood is stiff");
    ck_assert_str_eq(bk_terminal_row(terminal, note), " Mon 1 Mar: The hood is stiff");
    ck_assert_ptr_nonnull(strstr(bk_terminal_row(terminal, note - 1), "back by Sun 28 Feb"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(the_title_of_an_open_step_has_the_room_of_a_day_and_a_name)
{
    bk_terminal *terminal = open_costume("Down Enter");
    bk_ask("UPDATE step SET title = 'Adapt the block, mark style lines and notches' WHERE key = 'cut' AND "
           "title = 'Cut the gown'");
    bk_terminal_await(terminal, "next  Adapt the block, mark style lines and notches  cut");
    assert_row_has(terminal, "next  Adapt the block", "  1 h");
    assert_row_has(terminal, "done  Sew the lace", "45 min  Sat 27 Feb Ida");
    bk_ask("UPDATE step SET can_wait = 1 WHERE key = 'cut'");
    bk_terminal_await(terminal, "can wait");
    assert_row_has(terminal, "next  Adapt the block, mark style lines and",
                   "mark style lines and…     can wait  cut");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_day_of_another_year_is_shown_whole)
{
    bk_show_import();
    bk_ask("UPDATE step SET done_on = '2026-12-16' WHERE key = 'lace'");
    bk_terminal *terminal = bk_terminal_start(&(bk_terminal_options){.today = "2027-01-10"});
    bk_terminal_press(terminal, "/ 1a Enter Enter");
    assert_row_has(terminal, "done  Sew the lace", "45 min  Wed 16 Dec 2026 Ida");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(before_the_end_of_the_year_the_days_of_the_next_are_shown_whole)
{
    bk_show_import();
    bk_ask("UPDATE step SET done_on = '2026-12-09' WHERE key = 'lace'");
    bk_ask("UPDATE costume SET due = '2027-01-20' WHERE number = '1A'");
    bk_terminal *terminal = bk_terminal_start(&(bk_terminal_options){.today = "2026-12-10"});
    bk_terminal_press(terminal, "/ 1a Enter Enter");
    assert_row_has(terminal, "1A  Coronation gown", "due Wed 20 Jan");
    assert_row_has(terminal, "done  Sew the lace", "45 min   Wed 9 Dec Ida");
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("costume screen", enter_opens_the_costume_with_its_pieces_and_their_steps_in_order,
             a_wait_is_a_sentence_beneath_its_step, a_piece_that_is_out_says_so_beneath_the_piece,
             the_cursor_moves_over_the_costume_its_pieces_steps_and_needs,
             what_is_under_the_cursor_is_told_below, escape_goes_back_to_the_rail_at_the_same_place,
             brought_in_again_with_one_step_more_the_cursor_stays_on_its_step,
             a_costume_longer_than_the_screen_scrolls_with_the_cursor,
             a_costume_without_a_piece_says_which_key_adds_the_first,
             a_step_that_can_wait_until_after_the_opening_says_so,
             what_was_noted_of_a_piece_begins_a_line_of_its_own,
             the_title_of_an_open_step_has_the_room_of_a_day_and_a_name, a_day_of_another_year_is_shown_whole,
             before_the_end_of_the_year_the_days_of_the_next_are_shown_whole)
