#ifndef BODKIN_WORK_RECORD_INSIDE_H
#define BODKIN_WORK_RECORD_INSIDE_H

#include "bodkin/work/record.h"

/// The jobs of record.h within a change of the caller's, who commits or drops it: for jobs that are made of several of them.

/// bk_record_save.
bk_status bk_record_save_inside(const bk_job *job, const bk_record_saving *saving, bk_record_saved *saved,
                                bk_error *error) BK_MUST_USE;

/// bk_record_take_away.
bk_status bk_record_take_away_inside(const bk_job *job, bk_family family, int64_t id, const char **sentence,
                                     bk_error *error) BK_MUST_USE;

/// bk_record_read.
bk_status bk_record_read_inside(const bk_job *job, bk_family family, int64_t id, void *record, bool *found,
                                bk_error *error) BK_MUST_USE;

#endif
