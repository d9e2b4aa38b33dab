#include <string.h>

#include "screen/show.h"
#include "screen/terminal.h"
#include "support/testing.h"

static bk_terminal *open_rail(void)
{
    bk_show_import();
    return bk_terminal_start(NULL);
}

static void assert_row_has(const bk_terminal *terminal, const char *key, const char *text)
{
    const char *row = bk_terminal_row(terminal, bk_terminal_find(terminal, key));
    if (!strstr(row, text))
        ck_abort_msg("\"%s\" is missing in the row: %s", text, row);
}

START_TEST(the_first_line_tells_the_production_and_the_days_to_its_opening)
{
    bk_terminal *terminal = open_rail();
    ck_assert_ptr_nonnull(strstr(bk_terminal_row(terminal, 0), "The Salt Road"));
    ck_assert_ptr_nonnull(strstr(bk_terminal_row(terminal, 0), "17 days to opening, Fri 19 Mar"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(each_costume_has_a_line_with_its_number_role_title_seam_state_wait_and_due_day)
{
    bk_terminal *terminal = open_rail();
    assert_row_has(terminal, "1A Salt Queen", "Coronation…");
    assert_row_has(terminal, "1A Salt Queen", "━ ┃· · ·");
    assert_row_has(terminal, "1A Salt Queen", "waiting: materials  Tue 16 Mar");
    assert_row_has(terminal, "1B Salt Queen", "in work");
    assert_row_has(terminal, "2A Ferryman", "held: out, fitting");
    assert_row_has(terminal, "2A Ferryman", "Mon 1 Mar late");
    assert_row_has(terminal, "2B Ferryman", "finishing");
    assert_row_has(terminal, "3A Clerk", "held: measures");
    assert_row_has(terminal, "3A Clerk", "tight");
    assert_row_has(terminal, "3B Clerk", "unlisted");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_wide_terminal_shows_the_wearer_and_all_waits_in_brief)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(&(bk_terminal_options){.rows = 48, .columns = 160});
    assert_row_has(terminal, "1A Salt Queen", "Ana Ruíz");
    assert_row_has(terminal, "1A Salt Queen", "Coronation gown");
    assert_row_has(terminal, "1A Salt Queen", "wool flannel due Tue 9 Mar");
    assert_row_has(terminal, "2A Ferryman", "fitting not booked");
    assert_row_has(terminal, "2A Ferryman", "out, overdue");
    assert_row_has(terminal, "3A Clerk", "tight");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(costumes_are_counted_by_state_and_by_what_they_wait_on)
{
    bk_terminal *terminal = open_rail();
    assert_row_has(terminal, "ready 1", "in work 1");
    assert_row_has(terminal, "ready 1", "can go on 2");
    assert_row_has(terminal, "ready 1", "finishing 1");
    assert_row_has(terminal, "ready 1", "waiting 1");
    assert_row_has(terminal, "ready 1", "held 3");
    assert_row_has(terminal, "ready 1", "unlisted 1");
    assert_row_has(terminal, "m measures 2", "c materials 1");
    assert_row_has(terminal, "m measures 2", "f fitting 1");
    assert_row_has(terminal, "m measures 2", "o out 1");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(the_costume_under_the_cursor_tells_its_waits_whole_below_the_list)
{
    bk_terminal *terminal = open_rail();
    bk_terminal_press(terminal, "Down");
    ck_assert(bk_terminal_shows(terminal, "1A  Coronation gown"));
    ck_assert(bk_terminal_shows(terminal, "Salt Queen, played by Ana Ruíz; 1 of 3 steps done, 4 h 20 left"));
    ck_assert(bk_terminal_shows(terminal,
                                "Gown: needs 2.4 m of wool flannel: 1 m on the shelf, 1.4 m due Tue 9 Mar"));
    bk_terminal_press(terminal, "Up");
    ck_assert(bk_terminal_shows(terminal, "Oilskin coat is out with Dye house, was to be back Sun 28 Feb"));
    ck_assert(bk_terminal_shows(terminal, "Oilskin coat: the fitting is not booked"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(arrows_move_the_cursor_line_and_stop_at_the_ends)
{
    bk_terminal *terminal = open_rail();
    size_t first = bk_terminal_chosen(terminal);
    ck_assert_ptr_nonnull(strstr(bk_terminal_row(terminal, first), "2A Ferryman"));
    bk_terminal_press(terminal, "Up");
    ck_assert_uint_eq(bk_terminal_chosen(terminal), first);
    bk_terminal_press(terminal, "Down Down");
    ck_assert_uint_eq(bk_terminal_chosen(terminal), first + 2);
    ck_assert_int_eq(bk_terminal_row(terminal, first + 2)[0], '>');
    bk_terminal_press(terminal, "End Down");
    ck_assert_ptr_nonnull(strstr(bk_terminal_row(terminal, bk_terminal_chosen(terminal)), "2C Ferryman"));
    bk_terminal_press(terminal, "Home");
    ck_assert_uint_eq(bk_terminal_chosen(terminal), first);
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(page_keys_walk_through_a_long_rail_and_say_which_part_is_seen)
{
    bk_long_show_import(100);
    bk_terminal *terminal = bk_terminal_start(NULL);
    ck_assert(bk_terminal_shows(terminal, "1 to 9 of 100"));
    bk_terminal_press(terminal, "PageDown");
    ck_assert(bk_terminal_shows(terminal, "9 to 17 of 100"));
    bk_terminal_press(terminal, "End");
    ck_assert(bk_terminal_shows(terminal, "92 to 100 of 100"));
    ck_assert_ptr_nonnull(strstr(bk_terminal_row(terminal, bk_terminal_chosen(terminal)), "100 Walker"));
    bk_terminal_press(terminal, "PageUp");
    ck_assert(bk_terminal_shows(terminal, "84 to 92 of 100"));
    bk_terminal_press(terminal, "Home");
    ck_assert(bk_terminal_shows(terminal, "1 to 9 of 100"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(moving_the_cursor_sends_only_the_cells_that_change)
{
    enum { A_FEW_LINES = 700, A_SCREEN = 80 * 24 };
    bk_long_show_import(100);
    bk_terminal *terminal = bk_terminal_start(NULL);
    ck_assert_uint_gt(bk_terminal_sent(terminal), A_FEW_LINES);
    bk_terminal_press(terminal, "Down");
    ck_assert_uint_lt(bk_terminal_sent(terminal), A_FEW_LINES);
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(q_leaves_and_gives_the_terminal_back)
{
    bk_terminal *terminal = open_rail();
    ck_assert(bk_terminal_alternate(terminal));
    ck_assert(!bk_terminal_cursor_seen(terminal));
    ck_assert_int_eq(bk_terminal_end(terminal, "q"), 0);
    ck_assert(!bk_terminal_alternate(terminal));
    ck_assert(bk_terminal_cursor_seen(terminal));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_production_without_costumes_says_which_key_hangs_the_first)
{
    bk_show_import();
    bk_show_rewrite("needs.csv", "piece,step,material,quantity\n");
    bk_show_rewrite("steps.csv", "piece,step,title,kind,minutes\n");
    bk_show_rewrite("pieces.csv", "piece,costumes,title\n");
    bk_show_replace("costumes.csv", "costume,role,title\n");
    bk_terminal *terminal = bk_terminal_start(NULL);
    ck_assert(bk_terminal_shows(terminal, "+ hangs one; it names the"));
    bk_terminal_press(terminal, "Down End Enter");
    ck_assert(bk_terminal_shows(terminal, "+ hangs one; it names the"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_is_late_and_tight_stands_in_one_line_and_is_found_by_its_word)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    ck_assert_msg(bk_terminal_shows(terminal, "late: 2A; tight: 3A, 4A; "), "%s",
                  bk_terminal_screen(terminal));
    bk_terminal_press(terminal, "/ tight");
    ck_assert_msg(bk_terminal_shows(terminal, "2 of 8"), "%s", bk_terminal_screen(terminal));
    ck_assert(bk_terminal_shows(terminal, "Inky suit"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_costume_in_work_says_what_can_be_worked_on_and_an_unlisted_one_why)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "/ travelling Enter");
    ck_assert_msg(bk_terminal_shows(terminal, "can be worked on: Sew the cloak (1 h 30)"), "%s",
                  bk_terminal_screen(terminal));
    bk_terminal_press(terminal, "Escape / sunday Enter");
    ck_assert_msg(bk_terminal_shows(terminal, "no piece is listed yet"), "%s", bk_terminal_screen(terminal));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(the_rail_of_one_that_is_put_away_says_so)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "P z a Enter");
    ck_assert_msg(bk_terminal_shows(terminal, "put away; 17 days to opening"), "%s",
                  bk_terminal_screen(terminal));
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("rail screen", the_first_line_tells_the_production_and_the_days_to_its_opening,
             each_costume_has_a_line_with_its_number_role_title_seam_state_wait_and_due_day,
             a_wide_terminal_shows_the_wearer_and_all_waits_in_brief,
             costumes_are_counted_by_state_and_by_what_they_wait_on,
             the_costume_under_the_cursor_tells_its_waits_whole_below_the_list,
             arrows_move_the_cursor_line_and_stop_at_the_ends,
             page_keys_walk_through_a_long_rail_and_say_which_part_is_seen,
             moving_the_cursor_sends_only_the_cells_that_change, q_leaves_and_gives_the_terminal_back,
             a_production_without_costumes_says_which_key_hangs_the_first,
             what_is_late_and_tight_stands_in_one_line_and_is_found_by_its_word,
             a_costume_in_work_says_what_can_be_worked_on_and_an_unlisted_one_why,
             the_rail_of_one_that_is_put_away_says_so)
