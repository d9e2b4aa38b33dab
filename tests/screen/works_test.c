#include <stdlib.h>
#include <string.h>

#include "screen/terminal.h"
#include "support/program.h"
#include "support/testing.h"

static bk_terminal *among_works(void)
{
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "O");
    return terminal;
}

static bool chosen_shows(const bk_terminal *terminal, const char *text)
{
    return strstr(bk_terminal_row(terminal, bk_terminal_chosen(terminal)), text) != NULL;
}

START_TEST(orders_of_work_are_listed_with_what_they_come_to)
{
    bk_terminal *terminal = among_works();
    bk_terminal_press(terminal, "/ gathered Enter");
    ck_assert(chosen_shows(terminal, "Gathered skirt on a band"));
    ck_assert(chosen_shows(terminal, " h"));
    ck_assert(!chosen_shows(terminal, "own"));
    ck_assert(bk_terminal_shows(terminal, "hem round 3.5 m"));
    ck_assert(bk_terminal_shows(terminal, "From "));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(enter_opens_its_steps_and_escape_goes_back_to_it)
{
    bk_terminal *terminal = among_works();
    bk_terminal_press(terminal, "/ apron Enter Enter");
    ck_assert(bk_terminal_shows(terminal, "Apron"));
    ck_assert(bk_terminal_shows(terminal, "of it by hand"));
    bk_terminal_press(terminal, "Escape");
    ck_assert(bk_terminal_shows(terminal, "Orders of work"));
    ck_assert(chosen_shows(terminal, "Apron"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_copy_is_ones_own_and_changed_freely)
{
    bk_terminal *terminal = among_works();
    bk_terminal_press(terminal, "/ apron Enter c Control-U Pinafore Enter");
    ck_assert(chosen_shows(terminal, "Pinafore"));
    ck_assert(chosen_shows(terminal, "own"));
    bk_terminal_press(terminal, "Enter + Bless Space it Tab hand Tab 10 Control-S");
    ck_assert(chosen_shows(terminal, "Bless it"));
    ck_assert(chosen_shows(terminal, "10 min"));
    bk_terminal_press(terminal, "- Enter");
    ck_assert(!bk_terminal_shows(terminal, "10 min"));
    bk_terminal_press(terminal, "Escape");
    ck_assert(chosen_shows(terminal, "Pinafore"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_copy_needs_a_name_that_is_free)
{
    bk_terminal *terminal = among_works();
    bk_terminal_press(terminal, "/ apron Enter c Enter");
    ck_assert(bk_terminal_shows(terminal, "Copy of Apron"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(an_order_of_work_taken_away_elsewhere_closes_its_steps)
{
    bk_terminal *terminal = among_works();
    bk_terminal_press(terminal, "/ apron Enter Enter");
    bk_terminal *other = bk_terminal_start(NULL);
    bk_terminal_press(other, "O / apron Enter - Enter");
    bk_terminal_await(terminal, "Orders of work");
    ck_assert(bk_terminal_shows(terminal, "This order of work is no longer there."));
    bk_terminal_close(other);
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(steps_of_an_order_of_work_are_moved)
{
    bk_terminal *terminal = among_works();
    bk_terminal_press(terminal, "/ gathered Enter Enter");
    size_t row = bk_terminal_chosen(terminal);
    bk_terminal_press(terminal, "]");
    ck_assert_uint_eq(bk_terminal_chosen(terminal), row + 1);
    bk_terminal_press(terminal, "Escape");
    ck_assert(chosen_shows(terminal, "own"));
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("orders of work screen", orders_of_work_are_listed_with_what_they_come_to,
             enter_opens_its_steps_and_escape_goes_back_to_it, a_copy_is_ones_own_and_changed_freely,
             a_copy_needs_a_name_that_is_free, an_order_of_work_taken_away_elsewhere_closes_its_steps,
             steps_of_an_order_of_work_are_moved)
