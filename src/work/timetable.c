#include "bodkin/work/timetable.h"

#include <stdlib.h>

#include "bodkin/trade/words.h"

static bool says_opening(const bk_date *dates, size_t count, bk_day opens)
{
    for (size_t i = 0; i < count; i++)
        if (dates[i].what == BK_ON_OPENING && dates[i].on == opens)
            return true;
    return false;
}

static int in_time(const void *left, const void *right)
{
    const bk_date *one = left, *other = right;
    bk_moment first = {one->on, one->at}, second = {other->on, other->at};
    int order = bk_moment_order(first, second);
    return order != 0 ? order : (one->id > other->id) - (one->id < other->id);
}

bk_status bk_timetable_read(bk_store *store, const bk_production *production, bk_arena *arena,
                            bk_timetable *table, bk_error *error)
{
    bk_rows rows = {0};
    bk_status status = bk_store_read(store, BK_DATES, production->id, arena, &rows, error);
    if (status)
        return status;
    const bk_date *read = rows.items;
    bk_date *dates = bk_arena_clear(arena, rows.count + 1, sizeof *dates);
    size_t count = 0;
    for (size_t i = 0; i < rows.count; i++)
        dates[count++] = read[i];
    if (!says_opening(read, rows.count, production->opens))
        dates[count++] = (bk_date){.production_id = production->id,
                                   .what = BK_ON_OPENING,
                                   .on = production->opens,
                                   .at = BK_NO_TIME};
    qsort(dates, count, sizeof *dates, in_time);
    *table = (bk_timetable){dates, count};
    return BK_OK;
}

const char *bk_days_away(bk_day day, bk_day today, bk_arena *arena)
{
    long long days = (long long)day - today;
    if (days == 0)
        return "today";
    if (days == 1)
        return "tomorrow";
    if (days == -1)
        return "yesterday";
    return days > 0 ? bk_arena_print(arena, "in %lld days", days)
                    : bk_arena_print(arena, "%lld days ago", -days);
}
