#include "bodkin/ui/forecast_told.h"

#include "bodkin/base/text.h"

static const char *day_text(bk_day day, bk_day today, bk_arena *arena)
{
    char words[BK_DAY_WORDS_ROOM];
    return bk_arena_text(arena, bk_day_words(day, today, words));
}

// ------------------------------------------------------------------------------------------- a production

const char *bk_outlook_brief(const bk_production_forecast *production, bk_day today, bool brief,
                             bk_arena *arena)
{
    const bk_outlook_days *days = production ? &production->days : NULL;
    if (!days || !days->days_known)
        return NULL;
    if (days->finish == BK_NO_DAY)
        return "not all comes about";
    if (days->finish < today)
        return "all done";
    const char *chance = bk_chance_words(days, arena);
    return bk_arena_print(arena, "ready by %s%s%s%s", day_text(days->finish, today, arena),
                          *chance ? ", " : "", chance, *chance && !brief ? " in time" : "");
}

// ------------------------------------------------------------------------------------------------ a costume

const char *bk_deciders_sentence(const bk_forecast *forecast, const bk_outlook_days *days, bk_arena *arena)
{
    enum { TOLD_MOST = 3, PERCENT = 100 };
    const char *text = NULL;
    for (size_t i = 0; i < days->decider_count && i < TOLD_MOST && forecast->trials > 0; i++) {
        const bk_planned_decider *decider = &days->deciders[i];
        const bk_planned_step *step = &forecast->steps[decider->step];
        int64_t percent =
            ((int64_t)decider->trials * PERCENT + forecast->trials / 2) / (int64_t)forecast->trials;
        text = bk_arena_print(arena, "%s%s %s (%s/%s) in %lld %%%s", text ? text : "Most often decided by",
                              text ? "," : "", step->title, step->piece, step->key, (long long)percent,
                              text ? "" : " of the trials");
    }
    return text;
}

const char *bk_wait_wanted(const bk_rail *rail, const bk_costume_forecast *costume, const bk_wait *wait,
                           const char *sentence, bk_arena *arena)
{
    if (!costume)
        return sentence;
    int64_t step = wait->step == BK_NO_INDEX ? 0 : rail->steps[wait->step].id;
    bk_day by = bk_forecast_wanted(costume, rail->pieces[wait->piece].id, step);
    if (by == BK_NO_DAY)
        return sentence;
    return bk_arena_print(arena, "%s; %swanted by %s", sentence, by < rail->today ? "was " : "",
                          day_text(by, rail->today, arena));
}

// --------------------------------------------------------------------------------------------------- a step

const char *bk_planned_who(const bk_forecast *forecast, const bk_planned_step *step, bk_arena *arena)
{
    const char *names = "";
    for (size_t i = 0; i < step->person_count; i++) {
        const char *joint = i == 0 ? "" : i + 1 == step->person_count ? " and " : ", ";
        names = bk_arena_print(arena, "%s%s%s", names, joint, forecast->people[step->people[i]].name);
    }
    return names;
}

static const char *moment_text(bk_moment moment, bk_day today, bool day_too, bk_arena *arena)
{
    char time[BK_TIME_ROOM];
    bk_time_write(moment.time, time);
    if (!day_too)
        return bk_arena_text(arena, time);
    return bk_arena_print(arena, "%s %s", day_text(moment.day, today, arena), time);
}

const char *bk_planned_sentence(const bk_forecast *forecast, const bk_planned_step *step, bk_arena *arena)
{
    bk_day today = forecast->today;
    if (step->begin.day == BK_NO_DAY)
        return "it never comes about with the hands and hours there are";
    const char *begin = moment_text(step->begin, today, true, arena);
    const char *end = moment_text(step->end, today, step->end.day != step->begin.day, arena);
    const char *who = bk_planned_who(forecast, step, arena);
    return bk_arena_print(arena, "planned %s to %s%s%s", begin, end, *who ? ", " : "", who);
}
