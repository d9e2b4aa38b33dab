#include <string.h>

#include "screen/show.h"
#include "screen/terminal.h"
#include "support/shell.h"
#include "support/testing.h"

static const char *const more_costumes =
    "costume,role,title\n0A,Clerk,Dressing gown\n1A,Salt Queen,Coronation gown\n"
    "1B,Salt Queen,Travelling cloak\n2A,Ferryman,Oilskin\n2B,Ferryman,Linen shirt\n"
    "2C,Ferryman,Boots\n3A,Clerk,Inky suit\n4A,Ghost,Winding sheet\n";

static const char *chosen_row(const bk_terminal *terminal)
{
    return bk_terminal_row(terminal, bk_terminal_chosen(terminal));
}

START_TEST(the_rail_follows_what_another_program_changes_and_the_cursor_stays_on_its_costume)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "/ a Enter Escape Down Down Down");
    ck_assert_ptr_nonnull(strstr(chosen_row(terminal), "2B Ferryman"));
    bk_show_replace("costumes.csv", more_costumes);
    bk_terminal_await(terminal, "0A Clerk");
    ck_assert(bk_terminal_shows(terminal, "Winding"));
    ck_assert_ptr_nonnull(strstr(chosen_row(terminal), "2B Ferryman"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_narrowed_rail_stays_narrowed_when_it_is_read_anew)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "/ clerk Enter Down");
    bk_show_replace("costumes.csv", more_costumes);
    bk_terminal_await(terminal, "0A Clerk");
    ck_assert(bk_terminal_shows(terminal, "Narrowed to “clerk”: 2 of 8"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(the_costume_screen_follows_and_keeps_its_step)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "Down Enter End");
    ck_assert_ptr_nonnull(strstr(chosen_row(terminal), "Sew the gown"));
    bk_show_replace("materials.csv", "material,unit,on_hand\nwool flannel,m,1.5\n");
    bk_terminal_await(terminal, "1.5 m on the shelf");
    ck_assert_ptr_nonnull(strstr(chosen_row(terminal), "Sew the gown"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_costume_that_is_taken_off_the_rail_while_it_is_open_is_told)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "/ 3b Enter Enter");
    bk_show_replace("costumes.csv", more_costumes);
    bk_terminal_await(terminal, "3B no longer hangs on the rail.");
    bk_terminal_press(terminal, "Escape");
    ck_assert(bk_terminal_shows(terminal, "0A Clerk"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(the_keys_screen_stays_open_while_the_store_changes_beneath)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "?");
    bk_show_replace("costumes.csv", more_costumes);
    bk_terminal_await(terminal, "Rail: keys");
    bk_terminal_press(terminal, "Escape");
    bk_terminal_await(terminal, "0A Clerk");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_production_that_is_renamed_at_another_terminal_stays_on_the_screen)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "Down Enter");
    bk_ask("UPDATE production SET name = 'The Salt Way'");
    bk_terminal_await(terminal, "The Salt Way");
    ck_assert(bk_terminal_shows(terminal, "Coronation gown"));
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("following", the_rail_follows_what_another_program_changes_and_the_cursor_stays_on_its_costume,
             a_narrowed_rail_stays_narrowed_when_it_is_read_anew,
             the_costume_screen_follows_and_keeps_its_step,
             a_costume_that_is_taken_off_the_rail_while_it_is_open_is_told,
             the_keys_screen_stays_open_while_the_store_changes_beneath,
             a_production_that_is_renamed_at_another_terminal_stays_on_the_screen)
