#include "screen/form_fields.h"
#include "screen/show.h"
#include "support/program.h"
#include "support/testing.h"

static bk_terminal *form_on(const char *keys)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, keys);
    return terminal;
}

static void must_show(const bk_terminal *terminal, const char *text)
{
    ck_assert_msg(bk_terminal_shows(terminal, text), "\"%s\" is not on:\n%s", text,
                  bk_terminal_screen(terminal));
}

START_TEST(a_name_that_is_none_yet_is_made_without_leaving_the_form)
{
    bk_terminal *terminal = form_on("R + Tower Space Guard");
    must_show(terminal, "nothing begins so; all there are:");
    must_show(terminal, "+ make the role \"Tower Guard\"");
    bk_terminal_press(terminal, "Enter");
    must_show(terminal, "There is no role \"Tower Guard\" yet");
    must_show(terminal, "Enter make it");
    bk_terminal_press(terminal, "Enter");
    must_show(terminal, "New role");
    bk_assert_field(terminal, "role", "Tower Guard");
    bk_assert_at_field(terminal, "played by");
    bk_terminal_press(terminal, "Control-S");
    must_show(terminal, "New costume");
    must_show(terminal, "Tower Guard.");
    ck_assert(!bk_terminal_shows(terminal, "u undo")); // here it is a letter
    bk_assert_at_field(terminal, "role");
    bk_assert_field(terminal, "role", "Tower Guard");
    bk_terminal_press(terminal, "Enter");
    bk_assert_field(terminal, "number", "5A");
    bk_terminal_press(terminal, "Enter Mail Control-S");
    must_show(terminal, "New: costume 5A Mail");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(escape_from_what_is_made_comes_back_to_all_that_was_typed)
{
    bk_terminal *terminal = form_on("M g Up Control-U ribbon Down Enter");
    must_show(terminal, "New material");
    bk_terminal_press(terminal, "Escape");
    must_show(terminal, "New order");
    bk_assert_field(terminal, "material", "ribbon");
    bk_terminal_press(terminal, "Escape Enter"); // from the list, and on
    must_show(terminal, "There is no material \"ribbon\" yet");
    bk_terminal_press(terminal, "Enter m Enter Escape");
    must_show(terminal, "Leave without saving?");
    bk_terminal_press(terminal, "y");
    must_show(terminal, "New order");
    bk_assert_field(terminal, "material", "ribbon");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(the_name_given_at_last_is_the_one_that_comes_back)
{
    bk_terminal *terminal = form_on("M g Up Control-U ribbon Down Enter BackTab Space red Enter m Control-S");
    must_show(terminal, "New order");
    bk_assert_field(terminal, "material", "ribbon red");
    bk_terminal_press(terminal, "Enter");
    bk_assert_field(terminal, "quantity", "in m");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(forms_lie_on_forms_as_deep_as_names_are_missing)
{
    bk_terminal *terminal = form_on("R + Sentry Down Enter Udo Down Enter Control-S");
    must_show(terminal, "New role");
    bk_assert_field(terminal, "played by", "Udo");
    bk_terminal_press(terminal, "Control-S");
    must_show(terminal, "New costume");
    bk_assert_field(terminal, "role", "Sentry");
    bk_terminal_press(terminal, "Escape y C");
    must_show(terminal, "Udo");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_is_nearly_so_is_offered_before_a_new_one)
{
    bk_terminal *terminal = form_on("R + Salt Space Quene Enter");
    must_show(terminal, "the nearest is \"Salt Queen\"");
    must_show(terminal, "> Salt Queen");
    bk_terminal_press(terminal, "Enter");
    bk_assert_field(terminal, "role", "Salt Queen");
    bk_assert_at_field(terminal, "number");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_name_with_which_others_begin_can_be_made_too)
{
    bk_terminal *terminal = form_on("R + Salt");
    must_show(terminal, "> Salt Queen");
    bk_terminal_press(terminal, "Down");
    must_show(terminal, "> + make the role \"Salt\"");
    bk_terminal_press(terminal, "Tab Enter"); // only Enter makes it
    ck_assert(!bk_terminal_shows(terminal, "New role"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_exists_is_not_made_again_whatever_its_capitals)
{
    bk_terminal *terminal = form_on("R + salt Space queen");
    must_show(terminal, "> Salt Queen");
    ck_assert(!bk_terminal_shows(terminal, "+ make"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(one_of_several_names_in_a_list_is_made_in_its_place)
{
    bk_terminal *terminal = form_on("C End e Tab Tab Bo;Zora Down Enter Control-S");
    bk_assert_field(terminal, "covered by", "Bo Lindqvist; Zora");
    bk_terminal_press(terminal, "Control-S");
    must_show(terminal, "Changed: role Ghost");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(the_one_of_a_list_that_is_none_is_made_wherever_it_stands)
{
    bk_terminal *terminal = form_on("C End e Tab Tab Zora;Bo Enter");
    bk_assert_field(terminal, "covered by", "Zora;Bo Lindqvist");
    must_show(terminal, "There is no performer \"Zora\" yet. Pick");
    must_show(terminal, "> + make the performer \"Zora\"");
    bk_terminal_press(terminal, "Enter Control-S Control-S");
    must_show(terminal, "Changed: role Ghost");
    bk_terminal_press(terminal, "e");
    bk_assert_field(terminal, "covered by", "Zora; Bo Lindqvist");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_person_or_a_performer_is_made_where_both_can_be_meant)
{
    bk_terminal *terminal = form_on("H a Control-U Zora");
    must_show(terminal, "+ make the person \"Zora\"");
    must_show(terminal, "+ make the performer \"Zora\"");
    bk_terminal_press(terminal, "Down Down Enter");
    must_show(terminal, "New performer");
    bk_terminal_press(terminal, "Control-S");
    bk_assert_field(terminal, "who", "Zora");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(where_there_is_none_yet_the_list_says_how_to_make_one)
{
    bk_show_import();
    bk_show_rewrite("materials.csv", "material,unit\n");
    bk_show_rewrite("needs.csv", "piece,step,material,quantity\n");
    bk_show_rewrite("orders.csv", "material,quantity,ordered_on\n");
    bk_program_must(bodkin("undo"), 0);
    bk_program_must(bodkin("import", bk_show_folder()), 0);
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "/1a Enter Enter + n");
    must_show(terminal, "there is no material yet; type a name to make one");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_quantity_tells_what_its_material_is_counted_in)
{
    bk_terminal *terminal = form_on("M g");
    bk_assert_field(terminal, "quantity", " m");
    bk_terminal_press(terminal, "Escape + buttons Enter each Enter");
    bk_assert_field(terminal, "on the shelf", "in pieces");
    bk_terminal_press(terminal, "Escape y k");
    bk_assert_field(terminal, "on the shelf", "in m");
    bk_terminal_press(terminal, "Escape v");
    bk_assert_field(terminal, "arrived", " m");
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("making what a form names", a_name_that_is_none_yet_is_made_without_leaving_the_form,
             escape_from_what_is_made_comes_back_to_all_that_was_typed,
             the_name_given_at_last_is_the_one_that_comes_back,
             forms_lie_on_forms_as_deep_as_names_are_missing, what_is_nearly_so_is_offered_before_a_new_one,
             a_name_with_which_others_begin_can_be_made_too,
             what_exists_is_not_made_again_whatever_its_capitals,
             one_of_several_names_in_a_list_is_made_in_its_place,
             the_one_of_a_list_that_is_none_is_made_wherever_it_stands,
             a_person_or_a_performer_is_made_where_both_can_be_meant,
             where_there_is_none_yet_the_list_says_how_to_make_one,
             a_quantity_tells_what_its_material_is_counted_in)
