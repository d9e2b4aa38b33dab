#include <string.h>

#include "screen/form_fields.h"
#include "screen/show.h"
#include "support/testing.h"

static bk_terminal *form_on(const char *keys)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, keys);
    return terminal;
}

START_TEST(the_words_of_a_field_are_shown_with_what_they_mean)
{
    bk_terminal *terminal = form_on("T +");
    ck_assert(bk_terminal_shows(terminal, "measuring"));
    ck_assert(bk_terminal_shows(terminal, "dress parade; costumes are due"));
    bk_terminal_press(terminal, "Escape H +");
    bk_terminal_press(terminal, "Down");
    ck_assert(bk_terminal_shows(terminal, "1 to 5 of 10"));
    bk_terminal_press(terminal, "Down PageDown PageDown Down");
    ck_assert(bk_terminal_shows(terminal, "> dye"));
    ck_assert(bk_terminal_shows(terminal, "6 to 10 of 10"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(the_list_narrows_with_every_letter_and_the_nearest_is_taken)
{
    bk_terminal *terminal = form_on("T + p");
    ck_assert(bk_terminal_shows(terminal, "> photo"));
    ck_assert(bk_terminal_shows(terminal, "performance"));
    ck_assert(!bk_terminal_shows(terminal, "strike"));
    bk_terminal_press(terminal, "a");
    ck_assert(bk_terminal_shows(terminal, "> parade"));
    bk_terminal_press(terminal, "Enter");
    bk_assert_at_field(terminal, "on");
    bk_assert_field(terminal, "what", "parade");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(something_is_found_by_what_is_told_of_it)
{
    bk_terminal *terminal = form_on("T + first");
    ck_assert(bk_terminal_shows(terminal, "> opening"));
    bk_terminal_press(terminal, "Tab");
    bk_assert_field(terminal, "what", "opening");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(arrows_choose_in_the_list_of_an_empty_field)
{
    bk_terminal *terminal = form_on("T +");
    ck_assert(bk_terminal_shows(terminal, "Down pick"));
    bk_terminal_press(terminal, "Down Down Down");
    ck_assert(bk_terminal_shows(terminal, "> photo"));
    ck_assert(bk_terminal_shows(terminal, "Up, Down choose"));
    bk_terminal_press(terminal, "Up Enter");
    bk_assert_field(terminal, "what", "fittings");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(up_from_the_first_goes_back_to_the_field_and_changes_nothing)
{
    bk_terminal *terminal = form_on("T + Down Up");
    bk_assert_at_field(terminal, "what");
    ck_assert(!bk_terminal_shows(terminal, "> measuring"));
    bk_terminal_press(terminal, "Escape");
    ck_assert(!bk_terminal_shows(terminal, "New date"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(escape_leaves_the_list_and_what_was_typed_stays)
{
    bk_terminal *terminal = form_on("T + pa Escape");
    ck_assert(bk_terminal_shows(terminal, "New date"));
    bk_assert_field(terminal, "what", "pa");
    bk_terminal_press(terminal, "Enter");
    bk_assert_field(terminal, "what", "parade"); // there is no other word that begins so
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_letter_takes_the_place_of_what_was_picked)
{
    bk_terminal *terminal = form_on("T + parade Enter Up d");
    bk_assert_field(terminal, "what", "  d");
    ck_assert(bk_terminal_shows(terminal, "> dress"));
    bk_terminal_press(terminal, "Enter");
    bk_assert_field(terminal, "what", "dress");
    bk_terminal_press(terminal, "BackTab fi Down BackTab Enter");
    bk_assert_field(terminal, "what", "opening"); // fittings and the first night begin with it
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(where_nothing_matches_the_whole_list_is_shown_and_the_nearest_is_named)
{
    bk_terminal *terminal = form_on("T + zeppelin");
    ck_assert(bk_terminal_shows(terminal, "nothing begins so; all there are:"));
    ck_assert(bk_terminal_shows(terminal, "photo call"));
    bk_terminal_press(terminal, "Enter");
    ck_assert(bk_terminal_shows(terminal, "There is no \"zeppelin\" to pick. Choose one of the list."));
    bk_assert_at_field(terminal, "what");
    bk_assert_field(terminal, "what", "zeppelin");
    bk_terminal_press(terminal, "Control-U perade Enter");
    ck_assert(bk_terminal_shows(terminal, "the nearest is \"parade\""));
    ck_assert(bk_terminal_shows(terminal, "> parade"));
    bk_terminal_press(terminal, "Enter");
    bk_assert_field(terminal, "what", "parade");
    bk_assert_at_field(terminal, "on");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_wrong_name_can_be_left_standing_and_mended_later)
{
    bk_terminal *terminal = form_on("T + zeppelin Enter Tab");
    bk_assert_at_field(terminal, "on");
    bk_assert_field(terminal, "what", "not understood");
    bk_terminal_press(terminal, "Up");
    ck_assert(bk_terminal_shows(terminal, "nothing begins so; all there are:"));
    bk_terminal_press(terminal, "Down Down Enter");
    bk_assert_field(terminal, "what", "fittings");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(names_and_what_is_told_of_them_have_the_room_they_need)
{
    bk_terminal *terminal = form_on("Enter y");
    ck_assert(bk_terminal_shows(terminal, "Shirt, full cut (historical squares and…  "));
    ck_assert(bk_terminal_shows(terminal, "40 h 50, 19 steps, 3 fittings"));
    bk_terminal_press(terminal, "Down Down"); // what is chosen is told whole
    ck_assert(bk_terminal_shows(terminal, "Shirt, full cut (historical squares and gussets"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_list_takes_several_with_semicolons_between_them)
{
    bk_terminal *terminal = form_on("H + Nele Enter ha;");
    bk_assert_field(terminal, "skills", "hand;");
    ck_assert(!bk_terminal_shows(terminal, "hand-finishing")); // it is there once, that is enough
    bk_terminal_press(terminal, "cra Enter");
    bk_assert_field(terminal, "skills", "hand; craft");
    bk_assert_at_field(terminal, "Monday");
    bk_terminal_press(terminal, "Up dy Enter");
    bk_assert_field(terminal, "skills", "hand; craft; dye");
    bk_terminal_press(terminal, "10-13 Control-S");
    ck_assert(!bk_terminal_shows(terminal, "New person"));
    ck_assert(bk_terminal_shows(terminal, "Nele"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_text_of_ones_own_is_right_where_the_list_only_suggests)
{
    bk_terminal *terminal = form_on("M + thread Enter each Enter Enter Enter wool");
    bk_terminal_press(terminal, "Space shop Enter");
    bk_assert_field(terminal, "supplier", "wool shop");
    bk_assert_at_field(terminal, "price");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_stands_in_a_field_is_not_cut_for_what_is_told_of_it)
{
    bk_terminal *terminal = form_on("O Enter +");
    bk_assert_field(terminal, "order of work", "Lined bodice, set-in sleeve, light bones, hooks at back");
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("picking in forms", the_words_of_a_field_are_shown_with_what_they_mean,
             the_list_narrows_with_every_letter_and_the_nearest_is_taken,
             something_is_found_by_what_is_told_of_it, arrows_choose_in_the_list_of_an_empty_field,
             up_from_the_first_goes_back_to_the_field_and_changes_nothing,
             escape_leaves_the_list_and_what_was_typed_stays, a_letter_takes_the_place_of_what_was_picked,
             where_nothing_matches_the_whole_list_is_shown_and_the_nearest_is_named,
             a_wrong_name_can_be_left_standing_and_mended_later,
             what_stands_in_a_field_is_not_cut_for_what_is_told_of_it,
             names_and_what_is_told_of_them_have_the_room_they_need,
             a_list_takes_several_with_semicolons_between_them,
             a_text_of_ones_own_is_right_where_the_list_only_suggests)
