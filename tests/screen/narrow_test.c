#include <string.h>

#include "screen/show.h"
#include "screen/terminal.h"
#include "support/testing.h"

static bk_terminal *open_rail(void)
{
    bk_show_import();
    return bk_terminal_start(NULL);
}

static void assert_left(const bk_terminal *terminal, const char *heading, const char *first)
{
    if (!bk_terminal_shows(terminal, heading))
        ck_abort_msg("\"%s\" is missing:\n%s", heading, bk_terminal_screen(terminal));
    const char *row = bk_terminal_row(terminal, bk_terminal_chosen(terminal));
    if (!strstr(row, first))
        ck_abort_msg("\"%s\" is not chosen: %s", first, row);
}

START_TEST(typing_after_a_slash_narrows_with_every_key)
{
    bk_terminal *terminal = open_rail();
    bk_terminal_press(terminal, "/");
    ck_assert(bk_terminal_cursor_seen(terminal));
    bk_terminal_press(terminal, "c l");
    assert_left(terminal, "Narrowed to “cl”: 3 of 8", "1B Salt Queen");
    bk_terminal_press(terminal, "e r");
    assert_left(terminal, "Narrowed to “cler”: 2 of 8", "3A Clerk");
    bk_terminal_press(terminal, "Backspace Backspace");
    assert_left(terminal, "Narrowed to “cl”: 3 of 8", "3A Clerk");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(every_word_is_looked_for_in_number_role_performer_title_state_and_waits)
{
    static const struct {
        const char *typed, *left, *first;
    } cases[] = {
        {"4a", "“4a”: 1 of 8", "4A Ghost"},
        {"ghost", "“ghost”: 1 of 8", "4A Ghost"},
        {"lindqvist", "“lindqvist”: 3 of 8", "2A"},
        {"COAT", "“COAT”: 1 of 8", "3B Clerk"},
        {"unlisted", "“unlisted”: 1 of 8", "3B"},
        {"flannel", "“flannel”: 1 of 8", "1A Salt"},
        {"ruiz Space cloak", "“ruiz cloak”: 1 of 8", "1B"},
        {"RUÍZ Space gown", "“RUÍZ gown”: 1 of 8", "1A"},
    };
    bk_terminal *terminal = open_rail();
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        bk_terminal_press(terminal, "/");
        bk_terminal_press(terminal, cases[i].typed);
        assert_left(terminal, cases[i].left, cases[i].first);
        bk_terminal_press(terminal, "Escape Home");
    }
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(enter_keeps_the_rail_narrowed_and_escape_shows_all_again)
{
    bk_terminal *terminal = open_rail();
    bk_terminal_press(terminal, "/ clerk Enter");
    assert_left(terminal, "Narrowed to “clerk”: 2 of 8", "3A Clerk");
    ck_assert(!bk_terminal_cursor_seen(terminal));
    bk_terminal_press(terminal, "Down");
    assert_left(terminal, "2 of 8", "3B Clerk");
    bk_terminal_press(terminal, "Escape");
    ck_assert(!bk_terminal_shows(terminal, "Narrowed"));
    assert_left(terminal, "1A Salt Queen", "3B Clerk");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(arrows_move_while_something_is_typed)
{
    bk_terminal *terminal = open_rail();
    bk_terminal_press(terminal, "/ clerk Down");
    assert_left(terminal, "2 of 8", "3B Clerk");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_slash_goes_on_with_what_was_typed_before)
{
    bk_terminal *terminal = open_rail();
    bk_terminal_press(terminal, "/ cle Enter / r");
    assert_left(terminal, "Narrowed to “cler”: 2 of 8", "3A Clerk");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(nothing_left_says_so_and_how_to_get_back)
{
    bk_terminal *terminal = open_rail();
    bk_terminal_press(terminal, "/ zeppelin");
    ck_assert(bk_terminal_shows(terminal, "Narrowed to “zeppelin”: 0 of 8"));
    ck_assert(bk_terminal_shows(terminal, "Escape shows all 8 costumes again"));
    bk_terminal_press(terminal, "Enter Enter Down End");
    bk_terminal_press(terminal, "Escape");
    ck_assert(bk_terminal_shows(terminal, "1A Salt Queen"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(keys_of_the_filters_are_letters_like_others_while_something_is_typed)
{
    bk_terminal *terminal = open_rail();
    bk_terminal_press(terminal, "/ mq");
    ck_assert(bk_terminal_shows(terminal, "Narrowed to “mq”: 0 of 8"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(one_key_each_shows_only_what_waits_on_that)
{
    static const struct {
        const char *key, *heading, *first;
    } cases[] = {
        {"m", "Only what waits on measures: 2 of 8", "3A Clerk"},
        {"c", "Only what waits on materials: 1 of 8", "1A Salt Queen"},
        {"f", "Only what waits on a fitting: 1 of 8", "2A Ferryman"},
        {"h", "Only what waits on hand sewing: 1 of 8", "2B Ferryman"},
        {"o", "Only what waits on a piece that is out: 1 of 8", "2A Ferryman"},
    };
    bk_terminal *terminal = open_rail();
    for (size_t i = 0; i < sizeof cases / sizeof cases[0]; i++) {
        bk_terminal_press(terminal, cases[i].key);
        assert_left(terminal, cases[i].heading, cases[i].first);
    }
    bk_terminal_press(terminal, "a");
    ck_assert(!bk_terminal_shows(terminal, "Only what waits"));
    bk_terminal_press(terminal, "m m");
    ck_assert(!bk_terminal_shows(terminal, "Only what waits"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(people_who_are_missing_have_a_key_too)
{
    bk_show_import();
    bk_show_replace("people.csv", "person,skills,mon\nIda,hand;cut,10:00-12:00\n");
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "n");
    assert_left(terminal, "Only what waits on somebody who can do it: 2 of 8", "2A Ferryman");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_filter_and_typed_words_go_together)
{
    bk_terminal *terminal = open_rail();
    bk_terminal_press(terminal, "m / ghost Enter");
    assert_left(terminal, "Only what waits on measures, narrowed to “ghost”: 1 of 8", "4A Ghost");
    bk_terminal_press(terminal, "a");
    assert_left(terminal, "1A Salt Queen", "4A Ghost");
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(more_than_has_room_is_refused_and_told)
{
    bk_terminal *terminal = open_rail();
    bk_terminal_press(terminal, "/");
    for (int i = 0; i < 120; i++)
        bk_terminal_press(terminal, "x");
    ck_assert(bk_terminal_shows(terminal, "as long as it can be"));
    bk_terminal_press(terminal, "Backspace");
    ck_assert(bk_terminal_shows(terminal, "/ xxxxxxxxxx"));
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("narrowing", typing_after_a_slash_narrows_with_every_key,
             every_word_is_looked_for_in_number_role_performer_title_state_and_waits,
             enter_keeps_the_rail_narrowed_and_escape_shows_all_again, arrows_move_while_something_is_typed,
             a_slash_goes_on_with_what_was_typed_before, nothing_left_says_so_and_how_to_get_back,
             keys_of_the_filters_are_letters_like_others_while_something_is_typed,
             one_key_each_shows_only_what_waits_on_that, people_who_are_missing_have_a_key_too,
             a_filter_and_typed_words_go_together, more_than_has_room_is_refused_and_told)
