#include "bodkin/plan/calendar.h"

#include <stdlib.h>
#include <string.h>

// Minutes of work are counted from the calendar's beginning: the count at a moment and the moment of a count are each a search
// among the days of presence (what absences leave), then one in the week. Work before a moment in a week without absences is
// a product, so the distance in years does not matter.

enum {
    WEEKDAYS = 7,
    WEEK_MINUTES = WEEKDAYS * BK_DAY_MINUTES,
    FIRST_MONDAY = -3 * BK_DAY_MINUTES, // 1970-01-01 was a Thursday
    WEEK_RUNS = WEEKDAYS * BK_STRETCHES,
    TWO_WEEKS = 2 * WEEK_MINUTES
};

// From one minute to another, the second not included, with the minutes of work in all spans before it.
typedef struct span {
    int64_t begin, end, before;
} span;

struct bk_calendar {
    bk_week_hours week;
    span runs[WEEK_RUNS]; // of the week, from its Monday; stretches that touch are one
    size_t run_count;
    int64_t week_minutes; // of work
    bool joined;          // the week's last run goes on in the first of the next week
    span *presences;      // whole days, from one absence to the next, that have hours
    size_t presence_count;
    int64_t total;     // minutes of work in all of them
    int64_t *most;     // a tree: the longest run of the presences below each node, the root at 1
    size_t leaf_count; // a power of two; presence i is the leaf leaf_count + i
};

// ---------------------------------------------------------------------------------------------------------- spans

// How many of the spans, which are in order, begin at or before a moment.
static size_t begun_at(const span *spans, size_t count, int64_t moment)
{
    size_t low = 0;
    while (low < count) {
        size_t middle = low + (count - low) / 2;
        if (spans[middle].begin <= moment)
            low = middle + 1;
        else
            count = middle;
    }
    return low;
}

// The span in which minute of work number `worked`, from 1 on, lies.
static const span *span_of(const span *spans, size_t count, int64_t worked)
{
    size_t low = 0;
    while (count - low > 1) {
        size_t middle = low + (count - low) / 2;
        if (spans[middle].before < worked)
            low = middle;
        else
            count = middle;
    }
    return &spans[low];
}

static int64_t lesser(int64_t left, int64_t right)
{
    return left < right ? left : right;
}

static int64_t greater(int64_t left, int64_t right)
{
    return left > right ? left : right;
}

static int64_t floor_divide(int64_t value, int64_t by)
{
    int64_t quotient = value / by;
    return value % by < 0 ? quotient - 1 : quotient;
}

// ----------------------------------------------------------------------------------------------------------- weeks

static int64_t week_begin(bk_moment_minute moment)
{
    return FIRST_MONDAY + floor_divide(moment - FIRST_MONDAY, WEEK_MINUTES) * WEEK_MINUTES;
}

// Minutes of work from the first Monday to a moment as if nobody were ever away; below 0 before that Monday.
static int64_t week_worked(const bk_calendar *calendar, bk_moment_minute moment)
{
    int64_t begin = week_begin(moment);
    int64_t worked = (begin - FIRST_MONDAY) / WEEK_MINUTES * calendar->week_minutes;
    size_t begun = begun_at(calendar->runs, calendar->run_count, moment - begin);
    if (begun == 0)
        return worked;
    const span *run = &calendar->runs[begun - 1];
    return worked + run->before + lesser(moment - begin, run->end) - run->begin;
}

// The end of minute of work number `worked` so counted.
static bk_moment_minute week_moment(const bk_calendar *calendar, int64_t worked)
{
    int64_t weeks = floor_divide(worked - 1, calendar->week_minutes);
    int64_t rest = worked - weeks * calendar->week_minutes;
    const span *run = span_of(calendar->runs, calendar->run_count, rest);
    return FIRST_MONDAY + weeks * WEEK_MINUTES + run->begin + rest - run->before;
}

// The first moment at or after this one that is worked at, as if nobody were ever away.
static bk_moment_minute week_first(const bk_calendar *calendar, bk_moment_minute moment)
{
    return week_moment(calendar, week_worked(calendar, moment) + 1) - 1;
}

// The end of the run of work in which a moment that is worked at lies: at the latest the end of its presence.
static bk_moment_minute run_end(const bk_calendar *calendar, const span *presence, bk_moment_minute moment)
{
    int64_t begin = week_begin(moment);
    const span *run = &calendar->runs[begun_at(calendar->runs, calendar->run_count, moment - begin) - 1];
    if (run->end < WEEK_MINUTES || !calendar->joined)
        return lesser(begin + run->end, presence->end);
    if (calendar->week_minutes == WEEK_MINUTES)
        return presence->end;
    return lesser(begin + WEEK_MINUTES + calendar->runs[0].end, presence->end);
}

// The first moment in a presence, from `from` on, that begins a run, or lies in one, with room for `minutes`; BK_MOMENT_NEVER
// where none has. After one that `from` cuts off every run of the week is tried once; a later one is no longer than these.
static bk_moment_minute first_room(const bk_calendar *calendar, const span *presence, bk_moment_minute from,
                                   int64_t minutes)
{
    for (size_t tries = 0; tries <= calendar->run_count + 1; tries++) {
        bk_moment_minute begin = week_first(calendar, from);
        if (begin >= presence->end)
            return BK_MOMENT_NEVER;
        from = run_end(calendar, presence, begin);
        if (from - begin >= minutes)
            return begin;
    }
    return BK_MOMENT_NEVER;
}

// The longest run in a presence. In two weeks each run of the week stands once uncut.
static int64_t longest_run(const bk_calendar *calendar, const span *presence)
{
    bool always = calendar->week_minutes == WEEK_MINUTES;
    int64_t until = always ? presence->end : lesser(presence->end, presence->begin + TWO_WEEKS);
    int64_t longest = 0, moment = week_first(calendar, presence->begin);
    while (moment < until) {
        int64_t end = run_end(calendar, presence, moment);
        longest = greater(longest, end - moment);
        moment = week_first(calendar, end);
    }
    return longest;
}

// ---------------------------------------------------------------------------------------------------------- making

static void add_run(bk_calendar *calendar, int64_t begin, int64_t end)
{
    span *last = &calendar->runs[calendar->run_count - (calendar->run_count > 0)];
    if (calendar->run_count > 0 && last->end == begin)
        last->end = end;
    else
        calendar->runs[calendar->run_count++] = (span){begin, end, calendar->week_minutes};
    calendar->week_minutes += end - begin;
}

static void make_week(bk_calendar *calendar)
{
    for (int day = 0; day < WEEKDAYS; day++) {
        for (int i = 0; i < calendar->week.counts[day]; i++) {
            const bk_stretch *stretch = &calendar->week.stretches[day][i];
            add_run(calendar, day * BK_DAY_MINUTES + stretch->from, day * BK_DAY_MINUTES + stretch->to);
        }
    }
    calendar->joined = calendar->run_count > 0 && calendar->runs[0].begin == 0 &&
                       calendar->runs[calendar->run_count - 1].end == WEEK_MINUTES;
}

// Adds the presence from one day to another, both included; none where that leaves no hours.
static void add_presence(bk_calendar *calendar, int64_t first, int64_t last)
{
    if (first > last || calendar->week_minutes == 0)
        return;
    span *presence = &calendar->presences[calendar->presence_count];
    *presence = (span){first * BK_DAY_MINUTES, (last + 1) * BK_DAY_MINUTES, calendar->total};
    int64_t worked = week_worked(calendar, presence->end) - week_worked(calendar, presence->begin);
    calendar->total += worked;
    calendar->presence_count += worked > 0;
}

static int absence_order(const void *left, const void *right)
{
    const bk_day *one = left, *other = right;
    return (one[0] > other[0]) - (one[0] < other[0]);
}

// What the absences leave between the first and the last day.
static void make_presences(bk_calendar *calendar, const bk_hours *hours, bk_arena *arena)
{
    calendar->presences = bk_arena_clear(arena, hours->away_count + 1, sizeof *calendar->presences);
    bk_day(*away)[2] = bk_alloc_clear(hours->away_count, sizeof *away);
    if (hours->away_count > 0) {
        memcpy(away, hours->away, hours->away_count * sizeof *away);
        qsort(away, hours->away_count, sizeof *away, absence_order);
    }
    int64_t day = hours->from == BK_NO_DAY ? INT32_MIN : hours->from;
    int64_t until = hours->until == BK_NO_DAY ? INT32_MAX : hours->until;
    for (size_t i = 0; i < hours->away_count; i++) {
        if (away[i][1] < away[i][0])
            continue;
        add_presence(calendar, day, lesser((int64_t)away[i][0] - 1, until));
        day = greater(day, (int64_t)away[i][1] + 1);
    }
    add_presence(calendar, day, until);
    free(away);
}

static void make_tree(bk_calendar *calendar, bk_arena *arena)
{
    calendar->leaf_count = 1;
    while (calendar->leaf_count < calendar->presence_count)
        calendar->leaf_count *= 2;
    calendar->most = bk_arena_clear(arena, 2 * calendar->leaf_count, sizeof *calendar->most);
    for (size_t i = 0; i < calendar->presence_count; i++)
        calendar->most[calendar->leaf_count + i] = longest_run(calendar, &calendar->presences[i]);
    for (size_t node = calendar->leaf_count - 1; node > 0; node--)
        calendar->most[node] = greater(calendar->most[2 * node], calendar->most[2 * node + 1]);
}

const bk_calendar *bk_calendar_new(const bk_hours *hours, bk_arena *arena)
{
    bk_calendar *calendar = bk_arena_clear(arena, 1, sizeof *calendar);
    calendar->week = hours->week;
    make_week(calendar);
    make_presences(calendar, hours, arena);
    make_tree(calendar, arena);
    return calendar;
}

// ------------------------------------------------------------------------------------------------------- questions

// Minutes of work before a moment.
static int64_t worked_before(const bk_calendar *calendar, bk_moment_minute moment)
{
    size_t begun = begun_at(calendar->presences, calendar->presence_count, moment);
    if (begun == 0)
        return 0;
    const span *presence = &calendar->presences[begun - 1];
    return presence->before + week_worked(calendar, lesser(moment, presence->end)) -
           week_worked(calendar, presence->begin);
}

// The end of minute of work number `worked`, from 1 to calendar->total.
static bk_moment_minute moment_of(const bk_calendar *calendar, int64_t worked)
{
    const span *presence = span_of(calendar->presences, calendar->presence_count, worked);
    return week_moment(calendar, week_worked(calendar, presence->begin) + worked - presence->before);
}

bk_moment_minute bk_calendar_add(const bk_calendar *calendar, bk_moment_minute from, int64_t minutes)
{
    int64_t before = worked_before(calendar, from);
    if (before == calendar->total || minutes > calendar->total - before)
        return BK_MOMENT_NEVER;
    return minutes == 0 ? moment_of(calendar, before + 1) - 1 : moment_of(calendar, before + minutes);
}

bk_moment_minute bk_calendar_take(const bk_calendar *calendar, bk_moment_minute to, int64_t minutes)
{
    int64_t before = worked_before(calendar, to);
    if (before == 0 || minutes > before)
        return BK_MOMENT_BEFORE;
    return minutes == 0 ? moment_of(calendar, before) : moment_of(calendar, before - minutes + 1) - 1;
}

int64_t bk_calendar_between(const bk_calendar *calendar, bk_moment_minute from, bk_moment_minute to)
{
    return to <= from ? 0 : worked_before(calendar, to) - worked_before(calendar, from);
}

bool bk_calendar_any(const bk_calendar *calendar, bk_moment_minute from)
{
    return worked_before(calendar, from) < calendar->total;
}

// The first presence at or after number `first` with a run of `minutes`, or presence_count.
static size_t roomy_presence(const bk_calendar *calendar, size_t first, int64_t minutes)
{
    if (first >= calendar->presence_count)
        return calendar->presence_count;
    size_t node = calendar->leaf_count + first;
    while (calendar->most[node] < minutes) {
        while (node % 2 == 1)
            node /= 2;
        if (node == 0)
            return calendar->presence_count;
        node++;
    }
    while (node < calendar->leaf_count) {
        node *= 2;
        node += calendar->most[node] < minutes;
    }
    return node - calendar->leaf_count;
}

bk_moment_minute bk_calendar_unbroken(const bk_calendar *calendar, bk_moment_minute from, int64_t minutes)
{
    bk_moment_minute begin = bk_calendar_add(calendar, from, 0);
    if (begin == BK_MOMENT_NEVER)
        return begin;
    size_t number = begun_at(calendar->presences, calendar->presence_count, begin) - 1;
    bk_moment_minute room = first_room(calendar, &calendar->presences[number], begin, minutes);
    if (room != BK_MOMENT_NEVER)
        return room;
    number = roomy_presence(calendar, number + 1, minutes);
    if (number == calendar->presence_count)
        return BK_MOMENT_NEVER;
    const span *presence = &calendar->presences[number];
    return first_room(calendar, presence, presence->begin, minutes);
}

int bk_calendar_day(const bk_calendar *calendar, bk_day day, bk_stretch stretches[BK_STRETCHES])
{
    bk_moment_minute midnight = (bk_moment_minute)day * BK_DAY_MINUTES;
    size_t begun = begun_at(calendar->presences, calendar->presence_count, midnight);
    if (begun == 0 || midnight >= calendar->presences[begun - 1].end)
        return 0;
    int weekday = (int)((midnight - week_begin(midnight)) / BK_DAY_MINUTES);
    int count = calendar->week.counts[weekday];
    memcpy(stretches, calendar->week.stretches[weekday], (size_t)count * sizeof *stretches);
    return count;
}

// --------------------------------------------------------------------------------------------------------- stages

static size_t put_stage(bk_stage *stages, size_t count, int64_t from, int32_t capacity)
{
    if (stages != NULL)
        stages[count] = (bk_stage){(bk_clock_minute)from, capacity};
    return count + 1;
}

// Writes the stages from one moment, which is minute 0, to another; returns how many. `stages` NULL: only counts them.
static size_t put_stages(const bk_calendar *calendar, int32_t capacity, bk_moment_minute from,
                         bk_moment_minute to, bk_stage *stages)
{
    bk_moment_minute begin = bk_calendar_add(calendar, from, 0);
    size_t count = begin == from && begin < to ? 0 : put_stage(stages, 0, 0, BK_CLOSED);
    while (begin < to) {
        size_t number = begun_at(calendar->presences, calendar->presence_count, begin) - 1;
        bk_moment_minute end = lesser(run_end(calendar, &calendar->presences[number], begin), to);
        count = put_stage(stages, count, begin - from, capacity);
        count = put_stage(stages, count, end - from, BK_CLOSED);
        begin = bk_calendar_add(calendar, end, 0);
    }
    return count;
}

bk_resource bk_calendar_resource(const bk_calendar *calendar, int32_t capacity, bk_day first, bk_day last,
                                 bk_arena *arena)
{
    bk_moment_minute from = (bk_moment_minute)first * BK_DAY_MINUTES;
    bk_moment_minute to = ((bk_moment_minute)last + 1) * BK_DAY_MINUTES;
    to = lesser(to, from + BK_CLOCK_NEVER - 1);
    size_t count = put_stages(calendar, capacity, from, to, NULL);
    bk_stage *stages = bk_arena_clear(arena, count, sizeof *stages);
    put_stages(calendar, capacity, from, to, stages);
    return (bk_resource){stages, count};
}
