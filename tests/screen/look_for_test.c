#include <string.h>

#include "screen/show.h"
#include "screen/terminal.h"
#include "support/testing.h"

static bk_terminal *terminal_with_show(void)
{
    bk_show_import();
    return bk_terminal_start(NULL);
}

static const char *chosen_row(const bk_terminal *terminal)
{
    return bk_terminal_row(terminal, bk_terminal_chosen(terminal));
}

START_TEST(it_finds_while_one_types_and_goes_to_a_step_on_its_costume)
{
    bk_terminal *terminal = terminal_with_show();
    bk_terminal_press(terminal, "l");
    ck_assert(bk_terminal_shows(terminal, "Type a few letters"));
    bk_terminal_press(terminal, "lace");
    ck_assert_msg(bk_terminal_shows(terminal, "1 found"), "%s", bk_terminal_screen(terminal));
    ck_assert(bk_terminal_shows(terminal, ">step       G1/lace"));
    bk_terminal_press(terminal, "Enter");
    ck_assert(bk_terminal_shows(terminal, "Coronation gown"));
    ck_assert_msg(strstr(chosen_row(terminal), "Sew the lace") != NULL, "%s", bk_terminal_screen(terminal));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(performers_and_roles_are_found_under_the_cast)
{
    bk_terminal *terminal = terminal_with_show();
    bk_terminal_press(terminal, "l chidi Enter");
    ck_assert_msg(strstr(chosen_row(terminal), "Chidi Okoro") != NULL, "%s", bk_terminal_screen(terminal));
    bk_terminal_press(terminal, "l ghost Enter");
    ck_assert_msg(strstr(chosen_row(terminal), "Ghost") != NULL, "%s", bk_terminal_screen(terminal));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_material_is_found_from_any_screen)
{
    bk_terminal *terminal = terminal_with_show();
    bk_terminal_press(terminal, "D l flannel Enter");
    ck_assert_msg(strstr(chosen_row(terminal), "wool flannel") != NULL, "%s", bk_terminal_screen(terminal));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(another_of_those_found_is_chosen_with_the_arrows)
{
    bk_terminal *terminal = terminal_with_show();
    bk_terminal_press(terminal, "l cloak");
    ck_assert_msg(bk_terminal_shows(terminal, ">costume    1B"), "%s", bk_terminal_screen(terminal));
    bk_terminal_press(terminal, "Down Enter");
    ck_assert_msg(strstr(chosen_row(terminal), "Cloak") != NULL, "%s", bk_terminal_screen(terminal));
    ck_assert(bk_terminal_shows(terminal, "Travelling cloak"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_is_not_there_is_said_and_escape_leaves_everything_as_it_was)
{
    bk_terminal *terminal = terminal_with_show();
    bk_terminal_press(terminal, "Down");
    bk_terminal_press(terminal, "l zebra");
    ck_assert(bk_terminal_shows(terminal, "Nothing of this production has that"));
    bk_terminal_press(terminal, "Enter");
    ck_assert(bk_terminal_shows(terminal, "Nothing of this production has that"));
    bk_terminal_press(terminal, "Control-U");
    ck_assert(bk_terminal_shows(terminal, "Type a few letters"));
    bk_terminal_press(terminal, "Escape");
    ck_assert(bk_terminal_shows(terminal, "ready 1"));
    ck_assert(!bk_terminal_shows(terminal, "Look for"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(without_a_production_there_is_nothing_to_look_for)
{
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "l");
    ck_assert(bk_terminal_shows(terminal, "Open a production first"));
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("looking for something", it_finds_while_one_types_and_goes_to_a_step_on_its_costume,
             performers_and_roles_are_found_under_the_cast, a_material_is_found_from_any_screen,
             another_of_those_found_is_chosen_with_the_arrows,
             what_is_not_there_is_said_and_escape_leaves_everything_as_it_was,
             without_a_production_there_is_nothing_to_look_for)
