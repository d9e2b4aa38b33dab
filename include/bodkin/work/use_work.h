#ifndef BODKIN_WORK_USE_WORK_H
#define BODKIN_WORK_USE_WORK_H

#include "bodkin/work/job.h"

/// Orders of work and the steps of pieces: one becomes the other, each as one change with one entry of the daybook. Sentences
/// and texts are in the job's arena. BK_REFUSED, with nothing changed, where the order of work or the piece is gone, has no
/// steps, or a name is taken.

/// Adds the steps of an order of work to a piece, behind the steps that it has: with their minutes, levels, rests, measures and
/// notes, each after those that it comes after in the order of work, none of them done. A key that the piece has already gets
/// a number: `hem2`. "Used: Shirt, full cut on 4A-1: 11 steps".
bk_status bk_work_use(const bk_job *job, int64_t work, int64_t piece, const char **sentence, bk_error *error)
    BK_MUST_USE;

/// Keeps the steps of a piece as a new order of work of the workroom's own: without what was done, and in the order that they
/// have within the piece. `note` may be NULL. `*work` is its id.
bk_status bk_work_keep(const bk_job *job, int64_t piece, const char *name, const char *note, int64_t *work,
                       const char **sentence, bk_error *error) BK_MUST_USE;

/// Makes a new order of work of the workroom's own that is like another one. `*copy` is its id.
bk_status bk_work_copy(const bk_job *job, int64_t work, const char *name, int64_t *copy,
                       const char **sentence, bk_error *error) BK_MUST_USE;

#endif
