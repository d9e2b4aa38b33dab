#ifndef BODKIN_WORK_WHEREABOUTS_H
#define BODKIN_WORK_WHEREABOUTS_H

#include "bodkin/work/job.h"

/// Where a piece is, and whom it is out with. Each is one change with one entry of the daybook.

/// A piece leaves the workroom, from today on: "Out: 4A-2 grey skirt, with Bo Lind until Fri 12 Mar". `back_by` BK_NO_DAY: no day
/// promised. One that is out already goes on to somebody else, or for longer. BK_REFUSED where nobody is named.
bk_status bk_piece_out(const bk_job *job, int64_t piece, const char *with, bk_day back_by,
                       const char **sentence, bk_error *error) BK_MUST_USE;

/// It is back: "Back: 4A-2 grey skirt, from Bo Lind". `place` NULL: where it was before. BK_REFUSED where it is not out.
bk_status bk_piece_back(const bk_job *job, int64_t piece, const char *place, const char **sentence,
                        bk_error *error) BK_MUST_USE;

/// It lies or hangs somewhere else: "Moved: 4A-2 grey skirt, to rail 2"; `place` NULL: not known.
bk_status bk_piece_place(const bk_job *job, int64_t piece, const char *place, const char **sentence,
                         bk_error *error) BK_MUST_USE;

#endif
