#include <string.h>

#include "screen/show.h"
#include "screen/terminal.h"
#include "support/testing.h"

START_TEST(the_rail_follows_the_size_of_the_terminal_at_once)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "Down Down");
    ck_assert(!bk_terminal_shows(terminal, "Ana Ruíz  "));
    bk_terminal_resize(terminal, 48, 160);
    ck_assert(bk_terminal_shows(terminal, "Ana Ruíz  "));
    ck_assert_ptr_nonnull(strstr(bk_terminal_row(terminal, 47), "q leave"));
    ck_assert_ptr_nonnull(strstr(bk_terminal_row(terminal, bk_terminal_chosen(terminal)), "1B Salt Queen"));
    bk_terminal_resize(terminal, 24, 80);
    ck_assert_ptr_nonnull(strstr(bk_terminal_row(terminal, 23), "q leave"));
    ck_assert_ptr_nonnull(strstr(bk_terminal_row(terminal, bk_terminal_chosen(terminal)), "1B Salt Queen"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(every_size_from_the_smallest_on_keeps_its_bottom_line_and_right_edge)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    for (size_t columns = 81; columns <= 200; columns += 7) {
        size_t rows = columns / 4 + 4;
        bk_terminal_resize(terminal, rows, columns);
        ck_assert_ptr_nonnull(strstr(bk_terminal_row(terminal, rows - 1), "q leave"));
        ck_assert_ptr_nonnull(strstr(bk_terminal_row(terminal, 0), "Fri 19 Mar"));
        ck_assert_ptr_nonnull(
            strstr(bk_terminal_row(terminal, bk_terminal_find(terminal, "Mon 1 Mar")), "late"));
    }
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_terminal_that_is_too_small_says_how_large_it_must_be)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "Down");
    bk_terminal_resize(terminal, 23, 80);
    ck_assert(
        bk_terminal_shows(terminal, "Bodkin needs 80 columns and 24 rows; this terminal has 80 and 23."));
    bk_terminal_resize(terminal, 24, 79);
    ck_assert(
        bk_terminal_shows(terminal, "Bodkin needs 80 columns and 24 rows; this terminal has 79 and 24."));
    bk_terminal_resize(terminal, 1, 1);
    bk_terminal_resize(terminal, 2, 12);
    bk_terminal_press(terminal, "Down Enter");
    bk_terminal_resize(terminal, 24, 80);
    ck_assert_ptr_nonnull(strstr(bk_terminal_row(terminal, bk_terminal_chosen(terminal)), "1A Salt Queen"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_terminal_that_begins_too_small_can_be_left)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(&(bk_terminal_options){.rows = 10, .columns = 40});
    ck_assert(bk_terminal_shows(terminal, "Bodkin needs 80 columns"));
    ck_assert_int_eq(bk_terminal_end(terminal, "q"), 0);
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_terminal_made_too_small_while_something_is_typed_can_be_left_and_keeps_what_was_typed)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "/ que");
    bk_terminal_resize(terminal, 10, 40);
    bk_terminal_press(terminal, "x Backspace");
    bk_terminal_resize(terminal, 24, 80);
    ck_assert(bk_terminal_shows(terminal, "/ que"));
    bk_terminal_resize(terminal, 10, 40);
    ck_assert_int_eq(bk_terminal_end(terminal, "q"), 0);
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(the_costume_screen_breaks_its_sentences_anew_for_another_width)
{
    bk_show_import();
    bk_show_rewrite("materials.csv", "material,unit,on_hand\nbrushed wool flannel heather grey,m,1\n");
    bk_show_rewrite("orders.csv", "material,quantity,ordered_on,due_on\n");
    bk_show_replace("needs.csv",
                    "piece,step,material,quantity\nG1,cut,brushed wool flannel heather grey,2.4\n");
    bk_terminal *terminal = bk_terminal_start(&(bk_terminal_options){.rows = 40, .columns = 140});
    bk_terminal_press(terminal, "Down Enter");
    size_t row = bk_terminal_find(terminal, "needs 2.4 m of brushed wool flannel heather grey");
    ck_assert_ptr_nonnull(strstr(bk_terminal_row(terminal, row), "1.4 m not ordered"));
    bk_terminal_resize(terminal, 24, 80);
    ck_assert_ptr_null(strstr(bk_terminal_row(terminal, row), "1.4 m not ordered"));
    ck_assert_ptr_nonnull(strstr(bk_terminal_row(terminal, row + 1), "not ordered"));
    ck_assert_ptr_nonnull(strstr(bk_terminal_row(terminal, bk_terminal_chosen(terminal)), "Cut the gown"));
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("sizes", the_rail_follows_the_size_of_the_terminal_at_once,
             every_size_from_the_smallest_on_keeps_its_bottom_line_and_right_edge,
             a_terminal_that_is_too_small_says_how_large_it_must_be,
             a_terminal_that_begins_too_small_can_be_left,
             a_terminal_made_too_small_while_something_is_typed_can_be_left_and_keeps_what_was_typed,
             the_costume_screen_breaks_its_sentences_anew_for_another_width)
