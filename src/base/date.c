#include "bodkin/base/date.h"

#include <stddef.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "bodkin/base/text.h"

enum {
    DAYS_PER_WEEK = 7,
    MINUTES_PER_HOUR = 60,
    HOURS_PER_DAY = 24,
    MINUTES_PER_DAY = HOURS_PER_DAY * MINUTES_PER_HOUR,
    FIRST_YEAR = 1,
    LAST_YEAR = 9999,
    TEN = 10,
    DAY_LENGTH = 10, ///< characters of YYYY-MM-DD
    TIME_LENGTH = 5, ///< of HH:MM
};

static const char *const weekday_words[] = {"Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"};
static const char *const month_words[] = {"Jan", "Feb", "Mar", "Apr", "May", "Jun",
                                          "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"};

// The calendar repeats every 400 years. Counted from a 1 March, the leap day is the last of its year, and the
// months have 31, 30, 31, 30, 31, 31, 30, 31, 30, 31, 31 days and what is left: (153 m + 2) / 5 days before
// month m.
enum {
    DAYS_PER_CYCLE = 146097,
    YEARS_PER_CYCLE = 400,
    DAYS_PER_CENTURY = 36524,
    DAYS_PER_FOUR_YEARS = 1461,
    DAYS_PER_YEAR = 365,
    EPOCH = 719468, ///< days from 0000-03-01 to 1970-01-01
    MARCH = 3,
    MONTHS = 12
};

static int64_t floor_divide(int64_t number, int64_t divisor)
{
    return number / divisor - (number % divisor < 0 ? 1 : 0);
}

bk_day bk_day_of(int year, int month, int day)
{
    int64_t march_year = (int64_t)year - (month < MARCH ? 1 : 0);
    int64_t cycle = floor_divide(march_year, YEARS_PER_CYCLE);
    int64_t year_in_cycle = march_year - cycle * YEARS_PER_CYCLE;
    int64_t month_from_march = (month + MONTHS - MARCH) % MONTHS;
    int64_t day_in_year = (153 * month_from_march + 2) / 5 + day - 1;
    int64_t day_in_cycle =
        year_in_cycle * DAYS_PER_YEAR + year_in_cycle / 4 - year_in_cycle / 100 + day_in_year;
    return (bk_day)(cycle * DAYS_PER_CYCLE + day_in_cycle - EPOCH);
}

void bk_day_parts(bk_day day, int *year, int *month, int *month_day)
{
    int64_t from_epoch = (int64_t)day + EPOCH;
    int64_t cycle = floor_divide(from_epoch, DAYS_PER_CYCLE);
    int64_t day_in_cycle = from_epoch - cycle * DAYS_PER_CYCLE;
    int64_t leap_days = day_in_cycle / (DAYS_PER_FOUR_YEARS - 1) - day_in_cycle / DAYS_PER_CENTURY +
                        day_in_cycle / (DAYS_PER_CYCLE - 1);
    int64_t year_in_cycle = (day_in_cycle - leap_days) / DAYS_PER_YEAR;
    int64_t day_in_year =
        day_in_cycle - (year_in_cycle * DAYS_PER_YEAR + year_in_cycle / 4 - year_in_cycle / 100);
    int64_t month_from_march = (5 * day_in_year + 2) / 153;
    *month_day = (int)(day_in_year - (153 * month_from_march + 2) / 5 + 1);
    *month = (int)((month_from_march + MARCH - 1) % MONTHS + 1);
    *year = (int)(cycle * YEARS_PER_CYCLE + year_in_cycle + (*month < MARCH ? 1 : 0));
}

int bk_weekday(bk_day day)
{
    const int64_t thursday = 3; // of 1970-01-01
    int64_t from_monday = (int64_t)day + thursday;
    return (int)(from_monday - floor_divide(from_monday, DAYS_PER_WEEK) * DAYS_PER_WEEK);
}

void bk_day_week(bk_day day, int *year, int *week)
{
    int month = 0, month_day = 0;
    bk_day thursday = day - bk_weekday(day) + 3; // a week belongs to the year of its Thursday
    bk_day_parts(thursday, year, &month, &month_day);
    *week = (thursday - bk_day_of(*year, 1, 1)) / DAYS_PER_WEEK + 1;
}

/// The number that `count` digits at `text` write; -1 where one of them is no digit.
static int read_digits(const char *text, size_t count)
{
    int number = 0;
    for (size_t i = 0; i < count; i++) {
        if (text[i] < '0' || text[i] > '9')
            return -1;
        number = number * TEN + (text[i] - '0');
    }
    return number;
}

/// Reads the DAY_LENGTH characters at `text`; what follows them is not looked at.
static bool read_day(const char *text, bk_day *day)
{
    if (strnlen(text, DAY_LENGTH) < DAY_LENGTH || text[4] != '-' || text[7] != '-')
        return false;
    int year = read_digits(text, 4), month = read_digits(text + 5, 2), month_day = read_digits(text + 8, 2);
    if (year < FIRST_YEAR || month < 1 || month > MONTHS || month_day < 1)
        return false;
    bk_day read = bk_day_of(year, month, month_day);
    bk_day next_month = month == MONTHS ? bk_day_of(year + 1, 1, 1) : bk_day_of(year, month + 1, 1);
    if (read >= next_month)
        return false;
    *day = read;
    return true;
}

/// The same for the TIME_LENGTH characters of a time.
static bool read_time(const char *text, bool end, bk_minute *time)
{
    if (strnlen(text, TIME_LENGTH) < TIME_LENGTH || text[2] != ':')
        return false;
    int hours = read_digits(text, 2), minutes = read_digits(text + 3, 2);
    if (hours < 0 || minutes < 0 || minutes >= MINUTES_PER_HOUR)
        return false;
    int read = hours * MINUTES_PER_HOUR + minutes;
    if (read > MINUTES_PER_DAY || (read == MINUTES_PER_DAY && !end))
        return false;
    *time = read;
    return true;
}

bool bk_day_read(const char *text, bk_day *day)
{
    return text != NULL && strlen(text) == DAY_LENGTH && read_day(text, day);
}

bool bk_time_read(const char *text, bool end, bk_minute *time)
{
    return text != NULL && strlen(text) == TIME_LENGTH && read_time(text, end, time);
}

bool bk_moment_read(const char *text, bk_moment *moment)
{
    bk_moment read = {.day = BK_NO_DAY, .time = BK_NO_TIME};
    if (text == NULL || !read_day(text, &read.day))
        return false;
    if (text[DAY_LENGTH] == 'T') {
        if (!bk_time_read(text + DAY_LENGTH + 1, false, &read.time))
            return false;
    } else if (text[DAY_LENGTH] != '\0') {
        return false;
    }
    *moment = read;
    return true;
}

static bool in_calendar(int year)
{
    return year >= FIRST_YEAR && year <= LAST_YEAR;
}

/// Writes `number`, below 10 to the power of `count`, as exactly `count` digits; returns where they end.
static char *write_digits(char *out, int number, size_t count)
{
    for (size_t i = count; i > 0; i--, number /= TEN)
        out[i - 1] = (char)('0' + number % TEN);
    return out + count;
}

char *bk_day_write(bk_day day, char out[BK_DAY_ROOM])
{
    int year = 0, month = 0, month_day = 0;
    bk_day_parts(day, &year, &month, &month_day);
    char *at = out;
    if (in_calendar(year)) {
        at = write_digits(at, year, 4);
        *at++ = '-';
        at = write_digits(at, month, 2);
        *at++ = '-';
        at = write_digits(at, month_day, 2);
    }
    *at = '\0';
    return out;
}

char *bk_time_write(bk_minute time, char out[BK_TIME_ROOM])
{
    char *at = out;
    if (time >= 0 && time <= MINUTES_PER_DAY) {
        at = write_digits(at, time / MINUTES_PER_HOUR, 2);
        *at++ = ':';
        at = write_digits(at, time % MINUTES_PER_HOUR, 2);
    }
    *at = '\0';
    return out;
}

char *bk_moment_write(bk_moment moment, char out[BK_MOMENT_ROOM])
{
    bk_day_write(moment.day, out);
    size_t length = strlen(out);
    if (length > 0 && moment.time != BK_NO_TIME) {
        out[length] = 'T';
        bk_time_write(moment.time, out + length + 1);
    }
    return out;
}

enum { DAYS_TOLD_APART = 300 }; // a day as near as that to come is not taken for the same one of another year

char *bk_day_words(bk_day day, bk_day today, char out[BK_DAY_WORDS_ROOM])
{
    int year = 0, month = 0, month_day = 0, this_year = 0, unused = 0;
    bk_day_parts(day, &year, &month, &month_day);
    bk_day_parts(today, &this_year, &unused, &unused);
    if (!in_calendar(year))
        out[0] = '\0';
    else if (year == this_year || (day > today && (int64_t)day - today <= DAYS_TOLD_APART))
        snprintf(out, BK_DAY_WORDS_ROOM, "%s %d %s", weekday_words[bk_weekday(day)], month_day,
                 month_words[month - 1]);
    else
        snprintf(out, BK_DAY_WORDS_ROOM, "%s %d %s %d", weekday_words[bk_weekday(day)], month_day,
                 month_words[month - 1], year);
    return out;
}

int bk_moment_order(bk_moment left, bk_moment right)
{
    if (left.day != right.day)
        return left.day < right.day ? -1 : 1;
    return (left.time > right.time) - (left.time < right.time);
}

/// Reads one stretch, `HH:MM-HH:MM`, of exactly `length` characters.
static bool read_stretch(const char *text, size_t length, bk_stretch *stretch)
{
    return length == 2 * TIME_LENGTH + 1 && text[TIME_LENGTH] == '-' &&
           read_time(text, false, &stretch->from) && read_time(text + TIME_LENGTH + 1, true, &stretch->to) &&
           stretch->from < stretch->to;
}

static int stretch_order(const void *left, const void *right)
{
    const bk_stretch *a = left, *b = right;
    return a->from - b->from;
}

int bk_hours_read(const char *text, bk_stretch stretches[BK_STRETCHES])
{
    int count = 0;
    size_t length = 0;
    const char *item = NULL;
    if (text == NULL || text[strspn(text, " \t\r\n")] == '\0')
        return 0;
    while (bk_list_item(&text, &item, &length)) {
        if (count == BK_STRETCHES || !read_stretch(item, length, &stretches[count]))
            return -1;
        count++;
    }
    qsort(stretches, (size_t)count, sizeof *stretches, stretch_order);
    for (int i = 1; i < count; i++)
        if (stretches[i].from < stretches[i - 1].to)
            return -1;
    return count;
}
