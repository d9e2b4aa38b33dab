#include <stdlib.h>
#include <string.h>

#include "screen/show.h"
#include "screen/terminal.h"
#include "support/program.h"
#include "support/testing.h"

// What every list does, on the Dates and the Orders of work.

static bk_terminal *at(const char *keys)
{
    bk_show_import();
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, keys);
    return terminal;
}

static bool chosen_shows(const bk_terminal *terminal, const char *text)
{
    return strstr(bk_terminal_row(terminal, bk_terminal_chosen(terminal)), text) != NULL;
}

START_TEST(a_record_is_added_and_the_cursor_stands_on_it)
{
    bk_terminal *terminal = at("T + tech Enter 2027-03-15 Control-S");
    ck_assert(chosen_shows(terminal, "Mon 15 Mar"));
    ck_assert(chosen_shows(terminal, "tech"));
    ck_assert(chosen_shows(terminal, "in 13 days"));
    ck_assert(bk_terminal_shows(terminal, "u undo"));
    bk_terminal_press(terminal, "u");
    ck_assert(bk_terminal_shows(terminal, "Undone: "));
    ck_assert(!bk_terminal_shows(terminal, "in 13 days"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_record_is_changed_where_the_cursor_stands)
{
    bk_terminal *terminal = at("T e");
    ck_assert(bk_terminal_shows(terminal, "dress"));
    bk_terminal_press(terminal, "Tab Tab Tab soap Control-S");
    ck_assert(chosen_shows(terminal, "dress"));
    ck_assert(chosen_shows(terminal, "soap"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_record_is_taken_away_only_when_it_is_said_twice)
{
    bk_terminal *terminal = at("T -");
    ck_assert(bk_terminal_shows(terminal, "Take away dress on Tue 16 Mar?"));
    bk_terminal_press(terminal, "Escape");
    ck_assert(bk_terminal_shows(terminal, "Tue 16 Mar"));
    bk_terminal_press(terminal, "- y");
    ck_assert(!chosen_shows(terminal, "dress"));
    bk_terminal_press(terminal, "u - Enter");
    ck_assert(!chosen_shows(terminal, "dress"));
    ck_assert(chosen_shows(terminal, "opening"));
    bk_terminal_press(terminal, "u");
    ck_assert_ptr_nonnull(
        strstr(bk_terminal_row(terminal, bk_terminal_find(terminal, "Tue 16 Mar")), "dress"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(what_cannot_be_taken_away_is_told_at_once)
{
    bk_terminal *terminal = at("T End -");
    ck_assert(!bk_terminal_shows(terminal, "Enter yes"));
    ck_assert(bk_terminal_shows(terminal, "put"));
    ck_assert(bk_terminal_shows(terminal, "opening"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(the_opening_is_changed_with_the_production)
{
    bk_terminal *terminal = at("T End e");
    ck_assert(bk_terminal_shows(terminal, "The Salt Road"));
    ck_assert(bk_terminal_shows(terminal, "opens"));
    bk_terminal_press(terminal, "Escape");
    ck_assert(chosen_shows(terminal, "opening"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(records_are_moved_and_the_cursor_goes_with_them)
{
    bk_terminal *terminal = at("O");
    size_t first = bk_terminal_chosen(terminal);
    ck_assert(chosen_shows(terminal, "Lined bodice"));
    bk_terminal_press(terminal, "]");
    ck_assert_uint_eq(bk_terminal_chosen(terminal), first + 1);
    ck_assert(chosen_shows(terminal, "Lined bodice"));
    ck_assert_ptr_nonnull(strstr(bk_terminal_row(terminal, first), "Shirt"));
    bk_terminal_press(terminal, "[");
    ck_assert_uint_eq(bk_terminal_chosen(terminal), first);
    bk_terminal_press(terminal, "[");
    ck_assert_uint_eq(bk_terminal_chosen(terminal), first);
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(nothing_is_moved_while_the_list_is_narrowed)
{
    bk_terminal *terminal = at("O / i Enter ]");
    ck_assert(bk_terminal_shows(terminal, "While the list is narrowed nothing is moved"));
    bk_terminal_press(terminal, "Escape");
    ck_assert(chosen_shows(terminal, "Lined bodice"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(a_list_is_narrowed_by_its_cells_and_by_what_is_told_below)
{
    bk_terminal *terminal = at("O / stairs");
    ck_assert(bk_terminal_shows(terminal, "stairs”: 1 of 2"));
    ck_assert(chosen_shows(terminal, "Cape, half circle"));
    ck_assert(bk_terminal_cursor_seen(terminal));
    bk_terminal_press(terminal, "Enter");
    ck_assert(!bk_terminal_cursor_seen(terminal));
    bk_terminal_press(terminal, "Escape");
    ck_assert(chosen_shows(terminal, "Cape, half circle"));
    ck_assert(bk_terminal_shows(terminal, "Circle skirt"));
    bk_terminal_press(terminal, "Escape");
    ck_assert(bk_terminal_shows(terminal, "1A Salt Queen"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(letters_typed_into_the_narrowing_are_no_keys)
{
    bk_terminal *terminal = at("O / uUPq");
    ck_assert(bk_terminal_shows(terminal, "Nothing here matches. Escape shows all 2"));
    bk_terminal_press(terminal, "Control-U cape");
    ck_assert(chosen_shows(terminal, "Cape, half circle"));
    bk_terminal_press(terminal, "Escape Escape");
    ck_assert(bk_terminal_shows(terminal, "1A Salt Queen"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(the_cursor_stays_on_its_record_when_the_store_changes)
{
    bk_terminal *terminal = at("T");
    ck_assert(chosen_shows(terminal, "dress"));
    size_t row = bk_terminal_chosen(terminal);
    bk_terminal *other = bk_terminal_start(NULL);
    bk_terminal_press(other, "T + fittings Enter 2027-03-05 Control-S");
    bk_terminal_await(terminal, "in 3 days");
    ck_assert(chosen_shows(terminal, "dress"));
    ck_assert_uint_eq(bk_terminal_chosen(terminal), row + 1);
    bk_terminal_close(terminal);
    bk_terminal_close(other);
}
END_TEST

START_TEST(a_new_record_that_does_not_match_ends_the_narrowing)
{
    bk_terminal *terminal = at("T / opening Enter + tech Enter 2027-03-15 Control-S");
    ck_assert(chosen_shows(terminal, "tech"));
    ck_assert(bk_terminal_shows(terminal, "opening"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(lists_of_the_production_need_one_and_those_of_the_workroom_do_not)
{
    bk_terminal *terminal = bk_terminal_start(NULL);
    bk_terminal_press(terminal, "T");
    ck_assert(bk_terminal_shows(terminal, "Open a production first"));
    bk_terminal_press(terminal, "O");
    ck_assert(chosen_shows(terminal, "Lined bodice"));
    bk_terminal_press(terminal, "H");
    ck_assert(chosen_shows(terminal, "nobody yet"));
    bk_terminal_press(terminal, "Escape");
    ck_assert(bk_terminal_shows(terminal, "Productions"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(from_one_list_to_another_the_way_back_is_the_rail)
{
    bk_terminal *terminal = at("Down T O H D R");
    ck_assert(chosen_shows(terminal, "1A"));
    bk_terminal_press(terminal, "T P");
    ck_assert(bk_terminal_shows(terminal, "Productions"));
    bk_terminal_press(terminal, "T Escape");
    ck_assert(bk_terminal_shows(terminal, "1A Salt Queen"));
    bk_terminal_close(terminal);
}
END_TEST

START_TEST(escape_leads_back_to_the_screen_one_came_from)
{
    bk_terminal *terminal = at("Down Enter");
    ck_assert(bk_terminal_shows(terminal, "Coronation gown"));
    bk_terminal_press(terminal, "C M T");
    ck_assert(bk_terminal_shows(terminal, "Dates of The Salt Road"));
    bk_terminal_press(terminal, "Escape");
    ck_assert(bk_terminal_shows(terminal, "Materials of the workroom"));
    bk_terminal_press(terminal, "C Escape");
    ck_assert_msg(bk_terminal_shows(terminal, "Coronation gown"), "%s", bk_terminal_screen(terminal));
    bk_terminal_press(terminal, "Escape");
    ck_assert(bk_terminal_shows(terminal, "No Role"));
    bk_terminal_close(terminal);
}
END_TEST

BK_TEST_MAIN("ledger", a_record_is_added_and_the_cursor_stands_on_it,
             a_record_is_changed_where_the_cursor_stands, a_record_is_taken_away_only_when_it_is_said_twice,
             what_cannot_be_taken_away_is_told_at_once, the_opening_is_changed_with_the_production,
             records_are_moved_and_the_cursor_goes_with_them, nothing_is_moved_while_the_list_is_narrowed,
             a_list_is_narrowed_by_its_cells_and_by_what_is_told_below,
             letters_typed_into_the_narrowing_are_no_keys,
             the_cursor_stays_on_its_record_when_the_store_changes,
             a_new_record_that_does_not_match_ends_the_narrowing,
             lists_of_the_production_need_one_and_those_of_the_workroom_do_not,
             from_one_list_to_another_the_way_back_is_the_rail, escape_leads_back_to_the_screen_one_came_from)
