#include "screen/show.h"
#include "screen/terminal.h"
#include "support/testing.h"

START_TEST(a_question_mark_shows_the_keys_of_the_rail_and_escape_goes_back)
{
    static const char *const told[] = {"Rail: keys",        "open the costume under the cursor",
                                       "wait on measures",  "wait on cloth",
                                       "wait on a fitting", "wait on hand sewing",
                                       "that is out"};
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "Down ?");
    for (size_t i = 0; i < sizeof told / sizeof told[0]; i++)
        if (!bk_terminal_shows(terminal, told[i]))
            ck_abort_msg("\"%s\" is missing:\n%s", told[i], bk_terminal_screen(terminal));
    bk_terminal_press(terminal, "Escape");
    ck_assert(bk_terminal_shows(terminal, "> 1A Salt Queen") ||
              bk_terminal_shows(terminal, ">1A Salt Queen"));
    bk_terminal_press(terminal, "? ?");
    ck_assert(!bk_terminal_shows(terminal, "Rail: keys"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(keys_that_do_not_fit_are_reached_by_scrolling)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "?");
    ck_assert(bk_terminal_shows(terminal, "more below"));
    ck_assert(!bk_terminal_shows(terminal, "nothing can be done until somebody acts"));
    bk_terminal_press(terminal, "End");
    ck_assert(bk_terminal_shows(terminal, "nothing can be done until somebody acts"));
    ck_assert(bk_terminal_shows(terminal, "more above"));
    bk_terminal_press(terminal, "Home");
    ck_assert(bk_terminal_shows(terminal, "open the costume under the cursor"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(the_keys_of_every_screen_are_told_below_those_of_one)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(&(bk_terminal_options){.rows = 70, .columns = 80});
    bk_terminal_press(terminal, "Enter ?");
    size_t own = bk_terminal_find(terminal, "back to the rail, at the same place");
    size_t title = bk_terminal_find(terminal, "On every screen");
    ck_assert_uint_gt(title, own);
    ck_assert_uint_gt(bk_terminal_find(terminal, "undo what you did last"), title);
    ck_assert_uint_gt(bk_terminal_find(terminal, "leave the program"), title);
    ck_assert_uint_gt(bk_terminal_find(terminal, "What the words mean"), title);
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(the_costume_screen_has_keys_of_its_own)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "Enter ?");
    ck_assert(bk_terminal_shows(terminal, "Costume: keys"));
    ck_assert(bk_terminal_shows(terminal, "back to the rail, at the same place"));
    bk_terminal_press(terminal, "Escape");
    ck_assert(bk_terminal_shows(terminal, "2A  Oilskin"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(q_leaves_from_every_screen)
{
    static const char *const ways[] = {"q", "Enter q", "? q", "P q", "P ? q"};
    bk_show_import();
    for (size_t i = 0; i < sizeof ways / sizeof ways[0]; i++) {
        bk_terminal *terminal = bk_terminal_start(NULL);
        ck_assert_int_eq(bk_terminal_end(terminal, ways[i]), 0);
        bk_terminal_close(terminal);
    }
}
END_TEST

START_TEST(control_s_does_not_stop_what_the_terminal_shows)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "Control-S");
    size_t row = bk_terminal_chosen(terminal);
    bk_terminal_press(terminal, "Down");
    ck_assert_uint_eq(bk_terminal_chosen(terminal), row + 1);
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_key_without_a_meaning_changes_nothing)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "Down");
    size_t row = bk_terminal_chosen(terminal);
    bk_terminal_press(terminal, "z Z é ~");
    bk_terminal_send(terminal, "\001");
    bk_terminal_send(terminal, "\033[99~");
    ck_assert_uint_eq(bk_terminal_chosen(terminal), row);
    ck_assert(bk_terminal_shows(terminal, "The Salt Road"));
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("keys", a_question_mark_shows_the_keys_of_the_rail_and_escape_goes_back,
             keys_that_do_not_fit_are_reached_by_scrolling,
             the_keys_of_every_screen_are_told_below_those_of_one, the_costume_screen_has_keys_of_its_own,
             q_leaves_from_every_screen, control_s_does_not_stop_what_the_terminal_shows,
             a_key_without_a_meaning_changes_nothing)
