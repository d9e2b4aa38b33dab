#include <stdlib.h>
#include <string.h>

#include "screen/show.h"
#include "screen/terminal.h"
#include "support/program.h"
#include "support/shell.h"
#include "support/testing.h"

static bk_terminal *among_notes(void)
{
    bk_show_import();
    bk_show_replace("notes.csv", "noted_on,from,who,costume,piece,what,done_on\n"
                                 "2027-02-20,rehearsal,the director,1A,,She kneels on wood,\n"
                                 "2027-03-01,fitting,,,G1,Take in the waist,\n"
                                 "2027-02-25,tech,,,B1,Polish the boots,2027-02-26\n"
                                 "2027-03-01,rehearsal,,2B,H1,Cuffs too long,\n");
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "N");
    return terminal;
}

static bool chosen_shows(const bk_terminal *terminal, const char *text)
{
    return strstr(bk_terminal_row(terminal, bk_terminal_chosen(terminal)), text) != NULL;
}

START_TEST(open_notes_stand_by_day_newest_first_and_those_done_with_last)
{
    bk_terminal *terminal = among_notes();
    static const char *const order[] = {"Mon 1 Mar",       "Take in the waist",  "Cuffs too long",
                                        "Sat 20 Feb",      "She kneels on wood", "Done with",
                                        "Polish the boots"};
    ck_assert(bk_terminal_shows(terminal, "3 open, 1 done with"));
    for (size_t i = 1; i < sizeof order / sizeof order[0]; i++)
        ck_assert_uint_gt(bk_terminal_find(terminal, order[i]), bk_terminal_find(terminal, order[i - 1]));
    ck_assert(chosen_shows(terminal, "fitting"));
    ck_assert(chosen_shows(terminal, "G1"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(x_is_done_with_it_and_the_cursor_goes_to_the_next)
{
    bk_terminal *terminal = among_notes();
    bk_terminal_press(terminal, "x");
    ck_assert(bk_terminal_shows(terminal, "2 open, 2 done with"));
    ck_assert(chosen_shows(terminal, "Cuffs too long"));
    ck_assert_uint_gt(bk_terminal_find(terminal, "Take in the waist"),
                      bk_terminal_find(terminal, "Done with"));
    bk_terminal_press(terminal, "u");
    ck_assert(bk_terminal_shows(terminal, "3 open, 1 done with"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(x_opens_again_what_was_done_with)
{
    bk_terminal *terminal = among_notes();
    bk_terminal_press(terminal, "End");
    ck_assert(bk_terminal_shows(terminal, "x open again"));
    bk_terminal_press(terminal, "x");
    ck_assert(bk_terminal_shows(terminal, "4 open, 0 done with"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_note_becomes_a_step_of_its_piece_before_another_one)
{
    bk_terminal *terminal = among_notes();
    bk_terminal_press(terminal, "s");
    ck_assert(bk_terminal_shows(terminal, "Step: Take in the waist"));
    bk_terminal_press(terminal, "Control-U machine Tab Control-U 25 Tab sew Control-S");
    ck_assert(bk_terminal_shows(terminal, "Step from a note: G1 Take in the waist"));
    ck_assert(chosen_shows(terminal, "G1/"));
    ck_assert(bk_terminal_shows(terminal, "Take in the waist, open."));
    ck_assert_str_eq(bk_ask("SELECT kind || ' ' || minutes FROM step WHERE title = 'Take in the waist'"),
                     "machine 25");
    bk_terminal_press(terminal, "s");
    ck_assert(bk_terminal_shows(terminal, "This note is a step already."));
    bk_terminal_press(terminal, "R / Coronation Enter Enter");
    ck_assert(bk_terminal_shows(terminal, "Take in the waist"));
    ck_assert(bk_terminal_shows(terminal, "1 of 4 steps done"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_step_before_which_there_is_none_is_refused)
{
    bk_terminal *terminal = among_notes();
    bk_terminal_press(terminal, "s Tab Tab nothing Control-S");
    ck_assert(bk_terminal_shows(terminal, "Step: Take in the waist"));
    bk_terminal_press(terminal, "Control-U Control-S");
    ck_assert(bk_terminal_shows(terminal, "Step from a note"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(without_a_note_the_screen_says_what_it_is_for)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "N x s e -");
    ck_assert(bk_terminal_shows(terminal, "No note was taken for this production yet"));
    bk_terminal_press(terminal, "+");
    ck_assert(bk_terminal_shows(terminal, "New note"));
    bk_terminal_close(terminal);
}
END_TEST

// The first note as a step of the gown, and the cursor on it.
static void make_a_step(bk_terminal *terminal)
{
    bk_terminal_press(terminal, "s Control-U machine Tab Control-U 25 Control-S");
    ck_assert(bk_terminal_shows(terminal, "Step from a note: G1 Take in the waist"));
}

START_TEST(a_note_whose_step_is_done_stands_with_those_done_with)
{
    bk_terminal *terminal = among_notes();
    make_a_step(terminal);
    ck_assert(bk_terminal_shows(terminal, "3 open, 1 done with"));
    bk_ask("UPDATE step SET done_on = '2027-03-02' WHERE title = 'Take in the waist'");
    bk_terminal_await(terminal, "2 open, 2 done with");
    ck_assert_uint_gt(bk_terminal_find(terminal, "Take in the waist"),
                      bk_terminal_find(terminal, "Done with"));
    bk_terminal_press(terminal, "/ waist Enter");
    ck_assert(bk_terminal_shows(terminal, "Noted on Mon 1 Mar, done with its step."));
    ck_assert(!bk_terminal_shows(terminal, "x open again"));
    bk_terminal_press(terminal, "x");
    ck_assert(bk_terminal_shows(terminal, "It is done with its step; open that again where it stands."));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_note_about_a_done_step_is_open_until_it_is_done_with_itself)
{
    bk_show_import();
    bk_ask(
        "INSERT INTO note (production_id, position, noted_on, piece_id, step_id, what) "
        "SELECT production_id, 1, '2027-03-01', piece_id, id, 'The lace is coming off' FROM step WHERE key "
        "= 'lace'");
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "N");
    ck_assert(bk_terminal_shows(terminal, "1 open, 0 done with"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_step_is_told_with_its_piece_where_the_note_names_none)
{
    bk_terminal *terminal = among_notes();
    make_a_step(terminal);
    bk_ask("UPDATE note SET piece_id = NULL, noted_on = '2027-03-02' WHERE what = 'Take in the waist'");
    bk_terminal_await(terminal, "Tue 2 Mar");
    ck_assert(bk_terminal_shows(terminal, "G1/take-in"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(behind_a_question_mark_stands_no_full_stop)
{
    bk_terminal *terminal = among_notes();
    bk_ask("UPDATE note SET what = 'Who washes the shirts?', noted_on = '2027-03-02' WHERE what LIKE 'Take "
           "in%'");
    bk_terminal_await(terminal, "Who washes the shirts?");
    bk_terminal_press(terminal, "x");
    ck_assert(bk_terminal_shows(terminal, "Note done: Who washes the shirts?"));
    ck_assert(!bk_terminal_shows(terminal, "?."));
    bk_terminal_close(terminal);
}
END_TEST

// A note about the Inky suit, which has these pieces behind those of others.
static bk_terminal *on_a_note_of_the_suit(const char *pieces)
{
    bk_show_import();
    bk_show_rewrite("steps.csv", "piece,step,title,kind,minutes\n");
    bk_show_rewrite("needs.csv", "piece,step,material,quantity\n");
    bk_show_rewrite("pieces.csv", pieces);
    bk_show_replace("notes.csv",
                    "noted_on,from,costume,what\n2027-03-01,rehearsal,3A,He slips on the stairs\n");
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "N s");
    return terminal;
}

START_TEST(a_note_of_a_costume_offers_the_pieces_of_that_costume_first)
{
    bk_terminal *terminal =
        on_a_note_of_the_suit("piece,costumes,title\nG1,1A,Gown\nC1,1B,Cloak\nS1,3A,Suit\nS2,3A,Shoes\n");
    ck_assert_uint_lt(bk_terminal_find(terminal, "S2   Shoes"), bk_terminal_find(terminal, "G1   Gown"));
    bk_terminal_press(terminal, "Down Down Enter Control-S");
    ck_assert(bk_terminal_shows(terminal, "Step from a note: S2 He slips on the stairs"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(the_only_piece_of_the_costume_noted_is_filled_in)
{
    bk_terminal *terminal = on_a_note_of_the_suit("piece,costumes,title\nG1,1A,Gown\nS1,3A,Suit\n");
    bk_terminal_press(terminal, "Control-S");
    ck_assert(bk_terminal_shows(terminal, "Step from a note: S1 He slips on the stairs"));
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("notes screen", open_notes_stand_by_day_newest_first_and_those_done_with_last,
             x_is_done_with_it_and_the_cursor_goes_to_the_next, x_opens_again_what_was_done_with,
             a_note_becomes_a_step_of_its_piece_before_another_one,
             a_step_before_which_there_is_none_is_refused, without_a_note_the_screen_says_what_it_is_for,
             a_note_whose_step_is_done_stands_with_those_done_with,
             a_note_about_a_done_step_is_open_until_it_is_done_with_itself,
             a_step_is_told_with_its_piece_where_the_note_names_none,
             behind_a_question_mark_stands_no_full_stop,
             a_note_of_a_costume_offers_the_pieces_of_that_costume_first,
             the_only_piece_of_the_costume_noted_is_filled_in)
