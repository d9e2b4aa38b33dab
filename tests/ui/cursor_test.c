#include "bodkin/ui/cursor.h"
#include "support/testing.h"

START_TEST(the_cursor_stays_in_sight_while_it_moves)
{
    bk_cursor cursor = {0};
    bk_cursor_fit(&cursor, 10, 4);
    for (int i = 0; i < 5; i++)
        ck_assert(bk_cursor_key(&cursor, BK_KEY_DOWN));
    ck_assert_uint_eq(cursor.at, 5);
    ck_assert_uint_eq(cursor.top, 2);
    bk_cursor_key(&cursor, BK_KEY_HOME);
    ck_assert_uint_eq(cursor.top, 0);
}
END_TEST

START_TEST(the_cursor_stops_at_both_ends)
{
    bk_cursor cursor = {0};
    bk_cursor_fit(&cursor, 3, 4);
    bk_cursor_key(&cursor, BK_KEY_UP);
    ck_assert_uint_eq(cursor.at, 0);
    bk_cursor_key(&cursor, BK_KEY_PAGE_DOWN);
    bk_cursor_key(&cursor, BK_KEY_DOWN);
    ck_assert_uint_eq(cursor.at, 2);
    ck_assert_uint_eq(cursor.top, 0);
}
END_TEST

START_TEST(a_page_keeps_one_line_of_the_page_before)
{
    bk_cursor cursor = {0};
    bk_cursor_fit(&cursor, 20, 5);
    bk_cursor_key(&cursor, BK_KEY_PAGE_DOWN);
    ck_assert_uint_eq(cursor.top, 4);
    ck_assert_uint_eq(cursor.at, 4);
    bk_cursor_key(&cursor, BK_KEY_PAGE_UP);
    ck_assert_uint_eq(cursor.top, 0);
}
END_TEST

START_TEST(a_list_that_gets_shorter_takes_the_cursor_along_and_leaves_no_room_empty)
{
    bk_cursor cursor = {0};
    bk_cursor_fit(&cursor, 20, 5);
    bk_cursor_key(&cursor, BK_KEY_END);
    bk_cursor_fit(&cursor, 7, 5);
    ck_assert_uint_eq(cursor.at, 6);
    ck_assert_uint_eq(cursor.top, 2);
    bk_cursor_fit(&cursor, 0, 0);
    ck_assert_uint_eq(cursor.at, 0);
    ck_assert_uint_eq(cursor.top, 0);
}
END_TEST

START_TEST(other_keys_are_not_the_cursors)
{
    bk_cursor cursor = {0};
    bk_cursor_fit(&cursor, 20, 5);
    ck_assert(!bk_cursor_key(&cursor, BK_KEY_ENTER));
    ck_assert(!bk_cursor_key(&cursor, BK_KEY_TYPED));
}
END_TEST

BK_TEST_MAIN("cursor", the_cursor_stays_in_sight_while_it_moves, the_cursor_stops_at_both_ends,
             a_page_keeps_one_line_of_the_page_before,
             a_list_that_gets_shorter_takes_the_cursor_along_and_leaves_no_room_empty,
             other_keys_are_not_the_cursors)
