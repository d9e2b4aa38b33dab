#include "work/planned.h"

#include <string.h>

#include "bodkin/base/text.h"

// ---------------------------------------------------------------------------------------------- what there is

bk_person maker(const char *name)
{
    bk_person person = PERSON(name, ALL_SKILLS);
    for (int day = 0; day < 5; day++)
        person.hours[day] = "10:00-13:00;14:00-18:00";
    return person;
}

bk_person helper(const char *name, const char *skills, int weekday, const char *hours)
{
    bk_person person = PERSON(name, skills);
    person.hours[weekday] = hours;
    return person;
}

bk_folder *one_costume(const char *name, bk_day opens, bk_day due)
{
    bk_folder *folder = bare_show(name, opens);
    ROWS(folder, people, bk_person, maker("Ada"));
    ROWS(folder, performers, bk_performer, PERFORMER("Ines Varga", NULL, NULL));
    ROWS(folder, roles, bk_role, ROLE("The Miller", "Ines Varga", NULL));
    ROWS(folder, costumes, bk_costume, COSTUME("1A", "The Miller", due));
    ROWS(folder, pieces, bk_piece, PIECE("P1", "1A", BK_STOCK));
    return folder;
}

bk_step for_hands(bk_step step, int64_t hands)
{
    step.hands = hands;
    return step;
}

bk_step with_rest(bk_step step, int64_t minutes)
{
    step.rest_minutes = minutes;
    return step;
}

bk_step that_can_wait(bk_step step)
{
    step.can_wait = 1;
    return step;
}

bk_step done_on(bk_step step, bk_day day, const char *who, int64_t took)
{
    step.done_on = day;
    step.done_by = who;
    step.took = took;
    return step;
}

bk_forecast *forecast_again(int64_t tries)
{
    bk_forecast *forecast = NULL;
    bk_store *store = open_store();
    MUST(bk_forecast_read(store, today(), BK_USUAL_SEED, tries, &forecast, &trouble));
    bk_store_close(store);
    return forecast;
}

bk_forecast *forecast_of(bk_folder *folder, int64_t tries)
{
    bk_store *store = open_store();
    take_in(store, folder, false, NULL);
    bk_folder_free(folder);
    bk_store_close(store);
    return forecast_again(tries);
}

// ---------------------------------------------------------------------------------------------- what is told

static const char *day_told(bk_day day)
{
    char words[BK_DAY_WORDS_ROOM];
    return day == BK_NO_DAY ? "never" : bk_arena_text(texts(), bk_day_words(day, today(), words));
}

static const char *moment_told(bk_moment moment)
{
    char time[BK_TIME_ROOM];
    if (moment.day == BK_NO_DAY)
        return "never";
    return bk_arena_print(texts(), "%s %s", day_told(moment.day), bk_time_write(moment.time, time));
}

const char *days_told(const bk_forecast *forecast)
{
    const char *all = "";
    for (size_t i = 0; i < forecast->costume_count; i++) {
        const bk_costume_forecast *costume = &forecast->costumes[i];
        const bk_outlook_days *days = &costume->days;
        const char *told = !days->days_known ? "not known"
                           : days->finish == BK_NO_DAY
                               ? "never"
                               : bk_arena_print(texts(), "%s, %lld in hand", day_told(days->finish),
                                                (long long)days->days_in_hand);
        all = bk_arena_print(texts(), "%s%s %s\n", all, costume->number, told);
    }
    return all;
}

const bk_planned_step *planned_step(const bk_forecast *forecast, const char *piece, const char *key)
{
    for (size_t i = 0; i < forecast->step_count; i++)
        if (bk_same_text(forecast->steps[i].piece, piece) && bk_same_text(forecast->steps[i].key, key))
            return &forecast->steps[i];
    ck_abort_msg("%s/%s is not planned", piece, key);
    return NULL;
}

const bk_costume_forecast *planned_costume(const bk_forecast *forecast, const char *number)
{
    for (size_t i = 0; i < forecast->costume_count; i++)
        if (bk_same_text(forecast->costumes[i].number, number))
            return &forecast->costumes[i];
    ck_abort_msg("%s is not planned", number);
    return NULL;
}

const char *step_told(const bk_forecast *forecast, const char *piece, const char *key)
{
    const bk_planned_step *step = planned_step(forecast, piece, key);
    if (step->begin.day == BK_NO_DAY)
        return "never";
    const char *told = bk_arena_print(texts(), "%s to %s", moment_told(step->begin), moment_told(step->end));
    for (size_t i = 0; i < step->person_count; i++)
        told = bk_arena_print(texts(), "%s, %s", told, forecast->people[step->people[i]].name);
    return told;
}

const char *latest_told(const bk_forecast *forecast, const char *piece, const char *key)
{
    return moment_told(planned_step(forecast, piece, key)->latest);
}

const char *stretches_told(const bk_forecast *forecast)
{
    const char *all = "";
    for (size_t i = 0; i < forecast->stretch_count; i++) {
        const bk_planned_stretch *stretch = &forecast->stretches[i];
        const bk_planned_step *step = &forecast->steps[stretch->step];
        char from[BK_TIME_ROOM], to[BK_TIME_ROOM];
        all = bk_arena_print(texts(), "%s%s %s %s-%s %s/%s%s\n", all, day_told(stretch->day),
                             forecast->people[stretch->person].name, bk_time_write(stretch->from, from),
                             bk_time_write(stretch->to, to), step->piece, step->key,
                             stretch->again ? " again" : "");
    }
    return all;
}

const char *snags_told(const bk_forecast *forecast)
{
    static const char *const words[BK_SNAGS] = {"nobody", "no skill",   "no hours", "away",
                                                "past",   "no minutes", "uncast",   "no date"};
    static const bk_snag_kind kinds[BK_SNAGS] = {BK_SNAG_NOBODY, BK_SNAG_NO_SKILL, BK_SNAG_NO_HOURS,
                                                 BK_SNAG_AWAY,   BK_SNAG_PAST,     BK_SNAG_NO_MINUTES,
                                                 BK_SNAG_UNCAST, BK_SNAG_NO_DATE};
    const char *all = forecast->room_snag.kind == BK_SNAG_NOBODY ? "nobody\n" : "";
    for (size_t i = 0; i < forecast->costume_count; i++) {
        for (size_t s = 0; s < forecast->costumes[i].snag_count; s++) {
            const bk_snag *snag = &forecast->costumes[i].snags[s];
            const char *word = "?";
            for (size_t k = 0; k < BK_SNAGS; k++)
                word = kinds[k] == snag->kind ? words[k] : word;
            all = bk_arena_print(texts(), "%s%s: %s", all, forecast->costumes[i].number, word);
            if (snag->step_id)
                all = bk_arena_print(texts(), "%s %s/%s", all, snag->piece, snag->step);
            if (snag->who)
                all = bk_arena_print(texts(), "%s %s", all, snag->who);
            if (snag->day != BK_NO_DAY)
                all = bk_arena_print(texts(), "%s %s", all, day_told(snag->day));
            all = bk_arena_print(texts(), "%s\n", all);
        }
    }
    return all;
}

const char *wanted_told(const bk_forecast *forecast, const char *number, const char *piece, const char *key)
{
    const bk_planned_step *any = NULL;
    for (size_t i = 0; i < forecast->step_count; i++)
        if (bk_same_text(forecast->steps[i].piece, piece))
            any = &forecast->steps[i];
    ck_assert_ptr_nonnull(any);
    int64_t step = key ? planned_step(forecast, piece, key)->id : 0;
    return day_told(bk_forecast_wanted(planned_costume(forecast, number), any->piece_id, step));
}
