#include "bodkin/plan/calendar.h"

#include <stdlib.h>
#include <string.h>

#include "bodkin/plan/chance.h"
#include "support/testing.h"

// Calendars made up by chance, held against a walk over every minute of some weeks.

enum {
    ROUNDS = 3000,
    QUESTIONS = 12,
    DAYS = 23,
    MINUTES = DAYS * BK_DAY_MINUTES, // those that are walked over
    WEEK = 7,
    AWAY_ROOM = 6,
    FIRST_DAYS = 4000, // the walk begins within so many days of 1970-01-01, before or after
    SEED = 20270301
};

#define NOT_SEEN INT64_MAX // beyond what is walked over

typedef struct calendar_trial {
    bk_chance chance;
    bk_arena *arena;
    bk_day first; // the day whose midnight is minute 0 of the walk
    bk_hours hours;
    bk_day away[AWAY_ROOM][2];
    bool worked[MINUTES]; // one minute after the other
    const bk_calendar *calendar;
} calendar_trial;

static int drawn(calendar_trial *trial, int below)
{
    return (int)bk_chance_below(&trial->chance, (uint32_t)below);
}

// --------------------------------------------------------------------------------------------------------- making

static int minute_order(const void *left, const void *right)
{
    const bk_minute *one = left, *other = right;
    return (*one > *other) - (*one < *other);
}

// Some stretches between minutes drawn by chance, of which midnights are drawn more often; some of them touch.
static void make_day(calendar_trial *trial, int day)
{
    enum { MOST = 4 };
    bk_minute ends[2 * MOST];
    int wanted = 2 * drawn(trial, MOST + 1);
    for (int i = 0; i < wanted; i++)
        ends[i] = drawn(trial, 5) == 0 ? BK_DAY_MINUTES * drawn(trial, 2) : drawn(trial, BK_DAY_MINUTES + 1);
    qsort(ends, (size_t)wanted, sizeof *ends, minute_order);
    int count = 0;
    for (int i = 0; i + 1 < wanted; i += 1 + (drawn(trial, 4) > 0))
        if (ends[i] < ends[i + 1])
            trial->hours.week.stretches[day][count++] = (bk_stretch){ends[i], ends[i + 1]};
    trial->hours.week.counts[day] = count;
}

static void make_week(calendar_trial *trial)
{
    int shape = drawn(trial, 8);
    for (int day = 0; day < WEEK; day++) {
        if (shape == 0) { // without a pause, but for some weeks with one
            trial->hours.week.stretches[day][0] = (bk_stretch){0, BK_DAY_MINUTES - (drawn(trial, 12) == 0)};
            trial->hours.week.counts[day] = 1;
        } else if (drawn(trial, 8) < shape) {
            make_day(trial, day);
        }
    }
}

static bk_day drawn_day(calendar_trial *trial)
{
    return trial->first + 1 + drawn(trial, DAYS - 2);
}

static void make_hours(calendar_trial *trial)
{
    trial->first = drawn(trial, 2 * FIRST_DAYS) - FIRST_DAYS;
    trial->hours = (bk_hours){.from = BK_NO_DAY, .until = BK_NO_DAY};
    make_week(trial);
    if (drawn(trial, 2) == 0)
        trial->hours.from = drawn_day(trial);
    if (drawn(trial, 2) == 0)
        trial->hours.until = drawn_day(trial);
    trial->hours.away_count = (size_t)drawn(trial, AWAY_ROOM + 1);
    for (size_t i = 0; i < trial->hours.away_count; i++) {
        trial->away[i][0] = drawn_day(trial);
        trial->away[i][1] = trial->away[i][0] + drawn(trial, 4);
    }
    trial->hours.away = (const bk_day(*)[2])trial->away;
}

// ---------------------------------------------------------------------------------------------------- minute by minute

static bool is_there(const calendar_trial *trial, bk_day day)
{
    if (trial->hours.from != BK_NO_DAY && day < trial->hours.from)
        return false;
    if (trial->hours.until != BK_NO_DAY && day > trial->hours.until)
        return false;
    for (size_t i = 0; i < trial->hours.away_count; i++)
        if (trial->away[i][0] <= day && day <= trial->away[i][1])
            return false;
    return true;
}

static void walk_days(calendar_trial *trial)
{
    memset(trial->worked, 0, sizeof trial->worked);
    for (int day = 0; day < DAYS; day++) {
        int weekday = bk_weekday(trial->first + day);
        if (!is_there(trial, trial->first + day))
            continue;
        for (int i = 0; i < trial->hours.week.counts[weekday]; i++) {
            bk_stretch stretch = trial->hours.week.stretches[weekday][i];
            memset(trial->worked + day * BK_DAY_MINUTES + stretch.from, 1,
                   (size_t)(stretch.to - stretch.from));
        }
    }
}

static int64_t walk_forwards(const calendar_trial *trial, int from, int minutes)
{
    for (int minute = from; minute < MINUTES; minute++) {
        if (trial->worked[minute] && minutes == 0)
            return minute;
        if (trial->worked[minute] && --minutes == 0)
            return minute + 1;
    }
    return NOT_SEEN;
}

static int64_t walk_backwards(const calendar_trial *trial, int to, int minutes)
{
    for (int minute = to; minute > 0; minute--) {
        if (trial->worked[minute - 1] && minutes == 0)
            return minute;
        if (trial->worked[minute - 1] && --minutes == 0)
            return minute - 1;
    }
    return NOT_SEEN;
}

static int64_t walk_between(const calendar_trial *trial, int from, int to)
{
    int64_t worked = 0;
    for (int minute = from; minute < to; minute++)
        worked += trial->worked[minute];
    return worked;
}

// The first minute from which on so many are worked without a pause.
static int64_t walk_unbroken(const calendar_trial *trial, int from, int minutes)
{
    int begin = from;
    for (int minute = from; minute < MINUTES; minute++) {
        if (!trial->worked[minute])
            begin = minute + 1;
        else if (minute + 1 - begin >= minutes)
            return begin;
    }
    return NOT_SEEN;
}

// ------------------------------------------------------------------------------------------------------- questions

static bk_moment_minute moment_of(const calendar_trial *trial, int64_t minute)
{
    return (bk_moment_minute)trial->first * BK_DAY_MINUTES + minute;
}

// What was not seen must lie behind what was walked over, or nowhere where the hours end there.
static void check_forwards(const calendar_trial *trial, int64_t walked, bk_moment_minute told,
                           bk_moment_minute beyond)
{
    if (walked != NOT_SEEN)
        ck_assert_int_eq(told, moment_of(trial, walked));
    else if (trial->hours.until != BK_NO_DAY)
        ck_assert_int_eq(told, BK_MOMENT_NEVER);
    else
        ck_assert_int_gt(told, beyond);
}

static void check_backwards(const calendar_trial *trial, int64_t walked, bk_moment_minute told)
{
    if (walked != NOT_SEEN)
        ck_assert_int_eq(told, moment_of(trial, walked));
    else if (trial->hours.from != BK_NO_DAY)
        ck_assert_int_eq(told, BK_MOMENT_BEFORE);
    else
        ck_assert_int_lt(told, moment_of(trial, 1));
}

static int drawn_length(calendar_trial *trial)
{
    return drawn(trial, 4) == 0 ? 0 : drawn(trial, 1 << drawn(trial, 14));
}

static void ask_moves(calendar_trial *trial)
{
    int minute = drawn(trial, MINUTES), length = drawn_length(trial);
    bk_moment_minute moment = moment_of(trial, minute), behind = moment_of(trial, MINUTES);
    check_forwards(trial, walk_forwards(trial, minute, length),
                   bk_calendar_add(trial->calendar, moment, length), behind - 1);
    check_backwards(trial, walk_backwards(trial, minute, length),
                    bk_calendar_take(trial->calendar, moment, length));
    int room = length == 0 ? 1 : length; // no minutes at all begin where one is worked at
    check_forwards(trial, walk_unbroken(trial, minute, room),
                   bk_calendar_unbroken(trial->calendar, moment, length), behind - room);
    int other = drawn(trial, MINUTES);
    ck_assert_int_eq(bk_calendar_between(trial->calendar, moment, moment_of(trial, other)),
                     walk_between(trial, minute, other));
    int64_t next = walk_forwards(trial, minute, 0);
    if (next != NOT_SEEN || trial->hours.until != BK_NO_DAY)
        ck_assert_int_eq(bk_calendar_any(trial->calendar, moment), next != NOT_SEEN);
}

static bool told(bk_moment_minute moment)
{
    return moment != BK_MOMENT_NEVER && moment != BK_MOMENT_BEFORE;
}

// There and back again.
static void ask_both_ways(calendar_trial *trial)
{
    const bk_calendar *calendar = trial->calendar;
    bk_moment_minute moment = moment_of(trial, drawn(trial, MINUTES));
    int64_t length = 1 + drawn_length(trial);
    bk_moment_minute later = bk_calendar_add(calendar, moment, length);
    if (told(later)) {
        ck_assert_int_eq(bk_calendar_take(calendar, later, length), bk_calendar_add(calendar, moment, 0));
        ck_assert_int_eq(bk_calendar_between(calendar, moment, later), length);
        ck_assert_int_eq(bk_calendar_add(calendar, bk_calendar_add(calendar, moment, length - 1), 1), later);
    }
    bk_moment_minute earlier = bk_calendar_take(calendar, moment, length);
    if (told(earlier)) {
        ck_assert_int_eq(bk_calendar_add(calendar, earlier, length), bk_calendar_take(calendar, moment, 0));
        ck_assert_int_eq(bk_calendar_between(calendar, earlier, moment), length);
    }
}

static void ask_days(calendar_trial *trial)
{
    for (int day = 0; day < DAYS; day++) {
        bk_stretch stretches[BK_STRETCHES];
        int count = bk_calendar_day(trial->calendar, trial->first + day, stretches);
        int64_t sum = 0;
        for (int i = 0; i < count; i++) {
            int begin = day * BK_DAY_MINUTES + stretches[i].from;
            sum += stretches[i].to - stretches[i].from;
            ck_assert_int_eq(walk_between(trial, begin, day * BK_DAY_MINUTES + stretches[i].to),
                             stretches[i].to - stretches[i].from);
        }
        ck_assert_int_eq(walk_between(trial, day * BK_DAY_MINUTES, (day + 1) * BK_DAY_MINUTES), sum);
    }
}

static void ask_stages(calendar_trial *trial)
{
    int first = drawn(trial, DAYS), last = first + drawn(trial, DAYS - first);
    bk_resource resource =
        bk_calendar_resource(trial->calendar, 3, trial->first + first, trial->first + last, trial->arena);
    ck_assert_int_eq(resource.stages[0].from, 0);
    int minutes = (last - first + 1) * BK_DAY_MINUTES;
    for (size_t i = 0; i < resource.stage_count; i++) {
        bool end = i + 1 == resource.stage_count;
        int until = end ? minutes : resource.stages[i + 1].from;
        int begin = first * BK_DAY_MINUTES + resource.stages[i].from;
        bool open = resource.stages[i].capacity == 3;
        ck_assert(open || resource.stages[i].capacity == BK_CLOSED);
        ck_assert(end || resource.stages[i + 1].from > resource.stages[i].from);
        ck_assert(end || resource.stages[i + 1].capacity != resource.stages[i].capacity);
        ck_assert(!end || !open);
        ck_assert_int_eq(walk_between(trial, begin, first * BK_DAY_MINUTES + until),
                         open ? until - resource.stages[i].from : 0);
    }
}

START_TEST(a_calendar_says_what_a_walk_over_its_minutes_says)
{
    static calendar_trial trial;
    trial.chance = bk_chance_from(SEED);
    for (int round = 0; round < ROUNDS; round++) {
        trial.arena = bk_arena_new();
        make_hours(&trial);
        walk_days(&trial);
        trial.calendar = bk_calendar_new(&trial.hours, trial.arena);
        for (int question = 0; question < QUESTIONS; question++) {
            ask_moves(&trial);
            ask_both_ways(&trial);
        }
        ask_days(&trial);
        ask_stages(&trial);
        bk_arena_free(trial.arena);
    }
}
END_TEST

BK_TEST_MAIN("calendar_random", a_calendar_says_what_a_walk_over_its_minutes_says)
