#ifndef BODKIN_PLAN_CALENDAR_H
#define BODKIN_PLAN_CALENDAR_H

#include "bodkin/base/arena.h"
#include "bodkin/base/date.h"
#include "bodkin/plan/problem.h"

/// Working time: the hours of one person. A week of stretches, a first and a last day, and absences. Pure; every question is
/// answered without walking over days, so years of calendar cost no more than weeks.

/// Minutes of clock time since 1970-01-01 00:00 local: day x 1440 + minute of the day. Every day is taken to have 1,440
/// minutes (no change of clocks).
typedef int64_t bk_moment_minute;

enum { BK_DAY_MINUTES = 1440 };

#define BK_MOMENT_NEVER INT64_MAX  ///< forwards: it does not come about
#define BK_MOMENT_BEFORE INT64_MIN ///< backwards: there was no such time

typedef struct bk_week_hours {
    bk_stretch stretches[7][BK_STRETCHES]; ///< Monday first, in order of time, none over another, none
                                           ///< empty; where two touch, at midnight too, they are one
    int counts[7];
} bk_week_hours;

/// What a calendar is made from.
typedef struct bk_hours {
    bk_week_hours week;
    bk_day from, until; ///< first and last day, both included; BK_NO_DAY: open
    const bk_day (
        *away)[2]; ///< absences, first and last day, both included, in any order, may lie over each other
    size_t away_count;
} bk_hours;

typedef struct bk_calendar bk_calendar;

/// The calendar of a person, in `arena`; copies what it needs.
const bk_calendar *bk_calendar_new(const bk_hours *hours, bk_arena *arena);

/// The moment at which `minutes` of work (0 or more) that begin at or after `from` are done: the minute after the last one of
/// them. 0 minutes give the first moment at or after `from` that is worked at. BK_MOMENT_NEVER where the hours end before.
bk_moment_minute bk_calendar_add(const bk_calendar *calendar, bk_moment_minute from, int64_t minutes);

/// The moment at which `minutes` of work must begin so as to be done at or before `to`: the latest one. 0 minutes give the last
/// moment at or before `to` at which work can end. BK_MOMENT_BEFORE where the hours begin after.
bk_moment_minute bk_calendar_take(const bk_calendar *calendar, bk_moment_minute to, int64_t minutes);

/// Minutes of work from one moment to a later one; 0 where `to` is not later.
int64_t bk_calendar_between(const bk_calendar *calendar, bk_moment_minute from, bk_moment_minute to);

/// The first moment at or after `from` that begins a stretch, or lies in one, with room for `minutes` unbroken (a fitting);
/// BK_MOMENT_NEVER where none has.
bk_moment_minute bk_calendar_unbroken(const bk_calendar *calendar, bk_moment_minute from, int64_t minutes);

/// Whether there are any hours at all from `from` on.
bool bk_calendar_any(const bk_calendar *calendar, bk_moment_minute from);

/// The hours of one day, absences taken off; returns how many stretches (0: none).
int bk_calendar_day(const bk_calendar *calendar, bk_day day, bk_stretch stretches[BK_STRETCHES]);

/// The calendar as stages of a resource of `capacity` units while there are hours and BK_CLOSED otherwise, from day `first` (its
/// midnight is minute 0) to the end of day `last`; after that closed for ever. In `arena`.
bk_resource bk_calendar_resource(const bk_calendar *calendar, int32_t capacity, bk_day first, bk_day last,
                                 bk_arena *arena);

#endif
