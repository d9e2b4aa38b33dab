#include "bodkin/work/timetable.h"

#include "bodkin/base/text.h"
#include "bodkin/trade/words.h"
#include "work/show.h"

static bk_production shown(bk_store *store)
{
    bk_rows rows = {0};
    MUST(bk_store_read(store, BK_PRODUCTIONS, 0, texts(), &rows, &trouble));
    ck_assert_uint_eq(rows.count, 1);
    return *(const bk_production *)rows.items;
}

// A production that opens on 19 March with these dates.
static bk_timetable timetable(const bk_date *dates, size_t count)
{
    bk_store *store = open_store();
    bk_folder *folder = bare_show("The Paper Lantern", DAY(3, 19));
    put_rows(folder->arena, &folder->dates, dates, sizeof *dates, count);
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
    bk_timetable table = {0};
    bk_production production = shown(store);
    MUST(bk_timetable_read(store, &production, texts(), &table, &trouble));
    bk_store_close(store);
    return table;
}

START_TEST(dates_stand_in_the_order_in_which_they_come)
{
    enum { AFTERNOON = 14 * 60, MORNING = 10 * 60 };
    const bk_date dates[] = {
        {.what = BK_ON_DRESS, .on = DAY(3, 17), .at = AFTERNOON},
        {.what = BK_ON_TECH, .on = DAY(3, 15), .at = BK_NO_TIME},
        {.what = BK_ON_PARADE, .on = DAY(3, 17), .at = MORNING},
        {.what = BK_ON_PHOTO, .on = DAY(3, 17), .at = BK_NO_TIME},
    };
    static const int order[] = {BK_ON_TECH, BK_ON_PHOTO, BK_ON_PARADE, BK_ON_DRESS, BK_ON_OPENING};
    bk_timetable table = timetable(dates, sizeof dates / sizeof *dates);
    ck_assert_uint_eq(table.count, sizeof order / sizeof *order);
    for (size_t i = 0; i < table.count; i++)
        ck_assert_int_eq(table.items[i].what, order[i]);
}
END_TEST

START_TEST(the_opening_is_there_without_a_date_of_its_own)
{
    bk_timetable table = timetable(NULL, 0);
    ck_assert_uint_eq(table.count, 1);
    ck_assert_int_eq(table.items[0].what, BK_ON_OPENING);
    ck_assert_int_eq(table.items[0].on, DAY(3, 19));
    ck_assert_int_eq(table.items[0].id, 0);
}
END_TEST

START_TEST(an_opening_that_is_written_down_stands_there_once)
{
    const bk_date opening = {.what = BK_ON_OPENING, .on = DAY(3, 19), .at = BK_NO_TIME};
    bk_timetable table = timetable(&opening, 1);
    ck_assert_uint_eq(table.count, 1);
    ck_assert_int_ne(table.items[0].id, 0);
}
END_TEST

START_TEST(how_far_a_day_is_is_said_in_words)
{
    static const struct {
        int days;
        const char *words;
    } said[] = {{0, "today"}, {1, "tomorrow"}, {-1, "yesterday"}, {2, "in 2 days"}, {-2, "2 days ago"}};
    for (size_t i = 0; i < sizeof said / sizeof *said; i++)
        ck_assert_str_eq(bk_days_away(DAY(3, 2) + said[i].days, DAY(3, 2), texts()), said[i].words);
}
END_TEST

BK_TEST_MAIN("timetable", dates_stand_in_the_order_in_which_they_come,
             the_opening_is_there_without_a_date_of_its_own,
             an_opening_that_is_written_down_stands_there_once, how_far_a_day_is_is_said_in_words)
