#ifndef BODKIN_BASE_DATE_H
#define BODKIN_BASE_DATE_H

#include <stdbool.h>
#include <stdint.h>

/// A day: days since 1970-01-01 in the proleptic Gregorian calendar (ISO 8601). BK_NO_DAY stands for "not
/// known".
typedef int32_t bk_day;
#define BK_NO_DAY INT32_MIN

/// Minutes since midnight, 0 to 1440 (24:00, only as an end); BK_NO_TIME stands for "not known".
typedef int32_t bk_minute;
#define BK_NO_TIME INT32_MIN

enum { BK_DAY_ROOM = 12, BK_MOMENT_ROOM = 20, BK_TIME_ROOM = 8, BK_DAY_WORDS_ROOM = 24 };

/// A day with, perhaps, a time.
typedef struct bk_moment {
    bk_day day;
    bk_minute time; ///< BK_NO_TIME for a bare day
} bk_moment;

/// Reads exactly `YYYY-MM-DD`, years 0001 to 9999, of a day that exists; false otherwise.
bool bk_day_read(const char *text, bk_day *day);
/// Reads `HH:MM`, 00:00 to 23:59, and 24:00 when `end`.
bool bk_time_read(const char *text, bool end, bk_minute *time);
/// Reads `YYYY-MM-DD` or `YYYY-MM-DDTHH:MM`.
bool bk_moment_read(const char *text, bk_moment *moment);

/// Writes `YYYY-MM-DD`; the empty string for BK_NO_DAY and for days outside the years 0001 to 9999. Returns
/// `out`.
char *bk_day_write(bk_day day, char out[BK_DAY_ROOM]);
/// Writes `HH:MM`; the empty string for what is no time of a day. Returns `out`.
char *bk_time_write(bk_minute time, char out[BK_TIME_ROOM]);
/// Writes what bk_moment_read reads. Returns `out`.
char *bk_moment_write(bk_moment moment, char out[BK_MOMENT_ROOM]);

/// "Tue 9 Mar" (English, as all of the program's text), with the year ("Tue 9 Mar 2027") when it is not
/// `today`'s and the day is past or more than 300 days to come.
char *bk_day_words(bk_day day, bk_day today, char out[BK_DAY_WORDS_ROOM]);

/// The day of a date that exists, in any year that a bk_day reaches.
bk_day bk_day_of(int year, int month, int day);
/// Its year, month (1 to 12) and day of the month.
void bk_day_parts(bk_day day, int *year, int *month, int *month_day);
/// 0 for Monday to 6 for Sunday.
int bk_weekday(bk_day day);
/// ISO 8601 week: its year and its number (1 to 53).
void bk_day_week(bk_day day, int *year, int *week);

/// Earlier, same or later: below 0, 0, above 0. A bare day comes before any time of it.
int bk_moment_order(bk_moment left, bk_moment right);

/// One stretch of a day, in minutes from midnight.
typedef struct bk_stretch {
    bk_minute from;
    bk_minute to;
} bk_stretch;

enum { BK_STRETCHES = 12 };

/// Reads hours of a day, `10:00-13:00;14:00-18:00`, each ending after it begins and none over another; they
/// are given in order of time. Returns how many (at most BK_STRETCHES), or -1 for faulty text. Empty text is
/// 0 stretches.
int bk_hours_read(const char *text, bk_stretch stretches[BK_STRETCHES]);

#endif
