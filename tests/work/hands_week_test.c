#include "bodkin/work/hands_week.h"

#include "bodkin/base/text.h"
#include "work/show.h"

enum { HOUR = 60 };

// Tuesday 2 March 2027 is the day at hand; the week is Monday 1 to Sunday 7 March.
static bk_hands_week week_of(bk_person *people, size_t count, const bk_away *aways, size_t away_count)
{
    bk_store *store = open_store();
    bk_folder *folder = bare_show("The Paper Lantern", DAY(3, 19));
    put_rows(folder->arena, &folder->people, people, sizeof *people, count);
    put_rows(folder->arena, &folder->away, aways, sizeof *aways, away_count);
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
    bk_hands_week week = {0};
    MUST(bk_hands_week_read(store, DAY(3, 2), texts(), &week, &trouble));
    bk_store_close(store);
    return week;
}

static bk_person every_day(const char *name)
{
    bk_person person = PERSON(name, "hand");
    for (size_t i = 0; i < BK_WEEKDAYS; i++)
        person.hours[i] = "10:00-12:00";
    return person;
}

START_TEST(hours_count_from_monday_to_sunday_and_those_left_from_today_on)
{
    bk_person people[] = {every_day("Ida"), PERSON("Jo", "hand")};
    people[0].hours[0] = "10:00-13:00;14:00-18:00";
    bk_hands_week week = week_of(people, 2, NULL, 0);
    ck_assert_int_eq(week.people[0].minutes, (7 + 6 * 2) * HOUR);
    ck_assert_int_eq(week.people[0].minutes_left, 6 * 2 * HOUR);
    ck_assert_int_eq(week.people[1].minutes, 0);
    ck_assert_int_eq(week.minutes, week.people[0].minutes);
    ck_assert_int_eq(week.minutes_left, week.people[0].minutes_left);
}
END_TEST

START_TEST(absences_are_taken_off_both_their_days_included)
{
    bk_person ida = every_day("Ida");
    const bk_away aways[] = {AWAY("Ida", DAY(2, 20), DAY(3, 1), NULL),
                             AWAY("Ida", DAY(3, 4), DAY(3, 5), NULL)};
    bk_hands_week week = week_of(&ida, 1, aways, 2);
    ck_assert_int_eq(week.people[0].minutes, 4 * 2 * HOUR);
    ck_assert_int_eq(week.people[0].minutes_left, 4 * 2 * HOUR);
}
END_TEST

START_TEST(only_days_from_the_first_to_the_last_in_the_workroom_count)
{
    bk_person ida = every_day("Ida");
    ida.from = DAY(3, 3);
    ida.until = DAY(3, 4);
    ck_assert_int_eq(week_of(&ida, 1, NULL, 0).minutes, 2 * 2 * HOUR);
}
END_TEST

START_TEST(who_is_away_comes_in_order_and_what_is_over_last)
{
    bk_person ida = every_day("Ida");
    const bk_away aways[] = {
        AWAY("Ida", DAY(1, 1), DAY(1, 2), "first"),
        AWAY("Ida", DAY(3, 9), DAY(3, 9), "later"),
        AWAY("Ida", DAY(2, 27), DAY(3, 1), "second"),
        AWAY("Ida", DAY(3, 1), DAY(3, 2), "still"),
    };
    static const char *const order[] = {"still", "later", "second", "first"};
    bk_hands_week week = week_of(&ida, 1, aways, 4);
    for (size_t i = 0; i < week.away_count; i++)
        ck_assert_str_eq(week.aways[i].reason, order[i]);
}
END_TEST

START_TEST(equipment_comes_in_the_order_of_its_sheet)
{
    bk_store *store = open_store();
    bk_folder *folder = bare_show("The Paper Lantern", DAY(3, 19));
    ROWS(folder, equipment, bk_equipment, {.name = "machine", .kinds = "machine", .count = 2},
         {.name = "cutting table", .kinds = "cut", .count = BK_NOT_KNOWN});
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
    bk_hands_week week = {0};
    MUST(bk_hands_week_read(store, DAY(3, 2), texts(), &week, &trouble));
    bk_store_close(store);
    ck_assert_uint_eq(week.equipment_count, 2);
    ck_assert_str_eq(week.equipment[0].name, "machine");
    ck_assert_int_eq(week.equipment[0].count, 2);
    ck_assert_int_eq(week.equipment[1].count, BK_NOT_KNOWN);
}
END_TEST

BK_TEST_MAIN("hands of a week", hours_count_from_monday_to_sunday_and_those_left_from_today_on,
             absences_are_taken_off_both_their_days_included,
             only_days_from_the_first_to_the_last_in_the_workroom_count,
             who_is_away_comes_in_order_and_what_is_over_last, equipment_comes_in_the_order_of_its_sheet)
