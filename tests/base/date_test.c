// Held against the C library's calendar over all of the years 0001 to 9999.

#include "bodkin/base/date.h"

#include <stdio.h>
#include <string.h>
#include <time.h>

#include "bodkin/base/text.h"
#include "support/testing.h"

enum { SECONDS_PER_DAY = 86400 };

/// The first and the last day of the calendar, by the C library.
static bk_day day_by_library(int year, int month, int month_day)
{
    struct tm parts = {.tm_year = year - 1900, .tm_mon = month - 1, .tm_mday = month_day};
    return (bk_day)(timegm(&parts) / SECONDS_PER_DAY);
}

START_TEST(every_day_of_the_calendar_agrees_with_the_c_library)
{
    bk_day last = day_by_library(9999, 12, 31);
    for (bk_day day = day_by_library(1, 1, 1); day <= last; day++) {
        time_t moment = (time_t)day * SECONDS_PER_DAY;
        struct tm parts;
        gmtime_r(&moment, &parts);
        int year = 0, month = 0, month_day = 0;
        bk_day_parts(day, &year, &month, &month_day);
        if (year != parts.tm_year + 1900 || month != parts.tm_mon + 1 || month_day != parts.tm_mday)
            ck_abort_msg("day %d is %d-%d-%d", day, year, month, month_day);
        if (bk_day_of(year, month, month_day) != day)
            ck_abort_msg("%d-%d-%d is day %d", year, month, month_day, bk_day_of(year, month, month_day));
        if (bk_weekday(day) != (parts.tm_wday + 6) % 7)
            ck_abort_msg("day %d is weekday %d", day, bk_weekday(day));
    }
}
END_TEST

START_TEST(every_week_of_the_calendar_agrees_with_the_c_library)
{
    bk_day last = day_by_library(9999, 12, 31);
    for (bk_day day = day_by_library(1, 1, 1); day <= last; day += 3) { // 3 and 7 share no divisor
        time_t moment = (time_t)day * SECONDS_PER_DAY;
        struct tm parts;
        gmtime_r(&moment, &parts);
        char theirs[32];
        strftime(theirs, sizeof theirs, "%V", &parts);
        int year = 0, week = 0;
        bk_day_week(day, &year, &week);
        char ours[32];
        snprintf(ours, sizeof ours, "%02d", week);
        if (strcmp(ours, theirs) != 0)
            ck_abort_msg("day %d is week %s, not %s", day, theirs, ours);
        int turned = parts.tm_mon == 0 && week >= 52 ? -1 : parts.tm_mon == 11 && week == 1 ? 1 : 0;
        if (year != parts.tm_year + 1900 + turned)
            ck_abort_msg("day %d is in year %d of weeks", day, year);
    }
}
END_TEST

START_TEST(weeks_belong_to_the_year_of_their_thursday)
{
    // ISO 8601, from memory: 2021-01-03 is 2020-W53-7, 2024-12-30 is 2025-W01-1, 2008-12-29 is 2009-W01-1.
    static const struct {
        const char *day;
        int year, week, weekday;
    } cases[] = {{"2021-01-03", 2020, 53, 6}, {"2024-12-30", 2025, 1, 0}, {"2008-12-29", 2009, 1, 0}};
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        bk_day day = BK_NO_DAY;
        int year = 0, week = 0;
        ck_assert(bk_day_read(cases[i].day, &day));
        bk_day_week(day, &year, &week);
        ck_assert_int_eq(year, cases[i].year);
        ck_assert_int_eq(week, cases[i].week);
        ck_assert_int_eq(bk_weekday(day), cases[i].weekday);
    }
}
END_TEST

START_TEST(days_far_away_have_parts_too)
{
    static const bk_day days[] = {INT32_MIN, INT32_MIN + 1, -800000, -719469, -719468, 4000000, INT32_MAX};
    for (size_t i = 0; i < sizeof days / sizeof *days; i++) {
        int year = 0, month = 0, month_day = 0;
        bk_day_parts(days[i], &year, &month, &month_day);
        ck_assert_int_eq(bk_day_of(year, month, month_day), days[i]);
        time_t moment = (time_t)days[i] * SECONDS_PER_DAY;
        struct tm parts;
        ck_assert_ptr_nonnull(gmtime_r(&moment, &parts));
        ck_assert_int_eq(bk_weekday(days[i]), (parts.tm_wday + 6) % 7);
        ck_assert_int_eq(month_day, parts.tm_mday);
    }
}
END_TEST

START_TEST(a_day_is_read_and_written_the_same)
{
    bk_day last = day_by_library(9999, 12, 31);
    for (bk_day day = day_by_library(1, 1, 1); day <= last; day++) {
        char text[BK_DAY_ROOM];
        bk_day again = BK_NO_DAY;
        if (!bk_day_read(bk_day_write(day, text), &again) || again != day || strlen(text) != 10)
            ck_abort_msg("day %d is written %s", day, text);
    }
}
END_TEST

START_TEST(only_days_that_exist_are_read)
{
    static const char *const faulty[] = {
        "",           "2027-02-29",       "2100-02-29",  "2027-04-31",  "2027-00-10",
        "2027-13-01", "2027-01-00",       "2027-01-32",  "0000-01-01",  "2027-1-1",
        "27-01-01",   "2027/01/01",       "2027-01-01 ", " 2027-01-01", "2027-01-0x",
        "+027-01-01", "2027-01-01T10:00", "10000-01-01", "2027-01",     "２027-01-01",
        "-001-01-01"};
    for (size_t i = 0; i < sizeof faulty / sizeof *faulty; i++) {
        bk_day day = 77;
        ck_assert_msg(!bk_day_read(faulty[i], &day), "%s", faulty[i]);
        ck_assert_int_eq(day, 77);
    }
    static const char *const leap[] = {"2028-02-29", "2000-02-29", "2400-02-29", "0004-02-29"};
    bk_day day = BK_NO_DAY;
    for (size_t i = 0; i < sizeof leap / sizeof *leap; i++)
        ck_assert_msg(bk_day_read(leap[i], &day), "%s", leap[i]);
    ck_assert(!bk_day_read(NULL, &day));
}
END_TEST

START_TEST(midnight_at_the_end_is_only_an_end)
{
    bk_minute time = 5;
    ck_assert(bk_time_read("00:00", false, &time) && time == 0);
    ck_assert(bk_time_read("23:59", false, &time) && time == 1439);
    ck_assert(!bk_time_read("24:00", false, &time));
    ck_assert(bk_time_read("24:00", true, &time) && time == 1440);
    static const char *const faulty[] = {"",       "24:01", "25:00", "9:00", "09:60",    "09.00",
                                         "09:00 ", "09:0x", "-1:00", "0900", "09:00:00", "ab:cd"};
    for (size_t i = 0; i < sizeof faulty / sizeof *faulty; i++)
        ck_assert_msg(!bk_time_read(faulty[i], true, &time), "%s", faulty[i]);
    ck_assert(!bk_time_read(NULL, true, &time));
    ck_assert_int_eq(time, 1440);
}
END_TEST

START_TEST(times_are_read_and_written_the_same)
{
    char text[BK_TIME_ROOM];
    for (bk_minute time = 0; time <= 1440; time++) {
        bk_minute again = BK_NO_TIME;
        ck_assert(bk_time_read(bk_time_write(time, text), true, &again) && again == time);
    }
    ck_assert_str_eq(bk_time_write(605, text), "10:05");
    ck_assert_str_eq(bk_time_write(BK_NO_TIME, text), "");
    ck_assert_str_eq(bk_time_write(1441, text), "");
}
END_TEST

START_TEST(a_moment_has_a_time_or_none)
{
    bk_moment moment = {0};
    char text[BK_MOMENT_ROOM];
    ck_assert(bk_moment_read("2027-03-09", &moment));
    ck_assert_int_eq(moment.time, BK_NO_TIME);
    ck_assert_str_eq(bk_moment_write(moment, text), "2027-03-09");
    ck_assert(bk_moment_read("2027-03-09T14:30", &moment));
    ck_assert_int_eq(moment.time, 14 * 60 + 30);
    ck_assert_int_eq(moment.day, day_by_library(2027, 3, 9));
    ck_assert_str_eq(bk_moment_write(moment, text), "2027-03-09T14:30");
    static const char *const faulty[] = {
        "",           "2027-03-09T",      "2027-03-09 14:30",  "2027-03-09T24:00",
        "T14:30",     "2027-02-30T14:30", "2027-03-09T14:30Z", "2027-03-09T1430",
        "2027-03-09x"};
    for (size_t i = 0; i < sizeof faulty / sizeof *faulty; i++)
        ck_assert_msg(!bk_moment_read(faulty[i], &moment), "%s", faulty[i]);
    ck_assert(!bk_moment_read(NULL, &moment));
    ck_assert_int_eq(moment.time, 14 * 60 + 30);
}
END_TEST

START_TEST(no_day_is_written_as_nothing)
{
    char text[BK_DAY_ROOM], words[BK_DAY_WORDS_ROOM], moment[BK_MOMENT_ROOM];
    ck_assert_str_eq(bk_day_write(BK_NO_DAY, text), "");
    ck_assert_str_eq(bk_day_write(day_by_library(9999, 12, 31) + 1, text), "");
    ck_assert_str_eq(bk_day_write(day_by_library(1, 1, 1) - 1, text), "");
    ck_assert_str_eq(bk_day_words(BK_NO_DAY, 0, words), "");
    ck_assert_str_eq(bk_moment_write((bk_moment){BK_NO_DAY, 600}, moment), "");
}
END_TEST

START_TEST(a_day_in_words_names_the_year_only_where_it_could_be_taken_for_another)
{
    char words[BK_DAY_WORDS_ROOM];
    bk_day day = day_by_library(2027, 3, 9);
    ck_assert_str_eq(bk_day_words(day, day_by_library(2027, 12, 31), words), "Tue 9 Mar");
    ck_assert_str_eq(bk_day_words(day, day_by_library(2028, 1, 1), words), "Tue 9 Mar 2027");
    ck_assert_str_eq(bk_day_words(day, day - 300, words), "Tue 9 Mar");
    ck_assert_str_eq(bk_day_words(day, day - 301, words), "Tue 9 Mar 2027");
    static const char *const week[] = {"Mon 1 Jan", "Tue 2 Jan", "Wed 3 Jan", "Thu 4 Jan",
                                       "Fri 5 Jan", "Sat 6 Jan", "Sun 7 Jan"};
    bk_day monday = day_by_library(2024, 1, 1);
    for (int i = 0; i < 7; i++)
        ck_assert_str_eq(bk_day_words(monday + i, monday, words), week[i]);
    static const char *const months[] = {"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                         "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};
    for (int i = 0; i < 12; i++)
        ck_assert_ptr_nonnull(
            strstr(bk_day_words(day_by_library(2024, i + 1, 28), monday, words), months[i]));
}
END_TEST

START_TEST(a_bare_day_comes_before_its_times)
{
    bk_moment in_order[] = {{9, 1000}, {10, BK_NO_TIME}, {10, 0}, {10, 600}, {11, BK_NO_TIME}};
    for (int i = 0; i < 5; i++)
        for (int j = 0; j < 5; j++) {
            int order = bk_moment_order(in_order[i], in_order[j]);
            ck_assert_msg(i < j ? order < 0 : i > j ? order > 0 : order == 0, "%d and %d", i, j);
        }
}
END_TEST

/// The stretches that were read, written again in their order; "faulty" for none.
static const char *hours(bk_arena *arena, const char *text)
{
    bk_stretch stretches[BK_STRETCHES];
    int count = bk_hours_read(text, stretches);
    if (count < 0)
        return "faulty";
    const char *all = "";
    for (int i = 0; i < count; i++) {
        char from[BK_TIME_ROOM], to[BK_TIME_ROOM];
        all = bk_arena_print(arena, "%s%s%s-%s", all, i > 0 ? ";" : "",
                             bk_time_write(stretches[i].from, from), bk_time_write(stretches[i].to, to));
    }
    return all;
}

START_TEST(hours_of_a_day_are_read_in_order_of_time)
{
    static const char *const cases[][2] = {
        {"", ""},
        {"  ", ""},
        {"10:00-13:00", "10:00-13:00"},
        {"14:00-18:00; 10:00-13:00", "10:00-13:00;14:00-18:00"},
        {"10:00-13:00;13:00-24:00", "10:00-13:00;13:00-24:00"},
        {"10:00-13:00;", "10:00-13:00"},
        {"10:00-13:00;12:59-14:00", "faulty"},
        {"12:00-14:00;10:00-12:01", "faulty"},
        {"10:00-18:00;11:00-12:00", "faulty"},
        {"13:00-10:00", "faulty"},
        {"10:00-10:00", "faulty"},
        {"24:00-24:00", "faulty"},
        {"10:00", "faulty"},
        {"10:00-13:00;;14:00-15:00", "faulty"},
        {"10:00 - 13:00", "faulty"},
        {"10:00-13:00x", "faulty"},
        {"10-13", "faulty"},
        {"22:00-06:00", "faulty"},
    };
    bk_arena *arena = bk_arena_new();
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
        ck_assert_str_eq(hours(arena, cases[i][0]), cases[i][1]);
    ck_assert_int_eq(bk_hours_read(NULL, NULL), 0);
    bk_arena_free(arena);
}
END_TEST

START_TEST(a_day_has_at_most_twelve_stretches)
{
    bk_stretch stretches[BK_STRETCHES];
    char text[16 * (BK_STRETCHES + 1)] = "";
    for (int i = 0; i < BK_STRETCHES; i++)
        snprintf(text + strlen(text), 16, "%02d:00-%02d:30;", i, i);
    ck_assert_int_eq(bk_hours_read(text, stretches), BK_STRETCHES);
    strcat(text, "23:00-24:00");
    ck_assert_int_eq(bk_hours_read(text, stretches), -1);
}
END_TEST

BK_TEST_MAIN("date", every_day_of_the_calendar_agrees_with_the_c_library,
             every_week_of_the_calendar_agrees_with_the_c_library, weeks_belong_to_the_year_of_their_thursday,
             days_far_away_have_parts_too, a_day_is_read_and_written_the_same, only_days_that_exist_are_read,
             midnight_at_the_end_is_only_an_end, times_are_read_and_written_the_same,
             a_moment_has_a_time_or_none, no_day_is_written_as_nothing,
             a_day_in_words_names_the_year_only_where_it_could_be_taken_for_another,
             a_bare_day_comes_before_its_times, hours_of_a_day_are_read_in_order_of_time,
             a_day_has_at_most_twelve_stretches)
