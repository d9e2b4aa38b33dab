#include "bodkin/ui/costume_place.h"
#include "support/testing.h"

// Two pieces: the first with a note and two steps, of which the first needs something in two lines; the second without steps.
//
//     0 piece   1 note   2 step   3 need   4 more of it   5 step   6   7 piece   8 "no step is listed"

static const bk_costume_line items[] = {
    {.kind = BK_LINE_PIECE}, {.kind = BK_LINE_TEXT},  {.kind = BK_LINE_STEP},
    {.kind = BK_LINE_NEED},  {.kind = BK_LINE_NEED},  {.kind = BK_LINE_STEP},
    {.kind = BK_LINE_EMPTY}, {.kind = BK_LINE_PIECE}, {.kind = BK_LINE_TEXT},
};

enum { COSTUME, PIECE, STEP, NEED, LAST_STEP, LAST_PIECE, STOPS };

static const bk_costume_stop stops[STOPS] = {
    {.family = BK_COSTUMES, .line = BK_NO_INDEX},
    {.family = BK_PIECES, .line = 0},
    {.family = BK_STEPS, .line = 2},
    {.family = BK_NEEDS, .line = 3},
    {.family = BK_STEPS, .line = 5},
    {.family = BK_PIECES, .line = 7},
};

static const bk_costume_lines lines = {
    .items = items, .count = sizeof items / sizeof items[0], .stops = stops, .stop_count = STOPS};

static bk_costume_place after(size_t at, size_t top, size_t seen, bk_key_name key)
{
    bk_costume_place place = {at, top, seen};
    bk_costume_place_key(&place, &lines, key);
    bk_costume_place_fit(&place, &lines);
    return place;
}

START_TEST(arrows_go_from_stop_to_stop_and_end_at_the_ends)
{
    ck_assert_uint_eq(after(COSTUME, 0, 4, BK_KEY_DOWN).at, PIECE);
    ck_assert_uint_eq(after(STEP, 0, 4, BK_KEY_DOWN).at, NEED);
    ck_assert_uint_eq(after(COSTUME, 0, 4, BK_KEY_UP).at, COSTUME);
    ck_assert_uint_eq(after(LAST_PIECE, 5, 4, BK_KEY_DOWN).at, LAST_PIECE);
    ck_assert_uint_eq(after(LAST_PIECE, 5, 4, BK_KEY_HOME).at, COSTUME);
    ck_assert_uint_eq(after(COSTUME, 0, 4, BK_KEY_END).at, LAST_PIECE);
}
END_TEST

START_TEST(a_step_is_seen_with_all_that_it_needs)
{
    bk_costume_place place = after(PIECE, 0, 4, BK_KEY_DOWN);
    ck_assert_uint_eq(place.at, STEP);
    ck_assert_uint_le(place.top, 2);
    ck_assert_uint_ge(place.top + place.seen, 5);
}
END_TEST

START_TEST(the_first_step_of_a_piece_is_seen_with_the_piece_where_there_is_room)
{
    ck_assert_uint_eq(after(NEED, 3, 6, BK_KEY_UP).top, 0);
}
END_TEST

START_TEST(the_costume_itself_shows_the_lines_from_the_first)
{
    ck_assert_uint_eq(after(LAST_PIECE, 5, 4, BK_KEY_HOME).top, 0);
}
END_TEST

START_TEST(a_page_goes_to_the_stop_nearest_to_a_page_away)
{
    ck_assert_uint_eq(after(COSTUME, 0, 5, BK_KEY_PAGE_DOWN).at, LAST_STEP);
    ck_assert_uint_eq(after(LAST_PIECE, 4, 5, BK_KEY_PAGE_UP).at, STEP);
    ck_assert_uint_eq(after(COSTUME, 0, 1, BK_KEY_PAGE_DOWN).at, PIECE);
}
END_TEST

START_TEST(no_line_is_left_empty_at_the_end)
{
    bk_costume_place place = {.at = STEP, .top = 8, .seen = 9};
    bk_costume_place_fit(&place, &lines);
    ck_assert_uint_eq(place.top, 0);
    place = (bk_costume_place){.at = STOPS + 3, .top = 0, .seen = 4};
    bk_costume_place_fit(&place, &lines);
    ck_assert_uint_eq(place.at, LAST_PIECE);
}
END_TEST

START_TEST(it_begins_with_the_piece_of_the_chosen_step)
{
    bk_costume_place place = {.at = LAST_STEP, .top = 4, .seen = 4};
    bk_costume_place_begin(&place, &lines);
    ck_assert_uint_eq(place.top, 0);
    place.at = LAST_PIECE;
    bk_costume_place_begin(&place, &lines);
    ck_assert_uint_eq(place.top, 7);
}
END_TEST

BK_TEST_MAIN("costume place", arrows_go_from_stop_to_stop_and_end_at_the_ends,
             a_step_is_seen_with_all_that_it_needs,
             the_first_step_of_a_piece_is_seen_with_the_piece_where_there_is_room,
             the_costume_itself_shows_the_lines_from_the_first,
             a_page_goes_to_the_stop_nearest_to_a_page_away, no_line_is_left_empty_at_the_end,
             it_begins_with_the_piece_of_the_chosen_step)
