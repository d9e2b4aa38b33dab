// What if: a forecast with suppositions. The day is Tuesday, 2 March 2027.

#include "bodkin/base/text.h"
#include "work/planned.h"

static int64_t id_by_name(const char *table, const char *column, const char *name)
{
    const char *sql =
        bk_arena_print(texts(), "SELECT id FROM %s WHERE %s = '%s' LIMIT 1", table, column, name);
    return strtoll(bk_ask(sql), NULL, 10);
}

/// Takes the folder in and reckons with one thing supposed.
static bk_forecast *supposing(bk_folder *folder, bk_supposition supposed)
{
    bk_forecast_free(forecast_of(folder, 0));
    bk_store *store = open_store();
    bk_workroom *room = NULL;
    MUST(bk_workroom_read(store, today(), &room, &trouble));
    bk_store_close(store);
    supposed.production_id = supposed.production_id ? id_by_name("production", "name", "The Mill") : 0;
    supposed.costume_id = supposed.costume_id ? id_by_name("costume", "number", "1B") : 0;
    supposed.date_id = supposed.date_id ? id_by_name("show_date", "what", "dress") : 0;
    bk_forecast *forecast = NULL;
    bk_forecast_reckon(room, &supposed, 1, bk_effort_usual(0, 1, 50), NULL, NULL, &forecast);
    bk_workroom_free(room);
    return forecast;
}

/// Two costumes of seven hours each, 1B due on Wednesday, 1A by the dress rehearsal on Friday. They share the piece P3.
static bk_folder *two_costumes(void)
{
    bk_folder *folder = one_costume("The Mill", DAY(3, 19), BK_NO_DAY);
    ROWS(folder, dates, bk_date, DATE(BK_ON_DRESS, DAY(3, 5)));
    ROWS(folder, costumes, bk_costume, COSTUME("1A", "The Miller", BK_NO_DAY),
         COSTUME("1B", "The Miller", DAY(3, 3)));
    ROWS(folder, pieces, bk_piece, PIECE("P1", "1A", BK_STOCK), PIECE("P2", "1B", BK_STOCK),
         PIECE("P3", "1A;1B", BK_STOCK));
    ROWS(folder, steps, bk_step, STEP("P1", "hem", BK_HAND, 420, NULL), STEP("P2", "hem", BK_HAND, 420, NULL),
         STEP("P3", "hem", BK_HAND, 60, NULL));
    return folder;
}

START_TEST(a_supposed_helper_has_hours_on_one_day)
{
    bk_folder *folder = one_costume("The Mill", DAY(3, 19), DAY(3, 3));
    ROWS(folder, steps, bk_step, STEP("P1", "hem", BK_HAND, 840, NULL),
         STEP("P1", "cuffs", BK_HAND, 90, NULL));
    bk_forecast *forecast = supposing(folder, (bk_supposition){.what = BK_SUPPOSE_HELPER,
                                                               .person = "Bo",
                                                               .skills = 1U << BK_HAND,
                                                               .day = DAY(3, 3),
                                                               .hours = {18 * 60, 20 * 60}});
    ck_assert_str_eq(days_told(forecast), "1A Wed 3 Mar, 0 in hand\n");
    ck_assert_str_eq(step_told(forecast, "P1", "cuffs"), "Wed 3 Mar 18:00 to Wed 3 Mar 19:30, Bo");
    ck_assert_uint_eq(forecast->person_count, 2);
    ck_assert_int_eq(forecast->people[1].id, 0);
    bk_stretch hours[BK_STRETCHES];
    ck_assert_int_eq(bk_calendar_day(forecast->people[1].calendar, DAY(3, 3), hours), 1);
    ck_assert_int_eq(bk_calendar_day(forecast->people[1].calendar, DAY(3, 10), hours), 0);
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(a_helper_makes_a_workroom_of_nobody)
{
    bk_folder *folder = one_costume("The Mill", DAY(3, 19), DAY(3, 3));
    put_rows(folder->arena, &folder->people, NULL, sizeof(bk_person), 0);
    ROWS(folder, steps, bk_step, STEP("P1", "hem", BK_HAND, 60, NULL));
    bk_forecast *forecast = supposing(folder, (bk_supposition){.what = BK_SUPPOSE_HELPER,
                                                               .person = "Bo",
                                                               .skills = 1U << BK_HAND,
                                                               .day = DAY(3, 3),
                                                               .hours = {18 * 60, 20 * 60}});
    ck_assert_str_eq(snags_told(forecast), "");
    ck_assert_str_eq(days_told(forecast), "1A Wed 3 Mar, 0 in hand\n");
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(a_moved_date_moves_what_is_due_then)
{
    bk_forecast *forecast = supposing(
        two_costumes(),
        (bk_supposition){.what = BK_SUPPOSE_DATE, .day = DAY(3, 10), .production_id = 1, .date_id = 1});
    ck_assert_int_eq(planned_costume(forecast, "1A")->due, DAY(3, 10));
    ck_assert_int_eq(planned_costume(forecast, "1B")->due, DAY(3, 3));
    ck_assert_str_eq(days_told(forecast), "1A Thu 4 Mar, 4 in hand\n1B Wed 3 Mar, 0 in hand\n");
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(an_opening_moved_forward_is_when_all_is_due)
{
    bk_forecast *forecast = supposing(
        two_costumes(), (bk_supposition){.what = BK_SUPPOSE_DATE, .day = DAY(3, 4), .production_id = 1});
    ck_assert_int_eq(planned_costume(forecast, "1A")->due, DAY(3, 4));
    ck_assert_int_eq(forecast->productions[0].opens, DAY(3, 4));
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(another_due_day_of_a_costume_is_only_its_own)
{
    bk_forecast *forecast = supposing(
        two_costumes(), (bk_supposition){.what = BK_SUPPOSE_DUE, .day = DAY(3, 10), .costume_id = 1});
    ck_assert_int_eq(planned_costume(forecast, "1B")->due, DAY(3, 10));
    ck_assert_int_eq(planned_step(forecast, "P3", "hem")->due, DAY(3, 5));
    ck_assert_str_eq(planned_step(forecast, "P3", "hem")->costume, "1A");
    bk_forecast_free(forecast);
}
END_TEST

START_TEST(a_dropped_costume_goes_with_the_pieces_worn_with_nothing_else)
{
    bk_forecast *forecast =
        supposing(two_costumes(), (bk_supposition){.what = BK_SUPPOSE_DROP, .costume_id = 1});
    ck_assert_uint_eq(forecast->costume_count, 1);
    ck_assert_uint_eq(forecast->step_count, 2);
    ck_assert_str_eq(days_told(forecast), "1A Wed 3 Mar, 2 in hand\n");
    ck_assert_str_eq(planned_step(forecast, "P3", "hem")->costume, "1A");
    bk_forecast_free(forecast);
}
END_TEST

BK_TEST_MAIN("forecast_supposed", a_supposed_helper_has_hours_on_one_day, a_helper_makes_a_workroom_of_nobody,
             a_moved_date_moves_what_is_due_then, an_opening_moved_forward_is_when_all_is_due,
             another_due_day_of_a_costume_is_only_its_own,
             a_dropped_costume_goes_with_the_pieces_worn_with_nothing_else)
