#include "bodkin/ui/plan_days.h"

#include "bodkin/base/text.h"
#include "bodkin/ui/cells.h"

// ------------------------------------------------------------------------------------------- somebody's day

static int order_of(const bk_planned_stretch *stretch, bk_day day, size_t person)
{
    if (stretch->day != day)
        return stretch->day < day ? -1 : 1;
    return stretch->person < person ? -1 : stretch->person > person ? 1 : 0;
}

// The first stretch that is not before those of that day and person.
static size_t first_of(const bk_forecast *forecast, bk_day day, size_t person)
{
    size_t low = 0, high = forecast->stretch_count;
    while (low < high) {
        size_t middle = low + (high - low) / 2;
        if (order_of(&forecast->stretches[middle], day, person) < 0)
            low = middle + 1;
        else
            high = middle;
    }
    return low;
}

static int64_t hours_of(const bk_calendar *calendar, bk_day day)
{
    bk_stretch stretches[BK_STRETCHES];
    int count = bk_calendar_day(calendar, day, stretches);
    int64_t minutes = 0;
    for (int i = 0; i < count; i++)
        minutes += stretches[i].to - stretches[i].from;
    return minutes;
}

bk_plan_share bk_plan_share_of(const bk_forecast *forecast, size_t person, bk_day day)
{
    size_t first = first_of(forecast, day, person), end = first;
    bk_plan_share share = {.hours = hours_of(forecast->people[person].calendar, day),
                           .stretches = forecast->stretches + first};
    for (; end < forecast->stretch_count && order_of(&forecast->stretches[end], day, person) == 0; end++)
        share.planned += forecast->stretches[end].to - forecast->stretches[end].from;
    share.count = end - first;
    return share;
}

const char *bk_plan_free(const bk_plan_share *share, bk_arena *arena)
{
    if (share->hours == 0)
        return NULL;
    return share->planned < share->hours ? bk_cell_minutes(share->hours - share->planned, arena) : "full";
}

const char *bk_plan_load(const bk_plan_share *share, bk_arena *arena)
{
    const char *hours = bk_cell_minutes(share->hours, arena);
    if (share->hours == 0)
        return NULL;
    if (share->planned >= share->hours)
        return bk_arena_print(arena, "%s, full", hours);
    if (share->planned == 0)
        return bk_arena_print(arena, "%s free", hours);
    return bk_arena_print(arena, "%s free of %s", bk_plan_free(share, arena), hours);
}

// --------------------------------------------------------------------------------------------------- its steps

const char *bk_plan_step(const bk_planned_step *step, bk_arena *arena)
{
    return bk_arena_print(arena, "%s %s", step->piece, step->key);
}

static bool was_before(const bk_plan_share *share, size_t at)
{
    for (size_t i = 0; i < at; i++)
        if (share->stretches[i].step == share->stretches[at].step)
            return true;
    return false;
}

static const char *with_more(const char *text, size_t more, bk_arena *arena)
{
    return more > 0 ? bk_arena_print(arena, "%s +%zu", text, more) : text;
}

// The share's next step that was not there before, from `at` on; its count where there is none.
static size_t next_new(const bk_plan_share *share, size_t at)
{
    while (at < share->count && was_before(share, at))
        at++;
    return at;
}

// A piece is named once for the steps of it that follow each other.
static const char *longer_by(const char *text, const bk_planned_step *before, const bk_planned_step *step,
                             bk_arena *arena)
{
    bool same = before && before->piece_id == step->piece_id;
    const char *words = same ? step->key : bk_plan_step(step, arena);
    return text ? bk_arena_print(arena, "%s, %s", text, words) : words;
}

const char *bk_plan_steps(const bk_forecast *forecast, const bk_plan_share *share, size_t width,
                          bk_arena *arena)
{
    const char *text = NULL;
    const bk_planned_step *before = NULL;
    size_t left = 0;
    for (size_t i = next_new(share, 0); i < share->count; i = next_new(share, i + 1))
        left++;
    for (size_t i = next_new(share, 0); i < share->count; i = next_new(share, i + 1)) {
        const bk_planned_step *step = &forecast->steps[share->stretches[i].step];
        const char *longer = longer_by(text, before, step, arena);
        if (text && bk_text_columns(with_more(longer, left - 1, arena)) > width)
            break;
        text = longer;
        before = step;
        left--;
    }
    return text ? with_more(text, left, arena) : NULL;
}

// ------------------------------------------------------------------------------------------------- the days

static bool named_before(const bk_plan_date *dates, size_t at)
{
    for (size_t i = 0; i < at; i++)
        if (dates[i].on == dates[at].on && bk_same_text(dates[i].what, dates[at].what))
            return true;
    return false;
}

const char *bk_plan_date_words(const bk_plan_date *dates, size_t count, bk_day day, bk_arena *arena)
{
    const char *words = "";
    for (size_t i = 0; i < count; i++)
        if (dates[i].on == day && !named_before(dates, i))
            words = bk_cell_joined(arena, words, ", ", dates[i].what);
    return *words ? words : NULL;
}

static bool has_name(const bk_plan_date *dates, size_t count, bk_day day)
{
    for (size_t i = 0; i < count; i++)
        if (dates[i].on == day)
            return true;
    return false;
}

static bool somebody_works(const bk_forecast *forecast, size_t person, bk_day day)
{
    size_t first = person == BK_PLAN_ALL ? 0 : person,
           end = person == BK_PLAN_ALL ? forecast->person_count : person + 1;
    for (size_t i = first; i < end; i++) {
        bk_plan_share share = bk_plan_share_of(forecast, i, day);
        if (share.hours > 0 || share.count > 0)
            return true;
    }
    return false;
}

static bk_day later(bk_day left, bk_day right)
{
    return left > right ? left : right;
}

static bk_day last_day(const bk_forecast *forecast, const bk_plan_date *dates, size_t count)
{
    bk_day last = forecast->today, most = forecast->today + BK_PLAN_MOST_DAYS - 1;
    for (size_t i = 0; i < forecast->production_count; i++)
        last = later(last, forecast->productions[i].opens);
    for (size_t i = 0; i < count; i++)
        last = later(last, dates[i].on);
    if (forecast->stretch_count > 0)
        last = later(last, forecast->stretches[forecast->stretch_count - 1].day);
    return last < most ? last : most;
}

// Makes one line of the `run` empty days at the end of the list, where they are enough; returns how many lines there are then.
static size_t fold(bk_plan_day *days, size_t count, size_t run)
{
    if (run < BK_PLAN_FOLDS)
        return count;
    days[count - run].to = days[count - 1].to;
    return count - run + 1;
}

size_t bk_plan_days(const bk_forecast *forecast, size_t person, const bk_plan_date *dates, size_t date_count,
                    bk_arena *arena, const bk_plan_day **days)
{
    bk_day last = last_day(forecast, dates, date_count);
    bk_plan_day *all = bk_arena_clear(arena, (size_t)(last - forecast->today) + 1, sizeof *all);
    size_t count = 0, run = 0;
    for (bk_day day = forecast->today; day <= last; day++) {
        bool works = somebody_works(forecast, person, day);
        bool empty = !works && !has_name(dates, date_count, day);
        if (!empty)
            count = fold(all, count, run);
        run = empty ? run + 1 : 0;
        all[count++] = (bk_plan_day){day, day, works};
    }
    *days = all;
    return fold(all, count, run);
}

// ------------------------------------------------------------------------------------------------- the columns

bk_plan_columns bk_plan_columns_of(size_t width, size_t count)
{
    enum { BESIDE = BK_PLAN_INNER_GAP + BK_PLAN_FREE_COLUMNS, LEAST_STEPS = 16 };
    size_t fit = (width + BK_PLAN_GAP) / (LEAST_STEPS + BESIDE + BK_PLAN_GAP);
    size_t most = count < BK_PLAN_MOST_PEOPLE ? count : BK_PLAN_MOST_PEOPLE;
    size_t people = fit < most ? fit : most;
    if (people == 0)
        people = 1;
    size_t gaps = (people - 1) * BK_PLAN_GAP + people * BESIDE;
    return (bk_plan_columns){people, width > gaps ? (width - gaps) / people : 0};
}
