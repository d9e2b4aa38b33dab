// How long a question to a calendar takes, over ten days and over ten years: it should be the same, and hardly more where the
// person was away a thousand times.
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#include "bodkin/plan/calendar.h"
#include "bodkin/plan/chance.h"

enum { TODAY = 20000, WORKDAYS = 5, QUESTIONS = 200000, RUNS = 5, DAY_WORK = 7 * 60, SEED = 1 };

enum { SHORT = 10, LONG = 3652 }; // days

// Away every third day.
static const bk_calendar *make_calendar(size_t absences, bk_arena *arena)
{
    bk_day(*away)[2] = bk_alloc_clear(absences, sizeof *away);
    for (size_t i = 0; i < absences; i++)
        away[i][0] = away[i][1] = TODAY + (bk_day)(3 * i);
    bk_hours hours = {
        .from = BK_NO_DAY, .until = BK_NO_DAY, .away = (const bk_day(*)[2])away, .away_count = absences};
    for (int day = 0; day < WORKDAYS; day++)
        hours.week.counts[day] = bk_hours_read("10:00-13:00;14:00-18:00", hours.week.stretches[day]);
    const bk_calendar *calendar = bk_calendar_new(&hours, arena);
    free(away);
    return calendar;
}

typedef bk_moment_minute question(const bk_calendar *calendar, bk_moment_minute moment, int days);

static bk_moment_minute ask_add(const bk_calendar *calendar, bk_moment_minute moment, int days)
{
    return bk_calendar_add(calendar, moment, (int64_t)days * DAY_WORK);
}

static bk_moment_minute ask_take(const bk_calendar *calendar, bk_moment_minute moment, int days)
{
    return bk_calendar_take(calendar, moment + (bk_moment_minute)days * BK_DAY_MINUTES,
                            (int64_t)days * DAY_WORK);
}

static bk_moment_minute ask_between(const bk_calendar *calendar, bk_moment_minute moment, int days)
{
    return bk_calendar_between(calendar, moment, moment + (bk_moment_minute)days * BK_DAY_MINUTES);
}

static double nanoseconds_now(void)
{
    struct timespec now;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
    return (double)now.tv_sec * 1e9 + (double)now.tv_nsec;
}

// The quickest of some runs, in nanoseconds for each question. All answers together go to `sum`, so that none is left out.
static double measure(question *ask, const bk_calendar *calendar, int days, uint64_t *sum)
{
    double best = 1e18;
    for (int run = 0; run < RUNS; run++) {
        bk_chance chance = bk_chance_from(SEED);
        double begin = nanoseconds_now();
        for (int i = 0; i < QUESTIONS; i++) {
            uint32_t minute = bk_chance_below(&chance, SHORT * BK_DAY_MINUTES);
            *sum += (uint64_t)ask(calendar, (bk_moment_minute)TODAY * BK_DAY_MINUTES + minute, days);
        }
        double each = (nanoseconds_now() - begin) / QUESTIONS;
        best = each < best ? each : best;
    }
    return best;
}

int main(void)
{
    static const struct {
        const char *name;
        question *ask;
    } questions[] = {{"add", ask_add}, {"take", ask_take}, {"between", ask_between}};
    static const size_t absences[] = {0, 10, 1000};
    uint64_t sum = 0;
    printf("%10s %10s %12s %12s %8s\n", "absences", "question", "10 days ns", "10 years ns", "ratio");
    for (size_t i = 0; i < sizeof absences / sizeof absences[0]; i++) {
        bk_arena *arena = bk_arena_new();
        const bk_calendar *calendar = make_calendar(absences[i], arena);
        for (size_t j = 0; j < sizeof questions / sizeof questions[0]; j++) {
            double near = measure(questions[j].ask, calendar, SHORT, &sum);
            double far = measure(questions[j].ask, calendar, LONG, &sum);
            printf("%10zu %10s %12.1f %12.1f %8.2f\n", absences[i], questions[j].name, near, far, far / near);
        }
        bk_arena_free(arena);
    }
    return sum == 0; // no answer at all
}
