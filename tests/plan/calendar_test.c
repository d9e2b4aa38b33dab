#include "bodkin/plan/calendar.h"

#include "support/testing.h"

// All days are counted from Monday 1 March 2027.
enum { HOUR = 60, WEEK = 7, AWAY_ROOM = 4, STAGES = 12 };

#define OPEN_DAY BK_NO_DAY

typedef struct hours_row {
    const char *week[WEEK]; // Monday first; NULL: none
    bk_day from, until;     // counted from the Monday, OPEN_DAY: open
    size_t away_count;
    bk_day away[AWAY_ROOM][2];
} hours_row;

static bk_day monday(void)
{
    return bk_day_of(2027, 3, 1);
}

static bk_moment_minute at(int day, int hour, int minute)
{
    return (bk_moment_minute)(monday() + day) * BK_DAY_MINUTES + hour * HOUR + minute;
}

static bk_day counted(bk_day day)
{
    return day == OPEN_DAY ? BK_NO_DAY : monday() + day;
}

static const bk_calendar *calendar_of(const hours_row *row, bk_arena *arena)
{
    bk_day away[AWAY_ROOM][2];
    bk_hours hours = {
        .from = counted(row->from), .until = counted(row->until), .away_count = row->away_count};
    for (int day = 0; day < WEEK; day++) {
        const char *text = row->week[day] == NULL ? "" : row->week[day];
        hours.week.counts[day] = bk_hours_read(text, hours.week.stretches[day]);
        ck_assert_int_ge(hours.week.counts[day], 0);
    }
    for (size_t i = 0; i < row->away_count; i++)
        for (int side = 0; side < 2; side++)
            away[i][side] = monday() + row->away[i][side];
    hours.away = (const bk_day(*)[2])away;
    return bk_calendar_new(&hours, arena);
}

#define WORKDAYS(hours) \
    { \
        hours, hours, hours, hours, hours, NULL, NULL \
    }
#define EVERY_DAY(hours) \
    { \
        hours, hours, hours, hours, hours, hours, hours \
    }

static const hours_row weekdays = {WORKDAYS("10:00-13:00;14:00-18:00"), OPEN_DAY, OPEN_DAY, 0, {{0}}};
static const hours_row a_fortnight = {WORKDAYS("10:00-13:00;14:00-18:00"), 0, 11, 0, {{0}}};
static const hours_row with_absences = {
    WORKDAYS("10:00-13:00;14:00-18:00"), OPEN_DAY, OPEN_DAY, 3, {{3, 5}, {1, 2}, {2, 3}}};
static const hours_row nights = {
    {"20:00-24:00", "00:00-02:00;22:00-24:00", "00:00-01:00", NULL, NULL, NULL, "18:00-24:00"},
    OPEN_DAY,
    OPEN_DAY,
    0,
    {{0}}};
static const hours_row over_sunday = {
    {"00:00-02:00", NULL, NULL, NULL, NULL, NULL, "18:00-24:00"}, OPEN_DAY, OPEN_DAY, 1, {{7, 7}}};
static const hours_row no_hours = {WORKDAYS(NULL), OPEN_DAY, OPEN_DAY, 0, {{0}}};
static const hours_row all_hours = {EVERY_DAY("00:00-24:00"), 0, 20, 1, {{2, 2}}};
static const hours_row ends_before_it_begins = {WORKDAYS("10:00-18:00"), 5, 4, 0, {{0}}};
static const hours_row away_on_all_its_days = {{NULL, "09:00-17:00"}, 0, 13, 2, {{-2000, 1}, {8, 8}}};

// ---------------------------------------------------------------------------------------------------- add and take

typedef struct moving_row {
    const char *says;
    const hours_row *hours;
    int day, hour, minute; // where it begins; for taking, where it ends
    int64_t minutes;
    int to_day, to_hour, to_minute; // to_day FAR: it does not come about, or there was no such time
} moving_row;

enum { FAR = 1000000 };

static const moving_row additions[] = {
    {"an hour from the beginning of a stretch", &weekdays, 0, 10, 0, 60, 0, 11, 0},
    {"an hour asked for at night begins in the morning", &weekdays, 0, 3, 20, 60, 0, 11, 0},
    {"work that just fills a stretch is done at its end", &weekdays, 0, 10, 0, 180, 0, 13, 0},
    {"one minute more is done after the break", &weekdays, 0, 10, 0, 181, 0, 14, 1},
    {"work is set down at the evening and taken up in the morning", &weekdays, 0, 17, 30, 60, 1, 10, 30},
    {"a day of work", &weekdays, 0, 10, 0, 420, 0, 18, 0},
    {"and a minute", &weekdays, 0, 10, 0, 421, 1, 10, 1},
    {"from Friday over the weekend", &weekdays, 4, 17, 0, 120, 7, 11, 0},
    {"from Saturday", &weekdays, 5, 12, 0, 1, 7, 10, 1},
    {"a week of work", &weekdays, 2, 12, 0, 2100, 9, 12, 0},
    {"no work is done at once within a stretch", &weekdays, 0, 11, 17, 0, 0, 11, 17},
    {"no work begins a stretch", &weekdays, 0, 10, 0, 0, 0, 10, 0},
    {"no work at the end of a stretch waits for the next one", &weekdays, 0, 13, 0, 0, 0, 14, 0},
    {"no work on a Saturday waits for Monday", &weekdays, 5, 1, 0, 0, 7, 10, 0},
    {"before the first day it waits for it", &a_fortnight, -300, 10, 0, 30, 0, 10, 30},
    {"the last minute of the last day", &a_fortnight, 11, 17, 59, 1, 11, 18, 0},
    {"after that it does not come about", &a_fortnight, 11, 17, 59, 2, FAR, 0, 0},
    {"all there is", &a_fortnight, -5, 0, 0, 4200, 11, 18, 0},
    {"one more does not come about", &a_fortnight, -5, 0, 0, 4201, FAR, 0, 0},
    {"no work after the last day does not come about either", &a_fortnight, 11, 18, 0, 0, FAR, 0, 0},
    {"absences that lie over each other are passed over", &with_absences, 0, 17, 0, 61, 7, 10, 1},
    {"one asked for within an absence", &with_absences, 2, 11, 0, 30, 7, 10, 30},
    {"a stretch to midnight goes on in the next day", &nights, 0, 23, 0, 120, 1, 1, 0},
    {"and from Sunday to Monday it ends where Monday has none", &nights, 6, 23, 0, 90, 7, 20, 30},
    {"from Sunday over midnight into Monday", &over_sunday, -1, 23, 30, 60, 0, 0, 30},
    {"but not into a Monday away", &over_sunday, 6, 23, 30, 60, 13, 18, 30},
    {"a person with no hours never does anything", &no_hours, 0, 10, 0, 1, FAR, 0, 0},
    {"not even nothing", &no_hours, 0, 10, 0, 0, FAR, 0, 0},
    {"all hours of all days", &all_hours, 0, 0, 0, 2880, 2, 0, 0},
    {"but for a day away", &all_hours, 0, 0, 0, 2881, 3, 0, 1},
    {"a calendar that ends before it begins", &ends_before_it_begins, 0, 0, 0, 1, FAR, 0, 0},
    {"absences on each day with hours", &away_on_all_its_days, -4000, 0, 0, 1, FAR, 0, 0},
};

static const moving_row takings[] = {
    {"an hour before the end of a stretch", &weekdays, 0, 13, 0, 60, 0, 12, 0},
    {"work that just fills a stretch begins with it", &weekdays, 0, 13, 0, 180, 0, 10, 0},
    {"one minute more begins the evening before", &weekdays, 1, 13, 0, 181, 0, 17, 59},
    {"by the morning it is begun the evening before", &weekdays, 1, 9, 0, 60, 0, 17, 0},
    {"work begins after the break where that is the latest", &weekdays, 0, 18, 0, 240, 0, 14, 0},
    {"from Monday back over the weekend", &weekdays, 7, 11, 0, 120, 4, 17, 0},
    {"a week of work", &weekdays, 9, 12, 0, 2100, 2, 12, 0},
    {"no work ends where it is asked to", &weekdays, 0, 11, 17, 0, 0, 11, 17},
    {"no work by the beginning of a stretch ends with the one before", &weekdays, 0, 14, 0, 0, 0, 13, 0},
    {"no work by a Sunday ends on Friday", &weekdays, 6, 14, 0, 0, 4, 18, 0},
    {"after the last day it is the last stretch that counts", &a_fortnight, 300, 0, 0, 30, 11, 17, 30},
    {"the first minute of the first day", &a_fortnight, 0, 10, 1, 1, 0, 10, 0},
    {"there is nothing before it", &a_fortnight, 0, 10, 1, 2, FAR, 0, 0},
    {"all there is", &a_fortnight, 12, 0, 0, 4200, 0, 10, 0},
    {"one more would have begun too early", &a_fortnight, 12, 0, 0, 4201, FAR, 0, 0},
    {"no work before the first day is too early", &a_fortnight, 0, 10, 0, 0, FAR, 0, 0},
    {"absences that lie over each other are passed over", &with_absences, 7, 10, 1, 61, 0, 17, 0},
    {"a stretch to midnight goes on in the next day", &nights, 1, 1, 0, 120, 0, 23, 0},
    {"from Monday back over midnight into Sunday", &over_sunday, 0, 0, 30, 60, -1, 23, 30},
    {"a person with no hours", &no_hours, 0, 10, 0, 0, FAR, 0, 0},
    {"over a day away", &all_hours, 3, 0, 1, 2, 1, 23, 59},
    {"absences on each day with hours", &away_on_all_its_days, 13, 0, 0, 1, FAR, 0, 0},
};

typedef bk_moment_minute moving(const bk_calendar *calendar, bk_moment_minute moment, int64_t minutes);

static void check_moving(const moving_row *rows, size_t count, moving *move, bk_moment_minute none)
{
    for (size_t i = 0; i < count; i++) {
        bk_arena *arena = bk_arena_new();
        const moving_row *row = &rows[i];
        bk_moment_minute wanted = row->to_day == FAR ? none : at(row->to_day, row->to_hour, row->to_minute);
        bk_moment_minute got =
            move(calendar_of(row->hours, arena), at(row->day, row->hour, row->minute), row->minutes);
        ck_assert_msg(got == wanted, "%s: %lld minutes away", row->says,
                      (long long)((uint64_t)got - (uint64_t)wanted));
        bk_arena_free(arena);
    }
}

START_TEST(work_is_set_down_at_the_end_of_a_stretch_and_taken_up_at_the_next)
{
    check_moving(additions, sizeof additions / sizeof additions[0], bk_calendar_add, BK_MOMENT_NEVER);
}
END_TEST

START_TEST(taken_away_it_begins_at_the_latest_moment)
{
    check_moving(takings, sizeof takings / sizeof takings[0], bk_calendar_take, BK_MOMENT_BEFORE);
}
END_TEST

// ------------------------------------------------------------------------------------------------------- unbroken

static const moving_row fittings[] = {
    {"a fitting begins at once where there is room", &weekdays, 0, 10, 20, 30, 0, 10, 20},
    {"one that just fits before the break", &weekdays, 0, 12, 30, 30, 0, 12, 30},
    {"one that does not waits until after it", &weekdays, 0, 12, 31, 30, 0, 14, 0},
    {"one too long for the morning", &weekdays, 0, 9, 0, 181, 0, 14, 0},
    {"one too long for the rest of the day", &weekdays, 0, 15, 0, 200, 1, 14, 0},
    {"one over the weekend", &weekdays, 4, 17, 30, 60, 7, 10, 0},
    {"one too long for any stretch never comes about", &weekdays, 0, 10, 0, 241, FAR, 0, 0},
    {"one after the last day", &a_fortnight, 11, 17, 0, 61, FAR, 0, 0},
    {"no minutes at all begin where there is work", &weekdays, 0, 13, 0, 0, 0, 14, 0},
    {"stretches that touch at midnight are one", &nights, 0, 10, 0, 360, 0, 20, 0},
    {"and no longer", &nights, 0, 10, 0, 361, FAR, 0, 0},
    {"the second night is shorter", &nights, 1, 0, 30, 180, 1, 22, 0},
    {"also from Sunday to Monday", &over_sunday, -2, 0, 0, 480, -1, 18, 0},
    {"but not into a Monday away", &over_sunday, 6, 18, 0, 361, 13, 18, 0},
    {"all hours are one stretch of many days", &all_hours, 1, 0, 0, 10 * 1440, 3, 0, 0},
    {"until the last day", &all_hours, 1, 0, 0, 18 * 1440, 3, 0, 0},
    {"and not beyond", &all_hours, 1, 0, 0, 18 * 1440 + 1, FAR, 0, 0},
    {"a person with no hours", &no_hours, 0, 0, 0, 1, FAR, 0, 0},
};

START_TEST(a_fitting_is_not_split)
{
    check_moving(fittings, sizeof fittings / sizeof fittings[0], bk_calendar_unbroken, BK_MOMENT_NEVER);
}
END_TEST

// --------------------------------------------------------------------------------------------- between, any and day

START_TEST(the_work_between_two_moments_is_counted)
{
    bk_arena *arena = bk_arena_new();
    const bk_calendar *calendar = calendar_of(&with_absences, arena);
    ck_assert_int_eq(bk_calendar_between(calendar, at(0, 9, 0), at(0, 10, 0)), 0);
    ck_assert_int_eq(bk_calendar_between(calendar, at(0, 9, 0), at(0, 10, 1)), 1);
    ck_assert_int_eq(bk_calendar_between(calendar, at(0, 12, 30), at(0, 14, 30)), 60);
    ck_assert_int_eq(bk_calendar_between(calendar, at(0, 0, 0), at(7, 0, 0)), 420);
    ck_assert_int_eq(bk_calendar_between(calendar, at(1, 0, 0), at(7, 0, 0)), 0);
    ck_assert_int_eq(bk_calendar_between(calendar, at(-7, 0, 0), at(14, 0, 0)), 2100 + 420 + 2100);
    ck_assert_int_eq(bk_calendar_between(calendar, at(0, 11, 0), at(0, 11, 0)), 0);
    ck_assert_int_eq(bk_calendar_between(calendar, at(0, 12, 0), at(0, 11, 0)), 0);
    bk_arena_free(arena);
}
END_TEST

START_TEST(hours_are_there_until_the_last_of_them)
{
    bk_arena *arena = bk_arena_new();
    const bk_calendar *ending = calendar_of(&a_fortnight, arena);
    ck_assert(bk_calendar_any(ending, at(-100, 0, 0)));
    ck_assert(bk_calendar_any(ending, at(11, 17, 59)));
    ck_assert(!bk_calendar_any(ending, at(11, 18, 0)));
    ck_assert(bk_calendar_any(calendar_of(&weekdays, arena), at(100000, 0, 0)));
    ck_assert(!bk_calendar_any(calendar_of(&no_hours, arena), at(0, 0, 0)));
    ck_assert(!bk_calendar_any(calendar_of(&away_on_all_its_days, arena), BK_MOMENT_BEFORE));
    bk_arena_free(arena);
}
END_TEST

START_TEST(a_day_has_its_hours_unless_away)
{
    bk_arena *arena = bk_arena_new();
    const bk_calendar *calendar = calendar_of(&with_absences, arena);
    bk_stretch stretches[BK_STRETCHES];
    ck_assert_int_eq(bk_calendar_day(calendar, monday(), stretches), 2);
    ck_assert_int_eq(stretches[0].from, 10 * HOUR);
    ck_assert_int_eq(stretches[1].to, 18 * HOUR);
    for (int day = 1; day < WEEK; day++)
        ck_assert_int_eq(bk_calendar_day(calendar, monday() + day, stretches), 0);
    ck_assert_int_eq(bk_calendar_day(calendar_of(&a_fortnight, arena), monday() - WEEK, stretches), 0);
    ck_assert_int_eq(bk_calendar_day(calendar_of(&a_fortnight, arena), monday() + 14, stretches), 0);
    ck_assert_int_eq(bk_calendar_day(calendar_of(&nights, arena), monday() + 1, stretches), 2);
    ck_assert_int_eq(stretches[1].to, 24 * HOUR);
    bk_arena_free(arena);
}
END_TEST

// -------------------------------------------------------------------------------------------------------- resource

static const struct {
    const char *says;
    const hours_row *hours;
    bk_day first, last;
    size_t count;
    bk_stage stages[STAGES];
} resources[] = {
    {"two stretches",
     &weekdays,
     0,
     0,
     5,
     {{0, BK_CLOSED}, {600, 2}, {780, BK_CLOSED}, {840, 2}, {1080, BK_CLOSED}}},
    {"a weekend is closed", &weekdays, 5, 6, 1, {{0, BK_CLOSED}}},
    {"nobody's hours are closed", &no_hours, 0, 100, 1, {{0, BK_CLOSED}}},
    {"stretches that touch at midnight have nothing closed between",
     &nights,
     0,
     2,
     5,
     {{0, BK_CLOSED}, {1200, 2}, {1560, BK_CLOSED}, {2760, 2}, {2940, BK_CLOSED}}},
    {"from Sunday to Monday as well, until the end of the last day",
     &over_sunday,
     -1,
     6,
     5,
     {{0, BK_CLOSED}, {1080, 2}, {1560, BK_CLOSED}, {10080 + 1080, 2}, {11520, BK_CLOSED}}},
    {"open from its first minute",
     &all_hours,
     1,
     3,
     4,
     {{0, 2}, {1440, BK_CLOSED}, {2880, 2}, {4320, BK_CLOSED}}},
    {"no days at all", &weekdays, 1, 0, 1, {{0, BK_CLOSED}}},
    {"a fortnight of which the last day is asked for",
     &a_fortnight,
     11,
     400,
     5,
     {{0, BK_CLOSED}, {600, 2}, {780, BK_CLOSED}, {840, 2}, {1080, BK_CLOSED}}},
};

START_TEST(a_calendar_makes_the_stages_of_a_resource)
{
    for (size_t i = 0; i < sizeof resources / sizeof resources[0]; i++) {
        bk_arena *arena = bk_arena_new();
        bk_resource resource =
            bk_calendar_resource(calendar_of(resources[i].hours, arena), 2, monday() + resources[i].first,
                                 monday() + resources[i].last, arena);
        ck_assert_msg(resource.stage_count == resources[i].count, "%s: %zu stages", resources[i].says,
                      resource.stage_count);
        for (size_t stage = 0; stage < resource.stage_count; stage++) {
            ck_assert_msg(resource.stages[stage].from == resources[i].stages[stage].from,
                          "%s: stage %zu from %d", resources[i].says, stage, resource.stages[stage].from);
            ck_assert_msg(resource.stages[stage].capacity == resources[i].stages[stage].capacity,
                          "%s: stage %zu of %d", resources[i].says, stage, resource.stages[stage].capacity);
        }
        bk_arena_free(arena);
    }
}
END_TEST

// ----------------------------------------------------------------------------------------------------------- years

START_TEST(years_of_work_come_out_to_the_minute)
{
    enum { WEEK_WORK = 5 * 7 * HOUR, MANY_WEEKS = 52000 }; // about a thousand years
    bk_arena *arena = bk_arena_new();
    const bk_calendar *calendar = calendar_of(&weekdays, arena);
    bk_moment_minute late = at(7 * MANY_WEEKS, 10, 0);
    ck_assert_int_eq(bk_calendar_add(calendar, at(0, 10, 0), (int64_t)WEEK_WORK * MANY_WEEKS + 1), late + 1);
    ck_assert_int_eq(bk_calendar_take(calendar, late + 1, (int64_t)WEEK_WORK * MANY_WEEKS + 1), at(0, 10, 0));
    ck_assert_int_eq(bk_calendar_between(calendar, at(0, 10, 0), late), (int64_t)WEEK_WORK * MANY_WEEKS);
    ck_assert_int_eq(bk_calendar_add(calendar, at(0, 0, 0), INT64_MAX), BK_MOMENT_NEVER);
    ck_assert_int_eq(bk_calendar_add(calendar, BK_MOMENT_NEVER, 1), BK_MOMENT_NEVER);
    ck_assert_int_eq(bk_calendar_take(calendar, BK_MOMENT_BEFORE, 1), BK_MOMENT_BEFORE);
    bk_arena_free(arena);
}
END_TEST

START_TEST(a_day_off_every_week_for_years_is_taken_off_each_time)
{
    enum { YEARS_OF_WEEKS = 520 };
    static bk_day away[YEARS_OF_WEEKS][2];
    for (int i = 0; i < YEARS_OF_WEEKS; i++)
        away[i][0] = away[i][1] =
            monday() + 7 * ((i * 7) % YEARS_OF_WEEKS) + 2; // every Wednesday, in no order
    bk_hours hours = {.from = BK_NO_DAY,
                      .until = BK_NO_DAY,
                      .away = (const bk_day(*)[2])away,
                      .away_count = YEARS_OF_WEEKS};
    for (int day = 0; day < 5; day++)
        hours.week.counts[day] = bk_hours_read("10:00-18:00", hours.week.stretches[day]);
    bk_arena *arena = bk_arena_new();
    const bk_calendar *calendar = bk_calendar_new(&hours, arena);
    bk_moment_minute late = at(7 * YEARS_OF_WEEKS, 10, 0);
    ck_assert_int_eq(bk_calendar_between(calendar, at(0, 0, 0), late), 4 * 8 * HOUR * YEARS_OF_WEEKS);
    ck_assert_int_eq(bk_calendar_add(calendar, at(0, 0, 0), 4 * 8 * HOUR * YEARS_OF_WEEKS + 1), late + 1);
    ck_assert_int_eq(bk_calendar_unbroken(calendar, at(2, 0, 0), 8 * HOUR), at(3, 10, 0));
    bk_arena_free(arena);
}
END_TEST

// The days between absences are too short for it, until the last of them.
START_TEST(a_long_fitting_finds_the_first_presence_with_room)
{
    enum { ALONE = 50 }; // single days between absences
    static bk_day away[ALONE][2];
    for (int i = 0; i < ALONE; i++)
        away[i][0] = away[i][1] = monday() + 2 * i;
    bk_hours hours = {
        .from = monday(), .until = BK_NO_DAY, .away = (const bk_day(*)[2])away, .away_count = ALONE};
    for (int day = 0; day < WEEK; day++)
        hours.week.counts[day] = bk_hours_read("00:00-24:00", hours.week.stretches[day]);
    bk_arena *arena = bk_arena_new();
    const bk_calendar *calendar = bk_calendar_new(&hours, arena);
    ck_assert_int_eq(bk_calendar_unbroken(calendar, at(0, 0, 0), BK_DAY_MINUTES), at(1, 0, 0));
    ck_assert_int_eq(bk_calendar_unbroken(calendar, at(1, 0, 1), BK_DAY_MINUTES), at(3, 0, 0));
    ck_assert_int_eq(bk_calendar_unbroken(calendar, at(0, 0, 0), BK_DAY_MINUTES + 1),
                     at(2 * ALONE - 1, 0, 0));
    bk_arena_free(arena);
}
END_TEST

BK_TEST_MAIN("calendar", work_is_set_down_at_the_end_of_a_stretch_and_taken_up_at_the_next,
             taken_away_it_begins_at_the_latest_moment, a_fitting_is_not_split,
             the_work_between_two_moments_is_counted, hours_are_there_until_the_last_of_them,
             a_day_has_its_hours_unless_away, a_calendar_makes_the_stages_of_a_resource,
             years_of_work_come_out_to_the_minute, a_day_off_every_week_for_years_is_taken_off_each_time,
             a_long_fitting_finds_the_first_presence_with_room)
