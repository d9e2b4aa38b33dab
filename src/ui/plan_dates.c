#include "bodkin/ui/plan_dates.h"

#include "bodkin/base/text.h"
#include "bodkin/ui/cells.h"

static bool is_shown(const bk_rail *rail, const bk_date *date)
{
    return date->what != BK_NO_WORD && date->what != BK_ON_OPENING && date->on <= rail->production.opens;
}

// A production that is put away, or has opened, is no longer planned for.
size_t bk_plan_dates(const bk_rail *rail, const bk_forecast *forecast, bk_arena *arena,
                     const bk_plan_date **dates)
{
    size_t own = rail ? rail->date_count : 0, count = 0;
    bk_plan_date *all = bk_arena_clear(arena, own + forecast->production_count, sizeof *all);
    for (size_t i = 0; i < own; i++)
        if (is_shown(rail, &rail->dates[i]))
            all[count++] =
                (bk_plan_date){rail->dates[i].on, bk_word_text(&bk_occasion_words, rail->dates[i].what)};
    for (size_t i = 0; i < forecast->production_count; i++)
        if (forecast->productions[i].opens != BK_NO_DAY)
            all[count++] = (bk_plan_date){forecast->productions[i].opens,
                                          bk_word_text(&bk_occasion_words, BK_ON_OPENING)};
    *dates = all;
    return count;
}

const char *bk_plan_day_is(const bk_rail *rail, const bk_forecast *forecast, bk_day day, bk_arena *arena)
{
    const char *words = "";
    for (size_t i = 0; rail && i < rail->date_count; i++) {
        const bk_date *date = &rail->dates[i];
        if (date->on != day || !is_shown(rail, date))
            continue;
        const char *what = bk_word_text(&bk_occasion_words, date->what),
                   *time = bk_cell_time(date->at, arena);
        words =
            bk_cell_joined(arena, words, ", ", time ? bk_arena_print(arena, "%s at %s", what, time) : what);
    }
    for (size_t i = 0; i < forecast->production_count; i++)
        if (forecast->productions[i].opens == day)
            words = bk_cell_joined(arena, words, ", ",
                                   bk_arena_print(arena, "%s opens", forecast->productions[i].name));
    return *words ? words : NULL;
}
