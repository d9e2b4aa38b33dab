#include "screen/seen.h"
#include "screen/show.h"
#include "screen/terminal.h"
#include "support/program.h"
#include "support/shell.h"
#include "support/testing.h"

// Entering, changing, moving and taking away costumes, pieces, steps and needs.

static void assert_order(const bk_terminal *terminal, const char *earlier, const char *later)
{
    if (bk_terminal_find(terminal, earlier) >= bk_terminal_find(terminal, later))
        ck_abort_msg("\"%s\" does not stand before \"%s\":\n%s", earlier, later,
                     bk_terminal_screen(terminal));
}

static bk_terminal *open_costume(const char *number)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "/");
    bk_terminal_press(terminal, number);
    bk_terminal_press(terminal, "Enter Enter");
    return terminal;
}

START_TEST(a_costume_without_pieces_gets_a_piece_a_step_and_what_that_needs)
{
    bk_terminal *terminal = open_costume("3b");
    bk_terminal_press(terminal, "+ Sunday Space coat Control-S");
    assert_chosen(terminal, "3B-1  Sunday coat");
    assert_shows(terminal, "no step is listed for it yet: y takes an order of work, + adds a step");
    bk_terminal_press(terminal, "+");
    assert_shows(terminal, "s or Enter a step");
    bk_terminal_press(terminal, "Enter Cut Space the Space coat Enter cut Enter 50 Control-S");
    assert_chosen(terminal, "next  Cut the coat");
    bk_terminal_press(terminal, "+ n");
    assert_shows(terminal, "New need");
    bk_terminal_press(terminal, "wool Enter 0.8 Enter");
    assert_chosen(terminal, "needs 0.8 m of wool flannel");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_step_is_added_behind_the_one_under_the_cursor_and_comes_after_it)
{
    bk_terminal *terminal = open_costume("1a");
    bk_terminal_press(terminal, "+ s Line Space it Enter machine Enter 30 Control-S");
    assert_chosen(terminal, "Line it");
    assert_shows(terminal, "comes after: Cut the gown");
    assert_order(terminal, "  Cut the gown", "  Line it");
    assert_order(terminal, "  Line it", "  Sew the gown");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_letter_that_adds_nothing_leaves_the_question_open)
{
    bk_terminal *terminal = open_costume("1a");
    bk_terminal_press(terminal, "+ cu");
    assert_shows(terminal, "p a piece");
    bk_terminal_press(terminal, "Escape");
    assert_hides(terminal, "p a piece");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(escape_adds_nothing)
{
    bk_terminal *terminal = open_costume("1a");
    bk_terminal_press(terminal, "+");
    assert_shows(terminal, "p a piece");
    bk_terminal_press(terminal, "Escape");
    assert_hides(terminal, "p a piece");
    assert_chosen(terminal, "Cut the gown");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(enter_changes_what_is_under_the_cursor)
{
    bk_terminal *terminal = open_costume("1a");
    bk_terminal_press(terminal, "Enter Control-U Cut Space the Space silk Control-S");
    assert_chosen(terminal, "Cut the silk");
    bk_terminal_press(terminal, "Down Enter Control-U 1.5 Control-S");
    assert_chosen(terminal, "needs 1.5 m of wool flannel");
    bk_terminal_press(terminal, "Home Down e Control-U Robe Control-S");
    assert_chosen(terminal, "G1  Robe");
    bk_terminal_press(terminal, "Home e Control-U Robes Space of Space state Control-S");
    assert_chosen(terminal, "1A  Robes of state");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_renumbered_costume_stays_open)
{
    bk_terminal *terminal = open_costume("1a");
    bk_terminal_press(terminal, "Home e BackTab Control-U 9Z Control-S");
    assert_chosen(terminal, "9Z  Coronation gown");
    bk_terminal_press(terminal, "Escape a");
    assert_chosen(terminal, "9Z Salt Queen");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(taking_away_asks_first_and_tells_what_goes_with_it)
{
    bk_terminal *terminal = open_costume("1a");
    bk_terminal_press(terminal, "Home Down -");
    assert_shows(terminal, "Take away piece G1 Gown? 3 steps and 1 need go with it.");
    bk_terminal_press(terminal, "Escape");
    assert_shows(terminal, "Cut the gown");
    bk_terminal_press(terminal, "- Enter");
    assert_hides(terminal, "Cut the gown");
    assert_shows(terminal, "No piece hangs under this costume yet");
    bk_terminal_press(terminal, "u");
    assert_shows(terminal, "Cut the gown");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(steps_and_needs_are_taken_away)
{
    bk_terminal *terminal = open_costume("1a");
    bk_terminal_press(terminal, "Down -");
    assert_shows(terminal, "Take away the need of 2.4 m of wool flannel?");
    bk_terminal_press(terminal, "Enter");
    assert_hides(terminal, "needs 2.4 m");
    bk_terminal_press(terminal, "-");
    assert_shows(terminal, "Take away step G1/sew Sew the gown?");
    bk_terminal_press(terminal, "Enter");
    assert_chosen(terminal, "Cut the gown");
    assert_hides(terminal, "  Sew the gown");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_costume_that_is_taken_away_leaves_the_screen)
{
    bk_terminal *terminal = open_costume("3b");
    bk_terminal_press(terminal, "Home - Enter");
    assert_shows(terminal, "The Salt Road");
    assert_shows(terminal, "Taken away: costume 3B Sunday coat.");
    bk_terminal_press(terminal, "a");
    assert_hides(terminal, "Sunday coat");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_piece_that_is_worn_with_other_costumes_says_so_before_it_goes)
{
    bk_show_import();
    bk_show_replace("pieces.csv", "piece,costumes,title,origin\nG1,1A;1B,Gown,make\nC1,1B,Cloak,make\n"
                                  "O1,2A,Oilskin coat,stock\nH1,2B,Shirt,make\nB1,2C,Boots,buy\n"
                                  "S1,3A,Suit,make\nW1,4A,Shroud,make\n");
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "/ 1a Enter Enter Home Down");
    assert_chosen(terminal, "also worn with 1B");
    bk_terminal_press(terminal, "-");
    assert_shows(terminal, "It is also worn with 1B; e takes it from one of them.");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(brackets_move_a_step_and_the_cursor_goes_along)
{
    bk_terminal *terminal = open_costume("1a");
    bk_terminal_press(terminal, "[");
    assert_order(terminal, "  Cut the gown", "  Sew the lace");
    assert_chosen(terminal, "Cut the gown");
    bk_terminal_press(terminal, "] ]");
    assert_order(terminal, "  Sew the gown", "  Cut the gown");
    bk_terminal_press(terminal, "u u");
    assert_order(terminal, "  Cut the gown", "  Sew the lace");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_a_done_step_used_is_told_below)
{
    bk_terminal *terminal = open_costume("1a");
    bk_terminal_press(terminal, "x Enter");
    assert_hides(terminal, "needs 2.4 m");
    assert_shows(terminal, "used 2.4 m of wool flannel");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_costume_is_hung_and_taken_away_from_the_rail)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "+ ghost Enter Enter Second Space shroud Control-S");
    assert_chosen(terminal, "4B Ghost");
    bk_terminal_press(terminal, "e Control-U Third Space shroud Control-S");
    assert_chosen(terminal, "4B Ghost");
    assert_shows(terminal, "4B  Third shroud");
    bk_terminal_press(terminal, "-");
    assert_shows(terminal, "Take away costume 4B Third shroud?");
    bk_terminal_press(terminal, "Enter");
    assert_hides(terminal, "4B Ghost");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_is_taken_away_is_what_was_asked_about_whatever_happens_meanwhile)
{
    bk_terminal *terminal = open_costume("1a");
    bk_terminal_press(terminal, "Home Down Down -");
    assert_shows(terminal, "Take away step G1/lace Sew the lace?");
    bk_ask("UPDATE step SET position = -1 WHERE key = 'sew' AND piece_id = (SELECT id FROM piece WHERE name "
           "= 'G1')");
    bk_terminal_await(terminal, "Take away step G1/lace Sew the lace?");
    bk_terminal_press(terminal, "Enter");
    ck_assert_str_eq(bk_ask("SELECT group_concat(key) FROM (SELECT key FROM step WHERE piece_id = (SELECT id "
                            "FROM piece WHERE name = 'G1') ORDER BY position)"),
                     "sew,cut");
    bk_terminal_press(terminal, "End -");
    assert_shows(terminal, "Take away the need of 2.4 m of wool flannel?");
    bk_ask("DELETE FROM need");
    bk_terminal_press(terminal, "Enter");
    assert_shows(terminal, "It is no longer there: somebody has taken it away.");
    ck_assert_str_eq(bk_ask("SELECT count(*) FROM step WHERE piece_id = (SELECT id FROM piece WHERE name = "
                            "'G1')"),
                     "2");
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("changing a costume", a_costume_without_pieces_gets_a_piece_a_step_and_what_that_needs,
             a_step_is_added_behind_the_one_under_the_cursor_and_comes_after_it,
             a_letter_that_adds_nothing_leaves_the_question_open, escape_adds_nothing,
             enter_changes_what_is_under_the_cursor, a_renumbered_costume_stays_open,
             taking_away_asks_first_and_tells_what_goes_with_it, steps_and_needs_are_taken_away,
             a_costume_that_is_taken_away_leaves_the_screen,
             a_piece_that_is_worn_with_other_costumes_says_so_before_it_goes,
             brackets_move_a_step_and_the_cursor_goes_along, what_a_done_step_used_is_told_below,
             a_costume_is_hung_and_taken_away_from_the_rail,
             what_is_taken_away_is_what_was_asked_about_whatever_happens_meanwhile)
