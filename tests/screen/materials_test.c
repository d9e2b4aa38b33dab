#include <string.h>

#include "screen/show.h"
#include "screen/terminal.h"
#include "support/program.h"
#include "support/testing.h"

// The Salt Road needs 2.4 m of wool flannel for G1/cut; 1 m lies on the shelf, 3 m are due on Tue 9 Mar.

static bk_terminal *terminal_on_materials(void)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "M");
    return terminal;
}

static const char *chosen_row(const bk_terminal *terminal)
{
    return bk_terminal_row(terminal, bk_terminal_chosen(terminal));
}

#define SHOWS(terminal, text) \
    ck_assert_msg(bk_terminal_shows((terminal), (text)), "no \"%s\" in\n%s", (text), \
                  bk_terminal_screen(terminal))

START_TEST(a_material_tells_its_shelf_what_is_promised_and_who_needs_it)
{
    bk_terminal *terminal = terminal_on_materials();
    const char *row = chosen_row(terminal);
    ck_assert_ptr_nonnull(strstr(row, "wool flannel"));
    ck_assert_ptr_nonnull(strstr(row, "1 m"));
    ck_assert_ptr_nonnull(strstr(row, "3 m"));
    ck_assert_ptr_nonnull(strstr(row, "2.4 m"));
    ck_assert_ptr_nonnull(strstr(row, "on order, due Tue 9 Mar"));
    SHOWS(terminal, "needs 2.4 m for G1/cut Cut the gown");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(counting_the_shelf_changes_what_is_short)
{
    bk_terminal *terminal = terminal_on_materials();
    bk_terminal_press(terminal, "k 2.5 Enter");
    SHOWS(terminal, "Counted: wool flannel, 2.5 m (it was 1 m)");
    ck_assert_ptr_nonnull(strstr(chosen_row(terminal), "enough"));
    bk_terminal_press(terminal, "u");
    ck_assert_ptr_nonnull(strstr(chosen_row(terminal), "on order, due Tue 9 Mar"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(an_order_arrives_in_part_and_the_rest_stays_on_order)
{
    bk_terminal *terminal = terminal_on_materials();
    bk_terminal_press(terminal, "v Control-U 1.25 Control-S");
    const char *row = chosen_row(terminal);
    ck_assert_msg(strstr(row, "2.25 m") != NULL, "%s", bk_terminal_screen(terminal));
    ck_assert_ptr_nonnull(strstr(row, "1.75 m"));
    bk_terminal_press(terminal, "Enter");
    SHOWS(terminal, "arrived Tue 2 Mar");
    SHOWS(terminal, "due Tue 9 Mar");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_is_short_is_to_be_bought_and_stands_in_the_order_already)
{
    bk_terminal *terminal = terminal_on_materials();
    bk_terminal_press(terminal, "Enter Down - Enter");
    SHOWS(terminal, "short of 1.4 m");
    bk_terminal_press(terminal, "Escape");
    SHOWS(terminal, "1 to buy now");
    bk_terminal_press(terminal, "Tab");
    SHOWS(terminal, "To buy now");
    SHOWS(terminal, "No supplier named");
    ck_assert_ptr_nonnull(strstr(chosen_row(terminal), "1.4 m"));
    ck_assert_ptr_nonnull(strstr(chosen_row(terminal), "price not known"));
    bk_terminal_press(terminal, "g");
    SHOWS(terminal, "1.4");
    bk_terminal_press(terminal, "Control-S");
    SHOWS(terminal, "Nothing is to be bought now");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_material_is_made_changed_and_taken_away)
{
    bk_terminal *terminal = terminal_on_materials();
    bk_terminal_press(terminal, "+ hooks Enter each Control-S");
    ck_assert_msg(strstr(chosen_row(terminal), "hooks") != NULL, "%s", bk_terminal_screen(terminal));
    bk_terminal_press(terminal, "e Control-U bars Control-S");
    ck_assert_msg(strstr(chosen_row(terminal), "bars") != NULL, "%s", bk_terminal_screen(terminal));
    bk_terminal_press(terminal, "- Enter");
    ck_assert_msg(!bk_terminal_shows(terminal, ">bars"), "%s", bk_terminal_screen(terminal));
    ck_assert_ptr_nonnull(strstr(chosen_row(terminal), "wool flannel"));
    bk_terminal_press(terminal, "-");
    SHOWS(terminal, "G1/cut");
    ck_assert_ptr_nonnull(strstr(chosen_row(terminal), "wool flannel"));
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("materials screen", a_material_tells_its_shelf_what_is_promised_and_who_needs_it,
             counting_the_shelf_changes_what_is_short, an_order_arrives_in_part_and_the_rest_stays_on_order,
             what_is_short_is_to_be_bought_and_stands_in_the_order_already,
             a_material_is_made_changed_and_taken_away)
