#include <stdio.h>
#include <string.h>

#include "screen/show.h"
#include "screen/terminal.h"
#include "support/program.h"
#include "support/testing.h"

START_TEST(an_empty_workroom_says_how_to_begin)
{
    bk_terminal *terminal = bk_terminal_start(NULL);
    ck_assert(bk_terminal_shows(terminal, "No production hangs in this workroom yet"));
    ck_assert(bk_terminal_shows(terminal, "bodkin import DIR"));
    ck_assert(bk_terminal_shows(terminal, "production,opens"));
    bk_terminal_press(terminal, "Enter Down End");
    ck_assert(bk_terminal_shows(terminal, "No production hangs in this workroom yet"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(the_two_lines_it_shows_make_a_production)
{
    enum { TEXT_ROOM = 256 };
    char text[TEXT_ROOM];
    bk_terminal *terminal = bk_terminal_start(NULL);
    size_t row = bk_terminal_find(terminal, "production,opens");
    int length = snprintf(text, sizeof text, "%s\n",
                          bk_terminal_row(terminal, row) + strspn(bk_terminal_row(terminal, row), " "));
    const char *second = bk_terminal_row(terminal, row + 1);
    snprintf(text + length, sizeof text - (size_t)length, "%s\n", second + strspn(second, " "));
    bk_test_write_text(bk_test_path("production.csv"), text);
    bk_program_must(bodkin("import", bk_test_folder()), 0);
    bk_terminal_await(terminal, "17 days to opening");
    const char *made = bk_terminal_row(terminal, bk_terminal_find(terminal, "The Paper Lantern"));
    ck_assert_ptr_nonnull(strstr(made, "Fri 19 Mar   17 days to opening"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_production_brought_in_meanwhile_appears_by_itself)
{
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_show_import();
    bk_terminal_await(terminal, "The Salt Road");
    const char *row = bk_terminal_row(terminal, bk_terminal_find(terminal, "The Salt Road"));
    ck_assert_ptr_nonnull(strstr(row, "Fri 19 Mar   17 days to opening"));
    bk_terminal_press(terminal, "Enter");
    ck_assert(bk_terminal_shows(terminal, "1A Salt Queen"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(P_goes_from_the_rail_to_the_productions_and_enter_to_the_rail_of_another)
{
    bk_show_import();
    bk_long_show_import(3);
    bk_terminal *terminal = bk_terminal_start(NULL);
    ck_assert(bk_terminal_shows(terminal, "A Hundred Coats"));
    bk_terminal_press(terminal, "P");
    ck_assert_ptr_nonnull(strstr(bk_terminal_row(terminal, bk_terminal_chosen(terminal)), "A Hundred Coats"));
    bk_terminal_press(terminal, "Down Enter");
    ck_assert(bk_terminal_shows(terminal, "1A Salt Queen"));
    bk_terminal_press(terminal, "P");
    ck_assert_ptr_nonnull(strstr(bk_terminal_row(terminal, bk_terminal_chosen(terminal)), "The Salt Road"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(the_production_shown_last_is_under_the_cursor)
{
    bk_show_import();
    bk_test_write_text(bk_test_path("production.csv"), "production,opens\nLast Winter,2027-01-08\n");
    bk_program_must(bodkin("import", bk_test_folder()), 0);
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "P");
    ck_assert(bk_terminal_shows(terminal, "opened 53 days ago"));
    ck_assert_ptr_nonnull(strstr(bk_terminal_row(terminal, bk_terminal_chosen(terminal)), "The Salt Road"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_production_is_made_with_its_name_and_its_opening)
{
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "+ The Space Long Space Winter Enter 19 Space mar Control-S");
    const char *made = bk_terminal_row(terminal, bk_terminal_chosen(terminal));
    ck_assert_msg(strstr(made, "The Long Winter") != NULL, "%s", bk_terminal_screen(terminal));
    ck_assert_ptr_nonnull(strstr(made, "Fri 19 Mar   17 days to opening"));
    bk_terminal_press(terminal, "Enter");
    ck_assert(bk_terminal_shows(terminal, "The Long Winter"));
    ck_assert(bk_terminal_shows(terminal, "17 days to opening, Fri 19 Mar"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(its_costumes_and_open_steps_are_counted_where_there_is_room)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(&(bk_terminal_options){.rows = 30, .columns = 120});
    bk_terminal_press(terminal, "P");
    const char *row = bk_terminal_row(terminal, bk_terminal_chosen(terminal));
    ck_assert_msg(strstr(row, "3         8     7 of 10") != NULL, "%s", bk_terminal_screen(terminal));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(one_that_is_put_away_is_out_of_sight_and_comes_back)
{
    bk_show_import();
    bk_long_show_import(3);
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "P Down z");
    ck_assert_msg(bk_terminal_shows(terminal, "Put away: production The Salt Road"), "%s",
                  bk_terminal_screen(terminal));
    bk_terminal_press(terminal, "Home");
    ck_assert_msg(!bk_terminal_shows(terminal, "The Salt Road"), "%s", bk_terminal_screen(terminal));
    ck_assert(bk_terminal_shows(terminal, "1 in work; 1 put away, a shows it too"));
    bk_terminal_press(terminal, "a Down");
    ck_assert_ptr_nonnull(strstr(bk_terminal_row(terminal, bk_terminal_chosen(terminal)), "The Salt Road"));
    ck_assert_ptr_nonnull(strstr(bk_terminal_row(terminal, bk_terminal_chosen(terminal)), "put away"));
    bk_terminal_press(terminal, "z");
    ck_assert(!bk_terminal_shows(terminal, "put away,"));
    ck_assert(bk_terminal_shows(terminal, "17 days to opening"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_production_that_is_renamed_stays_open)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "P e End Space II Control-S");
    ck_assert(bk_terminal_shows(terminal, "The Salt Road II"));
    bk_terminal_press(terminal, "R");
    ck_assert_msg(bk_terminal_shows(terminal, "The Salt Road II   nobody works here yet"), "%s",
                  bk_terminal_screen(terminal));
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("productions screen", an_empty_workroom_says_how_to_begin,
             the_two_lines_it_shows_make_a_production, a_production_brought_in_meanwhile_appears_by_itself,
             P_goes_from_the_rail_to_the_productions_and_enter_to_the_rail_of_another,
             the_production_shown_last_is_under_the_cursor,
             a_production_is_made_with_its_name_and_its_opening,
             its_costumes_and_open_steps_are_counted_where_there_is_room,
             one_that_is_put_away_is_out_of_sight_and_comes_back, a_production_that_is_renamed_stays_open)
