#ifndef BODKIN_WORK_CHANGE_H
#define BODKIN_WORK_CHANGE_H

#include <stdbool.h>

#include "bodkin/work/job.h"

/// What a job does within its change; `*sentence` gets what the daybook says of it, NULL where there is nothing to write.
typedef bk_status bk_change_body(const bk_job *job, void *context, const char **sentence, bk_error *error);

/// Runs a job as one change with one entry of the daybook; where it fails, or has no sentence, nothing is written.
bk_status bk_change_run(const bk_job *job, bk_change_body *body, void *context, const char **sentence,
                        bk_error *error) BK_MUST_USE;

/// Words for sentences, in the job's arena.
const char *bk_change_day(const bk_job *job, bk_day day);          ///< "Fri 12 Mar"
const char *bk_change_moment(const bk_job *job, bk_moment moment); ///< "Fri 12 Mar 14:30"
const char *bk_change_minutes(const bk_job *job, int64_t minutes); ///< "1 h 20"
const char *bk_change_text(const bk_job *job,
                           const char *text); ///< what somebody wrote, cut to a part of a line
const char *bk_change_name(const bk_job *job, const char *name); ///< made safe, for errors

/// Whether a text says nothing: NULL, or blanks alone.
bool bk_text_blank(const char *text);

#endif
