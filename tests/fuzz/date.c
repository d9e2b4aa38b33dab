// Days, times, moments and hours: whatever is read is written as the same text, and what is not read changes
// nothing.

#include <stdbool.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "bodkin/base/arena.h"
#include "bodkin/base/date.h"

enum { UNTOUCHED = -77, DAYS_PER_WEEK = 7, LAST_WEEK = 53, MINUTES_PER_DAY = 1440 };

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size);

/// Ends the run where something does not hold; the fuzzer then keeps the input.
static void hold(bool it)
{
    if (!it)
        abort();
}

static void check_day(const char *text)
{
    bk_day day = UNTOUCHED;
    if (!bk_day_read(text, &day)) {
        hold(day == UNTOUCHED);
        return;
    }
    char written[BK_DAY_ROOM];
    hold(strcmp(bk_day_write(day, written), text) == 0);
}

static void check_time(const char *text)
{
    bk_minute as_begin = UNTOUCHED, as_end = UNTOUCHED;
    bool begins = bk_time_read(text, false, &as_begin);
    bool ends = bk_time_read(text, true, &as_end);
    char written[BK_TIME_ROOM];
    hold(ends || (!begins && as_end == UNTOUCHED));
    hold(begins ? as_begin == as_end : as_begin == UNTOUCHED);
    hold(!ends || strcmp(bk_time_write(as_end, written), text) == 0);
    hold(begins == (ends && as_end < MINUTES_PER_DAY));
}

static void check_moment(const char *text)
{
    bk_moment moment = {UNTOUCHED, UNTOUCHED};
    if (!bk_moment_read(text, &moment)) {
        hold(moment.day == UNTOUCHED && moment.time == UNTOUCHED);
        return;
    }
    char written[BK_MOMENT_ROOM];
    hold(strcmp(bk_moment_write(moment, written), text) == 0);
    hold(bk_moment_order(moment, (bk_moment){moment.day, BK_NO_TIME}) == (moment.time != BK_NO_TIME));
}

static void check_hours(const char *text)
{
    bk_stretch stretches[BK_STRETCHES], again[BK_STRETCHES];
    int count = bk_hours_read(text, stretches);
    hold(count >= -1 && count <= BK_STRETCHES);
    bk_arena *arena = bk_arena_new();
    const char *all = "";
    for (int i = 0; i < count; i++) {
        char from[BK_TIME_ROOM], to[BK_TIME_ROOM];
        hold(stretches[i].from < stretches[i].to && (i == 0 || stretches[i - 1].to <= stretches[i].from));
        all = bk_arena_print(arena, "%s;%s-%s", all, bk_time_write(stretches[i].from, from),
                             bk_time_write(stretches[i].to, to));
    }
    if (count > 0) {
        hold(bk_hours_read(all + 1, again) == count);
        hold(memcmp(again, stretches, (size_t)count * sizeof *again) == 0);
    }
    bk_arena_free(arena);
}

/// The parts, the week and the weekday of any day agree with one another.
static void check_parts(bk_day day)
{
    int year = 0, month = 0, month_day = 0, week_year = 0, week = 0;
    bk_day_parts(day, &year, &month, &month_day);
    hold(bk_day_of(year, month, month_day) == day);
    bk_day_week(day, &week_year, &week);
    bk_day fourth_of_january = bk_day_of(week_year, 1, 4); // always in week 1 (ISO 8601)
    bk_day first_monday = fourth_of_january - bk_weekday(fourth_of_january);
    hold(first_monday + (week - 1) * DAYS_PER_WEEK + bk_weekday(day) == day);
    hold(week >= 1 && week <= LAST_WEEK);
}

int LLVMFuzzerTestOneInput(const uint8_t *data, size_t size)
{
    char *text = bk_alloc(size + 1);
    if (size > 0)
        memcpy(text, data, size);
    text[size] = '\0';
    check_day(text);
    check_time(text);
    check_moment(text);
    check_hours(text);
    int32_t number = 0;
    memcpy(&number, data, size < sizeof number ? size : sizeof number);
    check_parts(number / 4);
    free(text);
    return 0;
}
