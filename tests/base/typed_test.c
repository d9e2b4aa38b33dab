#include "bodkin/base/typed.h"

#include <stdio.h>
#include <string.h>

#include "support/testing.h"

/// 2027-03-05 is a Friday: the ordinal 64 of a year whose 1 January is a Friday (63 days later, 9 weeks).
#define FRIDAY "2027-03-05"

static bk_day day_of(const char *text)
{
    bk_day day = BK_NO_DAY;
    ck_assert(bk_day_read(text, &day));
    return day;
}

typedef struct day_case {
    const char *text, *day;
} day_case;

static void check_days(const char *today, const day_case *cases, size_t count)
{
    for (size_t i = 0; i < count; i++) {
        char written[BK_DAY_ROOM];
        bk_day day = BK_NO_DAY;
        bool read = bk_day_typed(cases[i].text, day_of(today), &day);
        ck_assert_msg(read, "\"%s\" is not read", cases[i].text);
        ck_assert_msg(strcmp(bk_day_write(day, written), cases[i].day) == 0, "\"%s\" is read as %s",
                      cases[i].text, written);
    }
}

#define CHECK_DAYS(today, cases) check_days(today, cases, sizeof(cases) / sizeof *(cases))

START_TEST(days_are_counted_from_today)
{
    static const day_case cases[] = {
        {"today", "2027-03-05"},      {"Tomorrow", "2027-03-06"},     {" YESTERDAY ", "2027-03-04"},
        {"+3", "2027-03-08"},         {"-2", "2027-03-03"},           {"+0", "2027-03-05"},
        {"+2w", "2027-03-19"},        {"+ 2 W", "2027-03-19"},        {"-1w", "2027-02-26"},
        {"+3d", "2027-03-08"},        {"+27", "2027-04-01"},          {"+9999", "2054-07-20"},
        {"2027-03-09", "2027-03-09"}, {" 1999-12-31 ", "1999-12-31"},
    };
    CHECK_DAYS(FRIDAY, cases);
}
END_TEST

START_TEST(a_weekday_is_the_next_one_after_today)
{
    static const day_case cases[] = {
        {"fri", "2027-03-12"}, {"friday", "2027-03-12"}, {"FR", "2027-03-12"},   {"Sat", "2027-03-06"},
        {"sun", "2027-03-07"}, {"mon", "2027-03-08"},    {"tues", "2027-03-09"}, {"wednesday", "2027-03-10"},
        {"thu", "2027-03-11"}, {"Thurs", "2027-03-11"},
    };
    CHECK_DAYS(FRIDAY, cases);
}
END_TEST

START_TEST(a_date_is_written_in_many_ways_with_the_day_first)
{
    static const day_case cases[] = {
        {"9 mar", "2027-03-09"},        {"9 March", "2027-03-09"},        {"mar 9", "2027-03-09"},
        {"9mar", "2027-03-09"},         {"MARCH 9", "2027-03-09"},        {"9. mar", "2027-03-09"},
        {"9.3.", "2027-03-09"},         {"9. 3.", "2027-03-09"},          {"09.03.", "2027-03-09"},
        {"9/3", "2027-03-09"},          {"9 / 3", "2027-03-09"},          {"5/6", "2027-06-05"},
        {"9 mar 2028", "2028-03-09"},   {"mar 9 2028", "2028-03-09"},     {"9.3.28", "2028-03-09"},
        {"9.3.2028", "2028-03-09"},     {"9. 3. 2028", "2028-03-09"},     {"9/3/28", "2028-03-09"},
        {"9/3/2028", "2028-03-09"},     {"29 feb 2028", "2028-02-29"},    {"29.2.00", "2000-02-29"},
        {"1 sept", "2027-09-01"},       {"Tue 9 Mar", "2027-03-09"},      {"Thu 9 Mar 2028", "2028-03-09"},
        {"tuesday 9.3.", "2027-03-09"}, {"fri 2027-03-12", "2027-03-12"},
    };
    CHECK_DAYS(FRIDAY, cases);
}
END_TEST

START_TEST(a_date_without_its_year_lies_at_most_nine_months_ahead)
{
    static const day_case spring[] = {
        {"5 mar", "2027-03-05"}, {"4 mar", "2027-03-04"},  {"5 dec", "2027-12-05"},
        {"6 dec", "2026-12-06"}, {"31 dec", "2026-12-31"}, {"1 jan", "2027-01-01"},
    };
    CHECK_DAYS(FRIDAY, spring);
    static const day_case winter[] = {
        {"1 jan", "2027-01-01"},  {"30 sep", "2027-09-30"}, {"1 oct", "2026-10-01"},
        {"30 dec", "2026-12-30"}, {"31 dec", "2026-12-31"},
    };
    CHECK_DAYS("2026-12-31", winter);
    // Nine months after 31 May is the last of February.
    static const day_case may[] = {{"28 feb", "2027-02-28"}, {"1 mar", "2026-03-01"}};
    CHECK_DAYS("2026-05-31", may);
    static const day_case leap[] = {{"29 feb", "2028-02-29"}};
    CHECK_DAYS("2027-06-01", leap);
    CHECK_DAYS("2028-05-30", leap);
}
END_TEST

START_TEST(what_is_no_day_is_not_read)
{
    static const char *const cases[] = {
        "",           " ",           "x",           "f",           "t",      "tod",       "todays",
        "+",          "-",           "+w",          "+3x",         "+3 x",   "+12345",    "3",
        "9.3",        "9 3",         "9.13.",       "0.3.",        "32.1.",  "9/13",      "9/0",
        "31 apr",     "31/4",        "31.4.27",     "30 feb",      "29 feb", "29.2.27",   "2027-02-29",
        "2027-13-01", "2027-3-9",    "12027-03-09", "2027-03-091", "9 ma",   "9 march x", "9 mar 1999",
        "9 mar 2100", "9 mar 27",    "9.3.1999",    "9.3.7",       "9/3/",   "9/3/7",     "9 marchs",
        "Mon 9 Mar",  "fri fri",     "friday x",    "fridays",     "mar",    "mar 2027",  "march 32",
        "++3",        "9 mar 20277", "9-3-2027",    "2027",        "0 mar",  "9 mar,",    "fri 14:30",
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        bk_day day = 77;
        ck_assert_msg(!bk_day_typed(cases[i], day_of(FRIDAY), &day), "\"%s\" is read", cases[i]);
        ck_assert_int_eq(day, 77);
    }
    bk_day day = 77;
    ck_assert(!bk_day_typed(NULL, 0, &day));
    ck_assert(!bk_day_typed("+1", day_of("9999-12-31"), &day));
    ck_assert(!bk_day_typed("-1", day_of("0001-01-01"), &day));
}
END_TEST

/// What the rule says, found by walking: forward to the end of the nine months, then back for a year.
static bk_day walk(bk_day today, int month, int month_day)
{
    int year = 0, its_month = 0, its_day = 0, first_month = 0, first_day = 0;
    bk_day_parts(today, &year, &first_month, &first_day);
    int months = 0; // begun since today
    bk_day last = today;
    for (int before = first_month;; last++, before = its_month) {
        bk_day_parts(last, &year, &its_month, &its_day);
        months += its_month != before;
        if (months > 9 || (months == 9 && its_day > first_day))
            break;
    }
    for (bk_day day = last - 1; day >= last - 1 - 365; day--) {
        bk_day_parts(day, &year, &its_month, &its_day);
        if (its_month == month && its_day == month_day)
            return day;
    }
    return BK_NO_DAY;
}

START_TEST(every_date_of_two_years_is_the_one_found_by_walking)
{
    static const char *const months[] = {"jan", "feb", "mar", "apr", "may", "jun",
                                         "jul", "aug", "sep", "oct", "nov", "dec"};
    for (bk_day today = day_of("2027-02-20"); today < day_of("2029-03-10"); today += 5)
        for (int month = 1; month <= 12; month++)
            for (int month_day = 1; month_day <= 31; month_day++) {
                char text[16];
                bk_day day = BK_NO_DAY;
                snprintf(text, sizeof text, "%d %s", month_day, months[month - 1]);
                bool read = bk_day_typed(text, today, &day);
                if (day != walk(today, month, month_day) || read != (day != BK_NO_DAY))
                    ck_abort_msg("%s on day %d is read as %d", text, (int)today, (int)day);
            }
}
END_TEST

START_TEST(times_are_read_as_they_are_typed)
{
    static const struct {
        const char *text;
        int hours, minutes;
    } cases[] = {
        {"14:30", 14, 30},  {"1430", 14, 30},    {"14.30", 14, 30}, {"2pm", 14, 0},   {"2:30 pm", 14, 30},
        {"9", 9, 0},        {"14h", 14, 0},      {"14h30", 14, 30}, {"9:05", 9, 5},   {"930", 9, 30},
        {" 0 ", 0, 0},      {"23:59", 23, 59},   {"12am", 0, 0},    {"12 PM", 12, 0}, {"12:01am", 0, 1},
        {"2.30pm", 14, 30}, {"14 h 30", 14, 30}, {"9H", 9, 0},      {"0000", 0, 0},   {"11am", 11, 0},
        {"00:00", 0, 0},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        bk_minute time = BK_NO_TIME;
        ck_assert_msg(bk_time_typed(cases[i].text, &time), "\"%s\" is not read", cases[i].text);
        ck_assert_msg(time == cases[i].hours * 60 + cases[i].minutes, "\"%s\" is read as %d", cases[i].text,
                      (int)time);
    }
}
END_TEST

START_TEST(what_is_no_time_is_not_read)
{
    static const char *const cases[] = {"",      " ",      "x",      "24:00", "24",    "2400", "14:60",
                                        "1460",  "14:3",   "14:",    "14.",   "9:5",   "14h3", "14h60",
                                        "13pm",  "0am",    "14:30x", "2 p",   "2pmm",  "pm",   "-1",
                                        "14300", "14:300", "14h30h", "1 4",   "14,30", "+3",   "14:30:00"};
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        bk_minute time = 77;
        ck_assert_msg(!bk_time_typed(cases[i], &time), "\"%s\" is read", cases[i]);
        ck_assert_int_eq(time, 77);
    }
    bk_minute time = 77;
    ck_assert(!bk_time_typed(NULL, &time));
}
END_TEST

START_TEST(a_moment_is_a_day_and_perhaps_a_time)
{
    static const struct {
        const char *text, *moment;
    } cases[] = {
        {"fri 14:30", "2027-03-12T14:30"},
        {"+3 2pm", "2027-03-08T14:00"},
        {"9 mar 10", "2027-03-09T10:00"},
        {"2027-03-05T14:30", "2027-03-05T14:30"},
        {"2027-03-05t9:30", "2027-03-05T09:30"},
        {"2027-03-05 1430", "2027-03-05T14:30"},
        {"fri", "2027-03-12"},
        {"9 mar", "2027-03-09"},
        {"9.3. 14.30", "2027-03-09T14:30"},
        {"9.3.28 14.30", "2028-03-09T14:30"},
        {"9/3 9", "2027-03-09T09:00"},
        {"9/3/28 9", "2028-03-09T09:00"},
        {"9 mar 2028", "2028-03-09"},
        {"9 mar 2028 10", "2028-03-09T10:00"},
        {"9 mar 1930", "2027-03-09T19:30"},
        {"9 mar 2030", "2030-03-09"},
        {"9 mar 20:30", "2027-03-09T20:30"},
        {"mar 9 10", "2027-03-09T10:00"},
        {"fri 14.30", "2027-03-12T14:30"},
        {"Tue 9 Mar 10:00", "2027-03-09T10:00"},
        {"tomorrow 2:30 PM", "2027-03-06T14:30"},
        {"today 0900", "2027-03-05T09:00"},
        {"+1w 9", "2027-03-12T09:00"},
        {"-1 10", "2027-03-04T10:00"},
        {"fri 9", "2027-03-12T09:00"},
        {" fri  9h ", "2027-03-12T09:00"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        char written[BK_MOMENT_ROOM];
        bk_moment moment = {.day = BK_NO_DAY};
        bool read = bk_moment_typed(cases[i].text, day_of(FRIDAY), &moment);
        ck_assert_msg(read, "\"%s\" is not read", cases[i].text);
        ck_assert_msg(strcmp(bk_moment_write(moment, written), cases[i].moment) == 0, "\"%s\" is read as %s",
                      cases[i].text, written);
    }
}
END_TEST

START_TEST(what_is_no_moment_is_not_read)
{
    static const char *const cases[] = {
        "",           "14:30",       "fri 25:00",    "fri x",           "9 mar 99",         "fri14:30",
        "fri T14:30", "2027-03-05T", "2027-03-05Tx", "2027-03-0514:30", "2027-03-05T24:00", "mon 9 mar 10",
        "31 apr 10",  "9.3 10"};
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        bk_moment moment = {.day = 77, .time = 78};
        ck_assert_msg(!bk_moment_typed(cases[i], day_of(FRIDAY), &moment), "\"%s\" is read", cases[i]);
        ck_assert(moment.day == 77 && moment.time == 78);
    }
    bk_moment moment = {.day = 77};
    ck_assert(!bk_moment_typed(NULL, 0, &moment));
}
END_TEST

BK_TEST_MAIN("typed", days_are_counted_from_today, a_weekday_is_the_next_one_after_today,
             a_date_is_written_in_many_ways_with_the_day_first,
             a_date_without_its_year_lies_at_most_nine_months_ahead, what_is_no_day_is_not_read,
             every_date_of_two_years_is_the_one_found_by_walking, times_are_read_as_they_are_typed,
             what_is_no_time_is_not_read, a_moment_is_a_day_and_perhaps_a_time, what_is_no_moment_is_not_read)
