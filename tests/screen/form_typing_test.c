#include <string.h>

#include "screen/form_fields.h"
#include "screen/show.h"
#include "support/testing.h"

// A form for a new date, on top of the Dates; the cursor stands in "what".
static bk_terminal *new_date(void)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "T +");
    ck_assert(bk_terminal_shows(terminal, "New date"));
    return terminal;
}

// ------------------------------------------------------------------------------------------------ going on

START_TEST(enter_goes_from_field_to_field_and_saves_on_the_last)
{
    bk_terminal *terminal = new_date();
    bk_assert_at_field(terminal, "what");
    bk_terminal_press(terminal, "pho Enter");
    bk_assert_at_field(terminal, "on");
    bk_terminal_press(terminal, "2027-03-08 Enter");
    bk_assert_at_field(terminal, "at");
    bk_terminal_press(terminal, "19:30 Enter");
    bk_assert_at_field(terminal, "note");
    bk_terminal_press(terminal, "bring Space the Space hats");
    ck_assert(bk_terminal_shows(terminal, "Enter save"));
    bk_terminal_press(terminal, "Enter");
    ck_assert(!bk_terminal_shows(terminal, "New date"));
    ck_assert_ptr_nonnull(strstr(bk_terminal_row(terminal, bk_terminal_chosen(terminal)), "photo"));
    ck_assert(bk_terminal_shows(terminal, "19:30"));
    ck_assert(bk_terminal_shows(terminal, "bring the hats"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(control_s_saves_from_every_field_at_once)
{
    bk_terminal *terminal = new_date();
    bk_terminal_press(terminal, "tech Enter fri Control-S");
    ck_assert(bk_terminal_shows(terminal, "Fri 5 Mar"));
    ck_assert(!bk_terminal_shows(terminal, "New date"));
    bk_terminal_press(terminal, "u Down");
    ck_assert(!bk_terminal_shows(terminal, "Fri 5 Mar"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(arrows_and_tabs_go_between_the_fields)
{
    bk_terminal *terminal = new_date();
    bk_terminal_press(terminal, "dress Tab");
    bk_assert_at_field(terminal, "on");
    bk_terminal_press(terminal, "fri Down");
    bk_assert_at_field(terminal, "at");
    bk_terminal_press(terminal, "Up");
    bk_assert_at_field(terminal, "on");
    bk_terminal_press(terminal, "BackTab");
    bk_assert_at_field(terminal, "what");
    bk_terminal_press(terminal, "PageDown");
    bk_assert_at_field(terminal, "note");
    bk_terminal_press(terminal, "PageUp");
    bk_assert_at_field(terminal, "what");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(keys_of_the_screens_are_letters_in_a_form)
{
    bk_terminal *terminal = new_date();
    bk_terminal_press(terminal, "tech Enter fri Enter Enter quRP? Control-S");
    ck_assert(bk_terminal_shows(terminal, "quRP?"));
    bk_terminal_close(terminal);
}
END_TEST

// ------------------------------------------------------------------------------------------------ checking

START_TEST(a_day_is_told_with_its_weekday_as_it_is_understood)
{
    static const struct {
        const char *typed, *beside, *kept;
    } cases[] = {
        {"fri", "Fri 5 Mar", "2027-03-05"},
        {"+3", "Fri 5 Mar", "2027-03-05"},
        {"9 Space mar", "Tue 9 Mar", "2027-03-09"},
    };
    bk_terminal *terminal = new_date();
    bk_terminal_press(terminal, "dress Enter");
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        bk_terminal_press(terminal, "Control-U");
        bk_terminal_press(terminal, cases[i].typed);
        bk_assert_field(terminal, "on", cases[i].beside);
        bk_terminal_press(terminal, "Enter");
        bk_assert_field(terminal, "on", cases[i].kept);
        bk_assert_field(terminal, "on", cases[i].beside);
        bk_terminal_press(terminal, "Up");
    }
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_is_not_understood_stays_and_is_told_and_mended)
{
    bk_terminal *terminal = new_date();
    bk_terminal_press(terminal, "dress Enter noon Enter");
    bk_assert_at_field(terminal, "on");
    bk_assert_field(terminal, "on", "noon");
    ck_assert(bk_terminal_shows(terminal, "\"noon\" is no day; type one such as fri"));
    bk_terminal_press(terminal, "Down");
    bk_assert_at_field(terminal, "at");
    bk_assert_field(terminal, "on", "not understood");
    bk_terminal_press(terminal, "Control-S");
    bk_assert_at_field(terminal, "on");
    bk_assert_field(terminal, "on", "noon");
    ck_assert(bk_terminal_shows(terminal, "\"noon\" is no day"));
    bk_terminal_press(terminal, "Backspace Backspace Backspace Backspace sun");
    ck_assert(!bk_terminal_shows(terminal, "is no day"));
    bk_terminal_press(terminal, "Control-S");
    ck_assert(bk_terminal_shows(terminal, "Sun 7 Mar"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(enter_goes_on_from_a_wrong_field_when_it_is_pressed_again)
{
    bk_terminal *terminal = new_date();
    bk_terminal_press(terminal, "dress Enter noon Enter Enter");
    bk_assert_at_field(terminal, "at");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_must_be_filled_in_is_told_before_anything_is_saved)
{
    bk_terminal *terminal = new_date();
    bk_assert_field(terminal, "what", "needed");
    bk_terminal_press(terminal, "Control-S");
    bk_assert_at_field(terminal, "what");
    ck_assert(bk_terminal_shows(terminal, "This must be filled in, such as parade"));
    bk_terminal_press(terminal, "dress Control-S");
    bk_assert_at_field(terminal, "on");
    ck_assert(bk_terminal_shows(terminal, "This must be filled in, such as fri"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_only_the_whole_workroom_can_know_is_told_at_its_field)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "M + wool Space flannel Enter m Control-S");
    ck_assert(bk_terminal_shows(terminal, "New material"));
    bk_assert_at_field(terminal, "material");
    ck_assert(bk_terminal_shows(terminal, "wool flannel"));
    bk_terminal_press(terminal, "End Space two Control-S");
    ck_assert(!bk_terminal_shows(terminal, "New material"));
    ck_assert(bk_terminal_shows(terminal, "wool flannel two"));
    bk_terminal_close(terminal);
}
END_TEST

// ----------------------------------------------------------------------------------------------- the texts

START_TEST(a_text_longer_than_its_room_is_seen_where_the_cursor_is)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "M +");
    bk_terminal_send(
        terminal,
        "a very long name of a material that nobody would ever read to its end because it is longer");
    bk_assert_field(terminal, "material", "because it is longer");
    bk_assert_field(terminal, "material", "…");
    bk_terminal_press(terminal, "Home");
    bk_assert_field(terminal, "material", "  a very long name");
    bk_terminal_press(terminal, "x Delete Delete");
    bk_assert_field(terminal, "material", "  xvery long");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_long_note_is_wrapped_and_up_and_down_go_through_it)
{
    bk_terminal *terminal = new_date();
    bk_terminal_press(terminal, "dress Enter fri Enter Enter");
    bk_terminal_send(terminal,
                     "everybody who has a hat in the second act brings it, and whoever has none comes "
                     "to the workroom before six to get one");
    size_t first = bk_terminal_find(terminal, "everybody who has a hat");
    ck_assert_uint_eq(bk_terminal_find(terminal, "before six"), first + 1);
    bk_terminal_press(terminal, "Up Home");
    bk_terminal_press(terminal, "Up");
    bk_assert_at_field(terminal, "at");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(letters_of_all_languages_are_typed_and_taken_back_whole)
{
    bk_terminal *terminal = new_date();
    bk_terminal_press(terminal, "dress Enter fri Enter Enter");
    bk_terminal_send(terminal, "Zoë Śliwkiewicz 衣装e\xCC\x81");
    bk_assert_field(terminal, "note", "Zoë Śliwkiewicz 衣装e\xCC\x81");
    bk_terminal_press(terminal, "Backspace Backspace Control-S");
    ck_assert(bk_terminal_shows(terminal, "Zoë Śliwkiewicz 衣"));
    ck_assert(!bk_terminal_shows(terminal, "装"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_form_with_more_fields_than_rows_scrolls)
{
    enum { NOTE_LINES = 8 };
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "/1a Enter Enter Up e PageUp"); // a step that is done: 17 fields
    bk_assert_at_field(terminal, "piece");
    ck_assert(bk_terminal_shows(terminal, "more below"));
    ck_assert(!bk_terminal_shows(terminal, "  took"));
    bk_terminal_press(terminal, "PageDown"); // where there is no list all have room
    bk_assert_at_field(terminal, "took");
    bk_assert_field(terminal, "piece", "G1");
    ck_assert(!bk_terminal_shows(terminal, "more "));
    bk_terminal_press(terminal, "Up Up Up");
    bk_assert_at_field(terminal, "note");
    ck_assert(bk_terminal_shows(terminal, "more below"));
    for (size_t i = 0; i < NOTE_LINES; i++)
        bk_terminal_send(terminal, "the lace is sewn on by hand, with small stitches that do not show. ");
    ck_assert(bk_terminal_shows(terminal, "more above"));
    ck_assert(!bk_terminal_shows(terminal, "  piece"));
    bk_terminal_press(terminal, "PageUp");
    bk_assert_at_field(terminal, "piece");
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("typing into forms", enter_goes_from_field_to_field_and_saves_on_the_last,
             control_s_saves_from_every_field_at_once, arrows_and_tabs_go_between_the_fields,
             keys_of_the_screens_are_letters_in_a_form, a_day_is_told_with_its_weekday_as_it_is_understood,
             what_is_not_understood_stays_and_is_told_and_mended,
             enter_goes_on_from_a_wrong_field_when_it_is_pressed_again,
             what_must_be_filled_in_is_told_before_anything_is_saved,
             what_only_the_whole_workroom_can_know_is_told_at_its_field,
             a_text_longer_than_its_room_is_seen_where_the_cursor_is,
             a_long_note_is_wrapped_and_up_and_down_go_through_it,
             letters_of_all_languages_are_typed_and_taken_back_whole,
             a_form_with_more_fields_than_rows_scrolls)
