#include "bodkin/work/change.h"

#include <string.h>

#include "bodkin/base/text.h"

enum { TEXT_COLUMNS = 60 }; ///< of a note in a sentence

bk_status bk_change_run(const bk_job *job, bk_change_body *body, void *context, const char **sentence,
                        bk_error *error)
{
    *sentence = NULL;
    bk_status status = bk_store_change_begin(job->store, error);
    if (status) {
        return status;
    }
    status = body(job, context, sentence, error);
    if (status || !*sentence) {
        bk_store_change_drop(job->store);
        *sentence = NULL;
        return status;
    }
    return bk_store_change_commit(job->store, job->made_at, *sentence, NULL, error);
}

const char *bk_change_day(const bk_job *job, bk_day day)
{
    char words[BK_DAY_WORDS_ROOM];
    return bk_arena_text(job->arena, bk_day_words(day, job->today, words));
}

const char *bk_change_moment(const bk_job *job, bk_moment moment)
{
    char time[BK_TIME_ROOM];
    const char *day = bk_change_day(job, moment.day);
    if (moment.time == BK_NO_TIME) {
        return day;
    }
    return bk_arena_print(job->arena, "%s %s", day, bk_time_write(moment.time, time));
}

const char *bk_change_minutes(const bk_job *job, int64_t minutes)
{
    char words[BK_AMOUNT_ROOM];
    return bk_arena_text(job->arena, bk_minutes_words(minutes, words));
}

const char *bk_change_text(const bk_job *job, const char *text)
{
    return bk_text_cut(job->arena, bk_text_safe(job->arena, text, false), TEXT_COLUMNS, false);
}

const char *bk_change_name(const bk_job *job, const char *name)
{
    return bk_text_safe(job->arena, name, false);
}

bool bk_text_blank(const char *text)
{
    return !text || !text[strspn(text, " \t\r\n")];
}
